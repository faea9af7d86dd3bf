package strictyaml

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
)

// Schema describes the files that [Decode] reads into v, a struct or a pointer to one,
// as a JSON Schema of draft 2020-12. The bytes depend on the types and title alone.
// What the schema cannot say, such as that a reference leads somewhere, it leaves to Decode
// and the checks after it. It is stricter in one point: where a text is expected, a
// number must stand in quotes.
func Schema(v any, title string) ([]byte, error) {
	g := generator{shapes: shapes{}, names: map[reflect.Type]string{}}
	t := reflect.Indirect(reflect.ValueOf(v)).Type()
	root := g.structure(t)
	doc := object{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", title},
	}
	doc = append(doc, root...)
	if defs := g.definitions(); len(defs) > 0 {
		doc = append(doc, member{"$defs", defs})
	}
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(doc); err != nil {
		return nil, fmt.Errorf("write the schema: %w", err)
	}
	return out.Bytes(), nil
}

// object is a JSON object whose members keep their order.
type object []member

type member struct {
	name  string
	value any
}

// MarshalJSON writes the members in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		for j, part := range []any{m.name, m.value} {
			if j > 0 {
				b.WriteByte(':')
			}
			enc := json.NewEncoder(&b)
			enc.SetEscapeHTML(false)
			if err := enc.Encode(part); err != nil {
				return nil, err
			}
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// generator writes schemas of types. A struct type is described once, under $defs.
type generator struct {
	shapes shapes
	names  map[reflect.Type]string // of the structs met so far
	order  []reflect.Type          // likewise, in the order met
}

func (g *generator) definitions() object {
	var defs object
	for i := 0; i < len(g.order); i++ { // describing one may meet more
		t := g.order[i]
		defs = append(defs, member{g.names[t], g.structure(t)})
	}
	return defs
}

// reference names the definition of a struct type.
func (g *generator) reference(t reflect.Type) object {
	name, ok := g.names[t]
	if !ok {
		name = t.Name()
		for _, other := range g.order {
			if g.names[other] == name {
				name = fmt.Sprintf("%s%d", t.Name(), len(g.order))
			}
		}
		g.names[t] = name
		g.order = append(g.order, t)
	}
	return object{{"$ref", "#/$defs/" + name}}
}

func (g *generator) structure(t reflect.Type) object {
	s := g.shapes.of(t)
	var properties object
	var required []string
	for _, f := range s.fields {
		var described object
		if f.doc != "" {
			described = object{{"description", f.doc}}
		}
		properties = append(properties, member{f.name, append(described, g.value(f.typ, f)...)})
		if f.required {
			required = append(required, f.name)
		}
	}
	o := object{{"type", "object"}, {"additionalProperties", false}, {"properties", properties}}
	if properties == nil {
		o = o[:2]
	}
	if required != nil {
		o = append(o, member{"required", required})
	}
	if s.lone == nil {
		return o
	}
	return object{{"anyOf", []object{g.value(s.lone.typ, *s.lone), o}}}
}

func (g *generator) value(t reflect.Type, f field) object {
	switch c := classOf(t); {
	case c == pointerClass:
		return g.value(t.Elem(), f)
	case c == structClass:
		return g.reference(t)
	case c == sliceClass && f.keyed:
		key := g.shapes.of(t.Elem()).key
		return object{
			{"type", "object"},
			{"propertyNames", append(scalarSchema(t.Elem().FieldByIndex(key).Type), member{"maxLength", maxKey})},
			{"additionalProperties", g.reference(t.Elem())},
		}
	case c == sliceClass:
		return object{{"type", "array"}, {"items", g.value(t.Elem(), field{})}}
	}
	return scalarSchema(t)
}

func scalarSchema(t reflect.Type) object {
	switch classOf(t) {
	case boolClass:
		return object{{"type", "boolean"}}
	case intClass:
		return object{{"type", "integer"}}
	case floatClass:
		return object{{"type", "number"}}
	}
	o := object{{"type", "string"}}
	pattern, example := formOf(t)
	words := wordsOf(t)
	switch {
	case pattern != "":
		o = append(o, member{"pattern", pattern})
	case words != nil:
		o = append(o, member{"enum", words})
	}
	if example != "" {
		o = append(o, member{"examples", []string{example}})
	}
	return o
}
