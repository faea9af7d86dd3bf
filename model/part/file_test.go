package part

import (
	"io/fs"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/strictyaml"
)

const shop = `lugbook-parts: 1
definitions:
  contactor-48v:
    title: Contactor with auxiliary contact, 48 V coil
    family: switchgear
    designator: sol
    about: The shop's own, with a small contact that follows the main one.
    terminals:
      L1: {form: stud, stud: M8}
      L2: {form: stud, stud: M8}
      coil+: {form: tab}
      coil-: {form: tab}
      aux-a: {form: tab}
      aux-b: {form: tab}
    elements:
      main: {is: contact, between: [L1, L2], coil: coil}
      aux: {is: contact, between: [aux-a, aux-b], coil: coil}
      coil: {is: coil, between: [coil+, coil-], volts: coil-voltage}
    ratings:
      coil-voltage: 48 V
      main-life: 100000 cycles
`

func TestShopKindsStandAboveTheLibrary(t *testing.T) {
	own, problems := ParseFile("shop.yaml", []byte(shop))
	require.NoError(t, problems.Err())
	require.Len(t, own, 1)
	cat := model.NewCatalogue(own, Definitions())
	require.NotNil(t, cat.Definition("contactor-48v").Terminal("aux-a"))
	require.NotNil(t, cat.Definition("contactor-36v"))
	require.Nil(t, Library().Definition("contactor-48v").Terminal("aux-a"), "the library itself is unchanged")
}

func TestShopFileMistakesAreReportedWhereTheyAre(t *testing.T) {
	for _, c := range []struct {
		name, old, new string
		line           int
		message        string
	}{
		{"version of a later program", "lugbook-parts: 1", "lugbook-parts: 2", 1, "unknown version"},
		{"no version", "lugbook-parts: 1", "note: ours", 1, "missing field"},
		{"misspelt field", "designator: sol", "designtor: sol", 6, "did you mean \"designator\""},
		{"unknown family", "family: switchgear", "family: switchgears", 5, "did you mean \"switchgear\""},
		{"terminal that is not there", "[aux-a, aux-b]", "[aux-a, aux-c]", 17, "no such terminal"},
		{"coil that is not there", "between: [L1, L2], coil: coil", "between: [L1, L2], coil: coli", 16, "did you mean \"coil\""},
		{"figure that is not there", "volts: coil-voltage", "volts: coil-volts", 18, "no such rating"},
		{"figure of another kind", "coil-voltage: 48 V", "coil-voltage: 48 A", 20, "wrong kind of quantity for coil-voltage"},
		{"figure without a unit", "coil-voltage: 48 V", "coil-voltage: 48", 20, "unit"},
		{"stud size on a tab", "aux-a: {form: tab}", "aux-a: {form: tab, stud: M4}", 13, "no stud"},
		{"kind twice", "definitions:", "definitions:\n  contactor-48v: {}", 4, "twice"},
	} {
		text := strings.Replace(shop, c.old, c.new, 1)
		require.NotEqual(t, shop, text, c.name)
		own, problems := ParseFile("shop.yaml", []byte(text))
		require.Nil(t, own, c.name)
		require.True(t, slices.ContainsFunc(problems, func(p strictyaml.Problem) bool {
			return p.Line == c.line && strings.Contains(p.Error(), c.message)
		}), "%s: %v", c.name, problems)
	}
}

func FuzzParseFile(f *testing.F) {
	f.Add([]byte(shop))
	f.Add([]byte("lugbook-parts: 1\ndefinitions: {}\n"))
	for _, kind := range []string{"controller-sepex", "direction-rotary", "fuse-block-6-neg"} {
		data, err := fs.ReadFile(library, "library/"+kind+".yaml")
		require.NoError(f, err)
		f.Add([]byte("lugbook-parts: 1\ndefinitions:\n  " + kind + ":\n    " + strings.ReplaceAll(string(data), "\n", "\n    ")))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		own, problems := ParseFile("fuzz.yaml", data)
		if len(problems) > 0 {
			require.Nil(t, own)
			return
		}
		for i := range own {
			require.Empty(t, own[i].Check())
			require.NotEmpty(t, Explain(own[i]))
		}
		text, err := strictyaml.Encode(&File{Version: FileVersion, Definitions: own}, nil)
		require.NoError(t, err)
		again, problems := ParseFile("again.yaml", text)
		require.NoError(t, problems.Err())
		require.Equal(t, own, again)
	})
}
