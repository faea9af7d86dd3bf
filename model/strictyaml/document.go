package strictyaml

import (
	"strconv"

	"example.com/lugbook/model/clean"
)

// Document is a file that was read: where its values stand and the comments in it.
type Document struct {
	file      string
	header    []remark
	root      *tree // nil if the file is not YAML
	canonical *tree // the values as Encode writes them, with the comments; nil if there were problems
}

// At is the line and column, from 1, of the value at a path of keys; items of lists
// without keys are numbered from 0. For a mapping or list it is the place of its key,
// and for a path that is not in the file that of its longest part that is.
func (d *Document) At(path ...string) (line, column int) {
	at := place{line: 1, column: 1}
	t := d.root
	for _, key := range path {
		if t == nil {
			break
		}
		e := t.find(key)
		if e == nil {
			break
		}
		at, t = e.at, e.value
		if t.kind == scalarKind {
			at = t.at
		}
	}
	return at.line, at.column
}

func (t *tree) find(key string) *entry {
	if t.kind != sequenceKind {
		return t.child(key)
	}
	i, err := strconv.Atoi(key)
	if err != nil || i < 0 || i >= len(t.entries) {
		return nil
	}
	return t.entries[i]
}

// Problem is a problem that a later check found at a path. known are the names that
// would be right, for a suggestion; it may be nil.
func (d *Document) Problem(path []string, text, message, expected string, known []string) Problem {
	line, column := d.At(path...)
	return Problem{File: d.file, Line: line, Column: column, Text: shorten(text), Message: clean.Line(message),
		Expected: clean.Line(expected), Nearest: clean.Line(Nearest(text, known))}
}
