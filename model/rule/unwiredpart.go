package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
)

var unwiredPart = Rule{
	ID: "unwired-part", Title: "No wire lands on a part",
	Family: Ends, Severity: Note,
	About: "Names the parts of the sheet on which no wire lands: one note for all of them.",
	Why: "A part without a wire takes no part in anything that is computed. As found it is mostly one whose wires are still to be recorded; on " +
		"a plan it is one that was forgotten, or an old one that should come off the cart: a dead charge computer, a meter, a fuse holder " +
		"that rattles in the tray until it bridges something.",
	Tell:   "Find it on the cart and follow its terminals. Nothing on any of them: take it off, or write in its note why it stays.",
	Blind:  "A part that needs no wire, such as a bracket somebody recorded as a part, is named too. A part with one wire of several is not.",
	Bad:    "the fuse fu3 is on the sheet, and nothing lands on it",
	Good:   "everything on the sheet is wired",
	Wrong:  Example{Of: spliceExample, But: []string{"+", "part fu3 fuse-cartridge fuse-rating=5A"}},
	Right:  Example{Of: spliceExample},
	Basis:  Basis{"a part that is on the cart for a reason has a wire", Practice},
	Remedy: "record its wires, or take it off the sheet and off the cart",
	Run:    runUnwiredPart,
}

func runUnwiredPart(p *Pass) {
	wired := map[model.PartID]bool{}
	for i := range p.Sheet.Wires {
		for _, e := range p.Sheet.Wires[i].Ends() {
			wired[e.At.Part] = true
		}
	}
	var bare []Subject
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		if !wired[part.ID] && !p.isFramePiece(part) {
			bare = append(bare, OfPart(part.ID))
		}
	}
	if len(bare) > 0 {
		p.report(Finding{Message: fmt.Sprintf("no wire lands on %s", list(bare)), Subjects: bare})
	}
}

// isFramePiece reports whether a part is a piece of the cart's metal, which needs no wire.
func (p *Pass) isFramePiece(part *model.Part) bool {
	def := p.Net.Cat.Definition(part.Kind)
	return def != nil && slices.ContainsFunc(def.Terminals, func(t model.TerminalDef) bool { return t.Metal != "" })
}
