package rule

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// feedSides is what can be joined to the terminals of one feed.
type feedSides struct {
	feed  network.Feed
	sides network.Sides
}

// sides traces from every feed, once.
func (p *Pass) sides() []feedSides {
	if p.shared.sides == nil {
		p.shared.sides = []feedSides{}
		for _, f := range p.protection().Feeds {
			p.shared.sides = append(p.shared.sides, feedSides{f, p.Net.SidesOf(f.At, f.Return)})
		}
	}
	return p.shared.sides
}

// device is something with a side that must be positive.
type device struct {
	link          *network.Link
	first, second network.Node // first must be positive
	role          role
	verdict       network.Side  // Plus if it is right, Minus if it is reversed
	by            *network.Feed // the feed that decides; nil if the solved states do
}

// role is what the polarity rules tell apart.
type role int

const (
	loadRole role = iota
	chargerRole
	reducerRole
	controllerRole
	meterRole
)

// survey is the polarity of all devices that have one.
type survey struct {
	devices      []device
	packReversed bool                   // everything on the pack's side is reversed
	outReversed  map[*network.Link]bool // converter outputs to which all devices are reversed
}

// survey finds the polarity of every polarised device, once: by tracing each of its
// terminals to the terminals of a feed through everything that can close, and where
// tracing cannot tell, by the voltages of the solved states.
func (p *Pass) survey() *survey {
	if p.shared.survey != nil {
		return p.shared.survey
	}
	s := &survey{outReversed: map[*network.Link]bool{}}
	p.shared.survey = s
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if r, ok := roleOf(l); ok {
			d := device{link: l, first: l.A, second: l.B, role: r}
			d.verdict, d.by = p.polarityOf(l)
			s.devices = append(s.devices, d)
		}
	}
	s.judge()
	return s
}

// roleOf is the role of an element that has a polarity; false if it has none.
func roleOf(l *network.Link) (role, bool) {
	switch {
	case l.Is(model.ChargerElement):
		return chargerRole, true
	case l.Is(model.ConverterElement) && l.Def.Family != model.Drive:
		return reducerRole, true
	case l.Kind == network.WireLink, l.Kind == network.OutputLink, !l.Element.Polarised,
		l.Is(model.SourceElement), l.Is(model.DiodeElement):
		return 0, false
	}
	switch {
	case l.Def.Family == model.Metering:
		return meterRole, true
	case l.Def.Family == model.Drive && isController(l.Def):
		return controllerRole, true
	}
	return loadRole, true
}

// polarityOf is traced, unless the solved states say otherwise: what a device really sees
// decides, whatever could be joined to it.
func (p *Pass) polarityOf(l *network.Link) (network.Side, *network.Feed) {
	verdict, by := p.tracedPolarity(l)
	if !p.wired(l.A) || !p.wired(l.B) {
		return verdict, by
	}
	if verdict == network.Neither {
		if side := p.polarityOnDrive(l); side != network.Neither {
			return side, nil
		}
	}
	switch lowest, highest := p.solvedVolts(l); {
	case lowest < -reversedVolts && highest < reversedVolts && verdict != network.Minus:
		return network.Minus, nil
	case highest > reversedVolts && lowest > -reversedVolts && verdict == network.Minus:
		return network.Plus, nil
	}
	return verdict, by
}

// tracedPolarity is the polarity that tracing to the strings and reducers gives.
func (p *Pass) tracedPolarity(l *network.Link) (network.Side, *network.Feed) {
	verdict := network.Neither
	var by *network.Feed
	for i := range p.sides() {
		fs := &p.sides()[i]
		if fs.feed.Link.Part == l.Part || fs.feed.Link.Is(model.ChargerElement) {
			continue
		}
		switch fs.sides.Across(l.A, l.B) {
		case network.Plus:
			return network.Plus, &fs.feed
		case network.Minus:
			if by == nil {
				verdict, by = network.Minus, &fs.feed
			}
		}
	}
	return verdict, by
}

// polarityOnDrive traces to the small supplies of a controller, such as an encoder's.
func (p *Pass) polarityOnDrive(l *network.Link) network.Side {
	for i := range p.Net.Links() {
		out := &p.Net.Links()[i]
		if out.Kind != network.OutputLink || out.Def.Family != model.Drive || out.Part == l.Part {
			continue
		}
		if side := p.Net.SidesOf(out.A, out.B).Across(l.A, l.B); side == network.Plus || side == network.Minus {
			return side
		}
	}
	return network.Neither
}

// judge finds what is reversed as a whole: one mistake at a source, not one at each
// device. A single device on a source says nothing about the source.
func (s *survey) judge() {
	s.packReversed = s.allWrong(func(f *network.Feed) bool { return f.String != nil && f.Whole })
	for i := range s.devices {
		if by := s.devices[i].by; by != nil && by.Link.Kind == network.OutputLink {
			s.outReversed[by.Link] = s.allWrong(func(f *network.Feed) bool { return f.Link == by.Link })
		}
	}
}

// allWrong reports whether all devices on some feeds are reversed, two parts or more.
func (s *survey) allWrong(on func(*network.Feed) bool) bool {
	wrong := map[model.PartID]bool{}
	for _, d := range s.devices {
		if d.by == nil || !on(d.by) {
			continue
		}
		if d.verdict != network.Minus {
			return false
		}
		wrong[d.link.Part.ID] = true
	}
	return len(wrong) > 1
}

// reversed lists the devices of one role that are reversed by a mistake of their own.
func (s *survey) reversed(r role) []device {
	var list []device
	for _, d := range s.devices {
		if d.role != r || d.verdict != network.Minus {
			continue
		}
		if d.by != nil && (s.packReversed && d.by.String != nil || s.outReversed[d.by.Link]) {
			continue
		}
		list = append(list, d)
	}
	return list
}

// reversedVolts is how far below zero a solved voltage must be to call a device
// reversed, in volts: more than what a meter or a leak leaves behind. Our choice.
const reversedVolts = 2

// solvedVolts are the lowest and the highest voltage that a device sees in any state;
// infinite if no state tells.
func (p *Pass) solvedVolts(l *network.Link) (lowest, highest float64) {
	lowest, highest = math.Inf(1), math.Inf(-1)
	for _, s := range p.solved() {
		if v, ok := s.solution.Voltage(l.A, l.B); ok {
			lowest, highest = min(lowest, v), max(highest, v)
		}
	}
	return lowest, highest
}

// wired reports whether a wire lands on a node.
func (p *Pass) wired(at network.Node) bool {
	for _, l := range p.Net.LinksAt(at) {
		if l.Kind == network.WireLink {
			return true
		}
	}
	return false
}
