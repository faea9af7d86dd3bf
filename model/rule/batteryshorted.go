package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model/network"
)

var batteryShorted = Rule{
	ID: "battery-shorted", Title: "A source is short-circuited by metal",
	Family: Polarity, Severity: Danger,
	About: "Finds a battery or pack whose two terminals are joined by wires, bars, fuses or closed isolators, and strings " +
		"that close on themselves with nothing between. Fusing and covers are judged once such a ring is open.",
	Why: "A battery has a few thousandths of an ohm inside, so metal from post to post carries thousands of amperes until something melts: the wire " +
		"glows, its insulation burns, the post runs off as lead or the cells vent. A fuse opens only if it lies in the ring, and as a rule none " +
		"does. Most such rings are made by one jumper that lands on two posts of the same battery, or by a second string laid in the wrong way " +
		"round, where the sum of both voltages drives the current.",
	Tell: "Leave the two ends of the string off the cart. Before the last jumper goes on, hold the meter on volts DC between the lug and the post " +
		"that it is to go to. What is right shows next to nothing; a reading of a battery's voltage or of a whole string means that the lug closes " +
		"a ring. Never find out by touching: a spark tells too late.",
	Blind: "It sees what the sheet says of metal, fuses and isolators. A short inside a battery or pack, a tool, or a strand of cable across " +
		"two posts is on no sheet, and a ring through a contactor or a load is no ring of metal. Strings side by side with the same " +
		"count are taken for a parallel pair and not for a ring.",
	Bad:    "both lugs of a jumper land on b1+ and b1-",
	Good:   "the jumper joins b1+ with b2-",
	Wrong:  Example{Of: twoBatteries, But: []string{"wire j1", "wire j1 b1.+ b1.- gauge=4AWG insulation=105C length=250mm"}},
	Right:  Example{Of: twoBatteries},
	Basis:  Basis{"the fault current of a battery melts a wrench; nothing limits it but its own resistance", Physics},
	Remedy: "do not connect it; find the wire that joins the two poles and move it",
	Run:    runBatteryShorted,

	Upsets: []string{"string-count", "under-voltage", "does-not-drive", "starved", "coil-marginal"},
}

func runBatteryShorted(p *Pass) {
	for _, l := range p.Net.Shorted() {
		f := Finding{
			Message:  fmt.Sprintf("%s and %s are joined by metal: %s is short-circuited", p.at(l.A), p.at(l.B), l.Part.ID),
			Subjects: []Subject{OfPart(l.Part.ID)},
		}
		ring := p.Net.Walk([]network.Node{l.A}, func(w *network.Link, _ network.Node) bool { return w.Firm() })
		f.Subjects = append(f.Subjects, wiresOf(ring.Path(l.B))...)
		p.report(f)
	}
	for _, s := range p.rings() {
		subjects := stringSubjects(s)
		p.report(Finding{
			Message:  fmt.Sprintf("%s form a closed ring of %s with nothing between", list(subjects), volts(s.Volts)),
			Subjects: subjects,
		})
	}
}

// rings lists the strings that close on themselves.
func (p *Pass) rings() []network.String {
	return slices.DeleteFunc(p.Net.Strings(), func(s network.String) bool {
		return len(s.Cells) < 2 || s.Volts == 0 || !p.firm().Same(s.Low, s.High)
	})
}

// misconnected reports whether the pack itself is connected so wrongly that fuses and
// covers cannot be judged yet.
func (p *Pass) misconnected() bool { return p.survey().packReversed || len(p.rings()) > 0 }

// twoBatteries is two batteries in a row.
const twoBatteries = `
job system=12V
part b1 lead-battery-6v
part b2 lead-battery-6v
wire j1 b1.+ b2.- gauge=4AWG insulation=105C length=250mm
at b1.+ cover=fitted
at b2.- cover=fitted
at b2.+ cover=fitted
`
