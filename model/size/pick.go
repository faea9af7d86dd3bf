package size

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/unit"
)

// Series is a range of sizes to pick from.
type Series string

// The two ranges.
const (
	American Series = "AWG"
	Metric   Series = "mm2"
)

// Sizes lists the sizes of a series, thinnest first: 22 to 4/0 AWG, or IEC 60228 class 5
// from 0.5 to 120 mm2.
func (s Series) Sizes() []unit.Gauge {
	if s == Metric {
		return conductor.MetricSizes()
	}
	return unit.AWGSizes()
}

// SeriesOf is the series that a size belongs to.
func SeriesOf(g unit.Gauge) Series {
	if !g.IsZero() && !g.IsAWG() {
		return Metric
	}
	return American
}

// Choice is the conductor and the fuse for a requirement, and why.
type Choice struct {
	Required   Requirement // with its defaults
	Series     Series
	Fuse       Fuse        // zero if none is asked for
	Gauge      unit.Gauge  // zero if no size satisfies everything
	Why        string      // why there is none
	Decided    []Demand    // what the next thinner size fails, the most demanding first
	RunnerUp   Need        // what would decide next if those did not; zero if nothing asks for more than the thinnest
	Needs      []Need      // what each demand asks for by itself, in the order of Demands
	Candidates []Candidate // all sizes, thinnest first
}

// Need is the thinnest size that satisfies one demand.
type Need struct {
	Demand Demand
	Gauge  unit.Gauge // zero if none does
}

// Pick chooses the thinnest size of a series that satisfies a requirement. A requirement
// that no size satisfies is a Choice that says why. The error says what the requirement
// lacks.
func Pick(r Requirement, s Series) (Choice, error) {
	r = r.Complete()
	if err := r.Check(); err != nil {
		return Choice{}, err
	}
	c := Choice{Required: r, Series: s}
	if !r.Unfused {
		c.Fuse = fuseFor(r)
	}
	for _, g := range s.Sizes() {
		c.Candidates = append(c.Candidates, r.judge(g, c.Fuse))
	}
	for _, d := range Demands() {
		if need, asked := c.need(d); asked {
			c.Needs = append(c.Needs, need)
		}
	}
	c.decide()
	return c, nil
}

// Judge holds any other size against the choice's requirement and fuse, such as the one
// that is there now.
func (c Choice) Judge(g unit.Gauge) Candidate { return c.Required.judge(g, c.Fuse) }

// Chosen is the candidate that was picked; false if there is none.
func (c Choice) Chosen() (Candidate, bool) {
	i := c.index()
	if i < 0 {
		return Candidate{}, false
	}
	return c.Candidates[i], true
}

func (c Choice) index() int {
	return slices.IndexFunc(c.Candidates, func(x Candidate) bool { return x.Gauge == c.Gauge })
}

// need is the thinnest size that does not fail a demand; asked is false if the demand
// has no verdicts.
func (c Choice) need(d Demand) (n Need, asked bool) {
	n.Demand = d
	for _, x := range c.Candidates {
		v, ok := x.Verdict(d)
		asked = asked || ok
		if ok && v.Status != Failed && n.Gauge.IsZero() {
			n.Gauge = x.Gauge
		}
	}
	return n, asked
}

// decide finds the thinnest size that fails nothing, and which demands decided.
func (c *Choice) decide() {
	i := slices.IndexFunc(c.Candidates, Candidate.Satisfies)
	if i < 0 {
		c.explain()
		return
	}
	c.Gauge = c.Candidates[i].Gauge
	if i > 0 {
		c.Decided = c.Candidates[i-1].Fails()
	}
	slices.SortStableFunc(c.Decided, func(a, b Demand) int { return c.gaugeFor(b).Compare(c.gaugeFor(a)) })
	for _, n := range c.Needs {
		thinnest := n.Gauge == c.Candidates[0].Gauge
		if !slices.Contains(c.Decided, n.Demand) && !thinnest && n.Gauge.Compare(c.RunnerUp.Gauge) > 0 {
			c.RunnerUp = n
		}
	}
}

func (c *Choice) gaugeFor(d Demand) unit.Gauge {
	for _, n := range c.Needs {
		if n.Demand == d {
			return n.Gauge
		}
	}
	return unit.Gauge{}
}

// explain says why no size satisfies everything: demands that none meets, or two that no
// size meets together.
func (c *Choice) explain() {
	var reasons []string
	last := c.Candidates[len(c.Candidates)-1]
	for _, n := range c.Needs {
		if !n.Gauge.IsZero() {
			continue
		}
		v, _ := last.Verdict(n.Demand)
		reasons = append(reasons, fmt.Sprintf("%s: %s %s", n.Demand, last.Gauge, v.Text))
	}
	if len(reasons) == 0 {
		for _, v := range last.Verdicts {
			if v.Status == Failed {
				reasons = append(reasons, fmt.Sprintf("%s: only thinner sizes; %s %s", v.Demand, last.Gauge, v.Text))
			}
		}
	}
	c.Why = "no size from " + c.Candidates[0].Gauge.String() + " to " + last.Gauge.String() +
		" satisfies everything: " + strings.Join(reasons, "; ")
}
