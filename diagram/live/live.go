package live

import (
	"fmt"
	"math"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Least is the current from which a wire counts as carrying, in amperes, and LeastVolts
// the voltage against the minus side from which one counts as live that no closed contact
// joins to a source: it may hang on one through a coil or a lamp. Both are our choice: a
// full pack lasts for years at the one, and the other is above the drop of a return.
const (
	Least      = 0.001
	LeastVolts = 1.0
)

// Of is what a drawing of the sheet shows of a solved state.
func Of(n *network.Network, s *network.Solution) scene.State {
	v := newView(n, s)
	out := scene.State{Name: s.State.Name, About: s.State.About, Wires: map[string]scene.Flow{}, Parts: map[string]scene.Working{}}
	parts := map[*model.Part][]*network.Link{}
	links := n.Links()
	wires, assumed, unjudged, charged := 0, 0, false, false
	for i := range links {
		l := &links[i]
		if l.Part != nil {
			parts[l.Part] = append(parts[l.Part], l)
		}
		if l.Kind != network.WireLink {
			continue
		}
		if l.Wire.Serves == model.Mains {
			out.Wires[string(l.Wire.ID)] = scene.Flow{Energy: scene.Unjudged}
			unjudged = true
			continue
		}
		wires++
		if _, usual := n.WireOhms(l); usual {
			assumed++
		}
		f := v.flow(l)
		held := f.Energy == scene.Unjudged && v.charged(l)
		charged, unjudged = charged || held, unjudged || f.Energy == scene.Unjudged && !held
		out.Wires[string(l.Wire.ID)] = f
	}
	for i := range n.Sheet.Parts {
		p := &n.Sheet.Parts[i]
		out.Parts[string(p.ID)] = v.working(p, parts[p])
	}
	if assumed > 0 {
		out.Remarks = append(out.Remarks, fmt.Sprintf("Of %d of %d wires the gauge or length is not recorded: usual ones stand for them in the figures.", assumed, wires))
	}
	if unjudged {
		out.Remarks = append(out.Remarks, "Mains, motor phases, signals and what is untraced are not judged: take them for live.")
	}
	if charged {
		out.Remarks = append(out.Remarks, "What hangs on a controller's capacitor may hold its charge with everything off: discharge it and measure.")
	}
	return out
}

// view is what is asked of a solution again and again.
type view struct {
	n         *network.Network
	s         *network.Solution
	live, low []bool
	stored    []bool // by node: a drive's capacitor may hold a charge there
	feeds     []network.Feed
	reached   *network.Reach  // from any feed, over whatever could close
	doubtful  []bool          // by group of metal: something of it is not known
	metal     *network.Groups // what plain metal joins
}

func newView(n *network.Network, s *network.Solution) *view {
	v := &view{n: n, s: s, live: s.Live(), low: returns(n, s), stored: s.Stored(), feeds: n.Feeds(), metal: n.Joined((*network.Link).IsMetal)}
	var from []network.Node
	for i := range v.feeds {
		from = append(from, v.feeds[i].At, v.feeds[i].Return)
	}
	v.reached = n.Walk(from, func(*network.Link, network.Node) bool { return true })
	v.doubtful = make([]bool, v.metal.Count())
	for at := range network.Node(n.Size()) {
		p := n.Point(at)
		if p.How == model.Untraced || !p.At.IsZero() && n.DefinitionOf(p.At) == nil {
			v.doubtful[v.metal.Of(at)] = true
		}
	}
	return v
}

// returns marks the nodes that are joined to the minus side of a source through what is
// closed in the state.
func returns(n *network.Network, s *network.Solution) []bool {
	low := n.Returns()
	var from []network.Node
	for at, is := range low {
		if is {
			from = append(from, network.Node(at))
		}
	}
	for _, at := range n.Walk(from, func(l *network.Link, _ network.Node) bool {
		return l.IsMetal() || l.Is(model.ContactElement) && s.On(l)
	}).Order {
		low[at] = true
	}
	return low
}

// flow is what a wire does.
func (v *view) flow(l *network.Link) scene.Flow {
	f := scene.Flow{Energy: v.energy(l)}
	if amps := v.s.Current(l); math.Abs(amps) >= Least {
		f.Amps, f.Figure = amps, Amperes(math.Abs(amps))
		return f
	}
	if volts, ok := v.volts(l.A); ok && f.Energy == scene.Live {
		f.Figure = Volts(volts)
	}
	return f
}

// energy is what the state does to a wire. It is dead only if it is known what could feed
// it: the network knows neither what goes on between a controller and a three-phase motor
// or on a signal line, nor what an untraced end is joined to.
func (v *view) energy(l *network.Link) scene.Energy {
	switch {
	case v.live[l.A] || v.live[l.B]:
		return scene.Live
	case v.low[l.A] || v.low[l.B]:
		return scene.Return
	}
	for _, at := range []network.Node{l.A, l.B} {
		if volts, ok := v.volts(at); ok && math.Abs(volts) >= LeastVolts {
			return scene.Live
		}
	}
	if !v.reached.Has(l.A) || v.doubtful[v.metal.Of(l.A)] || v.charged(l) {
		return scene.Unjudged
	}
	return scene.Dead
}

// charged reports whether a drive's capacitor may hold a charge on a wire that nothing
// else feeds.
func (v *view) charged(l *network.Link) bool { return v.stored[l.A] || v.stored[l.B] }

// volts is the voltage of a node against the minus side of the first feed that is joined
// to it.
func (v *view) volts(at network.Node) (float64, bool) {
	volts, _, ok := Potential(v.n, v.s, v.feeds, at)
	return volts, ok
}

// Potential is the voltage of a node against the minus side of its own part of the
// wiring: that of the traction string, or else of the first feed that anything joins to the
// node. It is false if nothing does.
func Potential(n *network.Network, s *network.Solution, feeds []network.Feed, at network.Node) (volts float64, against network.Node, ok bool) {
	if low, _, has := n.Poles(); has {
		if volts, ok = s.Voltage(at, low); ok {
			return volts, low, true
		}
	}
	for i := range feeds {
		if volts, ok = s.Voltage(at, feeds[i].Return); ok {
			return volts, feeds[i].Return, true
		}
	}
	return 0, network.None, false
}
