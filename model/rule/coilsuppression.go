package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var coilSuppression = Rule{
	ID: "coil-suppression", Title: "A coil has no suppression, or one that does not stand it",
	Family: Contactors, Severity: Caution,
	About: "Looks at each coil for a diode across it, for suppression built into it or into the driver that switches it, and holds the " +
		"diode against the full voltage and the coil's current. Coils without any are told in one finding; a driver of which nothing is " +
		"recorded is a note. Reversed diodes have a rule of their own.",
	Why: "A coil does not let its current stop: when the switch opens it pushes the current on through the air, at some hundred volts, in a small arc. Each click eats a " +
		"little of the pedal switch, and the spike wanders through the harness into controllers and displays that stand a tenth of it. A diode " +
		"across the coil gives the current a way round until it has died down.",
	Tell: "Look between the two small studs for a small black body with a band on one end; the band belongs to coil+. Key off, control fuse out, one " +
		"end of it free, measure it with the diode setting of the meter: about 0.6 V one way, nothing the other. Burnt pedal switches and resets " +
		"of the controller when the contactor drops speak for a missing one.",
	Blind: "Coils that no state feeds are passed over, for nobody knows which side their band belongs on. What a maker built into coil or driver is known only by its figure " +
		"clamp-voltage. A diode also keeps the contacts closed some milliseconds longer; whether they then open under more arc is not weighed here.",
	Bad:    "a contactor coil that pedal switch and key open with nothing across it",
	Good:   "a diode across the coil with its band at coil+",
	Wrong:  Example{Of: suppressed, But: []string{"part dio", "", "wire d1", "", "wire d2", ""}},
	Right:  Example{Of: suppressed},
	Basis:  Basis{"a coil keeps its current when its switch opens and drives it through an arc at some hundred volts", Practice},
	Remedy: "fit a diode across the coil, band to the positive side, that holds back twice the full voltage",
	Run:    runCoilSuppression,
}

// suppressed is a relay behind a switch with a diode across its coil.
const suppressed = `
job system=12V
part b1 lead-battery-12v
part fu fuse-inline fuse-rating=5A interrupting-rating=5000A
part sw switch
part r relay pull-in-voltage=7V
part dio diode
wire k1 b1.+ fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out sw.IN gauge=16AWG insulation=105C length=1m
wire k3 sw.OUT r.86 gauge=16AWG insulation=105C length=1m
wire k4 r.85 b1.- gauge=16AWG insulation=105C length=1m
wire d1 dio.cathode r.86 gauge=18AWG length=60mm
wire d2 dio.anode r.85 gauge=18AWG length=60mm
at b1.+ cover=fitted
`

func runCoilSuppression(p *Pass) {
	if p.unsound() {
		return
	}
	var bare, drivers []Subject
	var fits []edit.Edit
	for _, c := range p.support().Coils {
		switch {
		case c.FedIn == "":
		case len(c.Diodes) == 0 && c.BuiltIn == "" && c.Driver != nil:
			drivers = appendNew(drivers, OfPart(c.Driver.At.Part))
		case len(c.Diodes) == 0 && c.BuiltIn == "":
			bare = append(bare, OfPart(c.Part))
			fits = append(fits, p.fitDiode(c, len(bare)))
		default:
			p.reportCoil(c)
		}
	}
	if len(bare) > 0 {
		p.report(Finding{
			Message: fmt.Sprintf("nothing takes the kick of the coil of %s", list(bare)), Subjects: bare,
			Fixes: []edit.Edit{together("fit a diode across the coil of "+list(bare)+", band to its fed side", fits...)},
		})
	}
	if len(drivers) > 0 {
		p.missing(Gap{Datum: "the clamp voltage of the coil drivers", Field: "clamp-voltage", Decides: "whether the coils on them need a diode", Worst: Caution, Subjects: drivers})
	}
}

// fitDiode puts a diode across a coil, band at its fed side; n tells several of one edit apart.
func (p *Pass) fitDiode(c support.Coil, n int) edit.Edit {
	coil := p.coilLink(c)
	plus := p.Net.Node(c.Plus)
	minus := p.Net.Point(coil.Other(plus)).At
	part := model.Part{
		ID: p.freePart(fmt.Sprintf("dio%d-", n)), Kind: "diode", Zone: coil.Part.Zone,
		Ratings: []model.Rating{
			{Name: "reverse-voltage", Value: unit.V(400).Any(), Source: toBeFitted},
			{Name: "continuous-current", Value: unit.A(3).Any(), Source: toBeFitted},
		},
	}
	return p.putAcross("fit "+string(part.ID), part, "cathode", "anode", c.Plus, minus)
}

// diodeRatings are the figures that decide about a suppression diode.
var diodeRatings = []string{"reverse-voltage", "continuous-current"}

// reportCoil reports what is judged of one coil, its reversed diodes left out.
func (p *Pass) reportCoil(c support.Coil) {
	subjects := []Subject{OfPart(c.Part)}
	for _, d := range c.Diodes {
		if d.Reversed {
			return
		}
		subjects = append(subjects, OfPart(d.Part))
	}
	for _, g := range worse(c.Judgements) {
		f := Finding{Severity: g.severity, Message: fmt.Sprintf("%s: %s", c.Part, g.text), Subjects: subjects}
		for _, s := range subjects {
			if f.Severity == Fault && assumed(c.Assumptions, diodeRatings, s.Part) {
				f.Severity = Caution
				f.Message += unconfirmed
			}
		}
		p.report(f)
	}
}
