package diagram_test

import (
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

func (s *session) grab(t require.TestingT, id model.PartID) *diagram.Drag {
	g, err := diagram.Grab(s.Job(), s.sheet, part.Library(), diagram.Options{Quick: true, Previous: s.drawing}, id)
	require.NoError(t, err)
	return g
}

// twoPlaces is a small job: two batteries with a contactor in one place, its key and a lamp in another.
func twoPlaces() *model.Job {
	return &model.Job{Version: 1, Title: "two places", Zones: []model.Zone{{ID: "tray"}, {ID: "dash"}}, Sheets: []model.Sheet{{
		Name: model.Plan,
		Parts: []model.Part{
			{ID: "b1", Kind: "lead-battery-6v", Zone: "tray"}, {ID: "b2", Kind: "lead-battery-6v", Zone: "tray"},
			{ID: "sol", Kind: "contactor-48v", Zone: "tray"}, {ID: "key", Kind: "key-switch", Zone: "dash"}, {ID: "lt1", Kind: "lamp-12v", Zone: "dash"},
		},
		Wires: []model.Wire{
			{ID: "j1", From: model.On("b1", "+"), To: model.On("b2", "-")}, {ID: "w1", From: model.On("b2", "+"), To: model.On("sol", "L1")},
			{ID: "k1", From: model.On("b2", "+"), To: model.On("key", "BAT")}, {ID: "k2", From: model.On("key", "IGN"), To: model.On("sol", "coil+")},
			{ID: "k3", From: model.On("sol", "coil-"), To: model.On("b1", "-")}, {ID: "x7", From: model.On("lt1", "+"), To: model.LooseEnd(model.Cut)},
		},
	}}}
}

// dragged moves a box about, requires each step to be a page that can be read, and back where it was all to be as it
// was; then it drops the box and requires the next drawing to be the one that was dropped.
func (s *session) dragged(t require.TestingT, id model.PartID, ways [][2]int) {
	base, corner := s.drawing.Pages[0], s.corner(id)
	g := s.grab(t, id)
	for _, by := range ways {
		if shown, err := g.To(corner.X+by[0], corner.Y+by[1]); err == nil {
			require.Empty(t, scene.Check(&shown), "%s by %v", id, by)
		}
	}
	again, err := g.To(corner.X, corner.Y)
	require.NoError(t, err)
	requirePage(t, &base, &again)
	last := ways[len(ways)-1]
	if _, err := g.To(corner.X+last[0], corner.Y+last[1]); err != nil {
		return
	}
	s.drawing = g.Drop()
	at := s.corner(id)
	require.NoError(t, s.Do(edit.PlacePart{Sheet: s.sheet, ID: id, Place: &model.Place{X: at.X, Y: at.Y}}))
	next, err := diagram.Draw(s.Job(), s.sheet, part.Library(), diagram.Options{Quick: true, Previous: s.drawing})
	require.NoError(t, err)
	requirePage(t, &s.drawing.Pages[0], &next.Pages[0])
	s.drawing = next
}

func TestADraggedBoxIsDrawnAsItWillBe(t *testing.T) {
	start, err := diagram.Draw(twoPlaces(), model.Plan, part.Library(), diagram.Options{Quick: true})
	require.NoError(t, err)
	rapid.Check(t, func(rt *rapid.T) {
		s := &session{History: edit.NewHistory(twoPlaces(), part.Library()), sheet: model.Plan, drawing: start}
		for range rapid.IntRange(1, 4).Draw(rt, "drags") {
			way := rapid.Custom(func(rt *rapid.T) [2]int {
				return [2]int{rapid.IntRange(-30, 40).Draw(rt, "dx"), rapid.IntRange(-12, 15).Draw(rt, "dy")}
			})
			id := rapid.SampledFrom([]model.PartID{"b1", "b2", "sol", "key", "lt1"}).Draw(rt, "part")
			s.dragged(rt, id, rapid.SliceOfN(way, 1, 4).Draw(rt, "ways"))
		}
	})
}

func TestBoxesOfACartAreDragged(t *testing.T) {
	s := openCart(t, "greenhouse-tug", model.AsFound)
	parts := s.Job().Sheet(s.sheet).Parts
	for i := 0; i < len(parts); i += 6 {
		s.dragged(t, parts[i].ID, [][2]int{{1, 0}, {0, 5}, {-40, 10}, {2, 1 + i%3}})
	}
}

// requirePage requires two pages to be the same, and names the first thing that is not.
func requirePage(t require.TestingT, want, got *scene.Page) {
	require.Equal(t, []int{want.W, want.H}, []int{got.W, got.H})
	require.Equal(t, want.Zones, got.Zones)
	require.Equal(t, want.Flags, got.Flags)
	for i, b := range want.Boxes {
		require.Equal(t, b, got.Boxes[i])
	}
	for i, w := range want.Wires {
		require.Equal(t, w, got.Wires[i])
	}
	require.True(t, reflect.DeepEqual(want, got), "the pages differ in their titles or tables")
}

func TestADragOfOneCellLeavesOtherWiresAlone(t *testing.T) {
	s := openCart(t, "greenhouse-tug", model.AsFound)
	base := s.drawing.Pages[0]
	moved, changed := 0, 0
	for _, b := range base.Boxes {
		g := s.grab(t, model.PartID(b.ID))
		shown, err := g.To(b.Rect.X+1, b.Rect.Y)
		if err != nil {
			continue
		}
		moved++
		ends := map[scene.Point]bool{}
		for _, p := range b.Ports {
			ends[p.At] = true
		}
		for i, w := range base.Wires {
			own := ends[w.Path[0]] || ends[w.Path[len(w.Path)-1]]
			if !own && !slices.Equal(w.Path, shown.Wires[i].Path) {
				changed++
			}
		}
	}
	require.Greater(t, moved, len(base.Boxes)/2)
	require.LessOrEqual(t, changed, moved, "a step is in the way of one wire or none, as a rule")
}

func TestADragIsRefusedOnAnotherDrawing(t *testing.T) {
	s := openCart(t, "greenhouse-tug", model.AsFound)
	job, sheet, lib := s.Job(), s.sheet, part.Library()
	id := job.Sheet(sheet).Parts[0].ID
	_, err := diagram.Grab(job, sheet, lib, diagram.Options{}, id)
	require.ErrorContains(t, err, "there is no drawing")
	_, err = diagram.Grab(job, "lost", lib, diagram.Options{Previous: s.drawing}, id)
	require.ErrorContains(t, err, "there is no drawing")
	_, err = diagram.Grab(job, sheet, lib, diagram.Options{Previous: s.drawing}, "nobody")
	require.ErrorContains(t, err, "not on the drawing")
	require.NoError(t, s.Do(edit.RemovePart{Sheet: sheet, ID: id, WithWires: true}))
	_, err = diagram.Grab(s.Job(), sheet, lib, diagram.Options{Previous: s.drawing}, id)
	require.ErrorContains(t, err, "has changed")
}

// A pulled wire goes from its terminal to the cell that is pointed at, over no part, and changes nothing.
func TestAPulledWireShowsItsWay(t *testing.T) {
	s := openCart(t, "greenhouse-tug", model.AsFound)
	page := s.drawing.Pages[0]
	o := diagram.Options{Quick: true, Previous: s.drawing}
	from := model.TerminalRef{Part: model.PartID(page.Boxes[0].ID), Name: page.Boxes[0].Ports[0].Terminal()}
	p, err := diagram.PullFrom(s.Job(), s.sheet, part.Library(), o, from)
	require.NoError(t, err)
	ways := 0
	for y := 0; y < page.H; y += 7 {
		for x := 0; x < page.W; x += 9 {
			cell := scene.Point{X: x, Y: y}
			way := p.To(cell)
			if way == nil {
				continue
			}
			ways++
			require.Equal(t, cell, way[len(way)-1])
			require.Equal(t, scene.PortKind, page.At(way[0])[0].Kind, "it begins on a terminal")
			for _, c := range scene.Cells(way)[1 : len(scene.Cells(way))-1] {
				for _, r := range page.At(c) {
					require.NotContains(t, []scene.Kind{scene.BoxKind, scene.PortKind, scene.FlagRef}, r.Kind)
				}
			}
		}
	}
	require.Greater(t, ways, 20)
	for _, b := range page.Boxes[1:] {
		to := model.TerminalRef{Part: model.PartID(b.ID), Name: b.Ports[0].Terminal()}
		if way := p.Onto(to); way != nil {
			require.Equal(t, scene.Ref{Kind: scene.PortKind, ID: b.ID, Port: to.Name}, scene.Ref{Kind: scene.PortKind, ID: page.At(way[len(way)-1])[0].ID, Port: page.At(way[len(way)-1])[0].Port})
			ways++
		}
	}
	require.Nil(t, p.Onto(from))
	require.Nil(t, p.Onto(model.TerminalRef{Part: "nobody"}))
	_, err = diagram.PullFrom(s.Job(), s.sheet, part.Library(), o, model.TerminalRef{Part: "nobody", Name: "+"})
	require.Error(t, err)
}

func TestALooseEndIsPulledFromItsOtherEnd(t *testing.T) {
	s := openCart(t, "greenhouse-tug", model.AsFound)
	page := s.drawing.Pages[0]
	o := diagram.Options{Quick: true, Previous: s.drawing}
	for _, f := range page.Flags {
		i := slices.IndexFunc(page.Wires, func(w scene.Wire) bool { return w.From == f.ID || w.To == f.ID })
		w := page.Wires[i]
		p, err := diagram.PullEnd(s.Job(), s.sheet, part.Library(), o, model.WireID(w.ID), f.ID)
		require.NoError(t, err)
		way := p.To(scene.Point{X: f.Port.At.X, Y: f.Port.At.Y})
		require.NotNil(t, way)
		require.Contains(t, []scene.Point{w.Path[0], w.Path[len(w.Path)-1]}, way[0])
	}
	_, err := diagram.PullEnd(s.Job(), s.sheet, part.Library(), o, "nobody", "nobody to")
	require.ErrorContains(t, err, "not on the drawing")
}

// BenchmarkDragStep is one step of a box on the largest worked cart, as it is shown.
func BenchmarkDragStep(b *testing.B) {
	s := largestCart(b)
	id := model.PartID(busiest(&s.drawing.Pages[0]))
	corner, g, by := s.corner(id), s.grab(b, id), 0
	for b.Loop() {
		by = (by + 1) % 5
		if _, err := g.To(corner.X+by, corner.Y); err != nil && by == 0 {
			b.Fatal(err)
		}
	}
}

// largestCart is the worked cart with most wires, drawn.
func largestCart(t require.TestingT) *session {
	var largest *session
	most := 0
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for i := range d.Job.Sheets {
			if s := &d.Job.Sheets[i]; len(s.Wires) > most {
				most, largest = len(s.Wires), &session{History: edit.NewHistory(d.Job, part.Library()), sheet: s.Name}
			}
		}
	}
	var err error
	largest.drawing, err = diagram.Draw(largest.Job(), largest.sheet, part.Library(), diagram.Options{Quick: true})
	require.NoError(t, err)
	return largest
}

// busiest is the box that most wires end on.
func busiest(p *scene.Page) string {
	id, most := "", 0
	for _, b := range p.Boxes {
		if len(b.Ports) > most {
			id, most = b.ID, len(b.Ports)
		}
	}
	return id
}
