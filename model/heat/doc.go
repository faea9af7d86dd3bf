// Package heat computes how copper conductors and joints warm up: the temperature at a
// current held for a time, the peak of a duty that repeats, the current that may flow
// for a short time, the volts and watts of a joint.
//
// A cable is taken as one body. Its loss of heat is what the ampacity table of 33 CFR
// 183.425 implies, its store of heat the copper alone; no table of time constants of
// vehicle cable was found in print. The insulation makes real cables slower, so that
// what is found for a short time is on the safe side.
//
// Plain numbers are in SI units and degrees Celsius.
package heat
