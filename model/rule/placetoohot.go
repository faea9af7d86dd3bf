package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var placeTooHot = Rule{
	ID: "place-too-hot", Title: "A wire lies in a hotter place than it is made for",
	Family: Conductors, Severity: Caution,
	About: "Takes the hottest temperature that is recorded for the zones a wire passes, or for the job. A fault if the insulation class is not above it. A caution if the fuse " +
		"before the wire is what it carries in 30 C but more than it carries there, by the ambient correction of the ampacity table.",
	Why: "The class of an insulation is the temperature that its copper may reach, not what its current may add. Beside a motor, a brake or a resistor bank the air has used up a part of that before " +
		"any current flows, so the wire may carry less: 105 C cable in 80 C carries little more than half. Where the place alone is as hot as the class, the jacket ages in months.",
	Tell: "Put a thermometer or a strip of temperature labels on the cable beside the motor and drive the longest run of the day. Look for jackets that have gone stiff, " +
		"brown or shiny on the side toward the heat. The class is printed on the jacket; plain building wire is often 60 or 75 C.",
	Blind: "A place counts as 30 C unless the job or the zone says hotter. The whole wire counts as lying in its hottest zone. Most other rules compare at 30 C.",
	Bad:   "75 C wire in a place of 80 C", Good: "125 C wire there",
	Wrong: Example{Of: hotPump, But: []string{"wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG insulation=75C length=1m"}},
	Right: Example{Of: hotPump},
	Basis: Basis{"amperages are corrected for hot spaces; the current that brings a conductor to its class falls with the root of what the ambient leaves of it",
		"33 CFR 183.425(c) with note 1 of table 5; NEC 310.15(B), equation"},
	Remedy: "lead it round the heat or shield it, or renew it in a higher class; a smaller fuse where the fuse decides",
	Run:    runPlaceTooHot,
}

// hotPump is a pump of 25 A in a place of 80 C, wired for it.
const hotPump = `
job hottest=80C
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=40A
part sw switch
part pump pump-motor current=25A
wire w1 pack.POS fu1.in gauge=6AWG insulation=125C length=150mm
wire w2 fu1.out sw.IN gauge=6AWG insulation=125C length=1m
wire w3 sw.OUT pump.+ gauge=6AWG insulation=125C length=1m
wire w4 pump.- pack.NEG gauge=6AWG insulation=125C length=2m
at pack.POS cover=fitted
at fu1.in cover=fitted`

// heated are wires with one verdict.
type heated struct {
	place float64 // C
	zone  model.ZoneID
	class float64 // C
	wires []*network.Link
}

func runPlaceTooHot(p *Pass) {
	var soft []heated
	var unclassed []Subject
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink {
			continue
		}
		place, zone := p.hottestZone(l.Wire)
		class := l.Wire.Insulation.Degrees()
		switch {
		case place <= conductor.TableAmbient:
		case class == 0 && place >= worstClass:
			unclassed = append(unclassed, OfWire(l.Wire.ID))
		case class == 0:
		case class <= place:
			soft = gatherHeated(soft, heated{place, zone, class, []*network.Link{l}})
		}
	}
	for _, h := range soft {
		p.reportSoft(h)
	}
	p.reportDerated()
	if len(unclassed) > 0 {
		p.missing(Gap{Datum: "the insulation class", Field: "insulation", Decides: "whether it stands the heat of its place", Worst: Fault, Subjects: unclassed})
	}
}

func gatherHeated(list []heated, h heated) []heated {
	for i := range list {
		if g := &list[i]; g.place == h.place && g.zone == h.zone && g.class == h.class {
			g.wires = append(g.wires, h.wires...)
			return list
		}
	}
	return append(list, h)
}

// where is a place in words.
func (h heated) where() string {
	if h.zone == "" {
		return fmt.Sprintf("%s C", number(h.place))
	}
	return fmt.Sprintf("%s C in %s", number(h.place), h.zone)
}

// reportSoft reports wires whose insulation is not made for their place at all.
func (p *Pass) reportSoft(h heated) {
	subjects := wireSubjects(h.wires)
	f := Finding{
		Severity: Fault, Subjects: subjects,
		Message: fmt.Sprintf("%s of %s C insulation: it gets %s there before any current flows", list(subjects), number(h.class), h.where()),
		Figure:  Figure{What: "heat of the place", Value: degrees(h.place), Limit: degrees(h.class), Decides: "the insulation class"},
	}
	if better, ok := classAbove(h.place); ok {
		var edits []edit.Edit
		for _, s := range subjects {
			edits = append(edits, p.setWire(s.Wire, "insulation", degrees(better).String()))
		}
		f.Fixes = []edit.Edit{together(fmt.Sprintf("renew %s in %s C insulation", list(subjects), number(better)), edits...)}
	}
	p.report(f)
}

// classAbove is the usual insulation class for a hot place: with a third of its rise left; false
// if none has.
func classAbove(place float64) (float64, bool) {
	for _, class := range []float64{105, 125, 200} {
		if place <= conductor.TableAmbient+(class-conductor.TableAmbient)*2/3 {
			return class, true
		}
	}
	return 0, false
}

// derated are wires that one set of devices protects in 30 C and not where they lie.
type derated struct {
	limits []*network.Link
	wires  []*network.Link
	worst  carried30
}

// carried30 is what a device may be rated at for a wire where it lies.
type carried30 struct {
	wire  *network.Link
	where heated
	amps  float64 // ampacity there
	most  float64 // largest device there
	rated float64 // what can persist in it
}

// reportDerated reports devices that are too large for wires in the heat.
func (p *Pass) reportDerated() {
	if p.misconnected() {
		return
	}
	var groups []derated
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || p.exempt(l) {
			continue
		}
		c, is := p.deratedAt(l)
		if !is {
			continue
		}
		limits := p.guard().Outline(l).Exposure.Limits
		at := slices.IndexFunc(groups, func(g derated) bool { return slices.Equal(g.limits, limits) })
		if at < 0 {
			groups = append(groups, derated{limits: limits, worst: c})
			at = len(groups) - 1
		}
		groups[at].wires = append(groups[at].wires, l)
		if c.amps < groups[at].worst.amps {
			groups[at].worst = c
		}
	}
	for _, g := range groups {
		p.reportDeratedBy(g)
	}
}

// deratedAt reports whether what protects a wire in 30 C is too large for it where it lies.
func (p *Pass) deratedAt(l *network.Link) (carried30, bool) {
	place, zone := p.hottestZone(l.Wire)
	o := p.guard().Outline(l)
	if place <= conductor.TableAmbient || o.Capacity.Missing != "" || o.Capacity.Assumed || !areDevices(o.Exposure.Limits) ||
		o.Exposure.IsUnrated() || math.IsInf(o.Exposure.Amps, 1) || o.Exposure.Amps > o.Capacity.Most {
		return carried30{}, false
	}
	there, err := conductor.Ampacity(l.Wire.Gauge, o.Capacity.Class, place)
	if err != nil || there.Amperes <= 0 {
		return carried30{}, false
	}
	amps := there.Amperes * conductor.BundleFactor(o.Capacity.Bundled, o.Nominal)
	c := carried30{wire: l, where: heated{place: place, zone: zone}, amps: amps, most: o.Capacity.Most * amps / o.Capacity.Amps, rated: o.Exposure.Amps}
	if len(o.Exposure.Limits) > 1 {
		c.most = max(c.most, strainLimit*amps) // as for all of them together in 30 C
	}
	return c, c.rated > c.most
}

func (p *Pass) reportDeratedBy(g derated) {
	w := g.worst
	subjects := append(p.deviceSubjects(g.limits), wireSubjects(g.wires)...)
	f := Finding{
		Subjects: subjects,
		Message: fmt.Sprintf("%s protects %s, %s, in 30 C; it gets %s there and carries %s: %s is the most",
			p.namesOf(g.limits), w.wire.Wire.ID, w.wire.Wire.Gauge, w.where.where(), amps(w.amps), amps(w.most)),
		Figure: Figure{What: "rating of the device", Value: unit.A(w.rated).Any(), Limit: unit.A(math.Round(10*w.most) / 10).Any(), Decides: "ampacity in the heat"},
	}
	if len(g.wires) > 1 {
		f.Message += "; as well " + list(wireSubjects(g.wires)[1:])
	}
	if d := g.limits[0]; p.typical(d, d.Element.Amps) {
		f.Message += unconfirmed
	}
	p.report(f)
}
