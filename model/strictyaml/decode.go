package strictyaml

import (
	"fmt"
	"reflect"
	"strings"

	"example.com/lugbook/model/clean"
)

// Decode reads one YAML document into the struct that into points to. name stands for
// the file in problems. All problems are reported, sorted by position; if there are
// any, into holds what could be read, good for further checks alone. Only text that is
// not YAML at all hides what comes after it, and then into is left as it was. The document is never nil: it finds the place of a path for later checks and
// carries the comments to [Encode].
func Decode(name string, data []byte, into any, limits Limits) (*Document, Problems) {
	limits = limits.orDefaults()
	d := &decoder{file: clean.Line(name), limits: limits, shapes: shapes{}, seen: map[Problem]bool{}}
	doc := &Document{file: d.file}
	if len(data) > limits.Bytes {
		d.report(place{line: 1, column: 1}, "", fmt.Sprintf("the file has %d bytes", len(data)), fmt.Sprintf("at most %d bytes", limits.Bytes))
		return doc, d.problems
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	for _, f := range rawFaults(text, limits.Problems) {
		d.report(f.at, "", f.message, "")
	}
	if len(d.problems) > 0 {
		return doc, d.problems
	}
	p := parser{src: newSource(text), limits: limits, report: d.report}
	doc.root = p.load(text)
	if doc.root == nil {
		return doc, d.problems
	}
	doc.header = p.attach(doc.root, p.comments())
	target := reflect.ValueOf(into).Elem()
	fresh := reflect.New(target.Type()).Elem()
	d.value(fresh, doc.root, field{}, nil)
	if len(d.problems) > 0 {
		target.Set(fresh)
		return doc, d.finish()
	}
	canonical, err := builder{shapes: d.shapes}.root(fresh)
	if err != nil {
		d.report(doc.root.at, "", "cannot be written back: "+clean.Error(err), "")
		return doc, d.problems
	}
	carryAll(doc.root, canonical)
	doc.canonical = canonical
	target.Set(fresh)
	return doc, nil
}

// decoder sets Go values from a tree and collects what is wrong with it.
type decoder struct {
	file     string
	limits   Limits
	shapes   shapes
	problems Problems
	seen     map[Problem]bool
	hidden   int
}

func (d *decoder) report(at place, text, message, expected string) {
	d.add(at, text, refusal{message: message, expected: expected})
}

func (d *decoder) add(at place, text string, r refusal) {
	p := Problem{File: d.file, Line: at.line, Column: at.column, Text: shorten(text), Message: r.message, Expected: r.expected}
	if d.seen[p] {
		return
	}
	if len(d.problems) >= d.limits.Problems {
		d.hidden++
		return
	}
	d.seen[p] = true
	p.Nearest = clean.Line(Nearest(text, r.known))
	d.problems = append(d.problems, p)
}

func (d *decoder) finish() Problems {
	d.problems.Sort()
	if d.hidden > 0 {
		last := d.problems[len(d.problems)-1]
		d.problems = append(d.problems, Problem{File: d.file, Line: last.Line, Column: last.Column,
			Message: fmt.Sprintf("and %d more problems that are not listed", d.hidden)})
	}
	return d.problems
}

// value sets v from t. f is the field that v is of; e is the entry that holds t, nil at
// the top.
func (d *decoder) value(v reflect.Value, t *tree, f field, e *entry) {
	if t.bad {
		return
	}
	switch c := classOf(v.Type()); {
	case c == pointerClass:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(v.Elem(), t, f, e)
	case c == structClass:
		d.structure(v, t, e)
	case c == sliceClass && f.keyed:
		d.keyed(v, t)
	case c == sliceClass:
		d.list(v, t)
	case t.kind != scalarKind:
		d.report(t.at, "", t.kind.String(), scalarNoun(v.Type()))
	default:
		if r := readScalar(v, t); r != nil {
			d.add(t.at, t.text, *r)
		}
	}
}

func (d *decoder) list(v reflect.Value, t *tree) {
	if t.kind != sequenceKind {
		d.wrongKind(t, "a list")
		return
	}
	if len(t.entries) == 0 {
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(t.entries), len(t.entries)))
	for i, e := range t.entries {
		d.value(v.Index(i), e.value, field{}, e)
	}
}

func (d *decoder) keyed(v reflect.Value, t *tree) {
	if t.kind != mappingKind {
		d.wrongKind(t, "a mapping of names")
		return
	}
	if len(t.entries) == 0 {
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(t.entries), len(t.entries)))
	index := d.shapes.of(v.Type().Elem()).key
	lines := map[string]int{}
	for i, e := range t.entries {
		elem := v.Index(i)
		d.key(elem.FieldByIndex(index), e, lines)
		d.value(elem, e.value, field{}, e)
	}
}

// key sets the key field of an element. Two keys may be written differently and still
// be one name.
func (d *decoder) key(v reflect.Value, e *entry, lines map[string]int) {
	if r := readScalar(v, &tree{text: e.key}); r != nil {
		d.add(e.at, e.key, *r)
		return
	}
	text, _, err := writeScalar(v)
	if err != nil || len(text) > maxKey {
		d.report(e.at, e.key, "not usable as a name", "")
		return
	}
	if first, taken := lines[text]; taken {
		d.report(e.at, e.key, "name given twice", fmt.Sprintf("each name once; the first is on line %d", first))
		return
	}
	lines[text] = e.at.line
}

func (d *decoder) structure(v reflect.Value, t *tree, e *entry) {
	s := d.shapes.of(v.Type())
	if t.kind == scalarKind && s.lone != nil {
		d.value(v.FieldByIndex(s.lone.index), t, *s.lone, e)
		return
	}
	if t.kind != mappingKind {
		d.wrongKind(t, "a mapping with "+fieldList(s.names()))
		return
	}
	given := map[string]bool{}
	for _, child := range t.entries {
		f := s.field(child.key)
		if f == nil {
			d.unknown(child, s.names())
			continue
		}
		given[f.name] = true
		d.value(v.FieldByIndex(f.index), child.value, *f, child)
	}
	at := t.at
	if e != nil {
		at = e.at
	}
	for _, f := range s.fields {
		if f.required && !given[f.name] {
			d.report(at, f.name, "missing field", f.doc)
		}
	}
}

func (d *decoder) wrongKind(t *tree, expected string) {
	switch {
	case t.kind == scalarKind && t.plain && isNull(t.text):
		d.report(t.at, t.text, "empty value", expected+", or the field left out")
	case t.kind == scalarKind:
		d.report(t.at, t.text, "a single value", expected)
	default:
		d.report(t.at, "", t.kind.String(), expected)
	}
}

func (d *decoder) unknown(e *entry, names []string) {
	r := refusal{message: "unknown field", known: names}
	switch {
	case e.in != nil && e.in.flow && e.value.kind == scalarKind && e.value.plain && e.value.text == "":
		r = refusal{message: "a piece of text after a comma", expected: `quotes around a text that holds a comma, such as note: "green, with acid"`}
	case Nearest(e.key, names) == "":
		r.expected = fieldList(names)
	}
	d.add(e.at, e.key, r)
}

func fieldList(names []string) string {
	if len(names) == 0 {
		return "no fields"
	}
	return strings.Join(names, ", ")
}
