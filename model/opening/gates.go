package opening

import (
	"math"
	"slices"
)

// FromMemory is said of every figure that was not read in print; a verdict that rests on
// one says so.
const FromMemory = "from memory; to be confirmed by the maker's data sheet"

// Spans of time in seconds, as the standards state them.
const (
	minute = 60
	hour   = 3600
)

// Gates is a family of protective devices with the time-current gates of its standard.
type Gates struct {
	Name     string // what a job file and the parts library call it
	Title    string // what the devices are called in the trade
	Source   string // the standard
	Recalled bool   // most of its gates were put down from memory
	Caution  string // what the gates do not say; empty if nothing

	// ShortCircuitOnly devices must not be relied on below the least current that they
	// break, which only their maker states.
	ShortCircuitOnly bool

	breaker  bool     // opened by a release, not by melting
	greatest float64  // rating in A at which the standard ends; 0 if not known
	rows     []row    // gates in multiples of the rating
	devices  []device // gates of single ratings, smallest rating first
	steps    int      // how many ratings apart two devices in series are selective by the standard; 0 if it does not say
}

// row is a gate at a multiple of the rated current, for a range of ratings.
type row struct {
	over, upTo float64 // ratings in A that it holds for; upTo 0 is without end
	times      float64 // current in multiples of the rating
	least      float64 // holds for so long in s; 0 if nothing is said
	most       float64 // has opened after so long in s; 0 if nothing is said
	ac         bool    // stated for alternating current and no bound on direct current
	recalled   bool
}

// device is one rating with its own gates.
type device struct {
	rated  float64
	gates  []Gate
	preArc float64 // least I2t before it arcs in A2s, at 0.01 s; 0 if not stated
	total  float64 // greatest I2t until it has opened in A2s, at 0.01 s; 0 if not stated
}

// Gate is a bound on the opening time at one current.
type Gate struct {
	Amps     float64
	Least    float64 // holds for so long in seconds; 0 if nothing is said, infinite for ever
	Most     float64 // has opened after so long in seconds; infinite if nothing is said
	Recalled bool    // put down from memory
}

// Find is the family of a name. It reports false if there is none.
func Find(name string) (Gates, bool) {
	all := All()
	i := slices.IndexFunc(all, func(g Gates) bool { return g.Name == name })
	if i < 0 {
		return Gates{}, false
	}
	return all[i], true
}

// Ratings lists the rated currents in amperes that the standard gives gates for one by
// one, smallest first. It is empty for a family whose gates are multiples of the rating.
func (g Gates) Ratings() []float64 {
	ratings := make([]float64, len(g.devices))
	for i, d := range g.devices {
		ratings[i] = d.rated
	}
	return ratings
}

// covers reports whether the standard has gates for a rating.
func (g Gates) covers(rated float64) bool {
	if n := len(g.devices); n > 0 {
		return g.devices[0].rated <= rated && rated <= g.devices[n-1].rated
	}
	return rated > 0 && !math.IsInf(rated, 1) && (g.greatest == 0 || rated <= g.greatest)
}

// carries is the row of the rated current: by definition the device carries it for ever.
var carries = row{times: 1, least: math.Inf(1)}

// of is the row as a gate of a device of a rating.
func (r row) of(rated float64) Gate {
	g := Gate{Amps: r.times * rated, Least: r.least, Most: r.most, Recalled: r.recalled}
	if g.Most == 0 {
		g.Most = math.Inf(1)
	}
	return g
}

// made is what the standard says of one rating: the rows that hold for it on direct
// current, and its own gates if it is one of the ratings of the standard.
func (g Gates) made(rated float64) device {
	d := device{rated: rated}
	for _, r := range g.rows {
		if !r.ac && rated > r.over && (r.upTo == 0 || rated <= r.upTo) {
			d.gates = append(d.gates, r.of(rated))
		}
	}
	if i := slices.Index(g.Ratings(), rated); i >= 0 {
		d.preArc, d.total = g.devices[i].preArc, g.devices[i].total
		d.gates = append(d.gates, g.devices[i].gates...)
	}
	return d
}

// neighbours are the ratings of the standard next to a rating that it covers: the same
// one twice if it is one of them, or if the standard has gates for every rating.
func (g Gates) neighbours(rated float64) (below, above float64) {
	ratings := g.Ratings()
	i, found := slices.BinarySearch(ratings, rated)
	if found || len(ratings) == 0 {
		return rated, rated
	}
	return ratings[i-1], ratings[i]
}
