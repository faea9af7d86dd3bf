package circuit

// Solve finds the steady state that the circuit comes to from rest: coils dropped out,
// loads and converters off. Coils, gated contacts, gated loads and converters move one by
// one as the voltages have them move, in every order that there is; the result is the one that all
// orders lead to.
//
// The error is an [Invalid], [Singular] or [Open] circuit, a [Chatter] that never
// comes to rest in some order, or a [Race] that comes to different rests.
func (c *Circuit) Solve() (*Solution, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	return c.settle(searchBounds)
}

// settle is Solve within bounds, of a circuit that was checked.
func (c *Circuit) settle(b bounds) (*Solution, error) {
	s, err := newState(c)
	if err != nil {
		return nil, err
	}
	defer s.spare()
	x := newExplorer(s, b)
	start, err := x.at(make([]bool, len(s.movers)))
	if err != nil {
		return nil, err
	}
	if err := x.follow(start); err != nil {
		return nil, err
	}
	if x.gaveUp {
		if err := x.rounds(start); err != nil {
			return nil, err
		}
	}
	switch {
	case len(x.rests) > 1:
		return nil, &Race{Elements: x.differing(x.rests)}
	case x.circle != nil:
		return nil, &Chatter{Elements: x.differing(x.circle)}
	}
	rest := x.rests[0]
	if err := x.settle(rest); err != nil {
		return nil, err
	}
	var held []Element
	for _, m := range rest.wanting {
		held = append(held, s.movers[m])
	}
	return s.solution(held), nil
}

// differing lists the movers that do not stand the same at all of some points.
func (x *explorer) differing(points []*point) []Element {
	var list []Element
	for m, e := range x.s.movers {
		for _, p := range points {
			if p.moved[m] != points[0].moved[m] {
				list = append(list, e)
				break
			}
		}
	}
	return list
}
