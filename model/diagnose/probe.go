package diagnose

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// cost is what readings take in minutes. Common practice, no source.
var cost = struct{ reading, zone, state, pin, ohms float64 }{
	reading: 0.5, // probes on, look, write down
	zone:    1,   // walk to another part of the cart
	state:   0.5, // work the controls, or have them worked
	pin:     0.5, // probe the back of a connector
	ohms:    2,   // power off, wait for the capacitors, power on again
}

// probes lists the voltmeter readings that are offered in every state: each terminal that
// a wire lands on against the low pole of its own side, the high pole against what should be
// near it, the two sides of coils, contacts and fuses, and the poles against the frame.
func (c *Case) probes() []observation {
	var pairs [][2]network.Node
	low, high, ok := c.n.Poles()
	backs := c.backs(low, ok)
	for _, at := range c.landed() {
		for _, back := range backs {
			if c.sameSide(at, back) {
				pairs = append(pairs, [2]network.Node{at, back})
				break
			}
		}
	}
	if ok {
		pairs = append(pairs, c.drops(high)...)
	}
	if frame := c.n.Frame(); ok && frame != network.None {
		pairs = append(pairs, [2]network.Node{high, frame}, [2]network.Node{low, frame})
	}
	links := c.n.Links()
	for i := range links {
		l := &links[i]
		if (l.Is(model.CoilElement) || l.Is(model.ContactElement) || l.Is(model.FuseElement)) && l.A != l.B && c.reached(l.A) && c.reached(l.B) {
			pairs = append(pairs, [2]network.Node{l.A, l.B})
		}
	}
	return c.inStates(pairs)
}

// nearHigh is the share of the pack's voltage within which a point counts as on its high
// side. Our choice.
const nearHigh = 0.15

// drops are the points that the sound sheet holds near the high pole in some state, against
// that pole: a drop is read directly, for the difference of two large readings tells
// nothing of it.
func (c *Case) drops(high network.Node) [][2]network.Node {
	var pairs [][2]network.Node
	for _, at := range c.landed() {
		for _, s := range c.offered {
			o := c.sound.got[0][s].full
			if o != nil && o.island[at] == o.island[high] && math.Abs(o.volts[high]-o.volts[at]) < nearHigh*c.volts {
				pairs = append(pairs, [2]network.Node{high, at})
				break
			}
		}
	}
	return pairs
}

func (c *Case) inStates(pairs [][2]network.Node) []observation {
	seen := map[[2]network.Node]bool{}
	var list []observation
	for _, p := range pairs {
		if p[0] == p[1] || seen[p] {
			continue
		}
		seen[p] = true
		for _, s := range c.offered {
			list = append(list, observation{kind: Volts, state: s, red: p[0], black: p[1], link: -1})
		}
	}
	return list
}

// backs are the points that the black probe stands on: the low pole, then the low ends of
// other supplies.
func (c *Case) backs(low network.Node, ok bool) []network.Node {
	var list []network.Node
	if ok {
		list = append(list, low)
	}
	for _, f := range c.n.Feeds() {
		if f.Return != network.None && f.Link.Def.Family != model.Drive {
			list = append(list, f.Return)
		}
	}
	return list
}

// sameSide reports whether two nodes conduct to each other in some state of the sound
// sheet.
func (c *Case) sameSide(a, b network.Node) bool {
	for _, s := range c.offered {
		if o := c.sound.got[0][s].full; o != nil && o.island[a] == o.island[b] {
			return true
		}
	}
	return false
}

// landed lists the terminals that wires land on.
func (c *Case) landed() []network.Node {
	var list []network.Node
	for at := range c.n.Size() {
		if c.reached(network.Node(at)) {
			list = append(list, network.Node(at))
		}
	}
	return list
}

// reached reports whether a probe gets at a node: a terminal that a wire lands on.
func (c *Case) reached(at network.Node) bool {
	if c.n.Point(at).At.IsZero() {
		return false
	}
	for _, l := range c.n.LinksAt(at) {
		if l.Kind == network.WireLink {
			return true
		}
	}
	return false
}

// across lists readings over what the suspects sit in: volts in every state, and ohms in
// the states that a person has at hand.
func (c *Case) across(suspects []Suspect, here int) []observation {
	var pairs [][2]network.Node
	for i := range suspects {
		for _, v := range suspects[i].variants {
			for _, change := range c.variants[v].changes {
				pairs = append(pairs, [2]network.Node{change.Link.A, change.Link.B})
			}
			for _, bridge := range c.variants[v].bridges {
				pairs = append(pairs, [2]network.Node{bridge.A, bridge.B})
			}
		}
	}
	var reached [][2]network.Node
	for _, p := range pairs {
		if c.reached(p[0]) && c.reached(p[1]) {
			reached = append(reached, p)
		}
	}
	list := c.inStates(reached)
	seen := map[observation]bool{}
	for _, o := range list {
		o.kind = Ohms
		for _, s := range distinct([]int{here, 0, c.stateNamed("drive-forward")}) {
			if o.state = s; !seen[o] {
				seen[o] = true
				list = append(list, o)
			}
		}
	}
	return list
}

// Place is where a person stands with the meter, and how the controls are.
type Place struct {
	State string
	Zone  model.ZoneID
}

// minutes is what a reading takes from a place.
func (c *Case) minutes(o *observation, from Place) float64 {
	sum := cost.reading
	if from.State != "" && c.states[o.state].Name != from.State {
		sum += cost.state
	}
	red := c.n.Point(o.red).At
	if zone := c.zoneOf(red); from.Zone != "" && zone != "" && zone != from.Zone {
		sum += cost.zone
	}
	if t := c.n.TerminalDef(red); t != nil && (t.Form == model.PinForm || t.Form == model.LeadForm) {
		sum += cost.pin
	}
	if o.kind == Ohms {
		sum += cost.ohms
	}
	return sum
}

func (c *Case) zoneOf(at model.TerminalRef) model.ZoneID {
	if p := c.n.Part(at.Part); p != nil {
		return p.Zone
	}
	return ""
}

// PlaceOf is where a reading was taken.
func (c *Case) PlaceOf(r *model.Reading) Place {
	at := r.Red
	if w := c.sheet.Wire(r.Wire); w != nil {
		at = w.From.At
	}
	return Place{State: r.State, Zone: c.zoneOf(at)}
}
