package tui

import (
	"image"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
	"example.com/lugbook/tui/theme"
)

// recorded is a robot with the small cart on its desk.
func recorded(t *testing.T) *robot {
	t.Helper()
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	return r
}

func ref(part model.PartID, name string) model.TerminalRef {
	return model.TerminalRef{Part: part, Name: name}
}

func TestAValueThatIsNotRightStaysTyped(t *testing.T) {
	r := recorded(t)
	r.press("/w4<enter>e")
	for range 20 {
		if row, _ := r.d.top().(*cardLayer).row(r.d); row.name == "length" {
			break
		}
		r.press("<down>")
	}
	r.press("<enter>2 bananas<enter>")
	require.Equal(t, inField, r.d.here())
	require.Contains(t, r.d.notice.text, "!")
	require.Contains(t, r.d.View(), "2 bananas_")
	r.press(strings.Repeat("<backspace>", 7) + "ft<enter>")
	require.Equal(t, inCard, r.d.here())
	require.Equal(t, "2 ft", sheetOf(r, model.AsFound).Wire("w4").Length.String())
}

func TestChoicesTurnAndSeveralWordsAreMarked(t *testing.T) {
	r := recorded(t)
	r.press("/sol<enter>C")
	require.Equal(t, model.Traced, sheetOf(r, model.AsFound).Part("sol").Confidence)
	r.press("C")
	require.Equal(t, model.Assumed, sheetOf(r, model.AsFound).Part("sol").Confidence)
	r.press("cburnt<enter><esc>")
	require.Equal(t, []model.Condition{model.Burnt}, sheetOf(r, model.AsFound).Part("sol").Condition)
	r.press("/sol.L1<enter>v")
	require.Equal(t, model.CoverFitted, sheetOf(r, model.AsFound).Terminal(ref("sol", "L1")).Cover)
	r.press("/sol<enter>v")
	require.Contains(t, r.d.notice.text, "has no cover")
}

func TestRatingsTakeTheRightKindOfQuantity(t *testing.T) {
	r := recorded(t)
	r.press("/sol<enter>e" + strings.Repeat("<down>", 20) + "<enter>" + strings.Repeat("<backspace>", 10) + "12 A<enter>")
	require.Contains(t, r.d.notice.text, "is a voltage")
	r.press("<esc><enter>" + strings.Repeat("<backspace>", 10) + "80 V; catalogue<enter>")
	rating, has := sheetOf(r, model.AsFound).Part("sol").Rating("voltage-rating")
	require.True(t, has)
	require.Equal(t, unit.V(80), must(rating.Value.Volt()))
	require.Equal(t, "catalogue", rating.Source)
}

func must[T any](v T, ok bool) T {
	if !ok {
		panic("not of that kind")
	}
	return v
}

func TestRenamingKeepsTheCardOpen(t *testing.T) {
	r := recorded(t)
	r.press("/sol<enter>e<enter><end>2<enter>")
	require.Equal(t, inCard, r.d.here())
	require.Equal(t, ofPart("sol2"), r.d.cursor)
	require.Equal(t, "sol2.L1", sheetOf(r, model.AsFound).Wire("w4").To.String())
	r.press("<esc>e<enter>" + strings.Repeat("<backspace>", 4) + "ctrl<enter>")
	require.Contains(t, r.d.notice.text, "taken")
	require.Equal(t, inField, r.d.here())
}

func TestAnEndIsTypedShortOrLoose(t *testing.T) {
	r := recorded(t)
	r.press("/w2<enter>e<down><down><enter>" + strings.Repeat("<backspace>", 10) + "b3-<enter>")
	require.Equal(t, "b3.-", sheetOf(r, model.AsFound).Wire("w2").To.String())
	r.press("<enter><tab><tab><enter>")
	require.Equal(t, model.Capped, sheetOf(r, model.AsFound).Wire("w2").To.Loose)
}

func TestFindGoesOnWhereItWasAsked(t *testing.T) {
	r := recorded(t)
	r.press("/b1<enter>e/w4<enter>")
	require.Equal(t, ofWire("w4"), r.d.top().(*cardLayer).of)
	r.press("<esc>g/ctrl<enter>")
	require.Equal(t, model.PartID("ctrl"), r.d.top().(*walkLayer).at.Part)
	r.press("/w4<enter>")
	require.Contains(t, r.d.notice.text, "a walk goes to terminals")
}

func TestMovingABoxAndPuttingItBack(t *testing.T) {
	r := recorded(t)
	r.press("/ctrl<enter>m<right><down><shift+right>")
	require.Contains(t, r.d.View(), "## ctrl")
	before := r.d.job()
	r.press("<esc>")
	require.True(t, before == r.d.job(), "Esc changes nothing")
	at, _ := r.d.work.picture.place(ofPart("ctrl"))
	r.press("m<right><down><enter>")
	require.Equal(t, &model.Place{X: at.Min.X + 1, Y: at.Min.Y + 1}, sheetOf(r, model.AsFound).Part("ctrl").Place)
	r.press("M")
	require.Nil(t, sheetOf(r, model.AsFound).Part("ctrl").Place)
	r.press("M")
	require.Contains(t, r.d.notice.text, "no one has placed")
}

func TestALooseEndIsPulledToATerminal(t *testing.T) {
	r := recorded(t)
	r.press("/loose<enter>")
	require.Equal(t, looseThing, r.d.cursor.kind)
	r.press("w/sol.c1<enter><enter>")
	require.Equal(t, "sol.c1", sheetOf(r, model.AsFound).Wire("w2").To.String())
}

func TestAPullTakesAnyLugLine(t *testing.T) {
	r := recorded(t)
	for i, text := range []string{">sol.c2 k18", "?? sol.c2", "k18 >sol.c2", "r4 #"} {
		r.press("/b3-<enter>w" + text)
		require.Contains(t, r.d.View(), text+"_")
		r.press("<enter>")
		require.Len(t, sheetOf(r, model.AsFound).Wires, 7+i)
	}
}

func TestPullingEndsWhereTheCursorIs(t *testing.T) {
	r := recorded(t)
	r.press("/b3-<enter>w/sol.c2<enter><enter>k18<enter>")
	w := sheetOf(r, model.AsFound).Wire("w7")
	require.Equal(t, "b3.- sol.c2 18 AWG", w.From.String()+" "+w.To.String()+" "+w.Gauge.String())
	require.Equal(t, onDrawing, r.d.here())
	require.Equal(t, ofTerminal(ref("b3", "-")), r.d.cursor)
}

func TestRecalledLinesReplaceTheirWire(t *testing.T) {
	r := recorded(t)
	r.press("/b3-<enter>gk6 sol.c1<enter>")
	steps := len(r.d.history.Steps())
	r.press("<up> 4<enter>")
	require.Len(t, r.d.history.Steps(), steps)
	require.Equal(t, unit.AWG(4), sheetOf(r, model.AsFound).Wire("w7").Gauge, "a later gauge wins")
	require.Len(t, sheetOf(r, model.AsFound).Wires, 7)
}

func TestDoubtsAreSaidAndNothingTypedIsLost(t *testing.T) {
	r := recorded(t)
	r.press("/b3-<enter>gk6 b1<enter>")
	require.Contains(t, r.d.notice.text, "with a doubt")
	r.press("r2 xyzzy<esc>")
	require.Equal(t, onDrawing, r.d.here())
	r.press("g")
	require.Contains(t, r.d.View(), "r2 xyzzy_")
	r.press(strings.Repeat("<backspace>", 8))
	r.press("<backspace><backspace>uu")
	require.Equal(t, inWalk, r.d.here(), "a key held too long does not turn letters into commands")
}

func TestDeletingActsAndSaysHowToUndo(t *testing.T) {
	r := recorded(t)
	r.press("/sol<enter>d")
	s := sheetOf(r, model.AsFound)
	require.Nil(t, s.Part("sol"))
	require.Equal(t, model.Cut, s.Wire("w4").To.Loose)
	require.Contains(t, r.d.notice.text, "u undoes it")
	require.Equal(t, thing{}, r.d.cursor, "no part of its kind is left")
	r.press("dD")
	require.Contains(t, r.d.notice.text, "go to a part first")
	r.press("u/sol<enter>D")
	require.Len(t, sheetOf(r, model.AsFound).Wires, 3)
	r.press("u/w1<enter>d")
	require.Nil(t, sheetOf(r, model.AsFound).Wire("w1"))
}

func TestFollowGoesThereAndBack(t *testing.T) {
	r := recorded(t)
	r.press("/b1-<enter>f")
	require.Equal(t, ofTerminal(ref("b2", "+")), r.d.cursor)
	r.press("f")
	require.Equal(t, ofTerminal(ref("b1", "-")), r.d.cursor)
	r.press(".f") // the second lug is the untraced one
	require.Equal(t, ofLoose("w2", "to"), r.d.cursor)
	r.press("f<enter>")
	require.Equal(t, ofWire("w2"), r.d.cursor)
	r.press("<esc>")
	require.Equal(t, ofTerminal(ref("b1", "-")), r.d.cursor)
	r.press("<esc>")
	require.Equal(t, ofPart("b1"), r.d.cursor)
}

func TestEveryJumpLabelLeadsToItsPlace(t *testing.T) {
	r := recorded(t)
	r.press("/b1<enter>;")
	j, _ := topOf[*jumpLayer](r.d)
	labels := j.labels
	require.Greater(t, len(labels), 10)
	r.press("<esc>")
	for target, label := range labels {
		r.press("/b1<enter>;" + label)
		require.Equal(t, target, r.d.cursor)
	}
}

func TestTheMouseSelectsAndScrolls(t *testing.T) {
	r := recorded(t)
	r.press("/b1<enter>")
	p := r.d.work.picture
	at, _ := p.place(ofTerminal(ref("b2", "+")))
	cell := at.Min.Sub(r.d.view).Add(r.d.plan.Canvas.Min)
	r.send(tea.MouseMsg{X: cell.X, Y: cell.Y, Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	require.Equal(t, ofTerminal(ref("b2", "+")), r.d.cursor)
	was := r.d.view
	r.send(tea.MouseMsg{X: 5, Y: 5, Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown})
	require.Greater(t, r.d.view.Y, was.Y)
	r.press("r")
	require.False(t, r.d.mouse == r.d.session.Mouse)
}

func TestSheetsAndStates(t *testing.T) {
	r := recorded(t)
	r.press("2")
	require.Contains(t, r.d.notice.text, "not started")
	r.press("pplan<enter>1")
	require.Equal(t, model.AsFound, r.d.sheetName)
	r.press("2pas-built<enter>")
	require.Equal(t, model.AsBuilt, r.d.sheetName)
	require.Contains(t, r.d.View(), "AS-BUILT")
	r.press("akey<enter><enter><enter>tkey-on<enter>")
	r.send(tea.WindowSizeMsg{Width: 120, Height: 36})
	require.Contains(t, r.d.View(), "state key-on")
	r.press("u")
	require.Contains(t, r.d.View(), "state none", "without a key there is no such state")
}

func TestKeysTypedTogetherAreTakenOneByOne(t *testing.T) {
	r := recorded(t)
	r.d.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("uu")})
	require.Len(t, r.d.history.Steps(), 11)
}

func TestAPasteActsNowhereAndIsTypedAsOneLine(t *testing.T) {
	r := recorded(t)
	steps := len(r.d.history.Steps())
	r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("uuudd"), Paste: true})
	require.Len(t, r.d.history.Steps(), steps)
	r.press("/b3-<enter>g")
	r.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("k6\x1b[31m\n b2+"), Paste: true})
	require.Contains(t, r.d.View(), "k6")
	require.NotContains(t, r.d.View(), "\x1b")
}

func TestTheJobsCardHoldsItsSheetAndRuns(t *testing.T) {
	r := recorded(t)
	r.press("Rtray rear-bay<enter>")
	require.Equal(t, inField, r.d.here())
	r.press(" 0.8 m<enter>")
	length, known := r.d.job().RunLength("rear-bay", "tray")
	require.True(t, known)
	require.Equal(t, "0.8 m", length.String())
	r.press("J" + strings.Repeat("<down>", 20) + "<enter>" + strings.Repeat("<backspace>", 5) + "2 ft<enter>")
	length, _ = r.d.job().RunLength("rear-bay", "tray")
	require.Equal(t, "2 ft", length.String())
	r.press("<up><up><up><enter>came in on a trailer<enter>")
	require.Equal(t, "came in on a trailer", sheetOf(r, model.AsFound).Note)
}

func TestTheSelectedThingStaysWhereItIsOnTheScreen(t *testing.T) {
	r := recorded(t)
	r.press("/ctrl<enter>")
	at := func() image.Point {
		place, _ := r.d.work.picture.place(r.d.cursor)
		return place.Min.Sub(r.d.view)
	}
	was := at()
	require.Positive(t, r.d.view.X)
	r.press("gk6 ?<enter><esc>/ctrl<enter>") // every lane of the drawing is a column wider now
	require.Equal(t, was, at())
}

func TestAWireByForm(t *testing.T) {
	r := recorded(t)
	r.press("/b3-<enter>W<enter>" + strings.Repeat("<backspace>", 10) + "sol.c2<enter><down><enter>6 AWG<enter>")
	w := sheetOf(r, model.AsFound).Wire("w7")
	require.Equal(t, "b3.- sol.c2 6 AWG", w.From.String()+" "+w.To.String()+" "+w.Gauge.String())
	require.Empty(t, r.d.job().Check(shelf))
}

// The same with the drawing, the rules and the parts library of every day.
func TestRecordingWithTheRealDrawingAndRules(t *testing.T) {
	r := newRobot(t, Session{Library: part.Library()}, theme.Indexed, 120, 36)
	r.d.drawer, r.d.checker = diagram.Draw, judge
	r.press("alead-battery-8v<enter>pack tray<enter><enter>AAA")
	r.press("acontactor-48v<enter>rear<enter><enter>/b1-<enter>gk6 b2+<enter>r14 ?<enter>..k6 b3+<enter><esc>")
	require.Len(t, r.d.sheet().Wires, 3)
	p := r.d.work.picture
	require.Equal(t, r.d.stamp(), r.d.work.pictureOf)
	for _, want := range []thing{ofPart("sol"), ofTerminal(ref("b1", "-")), ofWire("w1"), ofLoose("w2", "to")} {
		require.Contains(t, p.index, want)
	}
	require.Empty(t, scene.Check(p.page))
	require.NotEmpty(t, r.d.work.findings)
	seen := map[thing]bool{}
	for range p.order {
		r.press("<tab>")
		seen[r.d.cursor] = true
	}
	require.Len(t, seen, len(p.objects), "Tab reaches everything")
	r.press("T")
	require.NotContains(t, r.d.notice.text, "!")
}
