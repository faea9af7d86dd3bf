package oneline

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// flagPort is the only port of a flag.
const flagPort = "end"

// page turns a drawing into a scene.
func (d *drawing) page() scene.Page {
	p := scene.Page{W: d.w, H: d.h}
	var unsaid []string
	n := 0
	for i := range d.bands {
		b := &d.bands[i]
		for _, s := range b.spots {
			n++
			if s.isFlag() {
				p.Flags = append(p.Flags, s.flag(n))
			} else {
				p.Boxes = append(p.Boxes, s.box())
			}
			if s.after == nil {
				continue
			}
			w := d.wire(b, s, n)
			p.Wires = append(p.Wires, w)
			if s.in != nil && s.in.conductor() != "" && w.Label.Text == "" {
				unsaid = append(unsaid, fmt.Sprintf("%s %s", s.in.Wire.ID, s.in.conductor()))
			}
		}
	}
	if len(unsaid) > 0 {
		p.Legend = append(p.Legend, "Conductors: "+strings.Join(unsaid, ", ")+".")
	}
	return p
}

func flagID(i int) string { return fmt.Sprintf("mark %d", i) }

func (s *spot) flag(i int) scene.Flag {
	f := scene.Flag{ID: flagID(i), Kind: scene.OffPage, Text: s.mark, Rect: scene.Rect{X: s.x, Y: s.y, W: s.w, H: 1}}
	f.Port = scene.Port{ID: flagPort, At: scene.Point{X: s.x, Y: s.y}, Side: scene.West}
	return f
}

func (s *spot) box() scene.Box {
	n := s.node
	b := scene.Box{ID: n.ID, Name: n.Words(), Rect: scene.Rect{X: s.x, Y: s.y, W: s.w, H: s.h}, Title: n.ID + ": " + n.Words()}
	if n.Def != nil {
		b.Symbol = n.Def.Symbol
		if len(n.Parts) == 1 && len(n.Parts[0].Condition) > 0 {
			b.Marks = []string{"!"}
		}
	}
	if s.after != nil {
		port := scene.Port{ID: "in", At: scene.Point{X: s.x, Y: s.line()}, Side: scene.West}
		if s.in != nil && s.in.At != "" {
			port.ID = s.in.At
		}
		b.Ports = append(b.Ports, port)
	}
	for i, next := range s.out {
		port := scene.Port{ID: "out", At: scene.Point{X: s.x + s.w - 1, Y: s.port(i)}, Side: scene.East}
		if next.in != nil {
			port.ID = next.in.Terminal
		}
		b.Ports = append(b.Ports, port)
	}
	return b
}

// wire is the line that leads to a spot.
func (d *drawing) wire(b *band, s *spot, n int) scene.Wire {
	w := scene.Wire{ID: fmt.Sprintf("line %d", n), Path: d.way(b, s)}
	e := s.in
	if e == nil {
		return w
	}
	w.Weight = e.weight()
	if e.Wire != nil {
		w.ID, w.Colour = string(e.Wire.ID), e.Wire.Colour.String()
		w.Title = fmt.Sprintf("%s: %s to %s, %s", e.Wire.ID, e.Wire.From, e.Wire.To, conductorWords(e.Wire))
	}
	last := w.Path[len(w.Path)-2:]
	free := last[0].X + 1 // first column of the level piece that bears the label
	if text := e.conductor(); b.labels && last[1].X-free >= scene.Width(text)+2 && text != "" {
		w.Label = scene.Label{Text: text, At: scene.Point{X: free + (last[1].X-free-scene.Width(text)+1)/2, Y: last[1].Y}}
	}
	if e.Wire != nil && e.At != "" {
		w.From, w.To = s.after.node.ID+"."+e.Terminal, s.node.ID+"."+e.At
	}
	if e.Wire != nil && e.Against { // currents are told along the wire as it is recorded
		w.From, w.To = w.To, w.From
		slices.Reverse(w.Path)
	}
	return w
}

// way is the path of the line to a spot: straight, or with an upright piece. To another
// band it goes round behind the parts, and between the bands back to the left. Of lines
// from one part the lower ones turn first, and so none cross.
func (d *drawing) way(b *band, s *spot) []scene.Point {
	from := scene.Point{X: s.after.x + s.after.w - 1, Y: s.after.port(s.ordinal)}
	to := scene.Point{X: s.x, Y: s.line()}
	if !s.below {
		if from.Y == to.Y {
			return []scene.Point{from, to}
		}
		lane := b.edges[s.depth-1] + 1 + lanePitch*(len(s.after.out)-1-s.ordinal)
		return []scene.Point{from, {X: lane, Y: from.Y}, {X: lane, Y: to.Y}, to}
	}
	before := &d.bands[s.after.band]
	inner := len(b.tops) - 1 - slices.Index(b.tops, s)
	right := slices.Max(before.edges) + 1 + lanePitch*inner
	row := b.y - b.channels + rowGap + inner
	left := 1 + lanePitch*inner
	return []scene.Point{from, {X: right, Y: from.Y}, {X: right, Y: row}, {X: left, Y: row}, {X: left, Y: to.Y}, to}
}

func conductorWords(w *model.Wire) string {
	return strings.TrimSpace(w.Gauge.String() + " " + w.Colour.String())
}
