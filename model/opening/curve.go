package opening

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Curve is what is known of when one device opens. The zero Curve is a device of which
// nothing is known.
type Curve struct {
	Title  string  // the device in words, such as "100 A gG fuse"
	Family string  // name of its gates; empty for a maker's curve
	Rated  float64 // A; 0 if not known
	Source string  // the standard, or the maker's curve
	Note   string  // what to know about the curve; empty if nothing

	gates  []Gate  // by current
	melts  bool    // a fuse: the I2t that it takes to open falls as the current rises
	preArc float64 // least I2t before it arcs in A2s; 0 if not known
	total  float64 // greatest I2t until it has opened in A2s; 0 if not known
}

// Of is a device of a family and a rated current in amperes. If the standard gives gates
// rating by rating and this one is not among them, it is bounded by its two neighbours. A
// rating that the standard does not cover, and a rating of 0, which is one that is not
// known, have a Curve without gates whose Note says so.
func Of(g Gates, ratedAmps float64) Curve {
	c := Curve{
		Title: figures(ratedAmps) + " A " + g.Title, Family: g.Name, Rated: ratedAmps, Source: g.Source, Note: g.Caution,
		melts: !g.breaker,
	}
	if ratedAmps == 0 {
		c.Title, c.Note = g.Title, "its rated current is not stated"
		return c
	}
	if !g.covers(ratedAmps) {
		c.Note = fmt.Sprintf("%s has no gates for a rating of %s A", g.Source, figures(ratedAmps))
		return c
	}
	low, high := g.neighbours(ratedAmps)
	below, above := g.made(low), g.made(high)
	c.preArc, c.total = below.preArc, above.total
	c.gates = below.gates
	if low != high {
		c.Note = fmt.Sprintf("%s has no rating of %s A: bounded by %s and %s A; %s",
			g.Source, figures(ratedAmps), figures(low), figures(high), g.Caution)
		c.gates = between(below.gates, above.gates)
		c.gates = append(c.gates, Gate{Amps: ratedAmps, Least: math.Inf(1), Most: math.Inf(1)})
	}
	c.sort()
	return c
}

// between is what holds for a device between two: it holds at least as long as the smaller
// and opens no later than the larger.
func between(below, above []Gate) []Gate {
	var gates []Gate
	for _, g := range below {
		if g.Least > 0 {
			gates = append(gates, Gate{Amps: g.Amps, Least: g.Least, Most: math.Inf(1), Recalled: g.Recalled})
		}
	}
	for _, g := range above {
		if !math.IsInf(g.Most, 1) {
			gates = append(gates, Gate{Amps: g.Amps, Most: g.Most, Recalled: g.Recalled})
		}
	}
	return gates
}

func (c *Curve) sort() {
	slices.SortStableFunc(c.gates, func(a, b Gate) int { return cmp.Compare(a.Amps, b.Amps) })
}

// Gates lists the bounds that the curve is made of, by current.
func (c Curve) Gates() []Gate { return slices.Clone(c.gates) }
