package diagnose

import (
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
const leastBits = 0.01

// sure is the probability from which a suspect is taken for the cause. Our choice.
const sure = 0.995

// negligible is the probability below which a suspect is left out of what comes next.
// Our choice.
const negligible = 5e-4

// fewSuspects is the number of suspects up to which each is probed across. Our choice.
const fewSuspects = 24

// manySuspects is the number of suspects from which a person is not done yet. Our choice.
const manySuspects = 100

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
// It is false if one suspect is as good as sure, or no reading that is offered tells the
// suspects apart.
func (c *Case) Next(v *Verdict, from Place) (Proposal, bool) {
	suspects := v.alive()
	c.settle(v, suspects)
	if c.settled(v, suspects) {
		return Proposal{}, false
	}
	if first, ok := c.packFirst(v); ok {
		return c.propose(v, suspects, &first, from), true
	}
	here := max(0, c.stateNamed(from.State))
	probes := c.points
	if len(suspects) <= fewSuspects {
		probes = append(slices.Clone(probes), c.across(suspects, here)...)
	}
	if best, ok := c.best(v, probes, v.w.gains(suspects, probes), from); ok {
		return c.propose(v, suspects, best, from), true
	}
	probes, bits := c.single(v, suspects, here)
	if best, ok := c.best(v, probes, bits, from); ok {
		return c.propose(v, suspects, best, from), true
	}
	return Proposal{}, false
}

// settled reports whether the leader, with all that reads the same, is as good as sure.
// That nothing is wrong is never sure as long as a reading is left.
func (c *Case) settled(v *Verdict, suspects []Suspect) bool {
	if len(suspects) > manySuspects || !c.shows(v, &suspects[0]) {
		return false
	}
	alike := 0.0
	for i := range suspects {
		if !c.separable(v, &suspects[0], &suspects[i]) {
			alike += suspects[i].Probability
		}
	}
	return alike >= sure*(1-v.NotInList)
}

// best is the reading with most bits a minute that was not taken yet. It is false if none
// is worth its while.
func (c *Case) best(v *Verdict, probes []observation, bits []float64, from Place) (*observation, bool) {
	var best *observation
	most := 0.0
	for i := range probes {
		if bits[i] < leastBits || v.w.taken(&probes[i]) {
			continue
		}
		if rate := bits[i] / c.minutes(&probes[i], from); rate > most*(1+1e-9) {
			best, most = &probes[i], rate
		}
	}
	return best, best != nil
}

// single lists the readings across each of many suspects that tell it from a sound sheet,
// with the information that they bring about that suspect alone.
func (c *Case) single(v *Verdict, suspects []Suspect, here int) (probes []observation, bits []float64) {
	total := 0.0
	for i := range suspects {
		total += suspects[i].Probability
	}
	for i := range suspects {
		p := suspects[i].Probability / total
		for _, o := range c.across(suspects[i:i+1], here) {
			if suspects[i].Family != Healthy && v.w.tellsSound(&suspects[i], &o) {
				probes = append(probes, o)
				bits = append(bits, -plog(p)-plog(1-p))
			}
		}
	}
	return probes, bits
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

func (c *Case) propose(v *Verdict, suspects []Suspect, o *observation, from Place) Proposal {
	return Proposal{
		State: c.states[o.state].Name, Kind: o.kind, Red: c.n.Point(o.red).At, Black: c.n.Point(o.black).At,
		Bits: v.w.gain(candidates(suspects), o), Minutes: c.minutes(o, from), Outcomes: v.w.outcomes(suspects, o),
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
