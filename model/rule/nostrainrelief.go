package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var noStrainRelief = Rule{
	ID: "no-strain-relief", Title: "A pull on a cable goes to its lug",
	Family: Mounting, Severity: Caution,
	About: "Speaks about wires of which somebody recorded that nothing but their ends takes a pull. Asks about long traction and charging cables of which nothing is recorded.",
	Why: "A crimp holds a pull along its axis, once. What is pulled day by day, by a hinged seat, a charge cord or its own weight, frays behind the crimp or turns on its stud, and a nut that has " +
		"turned a quarter does not press any more. The joint warms, and the rest follows.",
	Tell: "Pack off. Take the cable a hand's breadth from the lug and pull: the lug must not move. Open and shut every flap and seat and watch what moves with " +
		"it. At a charge inlet the clamp must grip the jacket and not the conductors.",
	Blind: "It repeats what was recorded, and asks for the rest without a line among the findings.",
	Bad:   "the charge lead hangs on its lug", Good: "a clip beside the lug takes the pull",
	Wrong:  Example{Of: clipped, But: []string{"wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=400mm strain-relief=no"}},
	Right:  Example{Of: clipped, But: []string{"wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=400mm strain-relief=yes"}},
	Basis:  Basis{"no tension comes on a terminal: something else takes it", Practice},
	Remedy: "clip or clamp it by its jacket within a hand's breadth of the lug, with some slack behind",
	Run:    runNoStrainRelief,
}

func runNoStrainRelief(p *Pass) {
	p.repeat(func(w *model.Wire) model.Answer { return w.Relieved },
		"nothing but the lugs takes a pull on %s",
		Gap{Datum: "the strain relief", Field: "strain-relief", Decides: "whether a pull goes to the lug", Worst: Caution, Quiet: true})
}

// repeat reports the wires to which somebody answered no, in one finding, and asks about the long
// traction and charging cables without an answer.
func (p *Pass) repeat(answer func(*model.Wire) model.Answer, message string, ask Gap) {
	var bad []Subject
	for i := range p.Sheet.Wires {
		if w := &p.Sheet.Wires[i]; answer(w) == model.No {
			bad = append(bad, OfWire(w.ID))
		}
	}
	if len(bad) > 0 {
		p.report(Finding{Subjects: bad, Message: fmt.Sprintf(message, list(bad))})
	}
	var open []*network.Link
	for _, l := range p.longCables() {
		if answer(l.Wire) == "" {
			open = append(open, l)
		}
	}
	if len(open) > 0 {
		ask.Subjects = wireSubjects(open)
		p.missing(ask)
	}
}
