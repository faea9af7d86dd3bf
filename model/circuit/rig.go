package circuit

import (
	"errors"
	"math"
	"slices"
)

// Rig is a circuit in which nothing moves, set up so that a resistance can be laid between
// any two of its nodes, one pair after the other. What the resistance carries follows from
// the voltage that it finds and the resistance that it sees (Thévenin's theorem), so that the
// circuit is reduced once for all pairs. It is not for use by several goroutines at once.
type Rig struct {
	circuit  *Circuit
	s        *state // nil if the circuit comes to no rest by itself
	bridge   *element
	anchors  []Node    // by node: one that is not removed from the fixed part and that it is joined to
	rest     []mode    // as it stands without a bridge
	open     []float64 // by node: volts without a bridge, as it stands
	slopes   []float64 // by node: volts of an ampere through the bridge
	loose    []float64 // by node: volts without a bridge, as the modes are
	scratch  []float64 // currents that nobody asks for
	before   []mode
	switched []Element
	first    []bool // by node: in the island at the first end of the bridge
}

// errMoves is the error of a circuit that a rig is not for.
var errMoves = errors.New("the circuit has coils, gates, loads or converters: hold them first")

// Rig sets a circuit up for bridges. It must have no coils, gated contacts, loads and
// converters. The error is an [Invalid] or [Singular] circuit.
func (c *Circuit) Rig() (*Rig, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	r := &Rig{circuit: &Circuit{nodes: c.nodes, elements: slices.Clip(c.elements)}}
	with := &Circuit{nodes: c.nodes, elements: append(r.circuit.elements, element{kind: current})}
	s, err := newState(with)
	if err != nil {
		return nil, err
	}
	for i := range c.elements {
		if c.elements[i].kind == load || c.elements[i].moves() {
			return nil, errMoves
		}
	}
	if s.settle() != nil {
		return r, nil
	}
	s.mesh.anywhere = true
	r.s, r.bridge, r.rest = s, &s.elements[len(c.elements)], slices.Clone(s.modes)
	r.slopes, r.loose, r.open = make([]float64, c.nodes), make([]float64, c.nodes), make([]float64, c.nodes)
	r.scratch, r.first = make([]float64, len(s.elements)), make([]bool, c.nodes)
	r.anchor()
	r.float(r.open)
	return r, nil
}

// anchor finds what each node is surely joined to.
func (r *Rig) anchor() {
	r.anchors = make([]Node, r.circuit.nodes)
	for i := range r.anchors {
		r.anchors[i] = Node(i)
	}
	for _, s := range slices.Backward(r.s.mesh.fixed.steps) {
		if s.kind == leafStep || s.kind == chainStep {
			r.anchors[s.n] = r.anchors[s.p]
		}
	}
}

// float finds the voltages without a bridge, as the modes are.
func (r *Rig) float(volts []float64) {
	r.bridge.amperes = 0
	r.s.solve()
	r.s.mesh.spreadFixed(r.s.volts)
	copy(volts, r.s.volts)
}

// Amperes is the current from a to b through a resistance in ohms between them. The error
// is that of [Circuit.Solve].
func (r *Rig) Amperes(a, b Node, ohms float64) (float64, error) {
	amperes, _, err := r.lay(a, b, ohms)
	return amperes, err
}

// Solve is the whole solution with a resistance in ohms from a to b; the resistance itself
// is no element of it.
func (r *Rig) Solve(a, b Node, ohms float64) (*Solution, error) {
	_, solution, err := r.lay(a, b, ohms)
	if solution != nil || err != nil {
		return solution, err
	}
	n := len(r.circuit.elements)
	island := r.s.mesh.complete(r.s.currents, r.s.volts)
	on := make([]bool, n)
	for i := range on {
		on[i] = r.s.on(Element(i))
	}
	return &Solution{
		elements: r.circuit.elements, island: island, volts: slices.Clone(r.s.volts), currents: slices.Clone(r.s.currents[:n]),
		on: on, starved: make([]bool, n),
	}, nil
}

// lay puts the state to what it is with a bridge. It gives a solution if it had to solve the
// circuit another way.
func (r *Rig) lay(a, b Node, ohms float64) (amperes float64, solution *Solution, err error) {
	if r.s == nil {
		return r.whole(a, b, ohms)
	}
	copy(r.s.modes, r.rest)
	for range freePasses {
		r.bridge.a, r.bridge.b, r.bridge.amperes = a, b, 0
		if err := r.s.rewire(); err != nil {
			return 0, nil, err
		}
		joins := r.island(a) != r.island(b)
		if joins {
			r.join()
		}
		if again, err := r.check(); err != nil {
			return 0, nil, err
		} else if again {
			continue
		}
		if joins {
			r.cross(ohms)
		} else {
			r.carry(ohms)
		}
		r.s.strongest = math.Abs(r.bridge.amperes)
		if r.switched = r.s.switchModes(r.switched[:0], false); len(r.switched) == 0 {
			return r.bridge.amperes, nil, nil
		}
	}
	return r.whole(a, b, ohms)
}

// island names the nodes that conduct to a node as the modes are, the bridge left out.
func (r *Rig) island(n Node) Node { return r.s.mesh.islands[r.anchors[n]] }

// check looks for what is forced and has no way back, and reports whether that changed
// anything.
func (r *Rig) check() (changed bool, err error) {
	r.before = append(r.before[:0], r.s.modes...)
	err = r.s.checkReturns()
	return !slices.Equal(r.before, r.s.modes), err
}

// carry sends through the bridge what it carries inside one island.
func (r *Rig) carry(ohms float64) {
	open := r.open
	if !slices.Equal(r.s.modes, r.rest) {
		open = r.loose
		r.float(open)
	}
	one := [1]Element{Element(len(r.circuit.elements))}
	r.s.forced[one[0]] = 1
	r.s.mesh.solve(r.scratch, r.slopes, r.s.forced, one[:], false)
	r.s.mesh.spreadFixed(r.slopes)
	a, b := r.bridge.a, r.bridge.b
	r.bridge.amperes = (open[a] - open[b]) / (ohms + r.slopes[b] - r.slopes[a])
	r.s.solve()
}

// join makes one island of the two that the bridge joins.
func (r *Rig) join() {
	one, other := r.island(r.bridge.a), r.island(r.bridge.b)
	for n := range r.first {
		r.first[n] = r.island(Node(n)) == one
	}
	for _, n := range r.s.mesh.nodes {
		if r.first[n] {
			r.s.mesh.islands[n] = other
		}
	}
	r.s.ready = false // the mesh does not know
}

// cross sends through a bridge between two islands what is forced into the first and out of
// the second.
func (r *Rig) cross(ohms float64) {
	r.s.force()
	for _, i := range r.s.injecting {
		switch e := &r.s.elements[i]; {
		case r.first[e.b] && !r.first[e.a]:
			r.bridge.amperes += r.s.forced[i]
		case r.first[e.a] && !r.first[e.b]:
			r.bridge.amperes -= r.s.forced[i]
		}
	}
	r.s.solve()
	r.s.mesh.spreadFixed(r.s.volts)
	a, b := r.bridge.a, r.bridge.b
	shift := ohms*r.bridge.amperes - (r.s.volts[a] - r.s.volts[b])
	for n, first := range r.first {
		if first {
			r.s.volts[n] += shift
		}
	}
}

// whole solves the circuit with the bridge as one of its elements.
func (r *Rig) whole(a, b Node, ohms float64) (float64, *Solution, error) {
	with := &Circuit{nodes: r.circuit.nodes, elements: r.circuit.elements}
	bridge := with.Resistor(a, b, ohms)
	solution, err := with.Solve()
	if err != nil {
		return 0, nil, err
	}
	return solution.Current(bridge), solution, nil
}
