package circuit

// trail remembers the states that a search has been in, so as to see when it goes
// round in circles.
type trail struct {
	seen   map[string]int
	states [][]bool
	from   int // where the circle begins
}

// visit notes a state and reports whether the search goes in circles: the state was
// noted before, or there are more states than a search that ends ever takes.
func (t *trail) visit(moved []bool) bool {
	key := make([]byte, len(moved))
	for i, m := range moved {
		if m {
			key[i] = 1
		}
	}
	if at, ok := t.seen[string(key)]; ok {
		t.from = at
		return true
	}
	if t.seen == nil {
		t.seen = map[string]int{}
	}
	t.seen[string(key)] = len(t.states)
	t.states = append(t.states, append([]bool(nil), moved...))
	return len(t.states) > leastStates+statesPerElement*len(moved)
}

// Bounds on the states of a search. One without a circle moves each element a few
// times at most.
const (
	leastStates      = 64
	statesPerElement = 8
)

// toggled lists the elements that differ between states of the circle.
func (t *trail) toggled() []Element {
	var list []Element
	circle := t.states[t.from:]
	for e := range circle[0] {
		for _, moved := range circle {
			if moved[e] != circle[0][e] {
				list = append(list, Element(e))
				break
			}
		}
	}
	return list
}
