package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var sharedNegative = Rule{
	ID: "shared-negative", Title: "The 12 V negative and the pack's are mixed up",
	Family: Supply, Severity: Caution,
	About: "Looks at the negative of each reducer's output. Of an isolated reducer it must not be joined to that of its input, and what OUT+ feeds must come back to OUT-. Of a " +
		"reducer that shares one negative between both sides it must not reach the frame, for then the pack does.",
	Why: "Reducers look alike from outside. One kind keeps input and output apart, so that the 12 V side may be grounded as in a car; the other has one negative for both, and whatever " +
		"touches the 12 V negative touches the pack. Taking the second for the first puts the pack on the frame without anybody having touched a traction cable. Taking the " +
		"first for the second leaves a lamp that is fed from OUT+ and returns to the pack with no circuit at all: it stays dark, and the usual cure, a jumper from OUT- to the " +
		"pack's negative, throws away the isolation that was paid for.",
	Tell: "With the reducer's fuse out and its leads off, ohms between its input negative and its output negative: next to nothing means that they are one, open " +
		"means that they are apart. Then with all leads on and the pack off, the same between the 12 V negative bus and the pack's negative, and between the " +
		"bus and bare frame. Read volts first each time: the ohms range is for what reads 0 V.",
	Blind: "It goes by what the library kind says of the reducer: three leads share, four may or may not, so the label decides. Somebody may have joined both negatives for a reason, " +
		"such as a radio that hums: waive it then, with the reason. A joint inside a device, such as a socket whose shell is its negative, is on no sheet.",
	Bad:      "a jumper joins OUT- of an isolated reducer with the pack's negative",
	Good:     "the 12 V negative goes to OUT- alone",
	Wrong:    Example{Of: lampOnReducer, But: []string{"+", "wire a3 red.OUT- red.IN- gauge=12AWG insulation=105C length=100mm"}},
	Right:    Example{Of: lampOnReducer},
	Basis:    Basis{"the negative of a reducer that is not isolated is pack negative and is kept off the frame; that of an isolated one is kept off the pack", Practice},
	Remedy:   "take the joint off; bring the return of each 12 V device to the negative of the reducer that feeds it",
	Explains: []string{"pack-on-frame"},
	Run:      runSharedNegative,
}

func runSharedNegative(p *Pass) {
	if p.misconnected() {
		return
	}
	for i := range p.sides() {
		fs := &p.sides()[i]
		out := fs.feed.Link
		if out.Kind != network.OutputLink {
			continue
		}
		if sharesNegative(out) {
			p.judgeOnFrame(out)
			continue
		}
		in := p.Net.Node(model.TerminalRef{Part: out.Part.ID, Name: out.Element.Between[1]})
		if p.firm().Same(in, out.B) {
			p.reportJoint(out, in)
			continue
		}
		if strays := p.strays(fs); len(strays) > 0 {
			p.report(Finding{
				Severity: Fault,
				Message: fmt.Sprintf("%s is fed from %s and returns to the pack's negative; %s is isolated, so no current comes back to %s",
					list(strays), p.at(out.A), out.Part.ID, p.at(out.B)),
				Subjects: append([]Subject{OfPart(out.Part.ID)}, strays...),
			})
		}
	}
}

// judgeOnFrame speaks if the negative that input and output share is on the frame, unless a
// device that returns there says so already.
func (p *Pass) judgeOnFrame(out *network.Link) {
	frame := p.Net.Frame()
	if frame == network.None || !p.firm().Same(out.B, frame) || len(p.throughFrame()) > 0 {
		return
	}
	reach := p.Net.Walk([]network.Node{frame}, func(l *network.Link, _ network.Node) bool { return l.Firm() })
	p.report(Finding{
		Message: fmt.Sprintf("%s is joined to the frame; %s is not isolated, so this puts the pack's negative on the frame",
			p.at(out.B), out.Part.ID),
		Subjects: append([]Subject{OfPart(out.Part.ID)}, wiresOf(reach.Path(out.B))...),
	})
}

// reportJoint tells what joins the two negatives of an isolated reducer.
func (p *Pass) reportJoint(out *network.Link, in network.Node) {
	reach := p.Net.Walk([]network.Node{out.B}, func(l *network.Link, _ network.Node) bool { return l.Firm() })
	way := wiresOf(reach.Path(in))
	p.report(Finding{
		Message:  fmt.Sprintf("%s and %s are joined by %s: %s isolates nothing any more", p.at(out.B), p.at(in), list(way), out.Part.ID),
		Subjects: append([]Subject{OfPart(out.Part.ID)}, way...),
	})
}

// strays lists the parts that an isolated output feeds and that return to a battery or pack.
func (p *Pass) strays(out *feedSides) []Subject {
	var parts []Subject
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !takesPower(l) || l.Part == out.feed.Link.Part {
			continue
		}
		for _, at := range [][2]network.Node{{l.A, l.B}, {l.B, l.A}} {
			if out.sides.Of(at[0]) == network.Plus && out.sides.Of(at[1]) == network.Neither && p.onlyReturns(at[0], at[1]) {
				parts = appendNew(parts, OfPart(l.Part.ID))
			}
		}
	}
	return parts
}

// onlyReturns reports whether the second terminal is on the negative of a string that does not
// feed the first.
func (p *Pass) onlyReturns(fed, back network.Node) bool {
	found := false
	for i := range p.sides() {
		fs := &p.sides()[i]
		if fs.feed.String == nil {
			continue
		}
		if fs.sides.Of(fed) != network.Neither {
			return false
		}
		found = found || fs.sides.Of(back) == network.Minus
	}
	return found
}
