package diagnose

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
)

var (
	update = flag.Bool("update", false, "write the golden files anew")
	full   = flag.Bool("full", false, "try every fault of every cart, not a sample")
)

// stride is the sample of the faults that somebody notices which is tried by default. The
// others are left to a full run: each takes a survey of the whole cart.
const stride = 29

// tally is what became of the faults of a cart.
type tally struct {
	tried, found, sum, worst int
	usual, left, all, most   int
}

func (a *tally) add(readings int, m march, found bool) {
	a.tried++
	if found {
		a.found++
	}
	a.sum += readings
	a.worst = max(a.worst, readings)
	a.usual += m.usual
	a.left += m.left
	a.all += m.all
	a.most = max(a.most, m.all)
}

const (
	heads = "%-26s %5s %5s | %5s %5s | %5s %5s | %6s %5s\n"
	cells = "%-26s %5d %5d | %5.1f %5d | %5.1f %5.1f | %6.1f %5d\n"
)

func (a tally) row(name string) string {
	mean := func(sum int) float64 { return float64(sum) / float64(max(1, a.tried)) }
	return fmt.Sprintf(cells, name, a.tried, a.found, mean(a.sum), a.worst, mean(a.usual), mean(a.left), mean(a.all), a.most)
}

// sample lists the faults to try.
func sample(tech *technician) []int {
	var list []int
	noticed := 0
	for i := 1; i < len(tech.c.faults); i++ {
		if !*full {
			if (faulty{tech.c, tech.p, i}).symptom() == nil {
				continue
			}
			if noticed++; noticed%stride != 0 {
				continue
			}
		}
		list = append(list, i)
	}
	return list
}

// TestReadingsFindTheFault puts single faults into the carts and follows the readings that
// are proposed. Each must lead to the fault, or to one that no reading tells from it, in fewer
// readings on average than the fixed order takes.
func TestReadingsFindTheFault(t *testing.T) {
	var b strings.Builder
	b.WriteString("Readings until the fault is found, as proposed; in the usual fixed order, with the faults that it leaves;\n" +
		"and in the fixed order over all points.\n\n")
	fmt.Fprintf(&b, heads, "plan of", "tried", "found", "mean", "worst", "usual", "left", "all", "worst")
	var hidden strings.Builder
	var goes tally
	for _, name := range cart.Names() {
		tech := newTechnician(opened(t, name, model.Plan))
		order, usual := fixedOrder(tech.c)
		var all, driving tally
		for _, i := range sample(tech) {
			f := faulty{tech.c, tech.p, i}
			if !tech.visible(f) {
				fmt.Fprintf(&hidden, "%s: %s is not visible in these states: it reads as a sound cart does at every point\n", name, tech.c.faults[i].ID)
				continue
			}
			readings, lead := tech.find(f)
			found := tech.found(f, lead)
			if !found {
				t.Errorf("%s with %s: %d readings lead to %s", name, tech.c.faults[i].ID, readings, tech.c.faults[lead].ID)
			}
			m := tech.fixed(f, order, usual)
			all.add(readings, m, found)
			if s := f.symptom(); s != nil && (s == &complaints[0] || s == &complaints[1]) {
				driving.add(readings, m, found)
			}
		}
		b.WriteString(all.row(name))
		b.WriteString(driving.row("  of these: does not go"))
		require.Less(t, all.sum, all.all, "%s: fewer readings than in the fixed order", name)
		goes.sum, goes.usual = goes.sum+driving.sum, goes.usual+driving.usual
	}
	require.Less(t, goes.sum, goes.usual, "fewer readings for carts that do not go, which the usual order is made for")
	b.WriteString("\n" + hidden.String())
	golden(t, map[bool]string{false: "readings.txt", true: "readings-full.txt"}[*full], b.String())
}

// TestALowPackMisleadsNobody does the same on a cart whose pack is 4 % below its record.
func TestALowPackMisleadsNobody(t *testing.T) {
	tech := newTechnician(opened(t, "quarry-inspection", model.Plan))
	low := tech.c.solverFor(0.96)
	low.ensure(tech.c.everyVariant(), tech.c.offered)
	tried := 0
	for i := 1; i < len(tech.c.faults); i += 23 {
		f := faulty{tech.c, low, i}
		if f.symptom() == nil || !tech.visible(f) {
			continue
		}
		tried++
		readings, lead := tech.find(f)
		require.True(t, tech.found(f, lead), "%s: %d readings lead to %s", tech.c.faults[i].ID, readings, tech.c.faults[lead].ID)
	}
	require.Greater(t, tried, 2)
}

// golden compares with a file in testdata, or writes it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), got)
}
