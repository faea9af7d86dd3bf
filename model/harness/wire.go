package harness

import (
	"slices"

	"example.com/lugbook/model"
)

// Basis says where a wire's length comes from, or why there is none.
type Basis string

// The bases, best first.
const (
	Measured Basis = "measured"                 // along the conductor
	ByRuns   Basis = "runs"                     // sum of the runs, slack for new lugs, without tails
	Inside   Basis = "inside one zone"          // no run says anything
	NoWay    Basis = "no run recorded"          // nothing joins its zones
	NoZone   Basis = "zone of an end not known" // or a part in no zone
)

// Wire is a wire with its way and its length.
type Wire struct {
	Wire     *model.Wire
	From, To model.ZoneID    // of its ends; empty if not known
	Along    []model.ZoneID  // zones that it passes, both ends included; nil if its way is not known
	Gap      [2]model.ZoneID // two zones that no run joins, where the basis is NoWay
	Basis    Basis
	RunSum   float64 // metres of the runs along its way
	Slack    float64 // metres that its lugs take when they are made anew; 0 if the gauge is not known
	Length   float64 // metres: measured, or the least that the runs ask for; 0 if neither is known

	runs []int
}

// stays reports whether the wire lies in one zone alone.
func (w *Wire) stays() bool { return len(w.runs) == 0 && w.From == w.To }

func (m *routes) wire(s *model.Sheet, w *model.Wire) Wire {
	out := Wire{Wire: w, From: zoneOf(s, w.From), To: zoneOf(s, w.To)}
	m.way(&out)
	out.Slack = slack(w)
	switch {
	case !w.Length.IsZero():
		out.Basis, out.Length = Measured, w.Length.Metres()
	case out.Basis == ByRuns:
		out.Length = roundUp(out.RunSum+out.Slack, w)
	}
	return out
}

// way finds the zones and runs that a wire passes: those recorded with it, else the
// shortest way between its ends.
func (m *routes) way(w *Wire) {
	along := slices.Clone(w.Wire.Via)
	if len(along) > 1 && along[0] == w.To && along[len(along)-1] == w.From && w.From != w.To {
		slices.Reverse(along)
	}
	if len(along) < 2 {
		switch {
		case w.From == "" || w.To == "":
			w.Basis = NoZone
			return
		case w.From == w.To:
			w.Basis, w.Along = Inside, []model.ZoneID{w.From}
			return
		}
		if along = m.shortest(w.From, w.To); along == nil {
			w.Basis, w.Gap = NoWay, [2]model.ZoneID{w.From, w.To}
			return
		}
	}
	var runs []int
	sum := 0.0
	for i := range along[1:] {
		r, ok := m.between(along[i], along[i+1])
		if !ok {
			w.Basis, w.Gap = NoWay, [2]model.ZoneID{along[i], along[i+1]}
			return
		}
		sum += m.runs[r].Length.Metres()
		if !slices.Contains(runs, r) {
			runs = append(runs, r)
		}
	}
	w.Basis, w.Along, w.RunSum, w.runs = ByRuns, along, sum, runs
}

func zoneOf(s *model.Sheet, e model.End) model.ZoneID {
	if e.IsLoose() {
		return e.In
	}
	if p := s.Part(e.At.Part); p != nil {
		return p.Zone
	}
	return ""
}
