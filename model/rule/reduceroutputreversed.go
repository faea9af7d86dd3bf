package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var reducerOutputReversed = Rule{
	ID: "reducer-output-reversed", Title: "The output of a reducer is reversed against its loads",
	Family: Polarity, Severity: Danger,
	About: "Speaks when every device with a polarity on one reducer's output, two or more, sees it the wrong way round. One " +
		"device alone is reported as reversed itself.",
	Why: "Radios, LED lamps and sockets carry a diode across their supply that is meant to conduct if it comes the wrong way round, so that a fuse blows " +
		"before the board does. With the output of the reducer turned, all of them conduct at once and the reducer feeds a short. What has no " +
		"such diode is destroyed. Filament lamps and horns go on working and hide the mistake.",
	Tell: "With everything on the 12 V side unplugged and its fuses drawn, measure at the fuse block's feed stud against its negative bus: plus 12 V is " +
		"right, minus 12 V is this mistake.",
	Blind: "It takes two devices with a polarity to blame the reducer; with one it is the device that is called reversed, and with filament lamps alone " +
		"nothing tells. A reducer whose own marks are wrong can only be measured.",
	Bad:  "red.OUT- feeds the fuse block, red.OUT+ the negative bus of the 12 V side",
	Good: "red.OUT+ feeds the fuse block, red.OUT- the negative bus of the 12 V side",
	Wrong: Example{Of: packAndReducer, But: []string{"wire a1", "wire a1 red.OUT- fb.IN gauge=10AWG insulation=105C length=1m",
		"wire a2", "wire a2 red.OUT+ fb.NEG gauge=10AWG insulation=105C length=1m"}},
	Right:  Example{Of: packAndReducer},
	Basis:  Basis{"everything with a protective diode on the 12 V side becomes a short across the reducer", Physics},
	Remedy: "swap the two output leads of the reducer",
	Run:    runReducerOutputReversed,
}

func runReducerOutputReversed(p *Pass) {
	told := map[*network.Link]bool{}
	for _, d := range p.survey().devices {
		if d.by == nil || !p.survey().outReversed[d.by.Link] || told[d.by.Link] {
			continue
		}
		told[d.by.Link] = true
		devices := p.reversedOn(d.by.Link)
		p.report(Finding{
			Message: fmt.Sprintf("the output of %s is reversed: %s all have their positive side on %s",
				d.by.Link.Part.ID, list(devices), p.at(d.by.Return)),
			Subjects: append([]Subject{OfPart(d.by.Link.Part.ID)}, devices...),
			Fixes:    p.swappedOutput(d.by.Link),
		})
	}
}

// reversedOn lists the parts that are reversed on one source, each once.
func (p *Pass) reversedOn(source *network.Link) []Subject {
	var links []*network.Link
	for _, d := range p.survey().devices {
		if d.by != nil && d.by.Link == source && d.verdict == network.Minus {
			links = append(links, d.link)
		}
	}
	return partsOf(links)
}

// swappedOutput is the swap of what lands on the two output terminals of a reducer; none if
// one of them belongs to its input as well.
func (p *Pass) swappedOutput(out *network.Link) []edit.Edit {
	for _, name := range out.Element.Between {
		if slices.Contains(out.Element.Out, name) {
			return nil
		}
	}
	return p.swapped(out.A, out.B)
}
