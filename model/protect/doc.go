// Package protect tells what protects each conductor of a sheet, against what, and with
// which numbers: the current that can persist in it, how far it runs from each source
// before a device, what a bolted fault at either end drives, whether the devices break
// that, whether they open before the conductor is too hot, and whether of two devices in
// series the nearer one opens first.
//
// Of computes all of it from a network. The answers name what they rest on and what is
// missing; they judge nothing beyond the comparison of two numbers.
package protect
