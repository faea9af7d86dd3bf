package network

import (
	"cmp"

	"example.com/lugbook/model"
	"example.com/lugbook/model/circuit"
	"example.com/lugbook/model/state"
)

// Variation is how one solve departs from what the sheet says. The zero Variation is
// the sheet itself.
type Variation struct {
	Changes []Change // what is otherwise about links; one for each link
	Bridges []Bridge // what is joined between nodes beside the sheet
	Dead    bool     // no battery, pack, charger or converter gives anything
	Celsius float64  // temperature of the conductors of wires in C; 0 means the usual 20
	Sound   bool     // every joint is a good one, whatever was found of it

	// Held makes every contact and converter stand as in a solution of the same
	// state, and leaves out the loads: what a fault drives before anything moves.
	Held *Solution
}

// Change alters one link. Its fields combine.
type Change struct {
	Link     *Link
	Open     bool    // conducts nothing: a broken wire, a blown fuse, an open contact or coil
	Closed   bool    // a contact that stays closed
	Dead     bool    // a source, load, charger or converter that does nothing
	Reversed bool    // a source, charger, diode or converter's output with its polarity turned round
	AddOhms  float64 // more resistance in series, of wires, contacts, fuses, resistances, coils and batteries
	Scale    float64 // factor on the leading figure: volts of what gives, ohms of what resists, amperes or watts of a load; 0 means 1
}

// Bridge joins two nodes by a resistance with a voltage in series whose plus is at A, as a
// meter does, or a leak. If Amps is not 0 it is instead a source that drives that current
// out at A and takes it in at B.
type Bridge struct {
	A, B        Node
	Ohms        float64
	Volts, Amps float64
}

// SolveWith is [Network.Solve] of a sheet that is otherwise in some respects. A source of
// current with no way back is an error.
func (n *Network) SolveWith(s state.State, v Variation) (*Solution, error) {
	if v.isNone() {
		return n.Solve(s)
	}
	b := n.assemble(s, v)
	solution, err := b.solve()
	if err != nil {
		return nil, b.explain(err)
	}
	return solution, nil
}

// isNone reports whether a variation departs in nothing.
func (v *Variation) isNone() bool {
	return len(v.Changes)+len(v.Bridges) == 0 && !v.Dead && v.Celsius == 0 && !v.Sound && v.Held == nil
}

// solve solves the circuit; its error tells of the circuit's elements.
func (b *assembler) solve() (*Solution, error) {
	solved, err := b.c.Solve()
	if err != nil {
		return nil, err
	}
	return &Solution{State: b.state, n: b.n, solved: solved, elements: b.elements, bridges: b.bridges}, nil
}

// assemble makes the circuit of a sheet that is otherwise in some respects.
func (n *Network) assemble(s state.State, v Variation) *assembler {
	b := &assembler{
		n: n, state: s, c: circuit.New(), dead: v.Dead, held: v.Held, sound: v.Sound, celsius: cmp.Or(v.Celsius, wireCelsius),
		elements: make([]circuit.Element, len(n.links)), coils: map[coilID]circuit.Element{},
	}
	if len(v.Changes) > 0 {
		b.changes = make(map[int]*Change, len(v.Changes))
		for i := range v.Changes {
			b.changes[v.Changes[i].Link.index] = &v.Changes[i]
		}
	}
	for range n.points {
		b.c.Node()
	}
	b.c.Grow(len(n.links) + len(v.Bridges))
	b.coilsFirst()
	for i := range n.links {
		b.add(i)
	}
	for _, bridge := range v.Bridges {
		b.bridges = append(b.bridges, b.bridge(bridge))
	}
	return b
}

func (b *assembler) bridge(j Bridge) circuit.Element {
	x, y := circuit.Node(j.A), circuit.Node(j.B)
	switch {
	case j.Amps != 0:
		return b.c.Current(x, y, -j.Amps)
	case j.Volts != 0:
		return b.c.Source(x, y, j.Volts, max(leastOhms, j.Ohms))
	}
	return b.c.Resistor(x, y, max(leastOhms, j.Ohms))
}

// BridgeCurrent is the current in amperes from A to B through a bridge, by its number in
// the variation that was solved.
func (s *Solution) BridgeCurrent(i int) float64 {
	return s.solved.Current(s.bridges[i])
}

// change is what is otherwise about a link; the zero Change if nothing is.
func (b *assembler) change(l *Link) Change {
	if c := b.changes[l.index]; c != nil {
		return *c
	}
	return Change{}
}

// scaled is a leading figure as the variation has it.
func (c Change) scaled(figure float64) float64 {
	if c.Scale == 0 {
		return figure
	}
	return figure * c.Scale
}

// ohms is a resistance as the variation has it, at least a piece of metal's.
func (c Change) ohms(ohms float64) float64 { return max(leastOhms, c.scaled(ohms)+c.AddOhms) }

// ends are the nodes of a link, turned round if the variation says so.
func (c Change) ends(l *Link) (x, y circuit.Node) {
	if c.Reversed {
		return circuit.Node(l.B), circuit.Node(l.A)
	}
	return circuit.Node(l.A), circuit.Node(l.B)
}

// gives reports whether a link is of the things that a dead sheet is without.
func (l *Link) gives() bool {
	return l.Is(model.SourceElement) || l.Is(model.ChargerElement) || l.Is(model.ConverterElement)
}
