package strictyaml

import (
	"slices"
	"strings"
	"testing"
	"time"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"
	"pgregory.net/rapid"
)

// hostile are pieces that readers of YAML stumble over.
var hostile = []string{
	"", " ", "#", ": ", ":", "- ", "-", "--- ", "...", "? ", "!", "&a", "*a", "|", ">", "%", "@", "`", "'", "\"", "\\",
	"{", "}", "[", "]", ",", "~", "null", "true", "yes", "no", "on", "<<", "=", ".inf", "0x1F", "017", "1_000", "1e3", "12:30",
	"2026-11-25", "-5", "+1", "\n", "\r", "\t", "\x00", "\x1b[31m", "\u0085", "\u00a0", "\u2028", "\u202e", "\ufeff", "\U000E0041",
	"é", "日本", "😀", "e\u0301", "a", "B1", "48 V", "sol.L1", " # x", "x: y", "\uffff", "\U0010ffff", "\x7f",
}

func texts() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.Map(rapid.SliceOfN(rapid.SampledFrom(hostile), 0, 4), func(p []string) string { return strings.Join(p, "") }),
		rapid.StringN(0, 40, 80),
	)
}

func TestEveryTextSurvives(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := texts().Draw(t, "x")
		key := texts().Draw(t, "key")
		want := store{
			Version: 1, Name: x, Tags: []string{x, "and", key}, Notes: []string{x}, Site: &spot{}, Contact: Contact{Phone: key},
			Routes:  []route{{From: x, Far: metres{3, true}}},
			Aisles:  []aisle{{Name: "left", Items: []item{{Label: key, Near: []string{key}}}}},
			Drawers: []drawer{{Label: key, Holds: x}, {Label: key + "2", Count: -1}},
		}
		out, err := Encode(want, nil)
		require.NoError(t, err)
		var got store
		_, problems := Decode("f", out, &got, Limits{})
		require.NoError(t, problems.Err(), "%s", out)
		require.Equal(t, want, got)

		var other map[string]any // a reader that knows nothing of the types sees texts, too
		require.NoError(t, yaml.Load(out, &other))
		require.Equal(t, x, asText(other["name"]), "%s", out)
		for i, want := range []string{x, "and", key} {
			require.Equal(t, want, asText(other["tags"].([]any)[i]), "%s", out)
		}
	})
}

// asText undoes what a reader of YAML 1.1 makes of a plain date.
func asText(v any) any {
	if day, ok := v.(time.Time); ok {
		return day.Format(time.DateOnly)
	}
	return v
}

// Comments are thrown between the lines and at the ends of lines of a canonical file; each
// must be there once after a save, and a second save must change nothing.
func TestCommentsAnywhereSurvive(t *testing.T) {
	lines := strings.Split(strings.TrimSuffix(stripped(), "\n"), "\n")
	rapid.Check(t, func(t *rapid.T) {
		var b strings.Builder
		count := 0
		remark := func() string {
			count++
			return "# c" + strings.Repeat("i", count) + "."
		}
		for _, line := range lines {
			for range rapid.SampledFrom([]int{0, 0, 0, 0, 1, 2}).Draw(t, "above") {
				b.WriteString(strings.Repeat(" ", rapid.IntRange(0, 8).Draw(t, "indent")) + remark() + "\n")
				b.WriteString(rapid.SampledFrom([]string{"", "", "\n"}).Draw(t, "blank"))
			}
			if line != "" && rapid.IntRange(0, 3).Draw(t, "trail") == 0 {
				line += " " + remark()
			}
			b.WriteString(line + "\n")
		}
		var s, plain store
		doc, problems := Decode("f", []byte(b.String()), &s, Limits{})
		require.NoError(t, problems.Err())
		_, problems = Decode("f", []byte(stripped()), &plain, Limits{})
		require.NoError(t, problems.Err())
		require.Equal(t, plain, s)

		once, err := Encode(s, doc)
		require.NoError(t, err)
		for i := range count {
			require.Equal(t, 1, strings.Count(string(once), "# c"+strings.Repeat("i", i+1)+"."), "comment %d in\n%s", i+1, once)
		}
		again, problems := Decode("f", once, &s, Limits{})
		require.NoError(t, problems.Err())
		twice, err := Encode(s, again)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice))
	})
}

// commentsOf lists the comments of a document by text.
func commentsOf(d *Document) []string {
	var texts []string
	for _, r := range slices.Concat(d.header, d.root.remarks()) {
		texts = append(texts, r.text)
	}
	slices.Sort(texts)
	return texts
}

// stripped is the full file without its comments.
func stripped() string {
	var s store
	if _, problems := Decode("f", []byte(full), &s, Limits{}); problems != nil {
		panic(problems)
	}
	out, err := Encode(s, nil)
	if err != nil {
		panic(err)
	}
	return string(out)
}

func FuzzDecode(f *testing.F) {
	f.Add(full)
	f.Add("store: 1\nname: |2 # c\n    x\n  y\n# z\n")
	f.Add("{store: 1, name: 'a', tags: [b: c, # d\n e]}")
	f.Add("a: &x [*x]\n? {a: b}\n: !!binary c\n<<: *x\n")
	f.Add("\ufeff%YAML 1.1\n--- # x\nname: \"\\x00\\u202e\"\n...\n# y\n")
	f.Fuzz(func(t *testing.T, text string) {
		var first, second store
		doc, problems := Decode("f", []byte(text), &first, Limits{Bytes: 20_000})
		for _, p := range problems {
			require.NotContains(t, p.Error(), "\x1b")
			require.NotEqual(t, "this file cannot be read as YAML", p.Message)
			p.Excerpt([]byte(text))
		}
		if problems != nil {
			return
		}
		once, err := Encode(first, doc)
		require.NoError(t, err)
		again, problems := Decode("f", once, &second, Limits{})
		require.NoError(t, problems.Err(), "%q", once)
		require.Equal(t, first, second)
		require.Equal(t, commentsOf(doc), commentsOf(again), "%q", once)
		twice, err := Encode(second, again)
		require.NoError(t, err)
		require.Equal(t, string(once), string(twice))
	})
}
