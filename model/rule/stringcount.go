package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model/network"
)

var stringCount = Rule{
	ID: "string-count", Title: "The batteries do not add up to the system voltage",
	Family: Polarity, Severity: Fault,
	About: "Compares the sum of the nominal voltages of the main string with the system voltage of the job. A lithium pack " +
		"may lie up to 10 % above or below, for its cells do not come in steps of 12 V.",
	Bad:    "seven 6 V batteries on a 48 V cart",
	Good:   "eight 6 V batteries, or one pack of 51.2 V, on a 48 V cart",
	Basis:  Basis{"controller, charger and meter are made for one system voltage", Practice},
	Remedy: "count the batteries and compare with the controller's label; correct the record or the string",
	Run:    runStringCount,
}

// systemTolerance is how far a string may lie from the system voltage: 51.2 V on a
// 48 V cart is 6.7 %, one of ten batteries missing is 10 %. Our choice.
const systemTolerance = 0.0999

func runStringCount(p *Pass) {
	s, ok := p.mainString()
	if !ok || len(p.rings()) > 0 {
		return
	}
	if p.Job.System.IsZero() {
		p.missing("the system voltage", "whether the batteries add up to it", stringSubjects(s)...)
		return
	}
	sum, each, alike := 0.0, 0.0, true
	for _, cell := range s.Cells {
		v := p.Net.KnownFigure(cell.Link.Part, network.NominalRating)
		if !v.OK {
			p.missing("the nominal voltage", "whether the batteries add up to the system voltage", OfPart(cell.Link.Part.ID))
			return
		}
		alike = alike && (each == 0 || each == v.Value)
		each = v.Value
		sum += v.Value
	}
	system := p.Job.System.Volts()
	off := math.Abs(sum-system) > systemTolerance*system
	if want := math.Round(system / each); alike && want*each == system {
		off = want != float64(len(s.Cells))
	}
	if off {
		p.report(Finding{
			Message:  fmt.Sprintf("%d in series, %s nominal, on a cart of %s", len(s.Cells), volts(sum), volts(system)),
			Subjects: stringSubjects(s),
		})
	}
}

// mainString is the string of the highest voltage; false if the sheet has no source.
func (p *Pass) mainString() (network.String, bool) {
	var main network.String
	for _, s := range p.Net.Strings() {
		if main.Cells == nil || s.Volts > main.Volts {
			main = s
		}
	}
	return main, main.Cells != nil
}

func stringSubjects(s network.String) []Subject {
	var subjects []Subject
	for _, cell := range s.Cells {
		subjects = append(subjects, OfPart(cell.Link.Part.ID))
	}
	return subjects
}
