package network

import (
	"strings"
	"sync"

	"example.com/lugbook/model/state"
)

// solved keeps what came of the states that were solved, by where the controls of the parts
// stand in them: states that differ by name alone are one.
type solved struct {
	mu sync.Mutex
	by map[string]outcome
}

// outcome is a solution, or why there is none.
type outcome struct {
	solution *Solution
	err      error // of the circuit
	b        *assembler
}

// outcome is what comes of a state.
func (n *Network) outcome(s state.State) outcome {
	key := n.stands(s)
	n.solved.mu.Lock()
	o, done := n.solved.by[key]
	n.solved.mu.Unlock()
	if done {
		return o
	}
	b := n.assemble(s, Variation{})
	if o.solution, o.err = b.solve(); o.err != nil {
		o.b = b
	}
	n.solved.mu.Lock()
	defer n.solved.mu.Unlock()
	if n.solved.by == nil {
		n.solved.by = map[string]outcome{}
	}
	n.solved.by[key] = o
	return o
}

// stands lists where the controls of the parts are in a state.
func (n *Network) stands(s state.State) string {
	var b strings.Builder
	for _, c := range n.controls {
		b.WriteString(s.Of(c))
		b.WriteByte(0)
	}
	return b.String()
}
