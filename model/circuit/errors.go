package circuit

import (
	"fmt"
	"strings"
)

// Invalid means that an element was built with figures that make no sense.
type Invalid struct {
	Element Element
	Why     string
}

// Error names the element and what is wrong with it.
func (e *Invalid) Error() string { return fmt.Sprintf("element %d %s", e.Element, e.Why) }

// Singular means that a loop has no resistance, so that its current has no value.
type Singular struct {
	Node    Node    // on the loop
	Element Element // that closes it
}

// Error names a node and an element of the loop.
func (e *Singular) Error() string {
	return fmt.Sprintf("the loop through node %d that element %d closes has no resistance: give one of its elements some", e.Node, e.Element)
}

// Open means that the current of a current source has no way back.
type Open struct {
	Element Element
}

// Error names the source.
func (e *Open) Error() string {
	return fmt.Sprintf("the current of element %d has no way back: join its nodes", e.Element)
}

// Chatter means that the circuit comes to no rest: elements switch for ever, as a
// relay does that breaks its own coil, or a load that pulls its own supply too low.
type Chatter struct {
	Elements []Element // those that keep switching, in order
}

// Error names the elements.
func (e *Chatter) Error() string {
	names := make([]string, len(e.Elements))
	for i, n := range e.Elements {
		names[i] = fmt.Sprint(int(n))
	}
	return "the circuit comes to no rest: elements " + strings.Join(names, ", ") + " keep switching"
}
