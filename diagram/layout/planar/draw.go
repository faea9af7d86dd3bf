package planar

import (
	"slices"
	"sync"

	"example.com/lugbook/diagram/layout/geom"
)

// Problem is a graph to be drawn. Wires join two different boxes, given by index.
type Problem struct {
	Boxes []Box
	Wires [][2]int
	Rules Rules
}

// Drawing is the result: the boxes' places, and the corners of every wire from its first box to its second, both ends
// on the borders. No cell is negative.
type Drawing struct {
	Boxes []geom.Rect
	Wires [][]geom.Point
	// Crossings is the number of places where two wires cross.
	Crossings int
}

// Draw draws a graph; ok is false when a wire joins a box with itself, which this package does not draw.
func Draw(p Problem, e Effort) (d Drawing, ok bool) {
	edges := make([]edge, len(p.Wires))
	for i, w := range p.Wires {
		if edges[i] = (edge{w[0], w[1]}); w[0] == w[1] {
			return Drawing{}, false
		}
	}
	of, count := components(len(p.Boxes), edges)
	d = Drawing{Boxes: make([]geom.Rect, len(p.Boxes)), Wires: make([][]geom.Point, len(p.Wires))}
	parts := make([]part, count)
	index := make([]int, len(p.Boxes))
	for v, c := range of {
		index[v] = len(parts[c].vertices)
		parts[c].vertices = append(parts[c].vertices, v)
		parts[c].boxes = append(parts[c].boxes, p.Boxes[v])
	}
	for i, g := range edges {
		c := of[g.u]
		parts[c].wires = append(parts[c].wires, i)
		parts[c].edges = append(parts[c].edges, edge{index[g.u], index[g.v]})
	}
	for i := range parts {
		s, crossings := parts[i].draw(p.Rules, e)
		if s == nil {
			return Drawing{}, false
		}
		parts[i].sketch = s
		d.Crossings += crossings
	}
	pack(parts, p.Rules)
	for _, c := range parts {
		for i, v := range c.vertices {
			d.Boxes[v] = c.sketch.boxes[i]
		}
		for i, w := range c.wires {
			d.Wires[w] = c.sketch.wires[i]
		}
	}
	return d, true
}

// part is a connected part of the graph.
type part struct {
	vertices, wires []int
	boxes           []Box
	edges           []edge
	sketch          *sketch
}

// draw makes several drawings of the part and keeps the best.
func (c *part) draw(r Rules, e Effort) (*sketch, int) {
	if len(c.edges) == 0 {
		return &sketch{boxes: []geom.Rect{{W: c.boxes[0].W, H: c.boxes[0].H}}}, 0
	}
	planes := topologies(len(c.boxes), c.edges, e)
	each := max((e.Shapes+2*len(planes)-1)/(2*len(planes)), 1)
	made := make([][]*sketch, len(planes))
	var wait sync.WaitGroup
	for i, p := range planes {
		wait.Go(func() {
			for _, s := range shapes(p, each) {
				for _, east := range [2]geom.Side{geom.East, geom.South} {
					made[i] = append(made[i], c.sketchOf(p, s, east, r))
				}
			}
		})
	}
	wait.Wait()
	var best *sketch
	for _, s := range slices.Concat(made...) {
		if s != nil && (best == nil || s.cost(r) < best.cost(r)) {
			best = s
		}
	}
	return best, planes[0].crossings
}

// sketchOf draws a plane in one shape, turned so that its first line runs in the direction given; nil if that failed.
func (c *part) sketchOf(p *plane, s *shape, first geom.Side, r Rules) *sketch {
	o := newOrtho(p, s, first)
	rims, wires := o.rims(), o.trails(p)
	o.dissect(o.start[p.faces[s.outer]])
	at := o.scale(rims, c.boxes, r, wires)
	if at == nil {
		return nil
	}
	out := fan(at, rims, wires, c.boxes, c.edges, r)
	out.tidy(c.boxes, r, 8)
	return out
}

// cost weighs bends, length and size of a drawing as far as they differ between drawings with equal crossings. What
// is wider than the page is no good.
func (s *sketch) cost(r Rules) int {
	sum := 0
	for _, w := range s.wires {
		sum += bendCost * (len(w) - 2)
		for i := range len(w) - 1 {
			d := w[i+1].Sub(w[i])
			sum += r.ColumnCost*geom.Abs(d.X) + r.RowCost*geom.Abs(d.Y)
		}
	}
	e := s.extent()
	sum += sizeCost * (r.ColumnCost*e.W + r.RowCost*e.H)
	if r.MaxWidth > 0 {
		sum += overWidth * max(e.W+1-r.MaxWidth, 0)
	}
	return sum
}

// Prices of a bend, of one more column or row of the whole, and of a column beyond the page.
const (
	bendCost  = 12
	sizeCost  = 4
	overWidth = 10000
)

// pack sets the parts side by side in rows, the tallest first, so that the whole costs about as much across as down and
// keeps to the page.
func pack(parts []part, r Rules) {
	order := make([]int, len(parts))
	area := 0
	size := make([]geom.Rect, len(parts))
	for i := range parts {
		order[i], size[i] = i, parts[i].sketch.extent()
		area += (size[i].W + 1 + r.GapX) * (size[i].H + 1 + r.GapY)
	}
	width := 1
	for width*width*r.ColumnCost < area*r.RowCost {
		width++
	}
	if r.MaxWidth > 0 {
		width = min(width, r.MaxWidth)
	}
	slices.SortStableFunc(order, func(a, b int) int { return size[b].H - size[a].H })
	x, y, next := 0, 0, 0
	for _, i := range order {
		if x > 0 && x+size[i].W+1 > width {
			x, y = 0, next
		}
		parts[i].sketch.shift(geom.Point{X: x - size[i].X, Y: y - size[i].Y})
		x += size[i].W + 1 + r.GapX
		next = max(next, y+size[i].H+1+r.GapY)
	}
}

func (s *sketch) extent() geom.Rect {
	out := s.boxes[0]
	for _, b := range s.boxes {
		out = out.Union(b)
	}
	for _, w := range s.wires {
		out = out.Union(geom.Around(w))
	}
	return out
}

func (s *sketch) shift(d geom.Point) {
	for i := range s.boxes {
		s.boxes[i] = s.boxes[i].Moved(d)
	}
	for _, w := range s.wires {
		for k := range w {
			w[k] = w[k].Add(d)
		}
	}
}
