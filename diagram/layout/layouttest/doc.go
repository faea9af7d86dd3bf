// Package layouttest makes port graphs to try a layout on: seeded random harnesses, graphs whose crossing number is
// known, channels whose least number of tracks is known, and small edits of a graph.
//
// Equal seeds give equal graphs on every machine.
package layouttest
