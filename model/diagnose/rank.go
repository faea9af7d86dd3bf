package diagnose

import (
	"cmp"
	"math"
	"slices"

	"example.com/lugbook/model"
)

// Unlisted is the share that is kept for what is not in the list, before any reading.
const Unlisted = 0.02

// slip is the share of readings that mean nothing: a probe on paint, a digit misread. Our
// choice; it keeps one slip from ruling a fault out for ever.
const slip = 0.002

// Suspect is a fault with what the readings make of it.
type Suspect struct {
	Fault
	Probability float64
	Agrees      []float64 // by reading: how many standard deviations it is off, at best
	Predicts    []Band    // by reading

	index int
	sizes []size
}

// Band is what is predicted of one reading: anything from Low to High in volts, amperes
// or ohms.
type Band struct {
	Low, High float64
	Floating  bool // nothing holds the probes
	Restless  bool // the sheet comes to no rest, so that anything may show
}

// size is a fault of one size with its share of the probability.
type size struct {
	from, to int // variants
	share    float64
}

// Verdict is what readings make of the faults of a sheet.
type Verdict struct {
	Suspects    []Suspect // all faults, the likeliest first
	NotInList   float64   // probability that it is something else
	Expected    []Band    // by reading: what the sound sheet gives
	Contradicts []int     // readings that no single fault on the list gives
	PackRead    bool      // the pack's voltage was read, and the rest scaled to it
	PackScale   float64   // its voltage as read, against the record

	w *weigher
}

// weigher weighs faults against some readings.
type weigher struct {
	c        *Case
	p        *solver
	read     bool
	seen     []observation
	complain *complaint
}

// Rank weighs the faults against readings; the order of the readings does not matter.
// complaint is a name of [Complaints], a part with the word dead, or empty. The error names what is not on the sheet.
func (c *Case) Rank(readings []model.Reading, complaint string) (*Verdict, error) {
	w := &weigher{c: c}
	for i := range readings {
		o, err := c.observe(&readings[i])
		if err != nil {
			return nil, err
		}
		w.seen = append(w.seen, o)
	}
	if complaint != "" {
		found, err := c.findComplaint(complaint)
		if err != nil {
			return nil, err
		}
		w.complain = found
	}
	return c.weigh(w), nil
}

func (c *Case) weigh(w *weigher) *Verdict {
	scale, read := c.calibrate(w.seen)
	w.read, w.p = read, c.solverFor(scale)
	var states []int
	for i := range w.seen {
		states = append(states, w.seen[i].state)
	}
	if w.complain != nil {
		states = append(states, c.stateNamed(w.complain.state))
	}
	states = distinct(states)
	w.p.ensure(c.everyVariant(), states)
	v := &Verdict{PackRead: read, PackScale: 1, w: w}
	if read {
		v.PackScale = scale
	}
	logs := make([]float64, 0, 2*len(c.faults))
	prior := w.priors()
	for i := range c.faults {
		s := Suspect{Fault: c.faults[i], index: i}
		for _, p := range c.sizes(i) {
			logs = append(logs, math.Log(prior[i]*p.share*(1-Unlisted))+w.logLikelihood(p))
			s.sizes = append(s.sizes, p)
		}
		v.Suspects = append(v.Suspects, s)
	}
	other := math.Log(Unlisted)
	for i := range w.seen {
		other += math.Log(w.flat(&w.seen[i]))
	}
	v.share(logs, other)
	v.explain()
	return v
}

// share turns logarithms of prior times likelihood into probabilities and orders the
// suspects.
func (v *Verdict) share(logs []float64, other float64) {
	top := max(other, slices.Max(logs))
	sum := math.Exp(other - top)
	for _, l := range logs {
		sum += math.Exp(l - top)
	}
	v.NotInList = math.Exp(other-top) / sum
	k := 0
	for i := range v.Suspects {
		s := &v.Suspects[i]
		for j := range s.sizes {
			s.sizes[j].share = math.Exp(logs[k]-top) / sum
			s.Probability += s.sizes[j].share
			k++
		}
	}
	slices.SortStableFunc(v.Suspects, func(a, b Suspect) int {
		return cmp.Or(cmp.Compare(grain(b.Probability), grain(a.Probability)), a.index-b.index)
	})
}

// grain is a probability without what rounding adds to it, so that those that are equal stay
// in the order of the list.
func grain(p float64) float64 {
	const grains = 1e9 // to a factor e
	return math.Round(math.Log(p) * grains)
}

// explain fills in what each suspect predicts of each reading, and which readings nothing
// predicts.
func (v *Verdict) explain() {
	w := v.w
	closest := make([]float64, len(w.seen))
	for k := range closest {
		o := &w.seen[k]
		closest[k] = math.Inf(1)
		v.Expected = append(v.Expected, bandOf(o.kind, w.p.predict(0, o)))
		for i := range v.Suspects {
			s := &v.Suspects[i]
			least, all := math.Inf(1), span{restless: true}
			for _, p := range s.sizes {
				at := w.predict(p, o)
				all = all.hull(at)
				off := at.off(o.value) / w.sigma(o, o.value, at)
				if at.restless {
					off = 0
				}
				least = min(least, off)
			}
			s.Agrees = append(s.Agrees, least)
			s.Predicts = append(s.Predicts, bandOf(o.kind, all))
			closest[k] = min(closest[k], least)
		}
		if closest[k] > Clear {
			v.Contradicts = append(v.Contradicts, k)
		}
	}
}

// Clear is the number of standard deviations from which two readings are not the same.
// Our choice.
const Clear = 3

// bandOf is a span in the unit of its reading.
func bandOf(kind Kind, s span) Band {
	b := Band{Low: s.lo, High: s.hi, Floating: s.floating, Restless: s.restless}
	if kind == Ohms {
		b.Low, b.High = max(0, math.Pow(10, s.lo)-leadOhms), max(0, math.Pow(10, s.hi)-leadOhms)
	}
	return b
}

// predict is what a fault of one size gives at an observation's place.
func (w *weigher) predict(p size, o *observation) span {
	got := w.p.predict(p.from, o)
	if p.to != p.from {
		got = got.hull(w.p.predict(p.to, o))
	}
	return got
}

func (w *weigher) logLikelihood(p size) float64 {
	sum := 0.0
	for i := range w.seen {
		o := &w.seen[i]
		flat := w.flat(o)
		at := w.predict(p, o)
		if at.restless {
			sum += math.Log(flat)
			continue
		}
		sum += math.Log((1-slip)*at.density(o.value, w.sigma(o, o.value, at)) + slip*flat)
	}
	if w.complain != nil {
		sum += math.Log(w.complained(p))
	}
	return sum
}

// flat is the density of a reading of which nothing is known.
func (w *weigher) flat(o *observation) float64 {
	switch o.kind {
	case Ohms:
		return 1 / (logOhms(openOhms) - logOhms(0))
	case Amps:
		return 1.0 / 200
	}
	return 1 / (2 * w.c.volts)
}

// sizes are a fault's sizes, each with the same share.
func (c *Case) sizes(i int) []size {
	v := c.faults[i].variants
	if len(v) == 1 {
		return []size{{v[0], v[0], 1}}
	}
	var list []size
	for k := range len(v) - 1 {
		list = append(list, size{v[k], v[k+1], 1 / float64(len(v)-1)})
	}
	return list
}

func (c *Case) everyVariant() []int {
	list := make([]int, len(c.variants))
	for i := range list {
		list[i] = i
	}
	return list
}

// stateNamed is the number of a state; -1 if the sheet has not that state.
func (c *Case) stateNamed(name string) int {
	for i := range c.states {
		if c.states[i].Name == name {
			return i
		}
	}
	return -1
}

// distinct sorts and drops what is there twice or is not at all.
func distinct(list []int) []int {
	slices.Sort(list)
	return slices.DeleteFunc(slices.Compact(list), func(i int) bool { return i < 0 })
}
