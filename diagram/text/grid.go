package text

import (
	"unicode/utf8"

	"example.com/lugbook/diagram/scene"
)

// Role is what a cell shows.
type Role uint8

// The roles of cells.
const (
	Blank Role = iota
	ZoneFrame
	ZoneName
	BoxFrame
	BoxHead // designator
	BoxMark // signs behind the designator
	BoxName
	PortJoin // where a terminal sits in the frame
	PortName
	SeatNo // position on a stud
	SeatBracket
	WorkWord // what the part does in the state that is shown
	Symbol
	WireLine
	WireLabel
	WireFigure // volts or amperes in the state that is shown
	FlowArrow  // the way of the current
	ChangeMark // what became of a part or a wire
	FlagMark
	FlagText
	Writing       // of a list or a card
	StrongWriting // its head
	CardFrame     // frame of a card, or a rule
	StackPart     // lug, nut or seat, seen from the side
	Heading       // title block
	Legend
)

// Cell is one character with what it stands for.
type Cell struct {
	Rune   rune // 0 is a blank
	Role   Role
	Weight scene.Weight // of the wire, for wires and the terminals that they end on
	Colour string       // IEC 60757 code of the wire, likewise
	Change scene.Change // of the part or wire
	Energy scene.Energy // of the wire, likewise, in the state that is shown
	Flows  bool         // the wire carries current in it
	Active bool         // the part departs from rest in it, for its word
	Owner  scene.Ref
}

// Grid is a painted page. The drawing takes the upper left corner, cell for cell as
// in the page; title block and legend follow below.
type Grid struct {
	W, H  int
	cells []painted
	looks []Cell // what cells have in common but their letters; the first is that of blank cells
}

// painted is a letter and its look.
type painted struct {
	rune rune
	look int32
}

func newGrid(w, h int) *Grid {
	return &Grid{W: max(w, 0), H: max(h, 0), cells: make([]painted, max(w, 0)*max(h, 0)), looks: make([]Cell, 1)}
}

// At is the cell in column x and row y; the zero cell outside of the grid.
func (g *Grid) At(x, y int) Cell {
	if x < 0 || y < 0 || x >= g.W || y >= g.H {
		return Cell{}
	}
	at := g.cells[y*g.W+x]
	c := g.looks[at.look]
	c.Rune = at.rune
	return c
}

func (g *Grid) put(at scene.Point, c Cell) {
	if at.X < 0 || at.Y < 0 || at.X >= g.W || at.Y >= g.H {
		return
	}
	letter := c.Rune
	c.Rune = 0
	last := len(g.looks) - 1
	if g.looks[last] != c {
		g.looks = append(g.looks, c)
		last++
	}
	g.cells[at.Y*g.W+at.X] = painted{letter, int32(last)}
}

// write puts a text into cells, each like the given one.
func (g *Grid) write(at scene.Point, text string, like Cell) {
	for _, r := range text {
		like.Rune = r
		g.put(at, like)
		at.X++
	}
}

// String is the grid in plain text: rows without trailing blanks, each ended by a
// newline, and no control characters.
func (g *Grid) String() string {
	out := make([]byte, 0, len(g.cells)+g.H)
	for y := range g.H {
		end := len(out)
		for _, c := range g.cells[y*g.W : (y+1)*g.W] {
			if c.rune == 0 || c.rune == ' ' {
				out = append(out, ' ')
				continue
			}
			out = utf8.AppendRune(out, c.rune)
			end = len(out)
		}
		out = append(out[:end], '\n')
	}
	return string(out)
}
