// Package layout places the boxes of a diagram on an integer grid and routes its wires.
//
// It knows boxes, ports, zones and wires and nothing of what they stand for. One unit is one text column or one text
// row; a coordinate names the centre of a cell. A box covers x..x+w by y..y+h with its border; a port is a cell of
// that border. Wires run level and upright only, cross at right angles only, and never lie on each other beyond the
// first cells before a port they share. Equal input gives equal output on every machine.
package layout

import (
	"example.com/lugbook/diagram/layout/geom"
	"example.com/lugbook/diagram/layout/route"
)

// Point is a cell of the grid.
type Point = geom.Point

// Rect covers the cells X..X+W by Y..Y+H.
type Rect = geom.Rect

// Side names an edge of a box.
type Side = geom.Side

// Sides is a set of sides.
type Sides = geom.Sides

// The four sides.
const (
	North = geom.North
	East  = geom.East
	South = geom.South
	West  = geom.West
)

// AnySide allows all four sides.
const AnySide = geom.AnySide

// SidesOf builds a set of sides.
func SidesOf(sides ...Side) Sides { return geom.Of(sides...) }

// Graph is what is to be drawn.
type Graph struct {
	Zones []Zone
	Boxes []Box
	Wires []Wire
}

// Zone is a named part of the drawing with a frame of its own.
type Zone struct {
	ID string
	// Title is the number of cells that its title takes in the top edge of the frame, from the third cell on. No
	// wire crosses them.
	Title int
}

// Box is a rectangle with ports.
type Box struct {
	ID string
	// Zone is the id of its zone, "" for none.
	Zone string
	// W and H are the least size; a box grows to hold its ports. H = 0 is a flag of one row.
	W, H int
	// Head is the first row, counted from the top edge, that a free port may take; 0 means Options.Pitch. A box of
	// H = 0 always starts in its only row.
	Head int
	// Ordered keeps the groups of each face in the order given, or those of both faces in its reverse.
	Ordered bool
	Ports   []Port
	// Pin is the top-left corner of a box that a person placed: it does not move.
	Pin *Point
}

// Port is a place where wires end.
type Port struct {
	ID string
	// Group is equal for ports that must stay side by side, in the order given or its reverse; "" for none.
	Group string
	// Face is 1 or 2 for ports that sit on two opposite sides of the box, whichever; 0 for a port that is free.
	Face int
	// Sides it may sit on; a fixed port takes the only one.
	Sides Sides
	// Offset from the left (north, south) or top (east, west) of the box, or -1 when it may be chosen.
	Offset int
}

// PortRef names a port of a box.
type PortRef struct{ Box, Port string }

// Wire joins two ports.
type Wire struct {
	ID       string
	From, To PortRef
	// Onward wires are drawn from left to right, From before To, where nothing speaks against it.
	Onward bool
	// Labels are the texts that may stand on it, best first; one of them is chosen.
	Labels []string
}

// Effort is how much work to spend.
type Effort int

// Draft is for while a person waits, Full for a drawing to keep.
const (
	Draft Effort = iota
	Full
)

// Options are the measures of the page and the effort.
type Options struct {
	// ColumnCost and RowCost price one step; 0 means 1. As text a row is about two columns high.
	ColumnCost, RowCost int
	// MaxWidth is the number of columns of the page; 0 for any.
	MaxWidth int
	// Pitch is the number of rows from port to port, 0 means 2; Span the number of columns, 0 means 4.
	Pitch, Span int
	// GapX and GapY are the least distances of two boxes; 0 means 2 and 2.
	GapX, GapY int
	// Effort chooses the number of moves and of starts.
	Effort Effort
	// Moves and Seeds, if not 0, replace what Effort gives.
	Moves, Seeds int
	// Previous is a drawing of about the same graph: boxes in it keep their places and, where possible, wires their
	// paths.
	Previous *Drawing

	cross int // price of a crossing, if it is higher than usual
}

// Drawing is the result. All lists are in the order of the graph.
type Drawing struct {
	// W and H are the number of columns and rows; all coordinates are below them.
	W, H  int
	Zones []ZoneAt
	Boxes []BoxAt
	Wires []WireAt
}

// ZoneAt is the frame of a zone; its edges are part of it. A zone without boxes has none (W = 0).
type ZoneAt struct {
	ID   string
	Rect Rect
}

// BoxAt is a placed box.
type BoxAt struct {
	ID    string
	Rect  Rect
	Ports []PortAt
}

// PortAt is a placed port: a cell on the box's border and the side on which wires leave.
type PortAt struct {
	ID   string
	At   Point
	Side Side
}

// WireAt is a drawn wire: its corners from port to port. An empty path means it found no way.
type WireAt struct {
	ID    string
	Path  []Point
	Label Label
}

// Label is where the text of a wire stands: see route.Label.
type Label = route.Label
