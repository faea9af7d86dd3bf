package diagnose

import "math"

// Tie is a set of suspects that no reading on offer tells apart.
type Tie struct {
	Suspects    []int // in the verdict's order
	Probability float64
	Hidden      bool // they read like a sound sheet in every state that is offered
}

// Ties groups the leading suspects by what readings can tell apart: volts in every state,
// and ohms across each. At most some suspects are looked at; the rest are small.
func (c *Case) Ties(v *Verdict, most int) []Tie {
	suspects := v.alive()
	if len(suspects) > most {
		suspects = suspects[:most]
	}
	c.settle(v, suspects)
	var ties []Tie
	for i := range suspects {
		placed := false
		for k := range ties {
			if !c.separable(v, &suspects[ties[k].Suspects[0]], &suspects[i]) {
				ties[k].Suspects = append(ties[k].Suspects, i)
				ties[k].Probability += suspects[i].Probability
				placed = true
				break
			}
		}
		if !placed {
			ties = append(ties, Tie{Suspects: []int{i}, Probability: suspects[i].Probability})
		}
	}
	for k := range ties {
		first := &suspects[ties[k].Suspects[0]]
		ties[k].Hidden = !c.separable(v, first, v.sound())
	}
	return ties
}

// sound is the suspect that nothing is wrong.
func (v *Verdict) sound() *Suspect {
	for i := range v.Suspects {
		if v.Suspects[i].Family == Healthy {
			return &v.Suspects[i]
		}
	}
	return nil
}

// separable reports whether some reading on offer tells two suspects apart.
func (c *Case) separable(v *Verdict, a, b *Suspect) bool {
	if a.index == b.index {
		return false
	}
	for i := range c.points {
		if v.w.tells(a, b, &c.points[i]) {
			return true
		}
	}
	over := c.across([]Suspect{*a, *b}, 0)
	for i := range over {
		if v.w.tells(a, b, &over[i]) {
			return true
		}
	}
	return false
}

// tells reports whether two suspects predict a reading so differently that a meter tells.
func (w *weigher) tells(a, b *Suspect, o *observation) bool {
	x, y := w.span(a, o), w.span(b, o)
	if x.restless || y.restless {
		return false
	}
	gap := math.Max(x.lo-y.hi, y.lo-x.hi)
	return gap > apart*(w.sigma(o.kind, x.middle(), x)+w.sigma(o.kind, y.middle(), y))
}

// span is what a suspect predicts with all its sizes that are still likely.
func (w *weigher) span(s *Suspect, o *observation) span {
	all := span{restless: true}
	for _, p := range s.sizes {
		if p.share >= negligible*s.Probability {
			all = all.hull(w.predict(p, o))
		}
	}
	return all
}
