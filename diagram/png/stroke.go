package png

import (
	"image"
	"math/bits"

	"golang.org/x/image/vector"

	"example.com/lugbook/diagram/ink"
)

// canvas is a picture in the making.
type canvas struct {
	picture *image.RGBA
	raster  vector.Rasterizer
	scale   ratio // from hundredths of a unit to steps of a pixel
	letters map[letter][]polygon
	fonts   fonts
}

// line is a path of straight pieces.
type line struct {
	points polygon
	closed bool
}

// curvePieces is the number of straight pieces in a curve. The largest curves are half a
// centimetre long.
const curvePieces = 8

// flatten turns an outline into straight pieces, one line for each stretch of it.
func (c *canvas) flatten(outline []ink.Curve) []line {
	var lines []line
	for _, s := range outline {
		to := c.at(s.To)
		if s.Op == ink.Move || len(lines) == 0 {
			lines = append(lines, line{points: polygon{to}})
			continue
		}
		now := &lines[len(lines)-1]
		from := now.points[len(now.points)-1]
		switch {
		case s.Op == ink.Close:
			now.closed = true
		case s.Cubic:
			by, on := c.at(s.By), c.at(s.On)
			for i := 1; i <= curvePieces; i++ {
				now.points = append(now.points, cubic(from, by, on, to, i))
			}
		default:
			now.points = append(now.points, to)
		}
	}
	return lines
}

func (c *canvas) at(p ink.Point) point { return point{c.scale.of(p.X), c.scale.of(p.Y)} }

// cubic is the point of a cubic curve some pieces from its start.
func cubic(a, b, c, d point, i int) point {
	const n = curvePieces
	j := n - i
	mix := func(a, b, c, d int) int {
		return (a*j*j*j + 3*b*j*j*i + 3*c*j*i*i + d*i*i*i) / (n * n * n)
	}
	return point{mix(a.x, b.x, c.x, d.x), mix(a.y, b.y, c.y, d.y)}
}

// dashed cuts a line into its dashes. It is left whole if there are none.
func (l line) dashed(on, off int) []line {
	if on <= 0 || off <= 0 {
		return []line{l}
	}
	points := l.points
	if l.closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	var dashes []line
	drawn, left := true, on
	now := polygon{points[0]}
	for i := 1; i < len(points); i++ {
		from, to := points[i-1], points[i]
		length := distance(from, to)
		done := 0
		for length-done > left {
			done += left
			cut := point{from.x + (to.x-from.x)*done/length, from.y + (to.y-from.y)*done/length}
			if drawn {
				dashes = append(dashes, line{points: append(now, cut)})
			}
			now, drawn = polygon{cut}, !drawn
			left = map[bool]int{true: on, false: off}[drawn]
		}
		left -= length - done
		now = append(now, to)
	}
	if drawn && len(now) > 1 {
		dashes = append(dashes, line{points: now})
	}
	return dashes
}

// stroke is the area of a line of some width: a rectangle for each piece, and what closes
// the gap at each corner.
func (l line) stroke(width int) []polygon {
	points := l.points
	if l.closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	var areas []polygon
	var sides []point // from the middle of each piece to its right edge
	var starts []point
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		length := distance(a, b)
		if length == 0 {
			continue
		}
		n := point{-(b.y - a.y) * width / (2 * length), (b.x - a.x) * width / (2 * length)}
		areas = append(areas, polygon{{a.x - n.x, a.y - n.y}, {b.x - n.x, b.y - n.y}, {b.x + n.x, b.y + n.y}, {a.x + n.x, a.y + n.y}})
		sides, starts = append(sides, n), append(starts, a)
	}
	for i := range sides {
		switch {
		case i > 0:
			areas = append(areas, corner(starts[i], sides[i-1], sides[i], width)...)
		case l.closed:
			areas = append(areas, corner(starts[0], sides[len(sides)-1], sides[0], width)...)
		}
	}
	return areas
}

// corner closes the gap between two pieces: with a disc where the line turns sharply,
// else, as along a curve, with wedges that reach no farther than the pieces do.
func corner(at, before, after point, width int) []polygon {
	along, across := before.x*after.x+before.y*after.y, before.x*after.y-before.y*after.x
	switch {
	case 2*along < across || 2*along < -across:
		return []polygon{disc(at, width/2)}
	case across == 0:
		return nil
	case across < 0:
		before, after = after, before
	}
	return []polygon{
		{at, {at.x + before.x, at.y + before.y}, {at.x + after.x, at.y + after.y}},
		{at, {at.x - before.x, at.y - before.y}, {at.x - after.x, at.y - after.y}},
	}
}

// spokes are the cosines of the corners of a disc, from the right round by below, in
// thousandths: every 22.5 degrees.
var spokes = [...]int{1000, 924, 707, 383, 0, -383, -707, -924, -1000, -924, -707, -383, 0, 383, 707, 924}

// disc is a round corner.
func disc(at point, radius int) polygon {
	p := make(polygon, len(spokes))
	for i := range p {
		p[i] = point{at.x + radius*spokes[i]/1000, at.y + radius*spokes[(i+12)%16]/1000}
	}
	return p
}

// distance is the whole part of the distance of two points.
func distance(a, b point) int {
	dx, dy := b.x-a.x, b.y-a.y
	square := uint64(dx*dx + dy*dy)
	// Newton's method from above, which falls until it meets the root.
	root := uint64(1) << ((bits.Len64(square) + 1) / 2)
	for root > 0 {
		next := (root + square/root) / 2
		if next >= root {
			break
		}
		root = next
	}
	return int(root)
}
