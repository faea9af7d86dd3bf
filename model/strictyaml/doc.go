// Package strictyaml reads and writes Go structs as strict YAML, and describes them as
// a JSON Schema. It knows nothing of what the structs mean.
//
// [Decode] refuses everything that YAML allows and a person did not mean, and reports
// all problems of a file at once, each with line, column and what was expected.
// [Encode] writes one canonical form, so that a saved file differs from the one before
// only where a value differs. [Schema] lets an editor check a file while it is written.
//
// # Struct tags
//
//	yaml:"name"            the field's key; fields without a tag are not in the file
//	yaml:"name,required"   the key must be there; it is written even if zero
//	yaml:"name,keyed"      a slice of structs as a mapping; each key is its element's key field
//	yaml:",key"            the field of such an element that holds its key
//	yaml:"name,flow"       on one line if it fits: a list of scalars, a struct, or each element of a list of structs
//	yaml:"name,scalar"     its struct is written as this value alone while no other field is set
//	yaml:",inline"         the fields of an embedded struct stand among those of its parent
//	doc:"words"            what the field means, for the schema and for "missing field"
//
// Fields may be strings, bools, ints, finite float64s, types with UnmarshalText and
// MarshalText, structs, pointers to structs, and slices of these. Any other type is a
// mistake in the program and panics. Zero values are left out; a value is zero if its
// IsZero method says so, or has no such method and is the zero of its type. A
// scalar type may have Names() []string, the closed list of its words, and
// FormHint() (pattern, example string), a regular expression for the schema.
//
// # Canonical form
//
// Fields stand in the order of the struct, elements in the order of the slice. Blocks
// are indented by two spaces and no line is ever wrapped. Text is plain where every
// YAML reader takes it as that text, otherwise double-quoted with escapes for
// everything that is not visible. One blank line stands before and after each section:
// a key at the top that holds a block, an element of a keyed list at the top if such
// elements hold keyed lists of their own, and those lists. Between other entries there
// is none.
//
// # Comments
//
// Comments are kept by the path of keys of what they stand at: above an entry, at the
// end of its line, or at the end of a block. A comment at the head of the file that
// is followed by a blank line belongs to the file. An element of a list without keys
// is known by its content and, if that changed, by its position. One blank line between
// comment lines stays. A file that is read and written without an edit keeps every
// comment, but some move:
//
//   - a key that is not written because its value is zero leaves its comments at the end
//     of its block;
//   - a comment inside a one-line list or mapping makes it a block; one inside a struct that
//     is written as its one value moves above it;
//   - the second line of a comment that continues at the end of a line moves above the
//     next entry;
//   - a comment behind a closing bracket moves to the entry that the bracket closes, and
//     above an item of a list that takes several lines.
//
// Comments at an entry that is removed or whose key is changed go with it. A byte
// order mark, document markers (---, ...) and directives are not kept.
package strictyaml
