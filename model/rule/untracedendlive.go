package rule

import "example.com/lugbook/model"

var untracedEndLive = Rule{
	ID: "untraced-end-live", Title: "A live wire goes out of sight",
	Family: Ends, Severity: Caution,
	About: "Looks at each end that is recorded as untraced and speaks if the wire can be joined to the positive side of a source, in whatever " +
		"state: what it feeds, and whether it is fused there, is not known.",
	Why: "Everything that is judged about a cart is judged on the wires that are recorded. A live wire that goes out of sight may be the feed " +
		"of a horn, a second way around the key, a tracker that drains the pack, or a bare end under the floor. Until it is followed nobody " +
		"knows what stops when it comes off, and what does not stop when the key is turned.",
	Tell: "Follow it by hand, then by continuity: pack off, both ends off, one probe on each, under 1 ohm is the same wire. Where it can't be reached, put a DC " +
		"clamp meter round it and turn everything on in turn. Or, pack off, open its source end, sleeve it, and see with the pack on what has stopped. A meter " +
		"on amperes does not go in its place: nobody knows what it feeds.",
	Blind: "Live means that contacts and fuses could join it to a source, each switch taken as closed. An untraced wire on a signal pin, or one " +
		"whose other end is loose too, is not reported; nor is one on the negative side.",
	Bad:    "a 16 AWG wire on iso.out disappears into the loom",
	Good:   "it is followed to its end: the buzzer's fuse",
	Wrong:  Example{Of: studExample, But: []string{"wire k1", "wire k1 iso.out untraced gauge=16AWG insulation=105C"}},
	Right:  Example{Of: studExample},
	Basis:  Basis{"what a live wire feeds decides what may be disconnected", Practice},
	Remedy: "follow it, or open its source end and see what stops working; until then let a fuse at the source protect it",
	Run:    func(p *Pass) { p.reportLoose(model.Untraced) },
}
