// Package trunks draws a harness along the runs of the cart: each run one thick line, the
// places where runs meet, and the parts that hang there with the wires that leave them.
package trunks

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
)

// kind is what a box of the drawing stands for.
type kind uint8

const (
	meeting kind = iota // where runs meet in a zone
	hanging             // a part
	loose               // a loose end
)

// box is something that lines end on.
type box struct {
	kind  kind
	id    string
	title string // in words
	text  string // of a flag
	flag  scene.FlagKind
	zone  model.ZoneID
	part  *model.Part
}

// line is a run or a tail.
type line struct {
	id       string
	from, to layout.PortRef
	labels   []string
	title    string
	trunk    bool
}

// sketch is the drawing before it is laid out.
type sketch struct {
	job   *model.Job
	h     *harness.Harness
	boxes []box
	lines []line
	graph layout.Graph
}

// tailPort is the port of a part, or of a loose end, that its wires leave by.
const tailPort = "wires"

// most letters of a list of wires that stands on a line.
const listRoom = 24

func newSketch(j *model.Job, h *harness.Harness) *sketch {
	s := &sketch{job: j, h: h}
	for i := range h.Zones {
		if z := &h.Zones[i]; z.ID != "" && len(z.Runs) > 0 {
			s.zone(z)
		}
	}
	for _, r := range h.Runs {
		if len(r.Wires) > 0 {
			s.run(r)
		}
	}
	s.fill()
	return s
}

// junction is the id of the box where the runs of a zone meet. The colon keeps it apart
// from the ids of parts.
func junction(z model.ZoneID) string { return string(z) + ":" }

// zone adds what hangs in a zone.
func (s *sketch) zone(z *harness.Zone) {
	s.boxes = append(s.boxes, box{kind: meeting, id: junction(z.ID), title: meets(z), zone: z.ID})
	for _, p := range z.Parts {
		away := s.inRuns(p.Away)
		if len(away) == 0 {
			continue
		}
		s.boxes = append(s.boxes, box{kind: hanging, id: string(p.Part.ID), title: p.Part.Name, zone: z.ID, part: p.Part})
		s.tail("tail of "+string(p.Part.ID), string(p.Part.ID), z.ID, away)
	}
	for _, id := range s.inRuns(z.Loose) {
		end := looseIn(s.wire(id).Wire, z.ID)
		name := fmt.Sprintf("end of %s in %s", id, z.ID)
		s.boxes = append(s.boxes, box{kind: loose, id: name, text: string(id) + " " + string(end.Loose), flag: flagKinds[end.Loose], zone: z.ID})
		s.lines = append(s.lines, line{
			id: "tail to " + name, from: layout.PortRef{Box: name, Port: tailPort}, to: layout.PortRef{Box: junction(z.ID), Port: name},
			title: fmt.Sprintf("%s ends here: %s", id, end),
		})
	}
}

// looseIn is the loose end of a wire that was seen in a zone.
func looseIn(w *model.Wire, zone model.ZoneID) model.End {
	if w.From.IsLoose() && w.From.In == zone {
		return w.From
	}
	return w.To
}

var flagKinds = map[model.Loose]scene.FlagKind{model.Cut: scene.Cut, model.Capped: scene.Capped, model.Untraced: scene.Untraced}

// meets says how many runs meet in a zone.
func meets(z *harness.Zone) string {
	switch n := len(z.Runs); {
	case z.IsBranch():
		return fmt.Sprintf("branch, %d runs", n)
	case n == 1:
		return "end of a run"
	default:
		return fmt.Sprintf("%d runs", n)
	}
}

func (s *sketch) tail(id, from string, zone model.ZoneID, wires []model.WireID) {
	s.lines = append(s.lines, line{
		id: id, from: layout.PortRef{Box: from, Port: tailPort}, to: layout.PortRef{Box: junction(zone), Port: from},
		labels: tailLabels(wires), title: fmt.Sprintf("%s leaves %s: %s", count(len(wires)), from, List(wires)),
	})
}

func (s *sketch) run(r harness.Run) {
	id := RunName(r)
	length := r.Length.String()
	s.lines = append(s.lines, line{
		id: id, from: layout.PortRef{Box: junction(r.From), Port: id}, to: layout.PortRef{Box: junction(r.To), Port: id}, trunk: true,
		labels: []string{fmt.Sprintf("%s, %s", length, count(len(r.Wires))), fmt.Sprintf("%s, %d", length, len(r.Wires)), length},
		title:  fmt.Sprintf("run %s, %s: %s", id, length, List(r.Wires)),
	})
}

// RunName names a run by its zones.
func RunName(r harness.Run) string { return string(r.From) + " to " + string(r.To) }

func tailLabels(wires []model.WireID) []string {
	short := count(len(wires))
	if list := strings.ReplaceAll(List(wires), ",", ""); len(list) <= listRoom {
		return []string{list, short, fmt.Sprint(len(wires))}
	}
	return []string{short, fmt.Sprint(len(wires))}
}

// List is wires in one line.
func List(wires []model.WireID) string {
	words := make([]string, len(wires))
	for i, id := range wires {
		words[i] = string(id)
	}
	return strings.Join(words, ", ")
}

func count(n int) string {
	if n == 1 {
		return "1 wire"
	}
	return fmt.Sprintf("%d wires", n)
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
