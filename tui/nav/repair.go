package nav

import (
	"cmp"
	"image"
	"slices"
)

// Bounds of the search for small repairs; beyond them the chain is laid. Choice: with them a screen of 300 objects
// takes milliseconds, and no random layout of the tests needed more.
const (
	candidatesPerRepair = 8
	maxTrials           = 64
)

// repair redirects arrows until every object can be reached from every other. It prefers redirecting the arrow with
// the cheapest new target. An arrow is only ever turned to another object in its direction, so none is lost.
func (m *Map) repair(boxes []image.Rectangle) {
	all := len(boxes) * len(boxes)
	pairs := m.pairs()
	for trials := 0; pairs < all; {
		better := false
		for _, c := range m.candidates(boxes) {
			old := m.next[c.from][c.by]
			m.next[c.from][c.by] = c.to
			trials++
			if now := m.pairs(); now > pairs {
				pairs, better = now, true
				break
			}
			m.next[c.from][c.by] = old
		}
		if pairs < all && (!better || trials > maxTrials) {
			m.chain(boxes)
			return
		}
	}
}

// redirection is an arrow that could lead to another object.
type redirection struct {
	from, to int
	by       Dir
	cost     int
}

// candidates returns the cheapest redirections that lead out of what can be reached from the first object, or, if
// everything can, back into what leads to it.
func (m *Map) candidates(boxes []image.Rectangle) []redirection {
	inside := m.reach(0)
	leads := func(from, to int) bool { return inside[from] && !inside[to] }
	if !slices.Contains(inside, false) {
		back := m.leadingTo(0)
		leads = func(from, to int) bool { return !back[from] && back[to] }
	}
	var found []redirection
	for from := range boxes {
		for to := range boxes {
			for _, d := range directions {
				if leads(from, to) && beyond(boxes, from, to, d) {
					found = append(found, redirection{from, to, d, cost(boxes[from], boxes[to], d)})
				}
			}
		}
	}
	slices.SortStableFunc(found, func(a, b redirection) int { return cmp.Compare(a.cost, b.cost) })
	return found[:min(len(found), candidatesPerRepair)]
}

// reach marks what the arrows reach from an object, itself included.
func (m *Map) reach(from int) []bool {
	marked := make([]bool, len(m.next))
	marked[from] = true
	queue := append(make([]int, 0, len(m.next)), from)
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, to := range m.next[at] {
			if to != none && !marked[to] {
				marked[to] = true
				queue = append(queue, to)
			}
		}
	}
	return marked
}

// leadingTo marks the objects from which the arrows reach one, itself included.
func (m *Map) leadingTo(target int) []bool {
	marked := make([]bool, len(m.next))
	for from := range m.next {
		marked[from] = m.reach(from)[target]
	}
	return marked
}

// pairs counts the ordered pairs of objects that the arrows join.
func (m *Map) pairs() int {
	count := 0
	for from := range m.next {
		for _, reached := range m.reach(from) {
			if reached {
				count++
			}
		}
	}
	return count
}

// chain joins all objects in a line, column by column, and leaves the other arrows as they are. It always works:
// each object gives one arrow (right or down) to its successor and one (left or up) to its predecessor.
func (m *Map) chain(boxes []image.Rectangle) {
	order := make([]int, len(boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(centre(boxes[a]).X, centre(boxes[b]).X), cmp.Compare(centre(boxes[a]).Y, centre(boxes[b]).Y))
	})
	for i := 1; i < len(order); i++ {
		a, b, d := order[i-1], order[i], Right
		if !beyond(boxes, a, b, d) {
			d = Down
		}
		m.next[a][d], m.next[b][d.Opposite()] = b, a
	}
}

// centre is twice the centre of a box, with rows counted double.
func centre(box image.Rectangle) image.Point {
	return image.Pt(box.Min.X+box.Max.X, 2*(box.Min.Y+box.Max.Y))
}
