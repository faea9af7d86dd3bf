package trunks

import (
	"fmt"
	"math"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
	"example.com/lugbook/model/unit"
)

// Tables lists the runs with their wires, and the wires with their lengths: those that
// leave their zone, those that stay, and those whose way is not known.
func Tables(h *harness.Harness) []board.Table {
	runs := board.Table{Title: "Runs", Head: []string{"run", "length", "wires", "which"}, Empty: "No runs are recorded: no way of any wire is known."}
	for _, r := range h.Runs {
		runs.Rows = append(runs.Rows, board.Row{Cells: []string{RunName(r), r.Length.String(), fmt.Sprint(len(r.Wires)), List(r.Wires)}})
	}
	head := []string{"wire", "gauge", "colour", "from", "to", "along", "length", "known by"}
	away := board.Table{Title: "Wires that lie in runs", Head: head}
	stay := board.Table{Title: "Wires that stay in one zone", Head: head}
	lost := board.Table{Title: "Wires whose way is not known", Head: head}
	for i := range h.Wires {
		w := &h.Wires[i]
		t := &away
		switch {
		case w.Along == nil:
			t = &lost
		case len(w.Along) == 1:
			t = &stay
		}
		t.Rows = append(t.Rows, row(w))
	}
	return []board.Table{runs, away, stay, lost}
}

func row(w *harness.Wire) board.Row {
	length, basis := Length(w)
	return board.Row{
		Of: scene.Ref{Kind: scene.WireKind, ID: string(w.Wire.ID)},
		Cells: []string{
			string(w.Wire.ID), known(w.Wire.Gauge.String()), known(w.Wire.Colour.String()), w.Wire.From.String(), w.Wire.To.String(),
			along(w), length, basis,
		},
	}
}

func known(s string) string {
	if s == "" {
		return "?"
	}
	return s
}

func along(w *harness.Wire) string {
	if w.Along == nil {
		return "?"
	}
	return zones(w.Along)
}

func zones(list []model.ZoneID) string {
	words := make([]string, len(list))
	for i, id := range list {
		words[i] = string(id)
	}
	return strings.Join(words, " ")
}

// Length is the length of a wire in words, and what is known of it.
func Length(w *harness.Wire) (length, basis string) {
	switch w.Basis {
	case harness.Measured:
		return w.Wire.Length.String(), "measured"
	case harness.ByRuns:
		basis = fmt.Sprintf("runs %s", metres(w.RunSum))
		if w.Slack > 0 {
			basis += fmt.Sprintf(", slack %s", millimetres(w.Slack))
		} else {
			basis += ", slack not known"
		}
		return metres(w.Length) + " + tails", basis
	case harness.Inside:
		return "?", "to be measured"
	case harness.NoWay:
		return "?", fmt.Sprintf("no run recorded from %s to %s", w.Gap[0], w.Gap[1])
	default:
		return "?", "zone of an end not known"
	}
}

func metres(m float64) string { return unit.LengthFromMetres(math.Round(m*1000) / 1000).String() }

func millimetres(m float64) string { return fmt.Sprintf("%.0f mm", m*1000) }
