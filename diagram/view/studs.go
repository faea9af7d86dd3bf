package view

import (
	"fmt"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/diagram/view/studs"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Studs is a card for each stud with its lugs from the seat outward.
var Studs = View{Name: "studs", About: "each stud from its seat outward: lugs, nut, torque, currents", Draw: drawStuds}

func drawStuds(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o diagram.Options) (*diagram.Drawing, error) {
	s, err := find(j, sheet)
	if err != nil {
		return nil, err
	}
	like := blank(j, sheet, "stud cards")
	list, leftOut := studs.Of(network.Build(j, s, lib))
	if len(list) == 0 {
		like.Title.Notes = append(like.Title.Notes, "The sheet has no stud with a lug on it.")
	}
	n := 0
	for i := range list {
		n += len(list[i].Lugs)
		for _, l := range list[i].Lugs {
			like.Pieces = append(like.Pieces, scene.Piece{Colour: l.Wire.Colour.String()})
		}
	}
	like.Legend = append([]string{fmt.Sprintf("Studs: %d, lugs: %d.", len(list), n)}, studs.Legend(list, leftOut)...)
	pages, err := board.Fewest(o, func(shape diagram.Shape) ([]scene.Page, error) {
		b := board.New(shape, like)
		b.Cards(studs.Cards(j, list, b.Columns()))
		return b.Pages(), nil
	})
	if err != nil {
		return nil, err
	}
	return &diagram.Drawing{Pages: pages}, nil
}
