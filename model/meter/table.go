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

// Table is what a voltmeter shows at the test points of a sheet in its states.
type Table struct {
	Points  []Point
	Columns []Column
}

// Column is a table's column: one state.
type Column struct {
	State   state.State
	Cells   []Reading      // by test point; none if the sheet comes to no rest
	Motion  Motion         // whether it drives
	Chatter []model.PartID // parts that keep switching, if the sheet comes to no rest
}

// Tabulate reads every test point of a sheet in each of the states. The error is one of
// the computation; a state in which something chatters is no error.
func Tabulate(n *network.Network, states []state.State) (Table, error) {
	t := Table{Points: Points(n)}
	for _, s := range states {
		c, err := column(n, s, t.Points)
		if err != nil {
			return Table{}, err
		}
		t.Columns = append(t.Columns, c)
	}
	return t, nil
}

func column(n *network.Network, s state.State, points []Point) (Column, error) {
	c := Column{State: s, Motion: Motion{Must: Must(s)}}
	b, err := At(n, s)
	var chatter *network.ChatterError
	if errors.As(err, &chatter) {
		c.Chatter = switching(chatter)
		return c, nil
	}
	if err != nil {
		return Column{}, err
	}
	c.Motion = Moves(n, b.Solution())
	for _, p := range points {
		r, err := b.Volts(p.Red, p.Black)
		if err != nil {
			return Column{}, err
		}
		c.Cells = append(c.Cells, r)
	}
	return c, nil
}

// switching lists the parts that keep switching, each once.
func switching(e *network.ChatterError) []model.PartID {
	var list []model.PartID
	for _, l := range e.Links {
		if !slices.Contains(list, l.Part.ID) {
			list = append(list, l.Part.ID)
		}
	}
	return list
}

// Breach is what is wrong in a state, in words; empty if the cart drives exactly when it
// must and everything comes to rest.
func (c Column) Breach() string {
	switch {
	case len(c.Chatter) > 0:
		return fmt.Sprintf("%s: no rest: %s keeps switching", c.State.Name, names(c.Chatter))
	case c.Motion.Satisfied:
		return ""
	case c.Motion.Must == Drive:
		return c.State.Name + ": it must drive and does not" + c.about() + c.but(": it asks for current, but ")
	case c.Motion.Drives:
		return c.State.Name + ": it drives and must not" + c.about()
	}
	return c.State.Name + ": it asks for current and must not" + c.about() + c.but(", but ")
}

// but is what keeps a cart that asks for current from moving, after some words.
func (c Column) but(words string) string {
	if len(c.Motion.But) == 0 {
		return ""
	}
	return words + strings.Join(c.Motion.But, ", and ")
}

// about is what is set in the state, if its name does not say so itself.
func (c Column) about() string {
	if c.State.About == "" {
		return ""
	}
	return " (" + c.State.About + ")"
}

// Breaches lists what is wrong in the states of a table, in their order.
func (t Table) Breaches() []string {
	var list []string
	for _, c := range t.Columns {
		if breach := c.Breach(); breach != "" {
			list = append(list, breach)
		}
	}
	return list
}

func names(ids []model.PartID) string {
	list := make([]string, len(ids))
	for i, id := range ids {
		list[i] = string(id)
	}
	return strings.Join(list, ", ")
}
