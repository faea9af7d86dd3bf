package place

import (
	"testing"

	"example.com/lugbook/diagram/layout/chance"
	"example.com/lugbook/diagram/layout/geom"
	"github.com/stretchr/testify/require"
)

var testRules = Rules{Col: 1, Row: 2, Bend: 12, Cross: 20, Hit: 24, Back: 40, Size: 2, GapX: 4, GapY: 2, Tracks: 5, Pitch: 2, Span: 4,
	Frame: Frame{Side: 3, Top: 2, Bottom: 2, Gap: 2}}

func freePort(group int) Port {
	return Port{Sides: geom.Of(geom.East, geom.West), Offset: -1, Group: group}
}

// ring makes boxes in two zones, each wired to the next and to the one after that.
func ring(n int) *Problem {
	p := &Problem{Titles: []int{4, 6}, Rules: testRules}
	for i := range n {
		p.Boxes = append(p.Boxes, Box{Zone: i % 2, W: 10, H: 3, Head: 2})
	}
	add := func(b int) Ref {
		p.Boxes[b].Ports = append(p.Boxes[b].Ports, freePort(-1))
		return Ref{b, len(p.Boxes[b].Ports) - 1}
	}
	for i := range n {
		p.Wires = append(p.Wires, Wire{From: add(i), To: add((i + 1) % n), Room: 8}, Wire{From: add(i), To: add((i + 2) % n)})
	}
	return p
}

func TestArrangeKeepsGroupsTogetherAroundFixedPorts(t *testing.T) {
	b := Box{W: 12, H: 4, Head: 2, Ports: []Port{
		{Sides: geom.Of(geom.East), Offset: 4, Group: -1}, freePort(0), freePort(0), freePort(-1)}}
	slots := newSlots(&b)
	require.Len(t, slots, 2)
	for i := range slots {
		slots[i].side = geom.East
	}
	spots := make([]Spot, len(b.Ports))
	w, h := arrange(&b, slots, [4]int{}, &testRules, spots)
	require.Equal(t, []Spot{{geom.East, 4}, {geom.East, 6}, {geom.East, 8}, {geom.East, 10}}, spots)
	require.Equal(t, 12, w)
	require.Equal(t, 11, h, "the box grows to hold its last port and its border")

	slots[0].reversed = true
	arrange(&b, slots, [4]int{}, &testRules, spots)
	require.Equal(t, []Spot{{geom.East, 4}, {geom.East, 8}, {geom.East, 6}, {geom.East, 10}}, spots)
}

func TestArrangeLeavesAFlagOneRowHigh(t *testing.T) {
	b := Box{W: 6, H: 0, Ports: []Port{{Sides: geom.Of(geom.West), Offset: -1, Group: -1}}}
	spots := make([]Spot, 1)
	_, h := arrange(&b, newSlots(&b), [4]int{}, &testRules, spots)
	require.Equal(t, 0, h)
	require.Equal(t, Spot{geom.West, 0}, spots[0])
}

func TestNewSlotsSpreadPortsOverBothSides(t *testing.T) {
	slots := newSlots(&Box{Ports: []Port{freePort(-1), freePort(-1), {Sides: geom.Of(geom.North), Offset: -1, Group: -1}}})
	require.Equal(t, geom.East, slots[0].side)
	require.Equal(t, geom.West, slots[1].side)
	require.Equal(t, geom.North, slots[2].side)
}

// requireApart checks the hard rules of a placement.
func requireApart(t require.TestingT, p *Problem, q Placement) {
	for i, a := range q.Boxes {
		for j := range i {
			require.False(t, a.Grow(1, 1, 1, 1).Overlaps(q.Boxes[j]), "boxes %d and %d", i, j)
		}
		if z := p.Boxes[i].Zone; z >= 0 {
			require.Equal(t, q.Zones[z], q.Zones[z].Union(a.Grow(3, 2, 3, 2)), "box %d and its zone", i)
		}
	}
	for i, z := range q.Zones {
		for j := range i {
			require.False(t, z.W > 0 && q.Zones[j].W > 0 && z.Overlaps(q.Zones[j]), "zones %d and %d", i, j)
		}
		if p.Rules.MaxWidth > 0 && z.W > 0 {
			require.True(t, z.X >= 0 && z.Right() < p.Rules.MaxWidth, "zone %d on the page", i)
		}
	}
}

func TestFirstAndAnnealedPlacementsKeepTheRules(t *testing.T) {
	for _, width := range []int{0, 60, 118} {
		p := ring(12)
		p.Rules.MaxWidth = width
		start, err := Place(p, 0, 1)
		require.NoError(t, err)
		requireApart(t, p, start[0])
		better, err := Place(p, 20000, 2)
		require.NoError(t, err)
		for _, q := range better {
			requireApart(t, p, q)
			require.Less(t, q.Cost, start[0].Cost)
		}
	}
}

func TestDeltasAddUpToTheCostCountedAfresh(t *testing.T) {
	p := ring(10)
	s := newState(p)
	require.NoError(t, s.first())
	for seed := range uint64(5) {
		s.anneal(2560, seed, fromHot)
		cost, size := s.cost, s.size
		s.recount()
		require.Equal(t, s.cost, cost, "after seed %d", seed)
		require.Equal(t, s.size, size)
	}
}

func TestUndoRestoresEverything(t *testing.T) {
	p := ring(8)
	s := newState(p)
	require.NoError(t, s.first())
	a := &annealer{state: s, rnd: chance.New(1), movable: []int{0, 1, 2, 3, 4, 5, 6, 7}, flexing: []int{0, 1, 2, 3, 4, 5, 6, 7},
		free: []int{0, 1}, reach: 9}
	before := s.result()
	for range 2000 {
		a.touched = a.touched[:0]
		a.zonesB = append(a.zonesB[:0], a.zones...)
		a.propose()
		a.undo()
	}
	require.Equal(t, before, s.result())
}

func TestPinnedBoxesStayAndTheOthersGoAround(t *testing.T) {
	p := ring(8)
	p.Boxes[2].Pin = &geom.Point{X: 30, Y: 20}
	q, err := Place(p, 5000, 1)
	require.NoError(t, err)
	requireApart(t, p, q[0])
	require.Equal(t, geom.Point{X: 30, Y: 20}, geom.Point{X: q[0].Boxes[2].X, Y: q[0].Boxes[2].Y})
}

func TestABoxTooWideForThePageSaysByHowMuch(t *testing.T) {
	p := ring(4)
	p.Rules.MaxWidth = 40
	p.Boxes[1].W = 50
	_, err := Place(p, 10, 1)
	var none *NoRoomError
	require.ErrorAs(t, err, &none)
	require.Equal(t, 1, none.Box)
	require.Equal(t, 50+1+4+6-40, none.Missing)
	require.ErrorContains(t, err, "widen the page")
}

func TestExtendPlacesOnlyWhatIsNew(t *testing.T) {
	p := ring(8)
	q, err := Place(p, 2000, 1)
	require.NoError(t, err)
	kept := make([]*Kept, len(p.Boxes))
	for i := range kept {
		if i != 3 {
			q[0].Boxes[i] = q[0].Boxes[i].Moved(geom.Point{X: 100, Y: 100})
			kept[i] = &Kept{Rect: q[0].Boxes[i], Spots: q[0].Spots[i]}
		}
	}
	more, err := Extend(p, kept, make([]geom.Rect, len(p.Titles)))
	require.NoError(t, err)
	requireApart(t, p, more)
	for i := range kept {
		if i != 3 {
			require.Equal(t, q[0].Boxes[i], more.Boxes[i])
		}
	}
}
