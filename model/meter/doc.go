// Package meter says what a meter shows on a cart: volts between two terminals, ohms
// with the power off, amperes in a wire; with how far the true value may be from what is
// computed and why, and with what the meter itself may be off by.
//
// A [Bench] is one sheet in one state: several readings there share its solutions.
// [Tabulate] is the whole table of test points by states, and [Drives] tells whether the
// cart can drive in a state, and whether it must.
package meter
