package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
)

var unsupported = Rule{
	ID: "unsupported", Title: "A wire hangs too far between its supports",
	Family: Mounting, Severity: Caution,
	About: "Compares the longest stretch of a wire between two clips or ties, as recorded, with 18 in, and for a cable on a battery terminal with 36 in, unless the job has other limits. Up to 24 in it is a note. " +
		"Asks for the stretch of traction and charging cables that are longer than that.",
	Why: "A cable that hangs swings, and all of its swing ends at its lugs: the strands behind the crimp break one by one, and the nut turns. What hangs low catches on a stump; what hangs beside " +
		"an edge saws through its jacket.",
	Tell:  "Put a hand between two ties and lift: half an inch of slack is right. The span of a hand from thumb to little finger is about 9 in: two spans are the most.",
	Blind: "It repeats what was recorded: the longest stretch, not where it is. Thin wires of which nothing is recorded are not asked for; in a loom they are held by it.",
	Bad:   "a charge lead that hangs free for 0.8 m", Good: "clipped every 0.4 m",
	Wrong:  Example{Of: clipped, But: []string{"wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=800mm"}},
	Right:  Example{Of: clipped},
	Basis:  Basis{"conductors are supported at least every 18 in, battery cables within 36 in of their terminal; two other rules have 24 in", "ABYC E-11 11.14.6.8; FAA AC 43.13-1B 11-96 and 46 CFR 183.340(b)(4) for 24 in"},
	Remedy: "add clips or ties with a soft lining, and leave half an inch of slack between them",
	Run:    runUnsupported,
}

// clipped is a charger with its leads clipped to the tray.
const clipped = `
part pack lithium-pack-16
part chg charger-onboard-48v
part fu2 fuse-cartridge fuse-rating=30A
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=400mm
wire c2 fu2.out pack.POS gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm supported=400mm
at pack.POS cover=fitted
at fu2.out cover=fitted`

func runUnsupported(p *Pass) {
	var unknown []Subject
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink {
			continue
		}
		limit, source := p.limitFrom(p.supportLimit(l))
		if l.Wire.Supported.IsZero() {
			if metres, known := p.Net.Length(l.Wire); known && metres > limit.SI() && p.isHeavy(l) {
				unknown = append(unknown, OfWire(l.Wire.ID))
			}
			continue
		}
		hangs := l.Wire.Supported.Metres()
		if hangs <= limit.SI() {
			continue
		}
		f := Finding{
			Subjects: []Subject{OfWire(l.Wire.ID)},
			Message:  fmt.Sprintf("%s hangs free for %s; %s is the most", l.Wire.ID, metres(hangs), limit),
			Figure:   Figure{What: "stretch between supports", Value: l.Wire.Supported.Any(), Limit: limit, Decides: source},
		}
		if widest, elsewhere := p.limitFrom(basis.SupportElsewhere); hangs <= widest.SI() {
			f.Severity = Note
			f.Message += fmt.Sprintf(", %s by %s", widest, elsewhere)
		}
		p.report(f)
	}
	if len(unknown) > 0 {
		p.missing(Gap{Datum: "the longest stretch between supports", Field: "supported", Decides: "whether the cable hangs too far", Worst: Caution, Quiet: true, Subjects: unknown})
	}
}

// supportLimit is the limit for a wire: that of battery cables if it lands on a battery or pack.
func (p *Pass) supportLimit(l *network.Link) string {
	for _, at := range []network.Node{l.A, l.B} {
		if d := p.Net.DefinitionOf(p.Net.Point(at).At); d != nil && d.Family == model.Storage {
			return basis.SupportAtBattery
		}
	}
	return basis.SupportInterval
}

// isHeavy reports whether a wire is a cable of the traction path or of the charger: thick, live
// and long enough to be worth asking how it is held.
func (p *Pass) isHeavy(l *network.Link) bool {
	if l.Wire.Serves != "" {
		return l.Wire.Serves == model.Traction || l.Wire.Serves == model.Charging
	}
	charging := func(at network.Node) bool {
		t := p.Net.TerminalDef(p.Net.Point(at).At)
		return t != nil && t.Serves == model.Charging && t.Pole != ""
	}
	return charging(l.A) || charging(l.B) || p.traction(l)
}

// longCables lists the heavy cables that run further than the interval of supports.
func (p *Pass) longCables() []*network.Link {
	var list []*network.Link
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || !p.isHeavy(l) {
			continue
		}
		if metres, known := p.Net.Length(l.Wire); known && metres > p.limit(basis.SupportInterval) {
			list = append(list, l)
		}
	}
	return list
}
