package rule

import (
	"fmt"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

var brakesFullPack = Rule{
	ID: "brakes-full-pack", Title: "Braking drives current into a full pack that does not take it",
	Family: Packs, Severity: Fault,
	About: "For each drive that gives current back while it brakes: compares that current with what the pack takes when it is full. Asks for the latter where " +
		"nobody recorded it.",
	Why: "A cart that is charged on a hill and driven down it brakes into a full pack. The pack's electronics open the charging path at 3.65 V a cell, the " +
		"braking current has nowhere to go, the controller's own supply shoots up until it trips, and the braking that the driver leans on is gone at once.",
	Tell: "Full pack, a gentle slope with a level run-out, foot over the brake: roll fifty metres with the pedal up and have a second person watch the pack's " +
		"display or the controller's fault code. An over-voltage code or a pack that switches off is this. Most controllers have a setting that lowers braking " +
		"current near full.",
	Blind: "What a full pack takes is rarely on its label: it is asked for, quietly. Settings inside the controller and a braking resistor are not on the sheet. Series and " +
		"other drives that give nothing back are left alone.",
	Bad:   "the drive brakes with 100 A, the full pack takes 20 A",
	Good:  "the drive's braking current is set to 20 A near full",
	Wrong: Example{Of: brakingDrive, But: []string{"part ctrl", "part ctrl controller-sepex regeneration-current=100A"}},
	Right: Example{Of: brakingDrive},
	Basis: Basis{"a full lithium pack opens its charging path", "common practice, no source; the pack's maker states what a full pack takes"},

	Remedy: "lower the controller's braking current near full, or charge to 90 % where the cart starts on a hill; tell the customer that the foot brake is the brake",
	Run:    runBrakesFullPack,
}

// brakingDrive is a pack and a separately excited drive that brakes into it.
const brakingDrive = `
part pack lithium-pack-16 full-regeneration-current=20A
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part pre precharge-resistor
part ctrl controller-sepex regeneration-current=20A
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
stack sol.L1 w2 p1
stack sol.L2 w3 p2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

// fullBraking is the figure of what a full pack takes for some seconds.
const fullBraking = "full-regeneration-current"

func runBrakesFullPack(p *Pass) {
	if p.unsound() {
		return
	}
	pack, ok := p.lithiumPack()
	if !ok {
		return
	}
	var drives []Subject
	into := 0.0
	for _, f := range p.Net.Regenerators() {
		drives = append(drives, OfPart(f.Link.Part.ID))
		into += f.Limit
	}
	if len(drives) == 0 {
		return
	}
	takes := p.Net.KnownFigure(p.Net.Part(pack), fullBraking)
	if !takes.OK || takes.IsTypical() {
		p.missing(Gap{Datum: "the braking current that it takes when full", Field: fullBraking, Decides: fmt.Sprintf("whether the %s that %s gives back has somewhere to go", amps(into), list(drives)),
			Worst: Fault, Quiet: true, Subjects: []Subject{OfPart(pack)}})
		return
	}
	if most := takes.Value * p.limit(basis.FullPackShare); into > most {
		p.report(Finding{
			Message:  fmt.Sprintf("%s brakes with %s, %s takes %s when it is full: braking stops at once on a full pack", list(drives), amps(into), pack, amps(most)),
			Figure:   Figure{What: "braking current", Value: unit.A(into).Any(), Limit: unit.A(most).Any(), Decides: "the full pack"},
			Subjects: append([]Subject{OfPart(pack)}, drives...),
			Fixes:    p.brakesLess(drives, most),
		})
	}
}

// brakesLess sets a single drive's braking current to what the full pack takes.
func (p *Pass) brakesLess(drives []Subject, most float64) []edit.Edit {
	if len(drives) != 1 {
		return nil
	}
	return []edit.Edit{p.rate(drives[0].Part, "regeneration-current", unit.A(most).Any())}
}
