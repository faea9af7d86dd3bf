package size

import (
	"fmt"
	"iter"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// Names that the parts library gives the ratings of a drive.
const (
	continuousRating = "continuous-current"
	peakRating       = "peak-current"
	peakTimeRating   = "peak-time"
	phaseRating      = "phase-current"
)

// UsualPeakSeconds is how long a drive is taken to give its peak if its record does not
// say. From memory: 5 to 30 s are usual.
const UsualPeakSeconds = 30

// Survey knows the currents of a sheet in all its states, with the drives at their
// continuous and at their peak ratings.
type Survey struct {
	n       *network.Network
	states  []solved
	feeds   []network.Feed // of known nominal voltage
	returns []bool         // nodes of the return side
	live    map[liveKey][]bool
	protect *network.Protection
	skipped []string // states with a short
	failed  []string // states that have no solution
}

// solved is one state.
type solved struct {
	at      state.State
	lasting *network.Solution
	peak    *network.Solution // drives at their peak; nil if none drives or states a peak
	seconds float64           // that the peak lasts
	assumed []string          // about the peak
}

// Of surveys a sheet. States in which something is shorted are left out, Skipped tells
// them; Unsolved tells those that could not be computed.
func Of(n *network.Network) *Survey {
	s := &Survey{n: n, protect: n.Protect(), returns: n.Returns(), live: map[liveKey][]bool{}}
	for _, at := range n.States() {
		s.solve(at)
		if all, more := at.AllOn(n.Sheet, n.Cat); more {
			all.Name += ", all on"
			s.solve(all)
		}
	}
	for _, f := range n.Feeds() {
		if f.Nominal.OK {
			s.feeds = append(s.feeds, f)
		}
	}
	return s
}

// solve adds a state to the survey.
func (s *Survey) solve(at state.State) {
	lasting, err := s.n.Solve(at)
	if err != nil {
		s.failed = append(s.failed, err.Error())
		return
	}
	if diode := s.shorted(lasting); diode != nil {
		s.skipped = append(s.skipped, fmt.Sprintf("%s: %s carries %s, a short circuit and no load",
			at.Name, diode.Part.ID, amps(math.Abs(lasting.Current(diode)))))
		return
	}
	one := solved{at: at, lasting: lasting}
	s.solvePeak(&one)
	s.states = append(s.states, one)
}

// shorted finds a diode that conducts more than it is rated for, as one does that is the
// wrong way round.
func (s *Survey) shorted(in *network.Solution) *network.Link {
	for i := range s.n.Links() {
		l := &s.n.Links()[i]
		if !l.Is(model.DiodeElement) {
			continue
		}
		if rated, ok := s.n.Figure(l.Part, l.Element.Amps); ok && math.Abs(in.Current(l)) > rated {
			return l
		}
	}
	return nil
}

// Skipped says which states were left out because something is shorted in them.
func (s *Survey) Skipped() []string { return s.skipped }

// Unsolved says which states could not be computed, and why: what flows in them is not known.
func (s *Survey) Unsolved() []string { return s.failed }

// solvePeak solves a state with each drive that drives at its peak current.
func (s *Survey) solvePeak(one *solved) {
	var v network.Variation
	for i := range s.n.Links() {
		l := &s.n.Links()[i]
		if !isDrive(l) || !one.lasting.On(l) {
			continue
		}
		lasting, peak := s.n.KnownFigure(l.Part, l.Element.Amps), s.n.KnownFigure(l.Part, peakRating)
		if !lasting.OK || !peak.OK || lasting.Value <= 0 || peak.Value <= lasting.Value {
			continue
		}
		v.Changes = append(v.Changes, network.Change{Link: l, Scale: peak.Value / lasting.Value})
		seconds, stated := s.peakSeconds(l.Part)
		one.seconds = max(one.seconds, seconds)
		if !stated {
			one.assume("%s peaks for %s", l.Part.ID, duration(seconds))
		}
		for _, k := range []struct {
			name string
			network.Known
		}{{"continuous", lasting}, {"peak", peak}} {
			if k.IsTypical() {
				one.assume("%s %s current of %s", l.Part.ID, k.name, amps(k.Value))
			}
		}
	}
	if len(v.Changes) == 0 {
		return
	}
	peak, err := s.n.SolveWith(one.at, v)
	if err != nil {
		one.assume("no peak: %s", err)
		return
	}
	one.peak = peak
}

func (o *solved) assume(format string, args ...any) {
	o.assumed = append(o.assumed, fmt.Sprintf(format, args...))
}

// isDrive reports whether a link is the load by which a drive takes its current.
func isDrive(l *network.Link) bool {
	return l.Is(model.LoadElement) && l.Def.Family == model.Drive && l.Element.Amps == continuousRating
}

// peakSeconds is how long a drive gives its peak, and whether its record says so.
func (s *Survey) peakSeconds(p *model.Part) (float64, bool) {
	if r, ok := s.n.Cat.RatingOf(p, peakTimeRating); ok {
		if t, ok := r.Value.Second(); ok && t.Seconds() > 0 {
			return t.Seconds(), r.Source != model.Typical
		}
	}
	return UsualPeakSeconds, false
}

// Lasting lists the states of the survey, those with everything on among them, each with its
// solution with the drives at their continuous ratings.
func (s *Survey) Lasting() iter.Seq2[state.State, *network.Solution] {
	return func(yield func(state.State, *network.Solution) bool) {
		for i := range s.states {
			if !yield(s.states[i].at, s.states[i].lasting) {
				return
			}
		}
	}
}
