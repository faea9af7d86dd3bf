package scene

// Page is one drawn page.
type Page struct {
	W, H   int // size of the drawing in cells, title block not included
	Title  TitleBlock
	Zones  []Zone
	Boxes  []Box
	Wires  []Wire
	Flags  []Flag
	Pieces []Piece  // marks that stand by themselves
	Legend []string // lines for the legend besides those that follow from the drawing
	State  string   // name of the state that is painted; empty if none is
	Table  Table    // a list that stands below the drawing; may be empty
	Paper  Paper    // the paper that the page is made for; zero for none in particular
}

// Paper is a sheet of paper as it lies: landscape if it is wider than high.
type Paper struct {
	Name              string // A4, Letter
	WidthMM, HeightMM float64
}

// TitleBlock says what the page shows.
type TitleBlock struct {
	Job, Sheet, System string
	View               string // the kind of drawing if it is not the whole wiring: stud cards
	Date, Revision     string
	Page, Pages        int
	Shown              string   // the state it is drawn in: key OFF, pedal up, pack disconnected
	Notes              []string // one line each
}

// Zone is a place on the cart that holds boxes: a dashed frame with a name.
type Zone struct {
	ID, Name string
	Rect     Rect
}

// Box is a part.
type Box struct {
	ID     string // designator: sol
	Name   string // what it is: main contactor
	Rect   Rect
	Symbol string   // name of a standard symbol; may be empty
	Marks  []string // short signs such as ! or ?
	Change Change
	Works  Working // in the state that the page shows
	Title  string  // long text for a painter that can show it on demand
	Ports  []Port
}

// Port is a place on a box's frame where one wire may end.
type Port struct {
	ID   string // terminal: L1; the same for all positions of one stud
	Name string // what is written inside the box; usually the ID
	At   Point
	Side Side
	Seat int    // position on the stud from the seat outwards, 1 is on the seat; 0 = not a stud
	Stud string // name of the stud; empty if the port is not a position of one
}

// Terminal is the name that the port goes by in part.terminal.
func (p Port) Terminal() string {
	if p.Stud != "" {
		return p.Stud
	}
	return p.ID
}

// Weight is the class of a wire, shown as line weight.
type Weight uint8

// The weights.
const (
	Control Weight = iota
	Power
	Traction
	Mains
	Trunk // a run of the harness with all the wires in it
)

// Change tells what became of a thing from one sheet to another.
type Change uint8

// The changes.
const (
	NoChange Change = iota // no comparison, or unchanged in one that shows only changes
	Kept
	Removed
	Added
	Changed
	Moved
)

// Wire is one conductor.
type Wire struct {
	ID       string
	Path     []Point // orthogonal, from port cell to port cell, both included
	Weight   Weight
	Colour   string // insulation after IEC 60757: RD, or body/stripe RD/WH; may be empty
	Label    Label
	Title    string // long text: 12 · 6 AWG · red with white stripe · sol.L1 to ctrl.B+
	From, To string // part.terminal of the path's first and last cell, or the ID of a flag
	Change   Change
	Flow     Flow // in the state that the page shows
}

// Label is a wire's short text. It is always level and lies in its own row: on a
// level run it takes the place of the wire's own line, beside an upright run it
// stands free.
type Label struct {
	Text     string
	At       Point // cell of the first letter
	Vertical bool  // the run that it names is upright
}

// FlagKind is what a flag stands for.
type FlagKind uint8

// The kinds of flag.
const (
	OffPage  FlagKind = iota // the wire goes on elsewhere: text such as w12 dash page 2
	Cut                      // cut end
	Capped                   // insulated end
	Untraced                 // not followed further
)

// Flag ends a wire without a part: one row of cells, the mark in its port cell and
// the text in the others. The port cell is the first or the last of the row.
type Flag struct {
	ID   string
	Kind FlagKind
	Text string
	Rect Rect // one row
	Port Port
}

// Kind tells what a Ref refers to.
type Kind uint8

// The kinds of thing on a page.
const (
	Nothing Kind = iota
	ZoneKind
	BoxKind
	PortKind
	WireKind
	LabelKind
	FlagRef
)

// Ref names a thing on a page.
type Ref struct {
	Kind Kind
	ID   string // zone, part, wire or flag; for a label its wire, for a port its part
	Port string // terminal, for a port
	Seat int    // position on the stud, for a port on one
}
