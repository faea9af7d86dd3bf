package diagram

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// restState is how every contact is drawn.
const restState = "key off, direction neutral, pedal up, nothing plugged in"

// scene turns a laid out page into plain data for the painters.
func (b *builder) scene(p *page, pages []page) scene.Page {
	d := &p.drawing
	out := scene.Page{W: d.W, H: d.H, Title: b.title(p, pages), Paper: b.shape.Paper}
	for i, z := range d.Zones {
		if z.Rect.W > 0 {
			id := model.ZoneID(p.graph.Zones[i].ID)
			out.Zones = append(out.Zones, scene.Zone{ID: z.ID, Name: b.sectionWords(id, p, pages), Rect: rect(z.Rect)})
		}
	}
	for i := range p.boxes {
		out.Boxes = append(out.Boxes, sceneBox(&p.boxes[i], d.Boxes[i]))
	}
	for i := range p.flags {
		out.Flags = append(out.Flags, sceneFlag(&p.flags[i], d.Boxes[len(p.boxes)+i]))
	}
	for i, w := range d.Wires {
		out.Wires = append(out.Wires, b.sceneWire(p, p.graph.Wires[i], w))
	}
	out.Table = b.wireTable(p)
	if len(p.letGo) > 0 {
		out.Legend = append(out.Legend, "Placed by hand where there is no room, and so moved: "+strings.Join(p.letGo, ", ")+".")
	}
	return out
}

// wireTable lists in full the wires whose labels had no room to say all.
func (b *builder) wireTable(p *page) scene.Table {
	var rows [][]string
	for i, at := range p.drawing.Wires {
		if at.Label.OK && at.Label.Index == 0 {
			continue
		}
		w := b.sheet.Wire(model.WireID(p.graph.Wires[i].ID))
		size, colour := gaugeAndColour(w)
		rows = append(rows, []string{string(w.ID), size, colour, w.From.String(), w.To.String()})
	}
	if len(rows) == 0 {
		return scene.Table{}
	}
	return scene.Table{Head: []string{"wire", "size", "colour", "from", "to"}, Rows: rows}
}

func (b *builder) title(p *page, pages []page) scene.TitleBlock {
	t := scene.TitleBlock{
		Job: b.job.Title, Sheet: string(b.sheet.Name), System: b.job.System.String(), Date: b.job.Date,
		Revision: b.job.Revision, Page: p.number, Pages: p.of, Shown: restState,
	}
	if p.of > 1 {
		var zones []string
		for _, s := range p.sections {
			name := b.sectionWords(s.zone, p, pages)
			if s.zone == "" {
				name = "what has no zone" + name
			}
			zones = append(zones, name)
		}
		t.Notes = append(t.Notes, "Zones on this page: "+strings.Join(zones, ", ")+".")
	}
	return t
}

func point(p layout.Point) scene.Point { return scene.Point{X: p.X, Y: p.Y} }

// rect converts a layout's rectangle, whose size is the distance of its edges, to one
// that counts cells.
func rect(r layout.Rect) scene.Rect { return scene.Rect{X: r.X, Y: r.Y, W: r.W + 1, H: r.H + 1} }

var sides = map[layout.Side]scene.Side{
	layout.North: scene.North, layout.East: scene.East, layout.South: scene.South, layout.West: scene.West,
}

func sceneBox(x *box, at layout.BoxAt) scene.Box {
	out := scene.Box{
		ID: string(x.part.ID), Name: x.title(), Rect: rect(at.Rect), Symbol: x.symbol(), Marks: x.marks(), Title: x.longTitle(),
	}
	for k, p := range x.ports {
		place := scene.Port{ID: p.terminal, Name: p.label(), At: point(at.Ports[k].At), Side: sides[at.Ports[k].Side], Seat: p.seat}
		if p.of > 1 || p.seat > 0 {
			place.Stud = p.terminal
		}
		out.Ports = append(out.Ports, place)
	}
	return out
}

// longTitle is the part with its own figures, for a reader who asks.
func (x *box) longTitle() string {
	words := []string{string(x.part.ID) + ": " + x.name()}
	if x.def != nil && x.part.Name != "" {
		words = append(words, x.def.Title)
	}
	for _, r := range x.part.Ratings {
		words = append(words, r.Name+" "+r.Value.String())
	}
	for _, c := range x.part.Condition {
		words = append(words, string(c))
	}
	return strings.Join(append(words, notEmpty(x.part.Note)...), ", ")
}

func notEmpty(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

// sceneFlag is a flag as drawn: its mark, and its text beside it, which may be shorter than
// the room that was kept for it.
func sceneFlag(f *flag, at layout.BoxAt) scene.Flag {
	port := scene.Port{ID: flagPort, At: point(at.Ports[0].At), Side: sides[at.Ports[0].Side]}
	r := rect(at.Rect)
	if spare := r.W - 1 - scene.Width(f.text); spare > 0 {
		r.W -= spare
		if port.Side == scene.East {
			r.X += spare
		}
	}
	return scene.Flag{ID: f.id, Kind: f.kind, Text: f.text, Rect: r, Port: port}
}

func (b *builder) sceneWire(p *page, w layout.Wire, at layout.WireAt) scene.Wire {
	wire := b.sheet.Wire(model.WireID(w.ID))
	path := at.Path
	if forward, leads := p.onward[wire.ID]; leads && !forward {
		w.From, w.To = w.To, w.From
		path = slices.Clone(path)
		slices.Reverse(path)
	}
	out := scene.Wire{
		ID: w.ID, Weight: weight(wire), Colour: wire.Colour.String(), Title: wireTitle(wire),
		From: endName(w.From, wire.From), To: endName(w.To, wire.To),
	}
	for _, at := range path {
		out.Path = append(out.Path, point(at))
	}
	if at.Label.OK {
		out.Label = scene.Label{Text: w.Labels[at.Label.Index], At: point(at.Label.At), Vertical: at.Label.Vertical}
	}
	return out
}

// endName names what an end is on: a terminal of the page, or a flag.
func endName(at layout.PortRef, e model.End) string {
	if at.Port == flagPort {
		return at.Box
	}
	return e.At.String()
}

// wireTitle is everything about a wire in one line.
func wireTitle(w *model.Wire) string {
	words := []string{fmt.Sprintf("%s: %s to %s", w.ID, w.From, w.To)}
	for _, known := range []string{w.Gauge.String(), w.Colour.Word(), w.Length.String(), string(w.Serves), string(w.Confidence), w.Note} {
		words = append(words, notEmpty(known)...)
	}
	for _, c := range w.Condition {
		words = append(words, string(c))
	}
	return strings.Join(words, ", ")
}

// Conductor areas, in mm2, from which a wire of unknown service is drawn as traction
// or as power.
const (
	tractionArea = 13
	powerArea    = 3
)

// weight is the class of line of a wire: by what it serves, or by its size if that
// is not recorded.
func weight(w *model.Wire) scene.Weight {
	area := w.Gauge.AreaMM2()
	switch {
	case w.Serves == model.Traction:
		return scene.Traction
	case w.Serves == model.Mains:
		return scene.Mains
	case w.Serves == model.Charging, w.Serves == model.Accessory && area >= powerArea:
		return scene.Power
	case slices.Contains([]model.Service{model.Controls, model.Accessory}, w.Serves):
		return scene.Control
	case area >= tractionArea:
		return scene.Traction
	case area >= powerArea:
		return scene.Power
	default:
		return scene.Control
	}
}
