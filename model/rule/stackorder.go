package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

var stackOrder = Rule{
	ID: "stack-order", Title: "A smaller lug lies under a larger one",
	Family: Studs, Severity: Fault,
	About: "Looks at the order of the lugs on each stud, counted from the seat outward: the largest conductor touches the terminal, and none " +
		"is larger than the one under it. Silent where all conductors are of one size. An order that is not " +
		"recorded is a note where it matters.",
	Bad:  "on sol.L1 the 16 AWG lug touches the seat and the 2 AWG lug lies on it",
	Good: "on sol.L1 the 2 AWG lug touches the seat and the 16 AWG lug lies on it",
	Basis: Basis{"the seat carries the sum of all currents, so the largest lug has the largest face on it, and a small lug under a large one " +
		"tilts it; current goes through the faces of the lugs and not through the stud (FAA AC 43.13-1B 11-174)", Practice},
	Remedy: "take the stack off and put it back largest first; the ready-made edit records that order",
	Run:    runStackOrder,
}

func runStackOrder(p *Pass) {
	for _, s := range p.studs() {
		if len(s.wires) < 2 {
			continue
		}
		sized, unsized := s.bySize()
		switch {
		case len(unsized) > 0 && s.known:
			p.missing(Gap{Datum: "the gauge", Field: "gauge", Decides: "whether the largest lug touches " + s.at.String(), Worst: Danger, Subjects: idSubjects(unsized)})
		case len(unsized) == 0 && sized[0].Gauge.Compare(sized[len(sized)-1].Gauge) == 0:
			continue
		case !s.known:
			p.missing(Gap{Datum: "the order of the lugs", Field: "stack", Decides: "whether the largest touches the terminal", Worst: Fault, Subjects: []Subject{OfTerminal(s.at)}})
		}
		p.judgeOrder(s)
	}
}

// judgeOrder reports the first lug that lies under a larger one. Lugs of unknown size
// are passed over.
func (p *Pass) judgeOrder(s stud) {
	if !s.known {
		return
	}
	var below *model.Wire
	for _, w := range s.wires {
		if w.Gauge.IsZero() {
			continue
		}
		if below != nil && w.Gauge.Compare(below.Gauge) > 0 {
			p.report(Finding{
				Message: fmt.Sprintf("on %s %s, %s, lies under %s, %s; position %d counted from the seat",
					s.at, below.ID, below.Gauge, w.ID, w.Gauge, slices.Index(s.wires, below)+1),
				Subjects: []Subject{OfTerminal(s.at), OfWire(below.ID), OfWire(w.ID)},
				Fixes:    []edit.Edit{edit.Restack{Sheet: p.Sheet.Name, At: s.at, Order: s.largestFirst()}},
			})
			return
		}
		below = w
	}
}

// bySize parts the wires into those of known size, largest first, and the others.
func (s stud) bySize() (sized []*model.Wire, unsized []model.WireID) {
	for _, w := range s.wires {
		if w.Gauge.IsZero() {
			unsized = append(unsized, w.ID)
		} else {
			sized = append(sized, w)
		}
	}
	slices.SortStableFunc(sized, func(a, b *model.Wire) int { return b.Gauge.Compare(a.Gauge) })
	return sized, unsized
}

// largestFirst is the order that the rule wants: wires of equal size keep theirs, wires
// of unknown size go outermost.
func (s stud) largestFirst() []model.WireID {
	sized, unsized := s.bySize()
	var order []model.WireID
	for _, w := range sized {
		order = append(order, w.ID)
	}
	return append(order, unsized...)
}

func idSubjects(ids []model.WireID) []Subject {
	var subjects []Subject
	for _, id := range ids {
		subjects = append(subjects, OfWire(id))
	}
	return subjects
}
