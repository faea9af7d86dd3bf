package size

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Piece is one thing on the way to a load and back that takes voltage from it.
type Piece struct {
	What    string // the copper of w1, the joint of w1 on sol.L1, the contact of sol
	Return  bool   // on the way back
	Amps    float64
	Volts   float64
	Assumed bool // size or length is not recorded
}

// Watts is the heat that the piece gives off.
func (p Piece) Watts() float64 { return p.Volts * p.Amps }

// LoadDrop is what a load loses on the way from its source and back, in the worst of
// the states.
type LoadDrop struct {
	Part   model.PartID
	Of     string // the element of the part that takes it, such as drive-forward
	State  string
	Amps   float64 // that the load takes
	Volts  float64 // left at the load
	Lost   float64 // V, the sum of the pieces
	Share  float64 // of the nominal voltage of its circuit
	Pieces []Piece // the greatest loss first
}

// Drops follows each load that takes current in some state to its source and back. The
// windings of a motor before a controller are part of the load. What several loads share
// counts with all its current. Loads come in the order of the sheet. States in which a charger
// gives are left out, and so is what reaches a load through a pre-charge alone: then it
// waits for its contactor, and works on nothing.
func (s *Survey) Drops() []LoadDrop {
	var list []LoadDrop
	for i := range s.n.Links() {
		l := &s.n.Links()[i]
		if !takes(l) || isFilling(l) {
			continue
		}
		var worst LoadDrop
		var in *network.Solution
		for _, one := range s.states {
			if math.Abs(one.lasting.Current(l)) < idle || s.charges(one.lasting) {
				continue
			}
			if d, ok := s.dropOf(one.lasting, l, false); ok && d.Share > worst.Share*(1+1e-6) {
				worst, in = d, one.lasting
			}
		}
		if worst.Share > 0 {
			worst, _ = s.dropOf(in, l, true)
			list = append(list, worst)
		}
	}
	return list
}

// dropOf follows the current of a load both ways. It reports false if that does not come
// from a source. The pieces are listed only if told says so: most are never looked at.
func (s *Survey) dropOf(in *network.Solution, l *network.Link, told bool) (LoadDrop, bool) {
	entry, exit := l.A, l.B
	if in.Current(l) < 0 {
		entry, exit = exit, entry
	}
	volts, _ := in.Voltage(entry, exit)
	d := LoadDrop{Part: l.Part.ID, Of: l.Element.ID, State: in.State.Name, Amps: math.Abs(in.Current(l)), Volts: volts}
	walk := way{s: s, in: in, seen: map[*network.Link]bool{l: true}, drop: &d, told: told}
	home, ok := walk.back(exit)
	if !ok || !walk.forth(entry, home) || walk.filling {
		return LoadDrop{}, false
	}
	d.Share = d.Lost / s.nominalAt(in, entry, l)
	slices.SortStableFunc(d.Pieces, func(a, b Piece) int { return cmp.Compare(b.Volts, a.Volts) })
	return d, true
}

// way is a walk along the current of a load.
type way struct {
	s     *Survey
	in    *network.Solution
	seen  map[*network.Link]bool
	wires []*network.Link
	drop  *LoadDrop // gathers the pieces; nil if nobody asks for them
	told  bool      // they are listed, not only added up

	filling bool // it leads through a pre-charge
}

// isFilling reports whether a link is what fills a capacitor round an open contactor: a
// resistor or a lamp.
func isFilling(l *network.Link) bool {
	return l.Def != nil && l.Def.Family == model.Support && (l.Is(model.ResistanceElement) || l.Is(model.LoadElement))
}

// charges reports whether a charger gives in a state.
func (s *Survey) charges(in *network.Solution) bool {
	for i := range s.n.Links() {
		if l := &s.n.Links()[i]; l.Is(model.ChargerElement) && math.Abs(in.Current(l)) >= idle {
			return true
		}
	}
	return false
}

// back goes with the current from the load to where it enters a source.
func (w *way) back(at network.Node) (network.Node, bool) {
	for {
		l := w.largest(at, -1)
		if l == nil {
			return at, false
		}
		if isSource(l) {
			return at, true
		}
		w.take(l, true)
		at = l.Other(at)
	}
}

// forth goes against the current from the load through all its sources, up to where back
// ended.
func (w *way) forth(at, home network.Node) bool {
	for at != home {
		l := w.largest(at, 1)
		if l == nil {
			return false
		}
		w.take(l, false)
		at = l.Other(at)
	}
	return true
}

// largest is the link not yet taken that brings the most current to a node, or takes the
// most from it if sign is negative; nil if none does.
func (w *way) largest(at network.Node, sign float64) *network.Link {
	var best *network.Link
	most := idle / 2
	for _, l := range w.s.n.LinksAt(at) {
		if amps := sign * toward(w.in, l, at); !w.seen[l] && l.A != l.B && amps > most {
			best, most = l, amps
		}
	}
	return best
}

func isSource(l *network.Link) bool {
	return l.Is(model.SourceElement) || l.Is(model.ChargerElement) || l.Kind == network.OutputLink
}

// take notes what a link on the way loses.
func (w *way) take(l *network.Link, returns bool) {
	w.seen[l] = true
	w.filling = w.filling || isFilling(l)
	if l.Wire != nil {
		w.wires = append(w.wires, l)
	}
	if w.drop == nil {
		return
	}
	volts, _ := w.in.Voltage(l.A, l.B)
	piece := Piece{Return: returns, Amps: math.Abs(w.in.Current(l)), Volts: math.Abs(volts)}
	switch {
	case l.Wire != nil:
		w.wirePieces(l, piece)
		return
	case l.Is(model.ContactElement), l.Is(model.FuseElement):
		piece.What = w.name("the %s of %s", l.Kind, l.Part.ID)
	case l.Is(model.ResistanceElement) && l.Def.Family != model.Drive:
		piece.What = string(l.Part.ID)
	default:
		return
	}
	w.note(piece)
}

// name is the name of a piece, if they are listed.
func (w *way) name(format string, args ...any) string {
	if !w.told {
		return ""
	}
	return fmt.Sprintf(format, args...)
}

// wirePieces divides what a wire loses between its joints and its copper.
func (w *way) wirePieces(l *network.Link, whole Piece) {
	ohms, assumed := w.s.n.WireOhms(l)
	from, to := w.s.n.JointOhms(l)
	copper := whole
	copper.What, copper.Assumed = w.name("the copper of %s", l.Wire.ID), assumed
	for _, joint := range []struct {
		end  *model.End
		ohms float64
	}{{&l.Wire.From, from}, {&l.Wire.To, to}} {
		if joint.end.At.IsZero() {
			continue
		}
		piece := whole
		piece.What = w.name("the joint of %s on %s", l.Wire.ID, joint.end.At)
		piece.Volts = whole.Volts * joint.ohms / ohms
		copper.Volts -= piece.Volts
		w.note(piece)
	}
	w.note(copper)
}

// note adds a piece to what the load loses.
func (w *way) note(p Piece) {
	w.drop.Lost += p.Volts
	if w.told {
		w.drop.Pieces = append(w.drop.Pieces, p)
	}
}
