package nav

import (
	"math/rand/v2"
	"testing"
)

// A map is made at every change of the layout, so its cost is felt.
func BenchmarkNewMap300(b *testing.B) {
	boxes := scattered(rand.New(rand.NewPCG(1, 6)), 300, 250, 80, 3, 1)
	for b.Loop() {
		NewMap(boxes)
	}
}
