package network

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// NominalRating is the figure that the parts library gives the nominal voltage of a
// battery, a pack or a charger.
const NominalRating = "voltage"

// Figure is a rating of a part in SI units: the part's own if it has one, else the
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
	return Known{Value: inSI(r.Value), OK: true, Source: r.Source}
}

// inSI is the size of an electrical quantity in its SI unit; a count as it is, a ratio
// as a fraction. Other quantities are no figure of an element and count as 0.
func inSI(q unit.Any) float64 {
	switch q.Dimension() {
	case unit.Voltage:
		v, _ := q.Volt()
		return v.Volts()
	case unit.Current:
		a, _ := q.Ampere()
		return a.Amperes()
	case unit.Resistance:
		r, _ := q.Ohm()
		return r.Ohms()
	case unit.Power:
		w, _ := q.Watt()
		return w.Watts()
	case unit.Capacitance:
		f, _ := q.Farad()
		return f.Farads()
	case unit.Ratio:
		p, _ := q.Percent()
		return p.Fraction()
	case unit.Number:
		n, _ := q.Count()
		return float64(n.Int())
	}
	return 0
}
