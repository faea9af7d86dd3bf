package meter

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// mostSettings bounds how many settings of the controls are tried.
const mostSettings = 5000

// Trial is what came of trying every setting of the controls that have to do with driving.
type Trial struct {
	Tried    int
	Asked    int      // settings in which the cart must drive
	Breaches []string // settings in which the cart drives and must not, or the other way round, or finds no rest
}

// Settings lists every combination of positions of the controls that have to do with
// driving, all others as parked. There are none if they are more than 5000.
func Settings(n *network.Network) []state.State {
	parked := n.States()[0]
	list := []state.State{{Name: "", Set: parked.Set}}
	for _, set := range parked.Set {
		if driving[set.Control] == nil {
			continue
		}
		var next []state.State
		for _, s := range list {
			for _, position := range positions(n, set.Control) {
				with := s.With(set.Control, position)
				with.Name = strings.TrimPrefix(s.Name+", "+string(set.Control)+" "+position, ", ")
				next = append(next, with)
			}
		}
		if len(next) > mostSettings {
			return nil
		}
		list = next
	}
	return list
}

// positions lists the positions that the parts of a sheet give a control.
func positions(n *network.Network, c model.Control) []string {
	var list []string
	for i := range n.Sheet.Parts {
		d := n.Cat.Definition(n.Sheet.Parts[i].Kind)
		if d == nil || d.Control == nil || d.Control.Sets != c {
			continue
		}
		for _, p := range d.Control.Positions {
			if !slices.Contains(list, p) {
				list = append(list, p)
			}
		}
	}
	return list
}

// Try tries every setting of the controls that have to do with driving against the rule
// that a cart drives when it must and never else.
func Try(n *network.Network) (Trial, error) {
	var t Trial
	for _, s := range Settings(n) {
		t.Tried++
		if Must(s) == Drive {
			t.Asked++
		}
		solved, err := n.Solve(s)
		var chatter *network.ChatterError
		c := Column{State: s}
		switch {
		case errors.As(err, &chatter):
			c.Chatter = switching(chatter)
		case err != nil:
			return Trial{}, fmt.Errorf("%s: %w", s.Name, err)
		default:
			c.Motion = Moves(n, solved)
		}
		if breach := c.Breach(); breach != "" {
			t.Breaches = append(t.Breaches, breach)
		}
	}
	return t, nil
}
