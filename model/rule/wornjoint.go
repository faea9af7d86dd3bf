package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
)

var wornJoint = Rule{
	ID: "worn-joint", Title: "A joint is recorded as corroded, burnt, loose or dirty",
	Family: Studs, Severity: Fault,
	About: "Lists the terminals recorded as corroded, burnt, melted, heat-marked, loose, frayed or dirty, and the wires whose lug is loose or " +
		"frayed, with the largest current that goes through them all the time in the worst state: a fault from 20 A up, a caution below. On a " +
		"plan or an as-built sheet they are said to stay.",
	Why: "A clean tight joint has about a tenth of a milliohm; a corroded one has one to twenty, a loose one has anything. The heat goes with " +
		"the square of the current: at 200 A ten milliohms are 400 W in a spot the size of a coin, and 2 V that the motor does not get. Heat " +
		"makes oxide, oxide makes heat. A joint that was only green in spring is burnt in autumn, and a new pack with more current in it " +
		"finds the old joint at once.",
	Tell: "Clip the meter on with the pack off, DC millivolts, red on the cable's barrel, black on the post it sits on; then pack on, stand clear and load the " +
		"motor: 10 to 40 mV at 200 A is good, 100 mV is to be renewed. Cold, pack off: look for green or white bloom, blue or brown tint on the lug, a spring " +
		"washer that lies flat, a lug that turns by hand.",
	Blind: "It repeats what somebody saw, with the current; a bad joint that nobody recorded is found only by a meter. What is recorded of a wire " +
		"as a whole, such as a corroded or burnt one, is judged with the wires. A joint cleaned since then still counts until its record says so.",
	Bad:    "the main lugs on iso.out are corroded",
	Good:   "the joint is cleaned or renewed, and the record says no more of it",
	Wrong:  Example{Of: studExample, But: []string{"+", "at iso.out condition=corroded"}},
	Right:  Example{Of: studExample},
	Basis:  Basis{"a joint carries its current through clean faces pressed together; typical resistances are 0.05 to 0.2 mohm for a good one and 1 to 20 mohm for a corroded one, from memory", Practice},
	Remedy: "renew the lug, or clean both faces to bright metal, put them back dry and tight and protect the outside; then take the condition off the record",
	Run:    runWornJoint,

	Explains: []string{"drop-too-high"},
}

// wornConditions are what makes a joint a bad one; of a wire only what is at its lug.
var (
	wornConditions = []model.Condition{model.LooseFit, model.Burnt, model.Melted, model.Corroded, model.HeatMark, model.Frayed, model.Dirty}
	wornAtLug      = []model.Condition{model.LooseFit, model.Frayed}
)

// leastTold is the current in A from which it is told with a joint. Our choice.
const leastTold = 0.1

// worn is a joint that is recorded as bad.
type worn struct {
	subject Subject
	how     []string
	amps    float64
}

func runWornJoint(p *Pass) {
	var main, rest []worn
	for _, j := range p.wornJoints() {
		if j.amps >= p.limit(basis.StackCurrent) {
			main = append(main, j)
		} else {
			rest = append(rest, j)
		}
	}
	p.reportWorn(main, Fault)
	p.reportWorn(rest, Caution)
}

// wornJoints lists the joints that are recorded as bad.
func (p *Pass) wornJoints() []worn {
	var list []worn
	for i := range p.Sheet.Terminals {
		t := &p.Sheet.Terminals[i]
		if how := among(t.Condition, wornConditions); len(how) > 0 && len(p.Sheet.Landed(t.At)) > 0 {
			amperes, _ := p.mostAt(t.At)
			list = append(list, worn{OfTerminal(t.At), how, amperes})
		}
	}
	for i := range p.Sheet.Wires {
		w := &p.Sheet.Wires[i]
		if how := among(w.Condition, wornAtLug); len(how) > 0 {
			amperes, _ := p.flows(w)
			list = append(list, worn{OfWire(w.ID), how, amperes})
		}
	}
	return list
}

// among lists the words of the conditions that are some of those asked for.
func among(found, asked []model.Condition) []string {
	var words []string
	for _, c := range found {
		if slices.Contains(asked, c) {
			words = append(words, strings.ReplaceAll(string(c), "-", " "))
		}
	}
	return words
}

func (p *Pass) reportWorn(joints []worn, severity Severity) {
	if len(joints) == 0 {
		return
	}
	slices.SortStableFunc(joints, func(a, b worn) int { return cmp.Compare(b.amps, a.amps) })
	f := Finding{Severity: severity}
	var words []string
	for _, j := range joints {
		word := j.subject.String() + " " + strings.Join(j.how, " and ")
		if j.amps >= leastTold {
			word += ", " + aboutAmps(j.amps)
		}
		words = append(words, word)
		f.Subjects = append(f.Subjects, j.subject)
	}
	f.Message = "bad joints: " + strings.Join(words[:min(named, len(words))], "; ")
	if more := len(words) - named; more > 0 {
		f.Message += fmt.Sprintf("; and %d more", more)
	}
	if p.Sheet.Name != model.AsFound {
		f.Message += "; so they stay on the sheet " + string(p.Sheet.Name)
	}
	p.report(f)
}
