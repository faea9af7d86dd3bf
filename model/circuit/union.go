package circuit

// union keeps which nodes are joined.
type union []Node

// part puts every node apart.
func (u union) part() {
	for n := range u {
		u[n] = Node(n)
	}
}

// partOf puts some nodes apart.
func (u union) partOf(nodes []Node) {
	for _, n := range nodes {
		u[n] = n
	}
}

func (u union) root(n Node) Node {
	for u[n] != n {
		u[n] = u[u[n]]
		n = u[n]
	}
	return n
}

// join joins two nodes and reports whether they were apart.
func (u union) join(a, b Node) bool {
	a, b = u.root(a), u.root(b)
	u[max(a, b)] = min(a, b)
	return a != b
}
