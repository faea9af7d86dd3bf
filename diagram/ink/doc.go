// Package ink sets a page of a drawing on a sheet of paper: every line, text and plate
// in whole units, each with the pen that draws it. Painters for vectors and for pixels
// only write down what the sheet says, so that an SVG, a PDF and a PNG of one page show
// the same picture.
//
// A cell of the page is [CellW] x [CellH] units. Where the page names the paper that it
// is made for, a cell takes 2.1 x 4.2 mm on it; else the page is shrunk until it fits one
// A4 sheet, and never enlarged.
//
// Wires are drawn in the colour of their insulation within a casing of the contrary tone,
// so that white shows on white paper and black on a dark screen. Colour is never the only
// carrier: weight, pattern, label and code say the same. Where wires cross, the level one
// is cut, so that a crossing is never taken for a joint.
package ink
