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
// relay does that breaks its own coil.
type Chatter struct {
	Elements []Element // those that keep switching, in order
}

// Error names the elements.
func (e *Chatter) Error() string {
	return "the circuit comes to no rest: elements " + list(e.Elements) + " keep switching"
}

// Race means that the circuit comes to rest in more than one way, and which one depends on
// which of its elements is faster: two relays that lock each other out and start together.
// It unwraps to a [Chatter] of the same elements, as neither has a steady state to tell.
type Race struct {
	Elements []Element // those that end up one way or the other, in order
}

// Error names the elements.
func (e *Race) Error() string {
	return "where the circuit comes to rest depends on which of elements " + list(e.Elements) + " is faster"
}

// Unwrap is the race as a chatter.
func (e *Race) Unwrap() error { return &Chatter{Elements: e.Elements} }

func list(elements []Element) string {
	names := make([]string, len(elements))
	for i, n := range elements {
		names[i] = fmt.Sprint(int(n))
	}
	return strings.Join(names, ", ")
}
