package circuit

import (
	"cmp"
	"slices"
)

// mesh is one set of conducting elements made ready to be solved: islands, a spanning
// tree for each, and the factored equations of the loops that the other elements close.
type mesh struct {
	elements []element
	island   []int     // by node, numbered in the order of their first nodes
	up       []Element // by node: tree element towards the root of its island
	order    []Node    // parents before children
	links    []Element // conducting elements that are not in a tree: one loop each
	crossed  [][]pass  // by element: the loops that it is part of
	factor   cholesky
}

// pass is an element's part in a loop: with (+1) or against (-1) the loop's direction.
type pass struct {
	loop int
	sign float64
}

// newMesh joins the elements that conduct.
func newMesh(nodes int, elements []element, conducts func(Element) bool) (*mesh, error) {
	m := &mesh{elements: elements, crossed: make([][]pass, len(elements))}
	var conducting []Element
	for i := range elements {
		if conducts(Element(i)) {
			conducting = append(conducting, Element(i))
		}
	}
	m.plant(nodes, conducting)
	m.traceLoops()
	if bad := m.factorise(); bad >= 0 {
		link := m.links[bad]
		return nil, &Singular{Node: elements[link].a, Element: link}
	}
	return m, nil
}

// plant finds the islands and the spanning tree of least resistance of each.
func (m *mesh) plant(nodes int, conducting []Element) {
	slices.SortStableFunc(conducting, func(x, y Element) int {
		return cmp.Compare(m.elements[x].ohms, m.elements[y].ohms)
	})
	joined := newUnion(nodes)
	branches := make([][]Element, nodes)
	for _, e := range conducting {
		a, b := m.elements[e].a, m.elements[e].b
		if !joined.join(a, b) {
			m.links = append(m.links, e)
			continue
		}
		branches[a] = append(branches[a], e)
		branches[b] = append(branches[b], e)
	}
	m.island = make([]int, nodes)
	m.up = make([]Element, nodes)
	for n := range nodes {
		m.island[n], m.up[n] = -1, None
	}
	islands := 0
	for n := range nodes {
		if m.island[n] < 0 {
			m.grow(Node(n), islands, branches)
			islands++
		}
	}
}

// grow lays the tree of one island out from its root.
func (m *mesh) grow(root Node, island int, branches [][]Element) {
	m.island[root] = island
	start := len(m.order)
	m.order = append(m.order, root)
	for i := start; i < len(m.order); i++ {
		n := m.order[i]
		for _, e := range branches[n] {
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

// traceLoops finds, for each link, the way from its end back to its start in the tree.
func (m *mesh) traceLoops() {
	depth := make([]int, len(m.up))
	for _, n := range m.order {
		if m.up[n] != None {
			depth[n] = depth[m.far(m.up[n], n)] + 1
		}
	}
	for i, link := range m.links {
		m.crossed[link] = append(m.crossed[link], pass{i, 1})
		start, end := m.elements[link].a, m.elements[link].b
		for start != end {
			n, sign := end, 1.0
			if depth[start] > depth[end] {
				n, sign = start, -1
			}
			e := m.up[n]
			m.crossed[e] = append(m.crossed[e], pass{i, sign * m.upward(n)})
			if n == end {
				end = m.far(e, n)
			} else {
				start = m.far(e, n)
			}
		}
	}
}

// factorise sets up the loop equations and factors them. It returns the number of a
// loop without resistance, or -1.
func (m *mesh) factorise() int {
	n := len(m.links)
	matrix := make([]float64, n*n)
	for e, passes := range m.crossed {
		for _, p := range passes {
			for _, q := range passes {
				matrix[p.loop*n+q.loop] += m.elements[e].ohms * p.sign * q.sign
			}
		}
	}
	var bad int
	m.factor, bad = newCholesky(matrix, n)
	return bad
}

// solve finds the currents through all the elements, given the currents that the
// injecting ones take from their first node to their second. Both nodes of an
// injecting element must be in one island.
func (m *mesh) solve(injected []float64) []float64 {
	currents := m.treeCurrents(injected)
	rhs := make([]float64, len(m.links))
	for e, passes := range m.crossed {
		for _, p := range passes {
			rhs[p.loop] -= p.sign * (m.elements[e].ohms*currents[e] + m.elements[e].volts)
		}
	}
	loops := m.factor.solve(rhs)
	for e, passes := range m.crossed {
		for _, p := range passes {
			currents[e] += p.sign * loops[p.loop]
		}
	}
	return currents
}

// treeCurrents sends the injected currents home through the trees alone.
func (m *mesh) treeCurrents(injected []float64) []float64 {
	currents := make([]float64, len(m.elements))
	due := make([]float64, len(m.up)) // current that leaves each node, and all below it
	for e, i := range injected {
		if i != 0 {
			due[m.elements[e].a] += i
			due[m.elements[e].b] -= i
			currents[e] = i
		}
	}
	for _, n := range slices.Backward(m.order) {
		if e := m.up[n]; e != None {
			currents[e] = -due[n] * m.upward(n)
			due[m.far(e, n)] += due[n]
		}
	}
	return currents
}

// potentials walks the trees and gives every node its voltage against the root of its island.
func (m *mesh) potentials(currents []float64) []float64 {
	volts := make([]float64, len(m.up))
	for _, n := range m.order {
		if e := m.up[n]; e != None {
			across := m.elements[e].ohms*currents[e] + m.elements[e].volts
			volts[n] = volts[m.far(e, n)] + across*m.upward(n)
		}
	}
	return volts
}
