package rule

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// What the rules of the control chain ask a sheet and its solutions.

// fedShare is the share of the pack's voltage from which a point of the control chain counts
// as fed: what leaks through a lamp or an input leaves less. Our choice.
const fedShare = 0.5

// poles are the outer nodes of the main string; false if the sheet has none.
func (p *Pass) poles() (low, high network.Node, ok bool) {
	s, ok := p.mainString()
	if !ok {
		return network.None, network.None, false
	}
	return s.Low, s.High, true
}

// levels tells the voltages of a solution against the negative end of the main string.
type levels struct {
	in   *network.Solution
	low  network.Node
	pack float64 // of the positive end
}

func (p *Pass) levels(in *network.Solution) levels {
	low, high, _ := p.poles()
	pack, _ := in.Voltage(high, low)
	return levels{in, low, pack}
}

// at is the voltage of a node; 0 if it is not certain.
func (v levels) at(n network.Node) float64 {
	volts, _ := v.in.Voltage(n, v.low)
	return volts
}

// isFed reports whether a node stands at a good part of the pack's voltage.
func (v levels) isFed(n network.Node) bool {
	return v.pack > reversedVolts && v.at(n) >= fedShare*v.pack
}

// inState is the solved state of that name; nil if the sheet has none.
func (p *Pass) inState(name string) *network.Solution {
	for _, s := range p.solved() {
		if s.state.Name == name {
			return s.solution
		}
	}
	return nil
}

// solveWith is a named state with some controls set otherwise, solved; nil if the sheet has
// no such state or comes to no rest in it.
func (p *Pass) solveWith(name string, set ...state.Setting) *network.Solution {
	s, ok := state.Find(p.Net.States(), name)
	if !ok {
		return nil
	}
	for _, one := range set {
		s = s.With(one.Control, one.Position)
	}
	solution, err := p.Net.Solve(s)
	if err != nil {
		return nil
	}
	return solution
}

// switchLinks lists the contacts that the control of a part moves.
func (p *Pass) switchLinks(part *model.Part) []*network.Link {
	var list []*network.Link
	links := p.Net.LinksOf(part)
	for i := range links {
		if l := &links[i]; l.Is(model.ContactElement) && l.Def.Control != nil && len(l.Element.ClosedIn) > 0 {
			list = append(list, l)
		}
	}
	return list
}

// hasSwitch reports whether a switch or interlock contact on the sheet follows a control. The
// wiper and the track of a throttle are none.
func (p *Pass) hasSwitch(c model.Control) bool { return len(p.switchesOf(c)) > 0 }

// switchesOf lists the parts with a contact that follows a control.
func (p *Pass) switchesOf(c model.Control) []Subject {
	var list []Subject
	for i := range p.Sheet.Parts {
		d := p.Net.Cat.Definition(p.Sheet.Parts[i].Kind)
		if d != nil && d.Control != nil && d.Control.Sets == c && !isPotentiometer(d) &&
			slices.ContainsFunc(d.Elements, func(e model.Element) bool { return e.Is == model.ContactElement && len(e.ClosedIn) > 0 }) {
			list = append(list, OfPart(p.Sheet.Parts[i].ID))
		}
	}
	return list
}

// isPotentiometer reports whether a definition is a throttle: a contact on a track.
func isPotentiometer(d *model.Definition) bool {
	return d.Family != model.Drive && d.Control != nil && d.Control.Sets == model.Pedal &&
		slices.ContainsFunc(d.Elements, func(e model.Element) bool { return e.Is == model.ResistanceElement })
}

// isDriven reports whether a controller switches a coil: one of its ends hangs on a driver.
func (p *Pass) isDriven(coil *network.Link) bool {
	metal := p.metal()
	for _, end := range []network.Node{coil.A, coil.B} {
		for _, at := range metal.Members(metal.Of(end)) {
			for _, l := range p.Net.LinksAt(at) {
				if l.Is(model.ContactElement) && l.Def.Family == model.Drive && len(l.Element.Fed) > 0 {
					return true
				}
			}
		}
	}
	return false
}

// coilOf is the coil that moves a contact; nil if none does.
func (p *Pass) coilOf(contact *network.Link) *network.Link {
	links := p.Net.LinksOf(contact.Part)
	for i := range links {
		if l := &links[i]; l.Is(model.CoilElement) && l.Element.ID == contact.Element.Coil {
			return l
		}
	}
	return nil
}

// onPack lists the contacts through which the positive end of the pack stands on the drive in
// a solution; false if it does not.
func (p *Pass) onPack(in *network.Solution) (contacts []*network.Link, on bool) {
	low, high, ok := p.poles()
	if !ok {
		return nil, false
	}
	firm := p.firm()
	reach := p.Net.Walk([]network.Node{high}, func(l *network.Link, at network.Node) bool {
		return !firm.Same(l.Other(at), low) && carries(in, l)
	})
	for _, at := range reach.Order {
		if d := p.Net.DefinitionOf(p.Net.Point(at).At); d == nil || d.Family != model.Drive || !p.isTraction(at) {
			continue
		}
		for _, l := range reach.Path(at) {
			if l.Is(model.ContactElement) {
				contacts = append(contacts, l)
			}
		}
		return contacts, true
	}
	return nil, false
}

// carries reports whether a link joins its nodes as good as metal in a solution.
func carries(in *network.Solution, l *network.Link) bool {
	return l.IsMetal() || (l.Is(model.ContactElement) || l.Is(model.FuseElement)) && in.On(l) || l.Firm() && l.Is(model.ResistanceElement)
}

// plainly reports whether metal, fuses and closed contacts join a node to the positive end of
// the pack in a solution.
func (p *Pass) plainly(in *network.Solution, at network.Node) bool {
	low, high, ok := p.poles()
	firm := p.firm()
	return ok && p.Net.Walk([]network.Node{high}, func(l *network.Link, from network.Node) bool {
		return !firm.Same(l.Other(from), low) && carries(in, l)
	}).Has(at)
}

// wayWords names the wires and parts of a way in order, each once; of a long way its last.
func wayWords(links []*network.Link) string {
	var words []string
	for _, s := range waySubjects(links) {
		words = append(words, s.String())
	}
	return listWords(words[max(0, len(words)-named):])
}

// waySubjects lists the wires and parts of a way in order, each once.
func waySubjects(links []*network.Link) []Subject {
	var list []Subject
	for _, l := range links {
		if l.Kind == network.WireLink {
			list = appendNew(list, OfWire(l.Wire.ID))
		} else {
			list = appendNew(list, OfPart(l.Part.ID))
		}
	}
	return list
}

// keyInput begins what a definition says of the key input of a controller.
const keyInput = "key input"
