package rule

import (
	"fmt"
	"strings"
)

var packCurrent = Rule{
	ID: "pack-current", Title: "More current is asked of the pack than it gives",
	Family: Packs, Severity: Fault,
	About: "Compares what flows at rest, while cruising, driving for long and for seconds and braking with the pack's limits. " +
		"One finding for each pack, with each limit that is exceeded; a caution if typical figures decide.",
	Bad:    "a controller of 400 A peak on a pack whose BMS opens at 300 A",
	Good:   "the controller's peak is set to 280 A",
	Basis:  Basis{"a BMS opens on more than its limit, in a hill start or while braking", "the maker's limits; common practice, no source"},
	Remedy: "limit the controller's current to what the pack gives, or fit a pack that gives more",
	Run:    runPackCurrent,
}

func runPackCurrent(p *Pass) {
	if p.unsound() {
		return
	}
	for _, r := range p.support().Ranges {
		var words []string
		sure := false
		for _, row := range r.Rows {
			if row.Limit == 0 || row.Most <= row.Limit || row.What == "charging" {
				continue // what a charger gives is judged with the charger
			}
			words = append(words, fmt.Sprintf("%s %s against %s %s", row.What, amps(row.Most), amps(row.Limit), row.Of))
			sure = sure || !row.Vague
		}
		if len(words) == 0 {
			continue
		}
		f := Finding{
			Message:  fmt.Sprintf("%s: %s", r.Pack.Name, strings.Join(words, ", ")),
			Subjects: append([]Subject{OfPart(r.Pack.Name)}, p.driveParts()...),
		}
		if !sure {
			f.Severity = Caution
			f.Message += unconfirmed
		}
		p.report(f)
	}
}
