package size

import (
	"cmp"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// liveKey is a feed, by its number, in a solved state.
type liveKey struct {
	in   *network.Solution
	feed int
}

// nominal is the nominal voltage in V of the circuit that a link belongs to in a state: of
// the whole string for what joins its batteries, else of the feed that stands highest where
// its current comes from.
func (s *Survey) nominal(in *network.Solution, l *network.Link) float64 {
	if in == nil {
		return s.system()
	}
	up, down := l.A, l.B
	if in.Current(l) < 0 {
		up, down = down, up
	}
	if before, after := s.source(in, l, up, 1), s.source(in, l, down, -1); before != nil && after != nil {
		if volts := s.stringOf(after); volts > 0 {
			return volts
		}
	}
	return s.nominalAt(in, up, l)
}

// nominalAt goes from a node against the current to where a feed stands.
func (s *Survey) nominalAt(in *network.Solution, at network.Node, last *network.Link) float64 {
	walk := way{s: s, in: in, seen: map[*network.Link]bool{last: true}}
	for {
		if volts := s.standing(in, at); volts > 0 {
			return volts
		}
		l := walk.largest(at, 1)
		if l == nil {
			return s.system()
		}
		if volts := s.stringOf(l); volts > 0 {
			return volts
		}
		walk.seen[l] = true
		at = l.Other(at)
	}
}

// standing is the nominal voltage of the highest feed that stands at a node in a state; 0 if
// none does.
func (s *Survey) standing(in *network.Solution, at network.Node) float64 {
	volts := 0.0
	for i := range s.feeds {
		key := liveKey{in, i}
		marks, done := s.live[key]
		if !done {
			marks = in.LiveFrom(&s.feeds[i], s.returns)
			s.live[key] = marks
		}
		if marks[at] {
			volts = max(volts, s.feeds[i].Nominal.Value)
		}
	}
	return volts
}

// source is the source that the current of a link meets on one side of it, with it if sign is
// negative and against it else; nil if something takes power before.
func (s *Survey) source(in *network.Solution, last *network.Link, at network.Node, sign float64) *network.Link {
	walk := way{s: s, in: in, seen: map[*network.Link]bool{last: true}}
	for {
		l := walk.largest(at, sign)
		if l == nil || takes(l) {
			return nil
		}
		if isSource(l) {
			return l
		}
		walk.seen[l] = true
		at = l.Other(at)
	}
}

// takes reports whether a link is something that current is for.
func takes(l *network.Link) bool {
	return l.Is(model.LoadElement) || l.Is(model.CoilElement) || l.Is(model.ConverterElement)
}

// stringOf is the nominal voltage of the whole string that a source is in; 0 if it is in none.
func (s *Survey) stringOf(source *network.Link) float64 {
	for _, f := range s.feeds {
		if f.String == nil || !f.Whole {
			continue
		}
		for _, cell := range f.String.Cells {
			if cell.Link == source {
				return f.Nominal.Value
			}
		}
	}
	return 0
}

// system is the nominal voltage of the highest feed, else that of the cart as recorded.
func (s *Survey) system() float64 {
	volts := 0.0
	for _, f := range s.feeds {
		volts = max(volts, f.Nominal.Value)
	}
	return cmp.Or(volts, s.n.SystemVolts())
}
