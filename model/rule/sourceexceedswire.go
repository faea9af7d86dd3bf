package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
)

var sourceExceedsWire = Rule{
	ID: "source-exceeds-wire", Title: "A source that limits itself gives more than its wire carries",
	Family: Protection, Severity: Caution,
	About: "A charger or reducer limits its own current, so its output needs no fuse as long as the wire carries that current. " +
		"Speaks if it does not, to 150 %.",
	Bad:  "a 25 A charger feeds its charge fuse at the pack over 18 AWG",
	Good: "a 25 A charger feeds its charge fuse at the pack over 10 AWG",
	Basis: Basis{"a self-limiting source needs no device at its output; its conductor must carry what it gives",
		"33 CFR 183.455(c) and 183.460, the latter from memory"},
	Remedy: "fit a thicker wire, or a fuse at the source's end of it",
	Run:    runSourceExceedsWire,
}

func runSourceExceedsWire(p *Pass) {
	f := p.fusing()
	for i := range f.entries {
		e := &f.entries[i]
		if len(e.Limits) == 0 || areDevices(e.Limits) {
			continue
		}
		var links []*network.Link
		worst := loaded{}
		for _, w := range f.loadedBy(e, over) {
			links = append(links, w.wire)
			if worst.wire == nil || w.carries.amps < worst.carries.amps {
				worst = w
			}
		}
		if worst.wire == nil {
			continue
		}
		p.report(Finding{
			Message: fmt.Sprintf("%s can feed %s into %s, %s, %s, with no device between",
				list(partsOf(e.Limits)), amps(e.Amps), worst.wire.Wire.ID, worst.wire.Wire.Gauge, worst.carries),
			Subjects: append(partsOf(e.Limits), wireSubjects(links)...),
		})
	}
}
