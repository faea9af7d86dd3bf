package oneline

import (
	"example.com/lugbook/diagram/scene"
)

// Page draws paths from left to right, at most so many columns wide; 0 for any. Where they
// are longer they go on below, in as many bands as it takes. On paper symbols are larger.
// The page has no title.
func Page(roots []*Node, most int, onPaper bool) scene.Page {
	tops := make([]*spot, len(roots))
	for i, r := range roots {
		tops[i] = &spot{node: r}
	}
	var d drawing
	for len(tops) > 0 {
		b, rest := fit(tops, measures{most: most, symbols: onPaper})
		d.add(b)
		tops = rest
	}
	return d.page()
}

// band is a part of a drawing, as wide as the page: the paths up to a number of parts.
type band struct {
	spots    []*spot
	tops     []*spot
	onward   int // lines that go on in the next band
	labels   bool
	x        []int // columns of the parts by their depth
	edges    []int // columns behind the widest part of each depth
	y, w, h  int
	channels int // rows above it for lines that come from the band before
}

// drawing is a page in the making.
type drawing struct {
	bands []band
	w, h  int
}

// add puts a band below the others.
func (d *drawing) add(b band) {
	if len(d.bands) > 0 {
		b.channels = len(b.tops) + 2*rowGap
	}
	b.y = d.h + b.channels
	for _, s := range b.spots {
		s.y += b.y
		s.band = len(d.bands)
	}
	d.h = b.y + b.h
	d.w = max(d.w, b.w)
	d.bands = append(d.bands, b)
}

// fit lays out as much of some paths as the width allows: all if it can be, with room for
// the conductors on the lines if there is.
func fit(tops []*spot, m measures) (band, []*spot) {
	wide, narrow, bare := m, m, m
	wide.box, wide.labels = mostBox, true
	narrow.box, narrow.labels = narrowBox, true
	bare.box = narrowBox
	for _, try := range []measures{wide, narrow, bare} {
		if b, rest := lay(tops, endless, try); m.most == 0 || b.w <= m.most {
			return b, rest
		}
	}
	// As many parts as fit, but parted where fewest lines go on.
	depth, fewest := 1, endless
	for d := 1; ; d++ {
		b, rest := lay(tops, d, wide)
		if b.w > m.most || len(rest) == 0 {
			break
		}
		if len(rest) <= fewest {
			depth, fewest = d, len(rest)
		}
	}
	if b, rest := lay(tops, depth, wide); b.w <= m.most {
		return b, rest
	}
	return lay(tops, depth, bare)
}

// measures are what a band keeps to.
type measures struct {
	most    int  // columns; 0 for any number
	box     int  // columns up to which a box is set with room beside its text
	labels  bool // the conductor stands on each line
	symbols bool // there is room for large ones
}

// endless is more parts than any path has.
const endless = 1 << 20

// lay lays out the first parts of each path, to a number of them. What is beyond is left.
func lay(tops []*spot, depth int, m measures) (band, []*spot) {
	l := layer{measures: m, depth: depth}
	row := 0
	for _, t := range tops {
		t.depth, t.out = 0, nil
		l.grow(t)
		t.rise()
		row = t.stand(row, row) + 1 + rowGap
	}
	b := band{spots: l.spots, tops: tops, onward: len(l.rest), labels: m.labels, h: max(row-rowGap, 1)}
	b.measure()
	for _, s := range b.spots {
		s.x = b.x[s.depth]
	}
	return b, l.rest
}

// layer turns nodes into spots.
type layer struct {
	measures
	depth int
	spots []*spot
	rest  []*spot
}

// grow adds a spot and what follows it.
func (l *layer) grow(s *spot) {
	l.spots = append(l.spots, s)
	for i := range s.node.Out {
		e := &s.node.Out[i]
		next := &spot{node: e.To, in: e, after: s, depth: s.depth + 1, ordinal: len(s.out)}
		s.out = append(s.out, next)
		if next.depth < l.depth {
			l.grow(next)
			continue
		}
		next.below = true
		l.rest = append(l.rest, next)
	}
	if s.node.Joins != "" {
		next := &spot{node: s.node, mark: "to " + s.node.Joins, after: s, depth: s.depth + 1, ordinal: len(s.out)}
		next.sized(l.box, l.symbols)
		l.spots = append(l.spots, next)
		s.out = append(s.out, next)
	}
	s.sized(l.box, l.symbols)
}
