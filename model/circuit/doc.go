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
// What conducts whatever happens is reduced first: chains, branches side by side and dead ends
// go, unless something that switches is on them. The currents of the rest are found as loop
// currents over a spanning tree of least resistance. So Kirchhoff's current law holds at every
// node to the last digits however low a resistance is, zero included, and the equations are well
// conditioned: after scaling, their least eigenvalue is not below one over the length of
// the longest loop. Nodes that no conducting element joins form islands; the voltage between two
// islands is unknown, and is reported as such.
//
// Diodes, current limits and loads without a condition act at once. Coils, gated contacts,
// gated loads and converters move in their own time, and which of them is faster is not
// known: every order is followed. If all lead to one rest, that is the solution. If some never
// rest the result is a [Chatter], if they rest in different ways a [Race].
//
// A load that would pull its own supply too low neither chatters nor gives a wrong
// number: it is starved, and told by [Solution.Starved].
//
// Volts, amperes, ohms and watts throughout. A current through an element counts
// from its first node to its second, so a source that delivers has a negative one.
package circuit
