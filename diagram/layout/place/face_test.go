package place

import (
	"errors"
	"slices"
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// drawBox makes a box with ports on faces, in groups, fixed and free.
func drawBox(t *rapid.T) Box {
	b := Box{Zone: rapid.IntRange(-1, 1).Draw(t, "zone"), W: rapid.IntRange(4, 20).Draw(t, "w"), H: rapid.IntRange(3, 8).Draw(t, "h"),
		Head: 2, Ordered: rapid.Bool().Draw(t, "ordered")}
	sides := rapid.SampledFrom([]geom.Sides{geom.Of(geom.East, geom.West), geom.AnySide, geom.Of(geom.North, geom.South)}).Draw(t, "sides")
	for group := range rapid.IntRange(1, 6).Draw(t, "groups") {
		face := rapid.IntRange(0, 2).Draw(t, "face")
		for range rapid.IntRange(1, 3).Draw(t, "ports") {
			b.Ports = append(b.Ports, Port{Sides: sides, Offset: -1, Group: group, Face: face})
		}
	}
	if rapid.IntRange(0, 4).Draw(t, "fixed") == 0 {
		b.Ports = append(b.Ports, Port{Sides: geom.Of(geom.East), Offset: 2, Group: -1})
		b.H = max(b.H, 3)
	}
	return b
}

// drawProblem wires boxes up at random.
func drawProblem(t *rapid.T) *Problem {
	p := &Problem{Titles: []int{4, 6}, Rules: testRules}
	p.Rules.MaxWidth = rapid.SampledFrom([]int{0, 118}).Draw(t, "page")
	for range rapid.IntRange(2, 7).Draw(t, "boxes") {
		p.Boxes = append(p.Boxes, drawBox(t))
	}
	end := func(label string) Ref {
		box := rapid.IntRange(0, len(p.Boxes)-1).Draw(t, label)
		return Ref{box, rapid.IntRange(0, len(p.Boxes[box].Ports)-1).Draw(t, label+" port")}
	}
	for range rapid.IntRange(1, 14).Draw(t, "wires") {
		from, to := end("from"), end("to")
		if from != to {
			p.Wires = append(p.Wires, Wire{From: from, To: to, Onward: rapid.Bool().Draw(t, "onward")})
		}
	}
	if rapid.Bool().Draw(t, "pinned") {
		p.Boxes[0].Pin = &geom.Point{X: 40, Y: 30}
	}
	return p
}

// requireSeated checks the spots of a box's ports: on allowed sides, the pitch apart, groups together, faces across
// from each other and in order, a single pair of them on one line.
func requireSeated(t require.TestingT, b *Box, r geom.Rect, spots []Spot) {
	facings := geom.AnySide
	where := map[geom.Point]bool{}
	groups := map[int][]int{}
	var order []int
	for i, p := range b.Ports {
		at := spots[i].On(r)
		require.False(t, where[at], "two ports on one cell")
		where[at] = true
		require.True(t, p.Sides.Has(spots[i].Side))
		if p.Offset >= 0 {
			require.Equal(t, p.Offset, spots[i].Offset)
		}
		switch p.Face {
		case 1:
			facings &= geom.Of(spots[i].Side)
		case 2:
			facings &= geom.Of(spots[i].Side.Opposite())
		}
		if p.Group >= 0 && groups[p.Group] == nil {
			order = append(order, p.Group)
		}
		groups[p.Group] = append(groups[p.Group], i)
	}
	require.NotZero(t, facings, "faces sit across from each other")
	up, down := false, false
	var last [3]int
	for _, g := range order {
		ports := groups[g]
		first, end := spots[ports[0]], spots[ports[len(ports)-1]]
		pitch := testRules.Span
		if first.Side.Horizontal() {
			pitch = testRules.Pitch
		}
		require.Equal(t, first.Side, end.Side)
		require.Equal(t, (len(ports)-1)*pitch, geom.Abs(end.Offset-first.Offset), "a group stays together")
		if face := b.Ports[ports[0]].Face; face > 0 && b.Ordered {
			at := first.Offset + 1
			up, down = up || last[face] > at, down || last[face] > 0 && last[face] < at
			last[face] = at
		}
	}
	require.False(t, up && down, "faces keep their order")
	if one, two, _ := faces(b); paired(b) {
		require.Equal(t, spots[one].Offset, spots[two].Offset, "the line runs straight through")
	}
}

// requirePlaced checks what holds after every pass: boxes apart, within their zones, on the page and at their pins, and
// ports seated.
func requirePlaced(t require.TestingT, p *Problem, q Placement) {
	requireApart(t, p, q)
	for i := range p.Boxes {
		b, r := &p.Boxes[i], q.Boxes[i]
		requireSeated(t, b, r, q.Spots[i])
		if b.Pin != nil {
			require.Equal(t, *b.Pin, geom.Point{X: r.X, Y: r.Y}, "a pinned box moved")
		}
		if width := p.Rules.MaxWidth; width > 0 {
			require.True(t, r.X >= 0 && r.Right() < width, "box %d on the page", i)
		}
	}
}

func TestTheRulesHoldAfterEveryPass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawProblem(t)
		s := newState(p)
		if s.first() != nil {
			return // no room beside the pinned box
		}
		requirePlaced(t, p, s.result())
		s.anneal(1280, 3, fromHot)
		q := s.result()
		requirePlaced(t, p, q)
		s.recount()
		require.Equal(t, q.Cost, s.cost+s.size, "the price kept up with the moves")
		kept := make([]*Kept, len(p.Boxes))
		for i := range kept {
			if p.Boxes[i].Pin != nil || i > 0 && rapid.Bool().Draw(t, "kept") {
				kept[i] = &Kept{Rect: q.Boxes[i], Spots: q.Spots[i]}
			}
		}
		more, err := Extend(p, kept, q.Zones)
		var none *NoRoomError
		if errors.As(err, &none) {
			return // hemmed in
		}
		require.NoError(t, err)
		requirePlaced(t, p, more)
	})
}

func TestAPairOfFacesMeetsAroundOtherPorts(t *testing.T) {
	b := Box{W: 12, H: 4, Head: 2, Ports: []Port{
		{Sides: geom.Of(geom.West), Offset: -1, Group: -1},
		{Sides: geom.Of(geom.East, geom.West), Offset: -1, Group: -1, Face: 1},
		{Sides: geom.Of(geom.East, geom.West), Offset: -1, Group: -1, Face: 2},
		{Sides: geom.Of(geom.East), Offset: 4, Group: -1}}}
	slots := newSlots(&b)
	spots := make([]Spot, len(b.Ports))
	w, h := arrange(&b, slots, [4]int{1, 1, 1, 1}, &testRules, spots)
	require.Equal(t, Spot{geom.West, 2}, spots[0])
	require.Equal(t, Spot{geom.West, 6}, spots[1], "one row below the fixed port across")
	require.Equal(t, Spot{geom.East, 6}, spots[2])
	require.Equal(t, []int{12, 7}, []int{w, h})
}

func TestFacingsAreTheSidesThatBothFacesAllow(t *testing.T) {
	port := func(face int, sides ...geom.Side) Port { return Port{Sides: geom.Of(sides...), Offset: -1, Face: face} }
	require.Equal(t, geom.Of(geom.East), Facings(&Box{Ports: []Port{port(1, geom.East, geom.West), port(2, geom.West, geom.North)}}))
	require.Zero(t, Facings(&Box{Ports: []Port{port(1, geom.East), port(2, geom.East)}}))
	fixed := Port{Sides: geom.Of(geom.North), Offset: 3, Face: 2}
	require.Equal(t, geom.Of(geom.South), Facings(&Box{Ports: []Port{port(1, geom.North, geom.South), fixed}}))
	require.Equal(t, geom.AnySide, Facings(&Box{Ports: []Port{port(0, geom.East)}}))
}

func TestOnwardWiresRunFromLeftToRight(t *testing.T) {
	for _, onward := range []bool{false, true} {
		p := &Problem{Rules: testRules}
		p.Rules.MaxWidth = 160
		for range 6 {
			p.Boxes = append(p.Boxes, Box{Zone: -1, W: 10, H: 3, Head: 2, Ports: []Port{
				{Sides: geom.Of(geom.East, geom.West), Offset: -1, Group: -1, Face: 1},
				{Sides: geom.Of(geom.East, geom.West), Offset: -1, Group: -1, Face: 2}}})
		}
		for i := range 5 {
			p.Wires = append(p.Wires, Wire{From: Ref{5 - i, 1}, To: Ref{4 - i, 0}, Onward: onward})
		}
		q, err := Place(p, 20000, 8)
		require.NoError(t, err)
		slices.SortStableFunc(q, func(a, b Placement) int { return a.Cost - b.Cost })
		right := 0
		for _, w := range p.Wires {
			if q[0].Boxes[w.From.Box].Right() < q[0].Boxes[w.To.Box].X {
				right++
			}
		}
		require.Equal(t, onward, right == len(p.Wires), "%d run to the right", right)
	}
}
