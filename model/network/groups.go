package network

// Groups are the nodes of a network in groups that do not touch each other.
type Groups struct {
	of      []int
	members [][]Node
}

// Joined groups the nodes that some kind of link joins. Groups are numbered by their
// first node.
func (n *Network) Joined(by func(*Link) bool) *Groups {
	root := make([]int, n.Size())
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	for i := range n.links {
		if l := &n.links[i]; by(l) {
			a, b := find(int(l.A)), find(int(l.B))
			root[max(a, b)] = min(a, b)
		}
	}
	g := &Groups{of: make([]int, n.Size())}
	for i := range root {
		if r := find(i); r == i {
			g.of[i] = len(g.members)
			g.members = append(g.members, []Node{Node(i)})
		} else {
			g.of[i] = g.of[r]
			g.members[g.of[r]] = append(g.members[g.of[r]], Node(i))
		}
	}
	return g
}

// Of is the number of a node's group.
func (g *Groups) Of(at Node) int { return g.of[at] }

// Same reports whether two nodes are in one group.
func (g *Groups) Same(a, b Node) bool { return g.of[a] == g.of[b] }

// Members lists the nodes of a group.
func (g *Groups) Members(group int) []Node { return g.members[group] }

// Count is the number of groups.
func (g *Groups) Count() int { return len(g.members) }
