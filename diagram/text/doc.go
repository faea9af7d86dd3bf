// Package text paints a page of a drawing with characters: box-drawing characters,
// or plain ASCII where these are not to be had.
//
// Lines have three weights: light for control and power, heavy for traction, double
// for mains. Wires turn in round corners and boxes in square ones. Where two wires
// cross, the upright one runs through and the level one is cut in that cell, so a
// crossing never looks like a joint; a cross character never occurs. A terminal
// joins its wire to the frame of its box.
//
// Each cell of a painted [Grid] knows what it shows and whose it is, and lies at the
// place that the page gives it, so a program can colour it and find what is under
// the cursor.
package text
