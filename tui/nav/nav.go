// Package nav moves a cursor over objects that lie about on a plane of text cells: the arrow keys, the order Tab
// walks in, and the letters that jump. It knows only rectangles; an object is its index in the slice given.
//
// All of it is pure and deterministic: the same rectangles give the same answers.
package nav

import (
	"cmp"
	"image"
	"slices"
)

// Dir is the direction of an arrow key.
type Dir uint8

// The four directions.
const (
	Left Dir = iota
	Right
	Up
	Down
)

// Opposite is the direction of the arrow that takes a move back.
func (d Dir) Opposite() Dir {
	return d ^ 1
}

// directions lists all of them, in the order of their values.
var directions = [...]Dir{Left, Right, Up, Down}

// ReadingOrder returns the indices of the objects from top to bottom, in a row from left to right. It is the order
// for Tab, which so reaches everything whatever the arrows do.
func ReadingOrder(boxes []image.Rectangle) []int {
	order := make([]int, len(boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(boxes[a].Min.Y, boxes[b].Min.Y), cmp.Compare(boxes[a].Min.X, boxes[b].Min.X))
	})
	return order
}

// Position is where the cursor is and what it remembers: the opposite arrow, pressed next, returns to where the
// cursor came from, even where the rule alone would lead elsewhere. Its zero value is the first object.
type Position struct {
	At int // index of the object

	from int // where it came from, if came
	by   Dir
	came bool
}

// At is a position without memory: use it after a jump, a click or a change of the layout.
func At(object int) Position {
	return Position{At: object}
}

// Move follows an arrow. It reports false, and leaves the position as it is, if nothing lies in that direction.
func (p Position) Move(m *Map, d Dir) (Position, bool) {
	to, found := m.Next(p.At, d)
	if p.came && d == p.by.Opposite() && p.from < len(m.next) {
		to, found = p.from, true
	}
	if !found {
		return p, false
	}
	return Position{At: to, from: p.At, by: d, came: true}, true
}
