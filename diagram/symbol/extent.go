package symbol

// Extent is the box around the strokes: its upper left and lower right corner. Leads at
// the edges of the field count, the height of letters does not.
func (s Symbol) Extent() (from, to Point) {
	from, to = Point{W, H}, Point{}
	take := func(x, y int) {
		from.X, from.Y = min(from.X, x), min(from.Y, y)
		to.X, to.Y = max(to.X, x), max(to.Y, y)
	}
	for _, stroke := range s.Strokes {
		for i, p := range stroke.Points {
			take(p.X-stroke.Radius, p.Y-stroke.Radius)
			take(p.X+stroke.Radius, p.Y+stroke.Radius)
			if stroke.Op == Arcs && i > 0 {
				top := Bulge(stroke.Points[i-1], p)
				take(top.X, top.Y)
			}
		}
	}
	return from, to
}

// Bulge is the point of a half circle, drawn clockwise, that lies farthest from the line
// between its ends. The ends lie level or upright, an even number of units apart.
func Bulge(a, b Point) Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	return Point{(a.X+b.X)/2 + dy/2, (a.Y+b.Y)/2 - dx/2}
}
