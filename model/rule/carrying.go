package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/unit"
)

// load is how a current compares with what a wire carries.
type load int

const (
	carried   load = iota // within the rule for the circuit's voltage
	strained              // within 150 % of the ampacity, though beyond the stricter rule from 50 V up
	over                  // beyond 150 % of the ampacity
	unsized               // the gauge is not recorded
	unclassed             // the insulation class is not recorded, and it decides
)

// The columns of the ampacity table at its two ends, in C: what a wire of unknown
// insulation carries at least, and at best.
const (
	worstClass = 60
	bestClass  = 200
)

// What goes before a wire below the ampacity table: FAA AC 43.13-1B table 11-3 gives a fuse of
// 5 A to 20 and 22 AWG, and a breaker of 7.5 A to 20 AWG.
const (
	thinAmperes = 5
	thinBreaker = 7.5
)

// thinMost is the largest device that the table puts before a wire that is below the ampacity
// table.
func thinMost(w *model.Wire) float64 {
	if w.Gauge.Compare(unit.AWG(20)) < 0 {
		return thinAmperes
	}
	return thinBreaker
}

// strainLimit is the share of the ampacity that no rule of 33 CFR 183.455(c) goes beyond.
const strainLimit = 1.5

// carrying is what a wire carries, as far as it is known.
type carrying struct {
	load  load
	amps  float64 // ampacity that was compared
	class float64 // insulation temperature in C that it holds for
	best  bool    // the insulation is not recorded; even the best class does not carry it
	thin  bool    // thinner than the table
	limit float64 // largest rating that the rule for the circuit's voltage allows
	rule  string  // that rule
	own   bool    // the job has chosen that limit, or the house rule has

	bundled int // wires in its bundle, if that is why it carries less
}

// loadOf compares the amperes that can persist in a wire with what it carries. nominal is
// the circuit's voltage. A wire of unknown insulation is only said to be strained or over
// if the best insulation would not help.
func (p *Pass) loadOf(w *model.Wire, amperes, nominal float64) carrying {
	if w.Gauge.IsZero() {
		return carrying{load: unsized}
	}
	if class := w.Insulation.Degrees(); class >= worstClass {
		return p.loadAt(w, amperes, nominal, class)
	}
	if c := p.loadAt(w, amperes, nominal, worstClass); c.thin {
		return c
	} else if c.load != over {
		c.load = carried
		return c
	}
	c := p.loadAt(w, amperes, nominal, bestClass)
	c.best = c.load == over
	if !c.best {
		c.load = unclassed
	}
	return c
}

func (p *Pass) loadAt(w *model.Wire, amperes, nominal, class float64) carrying {
	of := *w
	of.Insulation = unit.C(class)
	k := protect.CapacityOf(p.Job, p.Sheet, &of, nominal)
	if k.Missing != "" {
		c := carrying{amps: thinAmperes, limit: thinAmperes, class: class, thin: true}
		switch {
		case amperes > thinMost(&of):
			c.load = over
		case amperes > thinAmperes:
			c.load = strained
		}
		return c
	}
	c := carrying{amps: k.Amps, class: class, limit: k.Most, rule: k.Rule, own: p.ownShare(nominal)}
	if conductor.BundleFactor(k.Bundled, nominal) < 1 {
		c.bundled = k.Bundled
	}
	switch {
	case amperes <= c.limit:
		c.load = carried
	case amperes <= strainLimit*c.amps:
		c.load = strained
	default:
		c.load = over
	}
	return c
}

// ownShare reports whether the share of the ampacity that a device may be rated for in
// circuits of a voltage is the job's own choice or the house rule's.
func (p *Pass) ownShare(nominal float64) bool {
	if nominal < conductor.HighCircuit {
		return p.Job.OwnLimit(basis.FuseShare)
	}
	return p.Job.OwnLimit(basis.FuseShareHigh) || p.Job.OwnLimit(basis.FuseNextSize)
}

// strain is how grave a load is that no rule of 33 CFR 183.455(c) forbids in every circuit: a
// note, unless somebody chose the stricter limit.
func (c carrying) strain() Severity {
	if c.own {
		return Caution
	}
	return Note
}

// figure holds a current against the largest rating that a wire allows.
func (c carrying) figure(what string, amperes float64) Figure {
	f := Figure{What: what, Value: unit.A(amperes).Any(), Limit: unit.A(c.limit).Any(), Decides: c.String()}
	if c.rule != "" {
		f.Decides += " by " + c.rule
	}
	return f
}

// String is the wire's capacity in words: 16 AWG, 25 A at 105 C insulation.
func (c carrying) String() string {
	switch {
	case c.thin:
		return fmt.Sprintf("%s at most below 18 AWG", amps(thinAmperes))
	case c.best:
		return fmt.Sprintf("%s even with %s C insulation", amps(c.amps), number(c.class))
	}
	words := fmt.Sprintf("%s at %s C insulation", amps(c.amps), number(c.class))
	if c.bundled > 0 {
		words += fmt.Sprintf(" in a bundle of %d", c.bundled)
	}
	return words
}

// nominalAt is the nominal voltage of the feeds that can reach a wire: the highest, or
// the system voltage if tracing does not tell.
func (p *Pass) nominalAt(l *network.Link) float64 {
	volts := 0.0
	for _, fs := range p.sides() {
		if fs.sides.Of(l.A) == network.Plus || fs.sides.Of(l.A) == network.Both {
			volts = max(volts, fs.feed.Nominal.Value)
		}
	}
	if volts == 0 {
		return p.Job.System.Volts()
	}
	return volts
}
