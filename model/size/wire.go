package size

import (
	"cmp"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/unit"
)

// idle is the current in A below which a conductor carries nothing that its size goes
// by: signals and meters. Own line, no source.
const idle = 50e-3

// Load is what a wire carries in the worst of the states.
type Load struct {
	Amps    float64   // all the time
	State   string    // in which it does
	Duty    heat.Duty // if a drive's peak flows in it
	Phase   bool      // it is a motor phase, by the drive's rating
	Assumed []string

	worst *solved
}

// solution is the state of the load as solved; nil if it was not found in any.
func (l Load) solution() *network.Solution {
	if l.worst == nil {
		return nil
	}
	return l.worst.lasting
}

// Load finds the current of a wire of the sheet over all states.
func (s *Survey) Load(w *model.Wire) Load {
	l := s.n.WireLink(w.ID)
	load := s.Most(func(in *network.Solution) float64 { return math.Abs(in.Current(l)) })
	if phase, ok := s.phase(l); ok && load.Amps < idle {
		return phase
	}
	return load
}

// Most finds the largest current of something over all states. of is its size in amperes in
// one solution.
func (s *Survey) Most(of func(*network.Solution) float64) Load {
	var load Load
	peak := 0.0
	for i := range s.states {
		one := &s.states[i]
		lasting := of(one.lasting)
		if lasting > load.Amps*(1+1e-6) { // the first of equal ones
			load.Amps, load.State, load.worst = lasting, one.at.Name, one
		}
		if one.peak == nil {
			continue
		}
		if a := of(one.peak); a > peak && a > lasting*(1+sameCurrent) {
			peak = a
			load.Duty, load.Assumed = heat.FromRatings(lasting, a, one.seconds), one.assumed
		}
	}
	return load
}

// phase is the load of a motor phase, which no computation with direct current tells: by
// the rating of the drive, with its continuous share as on the battery side.
func (s *Survey) phase(l *network.Link) (Load, bool) {
	for _, at := range []network.Node{l.A, l.B} {
		ref := s.n.Point(at).At
		p, t := s.n.Part(ref.Part), s.n.TerminalDef(ref)
		if p == nil || t == nil || t.Serves != model.Traction || t.Pole != "" || s.hasElement(at) {
			continue
		}
		phase, lasting, peak := s.n.KnownFigure(p, phaseRating), s.n.KnownFigure(p, continuousRating), s.n.KnownFigure(p, peakRating)
		if !phase.OK || !lasting.OK || !peak.OK || peak.Value <= lasting.Value {
			continue
		}
		seconds, stated := s.peakSeconds(p)
		share := phase.Value * lasting.Value / peak.Value
		load := Load{Amps: share, State: "driving", Phase: true, Duty: heat.FromRatings(share, phase.Value, seconds)}
		load.Assumed = append(load.Assumed, string(p.ID)+" phases carry "+amps(phase.Value)+" at the peak, and its continuous share otherwise")
		if !stated {
			load.Assumed = append(load.Assumed, string(p.ID)+" peaks for "+duration(seconds))
		}
		return load, true
	}
	return Load{}, false
}

// hasElement reports whether anything inside a part joins the node.
func (s *Survey) hasElement(at network.Node) bool {
	for _, l := range s.n.LinksAt(at) {
		if l.Wire == nil {
			return true
		}
	}
	return false
}

// Requirement is what is asked of a wire by a load.
func (s *Survey) Requirement(w *model.Wire, load Load) Requirement {
	l := s.n.WireLink(w.ID)
	var c chain
	if load.worst != nil {
		c = s.chainOf(load.worst.lasting, l)
	} else {
		s.add(&c, l)
	}
	r := Requirement{
		Continuous: load.Amps, Duty: load.Duty, Volts: s.nominal(load.solution(), l), Loop: c.metres,
		Insulation: w.Insulation.Degrees(), Bundle: s.n.Sheet.Bundled(w), Sheathed: w.Sheathed || w.Bundle != "",
		Studs: s.studs(w), Unfused: load.Phase, Assumed: slices.Clone(load.Assumed),
	}
	if load.worst != nil {
		c = s.circuitOf(load.worst.lasting, l, c, &r)
	}
	if c.unknown > 0 {
		r.assume("%d of %d lengths of %d m", c.unknown, len(c.wires), unknownMetres)
	}
	s.protection(&r, l, load)
	return r
}

// protection takes the family of the fuse from the devices that stand before the wire
// now, if they are of one, and the fault current that it must break.
func (s *Survey) protection(r *Requirement, l *network.Link, load Load) {
	name := ""
	for _, limit := range s.protect.Exposure(l).Limits {
		if limit.Part == nil || !limit.Is(model.FuseElement) {
			continue
		}
		family := limit.Part.Opening
		if family == "" {
			family = limit.Def.Opening
		}
		if name != "" && name != family {
			return
		}
		name = family
	}
	gates, ok := opening.Find(name)
	if !ok {
		return
	}
	r.Opening = gates
	if !gates.Recalled && load.worst != nil {
		r.Fault = s.fault(load.worst, l)
	}
}

// boltedOhms is the resistance of a bolted fault.
const boltedOhms = 1e-5

// fault is the largest current that a bolted fault at an end of a wire draws from the
// main string, full, over sound joints and before any contact moves; 0 if it cannot be
// computed.
func (s *Survey) fault(one *solved, l *network.Link) float64 {
	low, _, ok := s.n.Poles()
	if !ok {
		return 0
	}
	most := 0.0
	for _, end := range []network.Node{l.A, l.B} {
		shorted, err := s.n.SolveWith(one.at, network.Variation{
			Held: one.lasting, Changes: s.n.FullCharge(), Sound: true, Bridges: []network.Bridge{{A: end, B: low, Ohms: boltedOhms}},
		})
		if err == nil {
			most = max(most, math.Abs(shorted.BridgeCurrent(0)))
		}
	}
	return most
}

// studs lists the studs that a wire's lugs go on: as measured, else by the library.
func (s *Survey) studs(w *model.Wire) []unit.Stud {
	var list []unit.Stud
	for _, e := range w.Ends() {
		var stud unit.Stud
		if t := s.n.Sheet.Terminal(e.At); t != nil {
			stud = t.Stud
		}
		if def := s.n.TerminalDef(e.At); stud.IsZero() && def != nil {
			stud = def.Stud
		}
		if !stud.IsZero() {
			list = append(list, stud)
		}
	}
	return list
}

// Row is a wire with the size that is there and the one that is needed.
type Row struct {
	Wire    *model.Wire
	Load    Load
	Idle    bool      // it carries next to nothing in any state that was computed: nothing is asked of it
	Choice  Choice    // zero if Idle or Missing
	Present Candidate // the size that is there; zero if it is not recorded
	Behind  float64   // A that the devices before it let through for ever; infinite if none limits it
	Missing string    // why no size was picked
}

// Options are what a person asks for beyond what the sheet says.
type Options struct {
	Series  Series  // to pick from; empty for that of each wire's own size
	Ambient float64 // C; 0 for the default
	Drop    float64 // share of the voltage; 0 for the default
	Margin  float64 // of the fuse; 0 for the default
}

// Row sizes one wire of the sheet.
func (s *Survey) Row(w *model.Wire, o Options) Row {
	row := Row{Wire: w, Load: s.Load(w), Behind: s.protect.Exposure(s.n.WireLink(w.ID)).Amps}
	switch {
	case len(s.states) == 0:
		row.Missing = "not computed in any state"
		return row
	case row.Load.Amps < idle:
		row.Idle = true
		return row
	}
	r := s.Requirement(w, row.Load)
	r.Ambient, r.Drop, r.Margin = o.Ambient, o.Drop, o.Margin
	choice, err := Pick(r, cmp.Or(o.Series, SeriesOf(w.Gauge)))
	if err != nil {
		row.Missing = err.Error()
		return row
	}
	row.Choice = choice
	if !w.Gauge.IsZero() {
		row.Present = choice.Judge(w.Gauge)
	}
	return row
}

// Rows sizes all wires of the sheet, in its order.
func (s *Survey) Rows(o Options) []Row {
	rows := make([]Row, len(s.n.Sheet.Wires))
	for i := range rows {
		rows[i] = s.Row(&s.n.Sheet.Wires[i], o)
	}
	return rows
}

// Thin reports whether the size that is there fails something.
func (r Row) Thin() bool { return len(r.Present.Fails()) > 0 }
