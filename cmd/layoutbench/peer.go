package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os/exec"
	"strings"
	"time"

	"example.com/lugbook/diagram/layout/metrics/offgrid"
)

// peer is another program that lays out graphs.
type peer struct {
	name    string
	command []string
}

// peers is the flag -peer NAME=COMMAND, which may be given again and again.
type peers []peer

// String is part of flag.Value.
func (p *peers) String() string {
	var names []string
	for _, one := range *p {
		names = append(names, one.name)
	}
	return strings.Join(names, ", ")
}

// Set takes NAME=COMMAND; the command is split at blanks.
func (p *peers) Set(value string) error {
	name, command, _ := strings.Cut(value, "=")
	words := strings.Fields(command)
	if name == "" || len(words) == 0 {
		return errors.New("give NAME=COMMAND")
	}
	*p = append(*p, peer{name, words})
	return nil
}

// result is what one program, ours or a peer, made of one graph.
type result struct {
	who     string
	failed  string // why there is no drawing
	ms      float64
	dragMs  float64 // 0 if not known
	faults  int
	picture picture
	offgrid.Report
}

// answer is what a peer prints.
type answer struct {
	Layout *picture `json:"layout"`
	WarmMs float64  `json:"warmMs"`
	DragMs float64  `json:"dragMs"`
	Error  string   `json:"error"`
}

// draw has the peer lay out a graph. A peer that fails gives a result that says why.
func (p peer) draw(g fileGraph, runs int, limit time.Duration) result {
	r := result{who: p.name}
	g.Runs = runs
	input, err := json.Marshal(g)
	if err != nil {
		r.failed = err.Error()
		return r
	}
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	c := exec.CommandContext(ctx, p.command[0], p.command[1:]...)
	var out, errs bytes.Buffer
	c.Stdin, c.Stdout, c.Stderr = bytes.NewReader(input), &out, &errs
	c.WaitDelay = time.Second
	err = c.Run()
	var a answer
	switch {
	case ctx.Err() != nil:
		r.failed = fmt.Sprintf("over %v", limit)
	case err != nil:
		r.failed = strings.TrimSpace(err.Error() + " " + lastLine(errs.String()))
	default:
		if err := json.Unmarshal(out.Bytes(), &a); err != nil {
			r.failed = "unreadable answer: " + err.Error()
		} else if a.Layout == nil {
			r.failed = "no layout " + a.Error
		}
	}
	if r.failed != "" {
		return r
	}
	r.ms, r.dragMs, r.picture = a.WarmMs, a.DragMs, a.Layout.of(&g)
	if r.Report, err = r.picture.measure(&g); err != nil {
		r.failed = err.Error()
	}
	r.faults = r.Report.Faults()
	return r
}

// lastLine is the last line of a text, cut to what fits a table.
func lastLine(s string) string {
	lines := strings.Split(strings.TrimSpace(s), "\n")
	last := []rune(lines[len(lines)-1])
	return string(last[:min(len(last), 80)])
}
