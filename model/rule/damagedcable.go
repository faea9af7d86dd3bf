package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

var damagedCable = Rule{
	ID: "damaged-cable", Title: "A damaged cable stays in",
	Family: Conductors, Severity: Caution,
	About: "Speaks about wires that are recorded as corroded, frayed or marked by heat, and as a fault about those that are burnt, melted, chafed or have broken strands. On a plan, or " +
		"as built, it also finds wires that were found so, are the same still, and of which nothing says what is done about them.",
	Why: "Corrosion creeps under the jacket: a cable that is green at its lug is often black a hand's breadth further in, and black strands neither crimp nor solder. A new lug on such copper is a " +
		"bad joint from its first day. Heat leaves copper soft and its jacket brittle. Where a jacket is chafed through, the next bump joins the conductor to the frame.",
	Tell: "Take the cable off at both ends. Cut the jacket back from the lug until the copper is bright; if it is not after a hand's breadth, the " +
		"cable is done. Bend it sharply: a sound jacket does not crack. On a cable that is in use, with current flowing, the millivolts from one " +
		"lug to the other show what the eye does not: more than its size and length account for is corrosion inside.",
	Blind: "It knows what somebody recorded; corrosion inside a jacket that looks well is found with a meter alone. A wire with a new id on the plan counts as a new wire, and a wire whose note was " +
		"written anew as seen to. Loose ends are left to the rules about them.",
	Bad: "the plan keeps a main cable that was found corroded", Good: "the plan renews it",
	Wrong:  Example{Of: greenCable, But: []string{"+", "wire w3 sol.OUT pump.+ gauge=6AWG insulation=105C length=1m"}},
	Right:  Example{Of: greenCable, But: []string{"+", "no w3\nwire w13 sol.OUT pump.+ gauge=6AWG insulation=105C length=1m"}},
	Basis:  Basis{"damaged cable is renewed, not reused", Practice},
	Remedy: "renew it, with its lugs; what is only chafed and whole may be sleeved and led clear, and the note should say so",
	Run:    runDamagedCable,

	Explains: []string{"drop-too-high"},
}

// greenCable is a pump whose feed was found corroded.
const greenCable = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=70A
part sol switch
part pump pump-motor current=55A
wire w1 pack.POS fu1.in gauge=6AWG insulation=105C length=150mm
wire w2 fu1.out sol.IN gauge=6AWG insulation=105C length=1m
wire w3 sol.OUT pump.+ gauge=6AWG insulation=105C length=1m condition=corroded
wire w4 pump.- pack.NEG gauge=6AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu1.in cover=fitted
sheet plan`

// graveDamage is what makes a cable unfit at once, lesserDamage what makes it old before its
// time.
var (
	graveDamage  = []model.Condition{model.Burnt, model.Melted, model.Chafed, model.Broken}
	lesserDamage = []model.Condition{model.Corroded, model.Frayed, model.HeatMark}
)

// damage is a wire with what is wrong with it.
type damage struct {
	wire  model.WireID
	found []model.Condition
	kept  bool // it was found so, and nothing is said of it since
}

func runDamagedCable(p *Pass) {
	before := p.asItWas()
	var grave, lesser []damage
	for i := range p.Sheet.Wires {
		w := &p.Sheet.Wires[i]
		if w.From.IsLoose() || w.To.IsLoose() {
			continue
		}
		d := damage{wire: w.ID, found: damageOf(w)}
		if was := keptFrom(before, w); len(d.found) == 0 && was != nil {
			d.found, d.kept = damageOf(was), true
		}
		switch {
		case len(d.found) == 0:
		case slices.Contains(graveDamage, d.found[0]):
			grave = append(grave, d)
		default:
			lesser = append(lesser, d)
		}
	}
	p.reportDamage(grave, Fault)
	p.reportDamage(lesser, Caution)
}

// asItWas is the sheet that the cart was found as, for a sheet after it; else the sheet before; nil
// if there is none.
func (p *Pass) asItWas() *model.Sheet {
	if found := p.Job.Sheet(model.AsFound); found != nil && p.Sheet.Name != model.AsFound {
		return found
	}
	return compare.Before(p.Job, p.Sheet.Name)
}

// damageOf is what is wrong with a wire as recorded, the gravest first.
func damageOf(w *model.Wire) []model.Condition {
	var list []model.Condition
	for _, c := range slices.Concat(graveDamage, lesserDamage) {
		if slices.Contains(w.Condition, c) {
			list = append(list, c)
		}
	}
	return list
}

// keptFrom is the wire on an earlier sheet if it is the same still and its note too; nil if it
// is not.
func keptFrom(before *model.Sheet, w *model.Wire) *model.Wire {
	if before == nil {
		return nil
	}
	was := before.Wire(w.ID)
	if was == nil || was.Gauge != w.Gauge || was.Length != w.Length || was.Insulation != w.Insulation || was.Note != w.Note {
		return nil
	}
	if was.Ends() != w.Ends() && was.Ends() != [2]model.End{w.To, w.From} {
		return nil
	}
	return was
}

func (p *Pass) reportDamage(list []damage, s Severity) {
	if len(list) == 0 {
		return
	}
	var words []string
	var subjects []Subject
	kept := 0
	for _, d := range list {
		var found []string
		for _, c := range d.found {
			found = append(found, strings.ReplaceAll(string(c), "-", " "))
		}
		word := fmt.Sprintf("%s (%s)", d.wire, strings.Join(found, ", "))
		if d.kept {
			kept++
			word = fmt.Sprintf("%s (found %s)", d.wire, strings.Join(found, ", "))
		}
		words = append(words, word)
		subjects = append(subjects, OfWire(d.wire))
	}
	message := "damaged: " + listWords(words)
	if kept > 0 {
		message = "kept though damaged: " + listWords(words) + "; nothing says what is done about it"
	}
	p.report(Finding{Severity: s, Message: message, Subjects: subjects})
}
