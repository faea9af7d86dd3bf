package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var loneWire = Rule{
	ID: "lone-wire", Title: "A splice, post or connector way has only one wire",
	Family: Ends, Severity: Note,
	About: "Names the splices, bus posts, bars and connector ways on which a single wire lands, so that they join nothing: one note. What a dead " +
		"end of a live wire is told for is not told again.",
	Why: "A joint of one wire is either not recorded to the end or was left behind. Behind a plug that was pulled for a test and forgotten lies " +
		"the reason why something does not work; a splice under tape with one wire is a cut wire in disguise.",
	Tell: "Open the tape or pull the plug and look from both sides: count the wires, and look for an empty contact with marks of use.",
	Blind: "It counts what the sheet records. Spare ways without any wire are not named. It doesn't know pins that are made to stay empty on one " +
		"side.",
	Bad:    "one wire lands on splice sp1",
	Good:   "two wires meet on it",
	Wrong:  Example{Of: spliceExample, But: []string{"wire k4", "wire k4 buz.- untraced gauge=16AWG insulation=105C"}},
	Right:  Example{Of: spliceExample},
	Basis:  Basis{"a joint joins two wires or more", Practice},
	Remedy: "record what else lands there, or take the joint out with its wire",
	Run:    runLoneWire,
}

const spliceExample = `
part pack lithium-pack-16
part fu1 fuse-cartridge fuse-rating=5A
part key key-switch
part buz buzzer
part sp1 splice
wire k1 pack.POS fu1.in gauge=16AWG insulation=105C length=150mm
wire k2 fu1.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN buz.+ gauge=16AWG insulation=105C length=1m
wire k4 buz.- sp1.J gauge=16AWG insulation=105C length=1m
wire k5 sp1.J pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

func runLoneWire(p *Pass) {
	told := map[network.Node]bool{}
	for _, d := range p.deadEnds() {
		if !p.tells(d) {
			continue
		}
		for _, l := range d.wires {
			told[l.A], told[l.B] = true, true
		}
	}
	metal := p.Net.Joined(func(l *network.Link) bool { return l.Is(model.JoinElement) })
	var lone []Subject
	for g := range metal.Count() {
		members := metal.Members(g)
		var wired []network.Node
		for _, at := range members {
			for _, l := range p.Net.LinksAt(at) {
				if l.Kind == network.WireLink {
					wired = append(wired, at)
				}
			}
		}
		if len(wired) == 1 && !told[wired[0]] && p.isJoint(wired[0]) {
			lone = append(lone, p.terminal(wired[0]))
		}
	}
	if len(lone) > 0 {
		p.report(Finding{Message: fmt.Sprintf("only one wire on %s: nothing is joined there", list(lone)), Subjects: lone})
	}
}

// isJoint reports whether a node is a terminal of a part that only joins wires. The frame is
// none.
func (p *Pass) isJoint(at network.Node) bool {
	def := p.Net.DefinitionOf(p.Net.Point(at).At)
	return def != nil && def.Family == model.Joining && at != p.Net.Frame() &&
		!slices.ContainsFunc(def.Elements, func(e model.Element) bool { return e.Is != model.JoinElement })
}
