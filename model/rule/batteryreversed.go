package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var batteryReversed = Rule{
	ID: "battery-reversed", Title: "A battery stands against its string",
	Family: Polarity, Severity: Danger,
	About: "Follows each string of batteries from end to end and compares the direction of every battery with that of " +
		"the string. Colours are not looked at.",
	Why: "In a string each battery adds its voltage to the last. One that stands the wrong way round takes its own off and that of the one that is " +
		"missing as well: eight of 6 V give 36 V instead of 48 V. Worse, the others push the whole current of the drive into it the charging way, " +
		"until it gasses, heats and bursts; and the charger drains it, turns its polarity in the end and, as it sees too little voltage, charges " +
		"the sound ones without end.",
	Tell: "Measure every battery across its own posts and then the string from end to end: the sum of the single readings and the one of " +
		"the string must agree. If the string reads two batteries less than the sum, one is reversed. With the black probe on the " +
		"string's negative end the readings must climb from post to post; where they fall, that battery stands against the others.",
	Blind: "It goes by what is recorded of the posts. A battery whose own polarity has turned, by deep discharge in a string, looks right on " +
		"the sheet: only a meter shows it. In a string of two it cannot tell which of the two is the wrong one and names the one that " +
		"gives less, or the second; a string in which half are turned is taken the way that the greater voltage points.",
	Bad:  "b2+ goes to b3+ and b3- to b4-",
	Good: "b2+ goes to b3- and b3+ to b4-",
	Wrong: Example{Of: fourBatteries, But: []string{
		"wire j2", "wire j2 b2.+ b3.+ gauge=4AWG insulation=105C length=250mm",
		"wire j3", "wire j3 b3.- b4.- gauge=4AWG insulation=105C length=250mm"}},
	Right:  Example{Of: fourBatteries},
	Upsets: []string{"under-voltage", "does-not-drive", "starved", "coil-marginal", "device-too-slow"},
	Basis:  Basis{"a reversed battery takes twice its voltage off the string and is charged by the others, with all that the drive takes", Physics},
	Remedy: "take the pack out of circuit, test and charge the reversed battery by itself, then swap its two jumpers",
	Run:    runBatteryReversed,
}

func runBatteryReversed(p *Pass) {
	for _, s := range p.Net.Strings() {
		for _, cell := range s.Cells {
			if cell.Reversed {
				p.report(Finding{
					Message: fmt.Sprintf("%s is reversed in a string of %d from %s to %s; the string adds up to %s",
						cell.Link.Part.ID, len(s.Cells), p.at(s.Low), p.at(s.High), volts(s.Volts)),
					Figure:   p.stringVolts(s),
					Subjects: append([]Subject{OfPart(cell.Link.Part.ID)}, p.jumpers(cell)...),
					Fixes:    p.swapped(cell.Before, cell.After),
				})
			}
		}
	}
}

// jumpers lists the wires on the two terminals of a battery.
func (p *Pass) jumpers(cell network.Cell) []Subject {
	var subjects []Subject
	for _, at := range []network.Node{cell.Before, cell.After} {
		for _, l := range p.Net.LinksAt(at) {
			if l.Kind == network.WireLink {
				subjects = append(subjects, OfWire(l.Wire.ID))
			}
		}
	}
	return subjects
}

// stringVolts is the voltage of a string against what its batteries give if all stand one way.
func (p *Pass) stringVolts(s network.String) Figure {
	sum := 0.0
	for _, cell := range s.Cells {
		v, _ := p.Net.Figure(cell.Link.Part, cell.Link.Element.Volts)
		sum += v
	}
	return Figure{What: "voltage of the string", Value: unit.V(s.Volts).Any(), Limit: unit.V(sum).Any(), Least: true, Decides: "the sum of its batteries"}
}

// fourBatteries is four batteries in a row.
const fourBatteries = `
job system=24V
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
wire j1 b1.+ b2.- gauge=4AWG insulation=105C length=250mm
wire j2 b2.+ b3.- gauge=4AWG insulation=105C length=250mm
wire j3 b3.+ b4.- gauge=4AWG insulation=105C length=250mm
`
