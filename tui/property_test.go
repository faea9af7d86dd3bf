package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/unit"
	"example.com/lugbook/tui/theme"
)

// strokes are keys and bursts of keys that reach deep into the screen.
func strokes() []string {
	list := []string{"/sol", "k6 b2+", "r14 ?", "pplan<enter>", "abatt<enter><enter><enter>", "w<right><enter>r4<enter>", "m<right><down><enter>", "e<down><enter>", "hthe s", "n<down>a",
		"g.+", "k<down><left><enter>", ":undo<enter>", ":redo<enter>", "c<enter><esc>", "zshed<enter>", ";a", "x", "J<down><enter>9<enter>",
		"tkey-on<enter>i51 V<enter>", "i9<enter>", "I<enter>3<enter>", "t+zork<enter><enter>", "I<pgdown>-", "e<up>d", "I<down><enter>weak<enter>", "O<right><enter>", "--<down><esc>", "m<down><esc>"}
	for _, a := range table() {
		for _, key := range a.Keys {
			switch {
			case a.ID == "suspend":
			case len(key) > 1:
				list = append(list, "<"+key+">")
			default:
				list = append(list, key)
			}
		}
	}
	return append(list, "é", "漢", " ", "9", "<home>", "<end>", "<delete>", "<enter>", "<enter>", "<esc>", "<esc>")
}

// Whatever is pressed at whatever size, the screen is exactly as large as it shall be, the
// job stays consistent, and undoing and redoing everything leads to the start and the end.
func TestAnythingMayBePressed(t *testing.T) {
	list := strokes()
	entered := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(entered)
	cart := entered.d.job()
	rapid.Check(t, func(rt *rapid.T) {
		s := Session{ASCII: rapid.Bool().Draw(rt, "ascii")}
		if rapid.Bool().Draw(rt, "recorded") {
			s.Job = cart
		}
		r := newRobot(rt, s, theme.Indexed, 80, 24)
		if rapid.IntRange(0, 3).Draw(rt, "drawing") == 0 {
			r.d.drawer = quickDrawing
		}
		start := r.d.job()
		for range rapid.IntRange(1, 25).Draw(rt, "strokes") {
			switch rapid.IntRange(0, 9).Draw(rt, "what") {
			case 0:
				r.send(tea.WindowSizeMsg{Width: rapid.IntRange(1, 300).Draw(rt, "w"), Height: rapid.IntRange(1, 100).Draw(rt, "h")})
			case 1:
				r.send(tea.MouseMsg{X: rapid.IntRange(-1, 90).Draw(rt, "x"), Y: rapid.IntRange(-1, 30).Draw(rt, "y"),
					Action: rapid.SampledFrom([]tea.MouseAction{tea.MouseActionPress, tea.MouseActionMotion, tea.MouseActionRelease}).Draw(rt, "action"),
					Button: rapid.SampledFrom([]tea.MouseButton{tea.MouseButtonLeft, tea.MouseButtonWheelDown, tea.MouseButtonWheelUp}).Draw(rt, "button")})
			default:
				r.press(rapid.SampledFrom(list).Draw(rt, "keys"))
			}
			requireFrame(rt, r.d)
			require.Empty(rt, r.d.job().Check(shelf))
		}
		for redoable(r.d) == "" { // what the random keys undid
			redo(r.d)
		}
		end := r.d.job()
		for range r.d.history.Steps() {
			undo(r.d)
		}
		require.True(rt, start == r.d.job())
		requireFrame(rt, r.d)
		for redoable(r.d) == "" {
			redo(r.d)
		}
		requireFrame(rt, r.d)
		require.True(rt, end == r.d.job())
	})
}

func TestEverySizeShowsTheEntryLine(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(r)
	r.press("/b3-<enter>gk6")
	for w := 1; w <= 300; w += 1 + w/12 {
		for h := 1; h <= 100; h += 1 + h/10 {
			r.send(tea.WindowSizeMsg{Width: w, Height: h})
			requireFrame(t, r.d)
			if w >= 20 {
				require.Contains(t, r.d.View(), "k6_", "%dx%d", w, h)
			}
		}
	}
}

func TestNothingIsDrawnBeforeTheFirstSize(t *testing.T) {
	d := newDesk(Session{Job: &model.Job{Version: 1, Title: "x"}, Library: shelf}, theme.New(theme.Dark, theme.Indexed))
	require.Nil(t, d.Init())
	require.Empty(t, d.View())
	d.Update(keyMsg("a"))
	require.Empty(t, d.View())
}

// Without any colour, what is selected still shows by its characters.
func TestSelectionShowsWithoutColour(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		r := newRobot(t, Session{ASCII: ascii}, theme.NoEscapes, 120, 36)
		recordCart(r)
		seen := map[string]thing{}
		for range r.d.work.picture.order {
			r.press("<tab>")
			canvas := strings.Join(r.d.canvasLines(), "\n")
			other, taken := seen[canvas]
			require.False(t, taken, "%s looks like %s", r.d.cursor, other)
			seen[canvas] = r.d.cursor
		}
		require.Len(t, seen, len(r.d.work.picture.order))
	}
}

func TestASCIIModeShowsNothingElse(t *testing.T) {
	r := newRobot(t, Session{ASCII: true}, theme.Indexed, 120, 36)
	recordCart(r)
	r.press("eé")
	for _, keys := range []string{"<esc>n", "<esc>:", "é漢", "<esc><esc>/b1-<enter>k", "<esc>gk6 é", "<esc>;", "<esc>m"} {
		r.press(keys)
		for _, letter := range r.d.View() {
			require.True(t, letter == '\n' || letter == '\x1b' || letter >= ' ' && letter < 0x7f, "%q after %s", letter, keys)
		}
	}
}

// large is a job of many parts, wired in rows.
func large(parts int) *model.Job {
	s := model.Sheet{Name: model.AsFound}
	for i := range parts {
		s.Parts = append(s.Parts, model.Part{ID: model.PartID(fmt.Sprintf("b%d", i)), Kind: "battery-8v", Zone: "tray"})
	}
	for i := range parts - 1 {
		s.Wires = append(s.Wires, model.Wire{ID: model.WireID(fmt.Sprintf("w%d", i)), Gauge: unit.AWG(6), Colour: model.Colour{Body: "BK"},
			From: model.On(s.Parts[i].ID, "-"), To: model.On(s.Parts[i+1].ID, "+")})
	}
	return &model.Job{Version: 1, Title: "large", Zones: []model.Zone{{ID: "tray"}}, Sheets: []model.Sheet{s}}
}

// BenchmarkKeyOnALargeJob is a key press and the frame after it, with 500 parts drawn.
func BenchmarkKeyOnALargeJob(b *testing.B) {
	r := newRobot(b, Session{Job: large(500)}, theme.Indexed, 200, 60)
	for b.Loop() {
		r.d.Update(keyMsg("tab"))
		if len(r.d.View()) == 0 {
			b.Fatal("nothing is drawn")
		}
	}
}

// BenchmarkWalkOnALargeJob is a letter of a lug line and the frame after it.
func BenchmarkWalkOnALargeJob(b *testing.B) {
	r := newRobot(b, Session{Job: large(500)}, theme.Indexed, 200, 60)
	r.press("g")
	for b.Loop() {
		r.d.Update(keyMsg("k"))
		r.d.View()
		r.d.Update(keyMsg("backspace"))
		r.d.View()
	}
}
