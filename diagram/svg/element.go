package svg

import (
	"bytes"
	"encoding/xml"
	"strconv"

	"example.com/lugbook/model/clean"
)

// document collects elements. Every text and every attribute value passes escape,
// so no caller can forget it.
type document struct {
	buf bytes.Buffer
	ids map[string]int
	pre string // before every id
}

// attr is an attribute with a text or a whole number for a value.
type attr struct {
	name  string
	value any
}

func escape(s string) string {
	var out bytes.Buffer
	// Writing to a buffer cannot fail.
	_ = xml.EscapeText(&out, []byte(s))
	return out.String()
}

// start writes a tag up to its end. Attributes without a value are left out.
func (d *document) start(name string, attrs []attr) {
	d.buf.WriteString("<" + name)
	for _, a := range attrs {
		value := ""
		switch v := a.value.(type) {
		case string:
			value = escape(v)
		case int:
			value = strconv.Itoa(v)
		}
		if value != "" {
			d.buf.WriteString(" " + a.name + `="` + value + `"`)
		}
	}
}

func (d *document) open(name string, attrs ...attr) {
	d.start(name, attrs)
	d.buf.WriteString(">")
}

func (d *document) close(name string) { d.buf.WriteString("</" + name + ">\n") }

func (d *document) empty(name string, attrs ...attr) {
	d.start(name, attrs)
	d.buf.WriteString("/>")
}

func (d *document) text(name, text string, attrs ...attr) {
	d.start(name, attrs)
	d.buf.WriteString(">" + escape(text) + "</" + name + ">")
}

// group opens a group with a title, shown by viewers when the pointer rests on it
// and read by screen readers.
func (d *document) group(id, title string) {
	d.open("g", attr{"id", id})
	if title != "" {
		d.text("title", clean.Line(title))
	}
}

// id makes a unique XML name of a thing's own id.
func (d *document) id(s string) string {
	name := []byte(d.pre + s)
	for i, b := range name {
		switch {
		case b >= 'a' && b <= 'z', b >= 'A' && b <= 'Z', b >= '0' && b <= '9', b == '-', b == '_', b == '.':
		default:
			name[i] = '_'
		}
	}
	d.ids[string(name)]++
	if n := d.ids[string(name)]; n > 1 {
		return string(name) + ".." + strconv.Itoa(n)
	}
	return string(name)
}
