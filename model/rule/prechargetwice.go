package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/support"
)

var preChargeTwice = Rule{
	ID: "pre-charge-twice", Title: "Two pre-charges fill one controller side by side",
	Family: Contactors, Severity: Caution,
	About: "Looks round the open contact of each contactor before a controller with a capacitor and speaks if more than one way fills it: two resistors, a " +
		"resistor and a lamp, or a resistor outside beside the one that the controller has inside.",
	Why: "Two in parallel have half the resistance: the capacitor fills twice as fast, and if the load side is shorted or something draws on it, twice " +
		"the current flows for good past an open contactor. Mostly the second was fitted because nobody found the first; then one is old, and nobody " +
		"knows which of the two still works.",
	Tell: "Follow every thin lead on the two large studs of the contactor. Take pack negative off, discharge the controller, free one end of each " +
		"resistor and measure each by itself. Ask the controller's maker whether it pre-charges itself through its key input.",
	Blind: "A controller's own pre-charge is known only by its figure precharge-resistance; 0 there is taken for none. Two resistors that were chosen together, to " +
		"share the heat, are found as well: note it and waive the finding.",
	Bad:    "two 470 ohm resistors on the studs of one contactor",
	Good:   "one 470 ohm resistor on the studs",
	Wrong:  Example{Of: filled, But: []string{"+", "part pre2 precharge-resistor\nwire p3 sol.L1 pre2.a gauge=18AWG length=80mm\nwire p4 sol.L2 pre2.b gauge=18AWG length=80mm\nstack sol.L1 w2 p1 p3\nstack sol.L2 w3 p2 p4"}},
	Right:  Example{Of: filled, But: []string{"+", "stack sol.L1 w2 p1\nstack sol.L2 w3 p2"}},
	Basis:  Basis{"resistances side by side let through the sum of their currents", Physics},
	Remedy: "keep the one that is sound and of the right value, take the other off with its leads",
	Run:    runPreChargeTwice,
}

// filled is a contactor with its pre-charge resistor and suppression diode before a controller.
const filled = powered + `
part ctrl controller-series
part pre precharge-resistor
part dio diode
wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=1m
wire k4 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm
stack pack.NEG w4 k4
stack sol.coil+ k3 d1
stack sol.coil- k4 d2
at pack.POS cover=fitted
`

func runPreChargeTwice(p *Pass) {
	if p.unsound() {
		return
	}
	for _, c := range p.support().PreCharge {
		c.Paths = p.withOwn(c)
		if len(c.Paths) < 2 || c.Bridged {
			continue
		}
		subjects := []Subject{OfPart(c.Line.Part)}
		var names []string
		siemens := 0.0
		for _, path := range c.Paths {
			names = append(names, pathName(path))
			siemens += 1 / path.Ohms
			for _, id := range path.Parts {
				subjects = appendNew(subjects, OfPart(id))
			}
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%s fill %s round %s side by side, %s ohm together", listWords(names), c.Controller, c.Line.Part, number(1/siemens)),
			Subjects: appendNew(subjects, OfPart(c.Controller)),
			Fixes:    p.keepOne(c),
		})
	}
}

// withOwn is the ways round a contact with the one inside the controller, which fills only once the
// key input is fed, and so counts in another state.
func (p *Pass) withOwn(c support.PreCharge) []support.Path {
	own, known := p.Net.Figure(p.Sheet.Part(c.Controller), "precharge-resistance")
	if !known || own <= 0 || slices.ContainsFunc(c.Paths, func(path support.Path) bool { return path.Inside }) {
		return c.Paths
	}
	return append(slices.Clone(c.Paths), support.Path{Parts: []model.PartID{c.Controller}, Ohms: own, Inside: true})
}

// pathName names the resistors or lamps of a way round a contact.
func pathName(path support.Path) string {
	words := make([]string, len(path.Parts))
	for i, id := range path.Parts {
		words[i] = string(id)
	}
	name := listWords(words)
	if path.Inside {
		return "its own resistor inside " + name
	}
	return fmt.Sprintf("%s (%s ohm)", name, number(path.Ohms))
}

// keepOne takes off one of two ways that are a single part each, with its leads.
func (p *Pass) keepOne(c support.PreCharge) []edit.Edit {
	if len(c.Paths) != 2 {
		return nil
	}
	var fixes []edit.Edit
	for _, path := range c.Paths {
		if !path.Inside && len(path.Parts) == 1 && p.hangsBetween(path.Parts[0], c) {
			fixes = append(fixes, edit.RemovePart{Sheet: p.Sheet.Name, ID: path.Parts[0], WithWires: true})
		}
	}
	return fixes
}

// hangsBetween reports whether a part has two leads, each with one wire that leads to a
// terminal of the contactor.
func (p *Pass) hangsBetween(id model.PartID, c support.PreCharge) bool {
	part := p.Sheet.Part(id)
	d := p.Net.Cat.Definition(part.Kind)
	if len(d.Terminals) != 2 {
		return false
	}
	for _, t := range d.Terminals {
		node := p.Net.Node(model.TerminalRef{Part: id, Name: t.Name})
		wires := 0
		for _, l := range p.Net.LinksAt(node) {
			if l.Kind != network.WireLink {
				continue
			}
			wires++
			if at := p.Net.Point(l.Other(node)).At; at != c.Line && at != c.Load {
				return false
			}
		}
		if wires != 1 {
			return false
		}
	}
	return true
}
