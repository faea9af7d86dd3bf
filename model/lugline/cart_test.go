package lugline_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
)

// kind is a part definition with nothing but studs.
func kind(name string, terminals ...string) model.Definition {
	d := model.Definition{Kind: name, Title: name, Designator: name}
	for _, t := range terminals {
		d.Terminals = append(d.Terminals, model.TerminalDef{Name: t, Form: model.StudForm})
	}
	return d
}

var library = model.NewCatalogue([]model.Definition{
	kind("battery", "+", "-"), kind("contactor", "l", "s", "c+", "c-"), kind("drive", "b+", "b-", "m-", "k", "p", "r"),
	kind("two-way", "1", "2"), kind("motor", "a1", "a2", "s1", "s2"), kind("post", "J"),
})

// cart is an invented 48 V cart with six batteries and nothing wired. fuse.1 and frs.1
// make f1 ambiguous; x1 is a part that nobody has identified.
func cart() *model.Job {
	s := model.Sheet{Name: model.AsFound}
	add := func(id, kind string) {
		s.Parts = append(s.Parts, model.Part{ID: model.PartID(id), Kind: kind})
	}
	for i := range 6 {
		add(fmt.Sprintf("b%d", i+1), "battery")
	}
	add("sol", "contactor")
	add("ctl", "drive")
	add("motor", "motor")
	for _, id := range []string{"key", "ped", "fuse", "frs", "tow", "chg"} {
		add(id, "two-way")
	}
	add("fr", "post")
	add("x1", model.UnknownKind)
	return &model.Job{Version: model.FileVersion, Title: "six-pack", Zones: []model.Zone{{ID: "tray"}, {ID: "dash"}}, Sheets: []model.Sheet{s}}
}

// walk is a job that is being entered line by line.
type walk struct {
	t       *testing.T
	history *edit.History
	at      model.TerminalRef
	last    *lugline.Entry
}

func newWalk(t *testing.T) *walk {
	return &walk{t: t, history: edit.NewHistory(cart(), library)}
}

func (w *walk) sheet() *model.Sheet { return w.history.Job().Sheet(model.AsFound) }

func (w *walk) context() lugline.Context {
	return lugline.Context{Sheet: w.sheet(), Catalogue: library.For(w.history.Job()), At: w.at, Last: w.last}
}

// goTo stands at another stud.
func (w *walk) goTo(at string) { w.at = ref(w.t, at) }

// enter keeps a line at a stud.
func (w *walk) enter(at, line string) {
	w.t.Helper()
	w.goTo(at)
	r := lugline.Parse(line, w.context())
	id := model.FreeID("w", func(id string) bool { return w.sheet().Wire(model.WireID(id)) != nil })
	e, err := r.Edit(model.WireID(id))
	require.NoError(w.t, err, line)
	require.NoError(w.t, w.history.Do(e), line)
	w.last = &r.Entry
}

func (w *walk) wire(id string) model.Wire {
	w.t.Helper()
	found := w.sheet().Wire(model.WireID(id))
	require.NotNil(w.t, found, id)
	return *found
}

func ref(t testing.TB, text string) model.TerminalRef {
	t.Helper()
	var at model.TerminalRef
	require.NoError(t, at.UnmarshalText([]byte(text)))
	return at
}

// standing is a context on the unwired cart.
func standing(t testing.TB, at string) lugline.Context {
	return lugline.Context{Sheet: cart().Sheet(model.AsFound), Catalogue: library, At: ref(t, at)}
}
