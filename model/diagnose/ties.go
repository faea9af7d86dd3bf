package diagnose

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
		ties[k].Hidden = !c.shows(v, &suspects[ties[k].Suspects[0]])
	}
	return ties
}

// shows reports whether a suspect of some size that is still likely reads otherwise than a
// sound sheet anywhere.
func (c *Case) shows(v *Verdict, s *Suspect) bool {
	over := c.across([]Suspect{*s}, 0)
	for _, p := range s.likely() {
		if c.told(v.w, p, size{}, over) {
			return true
		}
	}
	return false
}

// separable reports whether readings on offer tell two suspects apart, whatever their sizes
// are of those that are still likely.
func (c *Case) separable(v *Verdict, a, b *Suspect) bool {
	if a.index == b.index {
		return false
	}
	over := c.across([]Suspect{*a, *b}, 0)
	for _, p := range a.likely() {
		for _, q := range b.likely() {
			if !c.told(v.w, p, q, over) {
				return false
			}
		}
	}
	return true
}

// likely are the sizes of a suspect that are worth a thought.
func (s *Suspect) likely() []size {
	var list []size
	for _, p := range s.sizes {
		if p.share >= negligible*s.Probability {
			list = append(list, p)
		}
	}
	return list
}

// told reports whether some reading tells two faults of some size apart: one that is always
// on offer, or one of those over what the faults sit in.
func (c *Case) told(w *weigher, p, q size, over []observation) bool {
	if p.from == q.from && p.to == q.to {
		return false
	}
	for i := range c.points {
		s := c.points[i].state
		if w.p.got[p.from][s] == w.p.got[q.from][s] && w.p.got[p.to][s] == w.p.got[q.to][s] {
			continue
		}
		if w.tells(p, q, &c.points[i]) {
			return true
		}
	}
	for i := range over {
		if w.tells(p, q, &over[i]) {
			return true
		}
	}
	return false
}

// tells reports whether two faults predict a reading so differently that a meter tells.
func (w *weigher) tells(p, q size, o *observation) bool {
	x, y := w.predict(p, o), w.predict(q, o)
	if x.restless || y.restless {
		return false
	}
	if x.lo < y.lo {
		x, y = y, x
	}
	return x.lo-y.hi > apart*(w.sigma(o, x.lo, x)+w.sigma(o, y.hi, y))
}

// tellsSound reports whether a reading tells a suspect of some size from a sound sheet.
func (w *weigher) tellsSound(s *Suspect, o *observation) bool {
	for _, p := range s.likely() {
		if w.tells(p, size{}, o) {
			return true
		}
	}
	return false
}

// span is what a suspect predicts with all its sizes that are still likely.
func (w *weigher) span(s *Suspect, o *observation) span {
	all := span{restless: true}
	for _, p := range s.likely() {
		all = all.hull(w.predict(p, o))
	}
	return all
}
