package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

// reportReversed reports each part of a role that is reversed by a mistake of its own.
func (p *Pass) reportReversed(r role) {
	told := map[model.PartID]bool{}
	for _, d := range p.survey().reversed(r) {
		id := d.link.Part.ID
		if told[id] {
			continue
		}
		told[id] = true
		p.report(Finding{
			Message:  p.reversedMessage(d),
			Subjects: []Subject{OfPart(id), p.terminal(d.first), p.terminal(d.second)},
			Fixes:    p.turnedRound(d.first, d.second),
		})
	}
}

func (p *Pass) reversedMessage(d device) string {
	if d.by == nil {
		return fmt.Sprintf("%s sees its voltage the wrong way round: %s should be above %s", d.link.Part.ID, p.at(d.first), p.at(d.second))
	}
	return fmt.Sprintf("%s leads to %s and %s to %s: %s is reversed",
		p.at(d.first), p.at(d.by.Return), p.at(d.second), p.at(d.by.At), d.link.Part.ID)
}

// swapped is the swap of all that lands on two terminals; none if one is a loose end.
func (p *Pass) swapped(a, b network.Node) []edit.Edit {
	from, to := p.Net.Point(a).At, p.Net.Point(b).At
	if from.IsZero() || to.IsZero() {
		return nil
	}
	return []edit.Edit{p.swapTerminals(from, to)}
}

// turnedRound is the swap of the two wires of a device. With more than one wire on a terminal
// it is not certain which of them was meant for it, and there is none.
func (p *Pass) turnedRound(a, b network.Node) []edit.Edit {
	for _, at := range []network.Node{a, b} {
		if len(p.Sheet.Landed(p.Net.Point(at).At)) != 1 {
			return nil
		}
	}
	return p.swapped(a, b)
}

// firm groups what is at one potential in service.
func (p *Pass) firm() *network.Groups { return p.Net.FirmGroups() }
