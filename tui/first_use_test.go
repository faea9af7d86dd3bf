package tui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/tui/theme"
)

func TestLettersReplaceWhatAFieldOpensWith(t *testing.T) {
	r := recorded(t)
	typed := func() string { return r.d.top().(*fieldLayer).line.Text() }
	for _, c := range []struct{ keys, want string }{
		{"x", "x"}, {"xy", "xy"}, {"<backspace>2", "orchard car2"}, {"<home>x", "xorchard cart"}, {" 2", "orchard cart 2"}, {"<end>x", "orchard cartx"},
	} {
		r.press("J<enter>")
		require.Contains(t, r.d.View(), "letters replace it")
		r.press(c.keys)
		require.Equal(t, c.want, typed(), c.keys)
		require.NotContains(t, r.d.View(), "letters replace it")
		r.press("<esc><esc>")
	}
	require.Equal(t, "orchard cart", r.d.job().Title, "Esc keeps what was there")
	r.press("J<enter><enter>")
	require.Equal(t, "orchard cart", r.d.job().Title)
}

func TestAKeyOfTheDrawingIsNamedElsewhere(t *testing.T) {
	r := recorded(t)
	r.press("Ja")
	require.Contains(t, r.d.notice.text, "a is a key of the drawing (Add a part from the parts library); Esc goes back there")
	r.press("Y")
	require.Contains(t, r.d.notice.text, "Y does nothing here")
}

func TestAHeldDeleteKeyStopsAtAnotherKindOfPart(t *testing.T) {
	r := recorded(t)
	r.press("/b2<enter>DDDDDD")
	s := sheetOf(r, model.AsFound)
	require.Len(t, s.Parts, 2, "the batteries are gone, all else stays")
	require.Equal(t, thing{}, r.d.cursor)
	require.Contains(t, r.d.View(), "nothing selected")
	r.press("e")
	require.Contains(t, r.d.notice.text, "an arrow or Tab goes to something")
	r.press("<right>")
	require.Equal(t, partThing, r.d.cursor.kind)
	r.press("u")
	require.Len(t, sheetOf(r, model.AsFound).Parts, 3)
}

func TestUndoAndRedoShowTheSheetThatTheyChange(t *testing.T) {
	r := recorded(t)
	r.press("pplan<enter>/sol<enter>C1")
	require.Equal(t, model.AsFound, r.d.sheetName)
	r.press("u")
	require.Equal(t, model.Plan, r.d.sheetName)
	require.Contains(t, r.d.notice.text, "undone: set confidence of sol")
	r.press("1U")
	require.Equal(t, model.Plan, r.d.sheetName)
	require.Equal(t, model.Traced, sheetOf(r, model.Plan).Part("sol").Confidence)
	r.press("uu")
	require.Equal(t, model.AsFound, r.d.sheetName, "the plan is gone")
	r.press("UU")
	require.Equal(t, model.Plan, r.d.sheetName, "and is back")
	r.press("J<enter>x<enter><esc>1u")
	require.Equal(t, model.AsFound, r.d.sheetName, "the title is on no sheet")
}

func TestGoingOutOfAWireKeepsItLit(t *testing.T) {
	r := recorded(t)
	r.press("/w2<enter><esc>")
	require.Equal(t, ofTerminal(ref("b1", "-")), r.d.cursor)
	require.Equal(t, model.WireID("w2"), r.d.litWire())
}

func TestAnEndThatFitsNothingSaysWhatDoes(t *testing.T) {
	r := recorded(t)
	r.press("/w2<enter>e<down><down><enter>sol.x<enter>")
	require.Contains(t, r.d.notice.text, "sol.x names nothing on this sheet: sol has L1, L2, c1, c2")
	require.Equal(t, inField, r.d.here())
	r.press("<esc><enter>solc<enter>")
	require.Contains(t, r.d.notice.text, "solc fits sol.c1, sol.c2; type more of it")
	r.press("2<enter>")
	require.Equal(t, "sol.c2", sheetOf(r, model.AsFound).Wire("w2").To.String())
	r.press("<esc>/b3-<enter>gk6 zork<enter>")
	require.Contains(t, r.d.notice.text, "zork names nothing on this sheet; it is in the note")
}

func TestTheWalkGoesRoundUntilEveryStudIsDone(t *testing.T) {
	r := recorded(t)
	last := r.d.route()[len(r.d.route())-1]
	r.press("/" + last.String() + "<enter>g,,,,,,,,,,,,,,,,,,,,,,,")
	require.Equal(t, r.d.route()[0], r.d.top().(*walkLayer).at)
	require.Contains(t, r.d.notice.text, "first stud")
	for range 60 {
		w := r.d.top().(*walkLayer)
		if strings.Contains(r.d.notice.text, "something is recorded of every stud") {
			require.Equal(t, last, w.at)
			at, why := r.d.leftOpen(r.d.route())
			require.Empty(t, why, at)
			return
		}
		switch reading := w.reading(r.d); {
		case strings.HasPrefix(reading, "expected here"):
			r.press("+")
		case len(w.stack(r.d)) == 0:
			r.press("%<enter><enter>")
		default:
			r.press("<enter>")
		}
	}
	require.Fail(t, "the walk has no end", r.d.notice.text)
}

func (w *walkLayer) stack(d *desk) []model.WireID {
	order, _ := d.sheet().StackOf(w.at)
	return order
}

func TestTheWalkSaysWhereItGoesRound(t *testing.T) {
	r := recorded(t)
	r.press("/ctrl.M-<enter>g<enter>")
	require.Contains(t, r.d.notice.text, "round again: b3+ still expects w3")
	r.press("+/ctrl.M-<enter><enter>")
	require.Contains(t, r.d.notice.text, "round again: nothing is recorded of b3-; % says that nothing is on it")
}

func TestARemarkDoesNotBreakASeries(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 120, 36)
	r.press("abattery<enter><enter><enter>AAA/b1-<enter>gk6 b2+<enter>.+")
	require.Contains(t, r.d.notice.text, "kept: w1 seen at b2+; < takes it back")
	r.press("!c<enter>.")
	require.Contains(t, r.d.View(), "Tab takes k6 b3+, next in the series")
	r.press("<tab><enter>")
	require.Equal(t, "b3.+", sheetOf(r, model.AsFound).Wire("w2").To.String())
	steps := len(r.d.history.Steps())
	r.press("<")
	require.Len(t, r.d.history.Steps(), steps-1)
	require.Equal(t, inWalk, r.d.here())
	require.Contains(t, r.d.notice.text, ":redo does it again")
}

func TestSeveralExpectedWiresAreCounted(t *testing.T) {
	r := recorded(t)
	r.press("/ctrl.B+<enter>g")
	require.Contains(t, r.d.View(), "w5 black 18 AWG from sol.L2 (then 1 more); + it is here")
}

// Covers are recorded from the finding that misses them: the key, then on to the next place.
func TestWhatAFindingMissesIsRecordedFromItsList(t *testing.T) {
	r := recorded(t)
	plain := r.d.checker
	r.d.checker = func(j *model.Job, name model.SheetName, lib *model.Catalogue) (rule.Report, error) {
		found, err := plain(j, name, lib)
		missing := rule.Finding{Rule: "cover", Severity: rule.Note, Message: "covers are not recorded", Remedy: "look", Basis: rule.Basis{Text: "shorts", Source: rule.Practice}}
		for _, at := range []model.TerminalRef{ref("b1", "+"), ref("b1", "-"), ref("b2", "+")} {
			switch known := j.Sheet(name).Terminal(at); {
			case known == nil || known.Cover == "":
				missing.Subjects = append(missing.Subjects, rule.OfTerminal(at))
			case known.Cover == model.CoverMissing:
				found.Findings = append([]rule.Finding{{Rule: "live", Severity: rule.Caution, Message: at.String() + " has no cover", Subjects: []rule.Subject{rule.OfTerminal(at)}}}, found.Findings...)
			}
		}
		if len(missing.Subjects) > 0 {
			found.Findings = append(found.Findings, missing)
		}
		return found, err
	}
	r.press("/b1+<enter>C") // checked again
	r.press("n")
	require.Equal(t, "cover", r.d.top().(*findingsLayer).finding(r.d).Rule)
	r.press("vv.v.v.") // missing, fitted, fitted
	s := sheetOf(r, model.AsFound)
	require.Equal(t, []model.Cover{model.CoverMissing, model.CoverFitted, model.CoverFitted},
		[]model.Cover{s.Terminal(ref("b1", "+")).Cover, s.Terminal(ref("b1", "-")).Cover, s.Terminal(ref("b2", "+")).Cover})

	r.press("<esc>uuuun")
	for r.d.top().(*findingsLayer).finding(r.d).Rule != "cover" {
		r.press("<down>")
	}
	for range 3 { // the key for the next place comes before the sheet is checked again
		_, late := r.d.Update(keyMsg("v"))
		r.press(".")
		r.run(late)
	}
	s = sheetOf(r, model.AsFound)
	for _, at := range []model.TerminalRef{ref("b1", "+"), ref("b1", "-"), ref("b2", "+")} {
		require.Equal(t, model.CoverFitted, s.Terminal(at).Cover, at)
	}
}
