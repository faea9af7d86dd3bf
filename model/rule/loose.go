package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// reportLoose reports the loose ends of one kind whose wire is live.
func (p *Pass) reportLoose(how model.Loose) {
	for n := range p.Net.Size() {
		at := network.Node(n)
		point := p.Net.Point(at)
		if point.How != how {
			continue
		}
		by, side := p.liveBy(at)
		f := Finding{Subjects: []Subject{OfWire(point.Wire)}}
		switch {
		case side == network.Plus:
			f.Message = fmt.Sprintf("%s can be joined to %s: it is live", point, p.at(by.feed.At))
			if how == model.Cut {
				f.Fixes = p.endFixes(p.Sheet.Wire(point.Wire), point.To)
			}
		case side == network.Minus && how == model.Cut:
			f.Message = fmt.Sprintf("%s is joined to %s: if it touches anything positive, nothing limits it but a fuse there", point, p.at(by.feed.Return))
			f.Severity = Caution
		default:
			continue
		}
		p.report(f)
	}
}

// liveBy is the source whose positive side a node can be joined to, else one whose
// negative side it can be joined to.
func (p *Pass) liveBy(at network.Node) (*feedSides, network.Side) {
	var by *feedSides
	side := network.Neither
	for i := range p.sides() {
		fs := &p.sides()[i]
		switch fs.sides.Of(at) {
		case network.Plus, network.Both:
			return fs, network.Plus
		case network.Minus:
			if by == nil {
				by, side = fs, network.Minus
			}
		}
	}
	return by, side
}
