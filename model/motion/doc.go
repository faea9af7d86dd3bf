// Package motion turns what a vehicle does into what its battery gives: the force on a
// grade, the power at a speed, the current behind the pack's resistance, the energy for
// a distance.
//
// Everything is in SI units: kilograms, metres per second, newtons, watts, ohms. A
// grade is rise over run, so 0.1 is 10 %. Small tyres on grass or gravel, and the
// efficiency of old drives, are guesses however they are computed: a measured current
// or energy stands above all figures from here.
package motion
