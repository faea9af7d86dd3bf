// Package conductor knows copper conductors and what is put on their ends: their
// resistance, how much current they may carry, how large the fuse before them may be
// and where it must sit, and which lug goes on which stud.
//
// All figures come from open standards and regulations, named where the figures
// stand. Figures that were put down from memory say so and carry a mark that
// callers can show.
//
// Plain numbers are in SI units (ohms, amperes, volts, seconds) and degrees Celsius.
package conductor
