package text_test

import (
	"testing"

	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/text"
)

// BenchmarkLarge paints 40 parts and 120 wires. Aim: 5 ms.
func BenchmarkLarge(b *testing.B) {
	p := scenetest.Large()
	for b.Loop() {
		_ = text.Render(p, text.Options{}).String()
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N), "ms/page")
}
