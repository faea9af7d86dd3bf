package meter

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// stiffOhms is the resistance that a usual meter's input does not load: less than 0.01 %
// of 10 Mohm. drivenOhms is the most through which a node still counts as driven.
const (
	stiffOhms  = 1e3
	drivenOhms = 1e6
)

// leakAmps is the current below which a diode decides nothing: a meter draws as much.
const leakAmps = 1e-6

// passes is about how many ohms a link puts between its nodes in a solution; infinite if
// it joins them by nothing that a meter would notice.
func passes(n *network.Network, s *network.Solution, l *network.Link) float64 {
	switch {
	case l.IsMetal():
		return 0
	case l.Is(model.ResistanceElement):
		return known(n, l, l.Element.Ohms)
	case l.Is(model.CoilElement):
		return known(n, l, l.Element.Ohms)
	case l.Is(model.LoadElement):
		if ohms, ok := resistive(n, l); ok {
			return ohms
		}
		return math.Inf(1)
	case l.Is(model.CapacitorElement), l.Is(model.ConverterElement):
		return math.Inf(1)
	case l.Is(model.DiodeElement):
		if s.On(l) && math.Abs(s.Current(l)) > leakAmps {
			return 0
		}
	case s.On(l):
		return 0
	}
	return math.Inf(1)
}

func known(n *network.Network, l *network.Link, rating string) float64 {
	if ohms, ok := n.Figure(l.Part, rating); ok {
		return ohms
	}
	return stiffOhms
}

// resistive is the resistance of a load that is one: a lamp, a heater, a horn.
func resistive(n *network.Network, l *network.Link) (ohms float64, ok bool) {
	if len(l.Element.Fed)+len(l.Element.Blocked) > 0 {
		return 0, false
	}
	if ohms, ok := n.Figure(l.Part, l.Element.Ohms); ok && ohms > 0 {
		return ohms, true
	}
	volts, rated := n.Figure(l.Part, l.Element.Volts)
	amps, drawn := n.Figure(l.Part, l.Element.Amps)
	return volts / amps, rated && drawn && amps > 0 && volts > 0
}
