package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var reducerOutputReversed = Rule{
	ID: "reducer-output-reversed", Title: "The output of a reducer is reversed against its loads",
	Family: Polarity, Severity: Danger,
	About: "Speaks when every device with a polarity on one reducer's output, two or more, sees it the wrong way round. One " +
		"device alone is reported as reversed itself.",
	Bad:    "red.OUT- feeds the fuse block, red.OUT+ the negative bus of the 12 V side",
	Good:   "red.OUT+ feeds the fuse block, red.OUT- the negative bus of the 12 V side",
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
