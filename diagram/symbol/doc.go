// Package symbol holds the graphical symbols of parts: strokes on a grid for vector
// painters, and one-row renderings for text.
//
// The symbols are drawn anew on a grid of our own after the ideas of IEC 60617 and
// IEEE 315, from memory of both; no claim of conformity is made. Where a symbol is
// not certain (the actuators, the horn, the buzzer) the name of the part stands
// beside it in every drawing.
//
// One unit is a quarter of the module of 2.5 mm, so 0.625 mm. A text column is 4
// units wide and a text row 8 units high, and a symbol fills 28 x 24 units: 7
// columns by 3 rows, with its axis at y = 12.
package symbol
