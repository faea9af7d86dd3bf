package route

import (
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	"github.com/stretchr/testify/require"
)

// drawn is a router of a problem with the given paths.
func drawn(t *testing.T, b *builder, paths ...[]geom.Point) *router {
	t.Helper()
	b.p.Paths = paths
	r := newRouter(&b.p)
	for w := range paths {
		require.False(t, r.missing(w) && len(paths[w]) > 0, "wire %d", w)
	}
	return r
}

// across makes a wire with one bend, at (20, 12), and a second one that has to cross its level arm.
func across() *builder {
	b := newBuilder()
	left, below := b.box(0, 10, 6, 4), b.box(17, 30, 6, 4)
	top, bottom := b.box(9, 0, 6, 4), b.box(9, 30, 6, 4)
	b.wire(b.terminal(left, geom.East, 2), b.terminal(below, geom.North, 3))
	b.wire(b.terminal(top, geom.South, 3), b.terminal(bottom, geom.North, 3))
	return b
}

func TestACrossingBesideACornerOrAnEndCostsMore(t *testing.T) {
	corner := []geom.Point{{X: 6, Y: 12}, {X: 20, Y: 12}, {X: 20, Y: 30}}
	at := func(x int) int {
		way := []geom.Point{{X: 12, Y: 4}, {X: 12, Y: 7}, {X: x, Y: 7}, {X: x, Y: 25}, {X: 12, Y: 25}, {X: 12, Y: 30}}
		r := drawn(t, across(), corner, way)
		return r.cost(1) - 2*max(x-12, 12-x)
	}
	free := at(14)
	require.Equal(t, free, at(10))
	require.GreaterOrEqual(t, at(19), free+DefaultCosts(1, 1).Hidden, "beside the corner")
	require.GreaterOrEqual(t, at(7), free+DefaultCosts(1, 1).Hidden, "beside the terminal")
}

func TestUprightRunsKeepApartWhereThereIsRoom(t *testing.T) {
	b := newBuilder()
	left, right := b.box(0, 0, 6, 20), b.box(30, 20, 6, 20)
	for i := range 3 {
		b.wire(b.terminal(left, geom.East, 14-2*i), b.terminal(right, geom.West, 8+2*i))
	}
	require.Empty(t, Solve(&b.p, testEffort).Left)
	var columns []int
	for _, path := range b.p.Paths {
		require.Len(t, path, 4)
		for _, x := range columns {
			require.Greater(t, geom.Abs(path[1].X-x), 1, "%v", b.p.Paths)
		}
		columns = append(columns, path[1].X)
	}
}

func TestPricesOfCompanyAreTakenBackWithTheWire(t *testing.T) {
	b := across()
	require.Empty(t, Solve(&b.p, testEffort).Left)
	r := newRouter(&b.p)
	for w := range r.cells {
		r.rip(w)
	}
	for c := range r.g.cell {
		require.Zero(t, r.g.cell[c].turns)
		require.Zero(t, r.g.cell[c].beside)
	}
}

func TestATextBesideALineKeepsClearOfOtherLines(t *testing.T) {
	b := newBuilder()
	top, bottom := b.box(0, 0, 6, 4), b.box(0, 20, 6, 4)
	next, under := b.box(9, 0, 6, 4), b.box(20, 20, 6, 4)
	b.wire(b.terminal(top, geom.South, 3), b.terminal(bottom, geom.North, 3), 3)
	b.wire(b.terminal(next, geom.South, 3), b.terminal(under, geom.North, 3))
	r := drawn(t, b, []geom.Point{{X: 3, Y: 4}, {X: 3, Y: 20}},
		[]geom.Point{{X: 12, Y: 4}, {X: 12, Y: 7}, {X: 4, Y: 7}, {X: 4, Y: 12}, {X: 23, Y: 12}, {X: 23, Y: 20}})
	l := newLabeller(r, r.p.labelArea())
	require.Equal(t, leading, l.doubt(0, 4, 3, 6), "the other line comes down right below")
	require.Equal(t, sure, l.doubt(0, 4, 3, 15))
	found := l.beside(0)
	require.True(t, found.OK)
	require.Equal(t, sure, l.doubt(0, found.At.X, 3, found.At.Y), "%v", found)
}
