package view

import (
	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/diagram/view/oneline"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// OneLine is how power reaches what uses it, one line for each path.
var OneLine = View{Name: "one-line", About: "the power path alone, batteries to loads, with ratings in words", Draw: drawOneLine}

func drawOneLine(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o diagram.Options) (*diagram.Drawing, error) {
	s, err := find(j, sheet)
	if err != nil {
		return nil, err
	}
	roots := oneline.Trace(network.Build(j, s, lib))
	like := blank(j, sheet, "one-line diagram")
	like.Title.Shown = restShown
	like.Legend = []string{
		"One line for each path of power; returns, controls and mains are left out. A charger feeds against the reading direction.",
		"A question mark behind a figure: usual for such a part, not read off its label.",
	}
	if len(roots) == 0 {
		like.Title.Notes = append(like.Title.Notes, "The sheet has no battery or pack that power could come from.")
	}
	pages, err := board.Fewest(o, func(shape diagram.Shape) ([]scene.Page, error) {
		b := board.New(shape, like)
		p := oneline.Page(roots, shape.Columns, shape.Paper != (scene.Paper{}))
		p.Title, p.Paper = like.Title, shape.Paper
		p.Legend = append(p.Legend, like.Legend...)
		b.Draw(p)
		return b.Pages(), nil
	})
	if err != nil {
		return nil, err
	}
	return &diagram.Drawing{Pages: pages}, nil
}

// restShown is how every contact is drawn.
const restShown = "key off, direction neutral, pedal up, nothing plugged in"
