package strictyaml

import (
	"fmt"
	"reflect"
)

// builder makes the canonical tree of a Go value.
type builder struct {
	shapes shapes
}

// level is how deep a struct stands, as far as sections go.
type level int

const (
	topLevel   level = iota // the whole file: blocks are sections
	groupLevel              // an element of a keyed list at the top: its keyed lists are sections
	deepLevel               // no sections
)

func (b builder) root(v reflect.Value) (*tree, error) {
	return b.structure(v, topLevel, false)
}

func (b builder) structure(v reflect.Value, l level, flow bool) (*tree, error) {
	s := b.shapes.of(v.Type())
	if t, err := b.lone(v, s, l); t != nil || err != nil {
		return t, err
	}
	t := &tree{kind: mappingKind, flow: flow}
	for _, f := range s.fields {
		fv := v.FieldByIndex(f.index)
		if isZero(fv) && !f.required {
			continue
		}
		child, err := b.value(fv, f, l)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f.name, err)
		}
		section := l == topLevel || l == groupLevel && f.keyed
		t.entries = append(t.entries, &entry{key: f.name, value: child, section: section})
	}
	return t, nil
}

// lone writes a struct as its one scalar field if nothing else in it is set.
func (b builder) lone(v reflect.Value, s *shape, l level) (*tree, error) {
	if s.lone == nil {
		return nil, nil
	}
	for _, f := range s.fields {
		if f.name != s.lone.name && (f.required || !isZero(v.FieldByIndex(f.index))) {
			return nil, nil
		}
	}
	return b.value(v.FieldByIndex(s.lone.index), *s.lone, l)
}

func (b builder) value(v reflect.Value, f field, l level) (*tree, error) {
	switch c := classOf(v.Type()); {
	case c == pointerClass && v.IsNil():
		return b.value(reflect.Zero(v.Type().Elem()), f, l)
	case c == pointerClass:
		return b.value(v.Elem(), f, l)
	case c == structClass:
		return b.structure(v, deepLevel, f.flow)
	case c == sliceClass && f.keyed:
		return b.keyed(v, f, l)
	case c == sliceClass:
		return b.list(v, f)
	}
	text, plain, err := writeScalar(v)
	return &tree{text: text, plain: plain}, err
}

func (b builder) list(v reflect.Value, f field) (*tree, error) {
	t := &tree{kind: sequenceKind}
	t.flow = f.flow && classOf(v.Type().Elem()).isScalar()
	for i := range v.Len() {
		child, err := b.value(v.Index(i), field{flow: f.flow}, deepLevel)
		if err != nil {
			return nil, fmt.Errorf("%d: %w", i, err)
		}
		t.entries = append(t.entries, &entry{value: child})
	}
	return t, nil
}

func (b builder) keyed(v reflect.Value, f field, l level) (*tree, error) {
	t := &tree{kind: mappingKind}
	s := b.shapes.of(v.Type().Elem())
	inner, section := deepLevel, false
	if l == topLevel && s.hasKeyed() {
		inner, section = groupLevel, true
	}
	taken := map[string]bool{}
	for i := range v.Len() {
		elem := v.Index(i)
		key, _, err := writeScalar(elem.FieldByIndex(s.key))
		switch {
		case err != nil:
			return nil, fmt.Errorf("name %d: %w", i+1, err)
		case len(key) > maxKey:
			return nil, fmt.Errorf("name %q... has %d bytes; at most %d can be read back", key[:20], len(key), maxKey)
		case taken[key]:
			return nil, fmt.Errorf("two entries are named %q", key)
		}
		taken[key] = true
		child, err := b.structure(elem, inner, f.flow)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", key, err)
		}
		t.entries = append(t.entries, &entry{key: key, value: child, section: section})
	}
	return t, nil
}
