package strictyaml

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// problemsOf decodes and gives the problems in their one-line form.
func problemsOf(t *testing.T, text string, limits Limits) []string {
	t.Helper()
	s := store{Name: "before"}
	doc, problems := Decode("stock.yaml", []byte(text), &s, limits)
	require.NotNil(t, doc)
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.Error())
	}
	return lines
}

const head = "store: 1\nname: Bolt\n"

func TestDecodeRefuses(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"unknown field", "nmae: x\n", `3:1: unknown field: "nmae"; did you mean "name"?`},
		{"unknown field far from all", "gauges: {a: {value: 1 m, zzzzzz: 1}}\n", `3:26: unknown field: "zzzzzz"; expected value, source`},
		{"field twice", "name: Nut\n", `3:1: key given twice: "name"; expected each key once; the first is on line 2`},
		{"name twice in other quotes", "gauges:\n  a: 1 m\n  \"a\": 2 m\n", `5:3: key given twice: "a"; expected each key once; the first is on line 4`},
		{"anchor", "phone: &p x\n", `3:8: an anchor: "&p"; expected the value without it`},
		{"alias", "tags: [a]\nphone: *p\n", `4:8: not YAML: unknown anchor 'p' referenced`},
		{"tag", "phone: !!str x\n", `3:8: a tag: "!!str"; expected the value without it`},
		{"custom tag", "phone: !foo x\n", `3:8: a tag: "!foo"; expected the value without it`},
		{"bare tag", "phone: ! x\n", `3:8: a tag: "!"; expected the value without it`},
		{"merge key", "site: {<<: {x: 1}, x: 1, y: 1}\n", `3:8: a merge key: "<<"; expected the keys themselves`},
		{"list as key", "? [a]\n: b\n", `3:3: a list as a key; expected a name`},
		{"null key", "~: b\n", `3:1: an empty key: "~"; expected a name`},
		{"second document", "---\na: 1\n", `3:1: a second document in one file; expected one document`},
		{"null", "phone: ~\n", `3:8: not a value but YAML's word for none: "~"; expected a text, or the field left out`},
		{"null word", "paint: null\n", `3:8: not a value but YAML's word for none: "null"; expected one of red, green, blue, orange, or the field left out`},
		{"nothing", "open:\n", `3:1: empty value; expected true or false, or the field left out`},
		{"nothing for a list", "notes:\n", `3:1: empty value; expected a list, or the field left out`},
		{"yes for true", "open: yes\n", `3:7: not true or false: "yes"; expected true or false`},
		{"quoted bool", "open: \"true\"\n", `3:7: text in quotes: "true"; expected true or false without quotes`},
		{"leading zero", "site: {x: 017, y: 1}\n", `3:11: not a whole number: "017"; expected decimal digits only, such as 12; no leading zero`},
		{"underscore", "site: {x: 1_000, y: 1}\n", `3:11: not a whole number: "1_000"; expected decimal digits only, such as 12; no underscores`},
		{"exponent", "site: {x: 1e3, y: 1}\n", `3:11: not a whole number: "1e3"; expected decimal digits only, such as 12; no exponent`},
		{"hexadecimal", "site: {x: 0x1F, y: 1}\n", `3:11: not a whole number: "0x1F"; expected decimal digits only, such as 12; no other base than ten`},
		{"plus", "site: {x: +1, y: 1}\n", `3:11: not a whole number: "+1"; expected decimal digits only, such as 12`},
		{"fraction as whole", "site: {x: 1.5, y: 1}\n", `3:11: not a whole number: "1.5"; expected decimal digits only, such as 12`},
		{"overflow", "site: {x: 99999999999999999999, y: 1}\n", `3:11: a number too large: "99999999999999999999"; expected a smaller number`},
		{"infinity", "rating: .inf\n", `3:9: not a decimal number: ".inf"; expected digits and at most one point, such as 12.5; a finite number`},
		{"not a number", "rating: .nan\n", `3:9: not a decimal number: ".nan"; expected digits and at most one point, such as 12.5; a finite number`},
		{"float exponent", "rating: 1e3\n", `3:9: not a decimal number: "1e3"; expected digits and at most one point, such as 12.5; no exponent`},
		{"no digit before the point", "rating: .5\n", `3:9: not a decimal number: ".5"; expected digits and at most one point, such as 12.5`},
		{"enum", "paint: bleu\n", `3:8: unknown word: "bleu"; expected one of red, green, blue, orange; did you mean "blue"?`},
		{"enum as key", "aisles: {lfet: {}}\n", `3:10: unknown word: "lfet"; expected one of left, right, back; did you mean "left"?`},
		{"text form", "gauges: {a: 2 ft}\n", `3:13: not usable: "2 ft"; expected a length such as 12 m or 3 km`},
		{"missing field", "routes:\n  - from: mill\n", `4:5: missing field: "far"; expected length, such as 12 m`},
		{"missing field of a named thing", "gauges: {a: {source: x}}\n", `3:10: missing field: "value"; expected the figure`},
		{"mapping for a text", "phone: {a: b}\n", `3:8: a mapping of keys; expected a text`},
		{"list for a mapping", "site: [1, 2]\n", `3:7: a list; expected a mapping with x, y`},
		{"text for a mapping", "aisles: big\n", `3:9: a single value: "big"; expected a mapping of names`},
		{"mapping for a list", "tags: {a: b}\n", `3:7: a mapping of keys; expected a list`},
		{"escape in a key is shown", "\"a\\e[31m\": 1\n", `3:1: unknown field: "a<U+001B>[31m"; expected store, name, open, rating, tags, notes, paint, site, moves, routes, gauges, aisles, drawers, phone`},
		{"column counts characters", "tags: [ä, ö, {}]\n", `3:14: a mapping of keys; expected a text`},
		{"syntax", "phone: a: b\n", `3:9: not YAML: mapping values are not allowed in this context`},
		{"open quote", "phone: \"a\nb\n", `5:1: not YAML: found unexpected end of stream while scanning a quoted scalar that starts on line 3`},
		{"tab as indent", "site:\n\tx: 1\n", `4:1: not YAML: found character that cannot start any token while scanning for the next token`},
		{"raw escape", "phone: \x1b[31m\n", `3:8: control character U+001B`},
		{"raw escapes", "phone: \x1b[31m\x1b[0m\n", `3:8: control character U+001B`},
		{"raw line separator", "phone: a\u2028b\n", `3:9: control character U+2028`},
		{"raw carriage return", "phone: a\rb\n", `3:9: control character U+000D`},
		{"bad byte", "phone: a\xffb\n", `3:9: not UTF-8 text: byte 0xFF at offset 28`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, []string{"stock.yaml:" + tt.want}, problemsOf(t, head+tt.text, Limits{}))
		})
	}
}

func TestDecodeRefusesWholeFiles(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty", "", "1:1: the file holds no values"},
		{"comments alone", "# nothing\n", "1:1: the file holds no values"},
		{"a list", "- a\n", "1:1: a list; expected a mapping with " + strings.Join(shapes{}.of(typeOf[store]()).names(), ", ")},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			require.Equal(t, []string{"stock.yaml:" + tt.want}, problemsOf(t, tt.text, Limits{}))
		})
	}
}

func TestDecodeAcceptsOtherSpellings(t *testing.T) {
	want, _ := read(t, head+"phone: \"12\"\nopen: true\nnotes: [\"a b\", \"null\"]\nsite: {x: 1, y: 2}\n")
	for _, text := range []string{
		"\ufeff---\n" + head + "phone: 12\nopen: true\nnotes: [a b, 'null']\nsite:\n    x: 1\n    y: 2\n...\n",
		strings.ReplaceAll(head+"open: true # yes\nphone: '12'\nnotes:\n- a b\n- \"null\"\nsite: {y: 2, x: 1}\n", "\n", "\r\n"),
		"{store: 1, name: Bolt, phone: '12', open: true, notes: [a\n  b, 'null'], site: {\n  x: 1, # one\n y: 2}}",
		head + "tags: []\nroutes: []\ngauges: {}\nphone: |-\n  12\nopen: true\nnotes: [a b, \"null\"]\nsite: {x: 1, y: 2}\n",
	} {
		got, _ := read(t, text)
		require.Equal(t, want, got)
	}
}

func TestAllProblemsOfAFileAtOnce(t *testing.T) {
	text := `nmae: Bolt
open: maybe
rating: 1_0.5
tags: {a: b}
paint: grene
site: {x: 017}
phone: &p x
gauges:
  door: 2 ft
aisles:
  middle: {}
`
	require.Equal(t, []string{
		`stock.yaml:1:1: unknown field: "nmae"; did you mean "name"?`,
		`stock.yaml:1:1: missing field: "store"; expected version of the file format`,
		`stock.yaml:1:1: missing field: "name"; expected name over the door`,
		`stock.yaml:2:7: not true or false: "maybe"; expected true or false`,
		`stock.yaml:3:9: not a decimal number: "1_0.5"; expected digits and at most one point, such as 12.5; no underscores`,
		`stock.yaml:4:7: a mapping of keys; expected a list`,
		`stock.yaml:5:8: unknown word: "grene"; expected one of red, green, blue, orange; did you mean "green"?`,
		`stock.yaml:6:1: missing field: "y"; expected metres north`,
		`stock.yaml:6:11: not a whole number: "017"; expected decimal digits only, such as 12; no leading zero`,
		`stock.yaml:7:8: an anchor: "&p"; expected the value without it`,
		`stock.yaml:9:9: not usable: "2 ft"; expected a length such as 12 m or 3 km`,
		`stock.yaml:11:3: unknown word: "middle"; expected one of left, right, back`,
	}, problemsOf(t, text, Limits{}))
}

func TestLimits(t *testing.T) {
	list := func(n int) string { return head + "tags: [" + strings.Repeat("a, ", n) + "]\n" }
	keys := func(n int) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, "  k%d: 1 m\n", i)
		}
		return head + "gauges:\n" + b.String()
	}
	nested := func(n int) string {
		return head + "zzzzzzzz: " + strings.Repeat("[", n) + strings.Repeat("]", n) + "\n"
	}
	small := Limits{Bytes: 5000, Depth: 5, Nodes: 500, Keys: 100, Text: 300}
	tests := []struct {
		name  string
		text  func(n int) string
		last  int
		limit string
	}{
		{"bytes", func(n int) string { return head + strings.Repeat("#", n-len(head)) }, 5000, "the file has 5001 bytes; expected at most 5000 bytes"},
		{"nodes", list, 500 - 7, "more than 500 keys and values"},
		{"keys", keys, 100, "101 keys in one mapping; at most 100 are read"},
		{"text", func(n int) string { return head + "phone: " + strings.Repeat("x", n) + "\n" }, 300, "a text of 301 bytes"},
		{"key", func(n int) string { return head + "gauges: {" + strings.Repeat("k", n) + ": 1 m}\n" }, maxKey, "a key of 201 bytes"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var s store
			_, problems := Decode("f", []byte(tt.text(tt.last)), &s, small)
			require.Empty(t, problems)
			problems = nil
			_, problems = Decode("f", []byte(tt.text(tt.last+1)), &s, small)
			require.Len(t, problems, 1)
			require.Contains(t, problems[0].Error(), tt.limit)
		})
	}
	t.Run("depth", func(t *testing.T) {
		require.Len(t, problemsOf(t, nested(3), small), 1)
		require.Contains(t, problemsOf(t, nested(5), small)[1], "nested deeper than 5 levels")
	})
	t.Run("problems", func(t *testing.T) {
		text := head + strings.Repeat("q", 30) + ": [" + strings.Repeat("&a b,", 30) + "]\n"
		lines := problemsOf(t, text, Limits{Problems: 7})
		require.Len(t, lines, 8)
		require.Contains(t, lines[7], "and 24 more problems that are not listed")
	})
}

// A file at the size limit in the shapes that cost most must be refused or read without
// work that grows with the square of its size; the counts of nodes and keys see to that.
func TestHostileFilesEndSoon(t *testing.T) {
	var keys strings.Builder
	for i := range 40_000 {
		fmt.Fprintf(&keys, "k%d: 1\n", i)
	}
	bomb := "a: &a [x,x,x,x,x,x,x,x,x]\n"
	for c := 'b'; c < 'i'; c++ {
		bomb += fmt.Sprintf("%c: &%c [%s*%c]\n", c, c, strings.Repeat(fmt.Sprintf("*%c,", c-1), 8), c-1)
	}
	for name, text := range map[string]string{
		"many keys":       keys.String(),
		"alias bomb":      bomb,
		"deep":            strings.Repeat("[", 9_000),
		"deep and closed": strings.Repeat("[", 9_000) + strings.Repeat("]", 9_000),
		"one long line":   "é: [" + strings.Repeat("é,", 90_000) + "]\n",
		"empty values":    "é: {" + strings.Repeat("a", 10) + strings.Repeat(",b", 3_000) + "}",
		"comments":        strings.Repeat("# c\n", 200_000) + head,
		"unknown fields":  head + "gauges: {a: {" + strings.Repeat("valeu: 1, ", 5_000) + "}}\n",
	} {
		t.Run(name, func(t *testing.T) {
			var s store
			_, problems := Decode("f", []byte(text), &s, Limits{})
			require.Equal(t, name == "comments", len(problems) == 0)
			require.LessOrEqual(t, len(problems), 201)
		})
	}
}

func TestExcerpt(t *testing.T) {
	text := head + "tags: [ä, \"\\e\", {}] # \u202e\nnext: x\n"
	var s store
	_, problems := Decode("f", []byte(text), &s, Limits{})
	require.Equal(t, "    3 | tags: [ä, \"\\e\", {}] # <U+202E>\n      |                 ^\n", problems[0].Excerpt([]byte(text)))
	long := strings.Repeat("x", 500)
	require.Equal(t, "    1 | "+strings.Repeat("x", 100)+"\n      | "+strings.Repeat(" ", 60)+"^\n", Problem{Line: 1, Column: 300}.Excerpt([]byte(long)))
	require.Equal(t, "    1 | ab\n      |   ^\n", Problem{Line: 1, Column: 99}.Excerpt([]byte("ab\r\n")))
	require.Empty(t, Problem{Line: 3, Column: 1}.Excerpt([]byte("a\nb")))
	require.Empty(t, Problem{}.Excerpt([]byte("a\nb")))
}

func TestDocumentAt(t *testing.T) {
	_, doc := read(t, head+"tags: [a, b]\naisles:\n  left:\n    items:\n      nut: {count: 4}\nroutes:\n  - from: mill\n    far: 2 m\n")
	tests := []struct {
		path         string
		line, column int
	}{
		{"", 1, 1},
		{"name", 2, 7},
		{"tags", 3, 1},
		{"tags 1", 3, 11},
		{"tags 2", 3, 1},
		{"tags x", 3, 1},
		{"aisles left items nut count", 7, 20},
		{"aisles left items nut paint", 7, 7},
		{"aisles right", 4, 1},
		{"routes 0 far", 10, 10},
		{"nothing", 1, 1},
	}
	for _, tt := range tests {
		line, column := doc.At(strings.Fields(tt.path)...)
		require.Equal(t, []int{tt.line, tt.column}, []int{line, column}, tt.path)
	}
	p := doc.Problem([]string{"aisles", "left", "items", "nut", "count"}, "ldader\x1b", "no such item", "a label", []string{"ladder"})
	require.Equal(t, `stock.yaml:7:20: no such item: "ldader<U+001B>"; expected a label; did you mean "ladder"?`, p.Error())
}

func TestNearest(t *testing.T) {
	known := []string{"colour", "gauge", "from", "from-lug", "to"}
	for word, want := range map[string]string{
		"color": "colour", "Gauge": "gauge", "guage": "gauge", "form": "from", "fromlug": "from-lug",
		"ot": "to", "length": "", "": "", "x": "", strings.Repeat("colour", 20): "",
	} {
		require.Equal(t, want, Nearest(word, known), word)
	}
}
