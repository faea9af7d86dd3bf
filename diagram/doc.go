// Package diagram draws a sheet of a job: [Draw] turns the graph into scenes (boxes
// with terminals at named places, orthogonal wires, labels), one for each page, and
// painters print a scene as text or SVG.
//
// Every terminal is as wide as its wires: a stud with three lugs has three places
// side by side, so that wires never share a line and never have to be told apart at
// a joint. A part that is not on the page, and a wire end that is loose, is a flag.
package diagram
