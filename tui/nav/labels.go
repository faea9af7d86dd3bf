package nav

import (
	"cmp"
	"image"
	"slices"
)

// letters are those of a jump label, best first: the home row, then the row above, then the row below. Left out are
// those that change places between common keyboards (q, y, z) and those far from the fingers (b, p, x). Choice.
const letters = "asdfjklghieruownctvm"

// Labels returns a label of one to three letters for every object, by its index. The nearest to the object the
// cursor is on have the shortest labels, and no label begins another, so a label is complete when its last letter is
// typed. The object the cursor is on has none (""); with from outside the slice, distances count from the origin.
//
// Up to 400 objects no label has more than two letters.
func Labels(boxes []image.Rectangle, from int) []string {
	var origin image.Point
	order := ReadingOrder(boxes)
	if from >= 0 && from < len(boxes) {
		origin = centre(boxes[from])
		order = slices.DeleteFunc(order, func(i int) bool { return i == from })
	}
	distance := func(i int) int {
		way := centre(boxes[i]).Sub(origin)
		return way.X*way.X + way.Y*way.Y
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(distance(a), distance(b)) })

	labels := make([]string, len(boxes))
	for rank, label := range prefixFree(len(order)) {
		labels[order[rank]] = label
	}
	return labels
}

// prefixFree returns n labels, shortest first, of which none begins another.
func prefixFree(n int) []string {
	var done []string // ready labels
	level := lengthen([]string{""})
	for {
		// As few as possible of this level begin longer labels; each that does is worth len(letters) of them.
		opened := 0
		for opened < len(level) && len(done)+len(level)+opened*(len(letters)-1) < n {
			opened++
		}
		kept := len(level) - opened
		done = append(done, level[:kept]...)
		if len(done) >= n {
			return done[:n]
		}
		level = lengthen(level[kept:])
	}
}

// lengthen adds every letter to every label.
func lengthen(level []string) []string {
	longer := make([]string, 0, len(level)*len(letters))
	for _, label := range level {
		for i := range len(letters) {
			longer = append(longer, label+letters[i:i+1])
		}
	}
	return longer
}
