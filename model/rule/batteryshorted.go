package rule

import "fmt"

var batteryShorted = Rule{
	ID: "battery-shorted", Title: "A source is short-circuited by metal",
	Family: Polarity, Severity: Danger,
	About: "Finds a battery or pack whose two terminals are joined by wires, bars, fuses or closed isolators, and strings " +
		"that close on themselves with nothing between.",
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
	for _, s := range p.Net.Strings() {
		if len(s.Cells) < 2 || !p.firm().Same(s.Low, s.High) || s.Volts == 0 {
			continue
		}
		var subjects []Subject
		for _, cell := range s.Cells {
			subjects = append(subjects, OfPart(cell.Link.Part.ID))
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%s form a closed ring of %s with nothing between", list(subjects), volts(s.Volts)),
			Subjects: subjects,
		})
	}
}
