package rule

import (
	"fmt"

	"example.com/lugbook/model"
)

var starvedLoad = Rule{
	ID: "starved", Title: "A device pulls its own voltage down and does not work",
	Family: Chain, Severity: Fault,
	About: "Speaks if a load or a reducer would work at the voltage that it finds, and by its own current pulls that below what it needs: " +
		"it hangs behind a resistance, a corroded joint or another load. Named with the first state in which it does. A drive behind an " +
		"open contactor is told by does-not-drive.",
	Bad:    "a 12 V radio is fed through the filament of a lamp",
	Good:   "the radio has a feed of its own",
	Basis:  Basis{"behind too much resistance a meter without load reads full voltage while the device gets too little", Physics},
	Remedy: "measure under load and find the resistance: joint, switch, thin wire, or a load in series",
	Run:    runStarvedLoad,
}

func runStarvedLoad(p *Pass) {
	if p.unsound() {
		return
	}
	told := map[model.PartID]bool{}
	for _, s := range p.solved() {
		for i := range p.Net.Links() {
			l := &p.Net.Links()[i]
			if l.Part == nil || told[l.Part.ID] || !s.solution.Starved(l) || p.isDriveLoad(l) {
				continue
			}
			told[l.Part.ID] = true
			left, _ := s.solution.Voltage(l.A, l.B)
			message := fmt.Sprintf("%s finds %s (%s) and pulls that down by its own current", l.Part.ID, volts(left), s.state.Name)
			if least := p.Net.KnownFigure(l.Part, leastRating); least.OK {
				message += fmt.Sprintf(", below the %s that it needs", volts(least.Value))
			}
			p.report(Finding{Message: message, Subjects: []Subject{OfPart(l.Part.ID)}})
		}
	}
}
