package diagnose

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// lister collects the faults of a sheet and the variants that they are solved in.
type lister struct {
	n        *network.Network
	sheet    *model.Sheet
	most     []float64 // by link: the largest current of any state in the sound sheet
	returns  []bool    // by node
	number   map[*network.Link]int
	faults   []Fault
	variants []variant
}

// list enumerates the faults of a sheet. Variant 0 is the sound sheet.
func list(n *network.Network, sheet *model.Sheet, most []float64) *lister {
	l := &lister{n: n, sheet: sheet, most: most, returns: n.Returns(), number: numbers(n), variants: []variant{{}}}
	l.faults = []Fault{{
		ID: "nothing", Family: Healthy, Text: "nothing of what can be read is wrong",
		Do:     "look for what comes and goes: wiggle the loom, try again warm, under load, on a rough road",
		Weight: weights[Healthy], Basis: practice, variants: []int{0}, at: network.None,
	}}
	l.wires()
	l.fuses()
	l.contacts()
	l.windings()
	l.idle()
	l.diodes()
	l.shorts()
	l.leaks()
	l.asleep()
	return l
}

// variant adds a way that the sheet departs and gives its number.
func (l *lister) variant(v variant) int {
	l.variants = append(l.variants, v)
	return len(l.variants) - 1
}

// change adds the variant that some links are otherwise.
func (l *lister) change(changes ...network.Change) int { return l.variant(variant{changes: changes}) }

// add weighs a fault by its family and by what was seen at its place.
func (l *lister) add(f Fault, conditions ...[]model.Condition) {
	if f.Weight == 0 {
		f.Weight = 1
	}
	factor, found := raise(f.Family, conditions...)
	f.Weight *= weights[f.Family] * factor
	f.Basis = practice
	if found != "" {
		f.Basis += "; raised because " + string(found) + " is recorded there"
	}
	l.faults = append(l.faults, f)
}

// conditionsAt is what is recorded of a terminal.
func (l *lister) conditionsAt(at model.TerminalRef) []model.Condition {
	if t := l.sheet.Terminal(at); t != nil {
		return t.Condition
	}
	return nil
}

// name is what an element of a part is called: the part alone if it is the only element
// of its kind there.
func (l *lister) name(link *network.Link) string {
	same := 0
	for i := range link.Def.Elements {
		if link.Def.Elements[i].Is == link.Element.Is {
			same++
		}
	}
	name := string(link.Part.ID)
	if link.Part.Name != "" {
		name += " (" + link.Part.Name + ")"
	}
	if same > 1 {
		return link.Element.ID + " of " + name
	}
	return name
}

// each visits the elements of a kind.
func (l *lister) each(kind model.ElementKind, visit func(*network.Link)) {
	links := l.n.Links()
	for i := range links {
		if links[i].Is(kind) {
			visit(&links[i])
		}
	}
}

// elementID is the written form of an element in a fault's ID.
func elementID(link *network.Link) string { return string(link.Part.ID) + "." + link.Element.ID }

// leastFelt is the current in amperes below which no poor joint is felt: the drop of a
// control joint that conducts at all is then below what a meter shows. Our choice.
const leastFelt = 5e-3

// jointOhms are the resistances that stand for a poor joint: what takes 3, 12 and 50 % of
// the system voltage at the largest current of the link, so that each stands for a joint
// that is felt. Our choice.
func jointOhms(system, amps float64) []float64 {
	base := system / amps
	return []float64{0.03 * base, 0.12 * base, 0.5 * base}
}

// joint adds the variants of more resistance in a link; none if too little flows.
func (l *lister) joint(link *network.Link, amps float64) []int {
	if amps < leastFelt || math.IsInf(amps, 0) || math.IsNaN(amps) {
		return nil
	}
	var list []int
	for _, ohms := range jointOhms(systemVolts(l.n), amps) {
		list = append(list, l.change(network.Change{Link: link, AddOhms: ohms}))
	}
	return list
}

// usualVolts stands for a pack of unknown voltage. The commonest system; common practice.
const usualVolts = 48

// systemVolts is the voltage of the pack by its own figures, or a usual one.
func systemVolts(n *network.Network) float64 {
	for _, f := range n.Feeds() {
		if f.String != nil && f.Whole && f.Nominal.OK && f.Nominal.Value > 0 {
			return f.Nominal.Value
		}
	}
	return usualVolts
}
