package diagnose

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// decodedJob is a worked cart's job.
func decodedJob(t testing.TB, name string) *model.Job {
	t.Helper()
	data, err := cart.Read(name)
	require.NoError(t, err)
	decoded, problems := jobfile.Decode(name, data, part.Library())
	require.Empty(t, problems)
	return decoded.Job
}

// opened is a worked cart's case.
func opened(t testing.TB, name string, sheet model.SheetName) *Case {
	t.Helper()
	c, err := New(decodedJob(t, name), sheet, part.Library())
	require.NoError(t, err)
	return c
}

// faulty is a cart with one fault in it, as a meter sees it: the faulted sheet solved, the
// last digit of the meter rounded. A joint is as bad as the middle of its sizes; the drive
// takes something between light and full.
type faulty struct {
	c     *Case
	p     *solver
	fault int
}

func (f faulty) variant() int {
	v := f.c.faults[f.fault].variants
	return v[len(v)/2]
}

// between is where in the span between light and full load the drive is.
const between = 0.4

// read takes a reading. A probe that nothing holds shows 0.
func (f faulty) read(o observation) observation {
	at := f.p.predict(f.variant(), &o)
	switch {
	case at.restless:
		o.value = f.c.volts / 3
	case at.floating:
		o.value = 0
	default:
		o.value = at.lo + between*(at.hi-at.lo)
	}
	if o.kind == Volts {
		step := f.c.meter.Step(unit.Voltage, o.value)
		o.value = math.Round(o.value/step) * step
	}
	return o
}

// symptom is what the customer says of the fault: the first complaint that it shows and a
// sound cart does not; none if nothing that one notices fails.
func (f faulty) symptom() *complaint {
	list := make([]*complaint, 0, len(complaints)+len(f.c.sheet.Parts))
	for i := range complaints {
		list = append(list, &complaints[i])
	}
	for i := range f.c.sheet.Parts {
		if one, err := f.c.deadPart(f.c.sheet.Parts[i].ID); err == nil {
			list = append(list, one)
		}
	}
	for _, one := range list {
		s := f.c.stateNamed(one.state)
		if s < 0 {
			continue
		}
		got, sound := f.p.got[f.variant()][s].full, f.p.got[0][s].full
		if got != nil && sound != nil && one.shows(f.c, got, sound) && !one.shows(f.c, sound, sound) {
			return one
		}
	}
	return nil
}

// technician takes the readings that are proposed. It remembers what was proposed after
// what, since many faults begin alike.
type technician struct {
	c     *Case
	p     *solver
	known map[string]step
}

type step struct {
	next Proposal
	more bool
	lead int // fault that leads
}

func newTechnician(c *Case) *technician {
	tech := &technician{c: c, p: c.solverFor(1), known: map[string]step{}}
	tech.p.ensure(c.everyVariant(), c.offered)
	return tech
}

// mostReadings bounds a search that would not end.
const mostReadings = 120

// find takes readings until none is proposed any more. It counts them and gives the fault
// that leads in the end.
func (tech *technician) find(f faulty) (readings, lead int) {
	var seen []observation
	complain := f.symptom()
	key := fmt.Sprintf("%p", complain)
	if complain != nil {
		key = complain.name
	}
	from := Place{}
	for {
		now, known := tech.known[key]
		if !known {
			v := tech.c.weigh(&weigher{c: tech.c, seen: slices.Clone(seen), complain: complain})
			now.next, now.more = tech.c.Next(v, from)
			now.lead = v.Suspects[0].index
			tech.known[key] = now
		}
		if !now.more || len(seen) == mostReadings {
			return len(seen), now.lead
		}
		o := f.read(observation{
			kind: now.next.Kind, state: tech.c.stateNamed(now.next.State),
			red: tech.c.n.Node(now.next.Red), black: tech.c.n.Node(now.next.Black), link: -1,
		})
		seen = append(seen, o)
		from = Place{State: now.next.State, Zone: tech.c.zoneOf(now.next.Red)}
		key += fmt.Sprintf("|%d %s %d %d %.4f", o.state, o.kind, o.red, o.black, o.value)
	}
}

// visible reports whether a fault as it is shows in any reading on offer.
func (tech *technician) visible(f faulty) bool {
	return !tech.alike(f, []size{{from: f.variant(), to: f.variant()}}, 0)
}

// found reports whether a search that led to a fault found the one in the cart: that, or one
// that no reading on offer tells from it, sizes weighed as finely as the search does.
func (tech *technician) found(f faulty, lead int) bool {
	own := tech.c.sizes(f.fault)
	own = slices.DeleteFunc(own, func(s size) bool { return s.from != f.variant() && s.to != f.variant() })
	return tech.alike(f, own, lead)
}

// alike reports whether no reading on offer tells a fault, of one of some sizes, from another
// of some size.
func (tech *technician) alike(f faulty, own []size, other int) bool {
	if f.fault == other {
		return true
	}
	w := &weigher{c: tech.c, p: tech.p, read: true}
	over := tech.c.across([]Suspect{{Fault: tech.c.faults[f.fault]}, {Fault: tech.c.faults[other]}}, 0)
	for _, p := range own {
		for _, q := range tech.c.sizes(other) {
			if !tech.c.told(w, p, q, over) {
				return true
			}
		}
	}
	return false
}

// fixedOrder is the usual order of a search by volts on a cart that does not go, black
// probe on the low pole, each point in the state that it is looked at in; after it all other
// points, state by state. The usual order is common practice, no source.
func fixedOrder(c *Case) (order []observation, usual int) {
	low, high, _ := c.n.Poles()
	var list []observation
	add := func(state string, red, black network.Node) {
		o := observation{kind: Volts, state: c.stateNamed(state), red: red, black: black, link: -1}
		if o.state >= 0 && red != network.None && black != network.None && !slices.Contains(list, o) {
			list = append(list, o)
		}
	}
	at := func(name string) network.Node {
		part, terminal, _ := strings.Cut(name, ".")
		return c.n.Node(model.TerminalRef{Part: model.PartID(part), Name: terminal})
	}
	add("parked", high, low)
	for _, point := range []struct{ state, red string }{
		{"parked", "sol.L1"}, {"parked", "key.BAT"}, {"key-on", "key.IGN"}, {"key-on", "tow.2"},
		{"forward-pedal-up", "dir.micro-no"}, {"forward-pedal-up", "dir.F"}, {"forward-pedal-up", "pedal.COM"},
		{"forward-pedal-up", "pedal.NO"}, {"drive-forward", "pedal.NO"}, {"drive-forward", "sol.coil+"}, {"drive-forward", "sol.coil-"},
	} {
		add(point.state, at(point.red), low)
	}
	add("drive-forward", at("sol.coil+"), at("sol.coil-"))
	add("drive-forward", at("sol.L1"), at("sol.L2"))
	add("drive-forward", at("ctrl.B+"), at("ctrl.B-"))
	add("drive-forward", at("ctrl.KSI"), at("ctrl.B-"))
	add("drive-forward", at("ctrl.B+"), at("ctrl.M-"))
	add("parked", high, c.n.Frame())
	add("parked", low, c.n.Frame())
	usual = len(list)
	for _, s := range c.offered {
		for _, o := range c.points {
			if o.state == s {
				add(c.states[s].Name, o.red, o.black)
			}
		}
	}
	return list, usual
}

// rule1000 is how much less likely than the best a fault has to be to be ruled out.
const rule1000 = 1e-3

// march is how readings in a fixed order went.
type march struct {
	usual int // readings of the usual order up to the last of them that rules anything out
	left  int // faults that they leave
	all   int // the same with all other points after them
}

// fixed takes readings in a fixed order, the first of which are the usual ones.
func (tech *technician) fixed(f faulty, order []observation, usual int) (m march) {
	w := &weigher{c: tech.c, p: tech.p, read: true, complain: f.symptom()}
	c := tech.c
	logs := make([][]float64, len(c.faults))
	for i := range logs {
		for _, p := range c.sizes(i) {
			start := 0.0
			if w.complain != nil {
				start = math.Log(w.complained(p))
			}
			logs[i] = append(logs[i], start)
		}
	}
	left := -1
	for k, o := range order {
		w.seen = []observation{f.read(o)}
		best := math.Inf(-1)
		for i := range logs {
			for j, p := range c.sizes(i) {
				w.complain, logs[i][j] = nil, logs[i][j]+w.logLikelihood(p)
				best = max(best, logs[i][j])
			}
		}
		now := 0
		for i := range logs {
			if slices.Max(logs[i]) > best+math.Log(rule1000) {
				now++
			}
		}
		if now < left || left < 0 {
			m.all = k + 1
		}
		if left = now; k < usual {
			m.usual, m.left = m.all, now
		}
	}
	return m
}
