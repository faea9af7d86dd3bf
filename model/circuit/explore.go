package circuit

import "slices"

// Movers are the coils, the gated contacts, and the loads with a gate or an output. Each
// moves in its own time, and nobody knows which is faster. So Solve follows every order
// in which they can move one by one, and takes a rest for the result only if no order
// leads anywhere else.
//
// A load moves out of rest only if it would stay there: one that takes away, by itself,
// the voltage that it needs is starved and stays at rest.

// bounds are what a search may take. Within them its outcome is exact.
type bounds struct {
	movers int // that want to move at once; more are first tested for whether they commute
	points int // positions of all the movers that are tried
}

// searchBounds are far above what carts take: some tens of points.
var searchBounds = bounds{movers: 5, points: 600}

// point is one position of all the movers, and where the search can go from it.
type point struct {
	moved    []bool // by mover
	wanting  []int  // movers that the voltages would move, in order
	leaving  []int  // of those, the ones that move; the others are starved
	next     []*point
	expanded bool
	search   int // when the search came by, from 1
	low      int
	stacked  bool
}

// explorer knows the points that were tried.
type explorer struct {
	bounds bounds
	s      *state
	points map[string]*point
	modes  []mode // of diodes and supplies at rest: where each trial begins, so that it does not depend on the last
	key    []byte

	settled *point // where the state is
	clock   int
	stack   []*point
	rests   []*point
	circle  []*point // where movers can go round for ever
	gaveUp  bool
}

func newExplorer(s *state, b bounds) *explorer {
	return &explorer{bounds: b, s: s, points: map[string]*point{}, key: make([]byte, len(s.movers))}
}

// at gives the point for a position, settled when it is new.
func (x *explorer) at(moved []bool) (*point, error) {
	for m, is := range moved {
		x.key[m] = 0
		if is {
			x.key[m] = 1
		}
	}
	if p := x.points[string(x.key)]; p != nil {
		return p, nil
	}
	p := &point{moved: slices.Clone(moved)}
	if err := x.settle(p); err != nil {
		return nil, err
	}
	for m, e := range x.s.movers {
		if x.s.wants(e) != moved[m] {
			p.wanting = append(p.wanting, m)
		}
	}
	x.points[string(x.key)] = p
	return p, nil
}

// settle puts the state into a point's position.
func (x *explorer) settle(p *point) error {
	if x.settled == p {
		return nil
	}
	x.settled = p
	for m, e := range x.s.movers {
		x.s.moved[e] = p.moved[m]
	}
	copy(x.s.modes, x.modes)
	err := x.s.settle()
	if x.modes == nil {
		x.modes = slices.Clone(x.s.modes)
	}
	return err
}

// after is the point that is reached from another when some movers move.
func (x *explorer) after(p *point, movers ...int) (*point, error) {
	moved := slices.Clone(p.moved)
	for _, m := range movers {
		moved[m] = !moved[m]
	}
	return x.at(moved)
}

// expand finds which movers leave a point.
func (x *explorer) expand(p *point) error {
	if p.expanded {
		return nil
	}
	p.expanded = true
	for _, m := range p.wanting {
		if x.s.elements[x.s.movers[m]].kind == load && !p.moved[m] {
			q, err := x.after(p, m)
			if err != nil {
				return err
			}
			if slices.Contains(q.wanting, m) {
				continue
			}
		}
		p.leaving = append(p.leaving, m)
	}
	return nil
}

// follow finds the rests and circles that can be reached from a point: depth first, with
// Tarjan's algorithm for the circles (SIAM Journal on Computing 1, 1972).
func (x *explorer) follow(p *point) error {
	x.clock++
	p.search, p.low, p.stacked = x.clock, x.clock, true
	x.stack = append(x.stack, p)
	if err := x.open(p); err != nil {
		return err
	}
	for _, q := range p.next {
		if len(x.points) > x.bounds.points || len(x.rests) > 1 {
			x.gaveUp = len(x.rests) < 2
			return nil
		}
		switch {
		case q.search == 0:
			if err := x.follow(q); err != nil {
				return err
			}
			p.low = min(p.low, q.low)
		case q.stacked:
			p.low = min(p.low, q.search)
		}
	}
	if p.low == p.search && !x.gaveUp {
		x.close(p)
	}
	return nil
}

// open lists the points that come next. Where many movers want to move, and tests say
// that they do not touch each other, they all move at once.
func (x *explorer) open(p *point) error {
	if err := x.expand(p); err != nil {
		return err
	}
	if len(p.leaving) == 0 {
		x.rests = append(x.rests, p)
	}
	if len(p.leaving) > x.bounds.movers {
		all, err := x.together(p)
		if err != nil {
			return err
		}
		if all != nil {
			p.next = []*point{all}
			return nil
		}
	}
	for _, m := range p.leaving {
		q, err := x.after(p, m)
		if err != nil {
			return err
		}
		p.next = append(p.next, q)
	}
	return nil
}

// together is the point after all that leave one have moved, if they seem to commute:
// each still moves after any single other, and after all the others; what any of them
// sets going is going after all of them. Nil if not.
func (x *explorer) together(p *point) (*point, error) {
	all, err := x.after(p, p.leaving...)
	if err != nil {
		return nil, err
	}
	for _, m := range p.leaving {
		if slices.Contains(all.wanting, m) {
			return nil, nil
		}
	}
	for i, m := range p.leaving {
		others := slices.Delete(slices.Clone(p.leaving), i, i+1)
		first, err := x.after(p, m)
		if err != nil {
			return nil, err
		}
		last, err := x.after(p, others...)
		if err != nil {
			return nil, err
		}
		if !covered(first, others, all) || !covered(last, []int{m}, all) {
			return nil, nil
		}
	}
	return all, nil
}

// covered reports whether all of some movers want to move at a point, and whatever else
// does wants to at another too.
func covered(at *point, movers []int, then *point) bool {
	for _, m := range movers {
		if !slices.Contains(at.wanting, m) {
			return false
		}
	}
	for _, m := range at.wanting {
		if !slices.Contains(movers, m) && !slices.Contains(then.wanting, m) {
			return false
		}
	}
	return true
}

// close takes a strongly connected set of points off the stack, and keeps it if it is a
// circle that movers can go round in for ever without one being held up all the while
// that would lead out.
func (x *explorer) close(p *point) {
	at := slices.Index(x.stack, p)
	set := slices.Clone(x.stack[at:])
	x.stack = x.stack[:at]
	for _, q := range set {
		q.stacked = false
	}
	if len(set) < 2 || x.circle != nil {
		return
	}
	for _, m := range set[0].leaving {
		if leadsOut(set, m) {
			return
		}
	}
	x.circle = set
}

// leadsOut reports whether a mover wants to leave at every point of a set and gets out of it
// from each.
func leadsOut(set []*point, m int) bool {
	for _, p := range set {
		i := slices.Index(p.leaving, m)
		if i < 0 || i >= len(p.next) || slices.Contains(set, p.next[i]) {
			return false
		}
	}
	return true
}
