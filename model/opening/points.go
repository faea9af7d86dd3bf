package opening

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// makersCurve is the source of a curve that was put in by points.
const makersCurve = "the maker's curve"

// Device is what is known of when a device opens: its maker's points if there are any,
// otherwise the gates of the standard that it is made to, by their name. Without either
// it is a Curve without gates. A rating in amperes of 0 is one that is not known. The
// error says what to correct.
func Device(gates string, ratedAmps float64, points []model.OpenPoint) (Curve, error) {
	g, ok := Find(gates)
	switch {
	case gates != "" && !ok:
		return Curve{}, fmt.Errorf("no gates are called %q: use one of %s", gates, strings.Join(Names(), ", "))
	case len(points) > 0:
		c, err := FromPoints(points)
		if err != nil || ratedAmps == 0 {
			return c, err
		}
		c.melts = ok && !g.breaker
		return c.carrying(ratedAmps)
	case !ok:
		return Curve{Note: "neither the standard that it is made to nor its maker's curve is stated"}, nil
	}
	return Of(g, ratedAmps), nil
}

// Names lists the names of the families in their order.
func Names() []string {
	all := All()
	names := make([]string, len(all))
	for i, g := range all {
		names[i] = g.Name
	}
	return names
}

// FromPoints is the curve of a device by the points that its maker publishes, in any
// order. Between the points nothing is assumed but that it opens sooner at more current.
// The error says what to correct.
func FromPoints(points []model.OpenPoint) (Curve, error) {
	if len(points) == 0 {
		return Curve{}, fmt.Errorf("a maker's curve without points: state the opening times at one current at least")
	}
	c := Curve{Source: makersCurve}
	for _, p := range points {
		g := Gate{Amps: p.At.Amperes(), Least: p.Least.Seconds(), Most: p.Most.Seconds()}
		if g.Most == 0 {
			g.Most = math.Inf(1)
		}
		if g.Amps <= 0 || g.Least < 0 || g.Most < g.Least {
			return Curve{}, fmt.Errorf("at %s the device opens in %s to %s: state a current above 0 and times of which the second is the longer",
				p.At, p.Least, p.Most)
		}
		c.gates = append(c.gates, g)
	}
	c.sort()
	return c, c.contradiction()
}

// carrying is the curve of a device that holds its rated current for ever.
func (c Curve) carrying(ratedAmps float64) (Curve, error) {
	c.Rated = ratedAmps
	c.Title = figures(ratedAmps) + " A device"
	c.gates = append(slices.Clone(c.gates), Gate{Amps: ratedAmps, Least: math.Inf(1), Most: math.Inf(1)})
	c.sort()
	return c, c.contradiction()
}

// contradiction is an error if the device would have to open and to hold at once.
func (c Curve) contradiction() error {
	for _, opens := range c.gates {
		for _, holds := range c.gates {
			if holds.Amps >= opens.Amps && holds.Least > opens.Most {
				return fmt.Errorf("the device has opened within %s at %s A but holds %s at %s A: it must open sooner at more current",
					Span(opens.Most), figures(opens.Amps), Span(holds.Least), figures(holds.Amps))
			}
		}
	}
	return nil
}
