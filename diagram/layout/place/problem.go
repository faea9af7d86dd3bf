// Package place chooses where the boxes of a diagram stand and where their free terminals sit.
//
// A first placing puts box after box on the cheapest free spot; many boxes that may go anywhere are parted into groups
// first, mapped on a coarse grid, and placed group by group. Simulated annealing on the final grid then moves, aligns,
// swaps and mirrors boxes and reorders their terminals. After each of these passes boxes keep their distances, pinned
// ones their places, zones are clear of what they do not hold, and terminals sit where their faces, groups and sides
// allow. Everything is counted in moves and integers and drawn from a fixed seed, so that equal input gives equal output
// on every machine.
//
// A wire is priced by a stand-in: a straight line from terminal to terminal that goes around its own two boxes. Its
// crossings with others, and the boxes it runs through, foretell what the drawn wire will meet.
package place

import "example.com/lugbook/diagram/layout/geom"

// Port is a terminal of a box.
type Port struct {
	// Sides it may sit on.
	Sides geom.Sides
	// Offset from the box's left or top edge, on the first of Sides; -1 when it may be chosen.
	Offset int
	// Group numbers ports of the box that stay together in the order given or its reverse; -1 for none.
	Group int
	// Face is 1 or 2 for ports that sit on two opposite sides, whichever; 0 for a port that is free.
	Face int
}

// Spot is where a port sits: Offset cells from the left (north, south) or the top (east, west).
type Spot struct {
	Side   geom.Side
	Offset int
}

// Box is a box to be placed. W and H are the least size.
type Box struct {
	// Zone is the index of its zone, -1 for none.
	Zone int
	W, H int
	// Head is the first row a chosen port may take, counted from the top edge.
	Head  int
	Ports []Port
	// Ordered keeps the groups of each face in the order of their first ports, or all in its reverse.
	Ordered bool
	// Pin is its top-left corner when it must stay there.
	Pin *geom.Point
}

// Ref names a port of a box.
type Ref struct{ Box, Port int }

// Wire is a wire to be. Room is the length of straight line wanted for its label, 0 for none. Onward wires had better
// have the box they come from left of the one they go to.
type Wire struct {
	From, To Ref
	Room     int
	Onward   bool
}

// Problem is a diagram to be placed.
type Problem struct {
	Boxes []Box
	Wires []Wire
	// Titles holds for each zone the cells its frame needs in width for a title.
	Titles []int
	Rules  Rules
}

// Rules are the distances and prices.
type Rules struct {
	Col, Row   int // one step level, one step upright
	Bend       int
	Cross      int
	Hit        int // a wire that has a box in its straight way
	Back       int // an onward wire whose boxes are not in their order; and a step for each column lacking
	Size       int // one more column or row of the whole drawing, in steps
	GapX, GapY int // least distance of two boxes
	Edge       int // columns added between ports and the edge of the page
	Tracks     int // tenths of a cell added to a gap for each port on it
	Pitch      int // rows from port to port
	Span       int // columns from port to port
	MaxWidth   int // columns of the page, 0 for any
	Frame      Frame
}

// Frame is the room that a zone keeps around its boxes, the frame's own cell included, and around itself.
type Frame struct{ Side, Top, Bottom, Gap int }

// Placement is a solution.
type Placement struct {
	Boxes []geom.Rect
	Spots [][]Spot // per box and port
	Zones []geom.Rect
	// Cost is the estimate that was minimised.
	Cost int
}
