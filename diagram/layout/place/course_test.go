package place

import (
	"testing"

	"example.com/lugbook/diagram/layout/geom"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestACourseIsStraightWhereItsBoxesAreNotInTheWay(t *testing.T) {
	a, b := geom.Rect{W: 10, H: 6}, geom.Rect{X: 30, Y: 2, W: 10, H: 6}
	var c course
	from := end{&a, Spot{geom.East, 2}, geom.Point{X: 12, Y: 2}}
	to := end{&b, Spot{geom.West, 2}, geom.Point{X: 28, Y: 4}}
	c.draw(&from, &to, &testRules)
	require.Equal(t, 1, c.n)
	require.Equal(t, newLeg(from.start, to.start), c.legs[0])
}

func TestCoursesAroundABoxDoNotCrossEachOther(t *testing.T) {
	a, b := geom.Rect{X: 100, W: 10, H: 40}, geom.Rect{W: 10, H: 12}
	var courses []course
	for k := range 4 {
		at := Spot{geom.East, 2 + 2*k}
		from := end{&a, at, at.On(a).Add(geom.Point{X: 2})}
		at = Spot{geom.East, 8 - 2*k}
		to := end{&b, at, at.On(b).Add(geom.Point{X: 2})}
		var c course
		c.draw(&from, &to, &testRules)
		require.Equal(t, 2, c.n, "around one corner of the box that is in the way")
		courses = append(courses, c)
	}
	for k := 1; k < len(courses); k++ {
		require.Zero(t, courses[k].crossings(&courses[k-1]))
	}
}

func TestCornersLeadAroundTheBox(t *testing.T) {
	side := rapid.SampledFrom([]geom.Side{geom.North, geom.East, geom.South, geom.West})
	rapid.Check(t, func(t *rapid.T) {
		r := geom.Rect{W: rapid.IntRange(8, 30).Draw(t, "w"), H: rapid.IntRange(6, 30).Draw(t, "h")}
		e := end{rect: &r, spot: Spot{Side: side.Draw(t, "side")}}
		length := r.W
		if e.spot.Side.Horizontal() {
			length = r.H
		}
		e.spot.Offset = rapid.IntRange(1, length-1).Draw(t, "offset")
		e.start = e.spot.On(r).Add(e.spot.Side.Step().Times(2))
		goal := geom.Point{X: rapid.IntRange(-90, 120).Draw(t, "x"), Y: rapid.IntRange(-90, 120).Draw(t, "y")}
		if r.Grow(widest+2, widest+2, widest+2, widest+2).Contains(goal) {
			return
		}
		corners, n := e.corners(goal, &testRules)
		at := e.start
		for _, p := range append(corners[:n:n], goal) {
			require.False(t, cuts(at, p, &r), "from %v to %v", at, p)
			at = p
		}
		require.Equal(t, n == 0, !cuts(e.start, goal, &r), "straight if it can be")
	})
}
