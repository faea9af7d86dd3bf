package scenetest

import (
	"strconv"

	"example.com/lugbook/diagram/scene"
)

// Random makes a page without faults from random choices: pick(n) is any of 0 to
// n-1. Parts stand in a loose grid, and of the wires that are tried those are kept
// that leave the page without faults.
func Random(pick func(n int) int) *scene.Page {
	const slotW, slotH = 30, 13
	cols, rows := 1+pick(3), 1+pick(3)
	s := &Sketch{scene.Page{W: cols * slotW, H: rows * slotH}}
	s.Title.Job = "random"
	for i := range cols * rows {
		if pick(5) > 0 {
			randomBox(s, i%cols*slotW, i/cols*slotH, pick)
		}
	}
	if pick(2) == 0 && cols > 1 {
		s.Zones = []scene.Zone{{ID: "z", Name: "zone", Rect: at(1, 0, slotW-2, s.H)}}
	}
	ends := freeEnds(s)
	for n := range 3 * len(s.Boxes) {
		if len(ends) < 2 {
			break
		}
		a, b := pick(len(ends)), pick(len(ends))
		if a != b {
			randomWire(s, "w"+strconv.Itoa(n), ends[a], ends[b], pick)
		}
	}
	return &s.Page
}

func randomBox(s *Sketch, x, y int, pick func(int) int) {
	specs := []string{"N4 " + letter(pick), "N10 " + letter(pick), "E2 " + letter(pick) + "1 1", "W2 L", "W4 M", "S5 " + letter(pick)}
	if pick(2) == 0 {
		specs[2] = "E2 St 1"
		specs = append(specs, "E3 St 2")
	}
	b := s.Box("p"+strconv.Itoa(len(s.Boxes)), "", "fuse", at(x+7+pick(3), y+3+pick(2), 16, 7), specs...)
	b.Change = scene.Change(pick(6))
}

func letter(pick func(int) int) string { return string(rune('A' + pick(26))) }

type wireEnd struct {
	port scene.Port
	name string
}

func freeEnds(s *Sketch) []wireEnd {
	var ends []wireEnd
	for _, b := range s.Boxes {
		for _, p := range b.Ports {
			ends = append(ends, wireEnd{p, b.ID + "." + p.Terminal()})
		}
	}
	return ends
}

// randomWire tries a wire with up to three inner corners and keeps it if the page
// stays without faults.
func randomWire(s *Sketch, id string, a, b wireEnd, pick func(int) int) {
	dx, dy := a.port.Side.Step()
	ex, ey := b.port.Side.Step()
	out, in := a.port.At.Add(dx*(1+pick(4)), dy*(1+pick(2))), b.port.At.Add(ex*(1+pick(4)), ey*(1+pick(2)))
	corner := scene.Point{X: out.X, Y: in.Y}
	if pick(2) == 0 {
		corner = scene.Point{X: in.X, Y: out.Y}
	}
	path := []scene.Point{a.port.At}
	for _, p := range []scene.Point{out, corner, in, b.port.At} {
		if p != path[len(path)-1] {
			path = append(path, p)
		}
	}
	colours := []string{"", "RD", "BK/WH", "GNYE"}
	w := scene.Wire{ID: id, Path: path, Weight: scene.Weight(pick(4)), Colour: colours[pick(4)], From: a.name, To: b.name, Change: scene.Change(pick(6))}
	s.Wires = append(s.Wires, w)
	if leg := 1 + pick(len(path)-1); pick(2) == 0 {
		s.Wires[len(s.Wires)-1].Label = placed(id, path[leg-1], path[leg])
		if len(scene.Check(&s.Page)) == 0 {
			return
		}
		s.Wires[len(s.Wires)-1].Label = scene.Label{}
	}
	if len(scene.Check(&s.Page)) > 0 {
		s.Wires = s.Wires[:len(s.Wires)-1]
	}
}
