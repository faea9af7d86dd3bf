package tui

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/tui/theme"
)

// worked is a robot with a worked cart on its desk.
func worked(t *testing.T, ascii bool, w, h int) *robot {
	t.Helper()
	data, err := cart.Read("greenhouse-tug")
	require.NoError(t, err)
	read, faults := jobfile.Decode("greenhouse-tug", data, part.Library())
	require.Empty(t, faults)
	r := newRobot(t, Session{Job: read.Job, Library: part.Library(), Sheet: model.AsFound, ASCII: ascii}, theme.NoEscapes, w, h)
	r.d.drawer = quickDrawing
	r.press("T")
	return r
}

func TestTheWholeJobIsOnTheScreen(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {120, 36}} {
		r := worked(t, size[0] == 120, size[0], size[1])
		r.press("/sol<enter>")
		view, before, job := r.d.view, r.canvas(), r.d.job()
		r.press("O")
		require.Equal(t, inOverview, r.d.here())
		o := r.d.overview()
		seen := map[string]model.PartID{}
		parts := sheetOf(r, model.AsFound).Parts
		for i := 0; i < len(parts); i += 3 {
			at, drawn := o.picture.place(ofPart(parts[i].ID))
			require.True(t, drawn)
			require.True(t, at.In(r.d.plan.Canvas.Sub(r.d.plan.Canvas.Min)), "%s is on the screen", parts[i].ID)
			r.press("/" + string(parts[i].ID) + "<enter>")
			require.Equal(t, ofPart(parts[i].ID), r.d.cursor)
			require.Empty(t, seen[r.canvas()], "%s looks chosen", parts[i].ID)
			seen[r.canvas()] = parts[i].ID
			require.Contains(t, r.canvas(), "<"+string(parts[i].ID)+">")
			joined := partsOn(r, parts[i].ID)
			require.GreaterOrEqual(t, len(o.picture.page.Wires), len(joined)-o.left, "its lines are drawn")
		}
		r.press("<esc>")
		require.Equal(t, ofPart("sol"), r.d.cursor)
		require.Equal(t, view, r.d.view)
		require.Equal(t, before, r.canvas())
		require.True(t, job == r.d.job())
	}
}

// partsOn are the parts that a part is wired to.
func partsOn(r *robot, id model.PartID) map[model.PartID]bool {
	out := map[model.PartID]bool{}
	for _, w := range sheetOf(r, model.AsFound).Wires {
		a, b := w.From.At.Part, w.To.At.Part
		if a != "" && b != "" && a != b && (a == id || b == id) {
			out[a], out[b] = true, true
		}
	}
	delete(out, id)
	return out
}

func TestOverviewsLeadBackToWhatIsChosen(t *testing.T) {
	r := worked(t, false, 80, 24)
	r.press("/sol<enter>--")
	require.Equal(t, whole, r.d.overview().scale)
	r.press("-")
	require.Contains(t, r.d.notice.text, "as small as that")
	r.press("<right><down>")
	chosen := r.d.cursor
	require.NotEqual(t, ofPart("sol"), chosen)
	r.press("<enter>")
	require.Equal(t, onDrawing, r.d.here())
	require.Equal(t, chosen, r.d.cursor)
	require.Regexp(t, " "+chosen.String()+"[!?]* ", r.canvas(), "it is in view")

	r.press("O+")
	require.Equal(t, smaller, r.d.overview().scale)
	require.Empty(t, scene.Check(r.d.overview().picture.page))
	r.press("<right>;")
	j, _ := topOf[*jumpLayer](r.d)
	for target, label := range j.labels {
		if target.kind == partThing {
			r.press(label)
			require.Equal(t, target, r.d.cursor)
			require.Equal(t, inOverview, r.d.here())
			r.press("=")
			require.Equal(t, onDrawing, r.d.here())
			require.Equal(t, target, r.d.cursor)
			break
		}
	}
	r.press("+")
	require.Contains(t, r.d.notice.text, "+ does nothing here")
}

func TestTerminalsAndWiresAreFoundAgainInTheOverview(t *testing.T) {
	r := worked(t, false, 80, 24)
	r.press("/sol.L1<enter>O")
	require.Equal(t, ofPart("sol"), r.d.cursor, "there are no terminals on it")
	r.press("<esc>")
	require.Equal(t, ofTerminal(ref("sol", "L1")), r.d.cursor)
	r.press("-")
	require.Equal(t, ofTerminal(ref("sol", "L1")), r.d.cursor, "a wire ends on it")
	r.press("<esc>/w1<enter>-<enter>")
	require.Equal(t, ofWire("w1"), r.d.cursor)
}

func TestTheMouseChoosesInTheOverview(t *testing.T) {
	r := worked(t, false, 80, 24)
	r.press("/sol<enter>O")
	at, _ := r.d.overview().picture.place(ofPart("motor"))
	r.mouse(tea.MouseActionPress, at.Min)
	r.mouse(tea.MouseActionMotion, at.Min.Add(at.Size()))
	r.mouse(tea.MouseActionRelease, at.Min)
	require.Equal(t, ofPart("motor"), r.d.cursor)
	require.Equal(t, inOverview, r.d.here(), "nothing is moved there")
	r.mouse(tea.MouseActionPress, at.Min)
	require.Equal(t, onDrawing, r.d.here())
	require.Equal(t, ofPart("motor"), r.d.cursor)
}

// An overview follows the size of the screen, the sheet, undo and the state in force, and a late
// one is passed over.
func TestAnOverviewIsKeptUpToDate(t *testing.T) {
	r := worked(t, false, 120, 36)
	r.press("/sol<enter>CO")
	o := r.d.overview()
	r.send(tea.WindowSizeMsg{Width: 90, Height: 30})
	require.Equal(t, r.d.plan.Canvas.Size(), o.of.size)
	r.press("u2")
	require.Equal(t, model.Plan, r.d.sheetName)
	require.True(t, o.of.from == r.d.work.picture)
	require.Contains(t, o.picture.index, ofPart("pack"))
	r.press("1tdrive-forward<enter>")
	require.NotNil(t, o.of.force)
	live := 0
	for _, w := range o.picture.page.Wires {
		if w.Flow.Energy == scene.Live {
			live++
		}
	}
	require.Positive(t, live, "what is live shows")
	require.Equal(t, "drive-forward", o.picture.page.State)
	_, late := r.d.Update(keyMsg("+"))
	r.press("<esc>")
	r.run(late)
	require.Equal(t, onDrawing, r.d.here())
	require.True(t, r.d.picture() == r.d.work.picture)
}

func TestThereIsNoOverviewOfNothing(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	r.press("-")
	require.Contains(t, r.d.notice.text, "nothing is drawn yet")
	r.press(":zoom-here<enter>")
	require.Contains(t, r.d.notice.text, "only while the drawing is shown smaller")
}
