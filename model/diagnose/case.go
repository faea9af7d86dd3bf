package diagnose

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// Case is a sheet with the faults that it can have, ready for readings.
type Case struct {
	n      *network.Network
	sheet  *model.Sheet
	states []state.State
	meter  meter.Instrument
	number map[*network.Link]int
	volts  float64 // of the system
	ends   []poles // of the strings of batteries and packs
	sound  *solver // at the scale of the record, nothing but variant 0 needed

	faults   []Fault
	variants []variant
	offered  []int // states that readings are proposed in
	points   []observation
	solvers  map[int]*solver // by scale in steps of scaleStep
}

// poles are the two ends of a string of batteries, or of a pack.
type poles struct{ high, low network.Node }

// New lists what may be wrong with a sheet of a job. cat is the parts library, the job's
// own definitions not yet included. It fails if the job has no such sheet.
func New(job *model.Job, name model.SheetName, cat *model.Catalogue) (*Case, error) {
	sheet := job.Sheet(name)
	if sheet == nil {
		return nil, fmt.Errorf("the job has no sheet %q", name)
	}
	n := network.Build(job, sheet, cat)
	c := &Case{n: n, sheet: sheet, states: n.States(), meter: meter.Of(job.Meter), number: numbers(n), volts: systemVolts(n), solvers: map[int]*solver{}}
	for _, f := range n.Feeds() {
		if f.String != nil && f.Whole {
			c.ends = append(c.ends, poles{high: f.At, low: f.Return})
		}
	}
	for i, s := range c.states {
		if s.Name != state.PackAsleep {
			c.offered = append(c.offered, i)
		}
	}
	c.sound = newSolver(n, c.states, []variant{{}}, 1)
	c.sound.ensure([]int{0}, c.offered)
	l := list(n, sheet, c.largest())
	c.faults, c.variants = l.faults, l.variants
	c.points = c.probes()
	return c, nil
}

// largest is the largest current of each link in any state of the sound sheet, in amperes.
func (c *Case) largest() []float64 {
	most := make([]float64, len(c.n.Links()))
	for _, s := range c.offered {
		if o := c.sound.got[0][s].full; o != nil {
			for i, amps := range o.amps {
				most[i] = max(most[i], math.Abs(amps))
			}
		}
	}
	return most
}

// Faults lists what may be wrong, in the order of the families and of the sheet.
func (c *Case) Faults() []Fault { return slices.Clone(c.faults) }

// States lists the states that readings may be taken in.
func (c *Case) States() []state.State { return c.states }

// scaleStep is the step that the pack's voltage is followed in: below what a meter tells.
const scaleStep = 0.005

// solverFor is the solver for packs that read some share of the recorded voltage.
func (c *Case) solverFor(scale float64) *solver {
	steps := int(math.Round((scale - 1) / scaleStep))
	if c.solvers[steps] == nil {
		c.solvers[steps] = newSolver(c.n, c.states, c.variants, 1+float64(steps)*scaleStep)
	}
	return c.solvers[steps]
}

// leastScale and mostScale bound what counts as a reading of a pack that gives: an empty
// one, and one on a charger.
const (
	leastScale = 0.75
	mostScale  = 1.2
)

// calibrate compares the pack's voltage as read, at rest, with the record: the mean of
// all such readings. It is false if there is none.
func (c *Case) calibrate(readings []observation) (scale float64, known bool) {
	sum, count := 0.0, 0
	for i := range readings {
		o := &readings[i]
		if o.kind != Volts || !c.atRest(o.state) {
			continue
		}
		for _, e := range c.ends {
			across := e == poles{o.red, o.black} || e == poles{o.black, o.red}
			if !across {
				continue
			}
			expected := c.sound.predict(0, o).middle()
			if ratio := o.value / expected; ratio >= leastScale && ratio <= mostScale {
				sum += ratio
				count++
			}
		}
	}
	if count == 0 {
		return 1, false
	}
	return sum / float64(count), true
}

// atRest reports whether nothing charges the pack or draws much from it in a state.
func (c *Case) atRest(s int) bool {
	got := c.sound.got[0][s]
	if got == nil || got.full == nil || got.loaded {
		return false
	}
	links := c.n.Links()
	for i := range links {
		if links[i].Is(model.ChargerElement) && got.full.on[i] && got.full.amps[i] != 0 {
			return false
		}
	}
	return true
}
