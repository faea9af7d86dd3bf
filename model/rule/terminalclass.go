package rule

import (
	"fmt"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var terminalClass = Rule{
	ID: "terminal-class", Title: "A cable is judged hotter than its terminals may be",
	Family: Conductors, Severity: Note,
	About: "Wires are judged by the temperature of their insulation. A terminal that is not marked for more is made for 60 C up to 100 A, and for 75 C above. A note, once a sheet, names the " +
		"wires whose lasting current their insulation carries and such terminals would not. Silent about a wire that is too thin for its insulation.",
	Why: "The heat of a cable flows into the studs at its ends, and they are not made of cable: a moulded contactor base softens and a fuse opens early when a 105 C cable runs at 105 C beside them. " +
		"Cable of a high class is bought to stand heat from outside; to use its whole rating needs terminals that are marked for it.",
	Tell: "Read the temperature on the terminal or in its maker's sheet: 60, 75 or 90 C. Without a mark, take the drive's lasting current for half " +
		"an hour, switch off, and measure the stud at once with a thermometer whose probe is insulated.",
	Blind:  "The markings of terminals are not part of the record: it takes the unmarked case, and says so as a note. Silent where the insulation class is not recorded, and about peaks: they do not last.",
	Bad:    "55 A for long over 10 AWG of 105 C, on studs that nobody has read",
	Good:   "the same over 6 AWG",
	Wrong:  Example{Of: pumpCircuit, But: []string{"wire w3", "wire w3 sw.OUT pump.+ gauge=10AWG insulation=105C length=1m"}},
	Right:  Example{Of: pumpCircuit},
	Basis:  Basis{"a conductor is used at no higher temperature than the lowest rating of its terminals: 60 C up to 100 A and 75 C above, unless they are marked otherwise", "NEC 110.14(C), from memory; the columns are those of 33 CFR 183.425 table 5"},
	Remedy: "read the marking of both terminals; fit a thicker cable where it is lower than the insulation",
	Run:    runTerminalClass,
}

// branchAmps is up to which current the lower of the two temperatures holds: NEC 110.14(C),
// from memory.
const branchAmps = 100

func runTerminalClass(p *Pass) {
	if p.unsound() {
		return
	}
	var subjects []Subject
	var first Finding
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || l.Wire.Gauge.IsZero() {
			continue
		}
		name := basis.TerminalClass
		load := p.currents().Load(l.Wire)
		if load.Amps > branchAmps {
			name = basis.TerminalClassHigh
		}
		most, source := p.limitFrom(name)
		class := l.Wire.Insulation.Degrees()
		if class <= most.SI() {
			continue
		}
		cool, errCool := conductor.Ampacity(l.Wire.Gauge, most.SI(), conductor.TableAmbient)
		own, errOwn := conductor.Ampacity(l.Wire.Gauge, class, conductor.TableAmbient)
		if errCool != nil || errOwn != nil || load.Amps <= cool.Amperes || load.Amps > own.Amperes {
			continue
		}
		if _, fits, _ := p.warms(l); !fits {
			continue
		}
		if len(subjects) == 0 {
			first = Finding{
				Message: fmt.Sprintf("%s, %s, carries %s for long (%s): %s C insulation carries %s, an unmarked terminal of %s only %s",
					l.Wire.ID, l.Wire.Gauge, amps(load.Amps), load.State, number(class), amps(own.Amperes), most, amps(cool.Amperes)),
				State:  load.State,
				Figure: Figure{What: "lasting current", Value: tenths(load.Amps), Limit: unit.A(cool.Amperes).Any(), Decides: source},
			}
		}
		subjects = append(subjects, OfWire(l.Wire.ID))
	}
	if len(subjects) == 0 {
		return
	}
	if len(subjects) > 1 {
		first.Message += "; as well " + list(subjects[1:])
	}
	first.Subjects = subjects
	p.report(first)
}
