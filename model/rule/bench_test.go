package rule_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// large is one cart of more than 500 parts: the lithium plan with 160 circuits of
// fuse, switch and lamp on its 12 V side.
func large() string {
	var b strings.Builder
	b.WriteString(lithium)
	for i := range 160 {
		fmt.Fprintf(&b, "part xf%d fuse-inline\npart xs%d light-switch\npart xl%d lamp-12v\n", i, i, i)
		fmt.Fprintf(&b, "wire xa%d red.OUT+ xf%d.in gauge=16AWG insulation=105C length=100mm\n", i, i)
		fmt.Fprintf(&b, "wire xb%d xf%d.out xs%d.IN gauge=16AWG insulation=105C length=1m\n", i, i, i)
		fmt.Fprintf(&b, "wire xc%d xs%d.OUT xl%d.+ gauge=16AWG insulation=105C length=1m\n", i, i, i)
		fmt.Fprintf(&b, "wire xd%d xl%d.- red.NEG gauge=16AWG insulation=105C length=1m\n", i, i)
	}
	return b.String()
}

func BenchmarkCheck500(b *testing.B) {
	j := job(b, large())
	require.Greater(b, len(j.Sheets[0].Parts), 500)
	for b.Loop() {
		_, err := rule.Check(j, model.AsFound, part.Library())
		require.NoError(b, err)
	}
}
