package place

import (
	"fmt"
	"sync"
)

// NoRoomError says that a box found no free spot.
type NoRoomError struct {
	// Box is its index.
	Box int
	// Missing is the number of columns lacking on the page, 0 if pinned boxes are what stands in the way.
	Missing int
}

// Error is the message for a person.
func (e *NoRoomError) Error() string {
	if e.Missing > 0 {
		return fmt.Sprintf("box %d needs %d more columns: widen the page", e.Box, e.Missing)
	}
	return fmt.Sprintf("box %d finds no free spot: unpin a box", e.Box)
}

// Place finds one placement per seed 1..seeds, each by the given number of annealing moves, and returns them in the
// order of the seeds. The result does not depend on the number of processors.
func Place(p *Problem, moves, seeds int) ([]Placement, error) {
	out := make([]Placement, seeds)
	errs := make([]error, seeds)
	var wait sync.WaitGroup
	for k := range seeds {
		wait.Go(func() {
			s := newState(p)
			seed := uint64(k + 1)
			heat := heatOf(moves, len(p.Boxes), fromHot)
			if s.sketchable() {
				s.settleSketch(s.sketch(s.clusters(groupSize), seed))
				heat = heatOf(moves, len(p.Boxes), fromSketch)
			} else if errs[k] = s.first(); errs[k] != nil {
				return
			}
			s.anneal(moves, seed, heat)
			out[k] = s.result()
		})
	}
	wait.Wait()
	return out, errs[0]
}
