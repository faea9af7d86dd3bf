// Package model is the graph that lugbook keeps of one cart: the job, its
// sheets, and on each sheet the parts, terminals, wires and stacks.
//
// Start with [Job]. A job holds up to three sheets (as found, plan, as built).
// Each [Sheet] is a whole graph; ids persist from sheet to sheet, so any two
// sheets can be compared part by part and wire by wire.
//
// Half-known wiring is first-class. The zero value of every quantity means "not
// recorded", a wire [End] may be cut, capped or untraced, and a part may be of
// unknown kind: the model keeps what was seen and invents nothing.
//
// Nothing but package edit changes a job that is in use. Everything derived
// (networks, findings, drawings) is computed from the graph by other packages
// and never stored in it.
package model
