package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/diagnose"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/state"
	"example.com/lugbook/tui/line"
)

// readingsLead is before the filter of the list of readings.
const readingsLead = "readings:"

// leastShown is the probability from which suspects are listed.
const leastShown = 0.01

// readings lists the next reading to take, what may be wrong, and what was read.
func readings(d *desk) tea.Cmd {
	l := &listLayer{title: "next reading, suspects, readings", lead: readingsLead, in: inRecords, stays: true}
	l.add = func(d *desk) tea.Cmd {
		if why := readable(d); why != "" {
			d.warn(why)
			return nil
		}
		return enterReading(d)
	}
	l.choices = func(d *desk) []choice {
		g := d.diagnosed()
		next := d.nextChoice(l, g)
		next.exact = []string{"next"}
		list := append([]choice{next, d.complaintChoice()}, d.suspectChoices(g)...)
		numbers := d.readingsHere()
		slices.Reverse(numbers)
		for _, number := range numbers {
			list = append(list, d.readingChoice(number))
		}
		return list
	}
	d.push(l)
	return nil
}

// readingChoice is the line of a reading.
func (d *desk) readingChoice(number int) choice {
	r := d.job().Readings[number-1]
	sign, words := d.judgementWords(number)
	return choice{
		text: sign + " " + r.Shown() + " " + d.placeWords(&r) + " " + r.State, more: readWhere(&r) + " " + words + " " + r.Note,
		exact:  []string{fmt.Sprintf("reading %d", number)},
		detail: fmt.Sprintf("reading %d: %s on %s in %s %s. Enter goes there, = corrects it, - takes it away", number, r.Shown(), readWhere(&r), r.State, words),
		pick: func(d *desk) tea.Cmd {
			d.pop()
			d.standAt(r.State, d.readAt(&r))
			return nil
		},
		change: func(d *desk) tea.Cmd { return d.correct(number) },
		remove: func(d *desk) { d.removeReading(number) },
	}
}

// standAt puts a state in force and goes to a thing.
func (d *desk) standAt(name string, t thing) {
	if s, ok := state.Find(d.states(), name); ok && d.stateName != name {
		d.putInForce(&s)
	}
	d.goTo(t)
}

// nextChoice is the line of the reading to take next.
func (d *desk) nextChoice(l *listLayer, g *diagnosis) choice {
	switch {
	case g == nil:
		return choice{text: "next: thinking ...", why: "the faults are being weighed against the readings", detail: "what may be wrong is solved fault by fault; the rest of the screen does not wait"}
	case g.err != nil:
		text := clean.Line(g.err.Error())
		return choice{text: "next: cannot say", why: text, detail: text}
	case !g.more:
		text := "no reading on offer tells more: do what the first suspect says, then read again"
		return choice{text: "next: do what the first suspect says", why: text, detail: text}
	}
	p := g.next
	return choice{
		text: "next: " + lugline.Name(p.Red) + " / " + lugline.Name(p.Black), right: string(p.Kind), more: p.State, detail: d.nextDetail(g),
		pick: func(d *desk) tea.Cmd {
			l.filter, l.at = line.Line{}, 0
			d.standAt(p.State, d.readAt(&model.Reading{Red: p.Red, Black: p.Black}))
			d.probe(&probeLayer{at: ofTerminal(p.Red), black: p.Black, state: p.State, unit: string(p.Kind)})
			return nil
		},
	}
}

// mostNamed is how many suspects are named beside what a reading may show.
const mostNamed = 2

// nextDetail is everything about the reading to take next: what to mind, where and how, and
// what it may show.
func (d *desk) nextDetail(g *diagnosis) string {
	p := g.next
	var b strings.Builder
	if text := d.minding(p.State, p.Kind == diagnose.Ohms); text != "" {
		b.WriteString("! " + text + "\n")
	}
	fmt.Fprintf(&b, "%s: red %s, black %s", p.State, lugline.Name(p.Red), lugline.Name(p.Black))
	if s, ok := state.Find(d.states(), p.State); ok {
		b.WriteString(" (" + s.About + ")")
	}
	for _, o := range p.Outcomes {
		var names []string
		for i, k := range o.Suspects {
			if i == mostNamed {
				names = append(names, fmt.Sprintf("%d more", len(o.Suspects)-mostNamed))
				break
			}
			names = append(names, g.verdict.Suspects[k].Text)
		}
		fmt.Fprintf(&b, "\n%s (%.0f %%) if %s", o.Band.Text(p.Kind), 100*o.Probability, strings.Join(names, "; "))
	}
	return clean.Text(b.String())
}

// suspectChoices are the lines of what may be wrong, the likeliest first.
func (d *desk) suspectChoices(g *diagnosis) []choice {
	if g == nil || g.err != nil {
		return nil
	}
	var list []choice
	for _, k := range g.verdict.Contradicts {
		text := "no single fault on the list gives this reading: take it again, or look for two faults or for wiring that differs from the sheet"
		list = append(list, choice{text: "! nothing explains " + readWhere(&g.taken[k]), detail: text, why: text})
	}
	for _, tie := range g.ties {
		if tie.Probability < leastShown {
			break
		}
		first := g.verdict.Suspects[tie.Suspects[0]]
		c := choice{text: fmt.Sprintf("%2.0f %% %s", 100*tie.Probability, first.Text), exact: []string{first.ID}, detail: suspectDetail(g, tie), pick: func(d *desk) tea.Cmd {
			t := d.placeOf(first.Fault)
			if t.kind == noThing {
				d.say("that has no one place")
				return nil
			}
			d.pop()
			d.goTo(t)
			return nil
		}}
		if n := len(tie.Suspects); n > 1 {
			c.right = fmt.Sprintf("+%d alike", n-1)
		}
		list = append(list, c)
	}
	return list
}

// suspectDetail says of suspects that read alike what to do, and which readings they do not
// explain.
func suspectDetail(g *diagnosis, tie diagnose.Tie) string {
	var b strings.Builder
	for i, k := range tie.Suspects {
		s := &g.verdict.Suspects[k]
		if i > 0 {
			b.WriteString("\nor ")
		}
		b.WriteString(s.Text + "; do: " + s.Do)
		for r, off := range s.Agrees {
			if off > diagnose.Clear {
				fmt.Fprintf(&b, "; does not explain %s on %s", g.taken[r].Shown(), readWhere(&g.taken[r]))
			}
		}
	}
	switch {
	case tie.Hidden:
		b.WriteString("\nthis shows in no reading on offer")
	case len(tie.Suspects) > 1:
		b.WriteString("\nno reading on offer tells these apart; begin with what is done quickest")
	}
	return clean.Text(b.String())
}

// placeOf is the thing that a fault sits in: its wire, its joint or its part.
func (d *desk) placeOf(f diagnose.Fault) thing {
	_, place, _ := strings.Cut(f.ID, ":")
	if f.Family == diagnose.OpenWire {
		if t := ofWire(model.WireID(place)); t.on(d.sheet(), d.cat()) {
			return t
		}
	}
	if wire, _, joint := strings.Cut(place, "@"); joint {
		if t := ofWire(model.WireID(wire)); t.on(d.sheet(), d.cat()) {
			return t
		}
	}
	id, _, _ := strings.Cut(place, ".")
	if t := ofPart(model.PartID(id)); t.on(d.sheet(), d.cat()) {
		return t
	}
	return thing{}
}

// complaintChoice is the line of what the customer says.
func (d *desk) complaintChoice() choice {
	says := d.complaint
	if says == "" {
		says = "nothing in particular"
	}
	return choice{text: "complaint: " + says, exact: []string{"complaint"}, detail: "what the customer says; faults that would show so weigh more", pick: complaints}
}

// complaints lists what a customer may say, and the parts that may do nothing.
func complaints(d *desk) tea.Cmd {
	d.push(&listLayer{title: "what does the customer say?", lead: "complaint:", choices: func(d *desk) []choice {
		take := func(text, about, says string) choice {
			return choice{text: text, detail: about, more: about, exact: []string{says}, marked: d.complaint == says, pick: func(d *desk) tea.Cmd {
				d.complaint = says
				d.work.news++
				return nil
			}}
		}
		list := []choice{take("nothing in particular", "faults weigh as they come about", "")}
		for _, c := range diagnose.Complaints() {
			list = append(list, take(c.Name, c.About, c.Name))
		}
		for i := range d.sheet().Parts {
			id := string(d.sheet().Parts[i].ID)
			list = append(list, take(id+" dead", id+" does nothing where it should", id+" dead"))
		}
		return list
	}})
	return nil
}
