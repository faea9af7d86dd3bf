package jobfile_test

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/store"
	"example.com/lugbook/model/unit"
)

const small = `# the tug behind the greenhouse
lugbook: 1
title: tug
system: 48 V

zones:
  tray: {name: pack tray}

sheets:
  as-found:
    parts:
      b1: {kind: lead-battery-6v, zone: tray}
      b2: {kind: lead-battery-6v, zone: tray}

    wires:
      # green with acid
      w1: {from: b1.+, to: b2.-, gauge: 6 AWG, colour: BK}
      w2: {from: b2.+, to: untraced}
`

func decode(t require.TestingT, text string) *jobfile.Decoded {
	d, problems := jobfile.Decode("job.yaml", []byte(text), part.Library())
	require.Empty(t, problems)
	return d
}

func TestAnUneditedJobIsWrittenAsItWas(t *testing.T) {
	d := decode(t, small)
	data, err := d.Encode(d.Job)
	require.NoError(t, err)
	require.Equal(t, small, string(data))
}

func TestChangingOneWireChangesOneLine(t *testing.T) {
	d := decode(t, small)
	h := edit.NewHistory(d.Job, part.Library())
	require.NoError(t, h.Do(edit.SetWire{Sheet: model.AsFound, ID: "w1", Field: "length", Text: "12 in"}))
	data, err := d.Encode(h.Job())
	require.NoError(t, err)
	before, after := strings.Split(small, "\n"), strings.Split(string(data), "\n")
	require.Len(t, after, len(before))
	changed := 0
	for i := range before {
		if before[i] != after[i] {
			changed++
		}
	}
	require.Equal(t, 1, changed)
}

func TestEveryProblemIsReportedWithItsPlace(t *testing.T) {
	bad := strings.NewReplacer("b2.-", "b2.neg", "zone: tray}\n      b2", "zone: try}\n      b2", "b2.+", "b7.+").Replace(small)
	_, problems := jobfile.Decode("job.yaml", []byte(bad), part.Library())
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.Error())
	}
	require.Equal(t, []string{
		`job.yaml:12:41: no such zone: "try"; expected a zone listed under zones; did you mean "tray"?`,
		`job.yaml:17:28: a Lead-acid battery, 6 V has no terminal neg: "b2.neg"; expected one of its terminals`,
		`job.yaml:18:18: no part b7 on this sheet: "b7.+"; expected part.terminal of a part on the sheet; did you mean "b1.+"?`,
	}, lines)
}

// TestManyMistakesAreListedInPart: a long sheet whose parts are gone costs neither memory
// nor a terminal full of text.
func TestManyMistakesAreListedInPart(t *testing.T) {
	var b strings.Builder
	b.WriteString(small)
	for i := range 3000 {
		fmt.Fprintf(&b, "      x%d: {from: gone%d.+, to: gone%d.-}\n", i, i, i)
	}
	_, problems := jobfile.Decode("tug.yaml", []byte(b.String()), part.Library())
	require.Len(t, problems, 201)
	require.Contains(t, problems[200].Error(), "up to 5800 more problems that are not listed")
}

func TestAJobThatCannotBeReadBackIsNotWritten(t *testing.T) {
	d := decode(t, small)
	job := d.Job.Clone()
	job.Sheets[0].Wires[0].From = model.End{}
	_, err := d.Encode(job)
	require.ErrorContains(t, err, "expected part.terminal")
}

func TestSaveKeepsWhatAnotherProgramWrote(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.yaml")
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	require.NoError(t, os.WriteFile(path, []byte(small), 0o640))
	f, err := jobfile.Open(path, part.Library())
	require.NoError(t, err)
	other := strings.Replace(small, "title: tug", "title: other", 1)
	require.NoError(t, os.WriteFile(path, []byte(other), 0o640))

	job := f.Job().Clone()
	job.Title = "mine"
	_, err = f.Save(job, store.Options{})
	var changed *store.ChangedError
	require.ErrorAs(t, err, &changed)
	kept, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, other, string(kept))

	elsewhere := filepath.Join(filepath.Dir(path), "mine.yaml")
	_, err = f.SaveAs(elsewhere, job, false)
	require.NoError(t, err)
	mine, err := os.ReadFile(elsewhere)
	require.NoError(t, err)
	require.Contains(t, string(mine), "title: mine")
}

// TestSchemaAgreesWithTheReader runs a validator that nobody here wrote.
func TestSchemaAgreesWithTheReader(t *testing.T) {
	schema := compiled(t)
	require.NoError(t, schema.Validate(map[string]any{
		"lugbook": 1, "title": "tug", "system": "48 V",
		"sheets": map[string]any{"plan": map[string]any{"wires": map[string]any{"w1": map[string]any{"from": "b1.+", "to": "cut in dash"}}}},
	}))
	for name, wrong := range map[string]any{
		"unknown field": map[string]any{"lugbook": 1, "title": "tug", "sistem": "48 V"},
		"no unit":       map[string]any{"lugbook": 1, "title": "tug", "system": "48"},
		"no title":      map[string]any{"lugbook": 1},
		"unknown sheet": map[string]any{"lugbook": 1, "title": "tug", "sheets": map[string]any{"plan": map[string]any{"wire": nil}}},
	} {
		require.Error(t, schema.Validate(wrong), name)
	}
}

func compiled(t *testing.T) *jsonschema.Schema {
	text, err := jobfile.Schema()
	require.NoError(t, err)
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(string(text)))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("job.json", doc))
	schema, err := c.Compile("job.json")
	require.NoError(t, err)
	return schema
}

// TestSaveAndLoadGiveAnEqualJob edits at random and compares what is read back.
func TestSaveAndLoadGiveAnEqualJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := edit.NewHistory(decode(t, small).Job, part.Library())
		for range rapid.IntRange(0, 12).Draw(t, "edits") {
			_ = h.Do(randomEdit(t))
		}
		var fresh *jobfile.Decoded
		data, err := fresh.Encode(h.Job())
		require.NoError(t, err)
		again := decode(t, string(data))
		twice, err := fresh.Encode(again.Job)
		require.NoError(t, err)
		require.Equal(t, string(data), string(twice))
		require.Empty(t, cmp.Diff(h.Job(), again.Job, cmpopts.EquateEmpty(), cmp.Exporter(func(reflect.Type) bool { return true })))
	})
}

func randomEdit(t *rapid.T) edit.Edit {
	words := rapid.StringMatching(`[ -~äΩ]{0,20}`)
	id := rapid.SampledFrom([]string{"w1", "w2", "w3", "w4"}).Draw(t, "id")
	end := rapid.SampledFrom([]model.End{model.On("b1", "+"), model.On("b2", "-"), {Loose: model.Cut, In: "tray"}, model.LooseEnd(model.Untraced)})
	switch rapid.IntRange(0, 4).Draw(t, "kind") {
	case 0:
		return edit.AddWire{Sheet: model.AsFound, Wire: model.Wire{ID: model.WireID(id), From: end.Draw(t, "from"), To: end.Draw(t, "to"),
			Length: unit.LengthFromMetres(float64(rapid.IntRange(1, 9000).Draw(t, "mm")) / 1000)}, FromSeat: edit.Outermost}
	case 1:
		return edit.SetWire{Sheet: model.AsFound, ID: model.WireID(id), Field: "note", Text: words.Draw(t, "note")}
	case 2:
		return edit.RemoveWire{Sheet: model.AsFound, ID: model.WireID(id)}
	case 3:
		return edit.SetPart{Sheet: model.AsFound, ID: "b1", Field: "name", Text: words.Draw(t, "name")}
	default:
		return edit.SetWire{Sheet: model.AsFound, ID: model.WireID(id), Field: "condition", Text: "corroded, loose"}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(small))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, problems := jobfile.Decode("job.yaml", data, part.Library())
		if len(problems) > 0 {
			require.Nil(t, d)
			return
		}
		written, err := d.Encode(d.Job)
		require.NoError(t, err)
		again := decode(t, string(written))
		twice, err := again.Encode(again.Job)
		require.NoError(t, err)
		require.Equal(t, string(written), string(twice))
	})
}
