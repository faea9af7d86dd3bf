package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/edit"
)

var washerInPath = Rule{
	ID: "washer-in-path", Title: "A washer lies in the current's path",
	Family: Studs, Severity: Fault,
	About: "Looks at the recorded place of the innermost washer of each stud. Between two lugs or under the first it carries the current of all " +
		"that lies above it: a fault from 20 A up, a caution below. Where an aluminium wire meets copper a plated washer between them is right, " +
		"and nothing is said. Where the place is not recorded it is a question on studs that carry 20 A and more.",
	Why: "A washer is there to spread the nut's pressure and to keep it from turning. It is steel, often stainless: seven to forty times the " +
		"resistance of copper, hard, and with two more faces to corrode. Put between lugs it makes the joint hot at its very middle, the spring " +
		"washer loses its temper and the stack goes slack. The order that works is seat, lugs, flat washer, spring washer, nut.",
	Tell: "Pack off, boot off, look from the side: from the post outward you must see copper, copper, and only then steel. Clip the meter on, DC millivolts, one " +
		"lead on the post's face and one on the outermost lug's tongue, then pack on and load the motor: 5 to 20 mV at 100 A is a good stack, above 50 mV " +
		"something is in the way.",
	Blind: "Only the innermost washer is recorded, and not what it is made of. A plated-brass washer that a maker asks for under a lug looks the " +
		"same on this sheet: waive the finding with a word that names the maker's sheet. One lug alone can have no washer between.",
	Bad:   "a spring washer lies under the lugs on iso.out",
	Good:  "the washers lie outside, under the nut",
	Wrong: Example{Of: studExample, But: []string{"+", "at iso.out washer=under"}},
	Right: Example{Of: studExample, But: []string{"+", "at iso.out washer=outside"}},
	Basis: Basis{"current is carried by the contact faces of the terminals; the lug lies directly on its seat, then plain washer, lock washer and nut",
		"FAA AC 43.13-1B 11-174; FAA powerplant handbook, connecting terminal lugs to terminal blocks"},
	Remedy: "take the stack off and put it back: lugs on the seat, face on face, then flat washer, spring washer, nut; the ready-made edit records that",
	Run:    runWasherInPath,
}

func runWasherInPath(p *Pass) {
	least := p.limit(basis.StackCurrent)
	var unknown []Subject
	for _, s := range p.studs() {
		carries, state := p.mostAt(s.at)
		switch washer := p.washerOn(s.at); {
		case washer == model.WasherOutside, washer == model.WasherBetween && len(s.wires) < 2, p.mixesAluminium(s):
			continue
		case washer == "" && carries >= least:
			unknown = append(unknown, OfTerminal(s.at))
		case washer != "":
			p.reportWasher(s, washer, carries, state)
		}
	}
	if len(unknown) > 0 {
		p.missing(Gap{Datum: "the place of the washers", Field: "washer", Decides: "whether the current has to go through steel", Worst: Fault, Quiet: true, Subjects: unknown})
	}
}

func (p *Pass) reportWasher(s stud, washer model.Washer, carries float64, state string) {
	where := "between two lugs"
	if washer == model.WasherUnder {
		where = "under the lugs"
	}
	f := Finding{
		Message:  fmt.Sprintf("on %s a washer lies %s", s.at, where),
		Subjects: []Subject{OfTerminal(s.at)},
		Fixes:    []edit.Edit{p.setTerminal(s.at, "washer", string(model.WasherOutside))},
	}
	if carries > 0 {
		f.State = state
		f.Message += fmt.Sprintf(", in the path of up to %s (%s)", amps(carries), state)
	}
	if carries < p.limit(basis.StackCurrent) {
		f.Severity = Caution
	}
	p.report(f)
}

// washerOn is where the innermost washer of a terminal lies, as recorded.
func (p *Pass) washerOn(at model.TerminalRef) model.Washer {
	if t := p.Sheet.Terminal(at); t != nil {
		return t.Washer
	}
	return ""
}

// mostAt is the largest current of the wires on a terminal, all the time in the worst state,
// and that state.
func (p *Pass) mostAt(at model.TerminalRef) (amperes float64, state string) {
	for _, id := range p.Sheet.Landed(at) {
		if a, in := p.flows(p.Sheet.Wire(id)); a > amperes {
			amperes, state = a, in
		}
	}
	return amperes, state
}

// mixesAluminium reports whether an aluminium wire shares a stud with something else.
func (p *Pass) mixesAluminium(s stud) bool {
	aluminium := slices.ContainsFunc(s.wires, isAluminium)
	other := slices.ContainsFunc(s.wires, func(w *model.Wire) bool { return !isAluminium(w) })
	face := p.faceOf(s.at)
	return aluminium && (other || face != "" && face != model.Aluminium)
}

func isAluminium(w *model.Wire) bool { return w.Material == model.Aluminium }

// faceOf is what the contact face of a terminal is made of, as recorded.
func (p *Pass) faceOf(at model.TerminalRef) model.Material {
	if t := p.Sheet.Terminal(at); t != nil {
		return t.Material
	}
	return ""
}
