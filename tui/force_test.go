package tui

import (
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/part"
	"example.com/lugbook/tui/theme"
)

// lamps is a pack that feeds a contactor through a key, and a lamp behind its contact.
const lamps = `
part pack lithium-pack-16
part key key-switch
part sol contactor-48v
part lt lamp-work-48v
wire f pack.POS sol.L1 gauge=10AWG length=1m
wire b pack.POS key.BAT gauge=16AWG length=1m
wire i key.IGN sol.coil+ gauge=16AWG length=1m
wire c sol.coil- pack.NEG gauge=16AWG length=1m
wire l sol.L2 lt.+ gauge=16AWG
wire m lt.- pack.NEG gauge=16AWG length=1m
`

// wired is a robot with a small cart of the parts library on its desk.
func wired(t *testing.T, text string) *robot {
	t.Helper()
	job, err := mini.Job(text)
	require.NoError(t, err)
	require.Empty(t, job.Check(part.Library()))
	return newRobot(t, Session{Job: job, Library: part.Library()}, theme.NoEscapes, 120, 36)
}

// energyOf is what the drawing on the screen shows of a wire.
func energyOf(t *testing.T, r *robot, wire string) (e scene.Energy, flows bool) {
	t.Helper()
	g := r.d.grid(r.d.picture())
	for y := range g.H {
		for x := range g.W {
			if c := g.At(x, y); c.Role == text.WireLine && c.Owner.ID == wire {
				return c.Energy, c.Flows
			}
		}
	}
	require.Fail(t, "not drawn", wire)
	return e, flows
}

func TestStatesAreSteppedThroughAndBack(t *testing.T) {
	r := wired(t, lamps)
	require.Contains(t, r.d.View(), "state none")
	e, _ := energyOf(t, r, "l")
	require.Equal(t, scene.NotShown, e)
	plain := r.d.work.picture
	want := []string{"none"}
	for _, s := range r.d.states() {
		r.press("l")
		require.Contains(t, r.d.View(), "state "+s.Name)
		require.Equal(t, s.Name, r.d.inForce().state)
		require.Same(t, plain, r.d.work.picture, "nothing is placed anew")
		want = append(want, s.Name)
	}
	r.press("l")
	require.Contains(t, r.d.View(), "state none")
	require.Nil(t, r.d.inForce())
	for i := len(want) - 1; i >= 0; i-- {
		r.press("L")
		require.Contains(t, r.d.View(), "state "+want[i])
	}
}

func TestAStateIsPickedByNameAndPaintsTheDrawing(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>")
	e, flows := energyOf(t, r, "l")
	require.Equal(t, scene.Live, e)
	require.True(t, flows)
	require.Contains(t, r.d.View(), "CLOSED")
	r.press("tpark<enter>")
	e, flows = energyOf(t, r, "l")
	require.Equal(t, scene.Dead, e)
	require.False(t, flows)
	e, _ = energyOf(t, r, "m")
	require.Equal(t, scene.Return, e)
	r.press("tnone<enter>")
	e, _ = energyOf(t, r, "l")
	require.Equal(t, scene.NotShown, e)
	require.Nil(t, r.d.work.force)
}

func TestOwnStatesAreInTheList(t *testing.T) {
	job, err := mini.Job(lamps)
	require.NoError(t, err)
	job.States = []model.OwnState{{Name: "pushed", About: "pushed by hand", From: "parked", Set: []model.Setting{{Control: model.Key, Position: "on"}}}}
	r := newRobot(t, Session{Job: job, Library: part.Library()}, theme.NoEscapes, 120, 36)
	r.press("tby hand<enter>")
	require.Contains(t, r.d.View(), "state pushed")
	e, _ := energyOf(t, r, "l")
	require.Equal(t, scene.Live, e)
}

// An edit changes what is live: the state in force is computed anew, and a result that is
// late is dropped.
func TestAStateIsComputedAnewAfterAnEdit(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/i<enter>")
	before := r.d.inForce()
	require.Contains(t, r.d.reading(), "key-on: live, ")
	r.press("d") // the coil's feed
	require.NotSame(t, before, r.d.inForce())
	require.Equal(t, r.d.forceStamp(), r.d.inForce().of)
	e, _ := energyOf(t, r, "l")
	require.Equal(t, scene.Dead, e, "the contactor has dropped out")
	r.send(forced{before})
	require.NotSame(t, before, r.d.work.force, "late")
	r.press("u")
	e, _ = energyOf(t, r, "l")
	require.Equal(t, scene.Live, e)
}

func TestTheCardGivesVoltsAndAmperes(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/l<enter>")
	card := func() map[string]string {
		values := map[string]string{}
		for _, row := range r.d.figureRows(r.d.cursor) {
			require.NotEmpty(t, row.about)
			require.Nil(t, row.edit, "figures are not typed in")
			values[row.name] = row.value
		}
		return values
	}
	wire := card()
	require.Equal(t, "live", wire["state"])
	require.Regexp(t, ` (m)?A$`, wire["current"])
	require.Equal(t, "lt.+", wire["toward"])
	require.Regexp(t, `^[0-9.]+ to [0-9.]+ m?A$`, wire["may be"], "the lamp's figure is typical")
	require.Regexp(t, `^[0-9.]+ mV$`, wire["drop"])
	require.Regexp(t, `^5\d(\.\d)? V$`, wire["at from"])
	require.Equal(t, "gauge or length", wire["assumed"])
	require.Contains(t, r.d.View(), "toward")

	r.press("/m<enter>")
	require.NotContains(t, card(), "assumed")
	require.Equal(t, "minus side", card()["state"])
	require.Equal(t, "pack.NEG", card()["toward"])

	r.press("/sol<enter>")
	sol := card()
	require.Equal(t, "closed", sol["state"])
	require.Regexp(t, `A, closed, .*V$`, sol["main"])
	require.Regexp(t, `A, pulled in, .*V$`, sol["coil"])
	require.Regexp(t, `^5\d`, sol["at L2"])

	r.press("/sol.L2<enter>")
	require.Regexp(t, `^5\d(\.\d)? V$`, card()["state"])
	require.Regexp(t, `A away$`, card()["in l"])
	require.Regexp(t, `^[45][0-9.]+ to [56][0-9.]+ V$`, card()["may be"], "nobody knows how full the pack is")
	require.Contains(t, r.d.reading(), "key-on: 5")

	r.press("e")
	at, _ := r.d.top().(*cardLayer).row(r.d)
	require.NotContains(t, card(), at.name, "the card opens at what can be changed")
	r.press("<esc>tnone<enter>")
	require.Empty(t, card())
}

func TestChatterIsSaidWithItsParts(t *testing.T) {
	r := wired(t, `
part pack lithium-pack-16
part rly relay-48v
wire a pack.POS rly.30
wire b rly.87a rly.86
wire c rly.85 pack.NEG`)
	r.press("tpark<enter>")
	require.Contains(t, r.d.notice.text, "rly keeps switching")
	require.Contains(t, r.d.View(), "state parked: NO REST")
	require.Contains(t, r.d.View(), "CHATTERS", "on the part")
	r.press("/rly<enter>")
	rows := r.d.figureRows(r.d.cursor)
	require.Equal(t, "no rest", rows[0].name)
	require.Equal(t, "rly", rows[0].value)
	e, _ := energyOf(t, r, "a")
	require.Equal(t, scene.NotShown, e, "no figure is made up")
	require.Nil(t, r.d.shown())
	r.press("/b<enter>d")
	require.NotContains(t, r.d.View(), "NO REST", "cured")
	e, _ = energyOf(t, r, "a")
	require.Equal(t, scene.Live, e)
}

func TestAStateOfAnotherSheetWaits(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>pplan<enter>")
	require.Equal(t, model.Plan, r.d.sheetName)
	require.Equal(t, model.Plan, r.d.inForce().of.sheet)
	r.press("/key<enter>d")
	require.Contains(t, r.d.View(), "state none", "without a key there is no such state")
	r.press("1")
	require.Contains(t, r.d.View(), "state key-on")
	e, _ := energyOf(t, r, "l")
	require.Equal(t, scene.Live, e)
}

// While a state is being computed the screen goes on with what it has.
func TestTheScreenDoesNotWaitForAState(t *testing.T) {
	r := wired(t, lamps)
	_, cmd := r.d.Update(keyMsg("l"))
	require.Nil(t, r.d.inForce())
	require.Empty(t, r.d.figureRows(ofWire("l")))
	requireFrame(t, r.d)
	_, second := r.d.Update(keyMsg("l"))
	requireFrame(t, r.d)
	r.run(cmd)
	r.run(second)
	require.Equal(t, r.d.states()[1].Name, r.d.inForce().state, "the one that was asked for last")
}

func TestAnExportShowsTheStateAndIsNamedAfterIt(t *testing.T) {
	s, path := onDisk(t)
	job, err := mini.Job(lamps)
	require.NoError(t, err)
	s.Job = job
	r := newRobot(t, s, theme.NoEscapes, 80, 24)
	r.press("tkey-on<enter>xtext<enter>")
	require.Contains(t, r.d.notice.text, "written: ")
	data, err := os.ReadFile(strings.TrimSuffix(path, ".yaml") + "-as-found-key-on.txt")
	require.NoError(t, err)
	require.Contains(t, string(data), "state key-on")
	require.Contains(t, string(data), "CLOSED")
}

func TestAStateFrames(t *testing.T) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"80x24", 80, 24}, {"120x36", 120, 36}, {"200x60", 200, 60}} {
		r := wired(t, lamps)
		r.send(tea.WindowSizeMsg{Width: size.w, Height: size.h})
		r.press("tkey-on<enter>/sol<enter>")
		r.requireGolden(size.name + "-state")
	}
	r := newRobot(t, Session{Job: wired(t, lamps).d.job(), Library: part.Library()}, theme.Indexed, 80, 24)
	r.press("tkey-on<enter>/l<enter>")
	r.requireGolden("80x24-state-colour")
}
