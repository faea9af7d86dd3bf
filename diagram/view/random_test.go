package view_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/svg"
	"example.com/lugbook/diagram/view"
	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// randomJob is a job of two sheets of parts of the library wired at random, the second
// made from the first by random changes; with runs between some of its zones.
func randomJob(seed uint64) *model.Job {
	r := rand.New(rand.NewPCG(seed, 2))
	j := &model.Job{Version: 1, Title: "random", Zones: []model.Zone{{ID: "tray"}, {ID: "rear"}, {ID: "dash"}, {ID: "seat"}}}
	for range r.IntN(6) {
		a, b := r.IntN(4), r.IntN(4)
		j.Runs = append(j.Runs, model.Run{From: j.Zones[a].ID, To: j.Zones[b].ID, Length: unit.LengthFromMetres(float64(1+r.IntN(20)) / 10)})
	}
	found := model.Sheet{Name: model.AsFound}
	fill(r, &found, 3+r.IntN(14))
	plan := found.CloneAs(model.Plan)
	change(r, &plan)
	j.Sheets = []model.Sheet{found, plan}
	return j
}

func fill(r *rand.Rand, s *model.Sheet, parts int) {
	zones := []model.ZoneID{"tray", "rear", "dash", "seat", ""}
	kinds := append([]string{model.UnknownKind}, part.Library().Kinds()...)
	var ends []model.TerminalRef
	for range parts {
		p := model.Part{ID: model.PartID(fmt.Sprintf("p%d", len(s.Parts))), Kind: kinds[r.IntN(len(kinds))], Zone: zones[r.IntN(len(zones))]}
		s.Parts = append(s.Parts, p)
		if d := part.Library().Definition(p.Kind); d != nil {
			for _, t := range d.Terminals {
				ends = append(ends, model.TerminalRef{Part: p.ID, Name: t.Name})
			}
		}
	}
	end := func() model.End {
		if len(ends) == 0 || r.IntN(12) == 0 {
			return model.End{Loose: model.Loose(model.Cut.Names()[r.IntN(3)]), In: zones[r.IntN(len(zones))]}
		}
		return model.End{At: ends[r.IntN(len(ends))]}
	}
	for i := range parts * 3 / 2 {
		w := model.Wire{ID: model.WireID(fmt.Sprintf("w%d", i)), From: end(), To: end()}
		if w.From == w.To {
			continue
		}
		if r.IntN(4) > 0 {
			w.Gauge, w.Colour = unit.AWGSizes()[r.IntN(len(unit.AWGSizes()))], model.Colour{Body: "RD"}
			w.Serves = model.Service(model.Traction.Names()[r.IntN(5)])
		}
		s.Wires = append(s.Wires, w)
	}
}

// change removes, adds, moves and changes things of a sheet.
func change(r *rand.Rand, s *model.Sheet) {
	gone := s.Parts[r.IntN(len(s.Parts))].ID
	s.Parts = deleteWhere(s.Parts, func(p model.Part) bool { return p.ID == gone })
	s.Wires = deleteWhere(s.Wires, func(w model.Wire) bool {
		return w.From.At.Part == gone || w.To.At.Part == gone || r.IntN(6) == 0
	})
	for i := range s.Wires {
		switch r.IntN(6) {
		case 0:
			s.Wires[i].To = model.LooseEnd(model.Capped)
		case 1:
			s.Wires[i].Colour = model.Colour{Body: "BK", Stripe: "WH"}
		}
	}
	for i := range s.Parts {
		if r.IntN(6) == 0 {
			s.Parts[i].Zone = "seat"
		}
	}
	s.Parts = append(s.Parts, model.Part{ID: "new", Kind: "lithium-pack-16", Zone: "tray"})
}

func deleteWhere[T any](list []T, where func(T) bool) []T {
	var out []T
	for _, e := range list {
		if !where(e) {
			out = append(out, e)
		}
	}
	return out
}

// TestRandomJobsAreDrawnWithoutFault draws all views of random jobs on pages of several
// shapes.
func TestRandomJobsAreDrawnWithoutFault(t *testing.T) {
	n := 24
	if testing.Short() {
		n = 6
	}
	shapes := [][]diagram.Shape{nil, {{Columns: 200}}, onPaper(paper.A4)}
	for seed := range n {
		j := randomJob(uint64(seed))
		for _, v := range own {
			if v.Name == view.Compare.Name && seed%4 > 0 {
				continue // it takes two wiring drawings
			}
			what := fmt.Sprintf("seed %d %s", seed, v.Name)
			d, err := v.Draw(j, model.Plan, part.Library(), diagram.Options{Quick: true, Shapes: shapes[seed%len(shapes)]})
			require.NoError(t, err, what)
			sound(t, d.Pages, what)
		}
	}
}

// own are the views of this package; the wiring view has tests of its own.
var own = []view.View{view.OneLine, view.Harness, view.Studs, view.Compare}

// elements finds what no drawing has among its elements.
var elements = regexp.MustCompile(`<(script|foreignObject|image|a|animate|iframe)\b`)

// vector is all pages as SVG in one.
func vector(t require.TestingT, pages []scene.Page) string {
	var b bytes.Buffer
	for i := range pages {
		_, err := svg.Render(&b, &pages[i], svg.Options{})
		require.NoError(t, err)
	}
	return b.String()
}

// TestHostileTextStaysInItsCells puts texts that try to break out of a drawing everywhere
// that a job takes free text.
func TestHostileTextStaysInItsCells(t *testing.T) {
	texts := scenetest.Hostile
	if testing.Short() {
		texts = texts[:4]
	}
	for i, text := range texts {
		j := randomJob(uint64(i % 3))
		j.Title, j.Date, j.Revision, j.Zones[0].Name = text, text, text, text
		for k := range j.Sheets {
			s := &j.Sheets[k]
			for p := range s.Parts {
				s.Parts[p].Name, s.Parts[p].Note = text, text
			}
			for w := range s.Wires {
				s.Wires[w].Note, s.Wires[w].Mark, s.Wires[w].Bundle = text, text+fmt.Sprint(k), text
			}
		}
		for _, v := range own {
			if v.Name == view.Compare.Name && i%8 > 0 {
				continue // a wiring drawing, which has a test of its own
			}
			d, err := v.Draw(j, model.Plan, part.Library(), diagram.Options{Quick: true})
			require.NoError(t, err)
			sound(t, d.Pages, v.Name)
			require.NotContains(t, painted(t, d.Pages), "\x1b")
			require.Empty(t, elements.FindAllString(vector(t, d.Pages), -1))
		}
	}
}
