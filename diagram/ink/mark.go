package ink

import "example.com/lugbook/diagram/scene"

// Units of a cell.
const (
	CellW = 16
	CellH = 32
)

// Sheet is a page set on paper.
type Sheet struct {
	Paper   scene.Paper // as it lies
	Unit    int         // size of a unit on it, in nanometres
	W, H    int         // units that the paper holds, fractions dropped
	Heading string      // what the sheet shows, in one line
	About   string      // what it holds, in sentences
	Groups  []Group     // in the order of drawing
}

// Group is what belongs to one thing on the page.
type Group struct {
	Kind  GroupKind
	ID    string // of the part, wire, zone or flag; empty for what is none
	Title string // everything about it, for a painter that can show it on demand
	Marks []Mark // in the order of drawing
}

// GroupKind is what a group draws.
type GroupKind uint8

// The kinds of group.
const (
	Ground GroupKind = iota // paper, frame of the sheet, bands under live wires
	ZoneGroup
	WireGroup
	PartGroup
	FlagGroup
	PieceGroup
	BlockGroup // title block and legend
)

// Point is a place in units, y downwards.
type Point struct{ X, Y int }

// Mark is one stroke of a pen, or one text.
type Mark struct {
	Shape Shape
	Pen   Pen
	Path  []Step  // of a Line
	Dots  []Point // of Dots
	At    Point   // of a Rect its upper left corner, of a Circle its centre, of Letters the left end of the row's middle
	W, H  int     // of a Rect
	R     int     // of a Circle, of Dots, and of the corners of a Rect
	Text  string  // of Letters
	Cells int     // of Letters: the cells that they fill; 0 if they are centred on At
}

// Shape is what a mark draws.
type Shape uint8

// The shapes.
const (
	Line    Shape = iota // along Path
	Rect                 // with round corners if R is not 0
	Circle               // of radius R
	Dots                 // filled circles of radius R
	Letters              // Text
)

// Step is one piece of a path.
type Step struct {
	Op Op
	To Point
	By Point // control point of a Quad
}

// Op is what a step does.
type Op uint8

// The steps.
const (
	Move  Op = iota
	Draw     // a straight line
	Quad     // a quadratic curve by its control point
	Half     // a half circle, clockwise
	Close    // back to where the path began
)

func move(x, y int) Step { return Step{Op: Move, To: Point{x, y}} }
func draw(x, y int) Step { return Step{Op: Draw, To: Point{x, y}} }
func closed() Step       { return Step{Op: Close} }

// straight is a path of straight lines through points given as x, y, x, y.
func straight(xy ...int) []Step {
	path := []Step{move(xy[0], xy[1])}
	for i := 2; i+1 < len(xy); i += 2 {
		path = append(path, draw(xy[i], xy[i+1]))
	}
	return path
}
