package png

import (
	"image"
	"image/color"

	"golang.org/x/image/vector"
)

// sub is the number of steps in a pixel that places are counted in.
const sub = 256

// point is a place in steps of a pixel, y downwards.
type point struct{ x, y int }

// polygon is a closed outline.
type polygon []point

// ratio is a fraction that lengths are multiplied by.
type ratio struct{ by, over int }

// of is a length in steps, rounded to the nearest.
func (r ratio) of(n int) int {
	if n < 0 {
		return -r.of(-n)
	}
	return (n*r.by + r.over/2) / r.over
}

// bounds are the pixels that a polygon touches.
func (p polygon) bounds() image.Rectangle {
	r := image.Rect(p[0].x, p[0].y, p[0].x, p[0].y)
	for _, q := range p {
		r.Min.X, r.Min.Y = min(r.Min.X, q.x), min(r.Min.Y, q.y)
		r.Max.X, r.Max.Y = max(r.Max.X, q.x), max(r.Max.Y, q.y)
	}
	return image.Rect(r.Min.X>>8, r.Min.Y>>8, r.Max.X>>8+1, r.Max.Y>>8+1)
}

// tile is the side of the squares that areas are painted in: small enough that most of
// what a long wire's box holds is never looked at.
const tile = 64

// fill paints areas in one colour. Where areas of one sense of rotation overlap they
// count once; an area of the contrary sense within another is a hole in it.
func (c *canvas) fill(areas []polygon, with color.RGBA) {
	if len(areas) == 0 {
		return
	}
	boxes := make([]image.Rectangle, len(areas))
	var all image.Rectangle
	for i, a := range areas {
		boxes[i] = a.bounds()
		all = all.Union(boxes[i])
	}
	all = all.Intersect(c.picture.Rect)
	source := image.NewUniform(with)
	for y := all.Min.Y; y < all.Max.Y; y += tile {
		for x := all.Min.X; x < all.Max.X; x += tile {
			at := image.Rect(x, y, x+tile, y+tile).Intersect(all)
			touched := false
			for i, a := range areas {
				if !boxes[i].Overlaps(at) {
					continue
				}
				if !touched {
					c.raster.Reset(at.Dx(), at.Dy())
					touched = true
				}
				trace(&c.raster, a, at.Min)
			}
			if touched {
				c.raster.Draw(c.picture, at, source, image.Point{})
			}
		}
	}
}

// trace adds an area to a tile.
func trace(r *vector.Rasterizer, p polygon, from image.Point) {
	at := func(q point) (x, y float32) {
		return float32(q.x-from.X*sub) / sub, float32(q.y-from.Y*sub) / sub
	}
	r.MoveTo(at(p[0]))
	for _, q := range p[1:] {
		r.LineTo(at(q))
	}
	r.ClosePath()
}
