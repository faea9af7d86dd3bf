package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

var noRest = Rule{
	ID: "no-rest", Title: "Something chatters",
	Family: Chain, Severity: Fault,
	About: "Computes every state of the controls until nothing moves any more, and speaks if something keeps switching for ever, such as " +
		"a relay whose own contact breaks its coil, or if where it comes to rest is a race between two.",
	Why: "A relay that takes away its own feed falls, and by falling feeds itself again: it buzzes ten to fifty times a second. Its contacts burn, what it feeds flickers, " +
		"a contactor that does so welds. With two relays that each wait for the other the one that is quicker wins, on a cold day one, on a warm day the other.",
	Tell: "You hear it: a buzz at the relay, a rattle at the contactor. Hold the coil's feed by hand with a fused test lead: if it stays quiet then, " +
		"its own contact or its voltage drop is in the loop.",
	Blind: "The time that a relay takes is not computed, only whether there is a rest. A chatter that comes from a battery that sags under the contactor's load is told where the " +
		"battery's resistance is recorded. A state whose rest is not found is judged by no other rule.",
	Bad:    "the coil of a relay is fed through the relay's own normally closed contact",
	Good:   "the coil is fed from the key",
	Wrong:  Example{Of: selfFeeding, But: []string{"wire k3", "wire k3 r.87a r.86 gauge=16AWG insulation=105C length=50mm"}},
	Right:  Example{Of: selfFeeding},
	Basis:  Basis{"a relay that breaks its own coil buzzes, burns its contacts and takes what it feeds on and off", Physics},
	Remedy: "feed the coil from where its own contact has no part in it",
	Run:    runNoRest,
}

// selfFeeding is a relay that a switch feeds.
const selfFeeding = `
job system=12V
part b1 lead-battery-12v
part fu fuse-inline fuse-rating=5A interrupting-rating=5000A
part r relay pull-in-voltage=7V clamp-voltage=40V
wire k1 b1.+ fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out r.30 gauge=16AWG insulation=105C length=1m
wire k3 fu.out r.86 gauge=16AWG insulation=105C length=1m
wire k4 r.85 b1.- gauge=16AWG insulation=105C length=1m
at b1.+ cover=fitted
`

func runNoRest(p *Pass) {
	var order []string
	states := map[string][]string{}
	moving := map[string][]model.PartID{}
	for _, chatter := range p.restless() {
		var ids []model.PartID
		for _, l := range chatter.Links {
			if !slices.Contains(ids, l.Part.ID) {
				ids = append(ids, l.Part.ID)
			}
		}
		key := fmt.Sprint(ids)
		if states[key] == nil {
			order = append(order, key)
		}
		states[key] = append(states[key], chatter.State)
		moving[key] = ids
	}
	for _, key := range order {
		var subjects []Subject
		for _, id := range moving[key] {
			subjects = append(subjects, OfPart(id))
		}
		if len(subjects) == 0 {
			continue
		}
		p.report(Finding{
			Message:  fmt.Sprintf("%s keeps switching in the state %s", list(subjects), strings.Join(states[key], ", ")),
			Subjects: subjects,
		})
	}
}
