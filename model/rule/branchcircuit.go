package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var branchCircuit = Rule{
	ID: "branch-circuit", Title: "A charger draws more than its AC inlet or branch circuit gives",
	Family: Charging, Severity: Fault,
	About: "Computes what each charger draws at full output, V I / (efficiency x power factor x AC volts), or takes its label if that says more, and compares the sum behind " +
		"each AC inlet with the inlet's rating and with what may be drawn by a plug from the branch circuit recorded with it: 80 % of its breaker.",
	Why: "A charger draws its full current for hours. An ordinary circuit may give 80 % of its breaker to a plug, 12 A on 15 A; a charger that takes more trips it at " +
		"night, or, worse, does not, and cooks the receptacle it is plugged into. Two chargers on one cord add up.",
	Tell: "Read the AC amperes on each charger's label and the breaker's figure in the panel. After half an hour of charging lay the back of the hand on the body of the plug: warm is its limit, hot is too much. " +
		"A plug that is hot, brown or soft is not pulled under load: its breaker goes off first.",
	Blind: "The branch circuit is outside of the cart: where nobody recorded it with the inlet, it is asked for and nothing is said. What else hangs on the same circuit is not seen. " +
		"The AC side is the matter of licensed people and local codes.",
	Bad:   "a charger that draws 15 A on a circuit of 15 A",
	Good:  "the same charger on a circuit of 20 A",
	Wrong: Example{Of: onACord, But: []string{"part inl", "part inl ac-inlet ac-current=20A branch-current=15A"}},
	Right: Example{Of: onACord},
	Basis: Basis{"cord-and-plug equipment takes at most 80 % of the branch circuit", "NEC 210.23(A)(1); Table 210.21(B)(2): 12 A on a 15 A receptacle"},

	Remedy: "set the charger to less, or have a licensed person bring a larger circuit",
	Run:    runBranchCircuit,
}

// onACord is a charger behind an AC inlet.
const onACord = `
part pack lithium-pack-16
part fu2 fuse-cartridge fuse-rating=40A
part chg charger-onboard-48v charge-current=25A ac-current=15A
part inl ac-inlet ac-current=20A branch-current=20A
part fr frame-point
wire c1 pack.POS fu2.in gauge=10AWG insulation=105C length=150mm
wire c2 fu2.out chg.DC+ gauge=10AWG insulation=105C length=900mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
wire x1 inl.L chg.AC-L colour=BK gauge=12AWG insulation=105C length=400mm
wire x2 inl.N chg.AC-N colour=WH gauge=12AWG insulation=105C length=400mm
wire x3 inl.PE chg.AC-PE colour=GN gauge=12AWG insulation=105C length=400mm
wire x4 inl.PE fr.FRAME colour=GN gauge=12AWG insulation=105C length=300mm
at pack.POS cover=fitted
at fu2.in cover=fitted
`

// branchRating is the figure of the breaker of the branch circuit that an inlet is plugged into.
const branchRating = "branch-current"

// cord is an AC inlet with the chargers behind it.
type cord struct {
	inlet    *model.Part
	chargers []model.PartID
	amps     float64
	typical  bool // what a charger draws rests on typical figures
}

func runBranchCircuit(p *Pass) {
	for _, c := range p.cords() {
		share := p.limit(basis.BranchLoad)
		subjects := []Subject{OfPart(c.inlet.ID)}
		for _, id := range c.chargers {
			subjects = append(subjects, OfPart(id))
		}
		say := func(most float64, typical bool, what, decides string) {
			f := Finding{
				Message: fmt.Sprintf("through %s goes %s AC for %s; %s", c.inlet.ID, amps(c.amps), list(subjects[1:]), what), Subjects: subjects,
				Figure: Figure{What: "AC current", Value: unit.A(c.amps).Any(), Limit: unit.A(most).Any(), Decides: decides},
			}
			if typical || c.typical {
				f.Severity = Caution
				f.Message += unconfirmed
			}
			p.report(f)
		}
		branch := p.Net.KnownFigure(c.inlet, branchRating)
		rated := p.Net.KnownFigure(c.inlet, "ac-current")
		switch {
		case branch.OK && !branch.IsTypical() && c.amps > share*branch.Value:
			say(share*branch.Value, false, fmt.Sprintf("a circuit of %s gives a plug %s", amps(branch.Value), amps(share*branch.Value)), "the branch circuit")
		case rated.OK && c.amps > rated.Value:
			say(rated.Value, rated.IsTypical(), fmt.Sprintf("it is made for %s", amps(rated.Value)), "the inlet's rating")
		case !branch.OK || branch.IsTypical():
			p.missing(Gap{Datum: "the branch circuit", Field: branchRating, Decides: fmt.Sprintf("whether it gives %s for %s", amps(c.amps), list(subjects[1:])), Worst: Fault, Quiet: true, Subjects: subjects[:1]})
		}
	}
}

// cords lists the AC inlets with the chargers whose line they feed.
func (p *Pass) cords() []cord {
	var list []cord
	metal := p.plain()
	for i := range p.Sheet.Parts {
		inlet := &p.Sheet.Parts[i]
		line := p.Net.Node(model.TerminalRef{Part: inlet.ID, Name: "L"})
		if d := p.Net.Cat.Definition(inlet.Kind); d == nil || d.Family != model.ChargeGear || d.Terminal("L") == nil || line < 0 {
			continue
		}
		c := cord{inlet: inlet}
		for _, s := range p.support().Charging {
			if at := p.Net.Node(model.TerminalRef{Part: s.Charger, Name: "AC-L"}); at >= 0 && s.ACAmps > 0 && metal.Same(line, at) {
				c.chargers = append(c.chargers, s.Charger)
				c.amps += s.ACAmps
				c.typical = c.typical || drawsByMemory(s)
			}
		}
		if len(c.chargers) > 0 {
			list = append(list, c)
		}
	}
	return list
}

// drawsByMemory reports whether what a charger draws rests on typical figures alone.
func drawsByMemory(c support.Charging) bool {
	return assumed(c.Assumptions, []string{"charge-current"}, c.Charger) && assumed(c.Assumptions, []string{"ac-voltage"}, c.Charger)
}
