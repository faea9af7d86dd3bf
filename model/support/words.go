package support

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Section is one matter of a report in words.
type Section struct {
	Title string
	Items []Item
	None  string // said if there are no items
}

// Item is one result in words.
type Item struct {
	Title       string
	Lines       []string
	Judgements  []Judgement
	Assumptions []Assumption
}

// Assumptions are what the whole report rests on, in the order of its results, those of
// one text together.
func (r *Report) Assumptions() []string {
	var texts []string
	of := map[string][]string{}
	for _, section := range r.Sections() {
		for _, item := range section.Items {
			for _, a := range item.Assumptions {
				if of[a.Text] == nil {
					texts = append(texts, a.Text)
				}
				if !slices.Contains(of[a.Text], a.Of) {
					of[a.Text] = append(of[a.Text], a.Of)
				}
			}
		}
	}
	for i, text := range texts {
		if names := strings.Join(of[text], ", "); names != "" {
			texts[i] = names + ": " + text
		}
	}
	return texts
}

// RestTitle is the title of the section on the drain at rest.
const RestTitle = "Drain at rest"

// RestWords is the drain of a sheet at rest in a few words.
func RestWords(amps, days float64) string {
	if days == 0 {
		return si(amps, "A")
	}
	return fmt.Sprintf("%s, %s", si(amps, "A"), inDays(days))
}

// Sections are the report in words, matter by matter.
func (r *Report) Sections() []Section {
	pre := Section{Title: "Pre-charge", None: cmp.Or(r.noPreCharge, "no contactor stands between a battery and a controller's capacitor")}
	for i := range r.PreCharge {
		pre.Items = append(pre.Items, r.PreCharge[i].item())
	}
	coils := Section{Title: "Coils and their suppression", None: "no coils"}
	for i := range r.Coils {
		coils.Items = append(coils.Items, r.Coils[i].item())
	}
	rest := Section{Title: RestTitle, None: cmp.Or(r.noStandBy, "no battery on the sheet")}
	if r.StandBy != nil {
		rest.Items = append(rest.Items, r.StandBy.item())
	}
	charging := Section{Title: "Charging", None: cmp.Or(r.noCharging, "no charger on the sheet")}
	for i := range r.Charging {
		charging.Items = append(charging.Items, r.Charging[i].item())
	}
	currents := Section{Title: "Currents of the pack against its limits", None: "no battery on the sheet"}
	for i := range r.Ranges {
		currents.Items = append(currents.Items, r.Ranges[i].item())
	}
	for _, s := range r.Shorts {
		currents.Items = append(currents.Items, s.item())
	}
	list := []Section{pre, coils, rest, charging, currents}
	if len(r.Unsolved) > 0 {
		failed := Section{Title: "Not computed"}
		for _, why := range r.Unsolved {
			failed.Items = append(failed.Items, Item{Title: why, Judgements: []Judgement{{Fault, "nothing is known of this state; what is said above holds for the others alone"}}})
		}
		list = append(list, failed)
	}
	return list
}

func (p *PreCharge) item() Item {
	it := Item{Title: fmt.Sprintf("%s to %s, before %s (%s)", p.Line, p.Load, p.Controller, orNotKnown(p.Farads, "F", "capacitance")), Judgements: p.Judgements, Assumptions: p.Assumptions}
	if p.Bridged {
		it.Lines = append(it.Lines, fmt.Sprintf("%s at the capacitor in %s, with the contact open", si(p.Volts, "V"), p.State))
		return it
	}
	if len(p.Paths) == 0 && len(p.unknown) > 0 {
		return it
	}
	if len(p.Paths) == 0 {
		it.Lines = append(it.Lines, "nothing leads round the open contact",
			fmt.Sprintf("the contact closes on %s over %s: %s, %s into the capacitor", si(p.Left, "V"), si(p.ClosedOhms, "ohm"), si(p.Inrush, "A"), si(p.Joules, "J")))
		return it
	}
	ohms := si(parallel(p.Paths, false), "ohm")
	if p.Cold != nil {
		ohms = span(parallel(p.Paths, true), parallel(p.Paths, false), "ohm") + " cold to hot"
	}
	it.Lines = append(it.Lines, fmt.Sprintf("fills through %s (%s) in %s, toward %s of %s", pathNames(p.Paths), ohms, p.State, si(p.Fill.Volts, "V"), si(p.Volts, "V")))
	if p.Farads <= 0 {
		it.Lines = append(it.Lines, fmt.Sprintf("left across the contact: %s in the end (%s); it closes with %s then", si(p.Left, "V"), p.LeftIn, si(p.Inrush, "A")))
		return it
	}
	it.Lines = append(it.Lines, p.timeLine())
	it.Lines = append(it.Lines, fmt.Sprintf("at the full %s: %s and %s at first, %s in all", si(p.Full, "V"), si(p.PeakAmps, "A"), si(p.PeakWatts, "W"), si(p.Joules, "J")))
	it.Lines = append(it.Lines, fmt.Sprintf("left across the contact: %s after 1 s, %s after 5 s, %s in the end (%s); it closes on %s after %s, with %s",
		si(p.After(1), "V"), si(p.After(5), "V"), si(p.Left, "V"), p.LeftIn, si(p.Waited, "V"), si(p.Wait, "s"), si(p.Inrush, "A")))
	return it
}

// timeLine tells the time constant and when the capacitor is nearly full.
func (p *PreCharge) timeLine() string {
	tau, five, two := si(p.Fill.Tau(), "s"), si(p.Seconds5, "s"), si(p.Seconds2V, "s")
	if p.Cold != nil {
		share := p.Cold.Ohms / p.Fill.Ohms
		band := func(hot float64) string { return span(share*hot, hot, "s") }
		tau, five, two = band(p.Fill.Tau()), band(p.Seconds5), band(p.Seconds2V)
	}
	line := "time constant " + tau
	if p.Seconds5 > 0 {
		line += ", within 5 % after " + five
	} else {
		line += ", never within 5 %"
	}
	if p.Seconds2V > 0 {
		return line + ", within 2 V after " + two
	}
	return line + ", never within 2 V"
}

func (c *Coil) item() Item {
	it := Item{Judgements: c.Judgements, Assumptions: c.Assumptions}
	switch {
	case c.FedIn != "":
	case c.NoRest != "":
		it.Title = string(c.Part) + ": comes to no rest"
		return it
	case c.Unknown:
		it.Title = string(c.Part) + ": not fed in any state that could be computed"
		return it
	default:
		it.Title = string(c.Part) + ": not fed in any state"
		return it
	}
	it.Title = fmt.Sprintf("%s: %s and %s in %s", c.Part, si(c.Volts, "V"), si(c.Amps, "A"), c.FedIn)
	across := "nothing across it"
	if len(c.Diodes) > 0 {
		names := make([]string, len(c.Diodes))
		for i, dio := range c.Diodes {
			names[i] = string(dio.Part)
		}
		across = strings.Join(names, ", ") + " across it"
	}
	if c.Joules > 0 {
		across += fmt.Sprintf("; it stores %s", si(c.Joules, "J"))
	}
	it.Lines = append(it.Lines, across)
	if c.Release > 0 {
		it.Lines = append(it.Lines, fmt.Sprintf("lets go %s after its switch opens; with nothing across it under a millisecond, with an arc (from memory)", si(c.Release, "s")))
	}
	return it
}

func (r *StandBy) item() Item {
	it := Item{Title: fmt.Sprintf("%s at %s, %s, in %s", si(r.Amps, "A"), si(r.Volts, "V"), si(r.Watts, "W"), r.State), Judgements: r.Judgements, Assumptions: r.Assumptions}
	for _, draw := range r.Draws {
		it.Lines = append(it.Lines, fmt.Sprintf("%-10s %-9s %s", draw.Part, si(draw.Amps, "A"), si(draw.Watts, "W")))
	}
	if lost := r.Watts - r.drawn(); lost > worthTelling*r.Watts {
		it.Lines = append(it.Lines, fmt.Sprintf("%-10s %-9s %s", "wires", si(lost/r.Volts, "A"), si(lost, "W")))
	}
	if r.Days > 0 {
		more := ""
		if r.Drain > (1+worthTelling)*r.Amps {
			more = ", more than the whole does: something hangs on part of the string, or on another pack"
		}
		it.Lines = append(it.Lines, fmt.Sprintf("%s gives %s%s; its usable %s Ah last %s from full, its own loss on the shelf not counted", r.First, si(r.Drain, "A"), more, plain(r.Hours), inDays(r.Days)))
	}
	if r.KeyLeft > 0 {
		it.Lines = append(it.Lines, fmt.Sprintf("with the key left on: %s", inDays(r.KeyLeft)))
	}
	return it
}

// worthTelling is the share of a drain from which what the wires lose of it is told.
const worthTelling = 0.01

// drawn is what the parts of a drain take together, in watts.
func (r *StandBy) drawn() float64 {
	sum := 0.0
	for _, draw := range r.Draws {
		sum += draw.Watts
	}
	return sum
}

func (c *Charging) item() Item {
	it := Item{Title: fmt.Sprintf("%s: up to %s, %s", c.Charger, orNotKnown(c.End, "V", "voltage"), orNotKnown(c.Amps, "A", "current")), Judgements: c.Judgements, Assumptions: c.Assumptions}
	for _, p := range c.Packs {
		it.Lines = append(it.Lines, p.line())
	}
	if len(c.Packs) > 0 && c.Amps > 0 {
		it.Lines = append(it.Lines, fmt.Sprintf("the way to the battery loses %s at %s (%s)", si(c.Drop, "V"), si(c.Amps, "A"), si(c.Ohms, "ohm")))
	}
	if c.Constant > 0 {
		it.Lines = append(it.Lines, fmt.Sprintf("from empty %s h at full current, %s to the end; the usable part %s", plain(c.Constant), span(c.Full.Least, c.Full.Most, "h"), span(c.Usual.Least, c.Usual.Most, "h")))
	}
	if c.AC != nil {
		assumed := ""
		if c.Branch.Assumed {
			assumed = ", assumed"
		}
		it.Lines = append(it.Lines, fmt.Sprintf("AC: %s at %s; circuit %s%s", si(c.ACAmps, "A"), si(c.AC.Volts, "V"), si(c.Branch.Amps, "A"), assumed))
	}
	return it
}

// line is a pack in one line: its cells, chemistry by its volts a cell, and charge.
func (p *Pack) line() string {
	kind := "lead-acid by its " + plain(p.cellVolts()) + " V a cell"
	if p.IsLithium() {
		kind = "lithium iron phosphate by its " + plain(p.cellVolts()) + " V a cell"
	}
	if p.Cells == 0 {
		return fmt.Sprintf("%s: cells not recorded, %s Ah", p.Name, plain(p.AmpHours))
	}
	return fmt.Sprintf("%s: %d cells, %s, %s Ah, full at %s", p.Name, p.Cells, kind, plain(p.AmpHours), si(p.End, "V"))
}

func (r *Range) item() Item {
	it := Item{Title: r.Pack.line(), Judgements: slices.Clone(r.Judgements), Assumptions: r.Assumptions}
	for _, c := range r.Rows {
		it.Lines = append(it.Lines, c.line())
		if c.Limit > 0 && c.Most > c.Limit {
			text := fmt.Sprintf("%s takes %s, the pack's %s limit is %s", c.What, si(c.Most, "A"), c.Of, si(c.Limit, "A"))
			if c.Vague {
				text += "; one of them is from memory: get the maker's figure"
			}
			it.Judgements = append(it.Judgements, Judgement{c.Grade, text})
		}
	}
	return it
}

func (c *Current) line() string {
	amps := si(c.Amps, "A")
	if c.Most > c.Amps {
		amps = span(c.Amps, c.Most, "A")
	}
	way := "out"
	if c.Into {
		way = "in"
	}
	line := fmt.Sprintf("%-20s %-3s %-15s ", c.What, way, amps)
	if c.Limit == 0 {
		line += "limit not recorded"
	} else {
		line += fmt.Sprintf("limit %s (%s), margin %s", si(c.Limit, "A"), c.Of, si(c.Limit-c.Most, "A"))
	}
	if c.Why != "" {
		line += "; " + c.Why
	}
	return line
}
