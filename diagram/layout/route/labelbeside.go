package route

import "example.com/lugbook/diagram/layout/geom"

// beside finds a place right of an upright run, or left of it: for the best text that may stand where no other upright
// line could be taken for the one it names, else where at least none goes on from its first letter, else anywhere.
func (l *labeller) beside(w int) Label {
	for _, doubt := range [3]int{sure, trailing, leading} {
		for index, length := range l.p.Wires[w].Labels {
			if label := l.besideWith(w, length, doubt); label.OK {
				label.Index = index
				return label
			}
		}
	}
	return Label{}
}

// Doubts about which line a text beside an upright run belongs to: none, or another upright line goes on right above or
// below one of its letters, or of its first ones.
const (
	sure = iota
	trailing
	leading
)

// besideWith finds a place for a text of the given length whose doubt is no greater than the given one.
func (l *labeller) besideWith(w, length, doubt int) Label {
	q := l.goalOf(w)
	for i, c := range l.cells[w] {
		if l.levelTouched(q, l.cells[w], i) || l.g.private(c, q.from, q.to) {
			continue
		}
		at := l.g.point(c)
		for _, x := range [2]int{at.X + 1, at.X - length} {
			first := x // of the text and of the cell that it keeps free on its far side
			if x < at.X {
				first--
			}
			if l.free(first, first+length, at.Y) && l.doubt(w, x, length, at.Y) <= doubt {
				l.mark(w, first, first+length, at.Y)
				return Label{At: geom.Point{X: x, Y: at.Y}, Vertical: true, OK: true}
			}
		}
	}
	return Label{}
}

// doubt tells how a text beside an upright run of wire w could be read as that of another line.
func (l *labeller) doubt(w, x, length, y int) int {
	worst := sure
	for k := range length {
		for _, row := range [2]int{y - 1, y + 1} {
			p := geom.Point{X: x + k, Y: row}
			if !l.g.inside(p) {
				continue
			}
			if other := l.g.who[upright][l.g.index(p)]; other == 0 || other == int32(w+1) {
				continue
			}
			if k < leadingLetters {
				return leading
			}
			worst = trailing
		}
	}
	return worst
}

// leadingLetters are the letters at which a text seems to hang on a line.
const leadingLetters = 2
