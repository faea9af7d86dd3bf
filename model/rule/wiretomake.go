package rule

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

var wireToMake = Rule{
	ID: "wire-to-make", Title: "A wire that is to be made lacks what its maker needs",
	Family: Paper, Severity: Note,
	About: "On a plan, takes the wires that are not on the sheet before it, or that get other ends or another size there, and lists those without " +
		"gauge, length, colour or insulation class: one note, by what is missing. A length by runs between zones counts as a length.",
	Why: "A wire is cut from this sheet by somebody with a crimper in one hand. Without a length it is cut long and coiled behind the dash, or " +
		"short and spliced; without a gauge or an insulation class it is cut from the reel that is nearest; without a colour the next person " +
		"guesses. Everything that is judged about the plan holds only for the wire that was meant.",
	Tell: "Lay a string along the way the wire will go, from stud to stud, with the bends it will have, and measure the string. Read gauge and " +
		"temperature off the reel's print, such as 105 C.",
	Blind: "Wires that stay as they were are left out, whatever is missing of them. A length by runs is without tails and slack, which the cut list " +
		"adds. A plan without an as-found sheet before it has every wire to be made.",
	Bad:    "a new wire on the plan without length and colour",
	Good:   "gauge, length, colour and insulation are there",
	Wrong:  Example{Of: spliceExample, But: []string{"+", "sheet plan\nwire k9 key.IGN buz.+ gauge=16AWG insulation=105C"}},
	Right:  Example{Of: spliceExample, But: []string{"+", "sheet plan\nwire k9 key.IGN buz.+ gauge=16AWG insulation=105C length=1m colour=OG"}},
	Basis:  Basis{"a cut list names gauge, length, colour and insulation of each wire", Practice},
	Remedy: "record what is missing; measure the way with a string",
	Run:    runWireToMake,
}

// neededToMake are the properties without which a wire can't be made, with what each decides.
var neededToMake = []struct{ datum, field, decides string }{
	{"the gauge", "gauge", "which reel it is cut from"},
	{"the length", "length", "how long it is cut"},
	{"the colour", "colour", "how it is told from its neighbours"},
	{"the insulation class", "insulation", "which reel it is cut from"},
}

func runWireToMake(p *Pass) {
	if p.Sheet.Name != model.Plan {
		return
	}
	made := p.wiresToMake()
	var words []string
	var all []Subject
	for _, need := range neededToMake {
		var lacking []Subject
		for _, w := range made {
			if p.lacks(w, need.field) {
				lacking = append(lacking, OfWire(w.ID))
			}
		}
		if len(lacking) > 0 {
			p.missing(Gap{Datum: need.datum, Field: need.field, Decides: need.decides, Worst: Note, Quiet: true, Subjects: lacking})
			words = append(words, need.datum+" of "+list(lacking))
			all = appendNew(all, lacking...)
		}
	}
	if len(all) > 0 {
		p.report(Finding{Message: fmt.Sprintf("to make these wires is not recorded: %s", strings.Join(words, "; ")), Subjects: all})
	}
}

// wiresToMake lists the wires of a plan that are not on the sheet before it as they are.
func (p *Pass) wiresToMake() []*model.Wire {
	before := compare.Before(p.Job, p.Sheet.Name)
	if before == nil {
		before = &model.Sheet{}
	}
	var made []*model.Wire
	for i := range p.Sheet.Wires {
		w := &p.Sheet.Wires[i]
		if was := before.Wire(w.ID); was == nil || was.Gauge != w.Gauge || !sameEnds(was, w) {
			made = append(made, w)
		}
	}
	return made
}

// sameEnds reports whether two wires have the same ends, whichever is called from.
func sameEnds(a, b *model.Wire) bool {
	return a.From == b.From && a.To == b.To || a.From == b.To && a.To == b.From
}

// lacks reports whether a property that a wire is made by is not recorded.
func (p *Pass) lacks(w *model.Wire, field string) bool {
	switch field {
	case "gauge":
		return w.Gauge.IsZero()
	case "length":
		_, known := p.Net.Length(w)
		return !known
	case "colour":
		return w.Colour.IsZero()
	}
	return w.Insulation.IsZero()
}
