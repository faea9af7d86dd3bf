package strictyaml

// kind is what a node of the tree is.
type kind int

const (
	scalarKind kind = iota
	mappingKind
	sequenceKind
)

func (k kind) String() string {
	return [...]string{"a single value", "a mapping of keys", "a list"}[k]
}

// tree is a value of a file with the comments in it: read from a source, or built
// from a Go value to be written.
type tree struct {
	kind    kind
	entries []*entry // of a mapping or list
	tail    []remark // comments after the last entry
	text    string   // of a scalar
	plain   bool     // read: the scalar has no quotes; built: it needs none
	flow    bool     // read: written in brackets; built: on one line if it fits
	bad     bool     // already reported; say nothing more about it

	at  place // start of the value
	end int   // read, flow: offset of the closing bracket; 0 while open

	owner *entry // read: the entry whose value this is; nil at the top
}

// entry is a key with its value in a mapping, or an item of a list.
type entry struct {
	key     string
	at      place
	value   *tree
	head    []remark // comments above
	trail   string   // comment at the end of the line
	section bool     // built: blank lines around it
	in      *tree    // read: the mapping or list that holds it
}

// place is where something stands in a source.
type place struct {
	line, column int // from 1, column in characters
	offset       int // in bytes
}

// remark is one line of comment, from its # to its end.
type remark struct {
	text  string
	apart bool // a blank line stands above it
}

// child finds the entry of a key; nil if there is none.
func (t *tree) child(key string) *entry {
	for _, e := range t.entries {
		if e.key == key {
			return e
		}
	}
	return nil
}
