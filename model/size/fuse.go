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
	Least  float64            // A that it must be rated for at least, by the lasting current
	Title  string             // what its family is called; empty if not stated
	Curve  opening.Curve      // when it opens; zero if the family is not stated

	// AsSlow is a fuse whose gates say that it carries the peaks of the duty, if the
	// device's own gates are not known in print: it must be as slow. Empty if there is
	// no need.
	AsSlow string
	Why    string // what set the rating
}

// slow is the family that stands for a fuse whose own gates do not tell, when its peaks
// are judged: general purpose, as slow as fuses for cables are.
const slow = "iec-60269-gg"

// fuseFor finds the smallest standard rating that carries the load: the lasting current
// with the margin, and every stage of the duty above the rating for its time.
func fuseFor(r Requirement) Fuse {
	f := Fuse{Least: (1 + r.Margin) * r.lasting(), Title: r.Opening.Title}
	f.Why = fmt.Sprintf("%s and %s more", amps(r.lasting()), percent(r.Margin))
	for _, size := range conductor.FuseSizes() {
		if size.Amperes < f.Least {
			continue
		}
		if f.Title != "" {
			f.Curve = opening.Of(r.Opening, size.Amperes)
			if len(f.Curve.Gates()) == 0 {
				continue // the family is not made for so much
			}
		}
		stage, carries := f.carries(size.Amperes, r.Duty)
		if !carries {
			f.Why = fmt.Sprintf("it must carry %s", rounded(heat.Duty{stage}))
			continue
		}
		f.Rating = size
		return f
	}
	f.Curve = opening.Curve{}
	return f
}

// carries reports whether a rating is sure to hold through each stage of a duty, or the
// first that it may not. Gates from memory promise nothing: then those of slow stand for
// them, and AsSlow says so.
func (f *Fuse) carries(rated float64, d heat.Duty) (heat.Stage, bool) {
	gates, _ := opening.Find(slow)
	stand := opening.Of(gates, rated)
	f.AsSlow = ""
	for _, s := range d {
		if s.Amps <= rated {
			continue
		}
		b := f.Curve.Band(s.Amps)
		if !b.Known || b.Recalled {
			b = stand.Band(s.Amps)
			f.AsSlow = stand.Title
		}
		if b.Least < s.Seconds {
			return s, false
		}
	}
	return heat.Stage{}, true
}

// kind is what the device is called in the trade.
func (f Fuse) kind() string {
	if f.Title == "" {
		return "fuse"
	}
	return f.Title
}

// longestFault is how many times its rating a device is watched over, if the fault
// current is not known.
const longestFault = 30
