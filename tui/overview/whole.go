package overview

import (
	"cmp"
	"slices"

	"example.com/lugbook/diagram/scene"
)

// Whole is a sheet on one screen: the parts by their designators, each about where it lies on
// the drawing, and one line for all the wires between two parts. A line begins and ends at the
// two parts that its wires join; lines cross at right angles and never meet.
type Whole struct {
	Page scene.Page

	Starred bool // there is no room for all lines: none are drawn but those of a chosen part
	Loose   int  // wires with an end on no part: they have no line
	Dots    int  // parts without room for their designators
	Hidden  int  // parts without room at all

	large *scene.Page
	seats *mosaic
	pairs []pair
}

// Dot stands for a part whose designator has no room.
const Dot = '#'

// Fit puts a page on a screen.
func Fit(p *scene.Page, columns, rows int) Whole {
	out := Whole{large: p, seats: seat(p, columns, rows), Page: scene.Page{W: columns, H: rows, Title: p.Title, State: p.State}}
	for _, t := range out.seats.tokens {
		if t.w > 0 {
			piece := scene.Write(t.at, t.text)
			piece.Of = scene.Ref{Kind: scene.BoxKind, ID: p.Boxes[t.box].ID}
			piece.Strong = true
			out.Page.Pieces = append(out.Page.Pieces, piece)
		}
		switch {
		case t.w == 0:
			out.Hidden++
		case t.text == string(Dot):
			out.Dots++
		}
	}
	out.pairs, out.Loose = pairsOf(p)
	if out.Page.Wires = out.seats.lines(out.pairs); len(out.Page.Wires) < len(out.pairs) {
		out.Starred, out.Page.Wires = true, nil
	}
	return out
}

// Of is the same with the lines of a part, if there is no room for all lines. left is how many
// of them find no room even so.
func (w *Whole) Of(part string) (page scene.Page, left int) {
	page = w.Page
	if !w.Starred {
		return page, 0
	}
	own := slices.DeleteFunc(slices.Clone(w.pairs), func(q pair) bool {
		return w.large.Boxes[q.a].ID != part && w.large.Boxes[q.b].ID != part
	})
	page.Wires = w.seats.lines(own)
	return page, len(own) - len(page.Wires)
}

// pair is two boxes with the wires between them.
type pair struct {
	a, b  int
	wires []scene.Wire
}

// pairsOf lists the pairs of boxes that wires join, in the order of their first wires, and
// counts the wires that end on no box.
func pairsOf(p *scene.Page) (pairs []pair, loose int) {
	at := map[scene.Point]int{}
	for i, b := range p.Boxes {
		for _, port := range b.Ports {
			at[port.At] = i
		}
	}
	index := map[[2]int]int{}
	for _, w := range p.Wires {
		if len(w.Path) == 0 {
			continue
		}
		a, onA := at[w.Path[0]]
		b, onB := at[w.Path[len(w.Path)-1]]
		if !onA || !onB {
			loose++
			continue
		}
		key := [2]int{min(a, b), max(a, b)}
		k, known := index[key]
		if !known {
			k = len(pairs)
			index[key] = k
			pairs = append(pairs, pair{a: key[0], b: key[1]})
		}
		pairs[k].wires = append(pairs[k].wires, w)
	}
	return slices.DeleteFunc(pairs, func(q pair) bool { return q.a == q.b }), loose
}

// Rect is where a rectangle of the large page lies on the screen.
func (w *Whole) Rect(r scene.Rect) scene.Rect {
	x, y := scaled(r.X, w.large.W, w.Page.W), scaled(r.Y, w.large.H, w.Page.H)
	right, bottom := scaled(r.Right(), w.large.W, w.Page.W), scaled(r.Bottom(), w.large.H, w.Page.H)
	return scene.Rect{X: x, Y: y, W: right - x + 1, H: bottom - y + 1}
}

// scaled is where a column or row of so many lies among fewer.
func scaled(at, of, among int) int { return max(0, min(at*among/max(1, of), among-1)) }

// token stands for a box.
type token struct {
	box  int
	at   scene.Point
	w    int // 0 if it has no room
	text string
}

func (t token) middle() scene.Point { return t.at.Add(t.w/2, 0) }

// mosaic is the screen with its tokens, in the order of the boxes.
type mosaic struct {
	w, h   int
	tokens []token
	cells  []bool // that a token takes
}

// seat finds a place for every box: its designator in brackets, with a blank on either side,
// as near as can be to where the box lies; else a dot.
func seat(p *scene.Page, w, h int) *mosaic {
	m := &mosaic{w: w, h: h, tokens: make([]token, len(p.Boxes)), cells: make([]bool, w*h)}
	order := make([]int, len(p.Boxes))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		r, q := p.Boxes[a].Rect, p.Boxes[b].Rect
		return cmp.Or(cmp.Compare(r.Y, q.Y), cmp.Compare(r.X, q.X), cmp.Compare(a, b))
	})
	for _, i := range order {
		b := p.Boxes[i]
		middle := scene.Point{X: scaled(b.Rect.X+b.Rect.W/2, p.W, w), Y: scaled(b.Rect.Y+b.Rect.H/2, p.H, h)}
		m.tokens[i] = token{box: i}
		for _, text := range []string{"[" + scene.Clean(b.ID) + "]", string(Dot)} {
			if at, room := m.nearest(middle, scene.Width(text)); room {
				m.tokens[i] = token{i, at, scene.Width(text), text}
				for x := range scene.Width(text) {
					m.cells[at.Y*w+at.X+x] = true
				}
				break
			}
		}
	}
	return m
}

// crowding is what it costs a token to lie right below or above another, in columns: lines
// want to pass there.
const crowding = 3

// nearest finds the nearest place for a token of some width with its middle about a cell.
func (m *mosaic) nearest(middle scene.Point, width int) (best scene.Point, room bool) {
	least := 0
	for y := range m.h {
		for x := 0; x+width <= m.w; x++ {
			if m.taken(x-1, y, width+2) {
				continue
			}
			cost := abs(x+width/2-middle.X) + 2*abs(y-middle.Y)
			if m.taken(x, y-1, width) || m.taken(x, y+1, width) {
				cost += crowding
			}
			if !room || cost < least {
				best, least, room = scene.Point{X: x, Y: y}, cost, true
			}
		}
	}
	return best, room
}

// taken reports whether a token lies in any of some cells of a row.
func (m *mosaic) taken(x, y, width int) bool {
	if y < 0 || y >= m.h {
		return false
	}
	return slices.Contains(m.cells[y*m.w+max(x, 0):y*m.w+min(x+width, m.w)], true)
}

func abs(n int) int { return max(n, -n) }
