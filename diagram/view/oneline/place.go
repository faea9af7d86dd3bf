package oneline

import (
	"strings"

	"example.com/lugbook/diagram/scene"
)

// Room in a drawing, in cells.
const (
	leastBox  = 11
	mostBox   = 22
	narrowBox = 14
	widestBox = 40
	wordLines = 3
	frameRoom = 4 // frames and a blank on either hand
	portPitch = 2 // rows from one line that leaves a part to the next
	lanePitch = 2 // columns from one upright piece to the next
	rowGap    = 1 // rows between paths
)

// spot is a node in its place.
type spot struct {
	node  *Node
	in    *Edge  // the edge that leads to it; nil for the first of a path
	mark  string // text of a flag, where the path runs into another
	after *spot  // the one before it; nil for the first of a path
	below bool   // it begins in the band below the one before it

	depth   int // parts before it in its band
	band    int
	x, y    int
	w, h    int
	main    int // row of its line, from its top
	up      int // rows that it and what follows straight on need above the line
	out     []*spot
	ordinal int // among those that follow the one before it
}

// isFlag reports whether the spot is a mark and not a part.
func (s *spot) isFlag() bool { return s.mark != "" }

// line is the row of the line that leads to a spot and straight on.
func (s *spot) line() int { return s.y + s.main }

// sized gives a part its least box. Boxes grow wider until what they say finds room; with
// room for symbols these are drawn in three rows, else in one.
func (s *spot) sized(most int, symbols bool) {
	if s.isFlag() {
		s.w, s.h = scene.Width(s.mark)+1, 1
		return
	}
	words, head := s.node.Words(), scene.Width(s.node.ID)
	s.w = max(boxWidth(words, most), head+frameRoom)
	lines := len(scene.Fold(words, s.w-2))
	if head+1+scene.Width(words)+frameRoom <= s.w {
		lines = 0 // all stands in the frame line
	}
	s.main = min(lines, wordLines) + 1
	s.h = s.main + 2
	if symbols && s.node.Def != nil && s.node.Def.Symbol != "" {
		s.main++
		s.h = s.main + 3
	}
	if n := len(s.out); n > 1 {
		s.h = max(s.h, s.main+portPitch*(n-1)+2)
	}
}

// boxWidth is the width of a box for a text: up to a limit the least with a blank on
// either hand of it, else the least that holds it. No figure comes apart from its unit.
func boxWidth(words string, most int) int {
	for w := leastBox; w <= most; w++ {
		if holds(words, w, w-frameRoom) {
			return w
		}
	}
	w := leastBox
	for w < widestBox && !holds(words, w, w-2) {
		w++
	}
	return w
}

// holds reports whether a box holds a text in few lines of at most some cells.
func holds(words string, w, cells int) bool {
	lines := scene.Fold(words, w-2)
	for i, line := range lines {
		last := line[strings.LastIndexByte(line, ' ')+1:]
		if scene.Width(line) > cells || i < len(lines)-1 && isNumber(last) {
			return false
		}
	}
	return len(lines) <= wordLines
}

func isNumber(word string) bool {
	return strings.Trim(word, "0123456789.") == ""
}

// rise finds how much room there must be above the lines.
func (s *spot) rise() {
	s.up = s.main
	for i, next := range s.out {
		if next.below {
			continue
		}
		next.rise()
		if i == 0 {
			s.up = max(s.up, next.up)
		}
	}
}

// port is the row from which the line to the i-th of the spots that follow leaves.
func (s *spot) port(i int) int { return s.line() + portPitch*i }

// stand puts a spot and all that follows in its band in rows: its line at a row or lower,
// nothing of it above a limit. It is the last row that they take.
func (s *spot) stand(line, limit int) (bottom int) {
	s.y = max(line, limit+s.up) - s.main
	bottom = s.y + s.h - 1
	free := limit
	for i, next := range s.out {
		if next.below {
			continue
		}
		last := next.stand(s.port(i), free)
		free = last + 1 + rowGap
		bottom = max(bottom, last)
	}
	return bottom
}

// measure finds the columns of a band. With labels there is room for the conductor on each
// line.
func (b *band) measure() {
	var width, label, lanes []int
	for _, s := range b.spots {
		for len(width) <= s.depth {
			width, label, lanes = append(width, 0), append(label, 0), append(lanes, 0)
		}
		width[s.depth] = max(width[s.depth], s.w)
		if s.in != nil && b.labels {
			label[s.depth] = max(label[s.depth], scene.Width(s.in.conductor())+2)
		}
		switch {
		case s.below:
			lanes[0] = len(b.tops)
		case s.after != nil && s.line() != s.after.port(s.ordinal):
			lanes[s.depth] = max(lanes[s.depth], len(s.after.out))
		}
	}
	x := 0
	for d, w := range width {
		if d > 0 || lanes[0] > 0 {
			x += max(3, lanePitch*lanes[d]+max(2, label[d]))
		}
		b.x = append(b.x, x)
		x += w
		b.edges = append(b.edges, x)
	}
	b.w = x
	if b.onward > 0 {
		b.w += lanePitch*b.onward + 1
	}
}
