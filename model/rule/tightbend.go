package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var tightBend = Rule{
	ID: "tight-bend", Title: "A cable is bent too tightly",
	Family: Mounting, Severity: Caution,
	About: "Compares the tightest radius that a cable is bent to, as recorded, with ten times its diameter, unless the job has another limit. The jacket's diameter is not recorded, so it takes the bare conductor, " +
		"which is thinner: what it finds is too tight for sure.",
	Why: "In a tight bend the outer strands are stretched and the inner ones buckle. Nothing is seen at first; with every shake they work against each other until they break, and the jacket " +
		"cracks where it is stretched. A cable that springs back pulls its lug round and loosens the nut.",
	Tell: "Lay a round thing of known size into the bend: a drinks can has a radius of 33 mm, the least for a wire of 3.3 mm with its jacket. A 2/0 cable is about 15 mm thick: its bend is as wide as a dinner plate.",
	Blind: "With its jacket a cable is half as thick again or more: a bend that this rule lets pass may still be too tight. Bends of which nobody recorded a radius are not asked for one by one. Cable of fine strands may bear " +
		"a tighter bend: its maker's figure prevails.",
	Bad: "2 AWG bent to 40 mm", Good: "led in a bow of 120 mm",
	Wrong:  Example{Of: bowed, But: []string{"wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=160mm bend=40mm"}},
	Right:  Example{Of: bowed},
	Basis:  Basis{"the radius of a bend is at least ten times the outside diameter", "US Army TM 1-1500-204-23-4"},
	Remedy: "lead it in a wider bow, or turn the lug so that it leaves the stud the other way",
	Run:    runTightBend,
}

// bowed is a pack and its fuse, with a cable led in a bow.
const bowed = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=70A
part pump pump-motor current=55A
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=160mm bend=120mm
wire w2 fu1.out pump.+ gauge=6AWG insulation=105C length=1m
wire w3 pump.- pack.NEG gauge=6AWG insulation=105C length=1m
at pack.POS cover=fitted
at fu1.in cover=fitted`

func runTightBend(p *Pass) {
	times, source := p.limitFrom(basis.BendRadius)
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || l.Wire.Gauge.IsZero() || l.Wire.Bend.IsZero() {
			continue
		}
		bare := bareDiameter(l.Wire.Gauge)
		least := times.SI() * bare
		if l.Wire.Bend.Metres() >= least {
			continue
		}
		p.report(Finding{
			Subjects: []Subject{OfWire(l.Wire.ID)},
			Message: fmt.Sprintf("%s, %s, is bent to %s; its bare copper is %.1f mm thick and asks for %s already",
				l.Wire.ID, l.Wire.Gauge, metres(l.Wire.Bend.Metres()), 1000*bare, metres(least)),
			Figure: Figure{What: "bend radius", Value: l.Wire.Bend.Any(), Limit: unit.LengthFromMetres(least).Any(), Least: true, Decides: source},
		})
	}
}

// bareDiameter is the diameter in metres of a solid conductor of a size: a lower bound of the
// outside diameter of its cable, for strands and a jacket only add to it.
func bareDiameter(g unit.Gauge) float64 { return 2 * math.Sqrt(g.AreaMM2()/math.Pi) / 1000 }
