package strictyaml

import (
	"encoding"
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// shape is how a struct stands in a file.
type shape struct {
	fields []field
	key    []int  // index of the key field; nil if it has none
	lone   *field // the field that may stand for the whole struct, or nil
}

// field is one field of a struct and its tags.
type field struct {
	name  string
	index []int
	typ   reflect.Type
	doc   string

	required, keyed, flow, scalar bool
}

func (s *shape) field(name string) *field {
	i := slices.IndexFunc(s.fields, func(f field) bool { return f.name == name })
	if i < 0 {
		return nil
	}
	return &s.fields[i]
}

func (s *shape) names() []string {
	names := make([]string, len(s.fields))
	for i, f := range s.fields {
		names[i] = f.name
	}
	return names
}

// hasKeyed reports whether the struct holds keyed lists.
func (s *shape) hasKeyed() bool {
	return slices.ContainsFunc(s.fields, func(f field) bool { return f.keyed })
}

// shapes remembers the shapes of types for the length of one call.
type shapes map[reflect.Type]*shape

func (c shapes) of(t reflect.Type) *shape {
	if s, ok := c[t]; ok {
		return s
	}
	s := &shape{}
	c[t] = s
	s.add(t, nil)
	for i := range s.fields {
		if s.fields[i].scalar {
			s.lone = &s.fields[i]
		}
	}
	return s
}

func (s *shape) add(t reflect.Type, prefix []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		tag, ok := f.Tag.Lookup("yaml")
		if !ok {
			continue
		}
		name, rest, _ := strings.Cut(tag, ",")
		options := strings.Split(rest, ",")
		has := func(option string) bool { return slices.Contains(options, option) }
		index := slices.Concat(prefix, []int{i})
		switch {
		case has("inline"):
			s.add(f.Type, index)
		case has("key"):
			s.key = index
		case name == "":
			panic(fmt.Sprintf("strictyaml: field %s.%s has a tag without a name", t, f.Name))
		default:
			s.fields = append(s.fields, field{name: name, index: index, typ: f.Type, doc: f.Tag.Get("doc"),
				required: has("required"), keyed: has("keyed"), flow: has("flow"), scalar: has("scalar")})
		}
	}
}

// class is how a Go type stands in a file.
type class int

const (
	textClass   class = iota // has UnmarshalText
	stringClass              // likewise a text, with no form of its own
	boolClass
	intClass
	floatClass
	structClass
	sliceClass
	pointerClass
)

// classOf panics on a type that has no place in a file: a mistake in the program.
func classOf(t reflect.Type) class {
	if t.Kind() != reflect.Pointer && reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()) {
		return textClass
	}
	switch t.Kind() {
	case reflect.String:
		return stringClass
	case reflect.Bool:
		return boolClass
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return intClass
	case reflect.Float64:
		return floatClass
	case reflect.Struct:
		return structClass
	case reflect.Slice:
		return sliceClass
	case reflect.Pointer:
		return pointerClass
	}
	panic(fmt.Sprintf("strictyaml: type %s has no form in a file", t))
}

func (c class) isScalar() bool { return c < structClass }

// isZero is whether a value is left out of a file.
func isZero(v reflect.Value) bool {
	switch {
	case v.Kind() == reflect.Pointer:
		return v.IsNil()
	case v.Kind() == reflect.Slice && classOf(v.Type()) == sliceClass:
		return v.Len() == 0
	}
	if z, ok := v.Interface().(interface{ IsZero() bool }); ok {
		return z.IsZero()
	}
	return v.IsZero()
}

// wordsOf is the closed list of words of a scalar type; nil if it has none.
func wordsOf(t reflect.Type) []string {
	if n, ok := reflect.New(t).Interface().(interface{ Names() []string }); ok {
		return n.Names()
	}
	return nil
}

// formOf is the written form of a scalar type: a regular expression and an example; empty
// if the type does not say.
func formOf(t reflect.Type) (pattern, example string) {
	if h, ok := reflect.New(t).Interface().(interface {
		FormHint() (pattern, example string)
	}); ok {
		return h.FormHint()
	}
	return "", ""
}
