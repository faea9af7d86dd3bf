package diagnose

import (
	"cmp"
	"math"
	"slices"
)

// gains is the information of each reading in bits. Volts are looked at side by side;
// ohms need solves of their own, one after the other.
func (w *weigher) gains(suspects []Suspect, probes []observation) []float64 {
	bits := make([]float64, len(probes))
	cases := candidates(suspects)
	gain := func(i, _ int) { bits[i] = w.gain(cases, &probes[i]) }
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
	least   float64 // the least that it may show
	most    float64 // and the most
}

// apart is the number of standard deviations that a prediction reaches to either side.
// Our choice.
const apart = 1.5

// candidate is a suspect of one size with its share.
type candidate struct {
	suspect int
	size    size
}

// candidates lists the sizes of the suspects that are worth a thought. Suspects that are
// solved alike, such as the joints at both ends of a wire, are one to every meter.
func candidates(suspects []Suspect) []candidate {
	var list []candidate
	at := map[[2]int]int{}
	for i := range suspects {
		for _, p := range suspects[i].sizes {
			if p.share < negligible*suspects[i].Probability {
				continue
			}
			key := [2]int{p.from, p.to}
			k, known := at[key]
			if !known {
				k = len(list)
				at[key] = k
				list = append(list, candidate{suspect: i, size: size{from: p.from, to: p.to}})
			}
			list[k].size.share += p.share
		}
	}
	return list
}

// clusters groups what the candidates predict of a reading by what a meter tells apart.
// vague is the weight of what predicts nothing.
func (w *weigher) clusters(list []candidate, o *observation) (found []cluster, vague float64) {
	all, same := make([]weighted, 0, len(list)), make([]weighted, 0, len(list))
	for i := range list {
		if o.kind != Ohms && w.likeSound(list[i].size, o.state) {
			same = append(same, weighted{suspect: list[i].suspect, share: list[i].size.share})
			continue
		}
		m := w.weighted(list[i], o)
		if m.at.restless {
			vague += m.share
			continue
		}
		all = append(all, m)
	}
	if len(same) > 0 {
		m := w.weighted(candidate{suspect: soundOnes}, o)
		for i := range same {
			m.share += same[i].share
		}
		if m.at.restless {
			vague += m.share
		} else {
			all = append(all, m)
		}
	}
	slices.SortFunc(all, func(a, b weighted) int {
		return cmp.Or(cmp.Compare(a.least, b.least), a.suspect-b.suspect, cmp.Compare(a.at.hi, b.at.hi))
	})
	return join(all, same), vague
}

// soundOnes stands for all candidates that leave a state as the sound sheet has it.
const soundOnes = -1

// likeSound reports whether a candidate leaves a state as the sound sheet has it.
func (w *weigher) likeSound(p size, state int) bool {
	sound := w.p.got[0][state]
	return w.p.got[p.from][state] == sound && w.p.got[p.to][state] == sound
}

func (w *weigher) weighted(c candidate, o *observation) weighted {
	at := w.predict(c.size, o)
	below, above := apart*w.sigma(o, at.lo, at), apart*w.sigma(o, at.hi, at)
	return weighted{c.suspect, c.size.share, at, at.lo - below, at.hi + above}
}

// join makes clusters of predictions in rising order: those that overlap are one.
func join(all, same []weighted) []cluster {
	var found []cluster
	start := 0
	for i, m := range all {
		if n := len(found); n > 0 && m.least <= found[n-1].edge {
			c := &found[n-1]
			c.at, c.edge, c.weight = c.at.hull(m.at), max(c.edge, m.most), c.weight+m.share
			c.of = all[start : i+1]
			continue
		}
		start = i
		found = append(found, cluster{at: m.at, edge: m.most, weight: m.share, of: all[i : i+1]})
	}
	for i := range found {
		k := slices.IndexFunc(found[i].of, func(m weighted) bool { return m.suspect == soundOnes })
		if k >= 0 {
			found[i].of = slices.Concat(found[i].of[:k], found[i].of[k+1:], same)
		}
	}
	return found
}

// gain is the mutual information between what is wrong and what a reading shows, in bits:
// H(shown) less the mean of H(shown) with each suspect (Shannon).
func (w *weigher) gain(cases []candidate, o *observation) float64 {
	list, vague := w.clusters(cases, o)
	if len(list) < 2 {
		return 0
	}
	total := 0.0
	within := make([]float64, cases[len(cases)-1].suspect+1)
	for _, c := range list {
		total += c.weight
		for _, m := range c.of {
			within[m.suspect] += m.share
		}
	}
	bits := 0.0
	here := make([]float64, len(within))
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
	list, vague := w.clusters(candidates(suspects), o)
	total := vague
	for _, c := range list {
		total += c.weight
	}
	var out []Outcome
	for _, c := range list {
		one := Outcome{Band: bandOf(o.kind, c.at), Probability: c.weight / total}
		for i := range suspects {
			if at := w.span(&suspects[i], o); !at.restless && at.hi >= c.at.lo && at.lo <= c.at.hi {
				one.Suspects = append(one.Suspects, i)
			}
		}
		out = append(out, one)
	}
	slices.SortStableFunc(out, func(a, b Outcome) int { return cmp.Compare(b.Probability, a.Probability) })
	return out
}
