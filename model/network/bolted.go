package network

import (
	"example.com/lugbook/model/circuit"
	"example.com/lugbook/model/state"
)

// Bolted is a sheet in one state, everything held where it stands, set up for faults between
// any two of its nodes, one after the other. It is not for use by several goroutines at once.
type Bolted struct {
	b   *assembler
	rig *circuit.Rig
}

// Bolt sets a sheet up for faults. The variation must hold a solution. The error is that of
// [Network.SolveWith].
func (n *Network) Bolt(s state.State, v Variation) (*Bolted, error) {
	b := n.assemble(s, v)
	rig, err := b.c.Rig()
	if err != nil {
		return nil, b.explain(err)
	}
	return &Bolted{b, rig}, nil
}

// Amps is the current in amperes that flows from a node to another through a bolted fault
// between them. The error is that of [Network.SolveWith].
func (f *Bolted) Amps(at, to Node) (float64, error) {
	amps, err := f.rig.Amperes(circuit.Node(at), circuit.Node(to), leastOhms)
	if err != nil {
		return 0, f.b.explain(err)
	}
	return amps, nil
}

// Solve is what flows everywhere while there is a bolted fault between two nodes.
func (f *Bolted) Solve(at, to Node) (*Solution, error) {
	solved, err := f.rig.Solve(circuit.Node(at), circuit.Node(to), leastOhms)
	if err != nil {
		return nil, f.b.explain(err)
	}
	return &Solution{State: f.b.state, n: f.b.n, solved: solved, elements: f.b.elements, bridges: f.b.bridges}, nil
}
