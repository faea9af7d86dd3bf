package route

import (
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	"github.com/stretchr/testify/require"
)

var testEffort = Effort{Rounds: 30, Inserts: 40, Passes: 2}

// builder makes small problems by hand.
type builder struct{ p Problem }

func newBuilder() *builder { return &builder{Problem{Costs: DefaultCosts(1, 1)}} }

func (b *builder) box(x, y, w, h int) int {
	b.p.Boxes = append(b.p.Boxes, geom.Rect{X: x, Y: y, W: w, H: h})
	b.p.Pinned = append(b.p.Pinned, false)
	return len(b.p.Boxes) - 1
}

func (b *builder) terminal(box int, side geom.Side, offset int) int {
	r := b.p.Boxes[box]
	at := map[geom.Side]geom.Point{
		geom.North: {X: r.X + offset, Y: r.Y}, geom.South: {X: r.X + offset, Y: r.Bottom()},
		geom.West: {X: r.X, Y: r.Y + offset}, geom.East: {X: r.Right(), Y: r.Y + offset}}[side]
	b.p.Terminals = append(b.p.Terminals, Terminal{Box: box, At: at, Side: side})
	return len(b.p.Terminals) - 1
}

func (b *builder) wire(from, to int, labels ...int) {
	b.p.Wires = append(b.p.Wires, Wire{From: from, To: to, Labels: labels})
}

// facing makes two boxes side by side with n terminals on the sides that face each other.
func facing(gap, n int) (b *builder, left, right []int) {
	b = newBuilder()
	l, r := b.box(0, 0, 6, 2*n+2), b.box(6+gap, 0, 6, 2*n+2)
	for i := range n {
		left = append(left, b.terminal(l, geom.East, 2*i+2))
		right = append(right, b.terminal(r, geom.West, 2*i+2))
	}
	return b, left, right
}

// requireSlots checks the rule that everything rests on: no slot is taken twice, no wire runs where it must not.
func requireSlots(t *testing.T, p *Problem) {
	t.Helper()
	r := newRouter(p)
	for w := range p.Wires {
		require.False(t, r.missing(w), "wire %d: %v", w, p.Paths[w])
		require.False(t, r.conflicted(w))
	}
}

func TestAlignedTerminalsGetAStraightWire(t *testing.T) {
	b, l, r := facing(10, 1)
	b.wire(l[0], r[0])
	res := Solve(&b.p, testEffort)
	require.Empty(t, res.Left)
	require.Equal(t, []geom.Point{{X: 6, Y: 2}, {X: 16, Y: 2}}, b.p.Paths[0])
}

func TestReversedOrderCrossesNoPairTwice(t *testing.T) {
	b, l, r := facing(14, 4)
	for i := range l {
		b.wire(l[i], r[len(r)-1-i])
	}
	require.Empty(t, Solve(&b.p, testEffort).Left)
	requireSlots(t, &b.p)
	crossings := 0
	router := newRouter(&b.p)
	for c := range router.g.cell {
		if router.g.cell[c].use[level] > 0 && router.g.cell[c].use[upright] > 0 && !router.bendAt(int32(c)) {
			crossings++
		}
	}
	require.LessOrEqual(t, crossings, 6)
	require.Positive(t, crossings)
}

func (r *router) bendAt(c int32) bool {
	found := false
	for w, cells := range r.cells {
		q := r.goalOf(w)
		r.visit(&q, cells, func(at int32, _ int, turn bool) { found = found || turn && at == c })
	}
	return found
}

func TestRoomIsMadeWhereTracksLack(t *testing.T) {
	b, l, r := facing(3, 5)
	for i := range l {
		b.wire(l[i], r[len(r)-1-i])
	}
	require.Empty(t, Solve(&b.p, testEffort).Left)
	requireSlots(t, &b.p)
	require.Greater(t, b.p.Boxes[1].X-b.p.Boxes[0].Right(), 3, "the gap had to grow")
}

func TestPinnedBoxesAreNotMovedForRoom(t *testing.T) {
	b, l, r := facing(2, 5)
	for i := range l {
		b.wire(l[i], r[len(r)-1-i])
	}
	b.p.Pinned = []bool{true, true}
	b.p.Anchored = true
	before := append([]geom.Rect(nil), b.p.Boxes...)
	res := Solve(&b.p, testEffort)
	require.NotEmpty(t, res.Left)
	require.Equal(t, before, b.p.Boxes)
	for _, w := range res.Left {
		require.Nil(t, b.p.Paths[w], "a wire left over has no path")
	}
}

func TestLegalPathsAreKept(t *testing.T) {
	b, l, r := facing(10, 2)
	b.wire(l[0], r[0])
	b.wire(l[1], r[1])
	detour := []geom.Point{{X: 6, Y: 2}, {X: 9, Y: 2}, {X: 9, Y: -2}, {X: 12, Y: -2}, {X: 12, Y: 2}, {X: 16, Y: 2}}
	b.p.Paths = [][]geom.Point{detour, nil}
	require.Empty(t, Solve(&b.p, Effort{Rounds: 10}).Left)
	require.Equal(t, detour, b.p.Paths[0])
	require.Len(t, b.p.Paths[1], 2)

	b.p.Paths = [][]geom.Point{{{X: 6, Y: 2}, {X: 9, Y: 2}, {X: 9, Y: 4}, {X: 16, Y: 4}}, nil}
	Solve(&b.p, Effort{Rounds: 10})
	require.Equal(t, []geom.Point{{X: 6, Y: 2}, {X: 16, Y: 2}}, b.p.Paths[0], "a path to the wrong terminal is drawn anew")
}

func TestDescentTakesTheShorterWay(t *testing.T) {
	b, l, r := facing(10, 1)
	b.wire(l[0], r[0])
	b.p.Paths = [][]geom.Point{{{X: 6, Y: 2}, {X: 9, Y: 2}, {X: 9, Y: -2}, {X: 12, Y: -2}, {X: 12, Y: 2}, {X: 16, Y: 2}}}
	Solve(&b.p, Effort{Rounds: 10, Passes: 1})
	require.Len(t, b.p.Paths[0], 2)
}

func TestFramesAreCrossedAtRightAnglesAndTitlesNever(t *testing.T) {
	b := newBuilder()
	in, out := b.box(10, 10, 6, 4), b.box(12, -10, 6, 4)
	b.wire(b.terminal(in, geom.North, 3), b.terminal(out, geom.South, 3))
	b.p.Zones = []Zone{{Rect: geom.Rect{X: 5, Y: 5, W: 30, H: 14}, Title: 9}}
	require.Empty(t, Solve(&b.p, testEffort).Left)
	crossed := 0
	path := b.p.Paths[0]
	for i := 0; i+1 < len(path); i++ {
		seg := geom.Around(path[i : i+2])
		if seg.Y < 5 && seg.Bottom() > 5 {
			crossed++
			require.Zero(t, seg.W)
			require.Greater(t, seg.X, 5+1+9, "the title takes columns 7 to 15")
		}
	}
	require.Equal(t, 1, crossed, "path %v", path)
}

func TestWiresOfOneTerminalPartSoon(t *testing.T) {
	b := newBuilder()
	hub := b.box(0, 0, 6, 8)
	port := b.terminal(hub, geom.East, 4)
	for _, y := range []int{-12, -2, 8, 18} {
		leaf := b.box(24, y, 6, 4)
		b.wire(port, b.terminal(leaf, geom.West, 2))
	}
	require.Empty(t, Solve(&b.p, testEffort).Left)
	requireSlots(t, &b.p)
	shared := 0
	r := newRouter(&b.p)
	for c := range r.g.cell {
		if r.g.cell[c].static&stubOnly != 0 {
			shared++
		}
	}
	require.Equal(t, 2, shared, "four wires share two cells")
}

func TestLabels(t *testing.T) {
	label := func(gap int, labels ...int) Label {
		b, l, r := facing(gap, 1)
		b.wire(l[0], r[0], labels...)
		return Solve(&b.p, Effort{Rounds: 10}).Labels[0]
	}
	require.Equal(t, Label{Index: 0, At: geom.Point{X: 9, Y: 2}, OK: true}, label(12, 6, 2))
	require.Equal(t, Label{Index: 0, At: geom.Point{X: 8, Y: 2}, OK: true}, label(9, 6, 2), "rather short ends than a short text")
	require.Equal(t, Label{Index: 1, At: geom.Point{X: 9, Y: 2}, OK: true}, label(8, 6, 2), "the shorter text fits")
	require.Equal(t, Label{}, label(9), "a wire without labels has none")
}

func TestRoomIsMadeForALabel(t *testing.T) {
	b, l, r := facing(5, 1)
	b.wire(l[0], r[0], 4)
	res := Solve(&b.p, testEffort)
	require.True(t, res.Labels[0].OK)
	require.GreaterOrEqual(t, b.p.Boxes[1].X-b.p.Boxes[0].Right()-1, 8)
}

func TestAnUprightWireHasItsLabelBesideIt(t *testing.T) {
	b := newBuilder()
	top, bottom := b.box(0, 0, 6, 3), b.box(0, 10, 6, 3)
	b.wire(b.terminal(top, geom.South, 3), b.terminal(bottom, geom.North, 3), 5)
	l := Solve(&b.p, testEffort).Labels[0]
	require.True(t, l.OK && l.Vertical)
	require.Equal(t, b.p.Paths[0][0].X+1, l.At.X)
}

func TestPolishStraightensAndKeepsThePins(t *testing.T) {
	b := newBuilder()
	l, r, far := b.box(0, 0, 6, 4), b.box(20, 7, 6, 4), b.box(20, 30, 6, 4)
	b.wire(b.terminal(l, geom.East, 2), b.terminal(r, geom.West, 2))
	b.wire(b.terminal(r, geom.South, 3), b.terminal(far, geom.North, 3))
	b.p.Pinned[l] = true
	e := testEffort
	e.Polish = Polishing{Tries: 2000, Seed: 1, GapX: 4, GapY: 2, Size: 1, Within: []int{-1, -1, -1}}
	require.Empty(t, Solve(&b.p, e).Left)
	requireSlots(t, &b.p)
	require.Equal(t, geom.Rect{W: 6, H: 4}, b.p.Boxes[l])
	require.Len(t, b.p.Paths[0], 2, "the boxes can be lined up: %v", b.p.Boxes)
	require.Len(t, b.p.Paths[1], 2)
	require.Less(t, b.p.Boxes[far].Y-b.p.Boxes[r].Bottom(), 10, "and pulled together")
}

func TestInsertStretchesWhatLiesAcross(t *testing.T) {
	b, l, r := facing(10, 2)
	b.wire(l[0], r[1])
	below := b.box(0, 12, 6, 3)
	b.p.Zones = []Zone{{Rect: geom.Rect{X: -3, Y: -3, W: 30, H: 20}}}
	Solve(&b.p, Effort{Rounds: 10})
	require.True(t, b.p.insert(level, 12, 3))
	require.Equal(t, 15, b.p.Boxes[below].Y)
	require.Equal(t, 0, b.p.Boxes[0].Y)
	require.Equal(t, 23, b.p.Zones[0].Rect.H)
	require.True(t, b.p.insert(upright, 10, 2))
	require.Equal(t, 18, b.p.Boxes[1].X)
	requireSlots(t, &b.p)
	b.p.Pinned[1] = true
	require.False(t, b.p.insert(upright, 10, 2), "a pinned box does not move")
	b.p.Pinned[1], b.p.MaxWidth = false, 30
	require.False(t, b.p.insert(upright, 10, 9), "the page is full")
}

func TestCompactDeletesEmptyBandsOnly(t *testing.T) {
	b := newBuilder()
	top, bottom := b.box(0, 0, 6, 3), b.box(0, 30, 6, 3)
	b.wire(b.terminal(top, geom.South, 3), b.terminal(bottom, geom.North, 3))
	b.p.Zones = []Zone{{Rect: geom.Rect{X: -5, Y: -5, W: 40, H: 60}, Title: 5}}
	e := Effort{Rounds: 10, Compact: Compaction{Rows: 2, Columns: 1}}
	require.Empty(t, Solve(&b.p, e).Left)
	requireSlots(t, &b.p)
	require.Equal(t, 3, b.p.Boxes[bottom].Y-b.p.Boxes[top].Bottom(), "two rows stay between the boxes")
	z := b.p.Zones[0].Rect
	require.Equal(t, 2+1, b.p.Boxes[top].Y-z.Y)
	require.Equal(t, 1+1, z.Right()-b.p.Boxes[top].Right(), "columns are closed up to the frame")
}
