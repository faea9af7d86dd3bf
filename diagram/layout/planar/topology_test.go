package planar

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestRomeTopology(t *testing.T) {
	files, _ := filepath.Glob("/tmp/peerbench/graphs/rome/*.json")
	sum, count := [3]int{}, [3]int{}
	for _, f := range files {
		var g struct {
			Nodes []struct{ ID string }
			Edges []struct{ From, To []*string }
		}
		data, _ := os.ReadFile(f)
		require.NoError(t, json.Unmarshal(data, &g))
		at := map[string]int{}
		for i, n := range g.Nodes {
			at[n.ID] = i
		}
		var edges []edge
		for _, e := range g.Edges {
			edges = append(edges, edge{at[*e.From[0]], at[*e.To[0]]})
		}
		of, parts := components(len(at), edges)
		_ = of
		start := time.Now()
		p := embedConnected(len(at), edges, Effort{Starts: 8, Steps: 1500})
		class := 0
		if len(at) > 30 {
			class = 1
		}
		if len(at) > 60 {
			class = 2
		}
		sum[class] += p.crossings
		count[class]++
		t.Log(filepath.Base(f), len(at), len(edges), parts, p.crossings, time.Since(start))
		sound(t, p, edges)
	}
	for i := range sum {
		t.Log(float64(sum[i]) / float64(count[i]))
	}
}
