package geom

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// fewestBends searches an empty plane of a small radius around the origin. A path turns at most once in a cell.
func fewestBends(p Point, d Side, q Point, e Side) int {
	const radius = 6
	type state struct {
		at     Point
		dir    Side
		turned bool
	}
	layer := []state{{at: p, dir: d}}
	seen := map[state]bool{}
	for bends := 0; ; bends++ {
		var next []state
		for len(layer) > 0 {
			s := layer[len(layer)-1]
			layer = layer[:len(layer)-1]
			if seen[s] || Abs(s.at.X) > radius || Abs(s.at.Y) > radius {
				continue
			}
			seen[s] = true
			if s.at == q && s.dir == e {
				return bends
			}
			layer = append(layer, state{at: s.at.Add(s.dir.Step()), dir: s.dir})
			if !s.turned {
				next = append(next, state{s.at, (s.dir + 1) & 3, true}, state{s.at, (s.dir + 3) & 3, true})
			}
		}
		layer = next
	}
}

func TestMinBendsIsExactInAnEmptyPlane(t *testing.T) {
	for x := -2; x <= 2; x++ {
		for y := -2; y <= 2; y++ {
			for d := Side(0); d < 4; d++ {
				for e := Side(0); e < 4; e++ {
					p := Point{x, y}
					require.Equal(t, fewestBends(p, d, Point{}, e), MinBends(p, d, Point{}, e), "from %v %v to %v", p, d, e)
				}
			}
		}
	}
}

func TestSides(t *testing.T) {
	set := Of(North, West)
	require.True(t, set.Has(North) && set.Has(West))
	require.False(t, set.Has(East))
	require.Equal(t, 2, set.Count())
	require.Equal(t, West, set.First())
	require.Equal(t, South, North.Opposite())
	require.Equal(t, "E", East.String())
	_, ok := Toward(Point{0, 0}, Point{1, 1})
	require.False(t, ok, "an oblique way has no direction")
}

func TestRect(t *testing.T) {
	r := Rect{2, 3, 4, 0}
	require.True(t, r.Contains(Point{6, 3}), "the border belongs to a rectangle")
	require.False(t, r.Overlaps(Rect{7, 3, 1, 1}))
	require.Equal(t, Rect{0, 0, 6, 3}, r.Union(Rect{0, 0, 1, 1}))
	require.Equal(t, Rect{1, 2, 6, 2}, r.Grow(1, 1, 1, 1))
	require.Equal(t, Rect{0, -1, 3, 4}, Around([]Point{{0, 3}, {3, -1}}))
	require.Equal(t, Rect{}, Around(nil))
}
