package offgrid

import "math"

// extent is the rectangle around some points.
type extent struct{ x0, y0, x1, y1 float64 }

func nothing() extent {
	return extent{x0: math.Inf(1), y0: math.Inf(1), x1: math.Inf(-1), y1: math.Inf(-1)}
}

func (e *extent) add(p Point) {
	e.x0, e.x1 = min(e.x0, p[0]), max(e.x1, p[0])
	e.y0, e.y1 = min(e.y0, p[1]), max(e.y1, p[1])
}

func (e extent) apart(o extent) bool {
	return e.x0 > o.x1+near || o.x0 > e.x1+near || e.y0 > o.y1+near || o.y0 > e.y1+near
}

func sub(a, b Point) Point        { return Point{a[0] - b[0], a[1] - b[1]} }
func cross(a, b Point) float64    { return a[0]*b[1] - a[1]*b[0] }
func dot(a, b Point) float64      { return a[0]*b[0] + a[1]*b[1] }
func norm(a Point) float64        { return math.Hypot(a[0], a[1]) }
func distance(a, b Point) float64 { return norm(sub(a, b)) }
func same(a, b Point) bool        { return math.Abs(a[0]-b[0]) < near && math.Abs(a[1]-b[1]) < near }

// clean drops repeated and collinear points.
func clean(path []Point) []Point {
	var out []Point
	for _, p := range path {
		if n := len(out); n > 0 && same(out[n-1], p) {
			continue
		}
		out = append(out, p)
	}
	for i := 1; i+1 < len(out); {
		u, v := sub(out[i], out[i-1]), sub(out[i+1], out[i])
		if math.Abs(cross(u, v)) < near*(norm(u)+norm(v)) && dot(u, v) > 0 {
			out = append(out[:i], out[i+1:]...)
		} else {
			i++
		}
	}
	return out
}

// onSegment is how far from a the point p lies on the segment ab; negative if it does not lie on it.
func onSegment(p, a, b Point) float64 {
	d, v := sub(b, a), sub(p, a)
	l := norm(d)
	if l < near {
		if same(p, a) {
			return 0
		}
		return -1
	}
	t := dot(v, d) / l
	if t < -near || t > l+near || math.Abs(cross(v, d))/l >= near {
		return -1
	}
	return max(0, min(l, t))
}

// properCross gives the point where two segments cross strictly inside both.
func properCross(a, b, c, d Point) (Point, bool) {
	r, s, w := sub(b, a), sub(d, c), sub(c, a)
	den := cross(r, s)
	if math.Abs(den) < 1e-9 {
		return Point{}, false
	}
	t, u := cross(w, s)/den, cross(w, r)/den
	et, eu := near/norm(r), near/norm(s)
	if t > et && t < 1-et && u > eu && u < 1-eu {
		return Point{a[0] + t*r[0], a[1] + t*r[1]}, true
	}
	return Point{}, false
}

// leftOf tells whether arm b lies in the sweep from arm q to arm p.
func leftOf(q, p, b Point) bool {
	from := math.Atan2(q[1], q[0])
	turn := func(v Point) float64 {
		a := math.Mod(math.Atan2(v[1], v[0])-from, 2*math.Pi)
		if a < 0 {
			a += 2 * math.Pi
		}
		return a
	}
	return turn(b) < turn(p)
}

// through tells whether the segment ab passes through the open inside of the box (Liang and Barsky, 1984).
func through(a, b Point, r Box) bool {
	d := sub(b, a)
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{
		{-d[0], a[0] - (r.X + inset)}, {d[0], r.X + r.W - inset - a[0]},
		{-d[1], a[1] - (r.Y + inset)}, {d[1], r.Y + r.H - inset - a[1]}} {
		p, q := e[0], e[1]
		if math.Abs(p) < 1e-12 {
			if q <= 0 {
				return false
			}
			continue
		}
		if p < 0 {
			t0 = max(t0, q/p)
		} else {
			t1 = min(t1, q/p)
		}
		if t0 >= t1 {
			return false
		}
	}
	return (t1-t0)*norm(d) > near
}

// along tells whether the segment runs on an edge of the box for some length.
func along(a, b Point, r Box) bool {
	low, size := Point{r.X, r.Y}, Point{r.W, r.H}
	for k := range 2 {
		o := 1 - k
		if math.Abs(a[k]-b[k]) >= near {
			continue
		}
		if math.Abs(a[k]-low[k]) >= near && math.Abs(a[k]-low[k]-size[k]) >= near {
			continue
		}
		if min(max(a[o], b[o]), low[o]+size[o])-max(min(a[o], b[o]), low[o]) > grazed {
			return true
		}
	}
	return false
}
