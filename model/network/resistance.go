package network

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/unit"
)

// wireCelsius is the conductor temperature in C that resistances hold for.
const wireCelsius = 20

// leastOhms stands for a piece of metal without a resistance of its own, so that no
// loop is free of resistance.
const leastOhms = 1e-6

// assumedMetres and assumedGauge stand for what is not recorded of a wire: a usual
// length on a two-seat cart, and the usual size for the circuit that it serves. From
// memory.
const assumedMetres = 1

func assumedGauge(s model.Service) unit.Gauge {
	switch s {
	case model.Traction:
		return unit.AWG(4)
	case model.Charging:
		return unit.AWG(10)
	case model.Accessory:
		return unit.AWG(12)
	}
	return unit.AWG(16)
}

// jointOhms is the resistance of one lug joint in ohms by the worst of its conditions.
// The good figure is for a clean tight joint. Typical, from memory.
var jointOhms = []struct {
	found model.Condition
	ohms  float64
}{
	{model.LooseFit, 50e-3},
	{model.Burnt, 20e-3},
	{model.Melted, 20e-3},
	{model.Corroded, 10e-3},
	{model.HeatMark, 5e-3},
	{model.Dirty, 1e-3},
}

const goodJointOhms = 0.1e-3

// WireOhms is the resistance of a wire with its joints, in ohms at 20 C. Assumed tells
// that its gauge or length is not recorded and a usual one stands for it.
func (n *Network) WireOhms(l *Link) (ohms float64, assumed bool) {
	return n.wireOhms(l, wireCelsius, false)
}

func (n *Network) wireOhms(l *Link, celsius float64, sound bool) (ohms float64, assumed bool) {
	metres := l.metres
	if !l.measured {
		metres = assumedMetres
	}
	from, to := l.joints[0], l.joints[1]
	if sound {
		from, to = min(from, goodJointOhms), min(to, goodJointOhms)
	}
	perMetre := conductor.AtTemperature(l.perMetre, celsius)
	return max(leastOhms, perMetre*metres+from+to), l.assumed || !l.measured
}

// JointOhms is the resistance of the joints of a wire as found, in ohms: at its from and at its
// to end, nothing at a loose one.
func (n *Network) JointOhms(l *Link) (from, to float64) { return l.joints[0], l.joints[1] }

// ohmsPerMetre is the resistance of the copper of a wire at 20 C, and whether its gauge is
// assumed.
func (n *Network) ohmsPerMetre(l *Link) (ohms float64, assumed bool) {
	gauge := l.Wire.Gauge
	if gauge.IsZero() {
		gauge, assumed = assumedGauge(n.serves(l)), true
	}
	ohms, _ = conductor.OhmsPerMetre(gauge, wireCelsius)
	return ohms, assumed
}

// serves is the circuit of a wire: as recorded, else that of a terminal it lands on.
func (n *Network) serves(l *Link) model.Service {
	if l.Wire.Serves != "" {
		return l.Wire.Serves
	}
	for _, at := range []Node{l.A, l.B} {
		if t := n.TerminalDef(n.points[at].At); t != nil && t.Serves != "" && t.Serves != model.Traction {
			return t.Serves
		}
	}
	if t := n.TerminalDef(n.points[l.A].At); t != nil {
		return t.Serves
	}
	return ""
}

// joint is the resistance of a wire's joint at one of its ends; none at a loose end.
func (n *Network) joint(w *model.Wire, end model.End) float64 {
	if end.At.IsZero() {
		return 0
	}
	var there []model.Condition
	if t := n.terminals[end.At]; t != nil {
		there = t.Condition
	}
	for _, j := range jointOhms {
		if slices.Contains(w.Condition, j.found) || slices.Contains(there, j.found) {
			return j.ohms
		}
	}
	return goodJointOhms
}
