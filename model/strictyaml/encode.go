package strictyaml

import (
	"bytes"
	"reflect"
	"strings"
	"unicode/utf8"
)

// lineWidth is how many columns a one-line list or mapping may take with its key.
const lineWidth = 160

// Encode writes the struct v, or the struct that v points to, in the canonical form. The
// comments of old, if it is not nil, are kept; old stays as it is. It fails on what
// could not be read back: texts that are not UTF-8 or too long, numbers that are not
// finite, two elements of one name.
func Encode(v any, old *Document) ([]byte, error) {
	root, err := builder{shapes: shapes{}}.root(reflect.Indirect(reflect.ValueOf(v)))
	if err != nil {
		return nil, err
	}
	var w writer
	if old != nil {
		from := old.canonical
		if from == nil {
			from = old.root
		}
		if from != nil {
			carry(from, root)
		}
		w.remarks(old.header, 0)
		if len(old.header) > 0 {
			w.out.WriteByte('\n')
		}
	}
	w.document(root)
	return w.out.Bytes(), nil
}

// writer writes trees as text.
type writer struct {
	out bytes.Buffer
}

func (w *writer) document(root *tree) {
	if len(root.entries) == 0 {
		w.remarks(root.tail, 0)
		w.out.WriteString("{}\n")
		return
	}
	w.block(root, 0, false)
}

// block writes the entries of a mapping or list. A started block has its first
// line begun, behind the dash of an item, and the comments above that line written.
func (w *writer) block(t *tree, indent int, started bool) {
	apart := false
	for i, e := range t.entries {
		inline, fits := inline(t, e, indent)
		section := e.section && !fits
		if i > 0 && (apart || section) {
			w.out.WriteByte('\n')
		}
		apart = section
		if i > 0 || !started {
			w.remarks(above(t, e, indent), indent)
			w.indent(indent)
		}
		if t.kind == mappingKind {
			w.out.WriteString(quoted(e.key, false) + ":")
		} else {
			w.out.WriteByte('-')
		}
		switch {
		case fits:
			w.line(" "+inline, e.trail)
		case t.kind == sequenceKind:
			w.out.WriteByte(' ')
			w.block(e.value, indent+2, true)
		default:
			w.line("", e.trail)
			w.block(e.value, indent+2, false)
		}
	}
	if len(t.tail) > 0 && apart {
		w.out.WriteByte('\n')
	}
	w.remarks(t.tail, indent)
}

// above lists the comments to write above an entry: its own and those that have no
// place of their own in what follows.
func above(t *tree, e *entry, indent int) []remark {
	list := append([]remark(nil), e.head...)
	if _, fits := inline(t, e, indent); fits {
		return append(list, e.value.tail...)
	}
	if t.kind == mappingKind {
		return list
	}
	if e.trail != "" {
		list = append(list, remark{text: e.trail})
	}
	return append(list, above(e.value, e.value.entries[0], indent+2)...)
}

// inline is an entry's value on one line, if it goes there.
func inline(t *tree, e *entry, indent int) (text string, ok bool) {
	v := e.value
	switch {
	case v.kind == scalarKind, len(v.entries) == 0:
		return v.oneLine(false), true
	case !v.flow || len(v.remarks()) > 0:
		return "", false
	}
	text = v.oneLine(false)
	lead := "- "
	if t.kind == mappingKind {
		lead = quoted(e.key, false) + ": "
	}
	return text, indent+utf8.RuneCountInString(lead)+utf8.RuneCountInString(text) <= lineWidth
}

// oneLine is a value in brackets, or a scalar. inside says that it stands in brackets
// itself.
func (t *tree) oneLine(inside bool) string {
	var parts []string
	for _, e := range t.entries {
		part := e.value.oneLine(true)
		if t.kind == mappingKind {
			part = quoted(e.key, true) + ": " + part
		}
		parts = append(parts, part)
	}
	switch {
	case t.kind == mappingKind:
		return "{" + strings.Join(parts, ", ") + "}"
	case t.kind == sequenceKind:
		return "[" + strings.Join(parts, ", ") + "]"
	case t.plain:
		return t.text
	}
	return quoted(t.text, inside)
}

func (w *writer) line(text, trail string) {
	w.out.WriteString(text)
	if trail != "" {
		w.out.WriteString(" " + trail)
	}
	w.out.WriteByte('\n')
}

// remarks writes comments, each on a line, and one blank line where the source had any.
func (w *writer) remarks(list []remark, indent int) {
	for i, r := range list {
		if i > 0 && r.apart {
			w.out.WriteByte('\n')
		}
		w.indent(indent)
		w.line(r.text, "")
	}
}

func (w *writer) indent(n int) { w.out.WriteString(strings.Repeat(" ", n)) }
