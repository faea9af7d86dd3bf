package tui

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/unit"
	"example.com/lugbook/tui/theme"
)

var update = flag.Bool("update", false, "rewrite the golden frames")

// shelf is a parts library of the tests' own, so that frames change only with the screen.
var shelf = model.NewCatalogue([]model.Definition{
	{Kind: "battery-8v", Title: "Battery, 8 V", Family: model.Storage, Designator: "b1", About: "One battery of a string.",
		Terminals: []model.TerminalDef{{Name: "+", Form: model.StudForm, Pole: model.Positive}, {Name: "-", Form: model.StudForm, Pole: model.Negative}},
	},
	{Kind: "contactor", Title: "Main contactor", Family: model.Switchgear, Designator: "sol", About: "Connects the pack to the controller.",
		Terminals: []model.TerminalDef{{Name: "L1", Form: model.StudForm}, {Name: "L2", Form: model.StudForm}, {Name: "c1", Form: model.TabForm}, {Name: "c2", Form: model.TabForm}},
		Ratings:   []model.Rating{{Name: "voltage-rating", Value: unit.V(96).Any(), Source: model.Typical}}},
	{Kind: "controller", Title: "Controller, series", Family: model.Drive, Designator: "ctrl", About: "Feeds the motor.",
		Terminals: []model.TerminalDef{{Name: "B+", Form: model.StudForm, Means: "pack plus"}, {Name: "B-", Form: model.StudForm}, {Name: "M-", Form: model.StudForm}}},
	{Kind: "key-switch", Title: "Key switch", Family: model.Switchgear, Designator: "key", About: "Wakes the cart.",
		Control:   &model.Switching{Sets: model.Key, Positions: []string{"off", "on"}, Rest: "off"},
		Terminals: []model.TerminalDef{{Name: "1", Form: model.TabForm}, {Name: "2", Form: model.TabForm}}},
})

// tester is a test, a benchmark or a property.
type tester interface {
	require.TestingT
	Helper()
}

// robot drives a desk as a function: every command runs to its end before the next key.
type robot struct {
	t    tester
	d    *desk
	quit bool
}

func newRobot(t tester, s Session, depth theme.Depth, w, h int) *robot {
	t.Helper()
	if s.Library == nil {
		s.Library = shelf
	}
	if s.Job == nil {
		s.Job = &model.Job{Version: model.FileVersion, Title: "orchard cart"}
	}
	r := &robot{t: t, d: newDesk(s, theme.New(theme.Dark, depth))}
	r.d.drawer, r.d.checker = plainDrawing, plainCheck
	r.send(tea.WindowSizeMsg{Width: w, Height: h})
	return r
}

// send delivers a message and everything that comes of it.
func (r *robot) send(msg tea.Msg) {
	r.t.Helper()
	_, cmd := r.d.Update(msg)
	r.run(cmd)
}

func (r *robot) run(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.BatchMsg:
		for _, c := range msg {
			r.run(c)
		}
	case tea.QuitMsg:
		r.quit = true
	default:
		r.send(msg)
	}
}

var special = map[string]tea.KeyType{
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "shift+tab": tea.KeyShiftTab, "backspace": tea.KeyBackspace,
	"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight, "pgup": tea.KeyPgUp, "pgdown": tea.KeyPgDown,
	"ctrl+r": tea.KeyCtrlR, "ctrl+s": tea.KeyCtrlS, "ctrl+c": tea.KeyCtrlC, "shift+left": tea.KeyShiftLeft, "shift+right": tea.KeyShiftRight,
	"shift+up": tea.KeyShiftUp, "shift+down": tea.KeyShiftDown, "home": tea.KeyHome, "end": tea.KeyEnd, "delete": tea.KeyDelete,
}

func keyMsg(key string) tea.KeyMsg {
	if typ, ok := special[key]; ok {
		return tea.KeyMsg{Type: typ}
	}
	if key == " " {
		return tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(key)}
}

// press presses keys by name; a word in angle brackets is a key, all else is typed letter
// by letter: "a<enter>".
func (r *robot) press(keys string) {
	r.t.Helper()
	for keys != "" {
		key := string([]rune(keys)[0])
		if name, _, found := strings.Cut(keys[1:], ">"); keys[0] == '<' && found && special[name] != 0 {
			key, keys = name, keys[len(name)+2:]
		} else {
			keys = keys[len(key):]
		}
		r.send(keyMsg(key))
		requireFrame(r.t, r.d)
	}
}

// requireFrame checks that the screen is as large as it shall be.
func requireFrame(t tester, d *desk) {
	t.Helper()
	lines := strings.Split(d.View(), "\n")
	require.Len(t, lines, d.h)
	for i, line := range lines {
		if got := width(line); got != d.w {
			require.Equal(t, d.w, got, "width of line %d: %q", i, line)
		}
	}
}

// width counts the cells of a line; every letter of the screen takes one.
func width(line string) int {
	n, escape := 0, false
	for _, r := range line {
		switch {
		case r == '\x1b':
			escape = true
		case escape:
			escape = r != 'm'
		default:
			n++
		}
	}
	return n
}

// requireGolden compares a frame with the one on file, escape sequences made visible and
// blanks at the ends of lines left out.
func (r *robot) requireGolden(name string) {
	r.t.Helper()
	lines := strings.Split(strings.ReplaceAll(r.d.View(), "\x1b", "^"), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	got := strings.Join(lines, "\n") + "\n"
	path := filepath.Join("testdata", name+".golden")
	if *update {
		require.NoError(r.t, os.MkdirAll("testdata", 0o755))
		require.NoError(r.t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(r.t, err)
	require.Equal(r.t, string(want), got, "%s; -update rewrites it after a look", path)
}

// plainDrawing places boxes in three columns and gives every wire a column of its own, so
// that the screen's tests do not depend on how drawings are laid out.
func plainDrawing(j *model.Job, name model.SheetName, lib *model.Catalogue, _ diagram.Options) (*diagram.Drawing, error) {
	s := j.Sheet(name)
	if s == nil {
		return nil, errors.New("no such sheet")
	}
	const boxW, boxH, across, gap = 16, 9, 3, 8
	page := scene.Page{Title: scene.TitleBlock{Job: j.Title}}
	ports := map[string]scene.Point{}
	lane := len(s.Wires) + gap
	for i := range s.Parts {
		p := &s.Parts[i]
		at := scene.Point{X: 2 + i%across*(boxW+lane), Y: 1 + i/across*(boxH+2)}
		if p.Place != nil {
			at = scene.Point{X: p.Place.X, Y: p.Place.Y}
		}
		box := scene.Box{ID: string(p.ID), Name: p.Name, Rect: scene.Rect{X: at.X, Y: at.Y, W: boxW, H: boxH}}
		row := 1
		for _, terminal := range lib.For(j).TerminalsOf(s, p) {
			ref := model.TerminalRef{Part: p.ID, Name: terminal}
			order, known := s.StackOf(ref)
			for k := range max(1, len(order)) {
				port := scene.Port{ID: terminal, Name: terminal, At: scene.Point{X: at.X + boxW - 1, Y: at.Y + min(row, boxH-2)}, Side: scene.East}
				if known && len(order) > 0 {
					port.Seat, port.Stud = k+1, terminal
				}
				if k < len(order) {
					ports[ref.String()+" "+string(order[k])] = port.At
				}
				row++
				box.Ports = append(box.Ports, port)
			}
		}
		page.Boxes = append(page.Boxes, box)
		page.W, page.H = max(page.W, at.X+boxW+lane), max(page.H, at.Y+boxH+2)
	}
	for i := range s.Wires {
		page.H = max(page.H, 62+2*i)
		page.Wires, page.Flags = plainWire(&s.Wires[i], i, ports, page.Wires, page.Flags)
	}
	return &diagram.Drawing{Pages: []scene.Page{page}}, nil
}

func plainWire(w *model.Wire, i int, ports map[string]scene.Point, wires []scene.Wire, flags []scene.Flag) ([]scene.Wire, []scene.Flag) {
	var at [2]scene.Point
	for k, e := range w.Ends() {
		side := []string{"from", "to"}[k]
		if !e.IsLoose() {
			at[k] = ports[e.At.String()+" "+string(w.ID)]
			continue
		}
		at[k] = scene.Point{X: 2 + 9*k, Y: 60 + 2*i}
		flags = append(flags, scene.Flag{ID: string(w.ID) + " " + side, Kind: scene.Untraced, Text: string(e.Loose),
			Rect: scene.Rect{X: at[k].X - len(e.Loose), Y: at[k].Y, W: len(e.Loose) + 1, H: 1}, Port: scene.Port{ID: "end", At: at[k], Side: scene.East}})
	}
	lane := at[0].X + 2 + i
	path := []scene.Point{at[0], {X: lane, Y: at[0].Y}, {X: lane, Y: at[1].Y}, at[1]}
	label := scene.Label{Text: string(w.ID), At: scene.Point{X: lane + 1, Y: at[0].Y + 1}, Vertical: true}
	return append(wires, scene.Wire{ID: string(w.ID), Path: path, Colour: w.Colour.String(), Weight: scene.Power, Label: label}), flags
}

// plainCheck finds thicker wires on top of thinner ones and ends that were not traced, and asks
// for the lengths of wires.
func plainCheck(j *model.Job, name model.SheetName, _ *model.Catalogue) (rule.Report, error) {
	s := j.Sheet(name)
	if s == nil {
		return rule.Report{}, errors.New("no such sheet")
	}
	var questions []rule.Question
	for i := range s.Wires {
		if w := &s.Wires[i]; w.Length.IsZero() {
			questions = append(questions, rule.Question{Datum: "the length", Field: "length", Subject: rule.OfWire(w.ID), Decides: []string{"how much is lost on the way"},
				Rules: []string{"drop-too-high"}, Worst: rule.Caution})
		}
	}
	var found []rule.Finding
	for i := range s.Terminals {
		t := &s.Terminals[i]
		best := slices.Clone(t.Stack)
		slices.SortStableFunc(best, func(a, b model.WireID) int { return s.Wire(b).Gauge.Compare(s.Wire(a).Gauge) })
		if !slices.Equal(best, t.Stack) {
			found = append(found, rule.Finding{Rule: "stack-order", Key: "stack-order@" + t.At.String(), Severity: rule.Fault, Message: fmt.Sprintf("on %s a thick lug sits on a thin one", t.At),
				Subjects: []rule.Subject{rule.OfTerminal(t.At)}, Remedy: "put the thickest on the seat", Basis: rule.Basis{Text: "less contact", Source: rule.Practice},
				Fixes: []edit.Edit{edit.Restack{Sheet: name, At: t.At, Order: best}}})
		}
	}
	for i := range s.Wires {
		if w := &s.Wires[i]; w.To.Loose == model.Untraced || w.From.Loose == model.Untraced {
			found = append(found, rule.Finding{Rule: "untraced-end-live", Key: "untraced-end-live@" + string(w.ID), Severity: rule.Danger, Message: fmt.Sprintf("%s is not traced", w.ID),
				Subjects: []rule.Subject{rule.OfWire(w.ID)}, Remedy: "follow it", Basis: rule.Basis{Text: "unknown", Source: rule.Practice}})
		}
	}
	for i := range found {
		found[i].Waived = s.Waiver(found[i].Key)
	}
	return rule.Report{Sheet: name, Findings: found, Questions: questions}, nil
}
