package layout

import (
	"fmt"

	"example.com/lugbook/diagram/layout/chance"
)

// randomGraph makes a graph like a cart's harness: zones with a hub and a ground bus each, loads fed from the hub and
// grounded at the bus, trunk wires between zones, and signals. Ports are fixed or free; some are shared by wires.
type randomGraph struct {
	rnd     chance.Source
	g       Graph
	free    bool
	wires   int
	members [][]int // boxes per zone; hub and bus first
}

func newRandomGraph(seed uint64, boxes, wires int, free, zones, labels bool) Graph {
	r := &randomGraph{rnd: chance.New(seed), free: free, wires: wires}
	count := 2 + boxes/12
	for z := range count {
		id := ""
		if zones {
			id = fmt.Sprintf("zone%d", z)
			r.g.Zones = append(r.g.Zones, Zone{ID: id, Title: 5 + r.rnd.Below(10)})
		}
		r.members = append(r.members, nil)
	}
	for i := range boxes {
		z := i % count
		b := Box{ID: fmt.Sprintf("b%d", i), W: 14 + r.rnd.Below(13), H: 3 + r.rnd.Below(3), Head: 2}
		if zones {
			b.Zone = r.g.Zones[z].ID
		}
		r.members[z] = append(r.members[z], i)
		r.g.Boxes = append(r.g.Boxes, b)
	}
	r.connect()
	if !free {
		r.fix()
	}
	for i := range r.g.Wires {
		if labels {
			r.g.Wires[i].Labels = []string{fmt.Sprintf("%d 2.5 RD", i+1), fmt.Sprint(i + 1)}
		}
	}
	return r.g
}

func (r *randomGraph) connect() {
	for z, m := range r.members {
		if z > 0 {
			r.wire(r.members[z-1][0], m[0], 0)
			r.wire(m[1%len(m)], r.members[0][1%len(r.members[0])], 50)
		}
		for k, b := range m {
			if k > 1 {
				r.wire(m[0], b, 25)
				r.wire(b, m[1], 40)
			}
		}
	}
	for tries := 0; len(r.g.Wires) < r.wires && tries < 10*r.wires; tries++ {
		m := r.members[r.rnd.Below(len(r.members))]
		a, b := m[r.rnd.Below(len(m))], m[r.rnd.Below(len(m))]
		if r.rnd.Below(10) == 0 {
			far := r.members[r.rnd.Below(len(r.members))]
			b = far[0]
		}
		r.wire(a, b, 5)
	}
}

// wire joins two boxes by new ports, or, at the given percentage, at the far end by one that is there already.
func (r *randomGraph) wire(a, b, share int) {
	if a == b || len(r.g.Wires) >= r.wires {
		return
	}
	from, to := r.port(a, 0), r.port(b, share)
	r.g.Wires = append(r.g.Wires, Wire{ID: fmt.Sprintf("w%d", len(r.g.Wires)),
		From: PortRef{r.g.Boxes[a].ID, from}, To: PortRef{r.g.Boxes[b].ID, to}})
}

func (r *randomGraph) port(box, share int) string {
	b := &r.g.Boxes[box]
	if len(b.Ports) > 0 && r.rnd.Below(100) < share {
		return b.Ports[r.rnd.Below(len(b.Ports))].ID
	}
	p := Port{ID: fmt.Sprintf("t%d", len(b.Ports)), Sides: SidesOf(East, West), Offset: -1}
	if r.rnd.Below(6) == 0 && len(b.Ports) > 0 && b.Ports[len(b.Ports)-1].Group == "" {
		p.Group = fmt.Sprintf("g%d", len(b.Ports))
		b.Ports[len(b.Ports)-1].Group = p.Group
	}
	b.Ports = append(b.Ports, p)
	return p.ID
}

// fix gives every port a side and an offset of its own, and every box the size that takes.
func (r *randomGraph) fix() {
	for i := range r.g.Boxes {
		b := &r.g.Boxes[i]
		var next [4]int
		for k := range b.Ports {
			side := [10]Side{East, East, East, East, West, West, West, West, North, South}[r.rnd.Below(10)]
			next[side]++
			p := &b.Ports[k]
			p.Group, p.Sides, p.Offset = "", SidesOf(side), 2*next[side]
			if !side.Horizontal() {
				p.Offset *= 2
			}
		}
		b.H = max(b.H, 2*max(next[East], next[West])+2)
		b.W = max(b.W, 4*max(next[North], next[South])+4)
	}
}
