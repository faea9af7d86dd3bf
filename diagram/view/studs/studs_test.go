package studs_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/diagram/view/studs"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

func size(s string) unit.Stud {
	stud, err := unit.ParseStud(s)
	if err != nil {
		panic(err)
	}
	return stud
}

// job is a battery with a lamp on it and a loose wire, and a post whose order of lugs is
// not recorded.
func job() *model.Job {
	s := model.Sheet{
		Name: model.AsFound,
		Parts: []model.Part{
			{ID: "b1", Kind: "lead-battery-12v", Name: "battery", Zone: "tray"}, {ID: "lt1", Kind: "lamp-12v"}, {ID: "neg", Kind: "bus-post"},
		},
		Wires: []model.Wire{
			{ID: "w1", From: model.On("b1", "+"), To: model.On("lt1", "+"), Gauge: unit.AWG(16), Colour: model.Colour{Body: "RD"}, FromLug: size("5/16 in")},
			{ID: "w2", From: model.On("b1", "+"), To: model.LooseEnd(model.Cut), Gauge: unit.AWG(4), FromLug: size("3/8 in")},
			{ID: "w3", From: model.On("lt1", "-"), To: model.On("neg", "POST")},
			{ID: "w4", From: model.On("neg", "POST"), To: model.On("b1", "-"), Gauge: unit.AWG(10), Colour: model.Colour{Body: "BK"}},
		},
		Terminals: []model.Terminal{{At: model.TerminalRef{Part: "b1", Name: "+"}, Stack: []model.WireID{"w2", "w1"}, Torque: unit.Nm(9), Cover: model.CoverMissing}},
	}
	return &model.Job{Version: 1, Title: "studs", Zones: []model.Zone{{ID: "tray", Name: "pack tray"}}, Sheets: []model.Sheet{s}}
}

func drawn(t *testing.T, columns int) string {
	t.Helper()
	j := job()
	list, leftOut := studs.Of(network.Build(j, &j.Sheets[0], part.Library()))
	require.Zero(t, leftOut)
	require.Len(t, list, 3)
	b := board.New(diagram.Shape{Columns: columns}, scene.Page{})
	b.Cards(studs.Cards(j, list, columns))
	pages := b.Pages()
	require.Len(t, pages, 1)
	require.Empty(t, scene.Check(&pages[0]))
	require.LessOrEqual(t, pages[0].W, columns)
	return text.Render(&pages[0], text.Options{ASCII: true, Bare: true}).String()
}

func TestCards(t *testing.T) {
	require.Contains(t, drawn(t, 60), strings.TrimLeft(`
| b1.+: battery, pack tray                             |
|    |    5/16 in stud by the library, cover missing   |
`, "\n"))
	for _, line := range []string{
		"nut, torque 9 N m by the part's record",
		"---|--- 2 w1 16 AWG RD", "lt1.+",
		"###|### 1 w2 4 AWG ?", "cut",
		"^^^^^^^ seat; lug of w2 3/8 in",
		"order of lugs", "nut, torque not recorded",
		"? w3 size ? ?", "? w4 10 AWG BK", "seat; lug of w3, w4 not recorded",
	} {
		require.Contains(t, drawn(t, 60), line)
	}
}

// TestNarrowCardsFold sets cards on a page that does not hold the texts of a lug side by
// side: nothing is lost.
func TestNarrowCardsFold(t *testing.T) {
	words := strings.Fields(drawn(t, 26))
	for _, word := range []string{"w1", "w2", "w3", "w4", "lt1.+", "cut", "neg.POST", "b1.-"} {
		require.Contains(t, words, word)
	}
}
