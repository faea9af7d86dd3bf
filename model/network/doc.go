// Package network turns a sheet into an electrical graph: a node for each terminal
// and each loose wire end, a link for each wire and each element inside a part.
//
// [Build] makes the graph. [Network.Solve] computes voltages and currents in one
// state of the cart's controls. The other files look at the graph without solving:
// what is joined by metal, how the batteries form strings, which nodes can be joined
// to which pole of a source, and how much current can reach a conductor before a
// protective device opens.
//
// Nothing here judges: the rules do.
package network
