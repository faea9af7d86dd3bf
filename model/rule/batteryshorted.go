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
	Bad:    "both lugs of a jumper land on b3+ and b3-",
	Good:   "a jumper joins b3+ with b4-",
	Basis:  Basis{"the fault current of a battery melts a wrench; nothing limits it but its own resistance", Physics},
	Remedy: "do not connect it; find the wire that joins the two poles and move it",
	Run:    runBatteryShorted,
}

func runBatteryShorted(p *Pass) {
	for _, l := range p.Net.Shorted() {
		p.report(Finding{
			Message:  fmt.Sprintf("%s and %s are joined by metal: %s is short-circuited", p.at(l.A), p.at(l.B), l.Part.ID),
			Subjects: []Subject{OfPart(l.Part.ID)},
		})
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
