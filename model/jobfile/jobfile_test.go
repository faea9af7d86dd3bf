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
	switch rapid.IntRange(0, 5).Draw(t, "kind") {
	case 5:
		return randomRecord(t, words)
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

// randomRecord is an edit of what was measured or is known of a device.
func randomRecord(t *rapid.T, words *rapid.Generator[string]) edit.Edit {
	on := model.TerminalRef{Part: "b1", Name: "+"}
	r := model.Reading{Sheet: model.AsFound, State: rapid.SampledFrom([]string{"parked", "tow", "limp"}).Draw(t, "state"),
		Time: words.Draw(t, "time"), Note: words.Draw(t, "note"), Red: on, Black: model.TerminalRef{Part: "b2", Name: "-"}}
	n := rapid.IntRange(1, 500_000).Draw(t, "figure")
	switch rapid.IntRange(0, 6).Draw(t, "record") {
	case 0:
		r.Value = unit.V(float64(n) / 1000).Any()
	case 1:
		r.Value = unit.Ohms(float64(n) * 1000).Any()
	case 2:
		r.Red, r.Black, r.Wire, r.Value = model.TerminalRef{}, model.TerminalRef{}, "w1", unit.A(float64(n-1000)/1000).Any()
	case 3:
		r.Open = true
	case 4:
		return edit.SetMeter{Meter: &model.Meter{Accuracy: unit.Pct(float64(n%90) / 10), Counts: n % 10, Display: 1000 + n, Input: unit.Ohms(1e7)}}
	case 5:
		return edit.SetState{State: model.OwnState{Name: "limp", About: words.Draw(t, "about"), From: "tow", Set: []model.Setting{
			{Control: model.PluggedIn, Position: "yes"}, {Control: model.Key, Position: "on"}, {Control: model.Direction, Position: "neutral"},
		}}}
	default:
		return edit.SetOpens{Sheet: model.AsFound, ID: "b1", Points: []model.OpenPoint{
			{At: unit.A(float64(n)), Least: unit.S(10)}, {At: unit.A(float64(n) + 1), Least: unit.S(0.2), Most: unit.S(3)},
		}}
	}
	return edit.AddReading{Reading: r}
}

// What is measured stands on one line a reading; empty lists are not written.
func TestReadingsStatesAndMeterInTheFile(t *testing.T) {
	text := small[:strings.Index(small, "sheets:")] + `states:
  limp: {about: by hand, from: tow, set: {key: "on", plugged-in: "yes", pedal: down}}

meter: {accuracy: 0.5 %, counts: 2, display: 6000, input: 10 Mohm}
` + small[strings.Index(small, "\nsheets:"):] + `
readings:
  - {sheet: as-found, state: limp, red: b1.+, black: b2.-, value: 6.31 V}
  - {sheet: as-found, state: parked, red: b1.-, black: b2.+, open: true, note: fuse out}
  - {sheet: as-found, state: parked, wire: w1, value: -40 mA}
`
	d := decode(t, text)
	require.Len(t, d.Job.Readings, 3)
	require.InDelta(t, 1e7, d.Job.Meter.Input.Ohms(), 1)
	data, err := d.Encode(d.Job)
	require.NoError(t, err)
	require.Equal(t, text, string(data))

	bad := strings.NewReplacer("state: limp", "state: lump", "wire: w1, ", "wire: w1, red: b1.+, ", "6.31 V", "6.31 W").Replace(text)
	_, problems := jobfile.Decode("job.yaml", []byte(bad), part.Library())
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.Error())
	}
	require.Equal(t, []string{
		`job.yaml:26:30: no such state: "lump"; expected a state that follows from the controls, or one of the job's own; did you mean "limp"?`,
		`job.yaml:26:67: two probes read volts or ohms: "6.31 W"; expected a voltage such as 51.2 V or a resistance such as 0.4 ohm`,
		`job.yaml:28:44: a reading of both a wire and terminals: "w1"; expected one of the two`,
	}, lines)
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
