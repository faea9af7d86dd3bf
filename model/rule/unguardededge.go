package rule

import "example.com/lugbook/model"

var unguardedEdge = Rule{
	ID: "unguarded-edge", Title: "A wire lies unguarded on an edge",
	Family: Mounting, Severity: Caution,
	About: "Speaks about wires of which somebody recorded that they are not guarded at every edge and hole by a grommet, loom or clearance. Asks about long traction and charging cables of which nothing is recorded.",
	Why: "A cart shakes for years, and a jacket on an edge of sheet steel is sawn through like wood. First the frame touches one pole and nobody notices; then something else touches the other, and the " +
		"pack is shorted through the frame. Many a burnt cart began at a hole without a grommet.",
	Tell: "Pack off, run a finger along the whole cable, under the floor too: every hole has a grommet, every edge a strip or a finger's width of air (3/8 in at " +
		"least). A bright line in the paint beside a cable is where it rubs.",
	Blind: "It repeats what was recorded, and asks for the rest without a line among the findings. That a loom is thick enough for its edge it cannot know.",
	Bad:   "the charge lead goes through a bare hole", Good: "a grommet sits in the hole",
	Wrong:  Example{Of: clipped, But: []string{"wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=400mm guarded=no"}},
	Right:  Example{Of: clipped, But: []string{"wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=400mm guarded=yes"}},
	Basis:  Basis{"where wire passes through a hole a grommet guards it unless it is held 3/8 in away from the edge; battery cables are insulated where they pass through metal", "FAA AC 43.13-1B 11-115 to 11-117; 49 CFR 393.30"},
	Remedy: "look for copper first and renew what shows it; fit a grommet or edge strip, or lead it clear by 3/8 in and tie it there",
	Run:    runUnguardedEdge,
}

func runUnguardedEdge(p *Pass) {
	p.repeat(func(w *model.Wire) model.Answer { return w.Guarded },
		"not guarded at every edge and hole: %s",
		Gap{Datum: "the protection at edges", Field: "guarded", Decides: "whether an edge can chafe it through", Worst: Fault, Quiet: true})
}
