// Package png paints a page of a drawing as pixels: what package ink sets, on paper of its
// full size, with smooth edges.
//
// All arithmetic is in whole numbers but for the last step, in which the rasterizer works
// on small tiles in fixed point: equal pages give equal bytes on any machine.
package png
