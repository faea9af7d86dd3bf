package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
	"example.com/lugbook/tui/line"
)

// probeLayer is the entry of what a meter shows: with the red probe on a terminal, or a
// clamp round a wire.
type probeLayer struct {
	at     thing             // the terminal or the wire
	black  model.TerminalRef // unless another one is typed; zero if there is none
	state  string
	unit   string         // of a number without one
	number int            // of the reading that is corrected, from 1; 0 for a new one
	was    *model.Reading // that reading

	line   line.Line
	opened bool   // the line is as it was opened: letters replace it
	offer  int    // completions taken so far
	base   string // that they complete
}

func (p *probeLayer) place() place  { return inReading }
func (p *probeLayer) typed() string { return p.line.Text() }

func (p *probeLayer) stale(d *desk) bool {
	gone := p.was != nil && (p.number > len(d.job().Readings) || d.job().Readings[p.number-1] != *p.was)
	return gone || !p.at.on(d.sheet(), d.cat())
}

func (p *probeLayer) key(_ *desk, key tea.KeyMsg) (tea.Cmd, bool) {
	if p.opened && key.Type == tea.KeyRunes && !key.Alt {
		p.line = line.Line{}
	}
	took := p.line.Key(key)
	p.opened = p.opened && !took
	p.offer = 0
	return nil, took
}

// entry leads the line with where the probes are and ends it with the unit that a bare
// number has.
func (p *probeLayer) entry(*desk) (lead string, l *line.Line, ghost string) {
	lead = "clamp round " + p.at.String() + ":"
	if p.at.kind == terminalThing {
		lead = "red " + p.at.String() + ", black "
		if p.black.IsZero() {
			lead += "?:"
		} else {
			lead += lugline.Name(p.black) + ":"
		}
	}
	if p.opened {
		return lead, &p.line, "   letters replace it"
	}
	if words := strings.Fields(p.line.Text()); len(words) > 0 && signedNumber.MatchString(words[len(words)-1]) {
		ghost = p.unit
	}
	return lead, &p.line, ghost
}

func (p *probeLayer) reading(d *desk) string {
	r, err := p.read(d)
	switch {
	case err == nil && r.Dimension() == unit.Resistance:
		return "reads as  " + r.Shown() + " on " + readWhere(&r) + " in " + r.State + ", power off"
	case err == nil:
		return "reads as  " + r.Shown() + " on " + readWhere(&r) + " in " + r.State
	case p.at.kind == wireThing:
		w := d.sheet().Wire(p.at.wire)
		return p.state + ": such as 14 A; from " + w.From.String() + " to " + w.To.String() + " counts positive"
	case p.black.IsZero():
		return p.state + ": where black is, Tab fills it in, and what is shown: b1- 51.2 V"
	}
	return p.state + ": such as 51.2 V, 0.4 ohm, open; black elsewhere: b1- 51.2 V (Tab)"
}

// keep records the reading. What it says of the sheet is told as soon as it is compared.
func (p *probeLayer) keep(d *desk) {
	if p.line.Empty() {
		d.pop()
		return
	}
	r, err := p.read(d)
	if err != nil {
		d.warn(explain(err))
		return
	}
	number, e := p.number, edit.Edit(edit.UpdateReading{Index: p.number - 1, Reading: r})
	if number == 0 {
		number, e = len(d.job().Readings)+1, edit.AddReading{Reading: r}
	}
	d.pop()
	if err := d.apply(e); err != nil {
		d.push(p)
		d.warn(explain(err))
		return
	}
	d.tell = number
	d.say(e.Name() + "; comparing ...")
}

// offerBlack puts the next terminal in that the black probe may be on.
func (p *probeLayer) offerBlack(d *desk) {
	if p.at.kind != terminalThing {
		d.warn("a clamp has no second place")
		return
	}
	if p.offer == 0 {
		p.base = p.line.Text()
	}
	offers := p.blacks(d, p.base)
	if len(offers) == 0 {
		d.warn("no terminal begins with " + strings.TrimSpace(p.base))
		return
	}
	p.line, p.opened = line.Of(lugline.Name(offers[p.offer%len(offers)])), false
	p.line.Key(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
	p.offer++
}

// blacks lists the terminals that a text begins: those of the same part, then the others in
// the order of the sheet.
func (p *probeLayer) blacks(d *desk, text string) []model.TerminalRef {
	text = strings.ToLower(strings.TrimSpace(text))
	var near, far []model.TerminalRef
	for _, at := range d.route() {
		name := strings.ToLower(lugline.Name(at))
		switch {
		case at == p.at.at || !strings.HasPrefix(name, text) && !strings.HasPrefix(strings.ToLower(at.String()), text):
		case at.Part == p.at.at.Part:
			near = append(near, at)
		default:
			far = append(far, at)
		}
	}
	return append(near, far...)
}

// readable is why no reading can be entered here.
func readable(d *desk) string {
	if d.cursor.kind != terminalThing && d.cursor.kind != wireThing {
		return "go to a terminal first, or to a wire for amperes"
	}
	if _, in := d.state(); !in {
		return "say first in which state the cart is: t"
	}
	return ""
}

// enterReading opens the entry of a reading at the selected terminal or wire.
func enterReading(d *desk) tea.Cmd {
	d.probe(&probeLayer{at: d.cursor, black: d.packMinus(d.cursor.at)})
	return nil
}

// packMinus is where the black probe of a voltmeter stays: the pack's negative. It is zero
// if there is no pack, or the red probe is on it.
func (d *desk) packMinus(red model.TerminalRef) model.TerminalRef {
	if low := d.packPoles().low; low != red {
		return low
	}
	return model.TerminalRef{}
}

// poles are the terminals of the pack's two ends, and what they were found on.
type poles struct {
	of        stamp
	known     bool
	low, high model.TerminalRef
}

// packPoles are the pack's two ends; zero if the sheet has no pack.
func (d *desk) packPoles() poles {
	if d.poles.known && d.poles.of == d.forceStamp() {
		return d.poles
	}
	d.poles = poles{of: d.forceStamp(), known: true}
	n := network.Build(d.job(), d.sheet(), d.lib)
	if low, high, ok := n.Poles(); ok {
		d.poles.low, d.poles.high = n.Point(low).At, n.Point(high).At
	}
	return d.poles
}

// isPole reports whether a terminal is one of the pack's two ends.
func (d *desk) isPole(at model.TerminalRef) bool {
	p := d.packPoles()
	return at == p.low || at == p.high
}

// readAt is the thing that a reading is about: the wire, or the terminal that is not one of
// the pack's ends; of two such the red one.
func (d *desk) readAt(r *model.Reading) thing {
	if r.Wire == "" && d.isPole(r.Red) && !d.isPole(r.Black) {
		return ofTerminal(r.Black)
	}
	return ofReading(r)
}

// places lists the things on whose cards a reading is: all that it touches but the pack's
// ends, unless there is nothing else.
func (d *desk) places(r *model.Reading) []thing {
	if r.Wire != "" {
		return []thing{ofWire(r.Wire)}
	}
	both := []thing{ofTerminal(r.Red), ofTerminal(r.Black)}
	switch red, black := d.isPole(r.Red), d.isPole(r.Black); {
	case red == black:
		return both
	case red:
		return both[1:]
	}
	return both[:1]
}

// placeWords name what was probed in short: one terminal, if black was on the pack's
// negative.
func (d *desk) placeWords(r *model.Reading) string {
	if r.Wire != "" || r.Black == d.packPoles().low {
		return ofReading(r).String()
	}
	return lugline.Name(r.Red) + "/" + lugline.Name(r.Black)
}

// probe opens the entry of a reading in the state in force, or in the one that it was taken
// in, and says what has to be minded.
func (d *desk) probe(p *probeLayer) {
	switch {
	case p.at.kind == wireThing:
		p.unit = "A"
	case p.unit == "":
		p.unit = "V"
	}
	if p.state == "" {
		s, _ := d.state()
		p.state = s.Name
	}
	d.push(p)
	if text := d.minding(p.state, p.unit == ohms); text != "" && p.was == nil {
		d.warn(text)
	}
}

// correct opens the entry of a reading with what was recorded.
func (d *desk) correct(number int) tea.Cmd {
	r := d.job().Readings[number-1]
	p := &probeLayer{at: ofReading(&r), black: r.Black, state: r.State, number: number, was: &r, line: line.Of(r.Shown()), opened: true}
	if r.Dimension() == unit.Resistance {
		p.unit = ohms
	}
	d.probe(p)
	return nil
}

// ofReading is the thing that a reading was taken at: the red terminal, or the wire.
func ofReading(r *model.Reading) thing {
	if r.Wire != "" {
		return ofWire(r.Wire)
	}
	return ofTerminal(r.Red)
}

// removeReading forgets a reading.
func (d *desk) removeReading(number int) { d.try(edit.RemoveReading{Index: number - 1}) }
