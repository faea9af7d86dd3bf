package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var batteryReversed = Rule{
	ID: "battery-reversed", Title: "A battery stands against its string",
	Family: Polarity, Severity: Danger,
	About: "Follows each string of batteries from end to end and compares the direction of every battery with that of " +
		"the string. Colours are not looked at.",
	Bad:    "b3- goes to b2- and b3+ to b4+ in a string of eight",
	Good:   "b2+ goes to b3- and b3+ to b4-",
	Basis:  Basis{"a reversed battery takes twice its voltage off the string and is charged backwards while the cart drives", Physics},
	Remedy: "take the pack out of circuit, then swap the two jumpers on the reversed battery",
	Run:    runBatteryReversed,
}

func runBatteryReversed(p *Pass) {
	for _, s := range p.Net.Strings() {
		for _, cell := range s.Cells {
			if cell.Reversed {
				p.report(Finding{
					Message: fmt.Sprintf("%s is reversed in a string of %d from %s to %s; the string adds up to %s",
						cell.Link.Part.ID, len(s.Cells), p.at(s.Low), p.at(s.High), volts(s.Volts)),
					Subjects: append([]Subject{OfPart(cell.Link.Part.ID)}, p.jumpers(cell)...),
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
