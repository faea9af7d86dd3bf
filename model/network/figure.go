package network

import "example.com/lugbook/model"

// NominalRating is the figure that the parts library gives the nominal voltage of a
// battery, a pack or a charger.
const NominalRating = "voltage"

// Figure is a rating of a part in SI units, a temperature in degrees Celsius: the part's own if it has one, else the
// library's. It is false if neither states it.
func (n *Network) Figure(p *model.Part, rating string) (float64, bool) {
	k := n.KnownFigure(p, rating)
	return k.Value, k.OK
}

// KnownFigure is Figure with where the figure comes from.
func (n *Network) KnownFigure(p *model.Part, rating string) Known {
	if rating == "" {
		return Known{}
	}
	r, ok := n.Cat.RatingOf(p, rating)
	if !ok || r.Value.IsZero() {
		return Known{}
	}
	return Known{Value: r.Value.SI(), OK: true, Source: r.Source}
}
