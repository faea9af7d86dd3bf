package support

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// surgeSeconds is the time that a resistor stands its surge power, by the vocabulary.
const surgeSeconds = 5

func (d *desk) judgePreCharge(p *PreCharge, g gap, s *network.Solution, b *basis) {
	say := func(grade Grade, format string, args ...any) {
		p.Judgements = append(p.Judgements, Judgement{grade, fmt.Sprintf(format, args...)})
	}
	if p.Farads == 0 {
		say(Note, "the capacitance of %s is not recorded: time, energy and heat cannot be told", p.Controller)
	}
	for _, id := range p.unknown {
		say(Note, "not known: what %s lets pass round the contact, for its resistance is not recorded, or its figures are 0", id)
	}
	peak, rated := b.figure(g.contact.Part, "peak-current")
	switch {
	case len(p.Paths) == 0 && len(p.unknown) > 0:
		return
	case len(p.Paths) == 0:
		grade := Caution
		if rated && p.Inrush > peak {
			grade = Fault
		}
		say(grade, "no pre-charge: %s closes on an empty capacitor with %s, for about %s; the contact pits and may weld", g.contact.Part.ID, si(p.Inrush, "A"), si(p.ClosedOhms*p.Farads, "s"))
		return
	}
	d.judgeLeft(p, g, peak, rated, say)
	if len(p.Paths) > 1 {
		say(Note, "%d paths fill it side by side, %s together: %s", len(p.Paths), si(parallel(p.Paths, false), "ohm"), pathNames(p.Paths))
	}
	for _, path := range p.Paths {
		for _, l := range path.links {
			if l.Is(model.ResistanceElement) {
				d.judgeResistor(p, path, l, s, b, say)
			}
		}
	}
	if p.State != state.Parked && p.Seconds5 > 0 {
		say(Note, "it fills only from %s on: wait %s before the contact closes", p.State, si(p.Seconds5, "s"))
	}
}

func (d *desk) judgeLeft(p *PreCharge, g gap, peak float64, rated bool, say func(Grade, string, ...any)) {
	switch {
	case p.Left <= p.closesOn() && p.Waited > p.closesOn():
		grade := Caution
		if rated && p.Inrush > peak {
			grade = Fault
		}
		say(grade, "it fills too slowly: %s are still across the contact after %s and it closes with %s; a usual pre-charge takes some seconds", si(p.Waited, "V"), si(p.Wait, "s"), si(p.Inrush, "A"))
	case p.Left <= p.closesOn():
		say(Good, "the contact closes on %s", si(p.Left, "V"))
	case rated && p.Inrush > peak:
		say(Fault, "something draws on the load side: %s stay across the contact in %s and it closes with %s, above the %s that %s stands for seconds", si(p.Left, "V"), p.LeftIn, si(p.Inrush, "A"), si(peak, "A"), g.contact.Part.ID)
	default:
		say(Caution, "something draws on the load side: %s stay across the contact in %s and it closes with %s", si(p.Left, "V"), p.LeftIn, si(p.Inrush, "A"))
	}
}

// closesOn is the voltage on which the contact may close.
func (p *PreCharge) closesOn() float64 { return max(leftVolts, leftShare*p.Volts) }

// judgeResistor holds one resistor of a path against its ratings, at the full voltage.
func (d *desk) judgeResistor(p *PreCharge, path Path, l *network.Link, s *network.Solution, b *basis, say func(Grade, string, ...any)) {
	ohms, _ := b.figure(l.Part, l.Element.Ohms)
	watts, rated := b.figure(l.Part, "power-rating")
	if !rated {
		say(Note, "the power rating of %s is not recorded", l.Part.ID)
		return
	}
	amps := p.Full / path.Ohms
	first, share := amps*amps*ohms, ohms/path.Ohms*parallel(p.Paths, false)/path.Ohms
	joules := p.Joules * share
	if now := s.Power(l); now > watts {
		say(Fault, "%s takes %s all the time in %s; it stands %s", l.Part.ID, si(now, "W"), p.State, si(watts, "W"))
	}
	surge, known := b.figure(l.Part, "surge-power")
	switch {
	case !known && first > watts:
		say(Note, "%s takes %s at first and is rated %s; its surge rating is not recorded", l.Part.ID, si(first, "W"), si(watts, "W"))
	case known && (first > max(surge, watts) || joules > surgeSeconds*surge):
		say(Fault, "%s takes %s at first and %s in all; it stands %s for %d s", l.Part.ID, si(first, "W"), si(joules, "J"), si(surge, "W"), surgeSeconds)
	default:
		say(Good, "%s takes %s at first and %s in all; it stands %s for long%s", l.Part.ID, si(first, "W"), si(joules, "J"), si(watts, "W"), surgeWords(surge, known))
	}
	if first > watts {
		say(Caution, "if the load side is shorted while it is parked, %s takes %s for good, above its %s, and burns", l.Part.ID, si(first, "W"), si(watts, "W"))
	}
}

func surgeWords(surge float64, known bool) string {
	if !known {
		return ""
	}
	return fmt.Sprintf(" and %s for %d s", si(surge, "W"), surgeSeconds)
}

func pathNames(paths []Path) string {
	names := make([]string, len(paths))
	for i, p := range paths {
		parts := make([]string, len(p.Parts))
		for k, id := range p.Parts {
			parts[k] = string(id)
		}
		names[i] = strings.Join(parts, "+")
		if p.Inside {
			names[i] = "inside " + names[i]
		}
	}
	return strings.Join(names, ", ")
}
