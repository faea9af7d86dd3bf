package rule

import (
	"fmt"

	"example.com/lugbook/model"
)

var notSecured = Rule{
	ID: "not-secured", Title: "A battery or another heavy part is not held",
	Family: Mounting, Severity: Fault,
	About: "Speaks about batteries, packs, chargers, controllers and motors of which somebody recorded that they are not secured. For batteries and packs of which nobody recorded anything it asks. A held battery moves " +
		"1 in at most when it is pushed with 90 lbf or twice its weight, whichever is less.",
	Why: "A pack weighs as much as a person and sits beside steel edges. What slides in a curve pulls at its studs, works the nuts loose, chafes its cables at the rim of the tray and in the end shorts a post on the frame. In " +
		"a roll-over it comes out.",
	Tell: "Push the pack with a straight arm as hard as you can, in all four directions: it may move the width of a thumb. Lift at a corner. A strap that can be plucked like a string holds; one that hangs does not. Old trays are " +
		"wider than a new pack: the gap needs blocks.",
	Blind: "It cannot see the cart: it repeats what was recorded, and asks for the rest without a line among the findings. What the weight of a part asks of its bolts is not computed.",
	Bad:   "a new pack stands loose in the tray of the old batteries", Good: "it is held by blocks and a strap",
	Wrong:  Example{Of: heldPack, But: []string{"part pack", "part pack lithium-pack-16 secured=no"}},
	Right:  Example{Of: heldPack},
	Basis:  Basis{"each battery moves one inch at most in any direction under 90 lbf or twice its weight, whichever is less", "33 CFR 183.420; 29 CFR 1910.178(g) for batteries that are put back"},
	Remedy: "block it in the tray and strap or bolt it down, then push it again and record that it holds",
	Run:    runNotSecured,
}

// heldPack is a pack and its charger, held.
const heldPack = `
part pack lithium-pack-16 secured=yes
part chg charger-onboard-48v secured=yes
part fu2 fuse-cartridge fuse-rating=30A
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out pack.POS gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
at pack.POS cover=fitted
at fu2.out cover=fitted`

func runNotSecured(p *Pass) {
	var loose, unknown []Subject
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		def := p.Net.Cat.Definition(part.Kind)
		switch {
		case part.Secured == model.No:
			loose = append(loose, OfPart(part.ID))
		case part.Secured == "" && def != nil && def.Family == model.Storage:
			unknown = append(unknown, OfPart(part.ID))
		}
	}
	if len(loose) > 0 {
		p.report(Finding{Subjects: loose, Message: fmt.Sprintf("not held so that it cannot move: %s", list(loose))})
	}
	if len(unknown) > 0 {
		p.missing(Gap{Datum: "the fastening", Field: "secured", Decides: "whether it moves more than 1 in when pushed", Worst: Fault, Quiet: true, Subjects: unknown})
	}
}
