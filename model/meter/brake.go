package meter

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// brakeSymbol is the symbol by which a definition of the drive family is a brake: the
// coil that its springs are released by.
const brakeSymbol = "coil"

// releaseShare is the share of its voltage from which a brake surely counts as fed: they
// release at about 0.7 of it and hold on less. From memory, on the side of the cart.
const releaseShare = 0.5

// brakes lists the coils of the spring-applied brakes of a sheet.
func brakes(n *network.Network) []*network.Link {
	var list []*network.Link
	links := n.Links()
	for i := range links {
		l := &links[i]
		if l.Part != nil && l.Def.Family == model.Drive && l.Def.Symbol == brakeSymbol && (l.Is(model.LoadElement) || l.Is(model.CoilElement)) {
			list = append(list, l)
		}
	}
	return list
}

// held tells which spring-applied brakes hold the cart because their coils get no voltage.
func (w *works) held() []string {
	var list []string
	for _, l := range brakes(w.n) {
		if w.mayLead(l.A) || w.mayLead(l.B) {
			continue
		}
		volts, known := w.s.Voltage(l.A, l.B)
		rated, _ := w.n.Figure(l.Part, l.Element.Volts)
		if !known || math.Abs(volts) <= max(negligible, releaseShare*rated) {
			list = append(list, fmt.Sprintf("brake %s is not released: its coil is not fed", l.Part.ID))
		}
	}
	return list
}

// mayLead reports whether a node may be joined to what the sheet does not show: its metal
// goes out of sight, or no wire is at it while some wire of the sheet does.
func (w *works) mayLead(at network.Node) bool {
	if w.unsure[w.tied.Of(at)] {
		return true
	}
	bare := !slices.ContainsFunc(w.n.LinksAt(at), func(l *network.Link) bool { return l.Kind == network.WireLink })
	return bare && slices.ContainsFunc(w.n.Sheet.Wires, func(wire model.Wire) bool {
		return wire.From.Loose == model.Untraced || wire.To.Loose == model.Untraced
	})
}
