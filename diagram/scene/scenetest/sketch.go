// Package scenetest makes pages for the tests of painters.
package scenetest

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/lugbook/diagram/scene"
)

// Sketch is a page in the making.
type Sketch struct{ scene.Page }

// Box adds a part. Each port is written side, offset along the side, terminal, and
// for a stud its position: "E2 L1 1". The offset counts cells from the corner.
func (s *Sketch) Box(id, name, symbol string, r scene.Rect, ports ...string) *scene.Box {
	b := scene.Box{ID: id, Name: name, Symbol: symbol, Rect: r, Title: id + " " + name}
	for _, p := range ports {
		b.Ports = append(b.Ports, port(r, p))
	}
	s.Boxes = append(s.Boxes, b)
	return &s.Boxes[len(s.Boxes)-1]
}

func port(r scene.Rect, spec string) scene.Port {
	fields := strings.Fields(spec)
	offset, err := strconv.Atoi(fields[0][1:])
	if err != nil {
		panic(fmt.Sprintf("port %q: %v", spec, err))
	}
	p := scene.Port{ID: fields[1], Name: fields[1]}
	if len(fields) > 2 {
		p.Seat, p.Stud = int(fields[2][0]-'0'), fields[1]
	}
	switch fields[0][0] {
	case 'N':
		p.Side, p.At = scene.North, scene.Point{X: r.X + offset, Y: r.Y}
	case 'S':
		p.Side, p.At = scene.South, scene.Point{X: r.X + offset, Y: r.Bottom()}
	case 'E':
		p.Side, p.At = scene.East, scene.Point{X: r.Right(), Y: r.Y + offset}
	default:
		p.Side, p.At = scene.West, scene.Point{X: r.X, Y: r.Y + offset}
	}
	return p
}

// Flag adds a flag at a place, the wire meeting the given side.
func (s *Sketch) Flag(id string, kind scene.FlagKind, text string, at scene.Point, side scene.Side) {
	f := scene.Flag{ID: id, Kind: kind, Text: text, Rect: scene.Rect{X: at.X, Y: at.Y, W: scene.Width(text) + 1, H: 1}}
	f.Port = scene.Port{ID: id, At: at, Side: side}
	if side == scene.East {
		f.Port.At.X = f.Rect.Right()
	}
	s.Flags = append(s.Flags, f)
}

// Wire adds a wire. The ends are part.terminal, with /position for a stud, or a
// flag. The path leaves the first end, then takes each of the turns: columns and
// rows in alternation, and arrives at the second end. The label is centred on the
// numbered leg, counted from 0; -1 means no label.
func (s *Sketch) Wire(id, from, to string, weight scene.Weight, colour, label string, leg int, turns ...int) *scene.Wire {
	a, fromName := s.find(from)
	b, toName := s.find(to)
	level := a.Side == scene.East || a.Side == scene.West
	path, at := []scene.Point{a.At}, a.At
	for _, turn := range turns {
		if level {
			at.X = turn
		} else {
			at.Y = turn
		}
		level = !level
		path = append(path, at)
	}
	if level && at.Y != b.At.Y {
		at.X = b.At.X
		path = append(path, at)
	} else if !level && at.X != b.At.X {
		at.Y = b.At.Y
		path = append(path, at)
	}
	path = append(path, b.At)
	w := scene.Wire{ID: id, Path: path, Weight: weight, Colour: colour, From: fromName, To: toName}
	w.Title = fmt.Sprintf("%s · %s · %s to %s", id, colour, fromName, toName)
	if leg >= 0 {
		w.Label = placed(label, path[leg], path[leg+1])
	}
	s.Wires = append(s.Wires, w)
	return &s.Wires[len(s.Wires)-1]
}

// placed centres a label on a level leg or puts it beside the middle of an upright one.
func placed(text string, a, b scene.Point) scene.Label {
	l := scene.Label{Text: text, Vertical: a.X == b.X}
	l.At = scene.Point{X: (a.X+b.X)/2 - scene.Width(text)/2, Y: (a.Y + b.Y) / 2}
	if l.Vertical {
		l.At.X = a.X + 1
	}
	return l
}

func (s *Sketch) find(end string) (scene.Port, string) {
	name, seat, _ := strings.Cut(end, "/")
	for _, f := range s.Flags {
		if f.ID == end {
			return f.Port, end
		}
	}
	for _, b := range s.Boxes {
		for _, p := range b.Ports {
			if b.ID+"."+p.Terminal() == name && (seat == "" || seat == strconv.Itoa(p.Seat)) {
				return p, name
			}
		}
	}
	panic("no such end: " + end)
}
