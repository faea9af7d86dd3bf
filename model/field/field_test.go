package field_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
)

// subjects are the things with editable properties, made afresh for each use.
var subjects = map[string]func() any{
	"job":      func() any { return &model.Job{} },
	"sheet":    func() any { return &model.Sheet{} },
	"zone":     func() any { return &model.Zone{} },
	"run":      func() any { return &model.Run{} },
	"part":     func() any { return &model.Part{} },
	"wire":     func() any { return &model.Wire{} },
	"terminal": func() any { return &model.Terminal{} },
}

// value is a text that a property takes.
func value(i field.Info) string {
	text := "some text"
	switch {
	case i.Choices != nil:
		text = i.Choices[0]
	case i.Example != "":
		text = i.Example
	}
	if i.List {
		if i.Choices != nil {
			return text + ", " + i.Choices[len(i.Choices)-1]
		}
		return text + ", another"
	}
	return text
}

func TestEveryPropertyReadsBack(t *testing.T) {
	for name, fresh := range subjects {
		for _, info := range field.List(fresh()) {
			t.Run(name+" "+info.Name, func(t *testing.T) {
				subject := fresh()
				blank, err := field.Get(subject, info.Name)
				require.NoError(t, err)
				text := value(info)
				if blank == "no" {
					text = "yes"
				}
				require.NoError(t, field.Set(subject, info.Name, "  "+text+" "))
				got, err := field.Get(subject, info.Name)
				require.NoError(t, err)
				require.Equal(t, text, got)
				require.NotEqual(t, fresh(), subject)
				require.NotEmpty(t, info.About)

				require.NoError(t, field.Set(subject, info.Name, ""))
				require.Equal(t, fresh(), subject, "empty text clears")
				again, err := field.Get(subject, info.Name)
				require.NoError(t, err)
				require.Equal(t, blank, again)
			})
		}
	}
}

func TestListHasWhatOneLineCanHold(t *testing.T) {
	names := func(subject any) []string {
		var list []string
		for _, i := range field.List(subject) {
			list = append(list, i.Name)
		}
		return list
	}
	require.Equal(t, []string{"title", "cart", "system", "basis", "coldest", "hottest", "customer", "technician", "date", "revision", "note", "photos"}, names(&model.Job{}))
	require.Equal(t, []string{"kind", "name", "zone", "opening", "secured", "condition", "confidence", "note", "photos"}, names(model.Part{}))
	require.Equal(t, []string{
		"from", "to", "gauge", "colour", "serves", "insulation", "length", "via", "sheathed", "from-lug", "to-lug", "from-barrel", "to-barrel", "material", "supported", "bend", "strain-relief", "guarded",
		"judged", "condition", "confidence", "bundle", "mark", "note", "photos",
	}, names(&model.Wire{}))
	require.Equal(t, []string{"stack", "stud", "cover", "torque", "washer", "material", "condition", "confidence", "note", "photos"}, names(&model.Terminal{}))
}

func TestInfoKnowsTheWords(t *testing.T) {
	list := field.List(&model.Wire{})
	at := slices.IndexFunc(list, func(i field.Info) bool { return i.Name == "judged" })
	require.Equal(t, model.Judgement("").Names(), list[at].Choices)
	require.True(t, list[at].List)
	at = slices.IndexFunc(list, func(i field.Info) bool { return i.Name == "colour" })
	require.Equal(t, "RD/WH", list[at].Example)
	require.False(t, list[at].List)
}

func TestABadTextChangesNothing(t *testing.T) {
	wire := model.Wire{
		Colour: model.Colour{Body: "RD"}, Serves: model.Traction, Judged: []model.Judgement{model.JudgedTo},
		Via: []model.ZoneID{"tray"}, Sheathed: true, To: model.LooseEnd(model.Cut),
	}
	require.NoError(t, field.Set(&wire, "gauge", "6 AWG"))
	for _, c := range []struct{ name, text, say string }{
		{"colour", "plaid", "colour: expected an IEC 60757 colour code"},
		{"serves", "tea", "serves: expected one of traction, charging"},
		{"judged", "to, mood", "judged: expected one of from, to"},
		{"judged", "to,", "judged: expected a word between the commas"},
		{"via", "tray,,dash", "via: expected a word between the commas"},
		{"sheathed", "perhaps", "sheathed: expected yes or no"},
		{"gauge", "thick", "gauge:"},
		{"to", "nowhere", "to: expected part.terminal"},
		{"taste", "sweet", `no property "taste"; known are from, to, gauge`},
	} {
		before := wire.Clone()
		require.ErrorContains(t, field.Set(&wire, c.name, c.text), c.say)
		require.Equal(t, before, wire, c.name)
	}
	_, err := field.Get(&wire, "taste")
	require.ErrorContains(t, err, `no property "taste"`)
}

func TestYesAndNo(t *testing.T) {
	var wire model.Wire
	for text, want := range map[string]bool{"yes": true, "Y": true, "TRUE": true, "no": false, "n": false, "False": false} {
		wire.Sheathed = !want
		require.NoError(t, field.Set(&wire, "sheathed", text))
		require.Equal(t, want, wire.Sheathed, text)
	}
}

func FuzzSet(f *testing.F) {
	for _, i := range field.List(&model.Wire{}) {
		f.Add(i.Name, value(i))
	}
	f.Fuzz(func(t *testing.T, name, text string) {
		var wire model.Wire
		if field.Set(&wire, name, text) != nil {
			require.Equal(t, model.Wire{}, wire)
			return
		}
		once, err := field.Get(&wire, name)
		require.NoError(t, err)
		var again model.Wire
		require.NoError(t, field.Set(&again, name, once), "%q written as %q", text, once)
		twice, err := field.Get(&again, name)
		require.NoError(t, err)
		require.Equal(t, once, twice)
		require.Equal(t, strings.TrimSpace(once), once)
	})
}
