package diagram_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

func TestADrawingIsFoundInTheJobFileAsItWasLeft(t *testing.T) {
	for _, name := range []string{"greenhouse-tug", "marina-shuttle"} {
		data, err := cart.Read(name)
		require.NoError(t, err)
		decoded, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		s := openCart(t, name, model.Plan)
		job := s.Job().Clone()
		job.Sheet(model.Plan).Drawn = s.drawing.Keep(diagram.OnScreen)
		text, err := decoded.Encode(job)
		require.NoError(t, err)
		read, faults := jobfile.Decode(name, text, part.Library())
		require.Empty(t, faults)
		again, err := diagram.Draw(read.Job, model.Plan, part.Library(), diagram.Options{Quick: true, Previous: diagram.Recall(read.Job.Sheet(model.Plan), diagram.OnScreen)})
		require.NoError(t, err)
		require.Equal(t, s.drawing.Pages, again.Pages, name)
		require.Equal(t, s.drawing.Keep(diagram.OnScreen), again.Keep(diagram.OnScreen), name)
	}
}

func TestNothingIsRecalledOfADrawingForSomethingElse(t *testing.T) {
	s := openCart(t, "marina-shuttle", model.Plan)
	sheet := *s.Job().Sheet(model.Plan)
	sheet.Drawn = s.drawing.Keep("A4")
	require.Nil(t, diagram.Recall(&sheet, diagram.OnScreen))
	require.NotNil(t, diagram.Recall(&sheet, "A4"))
}

func TestAPageBeyondAllMeasureIsNotRecalled(t *testing.T) {
	s := openCart(t, "marina-shuttle", model.Plan)
	for _, far := range []func(*model.Kept){
		func(k *model.Kept) { k.Frames[0].At.W, k.Frames[0].At.H = 9000, 9000 },
		func(k *model.Kept) { k.Boxes[0].At.X, k.Boxes[0].At.Y = 9000, 9000 },
		func(k *model.Kept) { k.Lines[0].Way[0] = model.KeptCorner{X: 9000, Y: 9000} },
	} {
		sheet := *s.Job().Sheet(model.Plan)
		sheet.Drawn = s.drawing.Keep(diagram.OnScreen)
		require.NotNil(t, diagram.Recall(&sheet, diagram.OnScreen))
		far(&sheet.Drawn[0])
		require.Nil(t, diagram.Recall(&sheet, diagram.OnScreen))
	}
}

// A job file may say anything of how its sheet was drawn; what is drawn from it can be read all the same.
func TestWhateverAJobKeepsOfItsDrawingTheNextIsLegal(t *testing.T) {
	small := &model.Job{Version: 1, Title: "two places", Zones: []model.Zone{{ID: "tray"}, {ID: "dash"}}, Sheets: []model.Sheet{{
		Name: model.Plan,
		Parts: []model.Part{
			{ID: "b1", Kind: "lead-battery-6v", Zone: "tray"}, {ID: "b2", Kind: "lead-battery-6v", Zone: "tray"},
			{ID: "sol", Kind: "contactor-48v", Zone: "tray"}, {ID: "key", Kind: "key-switch", Zone: "dash"}, {ID: "lt1", Kind: "lamp-12v", Zone: "dash"},
		},
		Wires: []model.Wire{
			{ID: "j1", From: model.On("b1", "+"), To: model.On("b2", "-")}, {ID: "w1", From: model.On("b2", "+"), To: model.On("sol", "L1")},
			{ID: "k1", From: model.On("b2", "+"), To: model.On("key", "BAT")}, {ID: "k2", From: model.On("key", "IGN"), To: model.On("sol", "coil+")},
			{ID: "k3", From: model.On("sol", "coil-"), To: model.On("b1", "-")}, {ID: "x7", From: model.On("lt1", "+"), To: model.LooseEnd(model.Cut)},
		},
	}}}
	first, err := diagram.Draw(small, model.Plan, part.Library(), diagram.Options{Quick: true})
	require.NoError(t, err)
	kept := first.Keep(diagram.OnScreen)
	rapid.Check(t, func(t *rapid.T) {
		job := small.Clone()
		sheet := job.Sheet(model.Plan)
		sheet.Drawn = kept
		clone := job.Clone().Sheet(model.Plan).Drawn
		cell := rapid.IntRange(0, 120)
		for range rapid.IntRange(1, 12).Draw(t, "spoils") {
			k := &clone[0]
			switch rapid.IntRange(0, 4).Draw(t, "what") {
			case 0:
				k.Boxes[rapid.IntRange(0, len(k.Boxes)-1).Draw(t, "box")].At = model.KeptRect{X: cell.Draw(t, "x"), Y: cell.Draw(t, "y"), W: cell.Draw(t, "w"), H: cell.Draw(t, "h")}
			case 1:
				if b := &k.Boxes[rapid.IntRange(0, len(k.Boxes)-1).Draw(t, "box")]; len(b.Ports) > 0 {
					b.Ports[0].Offset, b.Ports[0].Side = cell.Draw(t, "offset"), rapid.SampledFrom([]byte("NESW")).Draw(t, "side")
				}
			case 2:
				k.Lines[rapid.IntRange(0, len(k.Lines)-1).Draw(t, "line")].Way = model.KeptWay{{X: cell.Draw(t, "x"), Y: cell.Draw(t, "y")}, {X: cell.Draw(t, "x"), Y: cell.Draw(t, "y")}}
			case 3:
				k.Frames[rapid.IntRange(0, len(k.Frames)-1).Draw(t, "frame")].At = model.KeptRect{X: cell.Draw(t, "x"), Y: cell.Draw(t, "y"), W: cell.Draw(t, "w"), H: cell.Draw(t, "h")}
			case 4:
				k.Lines[rapid.IntRange(0, len(k.Lines)-1).Draw(t, "line")].Label = model.KeptLabel{X: cell.Draw(t, "x"), Y: cell.Draw(t, "y"), Text: rapid.IntRange(0, 9).Draw(t, "text"), Stands: true}
			}
		}
		sheet.Drawn = clone
		d, err := diagram.Draw(job, model.Plan, part.Library(), diagram.Options{Quick: true, Previous: diagram.Recall(sheet, diagram.OnScreen)})
		require.NoError(t, err)
		for i := range d.Pages {
			require.Empty(t, scene.Check(&d.Pages[i]))
		}
		require.Len(t, d.Pages[0].Wires, len(sheet.Wires))
	})
}
