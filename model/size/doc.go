// Package size picks the thinnest conductor and the fuse that satisfy everything that is
// asked of a circuit, in AWG and in mm2, and says which demand decided.
//
// A Requirement says what is asked; Pick judges every size that is made against every
// demand, so that a person sees why the next thinner one fails. Survey reads the
// requirements of all conductors of a sheet from its computed states, and lists what it
// had to assume.
//
// The figures are an aid. Local codes and the makers' instructions stand above them.
package size
