package oracle

import (
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	mutants = flag.Int("mutants", 0, "mistakes that TestManyMutants makes")
	first   = flag.Int("first", 0, "number of the first of them")
	sample  = flag.Int("sample", 10, "one in how many harmless mistakes is checked for false alarms; 0 is none")
	byClass = flag.Bool("by-class", false, "judge heat as well where something else shows the danger, so that all classes are counted")
)

// In every run so many mistakes are made, fewer in a short one.
const (
	fewMutants   = 17
	usualMutants = 102
)

func TestMutants(t *testing.T) {
	count := usualMutants
	if testing.Short() {
		count = fewMutants
	}
	dangerous := 0
	for _, r := range tryAll(t, cleanCarts(t), 0, count, howMuch{}) {
		if len(r.hazards) > 0 {
			dangerous++
		}
		if r.missed() {
			t.Errorf("no rule speaks of\n%s", r)
		}
	}
	require.Greater(t, dangerous, count/3, "the mistakes are too harmless to tell anything")
}

func TestManyMutants(t *testing.T) {
	if *mutants == 0 {
		t.Skip("asked for with -mutants N")
	}
	results := tryAll(t, cleanCarts(t), *first, *mutants, howMuch{sample: *sample, classes: *byClass})
	t.Logf("\n%s", recall(results))
	t.Logf("\n%s", alarms(results))
	groups := map[string][]*trial{}
	var order []string
	for _, r := range results {
		if r.missed() {
			key := r.likeness()
			if groups[key] == nil {
				order = append(order, key)
			}
			groups[key] = append(groups[key], r)
		}
	}
	slices.SortStableFunc(order, func(a, b string) int { return len(groups[b]) - len(groups[a]) })
	for _, key := range order {
		var b strings.Builder
		for _, r := range groups[key] {
			b.WriteString(r.String())
		}
		t.Errorf("%d missed: %s\n%s", len(groups[key]), key, b.String())
	}
}

// likeness is what misses share: the mistake and the classes of what it brings.
func (r *trial) likeness() string {
	var words []string
	for _, c := range classes {
		if r.has(c) {
			words = append(words, c)
		}
	}
	return r.mutation + ", " + strings.Join(words, " and ")
}

// tally counts dangerous mutants, those that some rule speaks of, and those of a class whose
// own rules do.
type tally struct{ dangerous, found, own int }

func (c *tally) add(r *trial, class string) {
	c.dangerous++
	if !r.missed() {
		c.found++
	}
	if class != "" && r.spokenOf(class) {
		c.own++
	}
}

func (c tally) String() string {
	share := 100.0
	if c.dangerous > 0 {
		share = 100 * float64(c.found) / float64(c.dangerous)
	}
	return fmt.Sprintf("%9d %9d %9d %8.2f %%", c.dangerous, c.found, c.own, share)
}

// recall is a table of what was found, by class of hazard and by mistake.
func recall(results []*trial) string {
	var b strings.Builder
	ofClass, ofMistake, tried := map[string]*tally{}, map[string]*tally{}, map[string]int{}
	var all tally
	for _, c := range classes {
		ofClass[c] = &tally{}
	}
	for _, m := range mutations {
		ofMistake[m.name] = &tally{}
	}
	for _, r := range results {
		tried[r.mutation]++
		if len(r.hazards) == 0 {
			continue
		}
		all.add(r, "")
		ofMistake[r.mutation].add(r, "")
		for _, c := range classes {
			if r.has(c) {
				ofClass[c].add(r, c)
			}
		}
	}
	fmt.Fprintf(&b, "%-24s %7s %9s %9s %9s   recall\n", "", "made", "dangerous", "found", "by class")
	for _, c := range classes {
		fmt.Fprintf(&b, "%-24s %7s %s\n", c, "", ofClass[c])
	}
	for _, m := range mutations {
		fmt.Fprintf(&b, "%-24s %7d %s\n", m.name, tried[m.name], ofMistake[m.name])
	}
	fmt.Fprintf(&b, "%-24s %7d %s\n", "all", len(results), all)
	return b.String()
}

// alarms lists the harmless mutants of the sample that the rules speak of, by rule.
func alarms(results []*trial) string {
	var b strings.Builder
	checked := 0
	byRule := map[string][]*trial{}
	var rules []string
	for _, r := range results {
		if len(r.hazards) > 0 || !r.checked {
			continue
		}
		checked++
		for _, f := range r.findings {
			if byRule[f.Rule] == nil {
				rules = append(rules, f.Rule)
			}
			if !slices.Contains(byRule[f.Rule], r) {
				byRule[f.Rule] = append(byRule[f.Rule], r)
			}
		}
	}
	fmt.Fprintf(&b, "%d harmless mutants checked\n", checked)
	slices.Sort(rules)
	for _, id := range rules {
		fmt.Fprintf(&b, "%d with %s\n", len(byRule[id]), id)
		for _, r := range byRule[id] {
			b.WriteString(r.String())
		}
	}
	return b.String()
}
