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
	Bad:    "the coil of a relay is fed through the relay's own normally closed contact",
	Good:   "the coil is fed from the key",
	Basis:  Basis{"a relay that breaks its own coil buzzes, burns its contacts and takes what it feeds on and off", Physics},
	Remedy: "feed the coil from where its own contact has no part in it",
	Run:    runNoRest,
}

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
