package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

var thinMotorLeads = Rule{
	ID: "thin-motor-leads", Title: "Motor leads stay thin while the mains are renewed",
	Family: Conductors, Severity: Caution,
	About: "Compares a plan, or the cart as built, with the cart as it was found: where the cables from pack to controller get thicker and leads of the motor that carry the " +
		"drive's current stay as they were and are thinner, it says how much the two carry. Leads of a separate field are left out, and so are the phases of an AC motor " +
		"that stand the controller's phase current by its label.",
	Why: "The current that the controller takes from the pack goes through the motor as well, and at low speed the motor's current is the larger of the two: the controller " +
		"turns few amperes at the pack's voltage into many at a low one. Thick mains with the old thin leads behind them move the hot spot from where one looks, under the seat, to " +
		"where nobody does, at the motor's studs beside the axle.",
	Tell: "Put the mains and the motor leads side by side and compare the copper at the lugs. After a long climb feel both with the back of the hand: the motor leads should not be the warmer ones. " +
		"Look at their studs: browned paint or a blued nut has been hot.",
	Blind: "It needs the sheet as found: before it nothing is renewed. It compares what the two may carry, not what flows; whether a lead gets too hot is said by another rule, " +
		"from the controller's ratings. Where the controller gives its motor less current than it takes the leads may be right: waive it with the maker's figures.",
	Bad:    "mains renewed from 4 to 2 AWG, motor leads left at 4 AWG",
	Good:   "both renewed to 2 AWG",
	Wrong:  Example{Of: renewedMains},
	Right:  Example{Of: renewedMains, But: []string{"+", "wire m1 motor.A1 ctrl.B+ gauge=2AWG insulation=105C length=500mm\nwire m2 motor.A2 ctrl.M- gauge=2AWG insulation=105C length=500mm"}},
	Basis:  Basis{"what flows through the controller flows through the motor, and more of it at low speed", Physics},
	Remedy: "renew the motor leads in the size of the mains, with their lugs",
	Run:    runThinMotorLeads,
}

// renewedMains is a drive whose mains are renewed on the plan.
const renewedMains = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=150A
part ctrl controller-series continuous-current=80A peak-current=150A
part motor motor-pm
part key key-switch
part fu3 fuse-inline-80v fuse-rating=5A
wire w1 pack.POS fu1.in gauge=4AWG insulation=105C length=150mm
wire w2 fu1.out ctrl.B+ gauge=4AWG insulation=105C length=600mm
wire w3 ctrl.B- pack.NEG gauge=4AWG insulation=105C length=700mm
wire k1 fu1.out fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN ctrl.KSI gauge=16AWG insulation=105C length=1m
wire m1 motor.A1 ctrl.B+ gauge=4AWG insulation=105C length=500mm
wire m2 motor.A2 ctrl.M- gauge=4AWG insulation=105C length=500mm
stack fu1.out w2 k1
stack ctrl.B+ w2 m1
at pack.POS cover=fitted
at fu1.in cover=fitted
sheet plan
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out ctrl.B+ gauge=2AWG insulation=105C length=600mm
wire w3 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm`

// drivesShare is from what share of the largest current of the mains on a wire carries the
// drive's current, and not that of a field or of something beside the drive. Our choice.
const drivesShare = 0.6

func runThinMotorLeads(p *Pass) {
	before := p.asItWas()
	if before == nil || p.unsound() {
		return
	}
	mains, leads := p.driveWires()
	if len(mains) == 0 || len(leads) == 0 {
		return
	}
	main := slices.MinFunc(mains, func(a, b *network.Link) int { return a.Wire.Gauge.Compare(b.Wire.Gauge) })
	if main.Wire.Gauge.Compare(thickestOf(before)) <= 0 {
		return
	}
	left := slices.DeleteFunc(leads, func(l *network.Link) bool {
		was := before.Wire(l.Wire.ID)
		return was == nil || was.Gauge != l.Wire.Gauge || l.Wire.Gauge.Compare(main.Wire.Gauge) >= 0 || p.phaseStands(l)
	})
	if len(left) > 0 {
		p.reportLeads(left, main)
	}
}

// driveWires parts the wires that carry the drive's current into mains and leads of the motor.
func (p *Pass) driveWires() (mains, leads []*network.Link) {
	most := 0.0
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || l.Wire.Gauge.IsZero() || !p.traction(l) {
			continue
		}
		if protect.IsMotorLead(p.Net, l) {
			leads = append(leads, l)
			continue
		}
		mains = append(mains, l)
		most = max(most, p.currents().Load(l.Wire).Amps)
	}
	lesser := func(l *network.Link) bool {
		load := p.currents().Load(l.Wire)
		return !load.Phase && load.Amps < drivesShare*most || load.Amps == 0
	}
	return slices.DeleteFunc(mains, lesser), slices.DeleteFunc(leads, lesser)
}

// thickestOf is the thickest wire of a sheet; the zero gauge if none is recorded.
func thickestOf(s *model.Sheet) unit.Gauge {
	var thickest unit.Gauge
	for i := range s.Wires {
		if g := s.Wires[i].Gauge; g.Compare(thickest) > 0 {
			thickest = g
		}
	}
	return thickest
}

// phaseStands reports whether a motor phase stands the controller's phase current by its label.
func (p *Pass) phaseStands(l *network.Link) bool {
	load := p.currents().Load(l.Wire)
	_, fits, _ := p.warms(l)
	return load.Phase && fits && !p.drivesByMemory(load) && !slices.ContainsFunc(p.Net.Links(), func(d network.Link) bool {
		return p.isDriveLoad(&d) && p.typical(&d, phaseCurrent)
	})
}

// phaseCurrent is the rating of a controller that says what a phase of its motor carries.
const phaseCurrent = "phase-current"

func (p *Pass) reportLeads(left []*network.Link, main *network.Link) {
	subjects := wireSubjects(left)
	thin := left[0].Wire
	f := Finding{
		Subjects: append(subjects, OfWire(main.Wire.ID)),
		Message:  fmt.Sprintf("%s stay %s, while the thinnest of the mains, %s, is now %s", list(subjects), thin.Gauge, main.Wire.ID, main.Wire.Gauge),
	}
	a, errA := conductor.Ampacity(thin.Gauge, max(worstClass, thin.Insulation.Degrees()), conductor.TableAmbient)
	b, errB := conductor.Ampacity(main.Wire.Gauge, max(worstClass, main.Wire.Insulation.Degrees()), conductor.TableAmbient)
	if errA == nil && errB == nil {
		f.Message += fmt.Sprintf(": %s against %s for the same drive", amps(a.Amperes), amps(b.Amperes))
		f.Figure = Figure{What: "ampacity of the motor leads", Value: unit.A(a.Amperes).Any(), Limit: unit.A(b.Amperes).Any(), Least: true, Decides: "ampacity of the mains"}
	}
	fit := thinnestOf(size.SeriesOf(thin.Gauge), main.Wire.Gauge)
	var edits []edit.Edit
	for _, s := range subjects {
		edits = append(edits, p.setWire(s.Wire, "gauge", fit.String()))
	}
	f.Fixes = []edit.Edit{together(fmt.Sprintf("renew %s in %s", list(subjects), fit), edits...)}
	p.report(f)
}
