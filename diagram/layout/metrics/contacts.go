package metrics

import (
	"sort"

	"example.com/lugbook/diagram/layout/geom"
)

type contacts struct{ crossings, touches, overlap int }

// contactsOf compares two cleaned wires. Proper crossings are added to spots. A touch is a meeting without crossing
// away from a common terminal. Lines drawn on the integer grid are never closer than one cell without meeting, so
// only oblique segments could be, and these are faults of their own.
func contactsOf(a, b []geom.Point, spots map[geom.Point]bool) contacts {
	var c contacts
	near := false
	for i := 0; i+1 < len(a); i++ {
		for j := 0; j+1 < len(b); j++ {
			if !segmentBox(a[i], a[i+1]).Overlaps(segmentBox(b[j], b[j+1])) {
				continue
			}
			if at, ok := properCross(a[i], a[i+1], b[j], b[j+1]); ok {
				c.crossings++
				spots[at] = true
			} else {
				near = true
			}
		}
	}
	if near {
		c.meetings(refine(a, b), refine(b, a))
	}
	return c
}

// meetings finds the maximal common runs of two polylines that have each other's corners as points.
func (c *contacts) meetings(p, q []geom.Point) {
	used := make([]bool, len(p)*len(q))
	for i := range p {
		for j := range q {
			if p[i] != q[j] || used[i*len(q)+j] {
				continue
			}
			k, step := commonRun(p, q, i, j)
			for n := 0; n <= k; n++ {
				used[(i+n)*len(q)+j+step*n] = true
			}
			for n := 0; n < k; n++ {
				d := p[i+n+1].Sub(p[i+n])
				c.overlap += geom.Abs(d.X) + geom.Abs(d.Y)
			}
			c.judge(p, q, run{i: i, j: j, k: k, step: step})
		}
	}
}

// run is a common piece: p[i..i+k] equals q[j], q[j+step], ...
type run struct{ i, j, k, step int }

func commonRun(p, q []geom.Point, i, j int) (k, step int) {
	step = 1
	for _, s := range [2]int{1, -1} {
		n := 0
		for i+n+1 < len(p) && inRange(j+s*(n+1), len(q)) && p[i+n+1] == q[j+s*(n+1)] {
			n++
		}
		if n > k {
			k, step = n, s
		}
	}
	return k, step
}

func inRange(i, n int) bool { return i >= 0 && i < n }

func (c *contacts) judge(p, q []geom.Point, r run) {
	j2 := r.j + r.step*r.k
	endP := r.i == 0 || r.i+r.k == len(p)-1
	endQ := r.j == 0 || r.j == len(q)-1 || j2 == 0 || j2 == len(q)-1
	if endP || endQ {
		if !endP || !endQ {
			c.touches++
		}
		return
	}
	enter := leftOf(p[r.i+1].Sub(p[r.i]), p[r.i-1].Sub(p[r.i]), q[r.j-r.step].Sub(q[r.j]))
	leave := leftOf(p[r.i+r.k+1].Sub(p[r.i+r.k]), p[r.i+r.k-1].Sub(p[r.i+r.k]), q[j2+r.step].Sub(q[j2]))
	switch {
	case enter != leave:
		c.crossings++
	case r.k == 0:
		c.touches++
	}
}

// leftOf tells whether arm b lies in the clockwise sweep (y downward) from arm q to arm p.
func leftOf(q, p, b geom.Point) bool {
	turn := func(v geom.Point) int { return (quarter(v) - quarter(q) + 4) % 4 }
	return turn(b) < turn(p)
}

func quarter(v geom.Point) int {
	dir, _ := geom.Toward(geom.Point{}, v)
	return int(dir)
}

func segmentBox(a, b geom.Point) geom.Rect { return geom.Around([]geom.Point{a, b}) }

// properCross gives the cell where a level and an upright segment cross strictly inside both.
func properCross(a, b, c, d geom.Point) (geom.Point, bool) {
	if a.Y == b.Y && c.X == d.X {
		if between(c.X, a.X, b.X) && between(a.Y, c.Y, d.Y) {
			return geom.Point{X: c.X, Y: a.Y}, true
		}
		return geom.Point{}, false
	}
	if a.X == b.X && c.Y == d.Y {
		return properCross(c, d, a, b)
	}
	return geom.Point{}, false
}

// between tells whether v is strictly between a and b.
func between(v, a, b int) bool { return v > min(a, b) && v < max(a, b) }

// refine inserts into path a every point of b that lies on it.
func refine(a, b []geom.Point) []geom.Point {
	var out []geom.Point
	for i := 0; i+1 < len(a); i++ {
		out = append(out, a[i])
		from := len(out)
		for _, p := range b {
			if onSegment(p, a[i], a[i+1]) {
				out = append(out, p)
			}
		}
		start := a[i]
		sort.Slice(out[from:], func(x, y int) bool {
			return distance(start, out[from+x]) < distance(start, out[from+y])
		})
	}
	return dedupe(append(out, a[len(a)-1]))
}

func dedupe(path []geom.Point) []geom.Point {
	out := path[:1]
	for _, p := range path[1:] {
		if p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	return out
}

// onSegment tells whether p lies strictly inside the level or upright segment ab.
func onSegment(p, a, b geom.Point) bool {
	if a.Y == b.Y && p.Y == a.Y {
		return between(p.X, a.X, b.X)
	}
	return a.X == b.X && p.X == a.X && between(p.Y, a.Y, b.Y)
}

func distance(a, b geom.Point) int { return geom.Abs(a.X-b.X) + geom.Abs(a.Y-b.Y) }

// throughRect tells whether the level or upright segment enters the open inside of r.
func throughRect(a, b geom.Point, r geom.Rect) bool {
	s := segmentBox(a, b)
	return s.X < r.Right() && r.X < s.Right() && s.Y > r.Y && s.Y < r.Bottom() && s.H == 0 ||
		s.Y < r.Bottom() && r.Y < s.Bottom() && s.X > r.X && s.X < r.Right() && s.W == 0
}

// alongBorder tells whether the segment runs on an edge of r for some length.
func alongBorder(a, b geom.Point, r geom.Rect) bool {
	s := segmentBox(a, b)
	if s.W == 0 && (s.X == r.X || s.X == r.Right()) {
		return min(s.Bottom(), r.Bottom()) > max(s.Y, r.Y)
	}
	return s.H == 0 && (s.Y == r.Y || s.Y == r.Bottom()) && min(s.Right(), r.Right()) > max(s.X, r.X)
}
