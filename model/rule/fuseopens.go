package rule

import (
	"fmt"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var fuseOpens = Rule{
	ID: "fuse-opens", Title: "A fuse opens in normal use",
	Family: Protection, Severity: Fault,
	About: "Solves every state, with everything else off and with everything on, and speaks of each fuse and breaker that then has more than " +
		"135 % of its rating for long: what it feeds takes too much for it, or a switch or contact closes onto a short.",
	Why: "A fuse is chosen by its wire, and the wire by its load; a fuse below its load opens on the first hill or an hour into a charge. A short behind " +
		"a switch is found by nobody until the switch is thrown: then the fuse opens, and the next larger one from the box is what burns the wire.",
	Tell: "Take the current behind the fuse with a clamp meter for DC in the state that is named, and read the number on the fuse. If it opens at " +
		"once, take it out, switch on, and measure volts DC from the fuse's load side to negative. Only if that is 0 V go over to ohms: what the " +
		"two probes read on each other is a short; a motor or a cold lamp has some tenths of an ohm more.",
	Blind: "Peaks of a drive count nothing, for no fuse opens on them at once, and neither does the inrush of a lamp or motor. Between 100 and 135 % a fuse ages and is " +
		"no finding here. Silent while the pack itself is misconnected.",
	Bad:    "the return lead of a lamp sits on the lamp's positive",
	Good:   "the lamp returns to the pack's negative through its own lead",
	Wrong:  Example{Of: fusedLamp, But: []string{"wire n1", "wire n1 lt.+ pack.NEG gauge=16AWG insulation=105C length=1m"}},
	Right:  Example{Of: fusedLamp},
	Basis:  Basis{"a fuse opens within an hour at 135 % of its rating", "UL 248-14"},
	Remedy: "look for the short behind it if it is many times its rating, else fit a larger fuse if its wire carries that",
	Run:    runFuseOpens,
}

// fusedLamp is a lamp with a switch and a fuse.
const fusedLamp = `part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=5A
part sw switch
part lt lamp-work-48v
wire f1 pack.POS fu.in gauge=16AWG insulation=105C length=100mm
wire f2 fu.out sw.IN gauge=16AWG insulation=105C length=1m
wire f3 sw.OUT lt.+ gauge=16AWG insulation=105C length=1m
wire n1 lt.- pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
at fu.in cover=fitted`

// clearlyShort is how many times its rating no label makes up for. Our choice.
const clearlyShort = 4

func runFuseOpens(p *Pass) {
	if p.unsound() {
		return
	}
	worst := p.opening()
	for i := range p.Net.Links() {
		if o, opens := worst[&p.Net.Links()[i]]; opens {
			p.reportOpens(o)
		}
	}
}

// opening is each device that opens in some use, with the most that it has until then; computed
// once.
func (p *Pass) opening() map[*network.Link]opened {
	if p.shared.opening != nil {
		return p.shared.opening
	}
	worst := map[*network.Link]opened{}
	p.shared.opening = worst
	for _, u := range p.inUse() {
		for _, o := range u.opened {
			if o.amps > worst[o.device].amps {
				worst[o.device] = o
			}
		}
	}
	return worst
}

// opensAtOnce reports whether some device has so much in a solution that it opens at once: that
// flows for no time.
func (p *Pass) opensAtOnce(in *network.Solution) bool {
	known, done := p.shared.atOnce[in]
	if !done {
		first := p.firstToOpen(in)
		known = first.device != nil && first.amps > clearlyShort*first.rated.Value
		p.shared.atOnce[in] = known
	}
	return known
}

func (p *Pass) reportOpens(o opened) {
	f := Finding{
		Message:  fmt.Sprintf("%s has %s for long in the state %s, and opens", p.nameOf(o.device), amps(o.amps), o.in.state.Name),
		Figure:   Figure{What: "current", Value: unit.A(o.amps).Any(), Limit: unit.A(opensWithin * o.rated.Value).Any(), Decides: "135 % of its rating"},
		Subjects: []Subject{p.deviceSubject(o.device)},
	}
	if fix, ok := p.largerFuse(o.device, o.amps); ok && o.amps < clearlyShort*o.rated.Value {
		f.Fixes = []edit.Edit{fix}
	}
	if o.in.derived {
		f.State = o.in.state.Name
	}
	if o.rated.IsTypical() && o.amps < clearlyShort*o.rated.Value {
		f.Severity = Caution
		f.Message += unconfirmed
	}
	p.report(f)
}
