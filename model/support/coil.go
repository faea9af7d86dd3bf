package support

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/transient"
)

// Coil is a coil with what takes its kick when its switch opens.
type Coil struct {
	Part    model.PartID      `json:"part"`
	Plus    model.TerminalRef `json:"plus"`     // its positive side as fed
	FedIn   string            `json:"fed_in"`   // the state that feeds it most; empty if none does
	Fed     state.State       `json:"-"`        // that state with its settings
	Volts   float64           `json:"volts"`    // across it there
	Amps    float64           `json:"amps"`     // through it there
	Joules  float64           `json:"joules"`   // stored in it there; 0 if its time constant is not known
	Tau     float64           `json:"tau"`      // its inductance over its resistance, in seconds; 0 if not known
	Diodes  []CoilDiode       `json:"diodes"`   // across it
	BuiltIn model.PartID      `json:"built_in"` // with suppression built in, by its figure; empty if none says so
	Release float64           `json:"release"`  // seconds from the switch opening to its contacts falling; 0 if not known
	Driver  *Driver           `json:"driver,omitempty"`
	Short   bool              `json:"short,omitempty"`   // what feeds it there finds next to no resistance
	NoRest  string            `json:"no_rest,omitempty"` // why its part comes to no rest; empty if it does
	Unknown bool              `json:"unknown,omitempty"` // not fed in any state that could be computed, but not all could

	Judgements  []Judgement  `json:"judgements"`
	Assumptions []Assumption `json:"assumptions"`
}

// CoilDiode is a diode across a coil.
type CoilDiode struct {
	Part     model.PartID `json:"part"`
	Reversed bool         `json:"reversed"` // band at the negative side of the coil as fed
	Holds    float64      `json:"holds"`    // reverse volts that it stands; 0 if not known
	Carries  float64      `json:"carries"`  // forward amperes for long; 0 if not known
	Drops    float64      `json:"drops"`    // volts across it while it conducts
}

// Driver is the output of a controller that switches a coil.
type Driver struct {
	At    model.TerminalRef `json:"at"`
	Limit float64           `json:"limit"` // amperes; 0 if not known
	Load  float64           `json:"load"`  // amperes of all coils on it
}

// ReleaseSeconds is the time in which the current of a coil falls from one value to
// another while a fixed voltage stands against it: tau ln((i0 + v/R) / (i1 + v/R)). It is 0
// if the current has not to fall.
func ReleaseSeconds(tau, ohms, from, to, against float64) float64 {
	if from <= to || ohms <= 0 {
		return 0
	}
	seconds, _ := transient.Approach{Start: from, Final: -against / ohms, Tau: tau}.TimeTo(to)
	return seconds
}

// usualDrop is the voltage across a silicon diode that conducts about an ampere. From
// memory.
const usualDrop = 0.8

// enough is the share of the highest voltage across a coil in any state with which an
// earlier state counts as the one that feeds it.
const enough = 0.9

// winding is a coil link with what it looks like while fed.
type winding struct {
	link        *network.Link
	plus, minus network.Node
	diodes      []*network.Link
	fed         *network.Solution
	short       bool // it is fed into next to no resistance
}

func (d *desk) coils() []Coil {
	firm := d.n.FirmGroups()
	links := d.n.Links()
	var windings []winding
	for i := range links {
		if links[i].Is(model.CoilElement) {
			windings = append(windings, d.winding(&links[i], firm))
		}
	}
	list := make([]Coil, len(windings))
	for i := range windings {
		list[i] = d.coil(&windings[i])
	}
	for i := range list {
		for k := range list {
			if d := list[i].Driver; d != nil && list[k].Driver != nil && list[k].Driver.At == d.At {
				d.Load += list[k].Amps
			}
		}
		d.judgeDriver(&list[i])
	}
	return list
}

// winding finds the diodes across a coil and a state that feeds it, the diodes taken off:
// one that is the wrong way round would short the feed.
func (d *desk) winding(l *network.Link, firm *network.Groups) winding {
	w := winding{link: l, plus: l.A, minus: l.B}
	var off []network.Change
	links := d.n.Links()
	for i := range links {
		x := &links[i]
		across := firm.Same(x.A, l.A) && firm.Same(x.B, l.B) || firm.Same(x.A, l.B) && firm.Same(x.B, l.A)
		if x.Is(model.DiodeElement) && across && !firm.Same(l.A, l.B) {
			w.diodes = append(w.diodes, x)
			off = append(off, network.Change{Link: x, Open: true})
		}
	}
	w.fed = d.feeds(l, d.states, off)
	if w.fed == nil {
		w.fed = d.feeds(l, d.pushed(), off)
	}
	if w.fed == nil {
		w.fed = d.shortedBy(l, off)
		w.short = w.fed != nil
	}
	if w.fed != nil {
		if v, _ := w.fed.Voltage(l.A, l.B); v < 0 {
			w.plus, w.minus = l.B, l.A
		}
	}
	return w
}

// feeds is the first of some states that feeds a coil well; nil if none does.
func (d *desk) feeds(l *network.Link, states []state.State, off []network.Change) (fed *network.Solution) {
	most := 0.0
	for _, s := range states {
		solution, err := d.without(s, off)
		if err != nil {
			d.note(err)
			continue
		}
		if v := volts(solution, l.A, l.B); v > max(leftVolts, most/enough) {
			most, fed = v, solution
		}
	}
	return fed
}

// without solves a state with some diodes off. Those that block in it need not be taken off.
func (d *desk) without(s state.State, off []network.Change) (*network.Solution, error) {
	whole, err := d.n.Solve(s)
	if err == nil && !slices.ContainsFunc(off, func(c network.Change) bool { return whole.On(c.Link) }) {
		return whole, nil
	}
	return d.n.SolveWith(s, network.Variation{Changes: off})
}

// shortAmps is the current in amperes from which a coil that no state feeds with any voltage
// counts as a short: a coil takes less than that. Own line, no source.
const shortAmps = 5

// shortedBy is the first of all states that drives the current of a short through a coil
// that none feeds well; nil if none does.
func (d *desk) shortedBy(l *network.Link, off []network.Change) *network.Solution {
	for _, s := range d.pushed() {
		if solution, err := d.n.SolveWith(s, network.Variation{Changes: off}); err == nil && math.Abs(solution.Current(l)) > shortAmps {
			return solution
		}
	}
	return nil
}

func (d *desk) coil(w *winding) Coil {
	b := &basis{n: d.n}
	part := w.link.Part
	c := Coil{Part: part.ID, Plus: d.n.Point(w.plus).At, Short: w.short, NoRest: d.restless[part.ID]}
	c.Unknown = w.fed == nil && len(d.unsolved) > 0
	c.Tau, _ = b.figure(part, "coil-time-constant")
	firm := d.n.FirmGroups()
	for _, l := range w.diodes {
		dio := CoilDiode{Part: l.Part.ID, Reversed: firm.Same(l.A, w.plus)}
		dio.Holds, _ = b.figure(l.Part, l.Element.MaxVolts)
		dio.Carries, _ = b.figure(l.Part, l.Element.Amps)
		dio.Drops = b.orElse(l.Part, l.Element.Volts, usualDrop, "a diode is taken to drop 0.8 V (from memory)")
		c.Diodes = append(c.Diodes, dio)
	}
	driver, at := d.driver(w)
	if driver != nil {
		c.Driver = &Driver{At: d.n.Point(at).At}
		c.Driver.Limit, _ = b.figure(driver.Part, "driver-current")
	}
	for _, holder := range []*network.Link{w.link, driver} {
		if holder == nil || c.BuiltIn != "" {
			continue
		}
		if clamp, _ := b.figure(holder.Part, "clamp-voltage"); clamp > 0 {
			c.BuiltIn = holder.Part.ID
			d.release(&c, w, clamp, b)
		}
	}
	if w.fed != nil {
		c.FedIn, c.Fed = w.fed.State.Name, w.fed.State
		c.Volts, c.Amps = volts(w.fed, w.plus, w.minus), math.Abs(w.fed.Current(w.link))
		if c.Volts > 0 {
			c.Joules = c.Tau * c.Volts * c.Amps / 2
		}
		for _, dio := range c.Diodes {
			if !dio.Reversed {
				d.release(&c, w, dio.Drops, b)
			}
		}
	}
	d.judgeCoil(&c, w)
	c.Assumptions = b.lines
	return c
}

// release computes how long the contacts of a coil stay closed.
func (d *desk) release(c *Coil, w *winding, clamp float64, b *basis) {
	ohms, known := b.figure(w.link.Part, w.link.Element.Ohms)
	drop, said := b.figure(w.link.Part, "drop-out-voltage")
	if !known || !said || c.Tau == 0 || w.fed == nil {
		return
	}
	c.Release = ReleaseSeconds(c.Tau, ohms, math.Abs(w.fed.Current(w.link)), drop/ohms, clamp)
}

// driver is the contact of a controller that switches a coil on its low or high side,
// with the node where the coil hangs on it.
func (d *desk) driver(w *winding) (*network.Link, network.Node) {
	metal := d.n.Joined(func(l *network.Link) bool { return l.IsMetal() || l.Is(model.FuseElement) })
	for _, end := range []network.Node{w.minus, w.plus} {
		for _, at := range metal.Members(metal.Of(end)) {
			for _, l := range d.n.LinksAt(at) {
				if l.Is(model.ContactElement) && l.Element.Ohms == "driver-resistance" && l.A == at {
					return l, at
				}
			}
		}
	}
	return nil, network.None
}

func (d *desk) judgeCoil(c *Coil, w *winding) {
	say := func(grade Grade, format string, args ...any) {
		c.Judgements = append(c.Judgements, Judgement{grade, fmt.Sprintf(format, args...)})
	}
	if c.NoRest != "" {
		say(Fault, "%s", c.NoRest)
	}
	switch {
	case w.short:
		say(Danger, "%s goes through it in %s and next to nothing resists: a dead short, or its recorded resistance is wrong", si(c.Amps, "A"), c.FedIn)
		return
	case w.fed == nil && c.NoRest == "":
		say(Note, "no state feeds it, so the side of a diode's band cannot be told")
		return
	case w.fed == nil:
		return
	}
	right := 0
	for _, dio := range c.Diodes {
		if dio.Reversed {
			say(Danger, "%s is the wrong way round: a dead short as soon as %s is fed, in %s; its band belongs at %s", dio.Part, c.Part, c.FedIn, c.Plus)
			continue
		}
		right++
		d.judgeDiode(c, dio, say)
	}
	switch {
	case right > 0 && c.BuiltIn != "":
		say(Note, "%s has suppression built in: the diode outside is one too many; ask the maker", c.BuiltIn)
	case right > 1:
		say(Note, "%d diodes lie across it; one is enough", right)
	case right > 0:
	case c.BuiltIn != "":
		say(Good, "%s has suppression built in, by its figure", c.BuiltIn)
	case c.Driver != nil:
		say(Caution, "no diode across it; whether the driver in %s holds its kick back is not recorded (clamp-voltage): ask the maker", c.Driver.At.Part)
	case len(c.Diodes) == 0:
		say(Caution, "no diode across it: the switch that opens it takes a kick of some hundred volts (common practice, no source)")
	}
}

func (d *desk) judgeDiode(c *Coil, dio CoilDiode, say func(Grade, string, ...any)) {
	full, ok := d.fullVolts()
	full = max(full, c.Volts)
	switch {
	case dio.Holds == 0:
		say(Note, "the reverse rating of %s is not recorded", dio.Part)
	case dio.Holds < full:
		say(Fault, "%s holds back %s, less than the full %s", dio.Part, si(dio.Holds, "V"), si(full, "V"))
	case ok && dio.Holds < reverseTimes*full:
		say(Caution, "%s holds back %s, less than twice the full %s (common practice, no source)", dio.Part, si(dio.Holds, "V"), si(full, "V"))
	default:
		say(Good, "%s has its band at %s and holds back %s against the full %s", dio.Part, c.Plus, si(dio.Holds, "V"), si(full, "V"))
	}
	switch {
	case dio.Carries == 0:
		say(Note, "the current rating of %s is not recorded", dio.Part)
	case dio.Carries < c.Amps:
		say(Fault, "%s carries %s, less than the coil's %s", dio.Part, si(dio.Carries, "A"), si(c.Amps, "A"))
	default:
		say(Good, "%s carries %s, the coil takes %s", dio.Part, si(dio.Carries, "A"), si(c.Amps, "A"))
	}
}

func (d *desk) judgeDriver(c *Coil) {
	if c.Driver == nil {
		return
	}
	j := Judgement{Good, fmt.Sprintf("the driver at %s gives %s, the coils on it take %s", c.Driver.At, si(c.Driver.Limit, "A"), si(c.Driver.Load, "A"))}
	switch {
	case c.Driver.Limit == 0:
		j = Judgement{Note, fmt.Sprintf("the current of the driver at %s is not recorded", c.Driver.At)}
	case c.Driver.Load > c.Driver.Limit:
		j.Grade = Fault
	}
	c.Judgements = append(c.Judgements, j)
}
