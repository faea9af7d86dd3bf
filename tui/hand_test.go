package tui

import (
	"image"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/tui/theme"
)

// routed is a robot with the small cart on its desk, drawn as it is in use.
func routed(t *testing.T, depth theme.Depth) *robot {
	t.Helper()
	r := newRobot(t, Session{}, depth, 120, 36)
	recordCart(r)
	r.d.drawer = quickDrawing
	r.press("T/sol<enter>")
	return r
}

func (r *robot) canvas() string { return strings.Join(r.d.canvasLines(), "\n") }

// mouse sends what the left button does in a cell of the drawing.
func (r *robot) mouse(does tea.MouseAction, cell image.Point) {
	r.t.Helper()
	at := cell.Sub(r.d.view).Add(r.d.plan.Canvas.Min)
	r.send(tea.MouseMsg{X: at.X, Y: at.Y, Action: does, Button: tea.MouseButtonLeft})
	requireFrame(r.t, r.d)
}

// room is how far a part's box can be moved to where nothing lies.
func (r *robot) room(id model.PartID) image.Point {
	r.t.Helper()
	stood, _ := r.d.work.picture.place(ofPart(id))
	g, err := diagram.Grab(r.d.job(), r.d.sheetName, r.d.lib, r.d.byHand(), id)
	require.NoError(r.t, err)
	for dy := 3; dy >= -3; dy-- {
		for dx := 3; dx >= -3; dx-- {
			if _, err := g.To(stood.Min.X+dx, stood.Min.Y+dy); err == nil && max(dx, -dx)+2*max(dy, -dy) > slack {
				return image.Pt(dx, dy)
			}
		}
	}
	require.Fail(r.t, "there is no room around "+string(id))
	return image.Point{}
}

// arrows are the keys that move a box so far.
func arrows(by image.Point) string {
	return strings.Repeat("<down>", max(by.Y, 0)) + strings.Repeat("<up>", max(-by.Y, 0)) + strings.Repeat("<right>", max(by.X, 0)) + strings.Repeat("<left>", max(-by.X, 0))
}

func TestABoxIsDrawnWithItsWiresAsItMoves(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	before, pages := r.canvas(), r.d.work.picture.drawing.Pages
	stood, _ := r.d.work.picture.place(ofPart("sol"))
	r.press("m")
	require.Equal(t, before, r.canvas(), "picking it up moves nothing")
	by := r.room("sol")
	r.press(arrows(by))
	m, _ := topOf[*moveLayer](r.d)
	is, _ := m.preview.place(ofPart("sol"))
	require.Equal(t, stood.Add(by), is)
	require.Empty(t, scene.Check(m.preview.page))
	require.NotEqual(t, before, r.canvas())
	require.NotContains(t, r.canvas(), "## sol", "the box itself is drawn")
	held := r.canvas()
	r.press("<esc>")
	require.Equal(t, before, r.canvas())

	view := r.d.view
	r.press("m" + arrows(by) + "<enter>")
	require.Equal(t, &model.Place{X: is.Min.X, Y: is.Min.Y}, sheetOf(r, model.AsFound).Part("sol").Place)
	require.Equal(t, held, r.canvas(), "nothing jumps when it is dropped")
	require.Equal(t, view, r.d.view)
	require.Equal(t, r.d.stamp(), r.d.work.pictureOf)
	dropped := r.d.work.picture.drawing.Pages
	r.press("u")
	require.Equal(t, pages, r.d.work.picture.drawing.Pages)
	r.press("U")
	require.Equal(t, dropped, r.d.work.picture.drawing.Pages)
	r.press("/sol<enter>C")
	require.Equal(t, boxesOf(dropped), boxesOf(r.d.work.picture.drawing.Pages), "the next drawing begins from it")
}

func boxesOf(pages []scene.Page) map[string]scene.Rect {
	out := map[string]scene.Rect{}
	for _, b := range pages[0].Boxes {
		out[b.ID] = b.Rect
	}
	return out
}

func TestABoxThatHasNoRoomIsHeldInOutline(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	there, _ := r.d.work.picture.place(ofPart("ctrl"))
	stood, _ := r.d.work.picture.place(ofPart("sol"))
	r.press("m")
	m, _ := topOf[*moveLayer](r.d)
	m.to(r.d, there.Min.Sub(stood.Min))
	r.press("<right>")
	require.Contains(t, r.d.View(), "sol has no room there")
	require.Contains(t, r.canvas(), "## sol")
	r.press("<enter>")
	p := r.d.work.picture
	require.Equal(t, r.d.stamp(), r.d.work.pictureOf)
	require.Empty(t, scene.Check(p.page), "what is in its way is moved")
	at := sheetOf(r, model.AsFound).Part("sol").Place
	is, _ := p.place(ofPart("sol"))
	require.Equal(t, image.Pt(at.X, at.Y), is.Min, "it is where it was set down")
}

// A box that cannot be where it is set down, because the frame of another zone is there, keeps
// its place, and so do all others that were placed by hand.
func TestABoxIsNotPinnedWhereItCannotBe(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	by := r.room("sol")
	r.press("m" + arrows(by) + "<enter>")
	placed, before, revision := sheetOf(r, model.AsFound).Part("sol").Place, boxesOf(r.d.work.picture.drawing.Pages), r.d.history.Revision()
	other := partOfAnotherZone(r, "sol")
	there, _ := r.d.work.picture.place(ofPart("sol"))
	stood, _ := r.d.work.picture.place(ofPart(other))
	r.press("/" + string(other) + "<enter>m")
	m, _ := topOf[*moveLayer](r.d)
	m.to(r.d, there.Min.Sub(stood.Min))
	r.press("<right><left><enter>")
	require.Contains(t, r.d.View(), string(other)+" cannot go there")
	require.Equal(t, onDrawing, r.d.here())
	require.Equal(t, revision, r.d.history.Revision(), "nothing is recorded")
	require.Nil(t, sheetOf(r, model.AsFound).Part(other).Place)
	require.Equal(t, placed, sheetOf(r, model.AsFound).Part("sol").Place)
	require.Equal(t, before, boxesOf(r.d.work.picture.drawing.Pages))
}

// partOfAnotherZone is the first part that is not in the zone of this one.
func partOfAnotherZone(r *robot, id model.PartID) model.PartID {
	s := sheetOf(r, model.AsFound)
	for i := range s.Parts {
		if p := &s.Parts[i]; p.Zone != "" && p.Zone != s.Part(id).Zone {
			return p.ID
		}
	}
	require.Fail(r.t, "all parts are in one zone")
	return ""
}

// A drawing made with care comes seconds after it was asked for, as after opening a job. It
// changes nothing under a hand that has begun to arrange the one that is there.
func TestACarefulDrawingWaitsForNoHand(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	by := r.room("sol")
	_, late := r.d.Update(keyMsg("T"))
	held := r.d.work.picture
	r.press("m" + arrows(by))
	r.run(late)
	require.Same(t, held, r.d.work.picture, "it came while a box was moved")
	r.press("<esc>")

	_, late = r.d.Update(keyMsg("T"))
	r.press("m" + arrows(by) + "<enter>")
	dropped := r.d.work.picture
	r.run(late)
	require.Same(t, dropped, r.d.work.picture, "it is one without the place of the box")

	_, late = r.d.Update(keyMsg("T"))
	r.press("C")
	recorded := r.d.work.picture
	r.run(late)
	require.NotSame(t, recorded, r.d.work.picture, "the next drawing begins from it")
}

// Steps are drawn beside the screen: keys do not wait for them, a late one is passed over, and
// the box is set down where the keys have brought it.
func TestStepsOfABoxAreDrawnBeside(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	stood, _ := r.d.work.picture.place(ofPart("sol"))
	by := r.room("sol")
	_, late := r.d.Update(keyMsg("m"))
	for _, key := range strings.FieldsFunc(arrows(by), func(c rune) bool { return c == '<' || c == '>' }) {
		_, cmd := r.d.Update(keyMsg(key))
		require.Empty(t, messages(cmd), "one step at a time")
	}
	r.d.Update(keyMsg("enter"))
	require.Equal(t, inMove, r.d.here(), "the last step is still to be drawn")
	r.run(late)
	require.Equal(t, onDrawing, r.d.here())
	require.Equal(t, &model.Place{X: stood.Min.X + by.X, Y: stood.Min.Y + by.Y}, sheetOf(r, model.AsFound).Part("sol").Place)

	before := r.canvas()
	_, late = r.d.Update(keyMsg("m"))
	r.press("<esc>")
	r.run(late)
	require.Equal(t, before, r.canvas(), "a step of a box that was let go")
}

// messages runs a command and collects what comes of it, without delivering it.
func messages(cmd tea.Cmd) []tea.Msg {
	if cmd == nil {
		return nil
	}
	switch msg := cmd().(type) {
	case nil:
		return nil
	case tea.BatchMsg:
		var all []tea.Msg
		for _, c := range msg {
			all = append(all, messages(c)...)
		}
		return all
	default:
		return []tea.Msg{msg}
	}
}

func TestTheMouseMovesABox(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	stood, _ := r.d.work.picture.place(ofPart("sol"))
	job, before, corner, by := r.d.job(), r.canvas(), stood.Min, r.room("sol")
	r.mouse(tea.MouseActionPress, corner)
	r.mouse(tea.MouseActionMotion, corner.Add(image.Pt(1, 0)))
	require.Equal(t, onDrawing, r.d.here(), "a hand shakes")
	r.mouse(tea.MouseActionMotion, corner.Add(image.Pt(0, 2)))
	require.Equal(t, inMove, r.d.here())
	r.mouse(tea.MouseActionMotion, corner.Add(by))
	r.press("<esc>")
	require.Equal(t, before, r.canvas())
	r.mouse(tea.MouseActionRelease, corner.Add(by))
	require.True(t, job == r.d.job(), "Esc lets go of it")

	r.mouse(tea.MouseActionPress, corner)
	r.mouse(tea.MouseActionMotion, corner.Add(by))
	held := r.canvas()
	r.mouse(tea.MouseActionRelease, corner.Add(by))
	require.Equal(t, &model.Place{X: corner.X + by.X, Y: corner.Y + by.Y}, sheetOf(r, model.AsFound).Part("sol").Place)
	require.Equal(t, held, r.canvas())

	job = r.d.job()
	r.mouse(tea.MouseActionPress, corner.Add(by))
	r.mouse(tea.MouseActionMotion, corner.Add(by).Add(image.Pt(3, 0)))
	r.mouse(tea.MouseActionMotion, corner.Add(by))
	r.mouse(tea.MouseActionRelease, corner.Add(by))
	require.True(t, job == r.d.job(), "brought back, it was not moved")
}

func TestDraggedToTheEdgeTheDrawingMovesOn(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	r.send(tea.WindowSizeMsg{Width: 60, Height: 18})
	r.press("/sol<enter>")
	stood, _ := r.d.work.picture.place(ofPart("sol"))
	pane := r.d.plan.Canvas
	r.mouse(tea.MouseActionPress, stood.Min)
	view := r.d.view
	for y := range 6 {
		r.send(tea.MouseMsg{X: pane.Min.X + 20 + y%2, Y: pane.Max.Y - 1, Action: tea.MouseActionMotion, Button: tea.MouseButtonLeft})
	}
	require.Greater(t, r.d.view.Y, view.Y)
	r.press("<esc>")
}

func TestAPulledWireIsDrawnAsItGoes(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	r.press("/b3-<enter>w")
	none := strings.Count(r.canvas(), "·")
	r.press("/ctrl.M-<enter>")
	require.Greater(t, strings.Count(r.canvas(), "·"), none+5)
	w, _ := topOf[*pullLayer](r.d)
	from, _ := r.d.work.picture.place(ofTerminal(ref("b3", "-")))
	to, _ := r.d.work.picture.place(ofTerminal(ref("ctrl", "M-")))
	require.Equal(t, scene.Point{X: from.Min.X, Y: from.Min.Y}, w.way[0])
	require.Equal(t, scene.Point{X: to.Min.X, Y: to.Min.Y}, w.way[len(w.way)-1])
	r.press("<esc>")
	require.Equal(t, none, strings.Count(r.canvas(), "·"))
}

func TestTheMousePullsAWire(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	p := r.d.work.picture
	from, _ := p.place(ofTerminal(ref("b3", "-")))
	to, _ := p.place(ofTerminal(ref("sol", "c2")))
	empty := image.Pt(from.Min.X, p.grid.H-1)
	job := r.d.job()

	r.mouse(tea.MouseActionPress, from.Min)
	r.mouse(tea.MouseActionMotion, empty)
	w, pulling := topOf[*pullLayer](r.d)
	require.True(t, pulling)
	if w.way != nil {
		require.Equal(t, scene.Point{X: empty.X, Y: empty.Y}, w.way[len(w.way)-1], "the way follows the mouse")
	}
	r.mouse(tea.MouseActionRelease, empty)
	require.Equal(t, onDrawing, r.d.here())
	require.Contains(t, r.d.notice.text, "nothing was changed")
	require.True(t, job == r.d.job())

	r.mouse(tea.MouseActionPress, from.Min)
	r.mouse(tea.MouseActionMotion, empty)
	r.mouse(tea.MouseActionMotion, to.Min)
	require.Contains(t, r.d.View(), "from b3- to sol.c2")
	r.mouse(tea.MouseActionRelease, to.Min)
	r.press("k18<enter>")
	made := sheetOf(r, model.AsFound).Wire("w7")
	require.Equal(t, "b3.- sol.c2 18 AWG", made.From.String()+" "+made.To.String()+" "+made.Gauge.String())
}

func TestALooseEndIsPulledWithTheMouse(t *testing.T) {
	r := routed(t, theme.NoEscapes)
	loose := ofEnd(sheetOf(r, model.AsFound).Wire("w2"), edit.To)
	flag, drawn := r.d.work.picture.place(loose)
	require.True(t, drawn)
	to, _ := r.d.work.picture.place(ofTerminal(ref("sol", "c1")))
	r.mouse(tea.MouseActionPress, flag.Min)
	require.Equal(t, loose, r.d.cursor)
	r.mouse(tea.MouseActionMotion, flag.Min.Add(image.Pt(0, 3)))
	r.mouse(tea.MouseActionMotion, to.Min)
	w, _ := topOf[*pullLayer](r.d)
	require.NotEmpty(t, w.way)
	r.mouse(tea.MouseActionRelease, to.Min)
	require.Equal(t, "sol.c1", sheetOf(r, model.AsFound).Wire("w2").To.String())
}

// A selected wire is lit from terminal to terminal, also where another passes over it, and all
// other wires are less bright.
func TestASelectedWireIsLitFromEndToEnd(t *testing.T) {
	page := scenetest.Cart()
	p := pictureOf(page, false)
	crossed := 0
	for _, w := range page.Wires {
		first, last := w.Path[0], w.Path[len(w.Path)-1]
		k := canvasKey{picture: p, grid: p.grid, marks: marks{
			cursor: ofWire(model.WireID(w.ID)), wire: ofWire(model.WireID(w.ID)), ends: [2]image.Point{{X: first.X, Y: first.Y}, {X: last.X, Y: last.Y}},
		}}
		lit := k.light(&model.Sheet{})
		require.True(t, lit.alone)
		for y := range p.grid.H {
			for x := range p.grid.W {
				at := image.Pt(x, y)
				c := p.grid.At(x, y)
				_, selected := k.marks.glyph(c, at)
				role, changed := lit.role(c, at)
				of := hit(p.grid, at)
				switch {
				case lit.cells[at]:
					require.True(t, selected || changed && role == theme.Selected, "%s at %v", w.ID, at)
					if of.kind == wireThing && of != k.marks.wire {
						crossed++
					}
				case of.kind == wireThing && of != k.marks.wire:
					require.True(t, changed && role == theme.Dim)
				}
			}
		}
	}
	require.Positive(t, crossed)
	k := canvasKey{picture: p, grid: p.grid, marks: marks{cursor: ofTerminal(ref("sol", "L1")), wire: ofWire("w1")}}
	require.False(t, k.light(&model.Sheet{}).alone, "nothing is dimmed for a lug of a terminal")
}
