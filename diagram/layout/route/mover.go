package route

import (
	"slices"

	"example.com/lugbook/diagram/layout/geom"
)

// mover changes boxes and wires of a legal drawing and knows what that touches.
type mover struct {
	*router
	count     []int   // wires per terminal
	wires     [][]int // wires per box
	terminals [][]int // terminals per box
	saved     []saved // wires taken out for a change, with their ways
}

// saved is a wire that was taken out, the way it had, and what that cost if anybody asked.
type saved struct {
	wire  int
	cells []int32
	cost  int
}

func newMover(r *router) *mover {
	m := &mover{router: r, count: r.p.wiresPer(), wires: make([][]int, len(r.p.Boxes)), terminals: make([][]int, len(r.p.Boxes))}
	for w := range r.p.Wires {
		m.attach(w)
	}
	for t, terminal := range r.p.Terminals {
		m.terminals[terminal.Box] = append(m.terminals[terminal.Box], t)
	}
	return m
}

// attach notes a wire at the boxes of its ends.
func (m *mover) attach(w int) {
	for _, t := range m.p.Wires[w].ends() {
		if b := m.p.Terminals[t].Box; !slices.Contains(m.wires[b], w) {
			m.wires[b] = append(m.wires[b], w)
		}
	}
}

// shift moves a box and its terminals; the cells do not know of it yet.
func (m *mover) shift(b int, d geom.Point) {
	m.p.Boxes[b] = m.p.Boxes[b].Moved(d)
	for _, t := range m.terminals[b] {
		m.p.Terminals[t].At = m.p.Terminals[t].At.Add(d)
	}
}

// region is all that a box and its terminals say about cells.
func (m *mover) region(b int) geom.Rect {
	side := 2
	for _, w := range m.wires[b] {
		side = max(side, m.p.Wires[w].labelRoom()+1)
	}
	stub := 2
	for _, t := range m.terminals[b] {
		stub = max(stub, m.p.stubLength(t, m.count[t])+1)
	}
	side = max(side, stub)
	return m.p.Boxes[b].Grow(side, stub, side, stub)
}

// ripAll takes wires out, remembers them, and returns what they cost; a crossing between two of them counts once.
func (m *mover) ripAll(wires []int) int {
	sum := 0
	for _, w := range wires {
		if m.missing(w) {
			continue
		}
		cost := m.cost(w)
		sum += cost
		m.saved = append(m.saved, saved{wire: w, cells: m.rip(w), cost: cost})
	}
	return sum
}

// ripIllegal takes out the wires that run through cells of the regions where they may no longer.
func (m *mover) ripIllegal(regions []geom.Rect) int {
	var list []int
	for _, r := range regions {
		for _, w := range m.through(r) {
			if !slices.Contains(list, w) && !m.allowed(w, m.cells[w]) {
				list = append(list, w)
			}
		}
	}
	slices.Sort(list)
	return m.ripAll(list)
}

// through lists the wires in the cells of a region, those excepted that run only where wires of one terminal are
// together. Pre: no conflict.
func (m *mover) through(r geom.Rect) []int {
	var out []int
	m.g.each(r, func(c int32) {
		for _, who := range [2]int32{m.g.who[level][c], m.g.who[upright][c]} {
			if who != 0 && !slices.Contains(out, int(who-1)) {
				out = append(out, int(who-1))
			}
		}
	})
	return out
}

// allowed tells whether a wire may run through cells, other wires aside.
func (m *mover) allowed(w int, cells []int32) bool {
	q, ok := m.s.newGoal(m.p, w, 0)
	m.visit(&q, cells, func(c int32, axis int, turn bool) {
		ok = ok && m.g.allows(c, axis, q.from, q.to) && (!turn || m.g.cell[c].static&frame == 0)
	})
	return ok
}
