package planar

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/metrics"
	"github.com/stretchr/testify/require"
)

func measured(p Problem, d Drawing) metrics.Report {
	var s metrics.Scene
	s.Boxes = d.Boxes
	side := func(b geom.Rect, at geom.Point) geom.Side {
		switch {
		case at.Y == b.Y:
			return geom.North
		case at.Y == b.Bottom():
			return geom.South
		case at.X == b.X:
			return geom.West
		}
		return geom.East
	}
	for i, w := range d.Wires {
		x := metrics.Wire{Path: w, From: metrics.Terminal{Box: p.Wires[i][0], Key: 2 * i, At: w[0], Side: side(d.Boxes[p.Wires[i][0]], w[0])}}
		last := w[len(w)-1]
		x.To = metrics.Terminal{Box: p.Wires[i][1], Key: 2*i + 1, At: last, Side: side(d.Boxes[p.Wires[i][1]], last)}
		s.Wires = append(s.Wires, x)
	}
	return metrics.Measure(s)
}

func svg(d Drawing, name string) {
	f, _ := os.Create(name)
	defer f.Close()
	w, h := 0, 0
	for _, b := range d.Boxes {
		w, h = max(w, b.Right()), max(h, b.Bottom())
	}
	for _, p := range d.Wires {
		for _, q := range p {
			w, h = max(w, q.X), max(h, q.Y)
		}
	}
	fmt.Fprintf(f, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-2 -2 %d %d"><rect x="-2" y="-2" width="100%%" height="100%%" fill="white"/>`, w+4, h+4)
	for i, b := range d.Boxes {
		fmt.Fprintf(f, `<rect x="%d" y="%d" width="%d" height="%d" fill="#def" stroke="black" stroke-width=".3"/><text x="%d" y="%d" font-size="2.5">%d</text>`, b.X, b.Y, b.W, b.H, b.X+1, b.Y+b.H/2+1, i)
	}
	for _, p := range d.Wires {
		fmt.Fprint(f, `<polyline fill="none" stroke="#a00" stroke-width=".3" points="`)
		for _, q := range p {
			fmt.Fprintf(f, "%d,%d ", q.X, q.Y)
		}
		fmt.Fprint(f, `"/>`)
	}
	fmt.Fprint(f, `</svg>`)
}

func TestRomeTopology(t *testing.T) {
	dir := os.Getenv("GRAPHS")
	if dir == "" {
		t.Skip()
	}
	files, _ := filepath.Glob(dir + "/*.json")
	sum, count := [3][5]int{}, [3]int{}
	for _, f := range files {
		var g struct {
			Nodes []struct {
				ID   string
				W, H int
			}
			Edges []struct{ From, To []*string }
		}
		data, _ := os.ReadFile(f)
		require.NoError(t, json.Unmarshal(data, &g))
		at := map[string]int{}
		p := Problem{Rules: Rules{GapX: 2, GapY: 2, Pitch: 2, Span: 4}}
		for i, n := range g.Nodes {
			at[n.ID] = i
			p.Boxes = append(p.Boxes, Box{W: n.W, H: n.H, Head: 2})
		}
		for _, e := range g.Edges {
			p.Wires = append(p.Wires, [2]int{at[*e.From[0]], at[*e.To[0]]})
		}
		start := time.Now()
		d, ok := Draw(p, Effort{Starts: 8, Steps: 1000, Shapes: shapesWanted()})
		require.True(t, ok)
		took := time.Since(start)
		m := measured(p, d)
		svg(d, "/tmp/planar/"+filepath.Base(f)+".svg")
		class := 0
		if len(at) > 30 {
			class = 1
		}
		if len(at) > 60 {
			class = 2
		}
		for i, v := range []int{m.Crossings, 100 * m.Bends / len(p.Wires), 10 * m.Length / len(p.Wires), m.Area / len(p.Boxes), d.Crossings} {
			sum[class][i] += v
		}
		count[class]++
		t.Logf("%-20s n %3d m %3d cross %3d (%3d) bends %4.2f len %5.1f area %5d  %4dx%4d faults %d %v", filepath.Base(f), len(at), len(p.Wires), m.Crossings, d.Crossings,
			float64(m.Bends)/float64(len(p.Wires)), float64(m.Length)/float64(len(p.Wires)), m.Area/len(at), m.Width, m.Height, m.Faults(), took)
		if m.Faults() > 0 {
			t.Errorf("%+v", m)
		}
	}
	for i := range sum {
		n := float64(max(count[i], 1))
		t.Logf("class %d: cross %.2f bends %.2f len %.1f area %.0f", i, float64(sum[i][0])/n, float64(sum[i][1])/n/100, float64(sum[i][2])/n/10, float64(sum[i][3])/n)
	}
}

func shapesWanted() int {
	n := 1
	fmt.Sscan(os.Getenv("SHAPES"), &n)
	return n
}
