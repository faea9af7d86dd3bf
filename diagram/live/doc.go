// Package live works out from a solved network what a drawing shows of a state: which
// wires are dead, on the minus side or live, what they carry, and what the parts do.
package live
