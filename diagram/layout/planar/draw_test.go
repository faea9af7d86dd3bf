package planar

import (
	"cmp"
	"slices"
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/metrics"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// sideOf is the side of a box on which a cell lies, and its distance from the side's beginning. A corner has none.
func sideOf(t require.TestingT, b geom.Rect, at geom.Point) (geom.Side, int) {
	level := at.X > b.X && at.X < b.Right()
	upright := at.Y > b.Y && at.Y < b.Bottom()
	switch {
	case at.Y == b.Y && level:
		return geom.North, at.X - b.X
	case at.Y == b.Bottom() && level:
		return geom.South, at.X - b.X
	case at.X == b.X && upright:
		return geom.West, at.Y - b.Y
	}
	require.True(t, at.X == b.Right() && upright, "wire ends at %v, box %v", at, b)
	return geom.East, at.Y - b.Y
}

func measured(t require.TestingT, p Problem, d Drawing) metrics.Report {
	s := metrics.Scene{Boxes: d.Boxes}
	for i, path := range d.Wires {
		ends := [2]metrics.Terminal{}
		for k, at := range [2]geom.Point{path[0], path[len(path)-1]} {
			side, _ := sideOf(t, d.Boxes[p.Wires[i][k].Box], at)
			ends[k] = metrics.Terminal{Box: p.Wires[i][k].Box, Key: 2*i + k, At: at, Side: side}
		}
		s.Wires = append(s.Wires, metrics.Wire{From: ends[0], To: ends[1], Path: path})
	}
	return metrics.Measure(s)
}

// problem wants a drawing of a graph with boxes that just hold their wires.
func problem(n int, edges []edge) Problem {
	p := Problem{Rules: Rules{GapX: 2, GapY: 2, Pitch: 2, Span: 4, ColumnCost: 1, RowCost: 1}}
	for _, at := range incident(n, edges) {
		p.Boxes = append(p.Boxes, Box{W: max(6, 2*len(at)), H: max(4, 2*len(at)), Head: 2})
	}
	for _, e := range edges {
		p.Wires = append(p.Wires, [2]End{{Box: e.u}, {Box: e.v}})
	}
	return p
}

func TestClassicsAreDrawnWithTheirCrossingNumbers(t *testing.T) {
	for _, c := range classics {
		t.Run(c.name, func(t *testing.T) {
			p := problem(c.n, c.edges)
			d, ok := Draw(p, Effort{Starts: 8, Steps: 400, Shapes: 1})
			require.True(t, ok)
			m := measured(t, p, d)
			require.Zero(t, m.Faults(), "%+v", m)
			require.Equal(t, c.proved, m.Crossings, c.source)
			require.Equal(t, c.proved, d.Crossings)
			require.Less(t, m.Bends, 2*len(p.Wires))
		})
	}
}

func TestAnyGraphIsDrawnLegally(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Problem{Rules: Rules{GapX: rapid.IntRange(2, 9).Draw(t, "gap x"), GapY: rapid.IntRange(1, 4).Draw(t, "gap y"),
			Pitch: rapid.IntRange(1, 3).Draw(t, "pitch"), Span: rapid.IntRange(2, 6).Draw(t, "span"), ColumnCost: 1, RowCost: 2}}
		n := rapid.IntRange(1, 12).Draw(t, "n")
		for range n {
			p.Boxes = append(p.Boxes, Box{W: rapid.IntRange(2, 20).Draw(t, "w"), H: rapid.IntRange(2, 9).Draw(t, "h"),
				Head: rapid.IntRange(1, 3).Draw(t, "head"), Level: rapid.Bool().Draw(t, "level")})
		}
		for range rapid.IntRange(0, 2*n).Draw(t, "wires") {
			u := rapid.IntRange(0, n-1).Draw(t, "u")
			if v := rapid.IntRange(0, n-1).Draw(t, "v"); v != u {
				p.Wires = append(p.Wires, [2]End{{Box: u}, {Box: v}})
			}
		}
		tied := rapid.Bool().Draw(t, "tied")
		if tied {
			tieEnds(t, &p)
		}
		e := Effort{Starts: 2, Steps: 20, Shapes: 2}
		d, ok := Draw(p, e)
		if tied && !ok {
			return // a tie had to be crossed
		}
		require.True(t, ok)
		together(t, p, d)
		m := measured(t, p, d)
		require.Zero(t, m.Faults(), "%+v", m)
		require.Equal(t, d.Crossings, m.Crossings)
		roomy(t, p, d)
		again, _ := Draw(p, e)
		require.Equal(t, d, again)
	})
}

// tieEnds puts ends into groups, and all of those of some boxes on faces.
func tieEnds(t *rapid.T, p *Problem) {
	faced := rapid.SliceOfN(rapid.Bool(), len(p.Boxes), len(p.Boxes)).Draw(t, "faced")
	for i := range p.Wires {
		for k := range 2 {
			e := &p.Wires[i][k]
			group := rapid.IntRange(0, 3).Draw(t, "group")
			if faced[e.Box] {
				e.Face = rapid.IntRange(1, 2).Draw(t, "face")
				group += 10 * e.Face * min(group, 1)
			}
			e.Group = group
		}
	}
}

// together checks that groups lie side by side, faces on opposite sides, and wires of level boxes left and right.
func together(t require.TestingT, p Problem, d Drawing) {
	type seat struct{ side, offset, group, face int }
	seats := make([][]seat, len(p.Boxes))
	for i, path := range d.Wires {
		for k, at := range [2]geom.Point{path[0], path[len(path)-1]} {
			e := p.Wires[i][k]
			side, offset := sideOf(t, d.Boxes[e.Box], at)
			require.Equal(t, d.Sides[i][k], side)
			require.True(t, side.Horizontal() || !p.Boxes[e.Box].Level)
			seats[e.Box] = append(seats[e.Box], seat{int(side), offset, e.Group, e.Face})
		}
	}
	for b, list := range seats {
		slices.SortFunc(list, func(a, b seat) int { return cmp.Or(a.side-b.side, a.offset-b.offset) })
		if len(list) == 2 && list[0].face+list[1].face == 3 && p.Boxes[b].Level {
			require.Equal(t, list[0].offset, list[1].offset, "a line runs straight through")
		}
		closed := map[int]bool{}
		for i, s := range list {
			if i > 0 && list[i-1].group != s.group {
				closed[list[i-1].group] = true
			}
			require.False(t, s.group > 0 && closed[s.group], "group %d is torn apart: %v", s.group, list)
			if i > 0 && s.group > 0 && s.group == list[i-1].group {
				pitch := p.Rules.Span
				if geom.Side(s.side).Horizontal() {
					pitch = p.Rules.Pitch
				}
				require.Equal(t, pitch, s.offset-list[i-1].offset, "group %d has a gap: %v", s.group, list)
			}
			for _, other := range list[:i] {
				require.Equal(t, s.group > 0 && s.group == other.group && s.side != other.side, false, "group on two sides: %v", list)
				if s.face > 0 && other.face > 0 {
					want := (s.side + (s.face-other.face+2)%2*2) % 4
					require.Equal(t, want, other.side, "faces: %v", list)
				}
			}
		}
	}
}

// roomy checks that boxes and the ends of wires keep their distances.
func roomy(t require.TestingT, p Problem, d Drawing) {
	for i, b := range d.Boxes {
		require.GreaterOrEqual(t, b.W, p.Boxes[i].W)
		require.GreaterOrEqual(t, b.H, p.Boxes[i].H)
		require.GreaterOrEqual(t, min(b.X, b.Y), 0)
		wide := b.Grow(p.Rules.GapX-1, p.Rules.GapY-1, p.Rules.GapX-1, p.Rules.GapY-1)
		for _, other := range d.Boxes[i+1:] {
			require.False(t, wide.Overlaps(other), "boxes %v and %v", b, other)
		}
	}
	taken := make([][4][]int, len(d.Boxes))
	for i, path := range d.Wires {
		for k, at := range [2]geom.Point{path[0], path[len(path)-1]} {
			b := p.Wires[i][k].Box
			side, offset := sideOf(t, d.Boxes[b], at)
			low, high, pitch := p.Rules.Span/2, d.Boxes[b].W-p.Rules.Span/2, p.Rules.Span
			if side.Horizontal() {
				low, high, pitch = p.Boxes[b].Head, d.Boxes[b].H-1, p.Rules.Pitch
			}
			require.GreaterOrEqual(t, offset, low)
			require.LessOrEqual(t, offset, high)
			for _, other := range taken[b][side] {
				require.GreaterOrEqual(t, geom.Abs(other-offset), pitch)
			}
			taken[b][side] = append(taken[b][side], offset)
		}
	}
}

func TestWireFromABoxToItselfIsRefused(t *testing.T) {
	_, ok := Draw(Problem{Boxes: []Box{{W: 4, H: 4, Head: 1}}, Wires: [][2]End{{}}}, Effort{})
	require.False(t, ok)
}
