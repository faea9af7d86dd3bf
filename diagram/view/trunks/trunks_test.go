package trunks_test

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/diagram/view/trunks"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
	"example.com/lugbook/model/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

// yard is a cart with three zones in a row and one that no run joins.
func yard() (*model.Job, *model.Sheet) {
	j := &model.Job{
		Title: "yard",
		Zones: []model.Zone{{ID: "tray", Name: "pack tray"}, {ID: "bay"}, {ID: "dash", Name: "dash"}, {ID: "shed"}},
		Runs: []model.Run{
			{From: "tray", To: "bay", Length: unit.LengthFromMetres(0.6)}, {From: "bay", To: "dash", Length: unit.LengthFromMetres(1.5)},
		},
	}
	s := &model.Sheet{Name: model.Plan, Parts: []model.Part{
		{ID: "pack", Name: "pack", Zone: "tray"}, {ID: "fu1", Zone: "tray"}, {ID: "ctrl", Name: "controller", Zone: "bay"}, {ID: "key", Zone: "dash"},
		{ID: "spare", Zone: "shed"}, {ID: "lost"},
	}}
	s.Wires = []model.Wire{
		{ID: "w1", From: model.On("pack", "POS"), To: model.On("fu1", "in"), Length: unit.LengthFromMetres(0.15), Gauge: unit.AWG(2)},
		{ID: "w2", From: model.On("fu1", "out"), To: model.On("ctrl", "B+"), Gauge: unit.AWG(2), Colour: model.Colour{Body: "RD"}},
		{ID: "w3", From: model.On("fu1", "out"), To: model.On("key", "BAT"), Gauge: unit.AWG(16), Colour: model.Colour{Body: "RD", Stripe: "WH"}},
		{ID: "w4", From: model.On("key", "IGN"), To: model.On("ctrl", "KSI")},
		{ID: "w5", From: model.On("key", "IGN"), To: model.End{Loose: model.Cut, In: "tray"}, Length: unit.LengthFromMetres(2.5)},
		{ID: "w6", From: model.On("ctrl", "2"), To: model.On("spare", "1")},
		{ID: "w7", From: model.On("ctrl", "3"), To: model.On("lost", "1")},
		{ID: "w8", From: model.On("ctrl", "4"), To: model.On("ctrl", "5")},
	}
	return j, s
}

// TestTables keeps the lists of a harness in which every basis of a length occurs.
func TestTables(t *testing.T) {
	j, s := yard()
	b := board.New(diagram.Shape{Columns: 100}, scene.Page{})
	for _, table := range trunks.Tables(harness.Of(j, s)) {
		b.Table(table)
	}
	pages := b.Pages()
	require.Len(t, pages, 1)
	require.Empty(t, scene.Check(&pages[0]))
	got := text.Render(&pages[0], text.Options{Bare: true}).String()
	file := filepath.Join("testdata", "tables.txt")
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, string(want), got, "run go test -update if the change is meant")
}

func TestZonesListWhatLeavesThem(t *testing.T) {
	j, s := yard()
	p, err := trunks.Draw(j, harness.Of(j, s), 120, true)
	require.NoError(t, err)
	require.Empty(t, scene.Check(&p))
	require.Len(t, p.Boxes, 3, "nothing is drawn of a zone that no run joins")
	require.Len(t, p.Wires, 2)
	require.Contains(t, p.Wires[0].Label.Text, "0.6 m")
	drawn := text.Render(&p, text.Options{Bare: true}).String()
	for _, words := range []string{"pack tray, end of a run", "bay, 2 runs", "fu1", "w2 w3", "w5   cut end", "ctrl  controller  w2 w4"} {
		require.Contains(t, drawn, words)
	}
	require.NotContains(t, drawn, "w1", "it stays in its zone")
	require.NotContains(t, drawn, "w6", "no run is recorded where it goes")
	require.NotContains(t, drawn, "pack  pack", "none of its wires leaves the zone")
}

// TestNarrowPagesFoldLists draws the zones on a page that has no room for names.
func TestNarrowPagesFoldLists(t *testing.T) {
	j, s := yard()
	for i := range 9 {
		s.Wires = append(s.Wires, model.Wire{ID: model.WireID(strings.Repeat("x", i+2)), From: model.On("fu1", "out"), To: model.On("key", "ACC")})
	}
	p, err := trunks.Draw(j, harness.Of(j, s), 44, true)
	require.NoError(t, err)
	require.Empty(t, scene.Check(&p))
	require.LessOrEqual(t, p.W, 44)
	require.Contains(t, text.Render(&p, text.Options{Bare: true}).String(), "xxxxxxxxxx")
}
