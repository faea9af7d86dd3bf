package offgrid

import (
	"math"
	"sort"
)

// wire counts what one wire does alone and to boxes.
func (m *Report) wire(boxes []Box, w Wire, l line) {
	bends := len(l.pts) - 2
	m.Bends += bends
	m.MaxBends = max(m.MaxBends, bends)
	for i := 0; i+1 < len(l.pts); i++ {
		d := sub(l.pts[i+1], l.pts[i])
		m.Length += norm(d)
		if math.Abs(d[0]) > near && math.Abs(d[1]) > near {
			m.Oblique++
		}
	}
	for b, r := range boxes {
		if l.apart(extent{r.X, r.Y, r.X + r.W, r.Y + r.H}) {
			continue
		}
		inside, onBorder := false, false
		for i := 0; i+1 < len(l.pts); i++ {
			inside = inside || through(l.pts[i], l.pts[i+1], r)
			onBorder = onBorder || along(l.pts[i], l.pts[i+1], r)
		}
		switch {
		case inside && (b == w.From.Box || b == w.To.Box):
			m.ThroughOwn++
		case inside:
			m.Through++
		case onBorder:
			m.Graze++
		}
	}
	m.end(w.From, l.pts[0], l.pts[1])
	m.end(w.To, l.pts[len(l.pts)-1], l.pts[len(l.pts)-2])
}

func (m *Report) end(e End, at, next Point) {
	switch {
	case e.Port < 0:
	case distance(e.At, at) > portNear:
		m.PortMiss++
	case dot(sub(next, at), e.Out)/distance(at, next) < 0.999:
		m.PortDir++
	}
}

type contacts struct {
	crossings, touches int
	overlap            float64
}

// contactsOf compares two cleaned wires. Proper crossings are added to spots.
func contactsOf(a, b []Point, spots map[string]bool) contacts {
	var c contacts
	meet := false
	for i := 0; i+1 < len(a); i++ {
		s := newLine(a[i : i+2])
		for j := 0; j+1 < len(b); j++ {
			if s.apart(newLine(b[j : j+2]).extent) {
				continue
			}
			if at, ok := properCross(a[i], a[i+1], b[j], b[j+1]); ok {
				c.crossings++
				spots[spotKey(at)] = true
			} else {
				meet = true
			}
		}
	}
	if meet {
		c.meetings(refine(a, b), refine(b, a))
	}
	return c
}

// refine inserts into path a every point of b that lies on it.
func refine(a, b []Point) []Point {
	type hit struct {
		t float64
		p Point
	}
	var out []Point
	for i := 0; i+1 < len(a); i++ {
		out = append(out, a[i])
		var hits []hit
		for _, p := range b {
			if same(p, a[i]) || same(p, a[i+1]) {
				continue
			}
			if t := onSegment(p, a[i], a[i+1]); t > 0 {
				hits = append(hits, hit{t, p})
			}
		}
		sort.SliceStable(hits, func(x, y int) bool { return hits[x].t < hits[y].t })
		last := a[i]
		for _, h := range hits {
			if !same(h.p, last) {
				out = append(out, h.p)
				last = h.p
			}
		}
	}
	return append(out, a[len(a)-1])
}

// run is a common piece of two polylines: p[i..i+k] equals q[j], q[j+step], ...
type run struct{ i, j, k, step int }

// meetings finds the longest common runs of two polylines that have each other's corners as points.
func (c *contacts) meetings(p, q []Point) {
	used := make([]bool, len(p)*len(q))
	for i := range p {
		for j := range q {
			if used[i*len(q)+j] || !same(p[i], q[j]) {
				continue
			}
			r := commonRun(p, q, i, j)
			for n := 0; n <= r.k; n++ {
				used[(i+n)*len(q)+j+r.step*n] = true
			}
			for n := range r.k {
				c.overlap += distance(p[i+n], p[i+n+1])
			}
			c.judge(p, q, r)
		}
	}
}

func commonRun(p, q []Point, i, j int) run {
	r := run{i: i, j: j, step: 1}
	for _, s := range [2]int{1, -1} {
		n := 0
		for i+n+1 < len(p) && j+s*(n+1) >= 0 && j+s*(n+1) < len(q) && same(p[i+n+1], q[j+s*(n+1)]) {
			n++
		}
		if n > r.k {
			r.k, r.step = n, s
		}
	}
	return r
}

// judge tells a crossing from a touch. Wires that both end in the run, at a common terminal, do neither.
func (c *contacts) judge(p, q []Point, r run) {
	i2, j2 := r.i+r.k, r.j+r.step*r.k
	endP := r.i == 0 || i2 == len(p)-1
	endQ := r.j == 0 || r.j == len(q)-1 || j2 == 0 || j2 == len(q)-1
	if endP || endQ {
		if !endP || !endQ {
			c.touches++
		}
		return
	}
	enter := leftOf(sub(p[r.i+1], p[r.i]), sub(p[r.i-1], p[r.i]), sub(q[r.j-r.step], q[r.j]))
	leave := leftOf(sub(p[i2+1], p[i2]), sub(p[i2-1], p[i2]), sub(q[j2+r.step], q[j2]))
	switch {
	case enter != leave:
		c.crossings++
	case r.k == 0:
		c.touches++
	}
}

// tightRun is the length on which two wires run parallel less than a cell apart, but not on each other.
func tightRun(a, b []Point) float64 {
	sum := 0.0
	for k := range 2 {
		o := 1 - k
		for i := 0; i+1 < len(a); i++ {
			if math.Abs(a[i][k]-a[i+1][k]) > near {
				continue
			}
			for j := 0; j+1 < len(b); j++ {
				gap := math.Abs(a[i][k] - b[j][k])
				if math.Abs(b[j][k]-b[j+1][k]) > near || gap < near || gap > closeRuns {
					continue
				}
				side := min(max(a[i][o], a[i+1][o]), max(b[j][o], b[j+1][o])) -
					max(min(a[i][o], a[i+1][o]), min(b[j][o], b[j+1][o]))
				if side > near {
					sum += side
				}
			}
		}
	}
	return sum
}
