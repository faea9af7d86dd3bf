package circuit

import (
	"cmp"
	"math"
	"slices"
)

// mesh is a network made ready to be solved. What conducts whatever happens is reduced once,
// as far as nothing that can switch or is watched touches it. The rest is made ready anew by
// wire, for one set of switching elements that conduct: what a reduction leaves of it has a
// spanning tree for each island, and the factored equations of the loops that the other edges
// close.
type mesh struct {
	elements  []element
	switching []Element // that conduct or not, as wire is told
	fixed     *reduction
	firm      int    // edges of it that are elements
	rest      []edge // what the fixed part is reduced to
	*reduction

	whole    int    // edges that are elements or fixed ones; the others come of the reduction
	core     []int  // edges that are left, the least resistance first
	up       []int  // by node: place in core of the tree edge towards the root of its island, or -1
	order    []Node // that are left, parents before children
	links    []int  // places in core of the edges that are not in a tree: one loop each
	crossed  crossings
	factor   cholesky
	islands  union // of nodes that are not removed from the fixed part
	trees    union
	branches branches
	depth    []int
	due      []float64 // by node: current that leaves it
	anywhere bool      // currents are injected at any node, those that are removed from the fixed part too
	below    []float64 // by node: current that leaves it and all below it
	rhs      []float64 // by loop
}

// newMesh reduces the fixed part of a circuit. Nothing that switches conducts yet.
func newMesh(nodes int, elements []element, switching []Element, watched []bool) (*mesh, error) {
	figures, numbers, unions := make([]float64, 2*nodes), make([]int, 3*nodes), make(union, 3*nodes)
	m := &mesh{
		elements: elements, switching: switching, branches: newBranches(nodes),
		islands: unions[:nodes], trees: unions[nodes : 2*nodes], up: numbers[:nodes], depth: numbers[nodes : 2*nodes],
		due: figures[:nodes], below: figures[nodes:],
	}
	ends, all := numbers[2*nodes:], unions[2*nodes:]
	all.part()
	for i := range elements {
		if elements[i].fixed() {
			ends[elements[i].a]++
			ends[elements[i].b]++
		}
	}
	m.fixed = newReduction(all, ends, watched)
	m.fixed.begin()
	for i := range elements {
		if e := &elements[i]; e.fixed() {
			m.fixed.join(edge{a: e.a, b: e.b, ohms: e.ohms, volts: e.volts, e: Element(i)})
		}
	}
	m.firm = len(m.fixed.edges)
	if err := m.fixed.run(); err != nil {
		return nil, err
	}
	m.fixed.gather(m.due)
	m.makeRoom(ends)
	return m, nil
}

// spare gives the room of the reductions back. The mesh is of no use after that.
func (m *mesh) spare() {
	m.fixed.spare()
	m.reduction.spare()
	m.fixed, m.reduction = nil, nil
}

// makeRoom prepares the reduction of what is left of the fixed part and the rest.
func (m *mesh) makeRoom(ends []int) {
	clear(ends)
	for i := range m.fixed.edges {
		if e := m.fixed.edges[i]; !e.gone {
			e.fixed = i
			m.rest = append(m.rest, e)
			ends[e.a]++
			ends[e.b]++
		}
	}
	for _, i := range m.switching {
		ends[m.elements[i].a]++
		ends[m.elements[i].b]++
	}
	var left []Node
	for n, removed := range m.fixed.removed {
		if !removed {
			left = append(left, Node(n))
		}
	}
	m.reduction = newReduction(left, ends, make([]bool, len(ends)))
}

// wire joins what conducts, by place in switching.
func (m *mesh) wire(conducts []bool) error {
	m.begin()
	for _, e := range m.rest {
		m.join(e)
	}
	for i, is := range conducts {
		if is {
			e := &m.elements[m.switching[i]]
			m.join(edge{a: e.a, b: e.b, ohms: e.ohms, e: m.switching[i], fixed: -1})
		}
	}
	m.whole = len(m.edges)
	m.islands.partOf(m.nodes)
	for i := range m.edges {
		m.islands.join(m.edges[i].a, m.edges[i].b)
	}
	for _, n := range m.nodes {
		m.islands[n] = m.islands.root(n)
	}
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

// plant finds the spanning tree of least resistance of what is left of each island.
func (m *mesh) plant() {
	m.core = m.core[:0]
	for id := range m.edges {
		if !m.edges[id].gone {
			m.core = append(m.core, id)
		}
	}
	slices.SortStableFunc(m.core, func(x, y int) int { return cmp.Compare(m.edges[x].ohms, m.edges[y].ohms) })
	m.trees.partOf(m.nodes)
	m.branches.clear(m.nodes)
	m.links, m.order = m.links[:0], m.order[:0]
	for k, id := range m.core {
		e := &m.edges[id]
		if !m.trees.join(e.a, e.b) {
			m.links = append(m.links, k)
			continue
		}
		m.branches.add(e.a, k)
		m.branches.add(e.b, k)
	}
	for _, n := range m.nodes {
		m.up[n], m.depth[n] = -1, -1
	}
	for _, n := range m.nodes {
		if m.depth[n] < 0 && !m.removed[n] {
			m.grow(n)
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

// solve finds the currents through the switching and the injecting elements and the voltages
// of the nodes that are not removed from the fixed part, each against a node of its island.
// Given are the currents that the injecting elements take from their first node to their
// second, which must be in one island. Without sources, only what the injected currents drive
// is found.
func (m *mesh) solve(currents, volts, injected []float64, injecting []Element, sources bool) {
	clear(m.due)
	for _, e := range m.switching {
		currents[e] = 0
	}
	for _, e := range injecting {
		i := injected[e]
		currents[e] = i
		m.due[m.elements[e].a] += i
		m.due[m.elements[e].b] -= i
	}
	if m.anywhere {
		m.gatherFixed(sources)
	}
	for id := range m.edges[:m.whole] {
		e := &m.edges[id]
		switch {
		case e.fixed >= 0 && (sources || m.anywhere):
			e.volts = m.fixed.edges[e.fixed].volts
		case sources:
			e.volts = m.elements[e.e].volts
		default:
			e.volts = 0
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
		if e := &m.edges[id]; e.fixed < 0 {
			currents[e.e] = e.current
		}
	}
}

// gatherFixed moves the voltages of the fixed part, or none, and what is injected in it to
// what is left of it.
func (m *mesh) gatherFixed(sources bool) {
	for i := range m.firm {
		e := &m.fixed.edges[i]
		e.volts = 0
		if sources {
			e.volts = m.elements[e.e].volts
		}
	}
	m.fixed.gather(m.due)
}

// spreadFixed adds the voltages of the fixed part to the last solution.
func (m *mesh) spreadFixed(volts []float64) {
	for id := range m.edges[:m.whole] {
		if e := &m.edges[id]; e.fixed >= 0 {
			m.fixed.edges[e.fixed].current = e.current
		}
	}
	m.fixed.spread(volts)
}

// complete adds the currents and voltages of the fixed part to the last solution, and numbers
// the islands in the order of their first nodes.
func (m *mesh) complete(currents, volts []float64) (island []int) {
	m.spreadFixed(volts)
	for i := range m.firm {
		currents[m.fixed.edges[i].e] = m.fixed.edges[i].current
	}
	return m.numberIslands()
}

func (m *mesh) numberIslands() []int {
	for _, s := range m.fixed.steps {
		switch s.kind {
		case leafStep, chainStep:
			m.islands[s.n] = s.p // which may be removed later on, or not
		}
	}
	island, numbers, islands := make([]int, len(m.islands)), make([]int, len(m.islands)), 0
	for n := range island {
		root := m.islands.root(Node(n))
		if numbers[root] == 0 {
			islands++
			numbers[root] = islands
		}
		island[n] = numbers[root] - 1
	}
	return island
}

// largest are the largest current and voltage of the last solution.
func (m *mesh) largest(voltages []float64) (amperes, volts float64) {
	for id := range m.edges[:m.whole] {
		amperes = max(amperes, math.Abs(m.edges[id].current))
	}
	for _, n := range m.nodes {
		volts = max(volts, math.Abs(voltages[n]))
	}
	return amperes, volts
}

// treeCurrents sends the injected currents home through the trees alone.
func (m *mesh) treeCurrents() {
	for _, id := range m.core {
		m.edges[id].current = 0
	}
	for _, n := range m.order {
		m.below[n] = m.due[n]
	}
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
