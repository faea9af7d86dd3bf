package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var stringCount = Rule{
	ID: "string-count", Title: "The batteries do not add up to the system voltage",
	Family: Voltage, Severity: Fault,
	About: "Compares the sum of the nominal voltages of the main string with the system voltage of the job. A lithium pack " +
		"may lie up to 10 % above or below, for its cells do not come in steps of 12 V.",
	Why: "Controller, contactor, charger and meter are made for one system voltage. With a battery too few the cart crawls, its contactor chatters and the " +
		"charger, which knows only its own end voltage, drives the rest far beyond theirs. With one too many the charger never fills the string and the " +
		"controller meets a voltage that its capacitors may not stand. It happens when one battery is taken out for good, or when a pack of another class " +
		"is fitted.",
	Tell: "Count the batteries and their filler caps: each cap is a cell of about 2.1 V. Measure from the first negative to the last positive: a " +
		"charged and rested 48 V lead string reads 50 to 52 V, one of 16 lithium cells 51 to 54 V. Compare with the label of the controller.",
	Blind: "It compares what is recorded: a wrong system voltage in the job looks like a wrong string. A string that is not joined up yet is a question and no " +
		"finding. Of several strings it judges the one of the highest voltage. What a string really gives only the meter tells.",
	Bad:  "three 12 V batteries on a 48 V cart",
	Good: "four 12 V batteries on a 48 V cart",
	Wrong: Example{Of: fourOfTwelve, But: []string{"part b4", "", "wire j3", "", "wire c1", "wire c1 b3.+ fu.in gauge=10AWG insulation=105C length=100mm",
		"at b3.+", "at b3.+ cover=fitted", "wire c2", "wire c2 fu.out vm.+ gauge=18AWG insulation=105C length=1m"}},
	Right:    Example{Of: fourOfTwelve},
	Explains: []string{"charger-mismatch"},
	Upsets:   []string{"under-voltage", "over-voltage", "does-not-drive", "starved", "coil-marginal", "charges-nothing", "pre-charge", "not-made-for-dc", "contact-overload"},
	Basis:    Basis{"controller, charger and meter are made for one system voltage", Practice},
	Remedy:   "count the batteries and compare with the controller's label; correct the record or the string",
	Run:      runStringCount,
}

// rounding is the share by which two computed figures count as equal.
const rounding = 1e-9

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
	off := math.Abs(sum-system) >= (1-rounding)*p.limit(basis.SystemVoltage)*system
	if want := math.Round(system / each); alike && want*each == system {
		off = want != float64(len(s.Cells))
	}
	if at, open := p.openPole(); off && open {
		p.missing(Gap{Datum: "the jumper", Decides: "whether the batteries add up to the system voltage", Worst: Fault, Subjects: []Subject{OfTerminal(at)}})
		return
	}
	if off {
		p.report(Finding{
			Message: fmt.Sprintf("%d in series, %s nominal, on a cart of %s", len(s.Cells), volts(sum), volts(system)),
			Figure: Figure{What: "nominal voltage of the string", Value: unit.V(sum).Any(), Limit: p.Job.System.Any(), Least: sum < system,
				Decides: "the system voltage of the job"},
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

// fourOfTwelve is a string of four batteries with a voltmeter on it.
const fourOfTwelve = `
part b1 lead-battery-12v
part b2 lead-battery-12v
part b3 lead-battery-12v
part b4 lead-battery-12v
part fu fuse-inline-80v fuse-rating=2A interrupting-rating=10kA
part vm voltmeter
wire j1 b1.+ b2.- gauge=4AWG insulation=105C length=300mm
wire j2 b2.+ b3.- gauge=4AWG insulation=105C length=300mm
wire j3 b3.+ b4.- gauge=4AWG insulation=105C length=300mm
wire c1 b4.+ fu.in gauge=10AWG insulation=105C length=100mm
wire c2 fu.out vm.+ gauge=18AWG insulation=105C length=1m
wire c3 vm.- b1.- gauge=18AWG insulation=105C length=1m
at b3.+ cover=fitted
`
