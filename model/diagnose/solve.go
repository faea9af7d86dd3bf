package diagnose

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// lightShare is what a drive takes with the wheels up, against its rated current, at
// least. From memory.
const lightShare = 0.1

// heavyAmps is the current from which a load of the drive counts as one that may be
// anything between light and full. Our choice.
const heavyAmps = 10

// outcome is what one solve gave, without the solver behind it.
type outcome struct {
	volts  []float64 // by node, against the first node of its island
	island []int32   // by node
	amps   []float64 // by link
	on     []bool    // by link
}

// solved is a variant in a state: at full load, and at light load if the drive acts.
// An outcome is nil if the sheet comes to no rest.
type solved struct {
	full, light *outcome
	loaded      bool // light was tried
}

// solver solves variants in states on demand and keeps what it solved. All sources are
// scaled alike, as the pack read.
type solver struct {
	n        *network.Network
	states   []state.State
	variants []variant
	scale    float64
	sources  []*network.Link
	at       map[*network.Link]int // their number among the links
	got      [][]*solved           // by variant and state
	blown    [][]*network.Link     // by variant: fuses that its short blows
	settled  []bool                // by variant: blown is known
	ohms     map[ohmsKey]span
	solves   atomic.Int64 // for those who count
}

func newSolver(n *network.Network, states []state.State, variants []variant, scale float64) *solver {
	p := &solver{n: n, states: states, variants: variants, scale: scale, at: numbers(n), ohms: map[ohmsKey]span{}}
	links := n.Links()
	for i := range links {
		if links[i].Is(model.SourceElement) {
			p.sources = append(p.sources, &links[i])
		}
	}
	p.got, p.blown, p.settled = make([][]*solved, len(variants)), make([][]*network.Link, len(variants)), make([]bool, len(variants))
	for i := range p.got {
		p.got[i] = make([]*solved, len(states))
	}
	return p
}

// numbers finds the number of a link.
func numbers(n *network.Network) map[*network.Link]int {
	links := n.Links()
	at := make(map[*network.Link]int, len(links))
	for i := range links {
		at[&links[i]] = i
	}
	return at
}

// ensure solves the given variants in the given states, side by side. The sound sheet
// comes first: others are compared with it.
func (p *solver) ensure(variants, states []int) {
	p.parallel(1, states, func(_, s int) { p.fill(0, s) }, func(int) int { return 0 })
	fresh := slices.DeleteFunc(slices.Clone(variants), func(v int) bool { return p.settled[v] || !p.variants[v].shorts })
	p.parallel(len(fresh), []int{0}, func(v, _ int) { p.blown[v], p.settled[v] = p.blows(v), true }, func(i int) int { return fresh[i] })
	p.parallel(len(variants), states, p.fill, func(i int) int { return variants[i] })
}

// parallel calls do for every pair on all processors. Each call has a slot of its own, so
// that the result does not depend on their order.
func (p *solver) parallel(count int, states []int, do func(v, s int), of func(int) int) {
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), count*len(states)) {
		wg.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= count*len(states) {
					return
				}
				do(of(i/len(states)), states[i%len(states)])
			}
		})
	}
	wg.Wait()
}

func (p *solver) fill(v, s int) {
	if p.got[v][s] != nil {
		return
	}
	if v > 0 && p.changesNothing(v, s) {
		p.got[v][s] = p.got[0][s]
		return
	}
	got := &solved{}
	full := p.solve(v, s, nil)
	got.full = p.keep(full)
	if light := p.heavy(full); len(light) > 0 {
		got.light, got.loaded = p.keep(p.solve(v, s, light)), true
	}
	p.got[v][s] = got
}

// solve is one solve of a variant; nil if it comes to no rest. Light are changes that
// take load away.
func (p *solver) solve(v, s int, light []network.Change) *network.Solution {
	p.solves.Add(1)
	solution, err := p.n.SolveWith(p.states[s], p.variation(v, light))
	if err != nil {
		return nil
	}
	return solution
}

// variation is what departs from the sheet in a variant.
func (p *solver) variation(v int, more []network.Change) network.Variation {
	w := network.Variation{Changes: slices.Clone(p.variants[v].changes), Bridges: p.variants[v].bridges}
	for _, fuse := range p.blown[v] {
		w.Changes = merge(w.Changes, network.Change{Link: fuse, Open: true})
	}
	if p.scale != 1 {
		for _, source := range p.sources {
			w.Changes = merge(w.Changes, network.Change{Link: source, Scale: p.scale})
		}
	}
	for _, c := range more {
		w.Changes = merge(w.Changes, c)
	}
	return w
}

// merge adds a change; one of the same link takes it up.
func merge(list []network.Change, c network.Change) []network.Change {
	for i := range list {
		if o := &list[i]; o.Link == c.Link {
			o.Open, o.Closed, o.Dead, o.Reversed = o.Open || c.Open, o.Closed || c.Closed, o.Dead || c.Dead, o.Reversed != c.Reversed
			o.AddOhms += c.AddOhms
			if c.Scale != 0 {
				o.Scale = c.Scale
			}
			return list
		}
	}
	return append(list, c)
}

// heavy are the changes that leave the acting loads of the drive light; none if none acts.
func (p *solver) heavy(full *network.Solution) []network.Change {
	var list []network.Change
	links := p.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.LoadElement) || l.Def.Family != model.Drive {
			continue
		}
		if amps, ok := p.n.Figure(l.Part, l.Element.Amps); !ok || amps < heavyAmps {
			continue
		}
		if full == nil || full.On(l) {
			list = append(list, network.Change{Link: l, Scale: lightShare})
		}
	}
	return list
}

// keep takes from a solution what readings are predicted from.
func (p *solver) keep(s *network.Solution) *outcome {
	if s == nil {
		return nil
	}
	links := p.n.Links()
	o := &outcome{
		volts: make([]float64, p.n.Size()), island: make([]int32, p.n.Size()),
		amps: make([]float64, len(links)), on: make([]bool, len(links)),
	}
	var firsts []network.Node
	for at := range o.volts {
		k := slices.IndexFunc(firsts, func(first network.Node) bool {
			v, ok := s.Voltage(network.Node(at), first)
			o.volts[at] = v
			return ok
		})
		if k < 0 {
			k = len(firsts)
			firsts = append(firsts, network.Node(at))
		}
		o.island[at] = int32(k)
	}
	for i := range links {
		o.amps[i], o.on[i] = s.Current(&links[i]), s.On(&links[i])
	}
	return o
}

// leastDrop is the voltage below which more resistance changes nothing that a meter shows.
const leastDrop = 1e-3

// changesNothing reports whether a variant leaves a state as the sound sheet has it: a
// contact stuck open that is open anyway, a poor joint that carries nothing.
func (p *solver) changesNothing(v, s int) bool {
	sound := p.got[0][s]
	if len(p.variants[v].bridges)+len(p.blown[v]) > 0 || sound.full == nil || sound.loaded && sound.light == nil {
		return false
	}
	for _, c := range p.variants[v].changes {
		i := p.at[c.Link]
		on := sound.full.on[i] || sound.loaded && sound.light.on[i]
		off := !sound.full.on[i] || sound.loaded && !sound.light.on[i]
		amps := math.Abs(sound.full.amps[i])
		if sound.loaded {
			amps = max(amps, math.Abs(sound.light.amps[i]))
		}
		switches := c.Link.Is(model.ContactElement)
		acts := c.Link.Is(model.LoadElement) || c.Link.Is(model.ConverterElement) || c.Link.Is(model.ChargerElement) || c.Link.Is(model.SourceElement)
		same := c.Open && switches && !on || c.Closed && switches && !off || c.Dead && acts && !on || c.AddOhms > 0 && amps*c.AddOhms < leastDrop
		if !same || c.Reversed {
			return false
		}
	}
	return true
}

// blowsAt is the multiple of its rating at which a fuse is taken to open before anybody
// reads a meter. Fuses of all families open at twice their rating within minutes; common
// practice, no source.
const blowsAt = 2

// blows are the fuses that a short blows, in whichever ordinary state the cart was.
func (p *solver) blows(v int) []*network.Link {
	for again := true; again; {
		again = false
		for s := range p.states {
			if fuse := p.overloaded(p.solve(v, s, nil)); fuse != nil {
				p.blown[v] = append(p.blown[v], fuse)
				again = true
				break
			}
		}
	}
	return p.blown[v]
}

// overloaded is the fuse that is most beyond its rating; nil if none will open.
func (p *solver) overloaded(s *network.Solution) *network.Link {
	if s == nil {
		return nil
	}
	var worst *network.Link
	most := float64(blowsAt)
	links := p.n.Links()
	for i := range links {
		if !links[i].Is(model.FuseElement) {
			continue
		}
		rating, ok := p.n.Figure(links[i].Part, links[i].Element.Amps)
		if times := math.Abs(s.Current(&links[i])) / rating; ok && rating > 0 && times > most {
			worst, most = &links[i], times
		}
	}
	return worst
}
