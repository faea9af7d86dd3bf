package strictyaml

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func read(t *testing.T, text string) (store, *Document) {
	t.Helper()
	var s store
	doc, problems := Decode("stock.yaml", []byte(text), &s, Limits{})
	require.NoError(t, problems.Err())
	return s, doc
}

func write(t *testing.T, s store, old *Document) string {
	t.Helper()
	out, err := Encode(s, old)
	require.NoError(t, err)
	return string(out)
}

func TestCanonicalFileIsUnchanged(t *testing.T) {
	s, doc := read(t, full)
	require.Equal(t, full, write(t, s, doc))
}

func typeOf[T any]() reflect.Type { return reflect.TypeFor[T]() }

func TestCommentsSurviveEdits(t *testing.T) {
	s, doc := read(t, full)
	s.Name = "Bolt"
	s.Site.X = 7
	s.Open = false
	s.Moves = append([]spot{{X: 9, Y: 9}}, s.Moves...)
	s.Routes = s.Routes[1:]
	s.Notes[1] = "13"
	s.Gauges[1].Source = ""
	s.Aisles[0].Items[0].Hues = nil
	s.Aisles[0].Items = append(s.Aisles[0].Items, item{Label: "saw"})
	s.Drawers[0], s.Drawers[1] = s.Drawers[1], s.Drawers[0]
	s.Phone = ""
	require.Equal(t, `# Stock of the corner store.
# Kept by hand.

# bumped when the format changes
store: 1
name: Bolt # as painted
rating: 4.5
tags: [bolts, nuts, "a, b"]

notes:
  - plain remark
  - "13" # a number that is text
  - "two\nlines"
  # more to come

paint: red
site: {x: 7, y: -4}

moves:
  - {x: 9, y: 9}
  - {x: 1, y: 2} # the shed
  - {x: 0, y: 0}

routes:
  - from: mill
    far: 2000 m
    # muddy in winter

gauges:
  door: 2 m
  shelf: 3 m # measured twice

aisles:
  left:
    note: tall things

    items:
      # the good ones
      ladder:
        count: 2
        long: 4 m
        paint: orange
      "7": {}
      saw: {}

  back:
    ends:
      e1:
        holds: rope

drawers:
  # empty for now
  a2: {} # swollen shut
  a1: {holds: washers, count: 400}

# end of the list
`, write(t, s, doc))
	again, _ := read(t, full)
	require.Equal(t, full, write(t, again, doc), "the document is not changed by an Encode")
}

func TestCommentsInOtherPlaces(t *testing.T) {
	tests := []struct{ name, in, out string }{
		{
			"file comment parted from the first key",
			"# file\n\n\n# key\nstore: 1\nname: a\n",
			"# file\n\n# key\nstore: 1\nname: a\n",
		}, {
			"comment before a document marker",
			"# file\n--- # marker\nstore: 1\nname: a\n",
			"# file\n# marker\n\nstore: 1\nname: a\n",
		}, {
			"less indented than what follows",
			"store: 1\nname: a\nnotes:\n# first\n  - x\n # second\n  - y\n",
			"store: 1\nname: a\n\nnotes:\n  # first\n  - x\n  # second\n  - y\n",
		}, {
			"between a key and its value",
			"store: 1\nname:\n  # why\n  a\n",
			"store: 1\n# why\nname: a\n",
		}, {
			"inside brackets",
			"store: 1\nname: a\ntags: [ # all\n  x, # ex\n  # why\n  y\n  # done\n] # end\n",
			"store: 1\nname: a\n\n# end\ntags: # all\n  - x # ex\n  # why\n  - y\n  # done\n",
		}, {
			"inside empty brackets",
			"store: 1\nname: a\naisles: {left: {\n  # nothing yet\n}}\n",
			"store: 1\nname: a\n\naisles:\n  # nothing yet\n  left: {}\n",
		}, {
			"inside a one-line item",
			"store: 1\nname: a\nmoves:\n  # here\n  - {x: 1, # one\n     y: 2} # both\n",
			"store: 1\nname: a\n\nmoves:\n  # here\n  # both\n  - x: 1 # one\n    y: 2\n",
		}, {
			"on a block text, and # inside texts",
			"store: 1\nname: | # block\n  a # b\n   # c\n\n# next\nphone: 'it''s # no' # yes\npaint: \"\\u0072ed\" # red\n",
			"store: 1\nname: \"a # b\\n # c\\n\" # block\npaint: red # red\n# next\nphone: \"it's # no\" # yes\n",
		}, {
			"block text with an indicator",
			"aisles:\n  left:\n    note: |2-\n        # text\n      x\n      # text\n    # comment\nstore: 1\nname: a\n",
			"store: 1\nname: a\n\naisles:\n  left:\n    note: \"  # text\\nx\\n# text\"\n    # comment\n",
		}, {
			"at a key that is not written",
			"store: 1\nname: a\n# never\nopen: false # closed\nsite: {x: 1, y: 2}\n",
			"store: 1\nname: a\nsite: {x: 1, y: 2}\n# never\n# closed\n",
		}, {
			"at a struct written as one value",
			"store: 1\nname: a\ngauges:\n  # top\n  door:\n    # read at noon\n    value: 1 m # sure\n    source: \"\"\n",
			"store: 1\nname: a\n\ngauges:\n  # top\n  # read at noon\n  # sure\n  door: 1 m\n",
		}, {
			"keys in another order",
			"name: a # n\n# s\nstore: 1\nroutes:\n  - far: 1 m\n    # why\n    from: b\n",
			"# s\nstore: 1\nname: a # n\n\nroutes:\n  # why\n  - from: b\n    far: 1 m\n",
		}, {
			"list at the indent of its key",
			"store: 1\nname: a\nnotes:\n- x\n# z\nphone: b\n# end\n",
			"store: 1\nname: a\n\nnotes:\n  - x\n\n# z\nphone: b\n# end\n",
		}, {
			"right of what follows but closing nothing",
			"store: 1 # one\n         # two\nname: a\n",
			"store: 1 # one\n# two\nname: a\n",
		}, {
			"a blank line between two",
			"store: 1\nname: a\n# x\n\n\n# y\nphone: b\n",
			"store: 1\nname: a\n# x\n\n# y\nphone: b\n",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s, doc := read(t, tt.in)
			out := write(t, s, doc)
			require.Equal(t, tt.out, out)
			s, doc = read(t, out)
			require.Equal(t, out, write(t, s, doc))
		})
	}
}

func TestFlowGivesWayToLongLines(t *testing.T) {
	s := store{Version: 1, Name: "a", Tags: []string{strings.Repeat("x", lineWidth-len("tags: []"))}}
	require.Contains(t, write(t, s, nil), "tags: [x")
	s.Tags[0] += "x"
	require.Contains(t, write(t, s, nil), "tags:\n  - x")
}

func TestEncodeRefusesWhatCannotBeReadBack(t *testing.T) {
	tests := []struct {
		name, want string
		s          store
	}{
		{"infinite", "rating: +Inf is no number that a file can hold", store{Rating: math.Inf(1)}},
		{"not UTF-8", "notes: 1: the text is not UTF-8", store{Notes: []string{"a", "\xff"}}},
		{"too long", "phone: the text has 4097 bytes; at most 4096 can be read back", store{Contact: Contact{Phone: strings.Repeat("x", 4097)}}},
		{"long key", "gauges: name \"xxxxxxxxxxxxxxxxxxxx\"... has 201 bytes; at most 200 can be read back", store{Gauges: []gauge{{Name: strings.Repeat("x", 201)}}}},
		{"same key", "gauges: two entries are named \"a\"", store{Gauges: []gauge{{Name: "a"}, {Name: "a"}}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Encode(tt.s, nil)
			require.EqualError(t, err, tt.want)
		})
	}
}

func TestUnsupportedTypePanics(t *testing.T) {
	require.PanicsWithValue(t, "strictyaml: type map[string]int has no form in a file", func() {
		_, _ = Encode(struct {
			M map[string]int `yaml:"m"`
		}{M: map[string]int{"a": 1}}, nil)
	})
}
