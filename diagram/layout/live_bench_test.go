package layout

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"example.com/lugbook/diagram/layout/chance"
	"github.com/stretchr/testify/require"
)

// benchSizes are the numbers of boxes and wires of the drawings that are changed by hand.
var benchSizes = [][2]int{{20, 45}, {40, 120}, {500, 2000}}

// benchDrawing opens a draft of a random graph with fixed ports.
func benchDrawing(b *testing.B, size [2]int) (Graph, *Live) {
	b.Helper()
	g := newRandomGraph(1, size[0], size[1], false, false, size[0] < 100)
	d, err := Layout(g, Options{Moves: 4000})
	require.NoError(b, err)
	l, err := Open(g, d, Options{})
	require.NoError(b, err)
	return g, l
}

// percentiles times calls of f and reports the middle and the ends, in milliseconds.
func percentiles(b *testing.B, f func()) {
	b.Helper()
	var took []time.Duration
	for b.Loop() {
		start := time.Now()
		f()
		took = append(took, time.Since(start))
	}
	slices.Sort(took)
	for _, p := range [3]int{50, 95, 99} {
		b.ReportMetric(float64(took[len(took)*p/100].Microseconds())/1000, fmt.Sprintf("p%d-ms", p))
	}
}

func BenchmarkLiveMove(b *testing.B) {
	for _, size := range benchSizes {
		b.Run(fmt.Sprintf("%d-%d", size[0], size[1]), func(b *testing.B) {
			g, l := benchDrawing(b, size)
			rnd := chance.New(1)
			percentiles(b, func() {
				box := g.Boxes[rnd.Below(len(g.Boxes))].ID
				by := Point{X: rnd.Within(2), Y: rnd.Within(1)}
				_ = l.Move(box, by) // refused where another box stands
			})
		})
	}
}

func BenchmarkLiveConnect(b *testing.B) {
	for _, size := range benchSizes {
		b.Run(fmt.Sprintf("%d-%d", size[0], size[1]), func(b *testing.B) {
			g, l := benchDrawing(b, size)
			rnd := chance.New(1)
			ref := func() PortRef {
				box := g.Boxes[rnd.Below(len(g.Boxes))]
				return PortRef{Box: box.ID, Port: box.Ports[rnd.Below(len(box.Ports))].ID}
			}
			percentiles(b, func() {
				if l.Connect(Wire{ID: "more", From: ref(), To: ref(), Labels: []string{"99 2.5 RD", "99"}}) == nil {
					_ = l.Disconnect("more")
				}
			})
		})
	}
}

func BenchmarkLiveTrace(b *testing.B) {
	for _, size := range benchSizes {
		b.Run(fmt.Sprintf("%d-%d", size[0], size[1]), func(b *testing.B) {
			g, l := benchDrawing(b, size)
			d := l.Drawing()
			rnd := chance.New(1)
			percentiles(b, func() {
				w := g.Wires[rnd.Below(len(g.Wires))]
				l.Trace(w.From, Point{X: rnd.Below(d.W), Y: rnd.Below(d.H)})
			})
		})
	}
}
