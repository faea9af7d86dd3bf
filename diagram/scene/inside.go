package scene

import "strings"

// Writing is a piece of text in or on the frame of a box.
type Writing struct {
	At   Point
	Text string
	Role WritingRole
	Port int // index of the port that it belongs to; -1 if none
}

// WritingRole is what a piece of writing in a box is.
type WritingRole uint8

// The roles of writing.
const (
	Head     WritingRole = iota // designator
	MarkSign                    // marks behind the designator
	PartName                    // what the part is
	PortName                    // name of a terminal
	SeatNo                      // position on a stud
	WorkWord                    // what the part does in the state that is shown
)

// Bracket ties the positions of one stud together: a line inside the box along the
// positions, with an arm to each of them and one to the name at Join.
type Bracket struct {
	Side     Side
	From, To Point   // first and last cell, top to bottom or left to right
	Arms     []Point // cells of the line that a position stands beside
	Join     Point   // cell of the line that the name stands beside
	Embedded bool    // the name stands in the line itself
	Port     int     // index of a port of the stud
}

// Layout is the writing of one box, arranged.
type Layout struct {
	Writings []Writing
	Brackets []Bracket
	Unsaid   bool     // there was no room for what the part does
	Symbol   Rect     // room for the symbol, 7 x 3 or 7 x 2 cells or one row of 7, 5 or 3; zero if there is none
	Lost     []string // what found no room, or lies on other writing
}

// Inside arranges what is written in a box: the designator and name in the upper
// frame line, each terminal's name beside its port, the positions of a stud beside
// their ports with one bracket and one name, and the symbol in what room is left.
func Inside(b Box) Layout {
	a := arrangement{box: b, used: newCells(b.Rect)}
	for i, p := range b.Ports {
		a.used.take(p.At)
		if i == 0 || !sameStud(b.Ports[i-1], p) {
			a.port(i, studLength(b.Ports[i:]))
		}
	}
	a.title()
	a.symbol()
	a.word()
	return a.Layout
}

// sameStud reports whether two ports that follow each other are positions of one stud.
func sameStud(p, q Port) bool { return p.Stud != "" && p.Stud == q.Stud && p.Side == q.Side }

func studLength(ports []Port) int {
	n := 1
	for n < len(ports) && sameStud(ports[n-1], ports[n]) {
		n++
	}
	return n
}

type arrangement struct {
	Layout
	box  Box
	used cells // with writing in them
}

// port writes the names and positions of n ports from index i, all of one stud if
// there are several.
func (a *arrangement) port(i, n int) {
	ports := a.box.Ports[i : i+n]
	name := Clean(ports[0].Name)
	depth := 1 // cells from the frame to the name
	for k, p := range ports {
		if p.Seat > 0 {
			a.write(inward(p, 1), digit(p.Seat), SeatNo, i+k)
			depth = 2
		}
	}
	if n == 1 {
		if level := ports[0].Side == East || ports[0].Side == West; level && depth > 1 {
			depth++ // so that terminal + in position 1 is not read as +1
		}
		a.name(inward(ports[0], depth), name, ports[0].Side, i)
		return
	}
	br := Bracket{Side: ports[0].Side, Port: i}
	for _, p := range ports {
		br.Arms = append(br.Arms, inward(p, depth))
	}
	br.From, br.To = ends(br.Arms)
	br.Join = Point{(br.From.X + br.To.X) / 2, (br.From.Y + br.To.Y) / 2}
	level := br.Side == North || br.Side == South
	br.Embedded = level && br.To.X-br.From.X-1 >= Width(name)
	if br.Embedded {
		a.name(br.Join, name, br.Side, i)
	} else {
		join := ports[0]
		join.At = br.Join
		a.name(inward(join, 1), name, br.Side, i)
	}
	for _, c := range Cells([]Point{br.From, br.To}) {
		a.claim(c, "bracket of "+name, br.Embedded)
	}
	a.Brackets = append(a.Brackets, br)
}

// ends finds the first and last of cells in one line.
func ends(cells []Point) (first, last Point) {
	first, last = cells[0], cells[0]
	for _, c := range cells {
		if c.X < first.X || c.Y < first.Y {
			first = c
		}
		if c.X > last.X || c.Y > last.Y {
			last = c
		}
	}
	return first, last
}

func inward(p Port, cells int) Point {
	dx, dy := p.Side.Step()
	return p.At.Add(-dx*cells, -dy*cells)
}

func digit(n int) string {
	if n > 9 {
		return "*"
	}
	return string(rune('0' + n))
}

// name writes a terminal's name so that it begins, ends or is centred at a cell,
// pushed into the box where it would stick out.
func (a *arrangement) name(at Point, name string, side Side, port int) {
	switch w := Width(name); side {
	case East:
		at.X -= w - 1
	case North, South:
		at.X -= (w - 1) / 2
		at.X = max(a.box.Rect.X+1, min(at.X, a.box.Rect.Right()-w))
	}
	a.write(at, name, PortName, port)
}

func (a *arrangement) write(at Point, text string, role WritingRole, port int) {
	if text == "" {
		return
	}
	for i := range Width(text) {
		a.claim(at.Add(i, 0), text, false)
	}
	a.Writings = append(a.Writings, Writing{At: at, Text: text, Role: role, Port: port})
}

// claim marks an inner cell as used and records a loss if it is not free.
func (a *arrangement) claim(c Point, text string, shared bool) {
	r := a.box.Rect
	inner := r.Contains(c) && !r.OnFrame(c)
	if (!inner || a.used.has(c) && !shared) && (len(a.Lost) == 0 || a.Lost[len(a.Lost)-1] != text) {
		a.Lost = append(a.Lost, text)
	}
	a.used.take(c)
}

// signed is what stands before a designator: the sign of a change and a blank.
func signed(c Change) string {
	if c.Sign() == "" {
		return ""
	}
	return c.Sign() + " "
}

// title puts the designator and the name into the upper frame line. Where that is
// too short the name goes to rows of its own, to the lower frame line or between the
// terminals' names, or it is shortened; the designator is never shortened.
func (a *arrangement) title() {
	head := Clean(signed(a.box.Change) + a.box.ID + strings.Join(a.box.Marks, ""))
	name := Clean(a.box.Name)
	upper, lower := a.box.Rect.Y, a.box.Rect.Bottom()
	_, room := a.frameRun(upper)
	_, below := a.frameRun(lower)
	y, spare := upper, room-Width(head)-3
	switch {
	case Width(head) > room && Width(head) > below:
		if !a.inner(head, Head, true) {
			a.Lost = append(a.Lost, head)
		}
		a.inner(name, PartName, true)
		return
	case Width(head) > room:
		y, spare = lower, below-Width(head)-3
	}
	switch {
	case name == "" || Width(name) <= spare:
	case a.inner(name, PartName, false):
		name = ""
	case y == upper && Width(name)+2 <= below:
		a.onFrame(lower, "", name)
		name = ""
	case a.inner(name, PartName, true) || spare < shortestName:
		name = ""
	default:
		name = Shorten(name, spare)
	}
	a.onFrame(y, head, name)
}

// shortestName is the fewest cells of a shortened name that still help a reader.
const shortestName = 4

// frameRun finds the longest run of frame cells without a port in an upper or lower
// frame line, corners left out.
func (a *arrangement) frameRun(y int) (start, length int) {
	run := 0
	for x := a.box.Rect.X + 1; x < a.box.Rect.Right(); x++ {
		if run++; a.used.has(Point{x, y}) {
			run = 0
		}
		if run > length {
			start, length = x-run+1, run
		}
	}
	return start, length
}

// onFrame writes into a frame line, with a blank before and after if there is room.
func (a *arrangement) onFrame(y int, head, name string) {
	x, room := a.frameRun(y)
	marks := Clean(strings.Join(a.box.Marks, ""))
	var pieces []Writing
	if head != "" {
		pieces = []Writing{{Text: strings.TrimSuffix(head, marks), Role: Head}, {Text: marks, Role: MarkSign}}
	}
	width := Width(head)
	if head != "" && name != "" {
		name = " " + name
	}
	pieces = append(pieces, Writing{Text: name, Role: PartName})
	width += Width(name)
	if width+2 <= room {
		pieces = append(append([]Writing{{Text: " "}}, pieces...), Writing{Text: " "})
	}
	for _, w := range pieces {
		if w.Text != "" {
			w.At, w.Port = Point{x, y}, -1
			a.Writings = append(a.Writings, w)
			for range Width(w.Text) {
				a.used.take(Point{x, y})
				x++
			}
		}
	}
}
