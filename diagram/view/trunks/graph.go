// Package trunks draws a harness along the runs of the cart: each run one thick line, each
// zone a box that lists the parts that hang there with the wires that leave them.
package trunks

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
)

// sketch is the drawing before it is laid out.
type sketch struct {
	job   *model.Job
	h     *harness.Harness
	zones []*harness.Zone
	lists []board.Item // of the zones, likewise
	runs  []harness.Run
	graph layout.Graph
}

// Room in a box, in cells.
const (
	edge     = 2 // frame and a blank
	headRoom = 4 // frames and blanks beside what is written in a frame line
	leastBox = 16
	besides  = 8 // columns beside a box for the runs that leave it
)

// newSketch collects the zones that runs with wires in them reach. Lists are at most so
// many columns wide; 0 for any.
func newSketch(j *model.Job, h *harness.Harness, columns int) *sketch {
	s := &sketch{job: j, h: h}
	for i := range h.Zones {
		if z := &h.Zones[i]; z.ID != "" && len(z.Runs) > 0 {
			s.zones = append(s.zones, z)
		}
	}
	for _, r := range h.Runs {
		if len(r.Wires) > 0 {
			s.runs = append(s.runs, r)
		}
	}
	for _, z := range s.zones {
		list := s.list(z, columns-2*edge-besides)
		s.lists = append(s.lists, list)
		s.graph.Boxes = append(s.graph.Boxes, layoutBox(z, &list, h.Runs))
	}
	for _, r := range s.runs {
		id := RunName(r)
		s.graph.Wires = append(s.graph.Wires, layout.Wire{
			ID: id, From: layout.PortRef{Box: string(r.From), Port: id}, To: layout.PortRef{Box: string(r.To), Port: id}, Labels: runLabels(r),
		})
	}
	return s
}

// layoutBox describes a zone's box. No run meets its upper edge, which bears its name.
func layoutBox(z *harness.Zone, list *board.Item, runs []harness.Run) layout.Box {
	w := max(leastBox, list.W+2*edge, scene.Width(string(z.ID))+headRoom)
	out := layout.Box{ID: string(z.ID), W: w - 1, H: list.H + 1}
	for _, r := range z.Runs {
		out.Ports = append(out.Ports, layout.Port{ID: RunName(runs[r]), Sides: layout.SidesOf(layout.East, layout.South, layout.West), Offset: -1})
	}
	return out
}

// RunName names a run by its zones.
func RunName(r harness.Run) string { return string(r.From) + " to " + string(r.To) }

func runLabels(r harness.Run) []string {
	length := r.Length.String()
	return []string{fmt.Sprintf("%s, %s", length, scene.Count(len(r.Wires), "wire", "wires")), fmt.Sprintf("%s, %d", length, len(r.Wires)), length}
}

// List is wires in one line.
func List(wires []model.WireID) string {
	words := make([]string, len(wires))
	for i, id := range wires {
		words[i] = string(id)
	}
	return strings.Join(words, ", ")
}

func (s *sketch) wire(id model.WireID) *harness.Wire {
	return &s.h.Wires[slices.IndexFunc(s.h.Wires, func(w harness.Wire) bool { return w.Wire.ID == id })]
}

// inRuns are those of some wires that lie in runs.
func (s *sketch) inRuns(wires []model.WireID) []model.WireID {
	var list []model.WireID
	for _, id := range wires {
		if len(s.wire(id).Along) > 1 {
			list = append(list, id)
		}
	}
	return list
}
