// Package circuit solves direct-current networks in the steady state. It knows
// resistors, sources, contacts, coils, diodes, loads and converters, and nothing of
// carts.
//
// Build a [Circuit] from nodes and elements, then call [Circuit.Solve]:
//
//	c := circuit.New()
//	plus, minus := c.Node(), c.Node()
//	pack := c.Source(plus, minus, 51.2, 0.010)
//	lamp := c.Resistor(plus, minus, 50)
//	solution, err := c.Solve()
//	amperes := solution.Current(lamp)
//
// The currents are found as loop currents over a spanning tree of least resistance.
// So Kirchhoff's current law holds at every node to the last digits however low a
// resistance is, zero included, and the equations are well conditioned: after scaling,
// their least eigenvalue is not below one over the length of the longest loop.
// Nodes that no conducting element joins form islands; the voltage between two islands
// is unknown, and is reported as such.
//
// Diodes, current limits and constant-power loads are settled first, as they act at once.
// Then coils, contacts and loads with a least voltage move, until nothing moves any
// more. If that never happens the result is a [Chatter].
//
// Volts, amperes, ohms and watts throughout. A current through an element counts
// from its first node to its second, so a source that delivers has a negative one.
package circuit
