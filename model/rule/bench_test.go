package rule_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// withLights is the lithium plan with more on its 12 V side: circuits of fuse, switch and
// lamp, and fuse blocks with two lamps in a row on each of their ways.
func withLights(circuits, blocks int) string {
	var b strings.Builder
	b.WriteString(lithium)
	for i := range circuits {
		fmt.Fprintf(&b, "part xf%d fuse-inline\npart xs%d light-switch\npart xl%d lamp-12v\n", i, i, i)
		fmt.Fprintf(&b, "wire xa%d red.OUT+ xf%d.in gauge=16AWG insulation=105C length=100mm\n", i, i)
		fmt.Fprintf(&b, "wire xb%d xf%d.out xs%d.IN gauge=16AWG insulation=105C length=1m\n", i, i, i)
		fmt.Fprintf(&b, "wire xc%d xs%d.OUT xl%d.+ gauge=16AWG insulation=105C length=1m\n", i, i, i)
		fmt.Fprintf(&b, "wire xd%d xl%d.- red.NEG gauge=16AWG insulation=105C length=1m\n", i, i)
	}
	for i := range blocks {
		fmt.Fprintf(&b, "part yb%d fuse-block-6-neg\n", i)
		fmt.Fprintf(&b, "wire ya%d red.OUT+ yb%d.IN gauge=10AWG insulation=105C length=1m\n", i, i)
		fmt.Fprintf(&b, "wire yn%d red.NEG yb%d.NEG gauge=10AWG insulation=105C length=1m\n", i, i)
		for way := 1; way <= 6; way++ {
			id := fmt.Sprintf("%d-%d", i, way)
			fmt.Fprintf(&b, "part yl%s lamp-12v\npart ym%s lamp-12v\n", id, id)
			fmt.Fprintf(&b, "wire yc%s yb%d.%d yl%s.+ gauge=16AWG insulation=105C length=1m\n", id, i, way, id)
			fmt.Fprintf(&b, "wire yd%s yl%s.+ ym%s.+ gauge=16AWG insulation=105C length=1m\n", id, id, id)
			fmt.Fprintf(&b, "wire ye%s ym%s.- yl%s.- gauge=16AWG insulation=105C length=1m\n", id, id, id)
			fmt.Fprintf(&b, "wire yf%s yl%s.- yb%d.NEG%d gauge=16AWG insulation=105C length=1m\n", id, id, i, way)
		}
	}
	return b.String()
}

func benchmarkCheck(b *testing.B, j *model.Job, sheet model.SheetName) {
	for b.Loop() {
		_, err := rule.Check(j, sheet, part.Library())
		require.NoError(b, err)
	}
}

// A cart of the usual size.
func BenchmarkCheck120(b *testing.B) {
	j := job(b, withLights(6, 2))
	require.Greater(b, len(j.Sheets[0].Wires), 115)
	benchmarkCheck(b, j, model.AsFound)
}

// A cart of more than 500 parts.
func BenchmarkCheck500(b *testing.B) {
	j := job(b, withLights(160, 0))
	require.Greater(b, len(j.Sheets[0].Parts), 500)
	benchmarkCheck(b, j, model.AsFound)
}

// Far more than any cart has.
func BenchmarkCheck2000(b *testing.B) {
	j := job(b, withLights(120, 57))
	require.Greater(b, len(j.Sheets[0].Wires), 2000)
	benchmarkCheck(b, j, model.AsFound)
}

// The plans of the example carts.
func BenchmarkCheckCarts(b *testing.B) {
	for _, name := range cart.Names() {
		b.Run(name, func(b *testing.B) {
			text, err := cart.Read(name)
			require.NoError(b, err)
			d, problems := jobfile.Decode(name, text, part.Library())
			require.Empty(b, problems)
			benchmarkCheck(b, d.Job, model.Plan)
		})
	}
}
