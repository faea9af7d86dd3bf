package place

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// villages makes groups of boxes wired in rings, each group to the next by one wire.
func villages(groups, size int) *Problem {
	p := &Problem{Rules: testRules}
	add := func(b int) Ref {
		p.Boxes[b].Ports = append(p.Boxes[b].Ports, freePort(-1))
		return Ref{b, len(p.Boxes[b].Ports) - 1}
	}
	for range groups * size {
		p.Boxes = append(p.Boxes, Box{Zone: -1, W: 10, H: 3, Head: 2})
	}
	for i := range p.Boxes {
		next := i - i%size + (i+1)%size
		p.Wires = append(p.Wires, Wire{From: add(i), To: add(next)})
		if i%size == 0 && i > 0 {
			p.Wires = append(p.Wires, Wire{From: add(i), To: add(i - size)})
		}
	}
	return p
}

func TestClustersAreTheGroupsThatAreWiredToEachOther(t *testing.T) {
	p := villages(5, 6)
	groups := newState(p).clusters(6)
	require.Len(t, groups, 5)
	for g, boxes := range groups {
		require.Len(t, boxes, 6)
		for k, i := range boxes {
			require.Equal(t, 6*g+k, i)
		}
	}
}

func TestASketchPutsNeighboursSideBySide(t *testing.T) {
	s := newState(villages(9, 6))
	k := s.sketch(s.clusters(6), 1)
	seen := map[int]bool{}
	for g := range k.groups {
		require.Equal(t, g, k.cell[k.at[g]])
		require.False(t, seen[k.at[g]], "two groups on one cell")
		seen[k.at[g]] = true
		if g > 0 {
			x, y := k.at[g]%k.wide-k.at[g-1]%k.wide, k.at[g]/k.wide-k.at[g-1]/k.wide
			require.Equal(t, 1, x*x+y*y, "a chain of nine groups winds through three rows of three")
		}
	}
}

func TestPlacementsFromASketchKeepTheRules(t *testing.T) {
	p := villages(30, 6)
	s := newState(p)
	require.True(t, s.sketchable())
	s.settleSketch(s.sketch(s.clusters(groupSize), 1))
	requireApart(t, p, s.result())
	requirePlaced(t, p, s.result())
	before := s.cost + s.size
	s.anneal(6400, 1, fromWarm)
	requireApart(t, p, s.result())
	cost, size := s.cost, s.size
	require.Less(t, cost+size, before)
	s.recount()
	require.Equal(t, []int{cost, size}, []int{s.cost, s.size})
}

func TestNoSketchWhereBoxesAreBound(t *testing.T) {
	p := villages(30, 6)
	p.Rules.MaxWidth = 400
	require.False(t, newState(p).sketchable())
	p = villages(30, 6)
	p.Titles, p.Boxes[3].Zone = []int{4}, 0
	require.False(t, newState(p).sketchable())
	require.False(t, newState(villages(3, 6)).sketchable())
}
