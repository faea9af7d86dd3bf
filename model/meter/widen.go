package meter

import (
	"math"
	"sort"

	"example.com/lugbook/model/unit"
)

// cause is how far an input moves a reading.
type cause struct {
	why    string
	moved  float64
	always bool // named as soon as it moves the reading at all
}

// spread widens a reading by its inputs. Those that vary by chance are independent: they
// count as the root of the sum of their squares (JCGM 100:2008, 5.1.2). The charge of the
// pack does not vary by chance: both its ends are added in full.
func (b *Bench) spread(r Reading, moved func(i int) (float64, bool)) Reading {
	var causes []cause
	square, up, down := 0.0, 0.0, 0.0
	for i, in := range b.inputs {
		ends := []float64{b.by(2*i, r.Value, moved)}
		if in.low != nil {
			ends = append(ends, b.by(2*i+1, r.Value, moved))
		}
		most := 0.0
		for _, d := range ends {
			most = max(most, math.Abs(d))
			if in.ranged {
				up, down = max(up, d), min(down, d)
			}
		}
		if !in.ranged {
			square += most * most
		}
		causes = append(causes, cause{in.why, most, in.always})
	}
	r.High += up + math.Sqrt(square)
	r.Low += down - math.Sqrt(square)
	r.Why = append(r.Why, telltale(causes, r.High-r.Low)...)
	return r
}

// by is how far the reading moves with one input at another figure. One that leaves the
// sheet without rest tells nothing.
func (b *Bench) by(i int, value float64, moved func(i int) (float64, bool)) float64 {
	if v, ok := moved(i); ok {
		return v - value
	}
	return 0
}

// telltale names the inputs that make up most of the width, the widest first.
func telltale(causes []cause, width float64) []string {
	sort.SliceStable(causes, func(i, j int) bool { return causes[i].moved > causes[j].moved })
	var list []string
	for _, c := range causes {
		if c.moved > negligible && (c.always || c.moved > telling*width) {
			list = append(list, c.why)
		}
	}
	return list
}

// finish adds what no sheet shows and what the meter itself may be off by.
func (b *Bench) finish(r Reading, stray float64) Reading {
	r.Low -= stray
	r.High += stray
	by, name := b.By, "a meter of "
	if r.Unit == unit.Current {
		by, name = clamp, "a clamp of "
	}
	r.Off = by.Off(r.Unit, r.Value)
	switch {
	case !by.Assumed:
	case b.By.Assumed:
		r.Why = append(r.Why, name+by.String())
	default:
		r.Why = append(r.Why, name+by.figures()+", assumed: of the meter only its accuracy on volts and ohms is recorded")
	}
	return r
}
