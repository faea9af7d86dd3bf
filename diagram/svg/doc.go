// Package svg paints a page of a drawing as one self-contained SVG file for screen
// and paper.
//
// A cell of the page is 8 x 16 units, and all coordinates are whole units. The file
// is the size of a sheet of paper in millimetres; the drawing is shrunk, never
// enlarged, until it fits, and [Result] tells how high its letters became.
//
// Wires are drawn in the colour of their insulation within a casing of the contrary
// tone, so that white shows on white paper and black on a dark screen. Colour is
// never the only carrier: weight, label and code say the same. Where wires cross,
// the level one is cut, so that a crossing is never taken for a joint.
//
// The file has no script, no link and no font of its own. Text from the user goes
// only through cleaning and escaping into text nodes and quoted attributes.
package svg
