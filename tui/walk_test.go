package tui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/tui/theme"
)

// recordCart enters a small cart by keys alone, from nothing: zones, parts, wires on the
// walk and by pulling.
func recordCart(r *robot) {
	r.press("zrear bay<enter>")
	r.press("abattery<enter>tray<enter><enter>AA")
	r.press("acontactor<enter>rear-bay<enter><enter>")
	r.press("acontroller<enter><enter><enter>")
	r.press("/b1-<enter>g") // stand at b1-
	r.press("k6 b2+<enter>")
	r.press("r14 ?<enter>")
	r.press(".+") // at b2+, where the first wire is expected
	r.press(".k6 b3+<enter><esc>")
	r.press("/b1+<enter>w")
	r.press("r4 sol.L1<enter>")
	r.press("/sol.L2<enter>wk18 ctrl.B+<enter>wr4 ctrl.B+<enter>")
}

func sheetOf(r *robot, name model.SheetName) *model.Sheet { return r.d.job().Sheet(name) }

func TestRecordingACartByKeys(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	s := sheetOf(r, model.AsFound)
	require.Len(t, s.Parts, 5)
	require.Equal(t, model.ZoneID("rear-bay"), s.Part("ctrl").Zone, "the zone used last is offered first")
	require.Equal(t, model.ZoneID("tray"), s.Part("b3").Zone)
	require.Len(t, s.Wires, 6)
	w1 := s.Wire("w1")
	require.Equal(t, "b1.- b2.+ 6 AWG BK", strings.Join([]string{w1.From.String(), w1.To.String(), w1.Gauge.String(), w1.Colour.String()}, " "))
	require.Equal(t, model.Untraced, s.Wire("w2").To.Loose)
	at := model.TerminalRef{Part: "b2", Name: "+"}
	require.Equal(t, []model.WireID{"w1"}, s.Terminal(at).Stack, "the expected far end was confirmed")
	require.Empty(t, r.d.job().Check(shelf))
}

func TestStackPlanFindingAndHistory(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	start := r.d.job()
	recordCart(r)

	r.press("/sol.L2<enter>k<down><left><enter>") // the thick one onto the seat
	at := model.TerminalRef{Part: "sol", Name: "L2"}
	require.Equal(t, []model.WireID{"w6", "w5"}, sheetOf(r, model.AsFound).Terminal(at).Stack)

	r.press("pplan<enter>")
	require.Equal(t, model.Plan, r.d.sheetName)
	require.Len(t, sheetOf(r, model.Plan).Wires, 6)
	r.press("/b1-<enter>k<right><enter>") // spoil the order on the plan
	require.Len(t, r.d.work.findings, 2)
	r.press("n")
	require.Equal(t, ofTerminal(model.TerminalRef{Part: "b1", Name: "-"}), r.d.cursor)
	r.press("a")
	require.Len(t, r.d.work.findings, 1, "the fix mended it")
	r.press("<esc>")

	steps := len(r.d.history.Steps())
	end := r.d.job()
	r.press(strings.Repeat("u", steps+2))
	require.True(t, start == r.d.job())
	require.False(t, r.d.unsaved())
	require.Equal(t, model.AsFound, r.d.sheetName, "the sheet that is gone is not shown")
	r.press(strings.Repeat("U", steps+2))
	require.True(t, end == r.d.job())
	r.press("hthe start<enter>")
	require.True(t, start == r.d.job())
}

func TestGoldenFrames(t *testing.T) {
	for _, size := range []struct {
		name string
		w, h int
	}{{"80x24", 80, 24}, {"120x36", 120, 36}, {"200x60", 200, 60}} {
		t.Run(size.name, func(t *testing.T) {
			r := newRobot(t, Session{}, theme.NoEscapes, size.w, size.h)
			r.requireGolden(size.name + "-empty")
			recordCart(r)
			r.requireGolden(size.name + "-drawing")
			r.press("e<down><down>")
			r.requireGolden(size.name + "-card")
			r.press("<esc>n")
			r.requireGolden(size.name + "-findings")
			r.press("<esc>/b1-<enter>gk6 b")
			r.requireGolden(size.name + "-walk")
			r.press("<esc>;")
			r.requireGolden(size.name + "-jump")
			r.press("<esc>:stack")
			r.requireGolden(size.name + "-commands")
			r.press("<esc>/sol.L2<enter>k")
			r.requireGolden(size.name + "-stack")
			r.press("<esc>O<left>")
			r.requireGolden(size.name + "-whole")

			colours := newRobot(t, Session{}, theme.Indexed, size.w, size.h)
			recordCart(colours)
			colours.requireGolden(size.name + "-colour")

			ascii := newRobot(t, Session{ASCII: true}, theme.NoEscapes, size.w, size.h)
			recordCart(ascii)
			ascii.requireGolden(size.name + "-ascii")
		})
	}
}
