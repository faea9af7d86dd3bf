package diagram_test

import (
	"strings"
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
		if testing.Short() && places[0].X > 1000 {
			continue // the way to it is long
		}
		t.Run(name, func(t *testing.T) {
			d, err := diagram.Draw(placed(places...), model.AsFound, part.Library(), diagram.Options{Shapes: []diagram.Shape{{Columns: 120}}})
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

// TestPlacesFarOffKeepToOneAnother: on a page that is not so wide, boxes that a person placed
// move together.
func TestPlacesFarOffKeepToOneAnother(t *testing.T) {
	o := diagram.Options{Quick: true, Shapes: []diagram.Shape{{Columns: 120}}}
	d, err := diagram.Draw(placed(model.Place{X: 400, Y: 90}, model.Place{X: 440, Y: 102}), model.AsFound, part.Library(), o)
	require.NoError(t, err)
	require.Len(t, d.Pages, 1)
	b1, b2 := d.Pages[0].Boxes[0].Rect, d.Pages[0].Boxes[1].Rect
	require.Equal(t, []int{40, 12}, []int{b2.X - b1.X, b2.Y - b1.Y})
}

// TestALongZoneNameIsCut: a name widens neither its zone nor the page without end.
func TestALongZoneNameIsCut(t *testing.T) {
	j := placed()
	j.Zones = []model.Zone{{ID: "tray", Name: strings.Repeat("x", 4000)}}
	for i := range j.Sheets[0].Parts {
		j.Sheets[0].Parts[i].Zone = "tray"
	}
	d, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{Shapes: []diagram.Shape{{Columns: 60}}})
	require.NoError(t, err)
	require.Len(t, d.Pages[0].ZoneTitles(), 1)
	require.LessOrEqual(t, d.Pages[0].W, 60)
}

// TestALongPartNameIsCut: a name of a page's length makes no box of that height.
func TestALongPartNameIsCut(t *testing.T) {
	j := placed()
	j.Sheets[0].Parts[0].Name = strings.Repeat("x", 4000)
	d, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{Shapes: []diagram.Shape{{Columns: 60}}})
	require.NoError(t, err)
	require.Less(t, d.Pages[0].H, 40)
	require.Contains(t, d.Pages[0].Boxes[0].Title, j.Sheets[0].Parts[0].Name, "whole where it takes no room")
}
