package opening

import (
	"fmt"
	"math"
	"slices"
)

// Selective answers whether of two devices in series the one downstream opens alone at
// every current up to that of a fault in amperes: it must have opened by when the one
// upstream may, and let through no more heat than the one upstream takes before it arcs.
//
// Devices of one family are selective if the standard says so of their ratings. The
// answer is no if the one upstream surely opens first at some current, or if by every
// gate it is no slower.
func Selective(down, up Curve, faultAmps float64) Verdict {
	if why, ok := chained(down, up); ok {
		return Verdict{Answer: Yes, Why: why}
	}
	first, noSlower := math.Inf(1), true
	for _, amps := range edges(0, faultAmps, down, up) {
		d, u := down.Band(amps), up.Band(amps)
		noSlower = noSlower && u.Least <= d.Least && u.Most <= d.Most
		if d.Most <= u.Least {
			continue
		}
		if u.Most < d.Least {
			return verdictAt(down, up, amps)
		}
		first = min(first, amps)
	}
	recalled := anyRecalled(down) || anyRecalled(up)
	_, opens := up.SlowestWithin(faultAmps)
	switch {
	case math.IsInf(first, 1):
		return Verdict{Answer: Yes, Recalled: recalled, Why: fmt.Sprintf(
			"up to %s A %s has opened before %s may", figures(faultAmps), down.name(), up.name()) + warning(recalled)}
	case opens && noSlower:
		return Verdict{Answer: No, From: rounded(first), Recalled: recalled, Why: fmt.Sprintf(
			"from %s A on %s opens as soon as %s by every gate", figures(first), up.name(), down.name()) + warning(recalled)}
	}
	return verdictAt(down, up, first)
}

// verdictAt is the answer at a current at which the two are not surely selective.
func verdictAt(down, up Curve, amps float64) Verdict {
	d, u := down.Band(amps), up.Band(amps)
	v := Verdict{Answer: NotKnown, From: rounded(amps), Recalled: d.Recalled || u.Recalled}
	switch {
	case u.Most < d.Least:
		v.Answer = No
		v.Why = fmt.Sprintf("at %s A %s, but %s", figures(amps), up.says(up.most(amps)), down.says(down.least(amps)))
	case !d.Known:
		v.Why = down.silent(amps)
	case !u.Known:
		v.Why = up.silent(amps)
	case math.IsInf(d.Most, 1):
		v.Why = fmt.Sprintf("at %s A %s may never open, and %s holds for sure no longer than %s%s",
			figures(amps), down.name(), up.name(), Span(u.Least), warning(v.Recalled))
	default:
		v.Why = fmt.Sprintf("at %s A %s opens within %s, %s not before %s: either may be first%s",
			figures(amps), down.name(), Span(d.Most), up.name(), Span(u.Least), warning(v.Recalled))
	}
	return v
}

// chained reports whether the standard itself says that two devices of its family are
// selective, and how.
func chained(down, up Curve) (why string, ok bool) {
	g, found := Find(down.Family)
	if !found || down.Family != up.Family || g.steps == 0 {
		return "", false
	}
	ratings := g.Ratings()
	i, j := slices.Index(ratings, down.Rated), slices.Index(ratings, up.Rated)
	if i < 0 || down.preArc == 0 || j < i+g.steps {
		return "", false
	}
	return fmt.Sprintf("%s: %s A lets through less than %s A holds, ratings 1:1.6 apart are selective",
		g.Source, figures(down.Rated), figures(up.Rated)), true
}

func anyRecalled(c Curve) bool {
	return slices.ContainsFunc(c.gates, func(g Gate) bool { return g.Recalled })
}

// edges are the currents from one to another, rising, at which a comparison of curves can
// change: the ends, each gate of the curves, where its I2t takes 0.01 s, and the currents
// next to it. Between two of them every bound is constant or falls with the square of the
// current, so what holds at both holds between.
func edges(from, to float64, curves ...Curve) []float64 {
	at := []float64{from, to}
	for _, c := range curves {
		for _, g := range c.gates {
			at = append(at, g.Amps, g.Amps*math.Sqrt(g.Least/adiabatic), g.Amps*math.Sqrt(g.Most/adiabatic))
		}
		at = append(at, c.adiabaticFrom(), math.Sqrt(c.preArc/adiabatic))
	}
	for _, a := range slices.Clone(at) {
		at = append(at, math.Nextafter(a, 0), math.Nextafter(a, math.Inf(1)))
	}
	at = slices.DeleteFunc(at, func(a float64) bool { return a < from || a > to })
	slices.Sort(at)
	return slices.Compact(at)
}
