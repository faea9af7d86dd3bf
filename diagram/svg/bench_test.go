package svg_test

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/svg"
)

// BenchmarkLarge writes 40 parts and 120 wires.
func BenchmarkLarge(b *testing.B) {
	p := scenetest.Large()
	for b.Loop() {
		_, err := svg.Render(io.Discard, p, svg.Options{})
		require.NoError(b, err)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/page")
}
