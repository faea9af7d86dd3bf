package trunks

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
)

// Widths of the columns of a list, in cells.
const (
	mostName   = 24
	mostWires  = 30
	leastWires = 12
	listGap    = 2
)

// hanging is a line of a zone's list: a part or a loose end, with its wires.
type hanging struct {
	id, name, wires string
	of              scene.Ref
}

// list sets what hangs in a zone: its name, how many runs meet, then a line for each part
// whose wires leave the zone and for each loose end of a wire that comes in.
func (s *sketch) list(z *harness.Zone, columns int) board.Item {
	lines := s.hangings(z)
	id, name := 0, 0
	for _, l := range lines {
		id, name = max(id, scene.Width(l.id)), max(name, scene.Width(l.name))
	}
	name = min(name, mostName)
	wires := mostWires
	if columns > 0 {
		if id+listGap+name+listGap+leastWires > columns {
			name = max(0, columns-id-2*listGap-leastWires)
		}
		wires = min(wires, max(leastWires, columns-id-name-2*listGap))
	}
	var it board.Item
	about := ZoneWords(s.job, z.ID) + ", " + meets(z)
	for _, line := range scene.Fold(about, max(id+name+2*listGap+wires, leastBox)) {
		it.Write(0, it.H, line).Strong = true
	}
	for _, l := range lines {
		y := it.H
		it.Write(0, y, l.id).Of = l.of
		if said := scene.Shorten(l.name, name); said != "" {
			it.Write(id+listGap, y, said).Of = l.of
		}
		x := id + listGap
		if name > 0 {
			x += name + listGap
		}
		for k, line := range scene.Fold(l.wires, wires) {
			it.Write(x, y+k, line).Of = l.of
		}
	}
	return it
}

func (s *sketch) hangings(z *harness.Zone) []hanging {
	var lines []hanging
	for _, p := range z.Parts {
		if away := s.inRuns(p.Away); len(away) > 0 {
			of := scene.Ref{Kind: scene.BoxKind, ID: string(p.Part.ID)}
			lines = append(lines, hanging{string(p.Part.ID), p.Part.Name, strings.ReplaceAll(List(away), ",", ""), of})
		}
	}
	for _, id := range s.inRuns(z.Loose) {
		of := scene.Ref{Kind: scene.WireKind, ID: string(id)}
		lines = append(lines, hanging{string(id), string(looseIn(s.wire(id).Wire, z.ID).Loose) + " end", string(id), of})
	}
	return lines
}

// looseIn is the loose end of a wire that was seen in a zone.
func looseIn(w *model.Wire, zone model.ZoneID) model.End {
	if w.From.IsLoose() && w.From.In == zone {
		return w.From
	}
	return w.To
}

// meets says how many runs meet in a zone.
func meets(z *harness.Zone) string {
	switch n := len(z.Runs); {
	case z.IsBranch():
		return fmt.Sprintf("branch of %d runs", n)
	case n == 1:
		return "end of a run"
	default:
		return fmt.Sprintf("%d runs", n)
	}
}

// ZoneWords is a zone by its name, or by its id if it has none.
func ZoneWords(j *model.Job, id model.ZoneID) string {
	if z := j.Zone(id); z != nil && z.Name != "" {
		return z.Name
	}
	return string(id)
}
