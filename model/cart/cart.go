// Package cart holds worked carts: complete job files of invented carts, each recorded
// as found with the faults that such carts have, and planned as they should become.
package cart

import (
	"embed"
	"fmt"
	"strings"
)

//go:embed *.yaml
var files embed.FS

// carts is the table of the worked carts: one line a cart.
var carts = []struct{ name, about string }{
	{"greenhouse-tug", "48 V series tug with a pump on a second solenoid; the charge computer goes, its lock-out is taken over"},
	{"marina-shuttle", "48 V separately excited six-seater; 12 V taken off two batteries becomes a side of its own"},
	{"festival-bowser", "72 V three phase drive with a pump; fuses for the voltage of 24 cells, a branch for each load"},
	{"quarry-inspection", "36 V cart with resistance coils and a battery turned round; a controller and 12 cells take their place"},
}

// Names lists the carts.
func Names() []string {
	names := make([]string, len(carts))
	for i, c := range carts {
		names[i] = c.name
	}
	return names
}

// About says in one line what a cart shows; empty if there is no such cart.
func About(name string) string {
	for _, c := range carts {
		if c.name == name {
			return c.about
		}
	}
	return ""
}

// Read is the job file of a cart. It fails if there is no such cart.
func Read(name string) ([]byte, error) {
	if About(name) == "" {
		return nil, fmt.Errorf("there is no cart %q; the carts are %s", name, strings.Join(Names(), ", "))
	}
	return files.ReadFile(name + ".yaml")
}
