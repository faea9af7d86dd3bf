package circuit

import (
	"cmp"
	"slices"
)

// mesh is one set of conducting elements made ready to be solved: islands, and what a
// reduction leaves of them, with a spanning tree for each and the factored equations of the
// loops that the other edges close. It is filled anew by wire, which reuses its room.
type mesh struct {
	elements []element
	island   []int // by node, numbered in the order of their first nodes
	reduction

	whole    int    // edges that are elements; the others come of the reduction
	core     []int  // edges that are left, the least resistance first
	up       []int  // by node: place in core of the tree edge towards the root of its island, or -1
	order    []Node // that are left, parents before children
	links    []int  // places in core of the edges that are not in a tree: one loop each
	crossed  crossings
	factor   cholesky
	joined   union
	numbers  []int // by root node: island
	branches branches
	depth    []int
	due      []float64 // by node: current that leaves it
	below    []float64 // by node: current that leaves it and all below it
	rhs      []float64 // by loop
}

// newMesh makes room for the nodes and elements of a circuit. Nothing conducts yet.
func newMesh(nodes int, elements []element) *mesh {
	figures, numbers := make([]float64, 2*nodes), make([]int, 4*nodes)
	return &mesh{
		elements: elements, reduction: newReduction(nodes, elements), joined: make(union, nodes), branches: newBranches(nodes),
		island: numbers[:nodes], numbers: numbers[nodes : 2*nodes], up: numbers[2*nodes : 3*nodes], depth: numbers[3*nodes:],
		due: figures[:nodes], below: figures[nodes:],
	}
}

// wire joins the elements that conduct.
func (m *mesh) wire(conducts []bool) error {
	m.numberIslands(conducts)
	m.begin(m.elements, conducts)
	m.whole = len(m.edges)
	if err := m.run(); err != nil {
		return err
	}
	m.plant()
	m.traceLoops()
	if bad := m.factorise(); bad >= 0 {
		link := &m.edges[m.core[m.links[bad]]]
		return &Singular{Node: link.a, Element: link.e}
	}
	return nil
}

func (m *mesh) numberIslands(conducts []bool) {
	m.joined.part()
	for e, is := range conducts {
		if is {
			m.joined.join(m.elements[e].a, m.elements[e].b)
		}
	}
	for n := range m.numbers {
		m.numbers[n] = -1
	}
	islands := 0
	for n := range m.island {
		root := m.joined.root(Node(n))
		if m.numbers[root] < 0 {
			m.numbers[root] = islands
			islands++
		}
		m.island[n] = m.numbers[root]
	}
}

// plant finds the spanning tree of least resistance of what is left of each island.
func (m *mesh) plant() {
	m.core = m.core[:0]
	for id := range m.edges {
		if !m.edges[id].gone {
			m.core = append(m.core, id)
		}
	}
	slices.SortStableFunc(m.core, func(x, y int) int { return cmp.Compare(m.edges[x].ohms, m.edges[y].ohms) })
	m.joined.part()
	m.branches.clear()
	m.links, m.order = m.links[:0], m.order[:0]
	for k, id := range m.core {
		e := &m.edges[id]
		if !m.joined.join(e.a, e.b) {
			m.links = append(m.links, k)
			continue
		}
		m.branches.add(e.a, k)
		m.branches.add(e.b, k)
	}
	for n := range m.up {
		m.up[n], m.depth[n] = -1, -1
	}
	for n := range m.up {
		if m.depth[n] < 0 && !m.removed[n] {
			m.grow(Node(n))
		}
	}
}

// grow lays the tree of one island out from its root.
func (m *mesh) grow(root Node) {
	m.depth[root] = 0
	start := len(m.order)
	m.order = append(m.order, root)
	for i := start; i < len(m.order); i++ {
		n := m.order[i]
		for at := m.branches.first[n]; at >= 0; at = m.branches.list[at].next {
			k := m.branches.list[at].edge
			far := m.far(m.core[k], n)
			if m.depth[far] < 0 {
				m.depth[far], m.up[far] = m.depth[n]+1, k
				m.order = append(m.order, far)
			}
		}
	}
}

// above is the node before n on the way to its root.
func (m *mesh) above(n Node) Node { return m.far(m.core[m.up[n]], n) }

// upward is +1 if the tree edge above a node counts from the node to its parent.
func (m *mesh) upward(n Node) float64 { return m.direction(m.core[m.up[n]], n) }

// traceLoops finds, for each link, the way from its end back to its start in the tree.
func (m *mesh) traceLoops() {
	m.crossed.clear(len(m.core))
	for i, k := range m.links {
		m.crossed.add(k, i, 1)
		start, end := m.edges[m.core[k]].a, m.edges[m.core[k]].b
		for start != end {
			if m.depth[start] > m.depth[end] {
				m.crossed.add(m.up[start], i, -m.upward(start))
				start = m.above(start)
			} else {
				m.crossed.add(m.up[end], i, m.upward(end))
				end = m.above(end)
			}
		}
	}
	m.crossed.sort()
}

// factorise sets up the loop equations and factors them. It returns the number of a
// loop without resistance, or -1.
func (m *mesh) factorise() int {
	n := len(m.links)
	matrix := m.factor.room(n)
	for k, id := range m.core {
		ohms, passes := m.edges[id].ohms, m.crossed.of(k)
		if ohms == 0 {
			continue
		}
		for i, p := range passes {
			row := matrix[p.loop*n:]
			for _, q := range passes[:i+1] { // in the order of the loops
				row[q.loop] += ohms * p.sign * q.sign
			}
		}
	}
	return m.factor.factorise()
}

// solve finds the currents through all the elements and the voltages of all the nodes, each
// against a node of its island, given the currents that the injecting elements take from
// their first node to their second. Both nodes of an injecting element must be in one
// island. Without sources, only what the injected currents drive is found.
func (m *mesh) solve(currents, volts, injected []float64, sources bool) {
	clear(m.due)
	for e, i := range injected {
		currents[e] = i
		if i != 0 {
			m.due[m.elements[e].a] += i
			m.due[m.elements[e].b] -= i
		}
	}
	for id := range m.edges[:m.whole] {
		e := &m.edges[id]
		e.volts = 0
		if sources {
			e.volts = m.elements[e.e].volts
		}
	}
	m.gather(m.due)
	m.treeCurrents()
	m.loopCurrents()
	for _, n := range m.order {
		volts[n] = 0
		if m.up[n] >= 0 {
			e := &m.edges[m.core[m.up[n]]]
			volts[n] = volts[m.above(n)] + (e.ohms*e.current+e.volts)*m.upward(n)
		}
	}
	m.spread(volts)
	for id := range m.edges[:m.whole] {
		currents[m.edges[id].e] = m.edges[id].current
	}
}

// treeCurrents sends the injected currents home through the trees alone.
func (m *mesh) treeCurrents() {
	for _, id := range m.core {
		m.edges[id].current = 0
	}
	copy(m.below, m.due)
	for _, n := range slices.Backward(m.order) {
		if m.up[n] >= 0 {
			m.edges[m.core[m.up[n]]].current = -m.below[n] * m.upward(n)
			m.below[m.above(n)] += m.below[n]
		}
	}
}

// loopCurrents adds the currents around the loops that the voltages ask for.
func (m *mesh) loopCurrents() {
	n := len(m.links)
	m.rhs = slices.Grow(m.rhs[:0], n)[:n]
	clear(m.rhs)
	for k, id := range m.core {
		across := m.edges[id].ohms*m.edges[id].current + m.edges[id].volts
		for _, p := range m.crossed.of(k) {
			m.rhs[p.loop] -= p.sign * across
		}
	}
	m.factor.solve(m.rhs)
	for k, id := range m.core {
		for _, p := range m.crossed.of(k) {
			m.edges[id].current += p.sign * m.rhs[p.loop]
		}
	}
}
