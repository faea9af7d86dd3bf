// Package svg writes a page of a drawing as one self-contained SVG file for screen and
// paper: what package ink sets, with a class for each pen.
//
// The file is the size of a sheet of paper in millimetres and all coordinates are whole
// units. It follows the reader's wish for a light or a dark screen; paper is always light.
// A pointer that rests on a wire, or an address that ends in its id, lifts the wire out
// from end to end. The file has no script, no font and no link but to its own paths. Text
// from the user goes only through cleaning and escaping into text nodes and quoted
// attributes.
package svg
