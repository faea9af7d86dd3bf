package main

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"time"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/chance"
	"example.com/lugbook/diagram/layout/layouttest"
)

// random draws random harnesses, edits each of them twice, and counts what goes wrong.
func (r *reporter) random() error {
	rows := []*chaos{{name: "fixed terminals"}, {name: "fixed terminals, zones"},
		{name: "free terminals"}, {name: "free terminals, zones"}}
	var bad, restless []string
	for seed := range uint64(r.reportFlags.random) {
		s := layouttest.AnyShape(seed, r.most)
		k := 0
		if s.Zoned {
			k++
		}
		if s.Free {
			k += 2
		}
		moves := rows[k].restless
		if what := rows[k].try(seed, layouttest.Harness(seed, s)); what != "" && len(bad) < shownFailures {
			bad = append(bad, fmt.Sprintf("seed %d (%s): %s", seed, s, what))
		}
		if rows[k].restless > moves && len(restless) < shownFailures {
			restless = append(restless, fmt.Sprint(seed))
		}
		if seed%100 == 99 {
			r.progress("random harnesses: %d", seed+1)
		}
	}
	r.printf("%d seeded harnesses of 4 to %d boxes as drafts; each then loses a wire and, from the first drawing, gains a box with "+
		"two wires, drawn on the places of the first. Faults must be 0; restless are drawings that change when drawn again on "+
		"their own places. Chains are six random edits, each drawn on the places of the one before.\n\n", r.reportFlags.random, r.most)
	t := newTable("terminals", "graphs", "refused", "unrouted wires", "faults", "restless", "draft p50", "p99", "wire gone: boxes moved",
		"wires changed", "box more: boxes moved", "wires changed", "faults after edits", "after chains")
	for _, c := range rows {
		t.row(c.name, c.graphs, c.refused, c.unrouted, c.faults, c.restless, percentile(c.times, 50), percentile(c.times, 99),
			share(c.edits[0].moved, c.edits[0].boxes), share(c.edits[0].changed, c.edits[0].wires),
			share(c.edits[1].moved, c.edits[1].boxes), share(c.edits[1].changed, c.edits[1].wires), c.editFaults, c.chainFaults)
	}
	r.text.WriteString(t.String())
	for _, line := range bad {
		r.printf("- %s\n", line)
	}
	if len(restless) > 0 {
		r.printf("\nRestless, the first seeds: %s.\n", strings.Join(restless, ", "))
	}
	return nil
}

// shownFailures is how many failures a report names.
const shownFailures = 20

// chaos sums up random harnesses of one kind.
type chaos struct {
	name                         string
	graphs, refused, unrouted    int
	faults, restless, editFaults int
	chainFaults                  int
	times                        []float64
	edits                        [2]change
}

// try draws one harness and its edits, and says what went wrong, if anything did.
func (c *chaos) try(seed uint64, g layout.Graph) string {
	c.graphs++
	start := time.Now()
	d, err := layout.Layout(g, draft.options)
	c.times = append(c.times, since(start))
	var left *layout.UnroutedError
	switch {
	case errors.As(err, &left):
		c.unrouted += len(left.IDs)
		return err.Error()
	case err != nil:
		c.refused++
		return err.Error()
	}
	m, err := layout.Measure(g, d)
	if err != nil || m.Faults() > 0 {
		c.faults += m.Faults()
		return fmt.Sprintf("%d faults: %+v", m.Faults(), m)
	}
	was, what := pictureOf(&d), ""
	if again, err := layout.Layout(g, follow(d)); err != nil || !reflect.DeepEqual(d, again) {
		c.restless++
	}
	for k, e := range edits {
		after, faults, err := followed(e.do(g, len(g.Wires)/2), d)
		if err != nil || faults > 0 {
			c.editFaults += max(faults, 1)
			what = fmt.Sprintf("%s: %d faults, error %v", e.name, faults, err)
			continue
		}
		c.edits[k] = c.edits[k].add(pictureOf(&after).since(was))
	}
	if broken := c.chain(seed, g, d); broken != "" {
		what = broken
	}
	return what
}

// chained is the number of edits that follow each other in a chain.
const chained = 6

// chain edits a harness again and again, each time drawn on the places of the time before, and says what went wrong, if
// anything did.
func (c *chaos) chain(seed uint64, g layout.Graph, d layout.Drawing) string {
	rnd := chance.New(seed)
	for step := range chained {
		at := rnd.Below(len(g.Wires))
		e := edits[rnd.Below(len(edits))]
		if len(g.Wires) == 1 {
			e = edits[len(edits)-1]
		}
		g = e.do(g, at)
		after, faults, err := followed(g, d)
		if err != nil || faults > 0 {
			c.chainFaults += max(faults, 1)
			return fmt.Sprintf("edit %d of a chain, %s at wire %d: %d faults, error %v", step+1, e.name, at, faults, err)
		}
		d = after
	}
	return ""
}
