package layouttest

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/chance"
)

// Shape says what a random harness is like.
type Shape struct {
	Boxes, Wires int
	// Zoned gives the boxes zones; Free lets the layout choose the sides and places of terminals.
	Zoned, Free bool
}

// AnyShape is a shape of 4 to most boxes drawn from a seed, with up to three wires a box.
func AnyShape(seed uint64, most int) Shape {
	rnd := chance.New(^seed)
	s := Shape{Boxes: 4 + rnd.Below(max(most-3, 1))}
	s.Wires = s.Boxes + rnd.Below(2*s.Boxes+1)
	s.Zoned, s.Free = rnd.Below(2) == 0, rnd.Below(2) == 0
	return s
}

// Harness makes a graph that is like the wiring of a machine: zones with a box that feeds and a ground bus each, stars
// with some chains, feeds from zone to zone, returns, and signals, some of them in bundles. Boxes of fixed terminals
// have them in roughly the order of the boxes they lead to, as real parts have.
func Harness(seed uint64, s Shape) layout.Graph {
	h := &harness{rnd: chance.New(seed), shape: s}
	h.addZones()
	h.addBackbone()
	h.addFeeds()
	h.addSignals()
	return h.graph()
}

type harness struct {
	rnd   chance.Source
	shape Shape
	zones []zone
	boxes []*box
	wires []wire
}

// zone holds the indexes of its boxes.
type zone struct {
	hub, ground int
	leaves      []int
}

type box struct {
	zone  int
	ports []*port
}

type port struct {
	side   layout.Side
	toward []int // the boxes that its wires lead to
	id     string
	offset int
}

type wire struct {
	from, to         int
	fromPort, toPort *port
}

// odds of the sides of a new terminal, in percent.
type odds [4]int

// In the order north, east, south, west.
var (
	hubOut  = odds{0, 70, 15, 15}
	hubIn   = odds{15, 15, 0, 70}
	leafIn  = odds{25, 0, 0, 75}
	leafOut = odds{0, 80, 20, 0}
	leafRet = odds{0, 20, 60, 20}
	busIn   = odds{70, 15, 0, 15}
	feedOut = odds{0, 100, 0, 0}
	feedIn  = odds{0, 0, 0, 100}
)

func (h *harness) addZones() {
	count := max(1, min(h.shape.Boxes/5, 3))
	if h.shape.Boxes > 24 {
		count = max(4, h.shape.Boxes/12)
	}
	h.zones = make([]zone, count)
	for z := range h.zones {
		h.zones[z].hub, h.zones[z].ground = h.add(z), h.add(z)
	}
	for len(h.boxes) < h.shape.Boxes {
		z := len(h.boxes) % count
		h.zones[z].leaves = append(h.zones[z].leaves, h.add(z))
	}
}

func (h *harness) add(zone int) int {
	h.boxes = append(h.boxes, &box{zone: zone})
	return len(h.boxes) - 1
}

// addBackbone leads feeds from zone to zone and returns to the first one.
func (h *harness) addBackbone() {
	for z := range len(h.zones) - 1 {
		from, to := h.zones[z], h.zones[z+1]
		for range 1 + h.rnd.Below(2) {
			h.join(from.hub, feedOut, 0, to.hub, feedIn, 0)
		}
		h.join(to.ground, busIn, 20, h.zones[0].ground, busIn, 50)
	}
}

// addFeeds joins every leaf to its hub or the leaf before it, and most of them to the ground bus.
func (h *harness) addFeeds() {
	for _, z := range h.zones {
		for i, leaf := range z.leaves {
			if i > 0 && h.rnd.Below(4) == 0 {
				h.join(z.leaves[i-1], leafOut, 0, leaf, leafIn, 0)
			} else {
				h.join(z.hub, hubOut, 25, leaf, leafIn, 0)
			}
		}
	}
	for _, z := range h.zones {
		for _, leaf := range z.leaves {
			if h.rnd.Below(4) > 0 {
				h.join(leaf, leafRet, 30, z.ground, busIn, 60)
			}
		}
	}
}

// addSignals fills up with single wires and bundles. It gives up when nothing fits for long: a graph of hubs alone.
func (h *harness) addSignals() {
	for tries := 0; len(h.wires) < h.shape.Wires && tries < 20*h.shape.Wires; tries++ {
		at := h.rnd.Below(len(h.zones))
		z := h.zones[at]
		if len(z.leaves) == 0 {
			continue
		}
		leaf, what := h.pick(z.leaves), h.rnd.Below(100)
		for range [10]int{1, 1, 1, 1, 1, 1, 2, 2, 4, 4}[h.rnd.Below(10)] {
			switch {
			case what < 42:
				h.join(leaf, leafOut, 0, z.hub, hubIn, 0)
			case what < 50:
				h.join(leaf, leafOut, 0, h.zones[h.rnd.Below(len(h.zones))].hub, hubIn, 0)
			case what < 75:
				h.join(leaf, leafOut, 0, h.pick(z.leaves), leafIn, 0)
			case at+1 < len(h.zones):
				h.join(z.hub, hubOut, 0, h.zones[at+1].hub, hubIn, 0)
			}
		}
	}
}

func (h *harness) pick(from []int) int { return from[h.rnd.Below(len(from))] }

// join adds a wire between two boxes unless there are enough. Its ends take new terminals or, at the percentage given,
// one that is there already.
func (h *harness) join(from int, fromOdds odds, fromShare int, to int, toOdds odds, toShare int) {
	if len(h.wires) >= h.shape.Wires || from == to {
		return
	}
	w := wire{from: from, to: to, fromPort: h.end(from, fromOdds, fromShare), toPort: h.end(to, toOdds, toShare)}
	w.fromPort.toward = append(w.fromPort.toward, to)
	w.toPort.toward = append(w.toPort.toward, from)
	h.wires = append(h.wires, w)
}

func (h *harness) end(at int, o odds, share int) *port {
	side, left := layout.North, h.rnd.Below(100)
	for left >= o[side] {
		left -= o[side]
		side++
	}
	b := h.boxes[at]
	var old []*port
	for _, p := range b.ports {
		if p.side == side {
			old = append(old, p)
		}
	}
	if len(old) > 0 && h.rnd.Below(100) < share {
		return old[h.rnd.Below(len(old))]
	}
	p := &port{side: side}
	b.ports = append(b.ports, p)
	return p
}

// graph gives the terminals their order and places, and the boxes their sizes.
func (h *harness) graph() layout.Graph {
	var g layout.Graph
	if h.shape.Zoned {
		for z := range h.zones {
			g.Zones = append(g.Zones, layout.Zone{ID: fmt.Sprint("zone", z+1), Title: 8})
		}
	}
	for i, b := range h.boxes {
		out := layout.Box{ID: fmt.Sprint("n", i)}
		if h.shape.Zoned {
			out.Zone = g.Zones[b.zone].ID
		}
		h.seat(b, &out)
		g.Boxes = append(g.Boxes, out)
	}
	for i, w := range h.wires {
		g.Wires = append(g.Wires, layout.Wire{ID: fmt.Sprint("w", i),
			From: layout.PortRef{Box: fmt.Sprint("n", w.from), Port: w.fromPort.id},
			To:   layout.PortRef{Box: fmt.Sprint("n", w.to), Port: w.toPort.id}})
	}
	return g
}

func (h *harness) seat(b *box, out *layout.Box) {
	keys := map[*port]int{}
	for _, p := range b.ports {
		sum := 0
		for _, t := range p.toward {
			sum += 100 * t
		}
		keys[p] = sum/len(p.toward) + h.rnd.Below(30*len(h.boxes)+1)
	}
	slices.SortStableFunc(b.ports, func(p, q *port) int { return keys[p] - keys[q] })
	var used [4]int
	for i, p := range b.ports {
		used[p.side]++
		p.id, p.offset = fmt.Sprint("t", i+1), 2*used[p.side]
		if !p.side.Horizontal() {
			p.offset *= 2
		}
		placed := layout.Port{ID: p.id, Sides: layout.SidesOf(p.side), Offset: p.offset}
		if h.shape.Free {
			placed.Sides, placed.Offset = layout.SidesOf(layout.East, layout.West), -1
		}
		out.Ports = append(out.Ports, placed)
	}
	out.W = 10 + h.rnd.Below(9)
	out.H = 4
	if !h.shape.Free {
		out.W = max(out.W, 4*max(used[layout.North], used[layout.South])+4)
		out.H = max(out.H, 2*max(used[layout.East], used[layout.West])+2)
	}
}

// Freed is the graph with terminals that may sit anywhere on their boxes.
func Freed(g layout.Graph) layout.Graph {
	g.Boxes = slices.Clone(g.Boxes)
	for i := range g.Boxes {
		g.Boxes[i].Ports = slices.Clone(g.Boxes[i].Ports)
		for k := range g.Boxes[i].Ports {
			p := &g.Boxes[i].Ports[k]
			p.Sides, p.Offset = layout.AnySide, -1
		}
	}
	return g
}

// Unzoned is the graph without its zones.
func Unzoned(g layout.Graph) layout.Graph {
	g.Zones, g.Boxes = nil, slices.Clone(g.Boxes)
	for i := range g.Boxes {
		g.Boxes[i].Zone = ""
	}
	return g
}

// String tells a shape in a few words.
func (s Shape) String() string {
	words := []string{fmt.Sprintf("%d boxes, %d wires", s.Boxes, s.Wires)}
	if s.Zoned {
		words = append(words, "zones")
	}
	if s.Free {
		words = append(words, "free terminals")
	}
	return strings.Join(words, ", ")
}
