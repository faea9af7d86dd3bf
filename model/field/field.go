// Package field reads and sets single properties of a model thing by the names that
// the job file uses. Forms, commands and edits share it, so a property is known
// everywhere by one name, one description and one way of writing it.
package field

import (
	"encoding"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// Info describes one editable property.
type Info struct {
	Name    string   // as in the job file
	About   string   // one line for a person
	Choices []string // the closed list of words, if there is one
	List    bool     // several values, written with commas
	Example string   // how a value is written, if the type knows
}

// List describes the editable properties of a struct in its own order: those that one
// line of text can hold. Keys and nested things are left out: they have edits of their own.
func List(subject any) []Info {
	t := reflect.Indirect(reflect.ValueOf(subject)).Type()
	var list []Info
	for i := range t.NumField() {
		f := t.Field(i)
		name, ok := editable(f)
		if !ok {
			continue
		}
		info := Info{Name: name, About: f.Tag.Get("doc")}
		elem := f.Type
		if elem.Kind() == reflect.Slice {
			info.List = true
			elem = elem.Elem()
		}
		zero := reflect.Zero(elem).Interface()
		if n, ok := zero.(interface{ Names() []string }); ok {
			info.Choices = n.Names()
		}
		if h, ok := zero.(interface{ FormHint() (string, string) }); ok {
			_, info.Example = h.FormHint()
		}
		list = append(list, info)
	}
	return list
}

// editable gives the file name of a field that one line of text can hold.
func editable(f reflect.StructField) (string, bool) {
	name, _, _ := strings.Cut(f.Tag.Get("yaml"), ",")
	if name == "" {
		return "", false
	}
	t := f.Type
	if t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	return name, t.Kind() == reflect.String || t.Kind() == reflect.Bool || isText(t)
}

func isText(t reflect.Type) bool {
	return reflect.PointerTo(t).Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}

func find(subject any, name string) (reflect.Value, error) {
	v := reflect.ValueOf(subject).Elem()
	var known []string
	for i := range v.NumField() {
		n, ok := editable(v.Type().Field(i))
		if ok && n == name {
			return v.Field(i), nil
		}
		if ok {
			known = append(known, n)
		}
	}
	return reflect.Value{}, fmt.Errorf("no property %q; known are %s", name, strings.Join(known, ", "))
}

// Get writes a property as the job file does; lists with commas. subject is a
// pointer to a struct. It fails if there is no such property.
func Get(subject any, name string) (string, error) {
	v, err := find(subject, name)
	if err != nil {
		return "", err
	}
	if v.Kind() != reflect.Slice {
		return write(v), nil
	}
	words := make([]string, v.Len())
	for i := range words {
		words[i] = write(v.Index(i))
	}
	return strings.Join(words, ", "), nil
}

func write(v reflect.Value) string {
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		if v.IsZero() {
			return ""
		}
		text, err := m.MarshalText()
		if err != nil {
			return ""
		}
		return string(text)
	}
	if v.Kind() == reflect.Bool {
		return map[bool]string{true: "yes", false: "no"}[v.Bool()]
	}
	return v.String()
}

// Set reads a property from text and leaves it unchanged if the text is not right.
// Empty text clears the property. The error says what was expected.
func Set(subject any, name, text string) error {
	v, err := find(subject, name)
	if err != nil {
		return err
	}
	text = strings.TrimSpace(text)
	fresh := reflect.New(v.Type()).Elem()
	if text != "" {
		if err := read(fresh, text); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	v.Set(fresh)
	return nil
}

func read(v reflect.Value, text string) error {
	if v.Kind() == reflect.Slice {
		for word := range strings.SplitSeq(text, ",") {
			if word = strings.TrimSpace(word); word == "" {
				return model.Expected("a word between the commas")
			}
			item := reflect.New(v.Type().Elem()).Elem()
			if err := read(item, word); err != nil {
				return err
			}
			v.Set(reflect.Append(v, item))
		}
		return nil
	}
	if u, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		return u.UnmarshalText([]byte(text))
	}
	if v.Kind() == reflect.Bool {
		return readBool(v, text)
	}
	if n, ok := v.Interface().(interface{ Names() []string }); ok && !slices.Contains(n.Names(), text) {
		return model.Expected("one of " + strings.Join(n.Names(), ", "))
	}
	v.SetString(text)
	return nil
}

func readBool(v reflect.Value, text string) error {
	switch strings.ToLower(text) {
	case "yes", "true", "y":
		v.SetBool(true)
	case "no", "false", "n":
		v.SetBool(false)
	default:
		return model.Expected("yes or no")
	}
	return nil
}
