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
	likely   lugline.Candidate // way to go on with the line
	offered  bool              // there is one
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
		m.reading = &r
		m.likely, m.offered = r.Likeliest()
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
	back := "< takes"
	if w.once {
		back = "u takes"
	}
	if r.IsWire() {
		d.lastEntry = &r.Entry
	}
	d.lastLine = kept{text, w.at, id, d.history.Revision()}
	w.line, w.mends, w.offer = line.Line{}, "", 0
	d.say("kept: " + e.Name() + "; " + back + " it back")
	if doubt := d.doubts(r); doubt != "" {
		d.warn("kept " + string(id) + ", with a doubt: " + doubt)
	}
	if w.once {
		d.pop()
	}
	d.goTo(ofTerminal(w.at))
	d.lug = id
}

// doubts are what a line left open.
func (d *desk) doubts(r lugline.Reading) string {
	var open []string
	if len(r.Among) > 0 {
		open = append(open, "the far end fits "+lugNames(r.Among)+"; none is chosen")
	}
	if !r.OrStud.IsZero() {
		open = append(open, "for the stud "+lugline.Name(r.OrStud)+" type > in front")
	}
	for _, word := range r.Unknown {
		open = append(open, d.noStud(word)+"; it is in the note")
	}
	return strings.Join(open, "; ")
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
	m := w.read(d)
	if !m.offered || w.offer > 0 {
		return ""
	}
	if rest, goesOn := strings.CutPrefix(m.likely.Line, w.line.Text()); goesOn {
		return rest
	}
	return ""
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
