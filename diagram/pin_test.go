package diagram_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
)

// placed is a sheet of two batteries in series and a third by itself, the first ones
// where a person put them.
func placed(places ...model.Place) *model.Job {
	s := model.Sheet{Name: model.AsFound}
	for i, id := range []model.PartID{"b1", "b2", "b3"} {
		p := model.Part{ID: id, Kind: "lead-battery-6v"}
		if i < len(places) {
			p.Place = &places[i]
		}
		s.Parts = append(s.Parts, p)
	}
	end := func(part model.PartID, name string) model.End {
		return model.End{At: model.TerminalRef{Part: part, Name: name}}
	}
	s.Wires = []model.Wire{{ID: "j1", From: end("b1", "+"), To: end("b2", "-")}}
	return &model.Job{Version: 1, Title: "placed", Sheets: []model.Sheet{s}}
}

// TestPlacesThatClashAreLetGo: a box may grow onto another with the next wire, so a
// clash is no reason to draw nothing.
func TestPlacesThatClashAreLetGo(t *testing.T) {
	for name, places := range map[string][]model.Place{
		"one on the other":      {{X: 10, Y: 10}, {X: 12, Y: 11}},
		"all on one another":    {{X: 10, Y: 10}, {X: 10, Y: 10}, {X: 10, Y: 10}},
		"in the corner":         {{X: 0, Y: 0}},
		"far off a narrow page": {{X: 9000, Y: 9000}},
	} {
		t.Run(name, func(t *testing.T) {
			d, err := diagram.Draw(placed(places...), model.AsFound, part.Library(), diagram.Options{Width: 120})
			require.NoError(t, err)
			require.Len(t, d.Pages, 1)
			require.Empty(t, scene.Check(&d.Pages[0]))
			require.Len(t, d.Pages[0].Boxes, 3)
		})
	}
}

func TestAPlaceThatOthersClashWithIsKept(t *testing.T) {
	d, err := diagram.Draw(placed(model.Place{X: 10, Y: 10}, model.Place{X: 12, Y: 11}), model.AsFound, part.Library(), diagram.Options{})
	require.NoError(t, err)
	b1 := d.Pages[0].Boxes[0]
	require.Equal(t, "b1", b1.ID)
	require.Equal(t, scene.Point{X: 10, Y: 10}, scene.Point{X: b1.Rect.X, Y: b1.Rect.Y})
}
