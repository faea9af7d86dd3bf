package diagnose

import (
	"fmt"
	"strings"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// opened is a worked cart's case.
func opened(t testing.TB, name string, sheet model.SheetName) *Case {
	t.Helper()
	data, err := cart.Read(name)
	require.NoError(t, err)
	decoded, problems := jobfile.Decode(name, data, part.Library())
	require.Empty(t, problems)
	c, err := New(decoded.Job, sheet, part.Library())
	require.NoError(t, err)
	return c
}

// bench is a cart with one fault in it, as a meter sees it: the fault solved by itself,
// the meter's last digit rounded.
type bench struct {
	c     *Case
	fault int
	p     *solver
}

// read is what the meter shows at a place. A joint is as bad as the middle of its sizes;
// nothing holds a floating probe, so that it shows 0.
func (b *bench) read(o observation) observation {
	v := b.c.faults[b.fault].variants
	at := b.p.predict(v[len(v)/2], &o)
	value := 0.0
	switch {
	case at.restless:
		value = b.c.volts / 3
	case o.kind == Ohms:
		value = at.middle()
	case !at.floating:
		value = at.hi
		if got := b.p.got[v[len(v)/2]][o.state]; got.full != nil && got.loaded && got.light != nil {
			value = at.lo + (at.hi-at.lo)*0.4
		}
	}
	if o.kind == Volts {
		digit := b.c.meter.Step(unit.Voltage, value)
		value = math.Round(value/digit) * digit
	}
	o.value = value
	return o
}

// visible reports whether a fault shows anywhere.
func visible(c *Case, v *Verdict, fault int) bool {
	return c.separable(v, suspectOf(v, fault), v.sound())
}

func suspectOf(v *Verdict, fault int) *Suspect {
	i := slices.IndexFunc(v.Suspects, func(s Suspect) bool { return s.index == fault })
	return &v.Suspects[i]
}

// mostReadings bounds a search that would not end.
const mostReadings = 80

// proposed takes the readings that are proposed until none tells more. It counts them and
// reports whether the fault, or one that reads the same, leads.
func proposed(c *Case, b *bench) (readings int, found bool, v *Verdict) {
	w := &weigher{c: c, complain: symptom(b)}
	from := Place{}
	trace = nil
	for readings = 0; readings < mostReadings; readings++ {
		v = c.weigh(&weigher{c: c, seen: w.seen, complain: w.complain})
		next, ok := c.Next(v, from)
		if !ok {
			break
		}
		o := observation{kind: next.Kind, state: c.stateNamed(next.State), red: c.n.Node(next.Red), black: c.n.Node(next.Black), link: -1}
		w.seen = append(w.seen, b.read(o))
		trace = append(trace, fmt.Sprintf("%s %s %s %s = %.2f (%.2f bits, %.1f min) led by %s %.2f alive %d", next.State, next.Kind, next.Red, next.Black, w.seen[len(w.seen)-1].value, next.Bits, next.Minutes, v.Suspects[0].ID, v.Suspects[0].Probability, len(v.alive())))
		from = Place{State: next.State, Zone: c.zoneOf(next.Red)}
	}
	v = c.weigh(&weigher{c: c, seen: w.seen, complain: w.complain})
	true_ := suspectOf(v, b.fault)
	leader := &v.Suspects[0]
	return readings, !c.separable(c.weigh(&weigher{c: c}), suspectOf(v, leader.index), true_), v
}

// symptom is what the customer says of a fault: the first complaint that it shows; none if
// nothing that one notices fails.
func symptom(b *bench) *complaint {
	c := b.c
	list := make([]*complaint, 0, len(complaints)+len(c.sheet.Parts))
	for i := range complaints {
		list = append(list, &complaints[i])
	}
	for i := range c.sheet.Parts {
		if one, err := c.deadPart(c.sheet.Parts[i].ID); err == nil {
			list = append(list, one)
		}
	}
	v := c.faults[b.fault].variants
	for _, one := range list {
		s := c.stateNamed(one.state)
		if s < 0 {
			continue
		}
		got, sound := b.p.got[v[len(v)/2]][s].full, b.p.got[0][s].full
		if got != nil && sound != nil && one.shows(c, got, sound) && !one.shows(c, sound, sound) {
			return one
		}
	}
	return nil
}

var trace []string

func TestProbe(t *testing.T) {
	for _, name := range cart.Names() {
		c := opened(t, name, model.Plan)
		p := c.solverFor(1)
		p.ensure(c.everyVariant(), c.offered)
		v := c.weigh(&weigher{c: c})
		hidden, missed, sum, worst, n := 0, 0, 0, 0, 0
		t.Log(name, "faults", len(c.faults), "variants", len(c.variants), "solves", p.solves.Load(), "points", len(c.points))
		for i := range c.faults {
			if i == 0 {
				continue
			}
			if !visible(c, v, i) {
				hidden++
				continue
			}
			if i%23 != 0 {
				continue
			}
			r, ok, verdict := proposed(c, &bench{c, i, p})
			n++
			sum += r
			worst = max(worst, r)
			tag := ""; if s := symptom(&bench{c,i,p}); s != nil { tag = s.name }
			t.Log(c.faults[i].ID, "|", tag, "|", r, ok, "\n   ", strings.Join(trace, "\n    "))
			if !ok {
				missed++
				name := ""; if s := symptom(&bench{c,i,p}); s != nil { name = s.name }
				t.Log("missed", c.faults[i].ID, name, "led by", verdict.Suspects[0].ID, verdict.Suspects[0].Probability, "after", r, "other", verdict.NotInList, "own", suspectOf(verdict, i).Probability)
			}
		}
		t.Log(name, "hidden", hidden, "of", len(c.faults), "tried", n, "missed", missed, "mean", float64(sum)/float64(n), "worst", worst)
	}
}

var _ = state.Parked
var _ = network.None
