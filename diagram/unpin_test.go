package diagram_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/part"
)

// One bad place in a job file does not cost the other places that a person chose.
func TestFewBoxesAreLetGoForOneThatIsInTheWay(t *testing.T) {
	s := openCart(t, "quarry-inspection", model.Plan)
	at := map[string]model.Place{}
	for _, b := range s.drawing.Pages[0].Boxes {
		at[b.ID] = model.Place{X: b.Rect.X, Y: b.Rect.Y}
	}
	ids := []model.PartID{"sol", "ctrl", "motor", "key"}
	for _, id := range ids {
		place := at[string(id)]
		require.NoError(t, s.Do(edit.PlacePart{Sheet: model.Plan, ID: id, Place: &place}))
	}
	onMotor := at["motor"]
	onMotor.X++
	require.NoError(t, s.Do(edit.PlacePart{Sheet: model.Plan, ID: "ctrl", Place: &onMotor}))
	d, err := diagram.Draw(s.Job(), model.Plan, part.Library(), diagram.Options{Quick: true})
	require.NoError(t, err)
	kept := 0
	for _, b := range d.Pages[0].Boxes {
		if p := s.Job().Sheet(model.Plan).Part(model.PartID(b.ID)).Place; p != nil && (model.Place{X: b.Rect.X, Y: b.Rect.Y}) == *p {
			kept++
		}
	}
	require.GreaterOrEqual(t, kept, len(ids)-2, "%v", d.Pages[0].Legend)
	require.Len(t, d.Pages[0].Legend, 1)
	require.Regexp(t, `^Placed by hand where there is no room, and so moved: (ctrl|motor)`, d.Pages[0].Legend[0])
}
