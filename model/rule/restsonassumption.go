package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var restsOnAssumption = Rule{
	ID: "rests-on-assumption", Title: "What protects the pack rests on an assumption",
	Family: Paper, Severity: Note,
	About: "On a plan and an as-built sheet, names the wires on the positive side of a source, and the fuses and breakers, that are recorded as " +
		"assumed or untraced, and wires there whose gauge was judged by eye: one note. What is said of fuses and shorts holds only if they are " +
		"as recorded.",
	Why: "The gravest verdicts of a check, a missing fuse, a fuse too large for its wire, a feed that goes round the key, come from the way the " +
		"positive wires run. One wire that was taken for granted from the model the cart once was makes all of them say something about " +
		"another cart: a sheet without a finding is then worth as little as one full of them.",
	Tell: "Follow the wire by hand from stud to stud, or ring it through with the pack off and both ends off: under 1 ohm is the same wire, and nothing else. " +
		"Measure the gauge at the strands, not over the jacket.",
	Blind: "A wire of which nothing is said counts as known. On an as-found sheet assumptions are part of the work and are not named. Negative " +
		"wires and signal wires are left out.",
	Bad:    "on the plan the feed of the key is only assumed",
	Good:   "it was traced",
	Wrong:  Example{Of: spliceExample, But: []string{"wire k2", "wire k2 fu1.out key.BAT gauge=16AWG insulation=105C length=1m confidence=assumed", "+", "sheet plan"}},
	Right:  Example{Of: spliceExample, But: []string{"wire k2", "wire k2 fu1.out key.BAT gauge=16AWG insulation=105C length=1m confidence=traced", "+", "sheet plan"}},
	Basis:  Basis{"what is not traced may be otherwise", Practice},
	Remedy: "trace it, and record it as traced",
	Run:    runRestsOnAssumption,
}

func runRestsOnAssumption(p *Pass) {
	if p.Sheet.Name == model.AsFound {
		return
	}
	var assumed []Subject
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		if def := p.Net.Cat.Definition(part.Kind); def != nil && def.Family == model.Protection && isAssumed(part.Confidence) {
			assumed = append(assumed, OfPart(part.ID))
		}
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind == network.WireLink && (isAssumed(l.Wire.Confidence) || l.Wire.IsJudged(model.JudgedGauge)) && (p.isLive(l.A) || p.isLive(l.B)) {
			assumed = append(assumed, OfWire(l.Wire.ID))
		}
	}
	if len(assumed) > 0 {
		p.report(Finding{
			Message:  fmt.Sprintf("what is said of fuses and shorts rests on %s, recorded as assumed, untraced or judged by eye", list(assumed)),
			Subjects: assumed,
		})
	}
}

func isAssumed(c model.Confidence) bool { return c == model.Assumed || c == model.NotTraced }
