package overview

import (
	"slices"

	"example.com/lugbook/diagram/scene"
)

// mostItems is the number of boxes and pieces of lines up to which a page is packed: every one
// is held against every other.
const mostItems = 2000

// pack pushes boxes and lines up and to the left as far as what lies there lets them. What lies
// above, or left of, something else in one column or row stays so, so that every crossing and
// every turn stays as it is.
func pack(p *scene.Page) {
	for range 2 {
		push(p, rowGaps)
		transpose(p)
		push(p, columnGaps)
		transpose(p)
	}
	p.W, p.H = extent(p)
}

// gaps are the least distances from one thing to the next, in rows or columns.
type gaps struct{ boxes, lines int }

var (
	rowGaps    = gaps{boxes: 2, lines: 1}
	columnGaps = gaps{boxes: 3, lines: 2} // a blank beside a box, a piece of line at a terminal
)

// item is something that is pushed up: a box, a level piece of a line, an edge of a zone. It
// covers columns left to right and rows top to bottom.
type item struct {
	left, right, top, bottom int
	body                     int // that it belongs to: what belongs to one body moves together
	box                      bool
	rows                     []*int // of the page, that move with it
	height                   *int   // of the zone that it is an edge of
	foot                     bool   // it is the lower edge
}

// push moves everything up.
func push(p *scene.Page, g gaps) {
	items := itemsOf(p)
	if len(items) > mostItems {
		return
	}
	bodies := 0
	for _, it := range items {
		bodies = max(bodies, it.body+1)
	}
	// up is how far a body has moved up; the most of all bodies' possible moves is looked for,
	// beginning with all the way up.
	up := make([]int, bodies)
	for i := range up {
		up[i] = 1 << 30
	}
	for _, it := range items {
		up[it.body] = min(up[it.body], it.top)
	}
	holds := order(items, g)
	for moved := true; moved; {
		moved = false
		for _, h := range holds {
			if most := up[h.above] + h.slack; up[h.below] > most {
				up[h.below], moved = most, true
			}
		}
	}
	for _, it := range items {
		for _, row := range it.rows {
			*row -= up[it.body]
		}
		switch {
		case it.height == nil:
		case it.foot:
			*it.height -= up[it.body]
		default:
			*it.height += up[it.body]
		}
	}
}

// hold says that a body moves up by no more than what lies above it, and the slack between.
type hold struct{ above, below, slack int }

// order finds what lies above what, in one column or in columns side by side.
func order(items []item, g gaps) []hold {
	var holds []hold
	for _, a := range items {
		for _, b := range items {
			if a.body == b.body || a.bottom >= b.top || a.left > b.right+1 || b.left > a.right+1 {
				continue
			}
			gap := 1
			switch {
			case a.box && b.box:
				gap = g.boxes
			case a.box || b.box:
				gap = g.lines
			case a.left == b.left || a.left == b.right || a.right == b.left || a.right == b.right:
				gap = 2 // lines that end in one column would look like one
			}
			holds = append(holds, hold{a.body, b.body, b.top - a.bottom - min(gap, b.top-a.bottom)})
		}
	}
	return holds
}

// itemsOf lists what is on a page, to be pushed up. A piece of a line that ends at a terminal
// in the side of a box or at a flag belongs to the body of that.
func itemsOf(p *scene.Page) []item {
	var items []item
	on := map[scene.Point]int{} // item by the cells of terminals
	bodies := newUnion()
	add := func(r scene.Rect, box bool, rows ...*int) int {
		items = append(items, item{left: r.X, right: r.Right(), top: r.Y, bottom: r.Bottom(), body: bodies.add(), box: box, rows: rows})
		return len(items) - 1
	}
	for i := range p.Boxes {
		b := &p.Boxes[i]
		at := add(b.Rect, true, &b.Rect.Y)
		for k := range b.Ports {
			port := &b.Ports[k]
			on[port.At] = at
			items[at].rows = append(items[at].rows, &port.At.Y)
		}
	}
	for i := range p.Flags {
		f := &p.Flags[i]
		on[f.Port.At] = add(f.Rect, true, &f.Rect.Y, &f.Port.At.Y)
	}
	for i := range p.Zones {
		z := &p.Zones[i]
		head := add(scene.Rect{X: z.Rect.X, Y: z.Rect.Y, W: z.Rect.W, H: 1}, false, &z.Rect.Y)
		foot := add(scene.Rect{X: z.Rect.X, Y: z.Rect.Bottom(), W: z.Rect.W, H: 1}, false)
		items[head].height, items[foot].height, items[foot].foot = &z.Rect.H, &z.Rect.H, true
	}
	for i := range p.Wires {
		path := p.Wires[i].Path
		for k := 0; k < len(path); k++ {
			at, ends := on[path[k]]
			if k+1 == len(path) || path[k].Y != path[k+1].Y {
				if ends {
					items[at].rows = append(items[at].rows, &path[k].Y)
				}
				continue
			}
			a, b := path[k], path[k+1]
			piece := add(scene.Rect{X: min(a.X, b.X), Y: a.Y, W: max(a.X, b.X) - min(a.X, b.X) + 1, H: 1}, false, &path[k].Y, &path[k+1].Y)
			if ends {
				bodies.join(items[at].body, items[piece].body)
			}
			if far, ends := on[b]; ends {
				bodies.join(items[far].body, items[piece].body)
			}
			k++
		}
	}
	for i := range items {
		items[i].body = bodies.of(items[i].body)
	}
	return items
}

// union joins bodies.
type union struct{ head []int }

func newUnion() *union { return &union{} }

func (u *union) add() int {
	u.head = append(u.head, len(u.head))
	return len(u.head) - 1
}

func (u *union) of(body int) int {
	for u.head[body] != body {
		body = u.head[body]
	}
	return body
}

func (u *union) join(a, b int) { u.head[u.of(a)] = u.of(b) }

// transpose makes columns of rows.
func transpose(p *scene.Page) {
	rect := func(r *scene.Rect) { *r = scene.Rect{X: r.Y, Y: r.X, W: r.H, H: r.W} }
	turn := func(c *scene.Point) { *c = scene.Point{X: c.Y, Y: c.X} }
	for i := range p.Zones {
		rect(&p.Zones[i].Rect)
	}
	for i := range p.Boxes {
		rect(&p.Boxes[i].Rect)
		for k := range p.Boxes[i].Ports {
			turn(&p.Boxes[i].Ports[k].At)
		}
	}
	for i := range p.Flags {
		rect(&p.Flags[i].Rect)
		turn(&p.Flags[i].Port.At)
	}
	for i := range p.Wires {
		for k := range p.Wires[i].Path {
			turn(&p.Wires[i].Path[k])
		}
	}
}

// extent is the width and height that a page needs.
func extent(p *scene.Page) (w, h int) {
	var rects []scene.Rect
	for _, z := range p.Zones {
		rects = append(rects, z.Rect)
	}
	for _, b := range p.Boxes {
		rects = append(rects, scene.Rect{X: b.Rect.X, Y: b.Rect.Y, W: b.Rect.W + 1, H: b.Rect.H})
	}
	for _, f := range p.Flags {
		rects = append(rects, f.Rect)
	}
	for _, wire := range p.Wires {
		for _, c := range wire.Path {
			rects = append(rects, scene.Rect{X: c.X, Y: c.Y, W: 1, H: 1})
		}
	}
	for r := range slices.Values(rects) {
		w, h = max(w, r.Right()+1), max(h, r.Bottom()+1)
	}
	return w, h
}
