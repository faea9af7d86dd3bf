package size

import (
	"slices"

	"example.com/lugbook/model/unit"
)

// Demand is one of the things that a conductor must satisfy.
type Demand string

// The demands, in the order in which they are told.
const (
	Ampacity     Demand = "continuous current"
	ShortTime    Demand = "duty"
	Drop         Demand = "voltage drop"
	Fusing       Demand = "fuse"
	ShortCircuit Demand = "short circuit"
	Strength     Demand = "strength"
	Lug          Demand = "lug"
)

// Demands lists the demands in order.
func Demands() []Demand {
	return []Demand{Ampacity, ShortTime, Drop, Fusing, ShortCircuit, Strength, Lug}
}

// Status is what came of judging a conductor by a demand.
type Status string

// The outcomes. What was not asked for has no verdict at all.
const (
	Met       Status = "met"
	Failed    Status = "failed"
	NotJudged Status = "not judged" // something that it takes is not known
)

// Verdict is how a conductor stands to one demand.
type Verdict struct {
	Demand Demand
	Status Status
	Text   string // the figures, for a person
}

// Candidate is one size with its verdicts.
type Candidate struct {
	Gauge    unit.Gauge
	Verdicts []Verdict // in the order of Demands
	Amperes  float64   // what it carries all the time where it lies; 0 if the table does not cover it
}

// Satisfies reports whether no demand failed.
func (c Candidate) Satisfies() bool {
	return !slices.ContainsFunc(c.Verdicts, func(v Verdict) bool { return v.Status == Failed })
}

// Verdict is the candidate's verdict by a demand; false if it was not asked for.
func (c Candidate) Verdict(d Demand) (Verdict, bool) {
	i := slices.IndexFunc(c.Verdicts, func(v Verdict) bool { return v.Demand == d })
	if i < 0 {
		return Verdict{}, false
	}
	return c.Verdicts[i], true
}

// Fails lists the demands that the candidate fails.
func (c Candidate) Fails() []Demand {
	var list []Demand
	for _, v := range c.Verdicts {
		if v.Status == Failed {
			list = append(list, v.Demand)
		}
	}
	return list
}
