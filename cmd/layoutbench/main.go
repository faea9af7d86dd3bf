// Command layoutbench holds our layout against others.
//
//	layoutbench [flags] GRAPH.json > DRAWING.json     draws a graph, so that an independent program can measure it
//	layoutbench report [flags] > REPORT.md            measures everything there is to measure, as one report
//
// A graph is {name, zones:[{id}], nodes:[{id,w,h,zone,ports:[{id,side,offset}]}], edges:[{id,from:[node,port],
// to:[node,port]}]}; a port of null is an end that may be anywhere on its box. A drawing is {nodes:{id:{x,y,w,h}},
// edges:{id:[[x,y],...]}}. All lengths are cells.
//
// The report sets our figures beside those of other programs. Such a peer is any command that reads a graph on standard
// input and writes {layout, warmMs, dragMs} on standard output: a drawing, the median time of a layout in a process
// that has made one before, and, if it knows, that of drawing the wires anew after one box moved. The graph says with
// "runs" how many timed runs are wanted. peer/peer.mjs is such a command for three general-purpose layout libraries:
//
//	npm install --prefix DIR elkjs@0.12.1 @dagrejs/dagre@3.1.3 libavoid-js@0.4.5
//	layoutbench report -graphs GRAPHS -peer "elk=node --stack-size=8000 cmd/layoutbench/peer/peer.mjs elk DIR" > REPORT.md
//
// Without peers the report holds our figures alone, beside those of a -reference file if there is one.
package main

import (
	"fmt"
	"io"
	"os"
)

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		fmt.Fprintln(os.Stderr, "layoutbench:", err)
		os.Exit(1)
	}
}

func run(args []string, stdout, stderr io.Writer) error {
	if len(args) > 0 && args[0] == "report" {
		return report(args[1:], stdout, stderr)
	}
	return draw(args, stdout, stderr)
}
