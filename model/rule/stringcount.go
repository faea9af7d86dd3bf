package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var stringCount = Rule{
	ID: "string-count", Title: "The batteries do not add up to the system voltage",
	Family: Voltage, Severity: Fault,
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
		p.report(Finding{
			Severity: Note,
			Message:  "the system voltage of the job is not recorded; it decides whether the batteries add up to it",
			Subjects: stringSubjects(s),
			Remedy:   "read it off the controller or the charger and record it with the job",
		})
		return
	}
	sum, each, alike := 0.0, 0.0, true
	for _, cell := range s.Cells {
		v := p.Net.KnownFigure(cell.Link.Part, network.NominalRating)
		if !v.OK {
			p.missing(Gap{Datum: "the nominal voltage", Field: "voltage", Decides: "whether the batteries add up to the system voltage", Worst: Fault, Subjects: []Subject{OfPart(cell.Link.Part.ID)}})
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
	if at, open := p.openPole(); off && open {
		p.missing(Gap{Datum: "the jumper", Decides: "whether the batteries add up to the system voltage", Worst: Fault, Subjects: []Subject{OfTerminal(at)}})
		return
	}
	if off {
		p.report(Finding{
			Message:  fmt.Sprintf("%d in series, %s nominal, on a cart of %s", len(s.Cells), volts(sum), volts(system)),
			Subjects: stringSubjects(s),
		})
	}
}

// openPole is a terminal of a battery with no wire on it: the strings are not all
// recorded yet.
func (p *Pass) openPole() (model.TerminalRef, bool) {
	for _, s := range p.Net.Strings() {
		for _, cell := range s.Cells {
			for _, name := range cell.Link.Element.Between {
				at := model.TerminalRef{Part: cell.Link.Part.ID, Name: name}
				if len(p.Sheet.Landed(at)) == 0 {
					return at, true
				}
			}
		}
	}
	return model.TerminalRef{}, false
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
