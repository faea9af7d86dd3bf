// Package transient computes, in closed form, what goes to a final value with a time
// constant: a capacitor that charges through a resistor, the current of a coil that
// builds up or dies away, the current of a fault behind the inductance of its loop,
// a temperature; once, or in a cycle repeated until it is steady.
//
// The formulas are those of first order circuits and bodies, as in Lessons In
// Electric Circuits, volume DC, chapter "RC and L/R time constants". Plain numbers
// are in SI units.
package transient
