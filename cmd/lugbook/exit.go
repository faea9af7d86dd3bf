package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"

	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/store"
)

// The exit codes.
const (
	exitFine    = 0 // nothing worse than a caution
	exitFound   = 1 // a danger or a fault was found
	exitInput   = 2 // bad usage or bad input
	exitMachine = 3 // the machine failed: disk full, no permission
)

// errFound ends a command that did its work and found a danger or a fault.
var errFound = errors.New("a danger or a fault was found")

// errEnded ends the terminal UI when the terminal is lost or the program is told to end.
var errEnded = errors.New("ended from outside; what was not saved, if anything, is beside the job in a file whose name ends in -rescued.yaml")

// warn tells a person what a save could not keep.
func warn(w io.Writer, o store.Outcome) {
	for _, text := range o.Warnings {
		fmt.Fprintln(w, "lugbook:", clean.Text(text))
	}
}

// exitCode tells a person on w what went wrong and gives the code to exit with.
func exitCode(w io.Writer, err error) int {
	var bad *jobfile.BadFileError
	switch {
	case err == nil:
		return exitFine
	case errors.Is(err, errFound):
		return exitFound
	case errors.As(err, &bad):
		for _, p := range bad.Problems {
			fmt.Fprintln(w, p.Error())
			fmt.Fprint(w, p.Excerpt(bad.Source))
		}
		return exitInput
	}
	var file *fs.PathError
	if errors.As(err, &file) {
		fmt.Fprintf(w, "lugbook: %s: %s\n", clean.Line(file.Path), clean.Line(file.Err.Error()))
	} else {
		fmt.Fprintln(w, "lugbook:", clean.Text(err.Error()))
	}
	if store.IsMachine(err) || errors.Is(err, errEnded) {
		return exitMachine
	}
	return exitInput
}
