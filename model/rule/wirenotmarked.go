package rule

import (
	"fmt"
	"strings"
	"unicode"

	"example.com/lugbook/model"
)

var wireNotMarked = Rule{
	ID: "wire-not-marked", Title: "A wire of the cart as built does not carry its name",
	Family: Paper, Severity: Note,
	About: "On an as-built sheet, names the wires whose mark does not hold their id: one note. On other sheets it is silent.",
	Why: "The drawing that goes with the cart says k7. Whoever stands at the cart in two years sees twelve black wires. A label at both ends " +
		"turns the drawing into something that can be used; without it every visit begins with tracing.",
	Tell: "Look at both ends: a sleeve or wrap with the wire's id, readable without bending the cable, a hand's breadth from the lug.",
	Blind: "It compares what is recorded as the mark with the id, and doesn't know whether both ends have it. What the maker printed on the jacket " +
		"is a mark as well, and no id. Wires that stayed as they were are asked for too.",
	Bad:    "the as-built sheet records no mark of the wires",
	Good:   "each wire carries its id",
	Wrong:  Example{Of: spliceExample, But: []string{"+", "sheet as-built"}},
	Right:  Example{Of: markedExample},
	Basis:  Basis{"wires are marked at both ends with what the drawing calls them", Practice},
	Remedy: "sleeve or wrap both ends with the id, and record it as the mark",
	Run:    runWireNotMarked,
}

const markedExample = `
part pack lithium-pack-16
part fu1 fuse-cartridge fuse-rating=5A
part key key-switch
part buz buzzer
sheet as-built
wire k1 pack.POS fu1.in gauge=16AWG insulation=105C length=150mm mark=k1
wire k2 fu1.out key.BAT gauge=16AWG insulation=105C length=1m mark=k2
wire k3 key.IGN buz.+ gauge=16AWG insulation=105C length=1m mark=k3
wire k4 buz.- pack.NEG gauge=16AWG insulation=105C length=1m mark=600_V_K4
at pack.POS cover=fitted torque=9_N_m
at pack.NEG torque=9_N_m
`

func runWireNotMarked(p *Pass) {
	if p.Sheet.Name != model.AsBuilt {
		return
	}
	var bare []Subject
	for i := range p.Sheet.Wires {
		if w := &p.Sheet.Wires[i]; !carriesID(w) {
			bare = append(bare, OfWire(w.ID))
		}
	}
	if len(bare) > 0 {
		p.report(Finding{Message: fmt.Sprintf("not marked with their ids: %s", list(bare)), Subjects: bare})
	}
}

// carriesID reports whether the mark of a wire holds its id as a word.
func carriesID(w *model.Wire) bool {
	for _, word := range strings.FieldsFunc(w.Mark, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",;/:", r) }) {
		if strings.EqualFold(word, string(w.ID)) {
			return true
		}
	}
	return false
}
