package diagram

import (
	"fmt"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/model"
)

// fill lists the boxes, flags and wires of a page and describes them to the layout.
func (b *builder) fill(p *page) {
	p.onward = onward(b.sheet, b.cat)
	for i := range p.sections {
		if s := &p.sections[i]; s.zone != "" {
			p.graph.Zones = append(p.graph.Zones, layout.Zone{ID: string(s.zone), Title: b.titleWidth(s)})
		}
	}
	for i := range b.sheet.Parts {
		if part := &b.sheet.Parts[i]; p.parts[part.ID] {
			x := b.box(part)
			p.boxes = append(p.boxes, x)
			p.graph.Boxes = append(p.graph.Boxes, x.layoutBox())
		}
	}
	for i := range b.sheet.Wires {
		b.fillWire(p, &b.sheet.Wires[i])
	}
	for i := range p.flags {
		p.graph.Boxes = append(p.graph.Boxes, p.flags[i].layoutBox())
	}
}

// fillWire adds a wire that has an end on the page.
func (b *builder) fillWire(p *page, w *model.Wire) {
	home := b.home(w)
	from, fromHere := b.landing(p, w, w.From)
	to, toHere := b.landing(p, w, w.To)
	if !fromHere && !toHere && !p.loose[w.ID] {
		return
	}
	if !fromHere {
		from = b.addFlag(p, w, "from", w.From, b.flagZone(w.To, home))
	}
	if !toHere {
		to = b.addFlag(p, w, "to", w.To, b.flagZone(w.From, home))
	}
	line := layout.Wire{ID: string(w.ID), From: from, To: to, Labels: labels(w)}
	if forward, leads := p.onward[w.ID]; leads {
		line.Onward = true
		if !forward {
			line.From, line.To = to, from
		}
	}
	p.graph.Wires = append(p.graph.Wires, line)
}

// landing finds the port of an end on a part of the page.
func (b *builder) landing(p *page, w *model.Wire, e model.End) (layout.PortRef, bool) {
	for i := range p.boxes {
		x := &p.boxes[i]
		if x.part.ID != e.At.Part {
			continue
		}
		if k := x.portOf(e.At.Name, w.ID); k >= 0 {
			return layout.PortRef{Box: string(x.part.ID), Port: x.ports[k].id()}, true
		}
	}
	return layout.PortRef{}, false
}

// flagZone is where a flag stands: with the part at the other end of its wire, or where
// a wire with two loose ends was seen.
func (b *builder) flagZone(other model.End, home model.ZoneID) model.ZoneID {
	if part := b.sheet.Part(other.At.Part); part != nil {
		return part.Zone
	}
	return home
}

func (b *builder) addFlag(p *page, w *model.Wire, side string, e model.End, zone model.ZoneID) layout.PortRef {
	f := b.awayFlag(w, side, e)
	if e.IsLoose() {
		f = looseFlag(w, side, e)
	}
	f.zone = zone
	p.flags = append(p.flags, f)
	return layout.PortRef{Box: f.id, Port: flagPort}
}

// gaugeAndColour are those of a wire; a question mark stands for what is not recorded.
func gaugeAndColour(w *model.Wire) (gauge, colour string) {
	gauge, colour = "?", "?"
	if !w.Gauge.IsZero() {
		gauge = w.Gauge.String()
	}
	if !w.Colour.IsZero() {
		colour = w.Colour.String()
	}
	return gauge, colour
}

// labels are the texts that may stand on a wire, the fullest first.
func labels(w *model.Wire) []string {
	gauge, colour := gaugeAndColour(w)
	mark := ""
	if len(w.Condition) > 0 {
		mark = "!"
	}
	if len(w.Judged) > 0 || w.Confidence == model.NotTraced || w.Confidence == model.Assumed {
		mark += "?"
	}
	return []string{fmt.Sprintf("%s%s %s %s", w.ID, mark, gauge, colour), string(w.ID) + mark}
}
