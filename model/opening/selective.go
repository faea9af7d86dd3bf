package opening

import (
	"fmt"
	"math"
	"slices"
)

// leastCurrent is where a comparison of two devices begins, in A: below it none opens.
const leastCurrent = 1e-3

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
	if len(down.gates) == 0 || len(up.gates) == 0 {
		return Verdict{Answer: NotKnown, Why: unknown(down, up)}
	}
	sure := min(leastCurrent, faultAmps)
	first, contrary := math.Inf(1), math.Inf(1)
	noSlower := true
	for _, amps := range edges(sure, faultAmps, down, up) {
		least, most := up.least(amps).seconds, up.most(amps).seconds
		noSlower = noSlower && least <= down.least(amps).seconds && most <= down.most(amps).seconds
		if most < down.least(amps).seconds {
			contrary = min(contrary, amps)
		}
		switch {
		case down.most(amps).seconds > least:
			first = min(first, amps)
		case math.IsInf(first, 1):
			sure = amps
		}
	}
	v := Verdict{Answer: Yes, Recalled: anyRecalled(down) || anyRecalled(up)}
	if math.IsInf(first, 1) {
		v.Why = fmt.Sprintf("up to %s A %s has opened before %s may%s", figures(faultAmps), down.name(), up.name(), warning(v.Recalled))
		return v
	}
	first = firstOpen(down, up, sure, first)
	_, opens := up.SlowestWithin(faultAmps)
	switch {
	case !math.IsInf(contrary, 1):
		v.Answer = No
		v.Why = fmt.Sprintf("at %s A %s, but %s", figures(contrary), up.says(up.most(contrary)), down.says(down.least(contrary)))
	case opens && noSlower:
		v.Answer = No
		v.Why = fmt.Sprintf("from %s A on %s opens as soon as %s by every gate%s", figures(first), up.name(), down.name(), warning(v.Recalled))
	default:
		v = openAt(down, up, first)
	}
	v.From = rounded(first)
	return v
}

// firstOpen is the least current, between one at which two devices are surely selective
// and one at which they are not, at which they are not.
func firstOpen(down, up Curve, sure, open float64) float64 {
	for range 60 {
		amps := (sure + open) / 2
		if down.most(amps).seconds <= up.least(amps).seconds {
			sure = amps
		} else {
			open = amps
		}
	}
	return open
}

// unknown says of which of two devices nothing is known.
func unknown(down, up Curve) string {
	if len(down.gates) == 0 {
		return down.silent("")
	}
	return up.silent("")
}

// openAt says why at a current it is not known which of two devices opens first.
func openAt(down, up Curve, amps float64) Verdict {
	d, u := down.Band(amps), up.Band(amps)
	v := Verdict{Answer: NotKnown, Recalled: d.Recalled || u.Recalled}
	switch {
	case u.Known && u.Least == 0:
		v.Why = fmt.Sprintf("at %s A nothing says how long %s holds%s", figures(amps), up.name(), warning(v.Recalled))
	case !d.Known:
		v.Why = down.silent(" at " + figures(amps) + " A")
	case !u.Known:
		v.Why = up.silent(" at " + figures(amps) + " A")
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
// change: the ends, each gate of the curves, where it comes down to 0.01 s, and the currents
// next to it. Between two of them every bound is constant or falls with the square of the
// current, so what holds at both holds between.
func edges(from, to float64, curves ...Curve) []float64 {
	at := []float64{from, to}
	for _, c := range curves {
		for _, g := range c.gates {
			at = append(at, g.Amps, g.Amps*math.Sqrt(g.Most/adiabatic))
		}
		at = append(at, c.adiabaticFrom())
	}
	for _, a := range slices.Clone(at) {
		at = append(at, math.Nextafter(a, 0), math.Nextafter(a, math.Inf(1)))
	}
	at = slices.DeleteFunc(at, func(a float64) bool { return a < from || a > to })
	slices.Sort(at)
	return slices.Compact(at)
}
