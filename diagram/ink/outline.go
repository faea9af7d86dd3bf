package ink

import "unicode/utf8"

// Fine is the number of steps in a unit that outlines are counted in.
const Fine = 100

// Curve is one piece of an outline, in hundredths of a unit: a Move, a straight Draw, a
// cubic curve if Cubic, or a Close.
type Curve struct {
	Op     Op
	Cubic  bool
	By, On Point // control points of a cubic curve
	To     Point
}

// Outline is what a mark draws along, in straight lines and cubic curves alone. It is
// empty for letters.
func (m Mark) Outline() []Curve {
	switch m.Shape {
	case Line:
		return lower(m.Path)
	case Rect:
		return lower(rectPath(m))
	case Circle:
		return lower(circlePath(m.At, m.R))
	case Dots:
		var path []Step
		for _, p := range m.Dots {
			path = append(path, circlePath(p, m.R)...)
		}
		return lower(path)
	default:
		return nil
	}
}

func circlePath(at Point, r int) []Step {
	return []Step{move(at.X-r, at.Y), {Op: Half, To: Point{at.X + r, at.Y}}, {Op: Half, To: Point{at.X - r, at.Y}}, closed()}
}

func rectPath(m Mark) []Step {
	left, top, right, bottom, r := m.At.X, m.At.Y, m.At.X+m.W, m.At.Y+m.H, m.R
	if r == 0 {
		return append(straight(left, top, right, top, right, bottom, left, bottom), closed())
	}
	corner := func(x, y, toX, toY int) Step { return Step{Op: Quad, By: Point{x, y}, To: Point{toX, toY}} }
	return []Step{
		move(left+r, top), draw(right-r, top), corner(right, top, right, top+r),
		draw(right, bottom-r), corner(right, bottom, right-r, bottom),
		draw(left+r, bottom), corner(left, bottom, left, bottom-r),
		draw(left, top+r), corner(left, top, left+r, top), closed(),
	}
}

// lower turns steps into straight lines and cubic curves.
func lower(path []Step) []Curve {
	var out []Curve
	var at, start Point
	for _, s := range path {
		to := s.To.fine()
		switch s.Op {
		case Quad:
			by := s.By.fine()
			out = append(out, Curve{Op: Draw, Cubic: true, By: at.toward(by, 2, 3), On: to.toward(by, 2, 3), To: to})
		case Half:
			middle, top := bulge(at, to)
			out = append(out, quarter(at, top, middle), quarter(top, to, middle))
		case Close:
			out, to = append(out, Curve{Op: Close}), start
		case Move:
			out, start = append(out, Curve{Op: Move, To: to}), to
		default:
			out = append(out, Curve{Op: Draw, To: to})
		}
		at = to
	}
	return out
}

func (p Point) fine() Point { return Point{p.X * Fine, p.Y * Fine} }

// toward is the point some part of the way from one point to another.
func (p Point) toward(q Point, part, of int) Point {
	return Point{p.X + (q.X-p.X)*part/of, p.Y + (q.Y-p.Y)*part/of}
}

// bulge is the centre of a half circle drawn clockwise, and its farthest point.
func bulge(a, b Point) (middle, top Point) {
	middle = a.toward(b, 1, 2)
	return middle, Point{middle.X + (b.Y-a.Y)/2, middle.Y - (b.X-a.X)/2}
}

// quarter is a quarter of a circle about a centre. The control points of the cubic curve
// that comes nearest to it lie 0.5523 of the radius from its ends.
func quarter(from, to, about Point) Curve {
	const part, of = 5523, 10000
	along := func(p, way Point) Point {
		return Point{p.X + (way.X-about.X)*part/of, p.Y + (way.Y-about.Y)*part/of}
	}
	return Curve{Op: Draw, Cubic: true, By: along(from, to), On: along(to, from), To: to}
}

// advance is that of letters in thousandths of their em, as common monospaced fonts have it.
const advance = 600

// Letters is where the foot of a text's first letter stands, and its em, in hundredths of
// a unit. Letters that fill cells are as wide as these.
func (m Mark) Letters() (at Point, em int) {
	at, em = m.At.fine(), CellW*Fine*1000/advance
	if m.Pen.Size > 0 {
		em = m.Pen.Size * Fine
	}
	at.Y += Baseline * em * 10 / Em
	if m.Cells == 0 {
		at.X -= utf8.RuneCountInString(m.Text) * em * advance / 1000 / 2
	}
	return at, em
}
