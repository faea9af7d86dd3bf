// Package scene holds one drawn page as plain data on an integer grid, ready for
// any painter: boxes with ports, orthogonal wires, labels, flags and zones.
//
// The unit is the text cell: X counts columns to the right, Y counts rows
// downwards. A [Rect] covers whole cells and a box's frame lies on the outer cells
// of its rectangle. A [Port] is one cell of that frame, and a wire's path runs from
// port cell to port cell, both included. What a text painter puts in a cell, a
// vector painter puts at the same place, so two drawings of one page never differ
// in what they say.
//
// [Check] lists what is wrong with a page, [Page.At] tells what lies in a cell,
// and [Inside] arranges the writing in a box for all painters alike.
package scene
