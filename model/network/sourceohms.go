package network

import "example.com/lugbook/model"

// FaultRating is the figure of a source's short-circuit current, as its label states it: at
// its best, so that nothing is added for a full charge.
const FaultRating = "fault-current"

// SourceOhms is the resistance inside a battery or pack in ohms: by the short-circuit
// current on its own label, else its rated resistance.
func (n *Network) SourceOhms(l *Link) Known {
	if r, own := l.Part.Rating(FaultRating); own {
		fault := n.KnownFigure(l.Part, FaultRating)
		if emf, known := n.Figure(l.Part, l.Element.Volts); known && fault.Value > 0 {
			return Known{Value: emf / fault.Value, OK: true, Source: r.Source}
		}
	}
	return n.KnownFigure(l.Part, l.Element.Ohms)
}

// noOhms is the share that is left of the resistance that is assumed of a wire of unknown
// size or length, so that a greatest fault is not understated.
const noOhms = 1e-3

// FullCharge is what is otherwise in the greatest fault: the sources at the end of charge,
// but for those whose label states the fault current itself, and wires of unknown size or
// length nearly without resistance.
func (n *Network) FullCharge() []Change {
	var list []Change
	for i := range n.links {
		l := &n.links[i]
		if l.Kind == WireLink {
			if _, assumed := n.WireOhms(l); assumed {
				list = append(list, Change{Link: l, Scale: noOhms})
			}
			continue
		}
		if !l.Is(model.SourceElement) {
			continue
		}
		if _, stated := l.Part.Rating(FaultRating); stated {
			continue
		}
		rest, known := n.Figure(l.Part, l.Element.Volts)
		if full, stated := n.Figure(l.Part, l.Element.MaxVolts); known && stated && rest > 0 {
			list = append(list, Change{Link: l, Scale: full / rest})
		}
	}
	return list
}
