package tui

import (
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/diagnose"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
	"example.com/lugbook/tui/theme"
)

// cells are the values of the rows of the selected thing's card that have a name.
func (r *robot) cells(name string) []string {
	var list []string
	for _, row := range r.d.rows(r.d.cursor) {
		if row.name == name {
			list = append(list, row.value)
		}
	}
	return list
}

func TestAReadingIsEnteredAndCompared(t *testing.T) {
	r := wired(t, lamps)
	r.press("/sol.coil+<enter>i")
	require.Contains(t, r.d.notice.text, "say first in which state the cart is")
	r.press("tkey-on<enter>i")
	require.Equal(t, inReading, r.d.here())
	require.Contains(t, r.d.View(), "red sol.coil+, black pack.NEG: _")
	r.press("53.1")
	require.Contains(t, r.d.View(), "reads as  53.1 V on sol.coil+ against pack.NEG in key-on")
	require.Contains(t, r.d.View(), "53.1_V", "the unit of a bare number")
	r.press("<enter>")
	want := model.Reading{Sheet: model.AsFound, State: "key-on", Red: ref("sol", "coil+"), Black: ref("pack", "NEG"), Value: unit.V(53.1).Any()}
	require.Equal(t, []model.Reading{want}, r.d.job().Readings)
	require.Regexp(t, `^= 53.1 V sol.coil\+ agrees: expected 53.\d V, 5[\d.]+ to 5[\d.]+ V$`, r.d.notice.text)

	r.press("i0.1 V<enter>")
	require.Regexp(t, `^! 0.1 V sol.coil\+ does not agree: expected 53`, r.d.notice.text)
	require.Equal(t, []string{"= 53.1 V, key-on", "! 0.1 V, key-on"}, r.cells("read"))
	require.Contains(t, r.d.View(), "! 0.1 V, key-on")
	r.press("u")
	require.Equal(t, []model.Reading{want}, r.d.job().Readings)
	r.press("U")
	require.Len(t, r.d.job().Readings, 2)
	require.Empty(t, r.d.job().Check(part.Library()))
}

func TestWhatALineOfAReadingSays(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/sol.coil+<enter>")
	for _, c := range []struct{ typed, black, shown, says string }{
		{"51.2 V", "pack.NEG", "51.2 V", ""},
		{"-0.3", "pack.NEG", "-0.3 V", ""},
		{"+12", "pack.NEG", "12 V", ""},
		{"132 ohm", "pack.NEG", "132 ohm", ""},
		{"OPEN", "pack.NEG", "open", ""},
		{"sol.coil- 132ohm", "sol.coil-", "132 ohm", ""},
		{"coil- 132 ohm", "sol.coil-", "132 ohm", ""},
		{"sol.coil- open", "sol.coil-", "open", ""},
		{"sol.coil-", "", "", "and what does the meter show?"},
		{"sol. 3 V", "", "", "fits"},
		{"51.2 X", "", "", "not a quantity"},
		{"zork 3 V", "", "", "zork names nothing on this sheet"},
		{"14 A", "pack.NEG", "14 A", ""}, // refused when it is kept
		{" ", "", "", "type what the meter shows"},
	} {
		p := &probeLayer{at: r.d.cursor, black: ref("pack", "NEG"), state: "key-on", unit: "V"}
		for _, letter := range c.typed {
			p.line.Key(keyMsg(string(letter)))
		}
		got, err := p.read(r.d)
		if c.says != "" {
			require.ErrorContains(t, err, c.says, c.typed)
			continue
		}
		require.NoError(t, err, c.typed)
		require.Equal(t, c.black, got.Black.String(), c.typed)
		require.Equal(t, c.shown, got.Shown(), c.typed)
	}
	r.press("icoil- 132 ohm")
	require.Contains(t, r.d.View(), "in key-on, power off")
	r.press("<esc>i14 A<enter>")
	require.Equal(t, inReading, r.d.here(), "what was typed stays until it is right")
	require.Contains(t, r.d.notice.text, "two probes read volts or ohms")
	require.Empty(t, r.d.job().Readings)
}

func TestTabPutsTheBlackProbeElsewhere(t *testing.T) {
	r := wired(t, lamps)
	typed := func() string { return r.d.top().(*probeLayer).line.Text() }
	r.press("tkey-on<enter>/pack.NEG<enter>i")
	require.Contains(t, r.d.View(), "red pack.NEG, black ?:", "both probes cannot be on one terminal")
	r.press("3 V<enter>")
	require.Contains(t, r.d.notice.text, "say where the black probe is")
	r.press("<esc>isol.<tab>")
	require.Equal(t, "sol.L1 ", typed())
	r.press("<tab><tab><tab><tab>")
	require.Equal(t, "sol.L1 ", typed(), "round again")
	r.press("-53<enter>")
	require.Equal(t, "pack.NEG against sol.L1", r.d.job().Readings[0].Where())
	require.Contains(t, r.d.notice.text, "= -53 V pack.NEG/sol.L1 agrees")
	r.press("izork<tab>")
	require.Contains(t, r.d.notice.text, "no terminal begins with zork")
	r.press("<esc>/sol.coil+<enter>i<tab>")
	require.Equal(t, "sol.L1 ", typed(), "the part's own terminals come first")
}

func TestAmperesAreReadRoundAWire(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/l<enter>i")
	require.Contains(t, r.d.View(), "clamp round l: _")
	require.Contains(t, r.d.View(), "from sol.L2 to lt.+ counts positive")
	r.press("<tab>")
	require.Contains(t, r.d.notice.text, "no second place")
	r.press("9<enter>")
	require.Equal(t, "9 A", r.d.job().Readings[0].Shown())
	require.Contains(t, r.d.notice.text, "! 9 A l does not agree")
	require.Equal(t, []string{"! 9 A, key-on"}, r.cells("read"))
}

func TestReadingsAreCorrectedAndTakenAway(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/sol.coil+<enter>i0.1<enter>e<up>")
	c := r.d.top().(*cardLayer)
	at, _ := c.row(r.d)
	require.Equal(t, "read", at.name)
	require.Contains(t, r.d.reading(), "does not agree")
	r.press("<enter>")
	require.Contains(t, r.d.View(), "0.1 V_   letters replace it")
	r.press("53<enter>")
	require.Equal(t, inCard, r.d.here())
	require.Equal(t, []string{"= 53 V, key-on"}, r.cells("read"))
	require.Contains(t, r.d.notice.text, "= 53 V sol.coil+ agrees")
	r.press("d")
	require.Empty(t, r.d.job().Readings)
	r.press("d")
	require.Contains(t, r.d.notice.text, "only a reading can be taken away here")
	r.press("u<esc>tparked<enter>Ikey-on<enter>")
	require.Equal(t, "key-on", r.d.stateName, "Enter goes to the terminal and the state")
	require.Equal(t, ofTerminal(ref("sol", "coil+")), r.d.cursor)
	require.Equal(t, onDrawing, r.d.here())
	r.press("I53 V")
	l := r.d.top().(*listLayer)
	require.Equal(t, "= 53 V sol.coil+ key-on", l.shown(r.d)[0].text)
	r.press("<backspace><backspace><backspace><backspace>")
	for {
		if c, _ := l.chosen(r.d); c.change != nil {
			break
		}
		r.press("<down>")
	}
	r.press("=0.2 V<enter>")
	require.Equal(t, inRecords, r.d.here())
	require.Equal(t, "0.2 V", r.d.job().Readings[0].Shown())
	for {
		if c, _ := l.chosen(r.d); c.remove != nil {
			break
		}
		r.press("<down>")
	}
	r.press("-")
	require.Empty(t, r.d.job().Readings)
	r.press("+1<enter>")
	require.Equal(t, "1 V", r.d.job().Readings[0].Shown())
	r.press("<up><up><up><up><up><up><up><up><up><up><up><up><up>-")
	require.Contains(t, r.d.notice.text, "only a reading")
}

// A comparison and a diagnosis that are late are dropped, and no key waits for them.
func TestTheScreenDoesNotWaitForADiagnosis(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/sol.coil+<enter>i0.1")
	_, slow := r.d.Update(keyMsg("enter"))
	require.Equal(t, []string{". 0.1 V, key-on"}, r.cells("read"))
	requireFrame(t, r.d)
	_, slower := r.d.Update(keyMsg("I"))
	require.Contains(t, r.d.View(), "next: thinking ...")
	r.d.Update(keyMsg("enter"))
	require.Contains(t, r.d.notice.text, "being weighed")
	late := slower().(*diagnosis)
	r.press("-") // nothing to take away at the first line
	_, more := r.d.Update(keyMsg("esc"))
	require.Nil(t, more, "one at a time")
	undo(r.d)
	redo(r.d)
	r.send(late)
	require.Nil(t, r.d.diagnosed(), "it is of a revision before")
	r.run(slow)
	r.press("I")
	require.Equal(t, r.d.forceStamp(), r.d.diagnosed().stamp)
	require.NotContains(t, r.d.View(), "thinking")
	faults := r.d.diagnosed().found
	r.press("<esc>u")
	require.Nil(t, r.d.diagnosed())
	r.press("I")
	require.Same(t, faults, r.d.diagnosed().found, "nothing but a reading has gone: no fault is listed twice")
	r.press("<esc>/l<enter>dI")
	require.NotSame(t, faults, r.d.diagnosed().found)
}

func TestAReadingOfAStateThatIsGoneSaysSo(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>/sol.coil+<enter>i0.1<enter>/key<enter>d/sol.coil+<enter>")
	require.Equal(t, []string{"- 0.1 V, key-on"}, r.cells("read"))
	r.press("I")
	require.Contains(t, r.d.View(), "next: cannot say")
	r.press("<enter>")
	require.Contains(t, r.d.notice.text, `no state "key-on"`)
}

// tug is a robot with a worked cart on its desk, its plan shown.
func tug(t *testing.T) *robot {
	t.Helper()
	data, err := cart.Read("greenhouse-tug")
	require.NoError(t, err)
	dec, problems := jobfile.Decode("tug", data, part.Library())
	require.Empty(t, problems)
	return newRobot(t, Session{Job: dec.Job, Library: part.Library(), Sheet: model.Plan}, theme.NoEscapes, 80, 24)
}

// The cart does not click. Whatever the list proposes is read on a cart that has the fault,
// until the suspect is named.
func TestProposedReadingsLeadToTheSuspect(t *testing.T) {
	r := tug(t)
	r.press("I<down><enter>no click<enter><up>")
	require.Contains(t, r.d.View(), "complaint: no click")
	broken := r.d.job().Clone()
	const open = "k3"
	w := broken.Sheet(model.Plan).Wire(open)
	require.NotNil(t, w)
	w.From = model.LooseEnd(model.Cut)
	n := network.Build(broken, broken.Sheet(model.Plan), part.Library())
	cautions := 0
	for steps := 0; r.d.diagnosed().more; steps++ {
		require.Less(t, steps, 15)
		r.press("<enter>")
		p := r.d.top().(*probeLayer)
		next := r.d.diagnosed().next
		require.Equal(t, ofTerminal(next.Red), p.at)
		require.Contains(t, []thing{ofTerminal(next.Red), ofTerminal(next.Black)}, r.d.cursor)
		require.Equal(t, next.State, r.d.stateName)
		if strings.Contains(r.d.notice.text, "wheels off the ground and chocked") {
			cautions++
		}
		probed := model.Reading{Sheet: model.Plan, State: p.state, Red: next.Red, Black: next.Black, Value: unit.V(1).Any()}
		if next.Kind == diagnose.Ohms {
			require.Contains(t, r.d.notice.text, "power off")
			probed.Value = unit.Ohms(1).Any()
		}
		shows, err := meter.Expected(n, &probed)
		require.NoError(t, err)
		text := "open"
		switch {
		case shows.Floating: // what little a meter shows of a point that nothing holds
			text = "0"
		case !shows.Open:
			text = shows.Figure(meter.Of(nil), shows.Value)
		}
		r.press(text + "<enter>")
		require.Equal(t, inRecords, r.d.here(), "%s: %s", text, r.d.notice.text)
		require.Len(t, r.d.job().Readings, steps+1)
	}
	require.Positive(t, cautions)
	l := r.d.top().(*listLayer)
	require.Contains(t, l.shown(r.d)[0].text, "do what the first suspect says")
	suspect := l.shown(r.d)[2]
	require.Contains(t, suspect.text, "wire "+open)
	require.Contains(t, suspect.detail, "do: ")
	r.requireGolden("80x24-suspects")
	r.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	r.requireGolden("120x36-suspects")
	r.press("<down><down><enter>")
	require.Equal(t, ofWire(open), r.d.cursor, "Enter goes to the suspect")
}

func TestOwnStatesAreMadeChangedAndTakenAway(t *testing.T) {
	r := wired(t, lamps)
	r.press("tkey-on<enter>tyour own<enter>key forced<enter>")
	require.Equal(t, "key-forced", r.d.stateName)
	require.Equal(t, &model.OwnState{Name: "key-forced", From: "key-on"}, r.d.job().OwnState("key-forced"))
	require.Contains(t, r.d.View(), "key-forced (Enter turns, Esc is done)")
	e, _ := energyOf(t, r, "l")
	r.press("<enter>")
	require.Equal(t, []model.Setting{{Control: model.Key, Position: "off"}}, r.d.job().OwnState("key-forced").Set)
	off, _ := energyOf(t, r, "l")
	require.NotEqual(t, e, off, "the drawing shows it at once")
	require.Contains(t, r.d.View(), "* key")
	r.press("<enter>")
	require.Empty(t, r.d.job().OwnState("key-forced").Set, "as in the state that it starts from")
	r.press("starts<enter>parked<enter>")
	require.Equal(t, "parked", r.d.job().OwnState("key-forced").From)
	r.press(strings.Repeat("<backspace>", 6) + "about<enter>hot key<enter><esc>thot<enter>")
	require.Equal(t, "key-forced", r.d.stateName)

	r.press("t+key-on<enter>")
	require.Contains(t, r.d.notice.text, "no state has yet")
	r.press("<esc><esc>/sol.coil+<enter>i0<enter>t<pgdown><up>-")
	require.NotNil(t, r.d.job().OwnState("key-forced"), "a reading was taken in it")
	require.Contains(t, r.d.notice.text, "no such state")
	r.press("=")
	require.Equal(t, inList, r.d.here())
	r.press("<esc><esc>uu")
	r.press("t<pgdown><up>")
	require.Equal(t, inRecords, r.d.here())
}
