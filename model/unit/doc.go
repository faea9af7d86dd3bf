// Package unit holds quantities that read as people write them and print back
// the same way: 24 in stays 24 in, 0.6 m stays 0.6 m, 2/0 stays 2/0 AWG. Only the
// spelling is made uniform: 24" prints as 24 in, 16mm² as 16 mm2, 4.50 V as 4.5 V.
//
// Every type is a small comparable value. Its zero value means "not stated",
// which is not the same as 0 V. Two values are equal under == when they would
// print the same; compare the SI accessors (Metres, Volts, ...) to compare sizes.
//
// Every type has IsZero, String, MarshalText, UnmarshalText and FormHint. A zero
// value marshals to an empty text, and an empty text unmarshals to the zero value;
// the Parse functions take an empty text for an error.
//
// Numbers are kept as exact decimals of at most six places, so a text never
// changes on its way through. The size of a quantity is at most one million in
// its SI unit.
package unit
