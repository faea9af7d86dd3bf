package diagnose

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// Proposal is a reading worth taking.
type Proposal struct {
	State      string
	Kind       Kind // volts, or ohms with the power off
	Red, Black model.TerminalRef
	Bits       float64 // information about what is wrong that it brings on average
	Minutes    float64
	Outcomes   []Outcome // what it may show, by falling probability
}

// Outcome is what a proposed reading may show, with the suspects that say so.
type Outcome struct {
	Band        Band
	Probability float64
	Suspects    []int // in the verdict's order
}

// leastBits is the information below which a reading is not worth its while. Our choice.
const leastBits = 0.05

// sure is the probability from which a suspect is taken for the cause. Our choice.
const sure = 0.97

// negligible is the probability below which a suspect is left out of what comes next.
// Our choice.
const negligible = 5e-4

// fewSuspects is the number of suspects from which each is probed across. Our choice.
const fewSuspects = 24

// alive lists the suspects that are worth a thought, and the readings they are told
// apart by.
func (v *Verdict) alive() []Suspect {
	most := 1 - v.NotInList
	n := 0
	for n < len(v.Suspects) && v.Suspects[n].Probability >= negligible*most {
		n++
	}
	return v.Suspects[:max(n, 1)]
}

// Next is the reading that brings most information a minute from where a person stands.
// It is false if no reading that is offered tells the suspects apart.
func (c *Case) Next(v *Verdict, from Place) (Proposal, bool) {
	suspects := v.alive()
	if suspects[0].Probability >= sure {
		return Proposal{}, false
	}
	c.settle(v, suspects)
	if first, ok := c.packFirst(v); ok {
		return c.propose(v, suspects, &first, from, v.w.gain(suspects, &first)), true
	}
	probes := c.points
	if len(suspects) <= fewSuspects {
		probes = append(slices.Clone(probes), c.across(suspects, max(0, c.stateNamed(from.State)))...)
	}
	bits := v.w.gains(suspects, probes)
	best, most := -1, 0.0
	for i := range probes {
		if bits[i] < leastBits || v.w.taken(&probes[i]) {
			continue
		}
		if rate := bits[i] / c.minutes(&probes[i], from); rate > most*(1+1e-9) {
			best, most = i, rate
		}
	}
	if best < 0 {
		return Proposal{}, false
	}
	return c.propose(v, suspects, &probes[best], from, bits[best]), true
}

// packFirst is the pack at rest if it was not read in any state of rest: every later
// reading is compared with it. Common practice.
func (c *Case) packFirst(v *Verdict) (observation, bool) {
	low, high, ok := c.n.Poles()
	if !ok {
		return observation{}, false
	}
	for _, s := range c.offered {
		o := observation{kind: Volts, state: s, red: high, black: low, link: -1}
		if c.atRest(s) {
			return o, !v.w.taken(&o)
		}
	}
	return observation{}, false
}

func (c *Case) propose(v *Verdict, suspects []Suspect, o *observation, from Place, bits float64) Proposal {
	return Proposal{
		State: c.states[o.state].Name, Kind: o.kind, Red: c.n.Point(o.red).At, Black: c.n.Point(o.black).At,
		Bits: bits, Minutes: c.minutes(o, from), Outcomes: v.w.outcomes(suspects, o),
	}
}

// settle solves the suspects in every state that is offered.
func (c *Case) settle(v *Verdict, suspects []Suspect) {
	variants := []int{0}
	for i := range suspects {
		variants = append(variants, suspects[i].variants...)
	}
	v.w.p.ensure(distinct(variants), c.offered)
}

// taken reports whether a reading was taken already.
func (w *weigher) taken(o *observation) bool {
	return slices.ContainsFunc(w.seen, func(s observation) bool {
		return s.kind == o.kind && s.state == o.state && (s.red == o.red && s.black == o.black || s.red == o.black && s.black == o.red)
	})
}

// gains is the information of each reading in bits. Volts are looked at side by side;
// ohms need solves of their own, one after the other.
func (w *weigher) gains(suspects []Suspect, probes []observation) []float64 {
	bits := make([]float64, len(probes))
	gain := func(i, _ int) { bits[i] = w.gain(suspects, &probes[i]) }
	var volts, ohms []int
	for i := range probes {
		if probes[i].kind == Ohms {
			ohms = append(ohms, i)
		} else {
			volts = append(volts, i)
		}
	}
	w.p.parallel(len(volts), []int{0}, gain, func(i int) int { return volts[i] })
	for _, i := range ohms {
		gain(i, 0)
	}
	return bits
}

// cluster is a set of predictions that a meter does not tell apart.
type cluster struct {
	at     span
	edge   float64 // the farthest that a reading of it may show
	weight float64
	of     []weighted
}

type weighted struct {
	suspect int
	share   float64
	at      span
	reach   float64
}

// apart is the number of standard deviations that a prediction reaches to either side.
// Our choice.
const apart = 1.5

// clusters groups what the suspects predict of a reading by what a meter tells apart.
// vague is the weight of what predicts nothing.
func (w *weigher) clusters(suspects []Suspect, o *observation) (list []cluster, vague float64) {
	var all []weighted
	for i := range suspects {
		for _, p := range suspects[i].sizes {
			if p.share < negligible*suspects[i].Probability {
				continue
			}
			at := w.predict(p, o)
			if at.restless {
				vague += p.share
				continue
			}
			all = append(all, weighted{i, p.share, at, apart * w.sigma(o.kind, at.middle(), at)})
		}
	}
	slices.SortStableFunc(all, func(a, b weighted) int {
		switch d := (a.at.lo - a.reach) - (b.at.lo - b.reach); {
		case d < 0:
			return -1
		case d > 0:
			return 1
		}
		return 0
	})
	for _, m := range all {
		if n := len(list); n > 0 && m.at.lo-m.reach <= list[n-1].edge {
			c := &list[n-1]
			c.at, c.edge, c.weight = c.at.hull(m.at), max(c.edge, m.at.hi+m.reach), c.weight+m.share
			c.of = append(c.of, m)
			continue
		}
		list = append(list, cluster{at: m.at, edge: m.at.hi + m.reach, weight: m.share, of: []weighted{m}})
	}
	return list, vague
}

// gain is the mutual information between what is wrong and what a reading shows, in bits:
// H(shown) less the mean of H(shown) with each suspect (Shannon).
func (w *weigher) gain(suspects []Suspect, o *observation) float64 {
	list, vague := w.clusters(suspects, o)
	if len(list) < 2 {
		return 0
	}
	total := 0.0
	within := make([]float64, len(suspects))
	for _, c := range list {
		total += c.weight
		for _, m := range c.of {
			within[m.suspect] += m.share
		}
	}
	bits := 0.0
	here := make([]float64, len(suspects))
	for _, c := range list {
		bits -= plog(c.weight / total)
		for _, m := range c.of {
			here[m.suspect] += m.share
		}
		for _, m := range c.of {
			if h := here[m.suspect]; h > 0 {
				bits += within[m.suspect] / total * plog(h/within[m.suspect])
				here[m.suspect] = 0
			}
		}
	}
	return max(0, bits) * total / (total + vague)
}

// plog is p times its binary logarithm.
func plog(p float64) float64 {
	if p <= 0 {
		return 0
	}
	return p * math.Log2(p)
}

// outcomes are what a reading may show, the likeliest first.
func (w *weigher) outcomes(suspects []Suspect, o *observation) []Outcome {
	list, vague := w.clusters(suspects, o)
	total := vague
	for _, c := range list {
		total += c.weight
	}
	var out []Outcome
	for _, c := range list {
		one := Outcome{Band: bandOf(o.kind, c.at), Probability: c.weight / total}
		for _, m := range c.of {
			if !slices.Contains(one.Suspects, m.suspect) {
				one.Suspects = append(one.Suspects, m.suspect)
			}
		}
		slices.Sort(one.Suspects)
		out = append(out, one)
	}
	slices.SortStableFunc(out, func(a, b Outcome) int {
		switch {
		case a.Probability > b.Probability:
			return -1
		case a.Probability < b.Probability:
			return 1
		}
		return 0
	})
	return out
}
