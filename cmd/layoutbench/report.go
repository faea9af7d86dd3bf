package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"
)

const reportUsage = `usage: layoutbench report [flags] > REPORT.md

Measures our layout, and other programs on the same graphs, and prints a report in Markdown.

flags:
`

// reportFlags are those of the report.
type reportFlags struct {
	graphs, free, only    string
	reference, export     string
	out                   string
	peers                 peers
	timeout               time.Duration
	boxes, random, most   int
	channels, edits, runs int
	moves, starts         int
}

// section is one part of the report.
type section struct {
	name, title string
	write       func(*reporter) error
}

// sections lists the parts in the order of the report.
var sections = []section{
	{"quality", "Quality", (*reporter).quality},
	{"free", "Free ends", (*reporter).freeEnds},
	{"speed", "Speed", (*reporter).speed},
	{"stability", "Stability", (*reporter).stability},
	{"random", "Random harnesses", (*reporter).random},
	{"channels", "Random channels", (*reporter).randomChannels},
	{"carts", "Worked carts", (*reporter).carts},
}

// report parses the flags and writes the sections that they ask for.
func report(args []string, stdout, stderr io.Writer) error {
	var f reportFlags
	set := flag.NewFlagSet("layoutbench report", flag.ContinueOnError)
	set.SetOutput(stderr)
	f.register(set)
	set.Usage = func() {
		fmt.Fprint(stderr, reportUsage)
		set.PrintDefaults()
	}
	if err := set.Parse(args); err != nil {
		if err == flag.ErrHelp {
			return nil
		}
		return err
	}
	if set.NArg() > 0 {
		return fmt.Errorf("%s: the report takes flags only; see layoutbench report -h", set.Arg(0))
	}
	chosen, err := choose(f.only)
	if err != nil {
		return err
	}
	r := &reporter{reportFlags: f, log: stderr, answers: map[string]result{}}
	if err := r.readReference(); err != nil {
		return err
	}
	r.printf("# Layout report\n\nAll lengths in cells, all times in milliseconds, on %s/%s with %d processors.\n",
		runtime.GOOS, runtime.GOARCH, runtime.NumCPU())
	for _, s := range chosen {
		r.progress("section %s", s.name)
		r.printf("\n## %s\n\n", s.title)
		if err := s.write(r); err != nil {
			return fmt.Errorf("%s: %w", s.name, err)
		}
		if err := r.keep(); err != nil {
			return err
		}
	}
	if f.out == "" {
		_, err = io.WriteString(stdout, r.text.String())
	}
	return err
}

// keep writes what there is so far, so that a long report is not lost when it is broken off.
func (r *reporter) keep() error {
	if r.out == "" {
		return nil
	}
	return os.WriteFile(r.out, []byte(r.text.String()), 0o644)
}

func (f *reportFlags) register(set *flag.FlagSet) {
	var names []string
	for _, s := range sections {
		names = append(names, s.name)
	}
	set.StringVar(&f.graphs, "graphs", "", "`DIR` of port graphs for quality, speed and stability")
	set.StringVar(&f.free, "free", "", "`DIR` of graphs with free ends")
	set.StringVar(&f.only, "only", "", "`SECTIONS` to write, of "+strings.Join(names, ",")+"; else all")
	set.StringVar(&f.reference, "reference", "", "`FILE` of known figures: {graph: {crossings, bends, length, area}}")
	set.StringVar(&f.export, "export", "", "`DIR` to write the graphs of the carts and our drawings to")
	set.StringVar(&f.out, "o", "", "`FILE` to write the report to; else standard output")
	set.Var(&f.peers, "peer", "`NAME=COMMAND` of another program; may be given again")
	set.DurationVar(&f.timeout, "timeout", time.Minute, "longest time for a peer and a graph")
	set.IntVar(&f.boxes, "boxes", 0, "leave out graphs of more than so many `BOXES`; 0 for none")
	set.IntVar(&f.random, "random", 1000, "number of random `HARNESSES`")
	set.IntVar(&f.most, "most", 30, "`BOXES` of the largest random harness")
	set.IntVar(&f.channels, "channels", 25, "number of random `CHANNELS` of each size")
	set.IntVar(&f.edits, "edits", 3, "number of `EDITS` of each kind and graph for stability")
	set.IntVar(&f.moves, "moves", 0, "annealing `MOVES` per start of full effort; 0 for what the effort gives")
	set.IntVar(&f.starts, "starts", 0, "`STARTS` of full effort; 0 for what the effort gives")
	set.IntVar(&f.runs, "runs", 15, "most timed `RUNS` of one layout")
}

// choose picks sections by name, in the order of the report.
func choose(only string) ([]section, error) {
	if only == "" {
		return sections, nil
	}
	names := strings.Split(only, ",")
	var out []section
	for _, s := range sections {
		if i := slices.Index(names, s.name); i >= 0 {
			names = slices.Delete(names, i, i+1)
			out = append(out, s)
		}
	}
	if len(names) > 0 {
		return nil, fmt.Errorf("there is no section %q; see layoutbench report -h", names[0])
	}
	return out, nil
}

// reporter gathers the report.
type reporter struct {
	reportFlags
	text    strings.Builder
	log     io.Writer
	known   map[string]map[string]float64 // -reference
	answers map[string]result             // of peers, so that a graph is drawn once for all sections
}

func (r *reporter) printf(format string, args ...any)   { fmt.Fprintf(&r.text, format, args...) }
func (r *reporter) progress(format string, args ...any) { fmt.Fprintf(r.log, format+"\n", args...) }

func (r *reporter) readReference() error {
	if r.reference == "" {
		return nil
	}
	data, err := os.ReadFile(r.reference)
	if err != nil {
		return err
	}
	if err := json.Unmarshal(data, &r.known); err != nil {
		return fmt.Errorf("%s: %w", r.reference, err)
	}
	return nil
}

// load reads the graphs of a directory, the smallest first.
func (r *reporter) load(dir string) ([]fileGraph, error) {
	names, err := filepath.Glob(filepath.Join(dir, "*.json"))
	if err != nil {
		return nil, err
	}
	var out []fileGraph
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		g, err := readGraph(data)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		g.Name = strings.TrimSuffix(filepath.Base(name), ".json")
		if r.boxes == 0 || len(g.Nodes) <= r.boxes {
			out = append(out, g)
		}
	}
	slices.SortStableFunc(out, func(a, b fileGraph) int {
		if d := len(a.Nodes) - len(b.Nodes); d != 0 {
			return d
		}
		return len(a.Edges) - len(b.Edges)
	})
	if len(out) == 0 {
		return nil, fmt.Errorf("there are no graphs in %q", dir)
	}
	return out, nil
}

// ask has every peer draw a graph, or recalls what it made of it before.
func (r *reporter) ask(g fileGraph, runs int) []result {
	var out []result
	for _, p := range r.peers {
		key := p.name + "\n" + g.Name
		known, ok := r.answers[key]
		if !ok {
			known = p.draw(g, runs, r.timeout)
			r.progress("%s, %s: %s", g.Name, p.name, known.brief())
			r.answers[key] = known
		}
		out = append(out, known)
	}
	return out
}

// brief is a result in a few words.
func (r result) brief() string {
	if r.failed != "" {
		return r.failed
	}
	return fmt.Sprintf("%.0f ms, %d crossings, %d bends, %d faults", r.ms, r.Crossings, r.Bends, r.faults)
}
