package scene

import (
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
	level := map[Point]string{}
	legs(p.Wires, func(id string, at Point, upright bool) {
		if !upright {
			level[at] = id
		}
	})
	var found []Crossing
	legs(p.Wires, func(id string, at Point, upright bool) {
		if under, ok := level[at]; ok && upright {
			found = append(found, Crossing{At: at, Over: id, Under: under})
		}
	})
	slices.SortFunc(found, func(a, b Crossing) int {
		if a.At.Y != b.At.Y {
			return a.At.Y - b.At.Y
		}
		return a.At.X - b.At.X
	})
	return found
}

// legs visits the cells that wires pass straight through: bends and ends left out.
func legs(wires []Wire, visit func(id string, at Point, upright bool)) {
	for _, w := range wires {
		cells := Cells(w.Path)
		for i := 1; i+1 < len(cells); i++ {
			if before, after := cells[i-1], cells[i+1]; before.X == after.X || before.Y == after.Y {
				visit(w.ID, cells[i], before.X == after.X)
			}
		}
	}
}
