package scene

import (
	"cmp"
	"slices"
	"strings"
)

// Usage is what a page makes use of, so that its legend explains that and no more.
type Usage struct {
	Weights   []Weight   // in rising order
	Changes   []Change   // in the order of the constants, without NoChange
	Flags     []FlagKind // in the order of the constants
	Marks     []string   // sorted
	Colours   []string   // IEC 60757 codes of bodies and stripes, sorted
	Striped   bool       // a wire has a stripe
	Seats     bool       // a stud position is written
	Symbols   []string   // names, sorted
	Crossings bool       // some wire passes under another
	Energies  []Energy   // what the state that is shown does to wires, in the order of the constants, without NotShown
	Works     bool       // a part says what it does in that state
	Carries   bool       // a wire shows the way of its current
}

// Use collects what a page makes use of.
func (p *Page) Use() Usage {
	var u Usage
	for _, w := range p.Wires {
		u.Weights = append(u.Weights, w.Weight)
		u.change(w.Change)
		if w.Flow.Energy != NotShown {
			u.Energies = append(u.Energies, w.Flow.Energy)
		}
		u.Carries = u.Carries || w.Flow.Carries()
		u.insulation(w.Colour)
	}
	for _, b := range p.Boxes {
		u.change(b.Change)
		u.Marks = append(u.Marks, b.Marks...)
		u.Works = u.Works || b.Works.Word != ""
		if b.Symbol != "" {
			u.Symbols = append(u.Symbols, b.Symbol)
		}
		u.Seats = u.Seats || slices.ContainsFunc(b.Ports, func(p Port) bool { return p.Seat > 0 })
	}
	for _, f := range p.Flags {
		u.Flags = append(u.Flags, f.Kind)
	}
	for _, piece := range p.Pieces {
		if piece.Colour != "" {
			u.insulation(piece.Colour)
		}
	}
	u.Crossings = len(p.Crossings()) > 0
	u.Weights, u.Changes, u.Flags = set(u.Weights), set(u.Changes), set(u.Flags)
	u.Energies = set(u.Energies)
	u.Marks, u.Colours, u.Symbols = set(u.Marks), set(u.Colours), set(u.Symbols)
	return u
}

func (u *Usage) insulation(colour string) {
	body, stripe, striped := strings.Cut(colour, "/")
	u.Striped = u.Striped || striped
	for _, code := range []string{body, stripe} {
		if code != "" {
			u.Colours = append(u.Colours, Clean(code))
		}
	}
}

func (u *Usage) change(c Change) {
	if c != NoChange {
		u.Changes = append(u.Changes, c)
	}
}

func set[T interface{ ~string | ~uint8 }](s []T) []T {
	slices.Sort(s)
	return slices.Compact(s)
}

// Crossing is a cell where one wire passes under another.
type Crossing struct {
	At          Point
	Over, Under string // ids: the upright wire passes over
}

// Crossings lists the cells where wires cross, top to bottom and left to right.
func (p *Page) Crossings() []Crossing {
	var level, upright []straight
	for _, w := range p.Wires {
		for _, s := range straights(w) {
			if s.from.Y == s.to.Y {
				level = append(level, s)
			} else {
				upright = append(upright, s)
			}
		}
	}
	var found []Crossing
	for _, u := range upright {
		for _, l := range level {
			if at := (Point{u.from.X, l.from.Y}); l.from.X < at.X && at.X < l.to.X && u.from.Y < at.Y && at.Y < u.to.Y {
				found = append(found, Crossing{At: at, Over: u.wire, Under: l.wire})
			}
		}
	}
	slices.SortFunc(found, func(a, b Crossing) int {
		return cmp.Or(cmp.Compare(a.At.Y, b.At.Y), cmp.Compare(a.At.X, b.At.X), strings.Compare(a.Over, b.Over), strings.Compare(a.Under, b.Under))
	})
	return found
}

// straight is a piece of a wire from bend to bend, from left to right or downwards.
type straight struct {
	wire     string
	from, to Point
}

// straights lists the straight pieces of a wire; legs that follow on make one.
func straights(w Wire) []straight {
	var list []straight
	for i := 1; i < len(w.Path); i++ {
		a, b := w.Path[i-1], w.Path[i]
		level := a.Y == b.Y
		if a == b || !level && a.X != b.X {
			continue
		}
		if a.X > b.X || a.Y > b.Y {
			a, b = b, a
		}
		if n := len(list); n > 0 && (list[n-1].from.Y == list[n-1].to.Y) == level {
			last := &list[n-1]
			switch {
			case last.to == a:
				last.to = b
				continue
			case last.from == b:
				last.from = a
				continue
			}
		}
		list = append(list, straight{w.ID, a, b})
	}
	return list
}
