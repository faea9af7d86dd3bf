package rule

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// use is a state with its solution, and what is left of it once the devices that open in it
// have opened; derived is false if everything was switched on in it.
type use struct {
	solved
	derived bool
	opened  []opened
	left    *network.Solution
}

// opened is a device that opens in a use, with what it has until then.
type opened struct {
	device *network.Link
	amps   float64
	rated  network.Known
	in     use
}

// inUse are the states with their solutions, and each of them with everything switched on.
func (p *Pass) inUse() []use {
	if p.shared.used {
		return p.shared.uses
	}
	p.shared.used = true
	for _, s := range p.solved() {
		p.addUse(s, true)
		on, more := s.state.AllOn(p.Sheet, p.Net.Cat)
		if !more {
			continue
		}
		if solution, err := p.Net.Solve(on); err == nil {
			p.addUse(solved{on, solution}, false)
		}
	}
	return p.shared.uses
}

// addUse follows what opens in a use, one device after another: what is off behind one that opens
// first loads the others no more.
func (p *Pass) addUse(s solved, derived bool) {
	u := use{solved: s, derived: derived, left: s.solution}
	var changes []network.Change
	for len(u.opened) < len(p.Net.Links()) {
		first := p.firstToOpen(u.left)
		if first.device == nil {
			break
		}
		first.in = use{solved: s, derived: derived}
		u.opened = append(u.opened, first)
		changes = append(changes, network.Change{Link: first.device, Open: true})
		after, err := p.Net.SolveWith(u.state, network.Variation{Changes: changes})
		if err != nil {
			break
		}
		u.left = after
	}
	p.shared.uses = append(p.shared.uses, u)
}

// opensWithin is the share of its rating at which a fuse opens within an hour: UL 248-14, from
// memory.
const opensWithin = 1.35

// firstToOpen is the device that is farthest beyond what it holds; none if all hold.
func (p *Pass) firstToOpen(in *network.Solution) opened {
	var first opened
	most := opensWithin
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.FuseElement) {
			continue
		}
		rated := p.Net.KnownFigure(l.Part, l.Element.Amps)
		if now := math.Abs(in.Current(l)); rated.OK && rated.Value > 0 && now > most*rated.Value {
			first, most = opened{device: l, amps: now, rated: rated}, now/rated.Value
		}
	}
	return first
}
