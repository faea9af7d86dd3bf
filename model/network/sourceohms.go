package network

// faultRating is the figure of a source's short-circuit current, as its label states it.
const faultRating = "fault-current"

// SourceOhms is the resistance inside a battery or pack in ohms: by the short-circuit
// current on its own label, else its rated resistance.
func (n *Network) SourceOhms(l *Link) Known {
	if r, own := l.Part.Rating(faultRating); own {
		fault := n.KnownFigure(l.Part, faultRating)
		if emf, known := n.Figure(l.Part, l.Element.Volts); known && fault.Value > 0 {
			return Known{Value: emf / fault.Value, OK: true, Source: r.Source}
		}
	}
	return n.KnownFigure(l.Part, l.Element.Ohms)
}
