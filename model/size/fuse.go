package size

import (
	"fmt"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/opening"
)

// Fuse is the protective device for a circuit.
type Fuse struct {
	Rating conductor.FuseSize // zero if no standard size is large enough
	Least  float64            // A that it must be rated for at least
	Curve  opening.Curve      // when it opens
	Title  string             // what its family is called; empty if not stated
	Slow   bool               // its family was not stated: it must be as slow as Curve
	Why    string             // what set the rating
}

// slow is the family that stands for a fuse whose family is not stated, when its peaks
// are judged: general purpose, as slow as fuses for cables are.
const slow = "iec-60269-gg"

// fuseFor finds the smallest standard rating that carries the load: the lasting current
// with the margin, and every stage of the duty above the rating for as long as the
// family promises. What was put down from memory promises nothing.
func fuseFor(r Requirement) Fuse {
	f := Fuse{Least: (1 + r.Margin) * r.lasting(), Slow: r.Opening.Name == "", Title: r.Opening.Title}
	f.Why = fmt.Sprintf("%s and %s more", amps(r.lasting()), percent(r.Margin))
	gates := r.Opening
	if f.Slow {
		gates, _ = opening.Find(slow)
	}
	for _, size := range conductor.FuseSizes() {
		if size.Amperes < f.Least {
			continue
		}
		curve := opening.Of(gates, size.Amperes)
		if !f.Slow && len(curve.Gates()) == 0 {
			continue // the family is not made for so much
		}
		if stage, ok := carriesAll(curve, r.Duty); !ok {
			f.Why = fmt.Sprintf("it must carry %s", stage)
			continue
		}
		f.Rating, f.Curve = size, curve
		return f
	}
	return f
}

// carriesAll reports whether a device is sure to hold through each stage of a duty, or
// the first that it may not.
func carriesAll(c opening.Curve, d heat.Duty) (heat.Stage, bool) {
	for _, s := range d {
		if s.Amps <= c.Rated {
			continue
		}
		if b := c.Band(s.Amps); b.Recalled || b.Least < s.Seconds {
			return s, false
		}
	}
	return heat.Stage{}, true
}

// longestFault is how many times its rating a device is watched over, if the fault
// current is not known.
const longestFault = 30

// kind is what the device is called in the trade.
func (f Fuse) kind() string {
	if f.Slow {
		return "fuse"
	}
	return f.Title
}
