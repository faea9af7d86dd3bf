package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/tui/line"
)

// walkLayer is the entry of lugs at one stud after the other, from the seat outward.
type walkLayer struct {
	at    model.TerminalRef
	once  bool // one wire, then back to the drawing
	line  line.Line
	offer int // completions taken so far
	base  string
	mends model.WireID // wire of the recalled line, that Enter enters anew
	memo  walkMemo
}

// walkMemo keeps what a line reads as, and what it was read from.
type walkMemo struct {
	text     string
	at       model.TerminalRef
	revision int
	sheet    model.SheetName
	reading  *lugline.Reading
	offers   []lugline.Candidate
}

// kept is the line that was kept last.
type kept struct {
	line     string
	at       model.TerminalRef
	wire     model.WireID
	revision int
}

func (w *walkLayer) place() place { return inWalk }

func (w *walkLayer) typed() string { return w.line.Text() }

func (w *walkLayer) stale(d *desk) bool { return !ofTerminal(w.at).on(d.sheet(), d.cat()) }

func (w *walkLayer) key(_ *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	w.offer = 0
	return nil, w.line.Key(key)
}

// stand opens the entry of lugs at a terminal.
func (d *desk) stand(at model.TerminalRef, once bool, text string) {
	w := &walkLayer{once: once}
	d.push(w)
	w.goTo(d, at)
	if text != "" {
		w.line = line.Of(text)
		if strings.HasSuffix(text, " ") {
			w.line.Key(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
		}
	}
}

// goTo stands at another terminal. A line begun here is kept for later.
func (w *walkLayer) goTo(d *desk, at model.TerminalRef) {
	w.putBy(d)
	w.at, w.offer, w.mends = at, 0, ""
	w.line = line.Of(d.drafts[at])
	d.goTo(ofTerminal(at))
}

// putBy keeps a line that is not finished for the next time at this stud.
func (w *walkLayer) putBy(d *desk) {
	delete(d.drafts, w.at)
	if text := w.line.Text(); text != "" {
		d.drafts[w.at] = text
	}
}

func (w *walkLayer) context(d *desk) lugline.Context {
	return lugline.Context{Sheet: d.sheet(), Catalogue: d.cat(), At: w.at, Last: d.lastEntry}
}

func (w *walkLayer) parse(d *desk) lugline.Reading { return *w.read(d).reading }

// read reads the line, or takes from memory what it read as.
func (w *walkLayer) read(d *desk) *walkMemo {
	m := walkMemo{text: w.line.Text(), at: w.at, revision: d.history.Revision(), sheet: d.sheetName}
	old := &w.memo
	if old.reading == nil || old.text != m.text || old.at != m.at || old.revision != m.revision || old.sheet != m.sheet {
		r := lugline.Parse(m.text, w.context(d))
		m.reading, m.offers = &r, r.Complete()
		w.memo = m
	}
	return &w.memo
}

// keep makes the wire or remark that the line says; an empty line goes on.
func (w *walkLayer) keep(d *desk) tea.Cmd {
	if w.line.Empty() {
		if w.once {
			d.pop()
			return nil
		}
		w.walkOn(d, 1)
		return nil
	}
	w.enter(d, w.line.Text())
	return nil
}

// enter makes what a line says.
func (w *walkLayer) enter(d *desk, text string) {
	mending := w.mends != "" && d.lastLine.revision == d.history.Revision()
	if mending {
		d.history.Undo()
	}
	w.line = line.Of(text)
	r := w.parse(d)
	id := d.freeWire()
	e, err := r.Edit(id)
	if err == nil {
		err = d.apply(e)
	}
	if err != nil {
		if mending {
			d.history.Redo()
		}
		d.warn(explain(err))
		return
	}
	if r.Confirms != "" {
		id = r.Confirms
	}
	d.lastEntry = &r.Entry
	d.lastLine = kept{text, w.at, id, d.history.Revision()}
	w.line, w.mends, w.offer = line.Line{}, "", 0
	d.say("kept: " + e.Name() + "; :undo takes it back")
	if doubt := doubts(r); doubt != "" {
		d.warn("kept " + string(id) + ", with a doubt: " + doubt)
	}
	if w.once {
		d.pop()
	}
	d.goTo(ofTerminal(w.at))
	d.lug = id
}

// doubts are what a line left open.
func doubts(r lugline.Reading) string {
	var open []string
	if len(r.Among) > 0 {
		names := make([]string, len(r.Among))
		for i, at := range r.Among {
			names[i] = lugline.Name(at)
		}
		open = append(open, "the far end fits "+strings.Join(names, ", ")+"; none is chosen")
	}
	if !r.OrStud.IsZero() {
		open = append(open, "for the stud "+lugline.Name(r.OrStud)+" type > in front")
	}
	for _, word := range r.Unknown {
		open = append(open, word+" says nothing known; it is in the note")
	}
	return strings.Join(open, "; ")
}

// walkOn stands at a neighbouring stud of the walk.
func (w *walkLayer) walkOn(d *desk, by int) {
	route := d.route()
	i := slices.Index(route, w.at) + by
	if i < 0 || i >= len(route) {
		d.say("this is the end of the walk; Esc leaves it")
		return
	}
	w.goTo(d, route[i])
}

// route lists the terminals in the order of the walk: part by part.
func (d *desk) route() []model.TerminalRef {
	s, cat := d.sheet(), d.cat()
	var route []model.TerminalRef
	for i := range s.Parts {
		for _, name := range cat.TerminalsOf(s, &s.Parts[i]) {
			route = append(route, model.TerminalRef{Part: s.Parts[i].ID, Name: name})
		}
	}
	return route
}

// freeWire is an id that no sheet has given to a wire.
func (d *desk) freeWire() model.WireID {
	return model.WireID(model.FreeID("w", func(id string) bool {
		return slices.ContainsFunc(d.job().Sheets, func(s model.Sheet) bool { return s.Wire(model.WireID(id)) != nil })
	}))
}

// offerNext puts the next completion in.
func (w *walkLayer) offerNext(d *desk) {
	if w.offer == 0 {
		w.base = w.line.Text()
	}
	offers := lugline.Parse(w.base, w.context(d)).Complete()
	if len(offers) == 0 {
		d.warn("nothing to fill in here")
		return
	}
	c := offers[w.offer%len(offers)]
	w.line = line.Of(c.Line)
	w.offer++
	d.say(fmt.Sprintf("%s: %s (%d of %d)", lugline.Name(c.At), c.Why, (w.offer-1)%len(offers)+1, len(offers)))
}

// recall brings the last line back; entered again it stands for the wire it made.
func (w *walkLayer) recall(d *desk) {
	last := d.lastLine
	if last.line == "" {
		d.warn("no line was kept yet")
		return
	}
	w.line = line.Of(last.line)
	w.mends = ""
	if last.at == w.at && last.revision == d.history.Revision() {
		w.mends = last.wire
		d.say("change what is wrong; Enter makes " + string(last.wire) + " anew")
	}
}

func (w *walkLayer) entry(d *desk) (string, *line.Line, string) {
	return lugline.Name(w.at) + " >", &w.line, w.ghost(d)
}

// ghost is how the line could go on, if Tab were pressed.
func (w *walkLayer) ghost(d *desk) string {
	offers := w.read(d).offers
	if len(offers) == 0 || w.offer > 0 {
		return ""
	}
	if rest, goesOn := strings.CutPrefix(offers[0].Line, w.line.Text()); goesOn {
		return rest
	}
	return ""
}

// reading is the line in words, or else what is expected here.
func (w *walkLayer) reading(d *desk) string {
	r := w.parse(d)
	if text := r.Text(); text != "" {
		return "reads as  " + text
	}
	if expected := lugline.Expected(d.sheet(), w.at); len(expected) > 0 {
		wire := d.sheet().Wire(expected[0])
		return fmt.Sprintf("expected here: %s from %s; + it is here, - it is not", wireWords(wire), wire.Far(w.at))
	}
	return "what is on " + lugline.Name(w.at) + ", from the seat outward? such as k6 b2+   Enter goes on"
}

// wireWords is a wire in a few words: its id and its look.
func wireWords(w *model.Wire) string {
	words := []string{string(w.ID)}
	for _, word := range []string{w.Colour.Word(), w.Gauge.String()} {
		if word != "" {
			words = append(words, word)
		}
	}
	return strings.Join(words, " ")
}

// stopWords is a stud of the route with how many lugs are on it, and how many more are
// expected.
func (d *desk) stopWords(at model.TerminalRef) string {
	words := lugline.Name(at)
	order, _ := d.sheet().StackOf(at)
	expected := len(lugline.Expected(d.sheet(), at))
	if seen := len(order) - expected; seen > 0 {
		words += fmt.Sprintf(" %d", seen)
	}
	if expected > 0 {
		words += fmt.Sprintf(" expects %d", expected)
	}
	return words
}
