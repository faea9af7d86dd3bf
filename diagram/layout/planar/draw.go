package planar

import (
	"slices"
	"sync"

	"example.com/lugbook/diagram/layout/geom"
)

// Problem is a graph to be drawn. Wires join two different boxes.
type Problem struct {
	Boxes []Box
	Wires [][2]End
	Rules Rules
}

// Drawing is the result: the boxes' places, and the corners of every wire from its first box to its second, both ends
// on the borders. No cell is negative.
type Drawing struct {
	Boxes []geom.Rect
	Wires [][]geom.Point
	// Sides are those of the boxes on which the two ends of each wire lie.
	Sides [][2]geom.Side
	// Crossings is the number of places where two wires cross.
	Crossings int
}

// Draw draws a graph; ok is false when a wire joins a box with itself, which this package does not draw, or when the
// ends of a group or a face could not be kept together.
func Draw(p Problem, e Effort) (d Drawing, ok bool) {
	edges := make([]edge, len(p.Wires))
	for i, w := range p.Wires {
		if edges[i] = (edge{w[0].Box, w[1].Box}); w[0].Box == w[1].Box {
			return Drawing{}, false
		}
	}
	of, count := components(len(p.Boxes), edges)
	d = Drawing{Boxes: make([]geom.Rect, len(p.Boxes)), Wires: make([][]geom.Point, len(p.Wires)),
		Sides: make([][2]geom.Side, len(p.Wires))}
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
		ends := p.Wires[i]
		ends[0].Box, ends[1].Box = index[g.u], index[g.v]
		parts[c].ends = append(parts[c].ends, ends)
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
			d.Sides[w] = [2]geom.Side{c.sketch.ends[i][0].side, c.sketch.ends[i][1].side}
		}
	}
	return d, true
}

// part is a connected part of the graph.
type part struct {
	vertices, wires []int
	boxes           []Box
	ends            [][2]End
	sketch          *sketch
}

// draw makes several drawings of the part and keeps the best.
func (c *part) draw(r Rules, e Effort) (*sketch, int) {
	if len(c.ends) == 0 {
		return &sketch{boxes: []geom.Rect{{W: c.boxes[0].W, H: c.boxes[0].H}}, paired: make([]bool, 1)}, 0
	}
	w := newWiring(len(c.boxes), c.ends)
	planes := topologies(w.n, w.edges, w.weight, e)
	planes = slices.DeleteFunc(planes, func(p *plane) bool { return !p.gather(w) })
	if len(planes) == 0 {
		return nil, 0
	}
	each := max((e.Shapes+2*len(planes)-1)/(2*len(planes)), 1)
	made := make([][]*sketch, len(planes))
	var wait sync.WaitGroup
	for i, p := range planes {
		wait.Go(func() {
			for _, s := range shapes(p, w, each, e.Folds) {
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
	return best, planes[0].crossings()
}

// sketchOf draws a plane in one shape, turned so that its first line runs in the direction given; nil if that failed.
func (c *part) sketchOf(p *plane, s *shape, first geom.Side, r Rules) *sketch {
	o := newOrtho(p, s, first)
	wires := o.trails(p, len(c.ends))
	rooms := c.rooms(o.rims(), wires, r)
	o.dissect(o.start[p.faces[s.outer]])
	at := o.scale(rooms, r, wires)
	if at == nil {
		return nil
	}
	out := fan(at, rooms, wires, c.ends, r)
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
