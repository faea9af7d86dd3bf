// Package overview makes a drawing smaller so that more of it is on the screen at once.
//
// Nothing is moved past anything else and no two lines become one unless they join the same
// two boxes: what can be read from the smaller drawing can be read from the large one. What
// has no room is left out in a fixed order: labels of wires, names of terminals, names of
// parts, and last the designators.
package overview

import (
	"slices"

	"example.com/lugbook/diagram/scene"
)

// Form says what a smaller drawing still writes.
type Form uint8

// The forms, the fullest first.
const (
	Unlabelled Form = iota // no labels on wires
	Unnamed                // and no names at terminals; those without a wire are left out
	Designated             // and no names of parts: designators only
	Packed                 // and everything pushed together
)

// nameRoom is how much of a part's name a box is kept wide enough for.
const nameRoom = 12

// strip copies a page without what the form does not write.
func (f Form) strip(p *scene.Page) scene.Page {
	out := scene.Page{W: p.W, H: p.H, Title: p.Title, State: p.State, Zones: slices.Clone(p.Zones), Flags: slices.Clone(p.Flags)}
	used := ends(p)
	for _, b := range p.Boxes {
		out.Boxes = append(out.Boxes, f.box(b, used))
	}
	for _, w := range p.Wires {
		w.Path = turns(w.Path)
		w.Label, w.Flow.Note, w.Flow.Arrows = scene.Label{}, scene.Label{}, nil
		out.Wires = append(out.Wires, w)
	}
	if f > Unlabelled {
		for i := range out.Flags {
			out.Flags[i] = furled(out.Flags[i])
		}
	}
	return out
}

// turns is a copy of a path with nothing but its ends and the corners where it turns.
func turns(path []scene.Point) []scene.Point {
	var out []scene.Point
	for _, c := range path {
		if n := len(out); n > 1 && (out[n-2].X == out[n-1].X && out[n-1].X == c.X || out[n-2].Y == out[n-1].Y && out[n-1].Y == c.Y) {
			out[n-1] = c
			continue
		}
		out = append(out, c)
	}
	return out
}

// ends are the cells that wires end in.
func ends(p *scene.Page) map[scene.Point]bool {
	used := map[scene.Point]bool{}
	for _, w := range p.Wires {
		if len(w.Path) > 0 {
			used[w.Path[0]], used[w.Path[len(w.Path)-1]] = true, true
		}
	}
	return used
}

// box is a box with what the form writes in it.
func (f Form) box(b scene.Box, used map[scene.Point]bool) scene.Box {
	ports := b.Ports
	b.Ports = nil
	for _, p := range ports {
		if f > Unlabelled {
			if !used[p.At] {
				continue
			}
			p.ID, p.Name, p.Stud, p.Seat = p.Terminal(), "", "", 0
		}
		b.Ports = append(b.Ports, p)
	}
	if f > Unlabelled {
		b.Symbol = ""
	}
	if f >= Designated {
		b.Name, b.Works.Word = "", ""
	}
	return b
}

// furled is a flag without its text: the mark alone.
func furled(f scene.Flag) scene.Flag {
	f.Rect = scene.Rect{X: f.Port.At.X, Y: f.Port.At.Y, W: 1, H: 1}
	f.Text = ""
	return f
}

// Fill is the fullest form of a page that a screen of so many columns and rows shows all of; if
// none is small enough, the smallest.
func Fill(p *scene.Page, columns, rows int) (scene.Page, Form) {
	for f := range Packed {
		if s := Squeeze(p, f); s.Page.W <= columns && s.Page.H <= rows {
			return s.Page, f
		}
	}
	s := Squeeze(p, Designated)
	pack(&s.Page)
	return s.Page, Packed
}
