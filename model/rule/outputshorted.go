package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var outputShorted = Rule{
	ID: "output-shorted", Title: "The output of a reducer or charger is shorted",
	Family: Polarity, Severity: Fault,
	About: "Solves every state, with everything else off and with everything on, lets the fuses open that open then, and speaks of each reducer and charger that " +
		"works and has less than 1 V at its output: a switch or contact closes onto a short; or whose two poles metal joins. Names the wires of the ring.",
	Why: "Both limit their own current, so nothing is seen to burn: a reducer of 20 A gives 20 A into the short, for ever, and no fuse of 15 A or 20 A opens " +
		"on that. It switches itself off and on again, gets hot, and everything on its side is dark; a charger shows a fault code or ends its life. It is " +
		"mostly a feed that landed on the negative bus, for on a fuse block both are one screw apart.",
	Tell: "Unplug the output, pull a charger's fuse at the pack, and measure volts DC between the two leads that the output went to, everything " +
		"switched off, then on. Only if both are 0 V go over to ohms: what the two probes read on each other is a short, some tenths of an ohm " +
		"more are cold lamps. With a short, pull the fuses behind it one by one until the reading rises.",
	Blind: "A short inside a lamp or between chafed wires is on no sheet. Where a fuse opens on the short that is told of the fuse. Silent while the pack itself is misconnected, and of " +
		"the small supplies inside a controller.",
	Bad:    "the feed of the fuse block landed on its negative bus",
	Good:   "the feed of the fuse block lands on fb.IN",
	Wrong:  Example{Of: lampSide, But: []string{"wire a1", "wire a1 red.OUT+ fb.NEG gauge=10AWG insulation=105C length=1m"}},
	Right:  Example{Of: lampSide},
	Basis:  Basis{"a source that limits its current holds a short for as long as it is fed", Physics},
	Remedy: "switch it off; find the wire that joins the two poles and move it to where it belongs",
	Run:    runOutputShorted,

	Explains: []string{"charges-nothing"},
	Upsets:   []string{"starved"},
}

// lampSide is a reducer with a lamp on its fuse block.
const lampSide = `
part pack lithium-pack-16
part fu4 fuse-cartridge fuse-rating=15A
part red reducer-isolated
part fb fuse-block-6-neg
part lt lamp-headlight
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.IN- pack.NEG gauge=12AWG insulation=105C length=800mm
wire r4 fu4.out red.WAKE gauge=16AWG insulation=105C length=800mm
wire a1 red.OUT+ fb.IN gauge=10AWG insulation=105C length=1m
wire a2 red.OUT- fb.NEG gauge=10AWG insulation=105C length=1m
wire a3 fb.1 lt.+ gauge=16AWG insulation=105C length=1m
wire a4 lt.- fb.NEG1 gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
at fu4.in cover=fitted
`

// shortedVolts is the voltage in volts below which an output that works is shorted: no device
// works on so little. Our choice.
const shortedVolts = 1

func runOutputShorted(p *Pass) {
	if p.unsound() {
		return
	}
	told := map[*network.Link]bool{}
	for _, u := range p.inUse() {
		for i := range p.Net.Links() {
			l := &p.Net.Links()[i]
			if told[l] || !isOutput(l) {
				continue
			}
			left, known := u.left.Voltage(l.A, l.B)
			if p.metal().Same(l.A, l.B) || known && u.left.On(l) && math.Abs(left) < shortedVolts {
				told[l] = true
				p.reportShorted(l, u)
			}
		}
	}
}

// isOutput reports whether a link is what a reducer or charger gives.
func isOutput(l *network.Link) bool {
	return l.Kind == network.OutputLink && l.Def.Family == model.Supply || l.Is(model.ChargerElement)
}

func (p *Pass) reportShorted(l *network.Link, u use) {
	ring := p.Net.Walk([]network.Node{l.A}, func(x *network.Link, _ network.Node) bool {
		return x.Firm() && !u.isOpen(x) || x.Is(model.ContactElement) && u.left.On(x)
	}).Path(l.B)
	f := Finding{Message: fmt.Sprintf("%s and %s are joined", p.at(l.A), p.at(l.B)), Subjects: []Subject{OfPart(l.Part.ID)}}
	var switches []*network.Link
	for _, x := range ring {
		if x.Is(model.ContactElement) && !x.Firm() {
			switches = append(switches, x)
		}
	}
	if len(switches) > 0 {
		more := ""
		if f.State = u.state.Name; !u.derived {
			f.State, more = "", " with everything on"
		}
		f.Message += fmt.Sprintf(" in the state %s%s, by %s", u.state.Name, more, list(partsOf(switches)))
	}
	f.Message += fmt.Sprintf(": %s gives into a short", l.Part.ID)
	f.Subjects = append(f.Subjects, wiresOf(ring)...)
	p.report(f)
}

// isOpen reports whether a device has opened in a use.
func (u *use) isOpen(l *network.Link) bool {
	for i := range u.opened {
		if u.opened[i].device == l {
			return true
		}
	}
	return false
}
