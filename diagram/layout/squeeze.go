package layout

import "unicode/utf8"

// Blank rows and columns that stay where several followed each other.
const (
	blankRows    = 1
	blankColumns = 2
)

// Squeeze takes rows and columns out of a drawing in which nothing stands but the straight runs of
// wires and the frames of zones that cross them. Of several that follow each other one row or two columns stay. Pre:
// the drawing is one of the graph. Post: every wire has the corners, every box the size, and every label the room that
// it had; a legal drawing stays legal.
func Squeeze(g *Graph, d *Drawing) {
	rows, columns := busyLines(g, d)
	newY := shrunk(rows, blankRows)
	newX := shrunk(columns, blankColumns)
	move := func(p Point) Point { return Point{X: newX[p.X], Y: newY[p.Y]} }
	moveRect := func(r Rect) Rect {
		at, to := move(Point{X: r.X, Y: r.Y}), move(Point{X: r.Right(), Y: r.Bottom()})
		return Rect{X: at.X, Y: at.Y, W: to.X - at.X, H: to.Y - at.Y}
	}
	for i := range d.Zones {
		if d.Zones[i].Rect.W > 0 {
			d.Zones[i].Rect = moveRect(d.Zones[i].Rect)
		}
	}
	for i := range d.Boxes {
		d.Boxes[i].Rect = moveRect(d.Boxes[i].Rect)
		for k := range d.Boxes[i].Ports {
			d.Boxes[i].Ports[k].At = move(d.Boxes[i].Ports[k].At)
		}
	}
	for i := range d.Wires {
		for k, p := range d.Wires[i].Path {
			d.Wires[i].Path[k] = move(p)
		}
		if l := &d.Wires[i].Label; l.OK {
			l.At = move(l.At)
		}
	}
	d.W, d.H = newX[len(newX)-1], newY[len(newY)-1]
}

// busyLines marks the rows and columns that something stands in.
func busyLines(g *Graph, d *Drawing) (rows, columns []bool) {
	rows, columns = make([]bool, d.H), make([]bool, d.W)
	mark := func(lines []bool, from, to int) {
		for i := max(from, 0); i <= to && i < len(lines); i++ {
			lines[i] = true
		}
	}
	for _, b := range d.Boxes {
		mark(rows, b.Rect.Y, b.Rect.Bottom())
		mark(columns, b.Rect.X, b.Rect.Right())
	}
	for i, z := range d.Zones {
		if r := z.Rect; r.W > 0 {
			mark(rows, r.Y, r.Y)
			mark(rows, r.Bottom(), r.Bottom())
			mark(columns, r.X, r.X+titleStart+g.Zones[i].Title)
			mark(columns, r.Right(), r.Right())
		}
	}
	for i, w := range d.Wires {
		for _, p := range w.Path {
			mark(rows, p.Y, p.Y)
			mark(columns, p.X, p.X)
		}
		if w.Label.OK {
			length := utf8.RuneCountInString(g.Wires[i].Labels[w.Label.Index])
			mark(rows, w.Label.At.Y, w.Label.At.Y)
			mark(columns, w.Label.At.X-labelEnds/2, w.Label.At.X+length+labelEnds/2-1)
		}
	}
	return rows, columns
}

// titleStart is the cell of a zone's upper edge at which its title starts.
const titleStart = 3

// shrunk gives every line its new number, and after the last the count of lines that stay: of free lines that follow
// each other only the first few.
func shrunk(busy []bool, blanks int) []int {
	out := make([]int, len(busy)+1)
	free, next := 0, 0
	for i, b := range busy {
		free++
		if b {
			free = 0
		}
		out[i] = next
		if free <= blanks {
			next++
		}
	}
	out[len(busy)] = next
	return out
}
