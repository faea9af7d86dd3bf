// Package part is the library of kinds of part: what terminals a kind has, what is
// electrically between them, its figures and where each figure comes from.
//
// One YAML file in the folder library is one kind; its name is the kind and its fields
// are those of [model.Definition]. A shop keeps kinds of its own in a file that
// [ParseFile] reads. Names of figures come from one [Vocabulary], so that the same
// thing has the same name in every kind.
//
// A figure of the library that nobody confirmed has the source [model.Typical]. A
// figure read off a part in a job stands above it.
package part
