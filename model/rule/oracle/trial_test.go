package oracle

import (
	"fmt"
	"math/rand/v2"
	"runtime"
	"strings"
	"sync"
	"testing"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// trial is one mistake on one cart with what came of it.
type trial struct {
	number   int
	cart     *clean
	mutation string
	edits    []edit.Edit
	hazards  []hazard
	notes    []string
	checked  bool
	findings []rule.Finding // dangers and faults of the mutant; the clean cart has none
	lesser   []rule.Finding // what else is told of a mutant that was missed
}

// seed makes every run try the same mistakes in the same order.
const seed = 20

// mostDice is how often the dice are thrown for a mistake that makes sense.
const mostDice = 50

// pickCart takes a cart, one with twice as many wires half as often: it costs more than twice the
// time.
func pickCart(dice *rand.Rand, carts []*clean) *clean {
	const fewest = 20 // no cart has fewer
	for {
		c := carts[dice.IntN(len(carts))]
		if dice.IntN(len(c.job.Sheet(c.sheet).Wires)) < fewest {
			return c
		}
	}
}

// mutate makes the mistake of a number; nil if the dice gave none.
func mutate(carts []*clean, number int) (*trial, *model.Job) {
	dice := rand.New(rand.NewPCG(seed, uint64(number)))
	m := mutations[number%len(mutations)]
	for range mostDice {
		c := pickCart(dice, carts)
		edits := m.make(&shop{dice: dice, sheet: c.job.Sheet(c.sheet), net: c.net})
		if len(edits) == 0 {
			continue
		}
		history := edit.NewHistory(c.job, part.Library())
		if history.Do(edit.Group{Title: m.name, Edits: edits}) != nil {
			continue
		}
		return &trial{number: number, cart: c, mutation: m.name, edits: edits}, history.Job()
	}
	return nil, nil
}

// howMuch is how thoroughly mistakes are tried.
type howMuch struct {
	sample  int  // one in so many harmless mistakes is checked by the rules as well; 0 is none
	classes bool // every class of hazard is judged, though another has shown a mistake to be dangerous
}

// try judges the mistake of a number, and has the rules check it if it is dangerous or in the
// sample of the harmless. The heat of wires, which costs most, is only judged if it decides.
func try(t testing.TB, carts []*clean, number int, how howMuch) *trial {
	r, job := mutate(carts, number)
	if r == nil {
		return nil
	}
	x := examine(job, r.cart.sheet, part.Library())
	if r.hazards = x.against(r.cart.exam); len(r.hazards) > 0 {
		r.check(t, job)
	}
	if len(r.findings) == 0 || how.classes {
		x.judgeHeat()
		r.hazards, r.notes = x.against(r.cart.exam), x.notes
	}
	if !r.checked && (len(r.hazards) > 0 || how.sample > 0 && number/len(mutations)%how.sample == 0) {
		r.check(t, job)
	}
	return r
}

func (r *trial) check(t testing.TB, job *model.Job) {
	r.checked = true
	r.findings, r.lesser = check(t, job, r.cart.sheet)
}

// tryAll judges the mistakes of some numbers on all processors, in order.
func tryAll(t testing.TB, carts []*clean, first, count int, how howMuch) []*trial {
	results := make([]*trial, count)
	numbers := make(chan int)
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Add(1)
		go func() {
			defer workers.Done()
			for i := range numbers {
				results[i] = try(t, carts, first+i, how)
			}
		}()
	}
	for i := range count {
		numbers <- i
	}
	close(numbers)
	workers.Wait()
	var list []*trial
	for _, r := range results {
		if r != nil {
			list = append(list, r)
		}
	}
	return list
}

// has reports whether a mistake brought a hazard of a class.
func (r *trial) has(class string) bool {
	for _, h := range r.hazards {
		if h.class == class {
			return true
		}
	}
	return false
}

// missed reports whether the rules left a dangerous mutant without a finding that tells of
// it.
func (r *trial) missed() bool { return len(r.hazards) > 0 && len(r.findings) == 0 }

// String is the mutant as a failure prints it.
func (r *trial) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "#%d %s on %s\n", r.number, r.mutation, r.cart.name)
	for _, e := range r.edits {
		fmt.Fprintf(&b, "    edit   %s\n", e.Name())
	}
	for _, h := range r.hazards {
		fmt.Fprintf(&b, "    oracle %s\n", h)
	}
	for _, n := range r.notes {
		fmt.Fprintf(&b, "    how    %s\n", n)
	}
	for _, f := range r.findings {
		fmt.Fprintf(&b, "    rules  %s %s: %s\n", f.Severity, f.Rule, f.Message)
	}
	if len(r.findings) == 0 {
		for _, f := range r.lesser {
			fmt.Fprintf(&b, "    lesser %s %s: %s\n", f.Severity, f.Rule, f.Message)
		}
	}
	return b.String()
}
