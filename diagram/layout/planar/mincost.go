package planar

// boundless is the capacity of an arc without a limit.
const boundless = 1 << 40

// network is a minimum-cost flow problem, solved by shortest augmenting paths with node potentials and, on arcs of no
// reduced cost, as much flow at once as they carry (Ahuja, Magnanti and Orlin, "Network Flows", 1993, chapter 9).
// Arc a and its reverse a^1 are a pair.
type network struct {
	to, room, cost []int
	at             [][]int // arcs leaving a node
	supply         []int   // what enters at a node; negative where it leaves
	price          []int   // potentials; cost + price[from] - price[to] stays >= 0 where there is room
	dist, seen, ix []int
	round          int
	heap           []item
}

type item struct{ dist, node int }

func newNetwork(nodes int) *network {
	return &network{at: make([][]int, nodes), supply: make([]int, nodes), price: make([]int, nodes),
		dist: make([]int, nodes), seen: make([]int, nodes), ix: make([]int, nodes)}
}

// arc adds an arc and returns its number.
func (n *network) arc(from, to, room, cost int) int {
	a := len(n.to)
	n.to, n.room, n.cost = append(n.to, to, from), append(n.room, room, 0), append(n.cost, cost, -cost)
	n.at[from], n.at[to] = append(n.at[from], a), append(n.at[to], a+1)
	return a
}

// flow is what runs over an arc once solved.
func (n *network) flow(a int) int { return n.room[a^1] }

func (n *network) reduced(a int) int { return n.cost[a] + n.price[n.to[a^1]] - n.price[n.to[a]] }

// solve sends all supply at the least cost; it reports false if some cannot be sent. Pre: the prices make all
// reduced costs of arcs with room >= 0.
func (n *network) solve() bool {
	for {
		open, reached := n.prices()
		if !open || !reached {
			return !open
		}
		clear(n.ix)
		for v := range n.supply {
			for n.supply[v] > 0 {
				n.round++
				sent := n.push(v, n.supply[v])
				if sent == 0 {
					break
				}
				n.supply[v] -= sent
			}
		}
	}
}

// prices brings the potentials up to date with the distances from the nodes with supply left. open tells whether there
// are any, reached whether they reach one with demand.
func (n *network) prices() (open, reached bool) {
	for v := range n.dist {
		n.dist[v] = none
	}
	n.heap = n.heap[:0]
	for v, s := range n.supply {
		if s > 0 {
			n.dist[v] = 0
			n.add(item{0, v})
			open = true
		}
	}
	last := 0
	for len(n.heap) > 0 && !reached {
		it := n.pop()
		if it.dist > n.dist[it.node] {
			continue
		}
		last, reached = it.dist, n.supply[it.node] < 0
		for _, a := range n.at[it.node] {
			if n.room[a] == 0 {
				continue
			}
			d, w := it.dist+n.reduced(a), n.to[a]
			if n.dist[w] == none || d < n.dist[w] {
				n.dist[w] = d
				n.add(item{d, w})
			}
		}
	}
	if reached {
		for v, d := range n.dist {
			if d == none || d > last {
				d = last
			}
			n.price[v] += d
		}
	}
	return open, reached
}

// push sends up to limit units from v over arcs of no reduced cost to nodes with demand. Each arc is given up once it
// led nowhere.
func (n *network) push(v, limit int) int {
	if n.supply[v] < 0 {
		sent := min(limit, -n.supply[v])
		n.supply[v] += sent
		return sent
	}
	n.seen[v] = n.round
	for ; n.ix[v] < len(n.at[v]); n.ix[v]++ {
		a := n.at[v][n.ix[v]]
		w := n.to[a]
		if n.room[a] == 0 || n.seen[w] == n.round || n.reduced(a) != 0 {
			continue
		}
		if sent := n.push(w, min(limit, n.room[a])); sent > 0 {
			n.room[a] -= sent
			n.room[a^1] += sent
			return sent
		}
	}
	return 0
}

func (n *network) add(it item) {
	n.heap = append(n.heap, it)
	for i := len(n.heap) - 1; i > 0; {
		up := (i - 1) / 2
		if !n.heap[i].before(n.heap[up]) {
			return
		}
		n.heap[i], n.heap[up] = n.heap[up], n.heap[i]
		i = up
	}
}

func (n *network) pop() item {
	top, last := n.heap[0], len(n.heap)-1
	n.heap[0] = n.heap[last]
	n.heap = n.heap[:last]
	for i := 0; ; {
		least := i
		for c := 2*i + 1; c <= 2*i+2 && c < last; c++ {
			if n.heap[c].before(n.heap[least]) {
				least = c
			}
		}
		if least == i {
			return top
		}
		n.heap[i], n.heap[least] = n.heap[least], n.heap[i]
		i = least
	}
}

func (a item) before(b item) bool { return a.dist < b.dist || a.dist == b.dist && a.node < b.node }

// coordinates finds values of variables that keep distances and have the least weighted sum: a linear program whose
// dual is a minimum-cost flow.
type coordinates struct {
	weight []int // per variable
	gaps   []gap
}

// gap keeps variable b at least d above a.
type gap struct{ a, b, d int }

func (c *coordinates) variable() int {
	c.weight = append(c.weight, 0)
	return len(c.weight) - 1
}

func (c *coordinates) apart(a, b, d int) { c.gaps = append(c.gaps, gap{a, b, d}) }

// draw prices the distance from a up to b.
func (c *coordinates) draw(a, b, weight int) {
	c.weight[a] -= weight
	c.weight[b] += weight
}

// solve returns the values; ok is false when the distances contradict each other.
func (c *coordinates) solve() (x []int, ok bool) {
	if x, ok = c.lowest(); ok {
		x = c.solveFrom(x)
	}
	return x, ok
}

// solveFrom returns the values, given some that keep the distances. Pre: no sum falls without end.
func (c *coordinates) solveFrom(x []int) []int {
	n := newNetwork(len(c.weight))
	for _, g := range c.gaps {
		n.arc(g.a, g.b, boundless, -g.d)
	}
	for v, w := range c.weight {
		n.supply[v], n.price[v] = -w, -x[v]
	}
	n.solve()
	for v := range x {
		x[v] = -n.price[v]
	}
	return x
}

// lowest gives every variable the least value >= 0 that keeps all gaps; ok is false when there is none.
func (c *coordinates) lowest() (x []int, ok bool) {
	x = make([]int, len(c.weight))
	for range len(x) + 1 {
		changed := false
		for _, g := range c.gaps {
			if x[g.a]+g.d > x[g.b] {
				x[g.b] = x[g.a] + g.d
				changed = true
			}
		}
		if !changed {
			return x, true
		}
	}
	return nil, false
}
