package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"

	"example.com/lugbook/diagram/layout"
)

const drawUsage = `usage: layoutbench [flags] GRAPH.json > DRAWING.json
       layoutbench [flags] -out DIR GRAPH.json...
       layoutbench report [flags] > REPORT.md      (see layoutbench report -h)

Places and routes port graphs. Ports keep the sides and offsets that the graph gives.

flags:
`

// drawFlags are those of drawing single graphs.
type drawFlags struct {
	out   string
	full  bool
	zones bool
	width int
	times bool
	moves int
	seeds int
}

// draw lays out the graphs named.
func draw(args []string, stdout, stderr io.Writer) error {
	var f drawFlags
	set := flag.NewFlagSet("layoutbench", flag.ContinueOnError)
	set.SetOutput(stderr)
	set.StringVar(&f.out, "out", "", "write each drawing to `DIR`/NAME.json instead of standard output")
	set.BoolVar(&f.full, "full", false, "spend full effort; else a draft")
	set.BoolVar(&f.zones, "zones", false, "keep each zone in a rectangle of its own; else zones are ignored")
	set.IntVar(&f.width, "width", 0, "page width in `COLUMNS`; 0 for any")
	set.BoolVar(&f.times, "times", false, "print the wall-clock time per graph on standard error")
	set.IntVar(&f.moves, "moves", 0, "annealing `MOVES` per start; 0 for what the effort gives")
	set.IntVar(&f.seeds, "seeds", 0, "number of `STARTS`; 0 for what the effort gives")
	set.Usage = func() {
		fmt.Fprint(stderr, drawUsage)
		set.PrintDefaults()
	}
	if err := set.Parse(args); err != nil {
		if err == flag.ErrHelp {
			return nil
		}
		return err
	}
	if set.NArg() == 0 || (set.NArg() > 1 && f.out == "") {
		return fmt.Errorf("give one graph, or several and -out; see -h")
	}
	for _, name := range set.Args() {
		if err := f.one(name, stdout, stderr); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

// one lays out one file.
func (f drawFlags) one(name string, stdout, stderr io.Writer) error {
	data, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	file, err := readGraph(data)
	if err != nil {
		return err
	}
	graph, err := file.graph(f.zones)
	if err != nil {
		return err
	}
	options := layout.Options{MaxWidth: f.width, Moves: f.moves, Seeds: f.seeds}
	if f.full {
		options.Effort = layout.Full
	}
	start := time.Now()
	drawing, err := layout.Layout(graph, options)
	if err != nil {
		return err
	}
	if f.times {
		fmt.Fprintf(stderr, "%s: %v\n", filepath.Base(name), time.Since(start).Round(time.Millisecond))
	}
	text, err := json.Marshal(pictureOf(&drawing))
	if err != nil {
		return err
	}
	text = append(text, '\n')
	if f.out == "" {
		_, err = stdout.Write(text)
		return err
	}
	return os.WriteFile(filepath.Join(f.out, filepath.Base(name)), text, 0o644)
}
