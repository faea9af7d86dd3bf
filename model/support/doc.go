// Package support computes what stands around the traction circuit: pre-charge of a
// controller's capacitor, suppression of coils, stand-by drain, the charger against the
// pack and its AC circuit, and the pack's currents against its limits. It reads a network
// and changes nothing. Every result carries its numbers, the assumptions that it rests
// on, what was judged, and words to print.
package support
