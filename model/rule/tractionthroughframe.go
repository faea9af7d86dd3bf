package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var tractionThroughFrame = Rule{
	ID: "traction-through-frame", Title: "The frame carries current of the traction side",
	Family: Frame, Severity: Danger,
	About: "Takes the wires that land on the frame one by one and follows each away from it. Speaks if one leads to the drive, the charger's output or another traction cable, and another to the pack " +
		"or to another part of that circuit: then the frame is the conductor between them. Accessories that return through the frame are left to the rule about those.",
	Why: "A car may use its body as the return because the battery's negative belongs there. A cart's frame is painted, bolted and hinged together, and its pack floats so that one fault does no " +
		"harm. Hundreds of amperes through hinges, springs and bearings pit them and get hot where nobody looks; every chafed positive is then a dead short, and the fuse for it was never meant to be the only guard.",
	Tell: "With the pack off, take the cable off the frame bolt and sleeve its lug. Pack on, wheels off the ground: if something of the drive is dead now, the " +
		"frame was in its way. With the cable back on, a DC clamp meter round it must read nothing while the wheels turn, and millivolts between two far ends " +
		"of the frame must be nil.",
	Blind:  "It sees the frame where it is drawn: bolts as frame points. A motor whose winding touches its case, or a controller that is bolted down with a live case, has to be drawn as a wire or a leak to be seen.",
	Bad:    "the controller's negative and the pack's negative both go to the frame",
	Good:   "a cable joins the two",
	Wrong:  Example{Of: framedDrive, But: []string{"wire w3", "wire w3 ctrl.B- fr.FRAME gauge=2AWG insulation=105C length=200mm", "+", "wire w4 fr.FRAME pack.NEG gauge=2AWG insulation=105C length=200mm"}},
	Right:  Example{Of: framedDrive},
	Basis:  Basis{"the traction circuit is insulated from the frame in both poles: the frame is no conductor", Practice},
	Remedy: "pack off: take both cables off the frame, and run one of the positive's size beside it instead",
	Run:    runTractionThroughFrame,

	Explains: []string{"pack-on-frame", "frame-return"},
}

// framedDrive is a drive with a bolt in the frame beside it.
const framedDrive = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part ctrl controller-series continuous-current=100A peak-current=200A
part fr frame-point
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out ctrl.B+ gauge=2AWG insulation=105C length=600mm
wire w3 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
at pack.POS cover=fitted
at fu1.in cover=fitted`

// frameSide is what a wire on the frame leads to when the frame is left out.
type frameSide struct {
	wire     *network.Link
	group    int
	source   bool // a battery or pack
	traction bool // the drive, the charger's output or a traction cable
	to       Subject
}

func runTractionThroughFrame(p *Pass) {
	frame := p.Net.Frame()
	if frame == network.None {
		return
	}
	sides := p.frameSides(frame)
	var load, way []frameSide
	for _, s := range sides {
		if s.source || !s.traction {
			continue
		}
		load = append(load, s)
		for _, other := range sides {
			if other.group != s.group && (other.source || other.traction) {
				way = append(way, other)
			}
		}
	}
	if len(way) == 0 {
		return
	}
	var subjects []Subject
	for _, s := range slices.Concat(load, way) {
		subjects = appendNew(subjects, OfWire(s.wire.Wire.ID))
	}
	p.report(Finding{
		Subjects: subjects,
		Message: fmt.Sprintf("the frame carries the current of %s: %s joins it to the frame and %s joins the frame to %s",
			load[0].to, load[0].wire.Wire.ID, way[0].wire.Wire.ID, way[0].to),
	})
}

// frameSides follows each wire away from the frame, over everything that conducts.
func (p *Pass) frameSides(frame network.Node) []frameSide {
	passes := func(l *network.Link) bool {
		return l.A != frame && l.B != frame && (l.Conducts() || l.Firm())
	}
	groups := p.Net.Joined(passes)
	sources := p.sourceLinks()
	var list []frameSide
	for _, by := range p.Net.LinksAt(frame) {
		if by.Wire == nil || by.A == by.B {
			continue
		}
		far := by.Other(frame)
		s := frameSide{wire: by, group: groups.Of(far)}
		for _, l := range sources {
			if g := s.group; !s.source && (groups.Of(l.A) == g || groups.Of(l.B) == g) {
				s.source, s.to = true, OfPart(l.Part.ID)
			}
		}
		if !s.source {
			s.to, s.traction = p.tractionIn(groups.Members(s.group))
		}
		list = append(list, s)
	}
	return list
}

// tractionIn finds a terminal of the drive or of a charger's output among nodes.
func (p *Pass) tractionIn(nodes []network.Node) (Subject, bool) {
	for _, n := range nodes {
		at := p.Net.Point(n).At
		t, d := p.Net.TerminalDef(at), p.Net.DefinitionOf(at)
		if t == nil || d.Family == model.Joining || d.Family == model.Support {
			continue
		}
		if t.Serves == model.Traction || t.Serves == model.Charging && t.Pole != "" {
			return OfTerminal(at), true
		}
	}
	return Subject{}, false
}
