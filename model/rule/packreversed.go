package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var packReversed = Rule{
	ID: "pack-reversed", Title: "The whole pack is connected the wrong way round",
	Family: Polarity, Severity: Danger,
	About: "Speaks when every device on the pack that has a polarity, two or more, sees the pack the wrong way round. One " +
		"device alone is reported as reversed itself. Fusing and covers are judged once the pack is the right way round.",
	Bad:    "pack.POS goes to the controller's B- cable and pack.NEG to the contactor",
	Good:   "pack.POS goes to the contactor and pack.NEG to the controller's B-",
	Basis:  Basis{"controllers, chargers and reducers conduct through their capacitors and transistors when reversed, and burn", Physics},
	Remedy: "do not connect it; swap the two main cables at the pack",
	Run:    runPackReversed,
}

func runPackReversed(p *Pass) {
	if !p.survey().packReversed {
		return
	}
	s, _ := p.mainString()
	subjects := stringSubjects(s)
	var devices []Subject
	seen := map[Subject]bool{}
	for _, d := range p.survey().devices {
		if d.verdict == network.Minus && d.by != nil && d.by.String != nil && !seen[OfPart(d.link.Part.ID)] {
			seen[OfPart(d.link.Part.ID)] = true
			devices = append(devices, OfPart(d.link.Part.ID))
		}
	}
	p.report(Finding{
		Message:  fmt.Sprintf("%s is reversed against the cart: %s all see %s as positive", list(subjects), list(devices), p.at(s.Low)),
		Subjects: append(subjects, devices...),
	})
}
