package circuit

import "slices"

// Where the points are too many to try them all, single orders stand for the rest: each mover
// that can begin begins once, and then all take turns, upwards and downwards in the order of
// building.

// Steps of a single order: so many for each mover, and some in any case.
const (
	stepsEach = 16
	stepsMore = 64
)

// rounds follows single orders. It adds the rests that they end in, and a circle if one comes
// to no rest.
func (x *explorer) rounds(start *point) error {
	x.rests = x.rests[:0]
	if err := x.expand(start); err != nil {
		return err
	}
	for _, first := range start.leaving {
		for _, step := range []int{1, -1} {
			if err := x.round(start, first, step); err != nil {
				return err
			}
		}
	}
	return nil
}

// round lets movers take turns from one on, each as its turn comes and it wants to.
func (x *explorer) round(p *point, turn, step int) error {
	n := len(x.s.movers)
	var way []*point
	for range stepsMore + stepsEach*n {
		if err := x.expand(p); err != nil {
			return err
		}
		if len(p.leaving) == 0 {
			if !slices.Contains(x.rests, p) {
				x.rests = append(x.rests, p)
			}
			return nil
		}
		for !slices.Contains(p.leaving, turn) {
			turn = (turn + step + n) % n
		}
		q, err := x.after(p, turn)
		if err != nil {
			return err
		}
		way, p, turn = append(way, p), q, (turn+step+n)%n
	}
	if x.circle == nil {
		x.circle = way[len(way)/2:]
	}
	return nil
}
