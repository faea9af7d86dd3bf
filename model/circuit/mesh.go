package circuit

import (
	"cmp"
	"slices"
)

// mesh is one set of conducting elements made ready to be solved: islands, a spanning
// tree for each, and the factored equations of the loops that the other elements close.
// It is filled anew by wire, which reuses its room.
type mesh struct {
	elements []element
	byOhms   []Element // those that may conduct, the least resistance first
	island   []int     // by node, numbered in the order of their first nodes
	up       []Element // by node: tree element towards the root of its island
	order    []Node    // parents before children
	links    []Element // conducting elements that are not in a tree: one loop each
	crossed  crossings
	factor   cholesky

	joined   union
	branches branches
	depth    []int
	apexes   []apex
	due      []float64 // by node: current that leaves it and all below it
	rhs      []float64 // by loop
}

// newMesh makes room for the nodes and elements of a circuit. Nothing conducts yet.
func newMesh(nodes int, elements []element) *mesh {
	m := &mesh{
		elements: elements, island: make([]int, nodes), up: make([]Element, nodes), order: make([]Node, 0, nodes),
		joined: make(union, nodes), branches: newBranches(nodes), depth: make([]int, nodes), due: make([]float64, nodes),
	}
	m.crossed.starts = make([]int, len(elements)+1)
	for i := range elements {
		if elements[i].kind != current {
			m.byOhms = append(m.byOhms, Element(i))
		}
	}
	slices.SortStableFunc(m.byOhms, func(x, y Element) int { return cmp.Compare(elements[x].ohms, elements[y].ohms) })
	return m
}

// wire joins the elements that conduct.
func (m *mesh) wire(conducts []bool) error {
	m.plant(conducts)
	m.measure()
	m.arrange()
	m.traceLoops()
	if bad := m.factorise(); bad >= 0 {
		link := m.links[bad]
		return &Singular{Node: m.elements[link].a, Element: link}
	}
	return nil
}

// plant finds the islands and the spanning tree of least resistance of each.
func (m *mesh) plant(conducts []bool) {
	m.joined.part()
	m.branches.clear()
	m.links, m.order = m.links[:0], m.order[:0]
	for _, e := range m.byOhms {
		if !conducts[e] {
			continue
		}
		a, b := m.elements[e].a, m.elements[e].b
		if !m.joined.join(a, b) {
			m.links = append(m.links, e)
			continue
		}
		m.branches.add(a, e)
		m.branches.add(b, e)
	}
	for n := range m.island {
		m.island[n], m.up[n] = -1, None
	}
	islands := 0
	for n := range m.island {
		if m.island[n] < 0 {
			m.grow(Node(n), islands)
			islands++
		}
	}
}

// grow lays the tree of one island out from its root.
func (m *mesh) grow(root Node, island int) {
	m.island[root] = island
	start := len(m.order)
	m.order = append(m.order, root)
	for i := start; i < len(m.order); i++ {
		n := m.order[i]
		for at := m.branches.first[n]; at >= 0; at = m.branches.list[at].next {
			e := m.branches.list[at].e
			far := m.far(e, n)
			if m.island[far] < 0 {
				m.island[far], m.up[far] = island, e
				m.order = append(m.order, far)
			}
		}
	}
}

// far is the node of an element that is not n.
func (m *mesh) far(e Element, n Node) Node {
	if m.elements[e].a == n {
		return m.elements[e].b
	}
	return m.elements[e].a
}

// upward is +1 if the tree element above a node counts from the node to its parent.
func (m *mesh) upward(n Node) float64 {
	if m.elements[m.up[n]].a == n {
		return 1
	}
	return -1
}

// measure finds how far each node is from the root of its island.
func (m *mesh) measure() {
	for _, n := range m.order {
		m.depth[n] = 0
		if e := m.up[n]; e != None {
			m.depth[n] = m.depth[m.far(e, n)] + 1
		}
	}
}

// arrange orders the loops so that those which share elements come close together, which
// keeps the factor thin: the deepest first, by where their ends lie in the trees.
func (m *mesh) arrange() {
	m.apexes = slices.Grow(m.apexes[:0], len(m.links))
	for _, link := range m.links {
		m.apexes = append(m.apexes, apex{link, m.apex(link)})
	}
	slices.SortStableFunc(m.apexes, func(x, y apex) int { return cmp.Compare(y.depth, x.depth) })
	for i, a := range m.apexes {
		m.links[i] = a.link
	}
}

type apex struct {
	link  Element
	depth int
}

// apex is the depth of the node where the two ways from a link's ends to the root meet.
func (m *mesh) apex(link Element) int {
	a, b := m.elements[link].a, m.elements[link].b
	for a != b {
		if m.depth[a] >= m.depth[b] {
			a = m.far(m.up[a], a)
		} else {
			b = m.far(m.up[b], b)
		}
	}
	return m.depth[a]
}

// traceLoops finds, for each link, the way from its end back to its start in the tree.
func (m *mesh) traceLoops() {
	m.crossed.clear()
	for i, link := range m.links {
		m.crossed.add(link, i, 1)
		start, end := m.elements[link].a, m.elements[link].b
		for start != end {
			if m.depth[start] > m.depth[end] {
				m.crossed.add(m.up[start], i, -m.upward(start))
				start = m.far(m.up[start], start)
			} else {
				m.crossed.add(m.up[end], i, m.upward(end))
				end = m.far(m.up[end], end)
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
	for e := range m.elements {
		ohms, passes := m.elements[e].ohms, m.crossed.of(Element(e))
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

// solve finds the currents through all the elements, given the currents that the
// injecting ones take from their first node to their second. Both nodes of an
// injecting element must be in one island. Without sources, only what the injected
// currents drive is found.
func (m *mesh) solve(currents, injected []float64, sources bool) {
	m.treeCurrents(currents, injected)
	n := len(m.links)
	m.rhs = slices.Grow(m.rhs[:0], n)[:n]
	clear(m.rhs)
	for e := range m.elements {
		passes := m.crossed.of(Element(e))
		if len(passes) == 0 {
			continue
		}
		across := m.elements[e].ohms * currents[e]
		if sources {
			across += m.elements[e].volts
		}
		for _, p := range passes {
			m.rhs[p.loop] -= p.sign * across
		}
	}
	m.factor.solve(m.rhs)
	for e := range m.elements {
		for _, p := range m.crossed.of(Element(e)) {
			currents[e] += p.sign * m.rhs[p.loop]
		}
	}
}

// treeCurrents sends the injected currents home through the trees alone.
func (m *mesh) treeCurrents(currents, injected []float64) {
	clear(currents)
	clear(m.due)
	for e, i := range injected {
		if i != 0 {
			m.due[m.elements[e].a] += i
			m.due[m.elements[e].b] -= i
			currents[e] = i
		}
	}
	for _, n := range slices.Backward(m.order) {
		if e := m.up[n]; e != None {
			currents[e] = -m.due[n] * m.upward(n)
			m.due[m.far(e, n)] += m.due[n]
		}
	}
}

// potentials walks the trees and gives every node its voltage against the root of its island.
func (m *mesh) potentials(volts, currents []float64, sources bool) {
	for _, n := range m.order {
		volts[n] = 0
		if e := m.up[n]; e != None {
			across := m.elements[e].ohms * currents[e]
			if sources {
				across += m.elements[e].volts
			}
			volts[n] = volts[m.far(e, n)] + across*m.upward(n)
		}
	}
}
