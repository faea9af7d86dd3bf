package view

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/diagram/view/trunks"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
)

// Harness is the way of the wires along the runs between the zones, with their lengths.
var Harness = View{Name: "harness", About: "runs between zones, which wires lie in them, and cut lengths", Draw: drawHarness}

func drawHarness(j *model.Job, sheet model.SheetName, _ *model.Catalogue, o diagram.Options) (*diagram.Drawing, error) {
	s, err := find(j, sheet)
	if err != nil {
		return nil, err
	}
	h := harness.Of(j, s)
	pages, err := board.Fewest(o, func(shape diagram.Shape) ([]scene.Page, error) {
		return harnessOn(j, h, sheet, shape, o.Quick)
	})
	if err != nil {
		return nil, err
	}
	return &diagram.Drawing{Pages: pages}, nil
}

func harnessOn(j *model.Job, h *harness.Harness, sheet model.SheetName, shape diagram.Shape, quick bool) ([]scene.Page, error) {
	drawn, err := trunks.Draw(j, h, shape.Columns, quick)
	if err != nil {
		return nil, err
	}
	like := blank(j, sheet, "harness")
	list := like
	like.Title.Notes = harnessNotes(h)
	like.Legend = []string{
		"A line is a run, with its length and the number of wires in it. A box is a zone: its parts, and the wires of each that leave the zone; parts whose wires all stay are left out.",
		"A wire takes the way that is recorded with it, else the shortest along the runs.",
	}
	list.Legend = []string{
		"Length by runs: their sum and slack for two new lugs at each end, rounded up to 25 mm for main cables and 10 mm for others. Tails from run to terminal are not recorded: add them, or cut on the cart.",
	}
	b := board.New(shape, list)
	if drawn.H > 0 {
		drawn.Title, drawn.Paper = like.Title, shape.Paper
		drawn.Legend = append(append(like.Legend, list.Legend...), drawn.Legend...)
		b.Draw(drawn)
	}
	for _, t := range trunks.Tables(h) {
		b.Table(t)
	}
	return b.Pages(), nil
}

// harnessNotes says how much of the harness is known.
func harnessNotes(h *harness.Harness) []string {
	n := map[harness.Basis]int{}
	for i := range h.Wires {
		n[h.Wires[i].Basis]++
	}
	var words []string
	for _, k := range []struct {
		basis harness.Basis
		words string
	}{
		{harness.Measured, "measured"}, {harness.ByRuns, "by runs, without tails"}, {harness.Inside, "inside one zone and not measured"},
		{harness.NoWay, "between zones that no recorded run joins"}, {harness.NoZone, "with an end in no known zone"},
	} {
		if n[k.basis] > 0 {
			words = append(words, fmt.Sprintf("%d %s", n[k.basis], k.words))
		}
	}
	if len(words) == 0 {
		return nil
	}
	return []string{"Lengths of " + scene.Count(len(h.Wires), "wire", "wires") + ": " + strings.Join(words, ", ") + "."}
}
