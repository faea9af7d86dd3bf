package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
)

// touch is a place where the batteries reach the frame.
type touch struct {
	at    network.Node // terminal of a battery or pack
	by    *network.Link
	ohms  float64 // of the leaks on the way
	volts float64 // of the terminal, against the first touch
}

// shortThroughFrame tells of two places of different voltage that touch the frame, those
// furthest apart.
func (p *Pass) shortThroughFrame(frame network.Node) (Finding, bool) {
	touches := p.touches(frame)
	var a, b touch
	for i, x := range touches {
		for _, y := range touches[i+1:] {
			if math.Abs(x.volts-y.volts) > math.Abs(a.volts-b.volts) {
				a, b = x, y
			}
		}
	}
	between := math.Abs(a.volts - b.volts)
	if between < leastApart {
		return Finding{}, false
	}
	ohms := a.ohms + b.ohms
	subjects := []Subject{p.terminal(a.at), p.terminal(b.at), subjectOf(a.by), subjectOf(b.by)}
	f := Finding{
		Severity: Danger, Subjects: subjects,
		Message: fmt.Sprintf("%s touches the frame by %s and %s by %s, %s apart", subjects[0], subjects[2], subjects[1], subjects[3], volts(between)),
		Remedy:  "take both off the frame, the one with the larger current first, and insulate what chafed",
	}
	if ohms <= 0 {
		f.Message += ": the frame is a short between them"
		return f, true
	}
	f.Message += fmt.Sprintf(": %s through the frame for good", leakAmps(between/ohms))
	switch {
	case ohms/between >= p.limit(basis.IsolationPerVolt):
		f.Severity = Note
	case between/ohms < scorchingAmps:
		f.Severity = Caution
	}
	return f, true
}

// leakAmps writes a current, a small one in milliamperes.
func leakAmps(x float64) string {
	if x < 0.1 {
		return number(1000*x) + " mA"
	}
	return amps(x)
}

// leastApart is from how many volts on two places on the frame are not the same place.
const leastApart = 1

// scorchingAmps is from how many amperes on a leak between two batteries chars what it passes:
// tens of watts in one spot. Our choice.
const scorchingAmps = 1

// touches lists the batteries that reach the frame by metal, closed contacts, fuses and leaks,
// one for each link on the frame, with their voltages.
func (p *Pass) touches(frame network.Node) []touch {
	off := func(l *network.Link) bool { return l.A != frame && l.B != frame }
	leak := func(l *network.Link) bool { return l.Is(model.ResistanceElement) && l.Def.Family == model.Joining }
	potential := p.potentials(func(l *network.Link) bool { return off(l) && l.Firm() })
	var list []touch
	for _, by := range p.Net.LinksAt(frame) {
		if !by.Conducts() && !leak(by) || by.A == by.B {
			continue
		}
		reach := p.Net.Walk([]network.Node{by.Other(frame)}, func(l *network.Link, _ network.Node) bool {
			return off(l) && (l.Firm() || l.Conducts() || leak(l))
		})
		i := slices.IndexFunc(reach.Order, func(n network.Node) bool { return potential[n].known })
		if i < 0 {
			continue
		}
		at := reach.Order[i]
		list = append(list, touch{at: at, by: by, ohms: p.ohmsOf(append(reach.Path(at), by)), volts: potential[at].volts})
	}
	return list
}

// potential is the voltage of a terminal of a battery within its string.
type potential struct {
	known bool
	volts float64
}

// potentials gives the terminals of batteries and packs their voltages at full charge, from one
// to the next through what holds nodes together. Batteries that nothing joins count from 0 each.
func (p *Pass) potentials(joins func(*network.Link) bool) []potential {
	groups := p.Net.Joined(joins)
	of := make([]potential, groups.Count())
	sources := p.sourceLinks()
	var spread func(g int)
	spread = func(g int) {
		for _, l := range sources {
			a, b := groups.Of(l.A), groups.Of(l.B)
			volts, _ := p.Net.Figure(l.Part, l.Element.Volts)
			switch {
			case a == g && !of[b].known:
				of[b] = potential{true, of[g].volts - volts}
				spread(b)
			case b == g && !of[a].known:
				of[a] = potential{true, of[g].volts + volts}
				spread(a)
			}
		}
	}
	for _, l := range sources {
		if g := groups.Of(l.B); !of[g].known {
			of[g] = potential{known: true}
			spread(g)
		}
	}
	list := make([]potential, p.Net.Size())
	for _, l := range sources {
		list[l.A], list[l.B] = of[groups.Of(l.A)], of[groups.Of(l.B)]
	}
	return list
}

// sourceLinks lists the batteries and packs.
func (p *Pass) sourceLinks() []*network.Link {
	var list []*network.Link
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; l.Is(model.SourceElement) {
			list = append(list, l)
		}
	}
	return list
}

// subjectOf is the wire or part that a link is of.
func subjectOf(l *network.Link) Subject {
	if l.Wire != nil {
		return OfWire(l.Wire.ID)
	}
	return OfPart(l.Part.ID)
}
