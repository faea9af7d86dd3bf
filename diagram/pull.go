package diagram

import (
	"fmt"
	"slices"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// Pull is a wire on its way: it is fast at one end and its other end follows a hand. Nothing
// of the drawing changes. It is for one goroutine at a time.
type Pull struct {
	page *page
	live *layout.Live
	from layout.PortRef
}

// PullFrom starts a new wire at a terminal in the drawing o.Previous, which has to be one of
// the sheet as it is, on one page.
func PullFrom(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options, from model.TerminalRef) (*Pull, error) {
	h, err := hold(j, sheet, lib, o)
	if err != nil {
		return nil, err
	}
	port, shown := h.page.portAt(from)
	if !shown {
		return nil, fmt.Errorf("%s is not on the drawing", from)
	}
	return h.pull(port)
}

// PullEnd takes the end of a wire that is on nothing, so as to bring it somewhere. loose is the
// id of the flag that it ends in.
func PullEnd(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o Options, wire model.WireID, loose string) (*Pull, error) {
	h, err := hold(j, sheet, lib, o)
	if err != nil {
		return nil, err
	}
	for _, w := range h.page.graph.Wires {
		if w.ID != string(wire) || w.From.Box != loose && w.To.Box != loose {
			continue
		}
		fast := w.From
		if fast.Box == loose {
			fast = w.To
		}
		p, err := h.pull(fast)
		if err == nil {
			err = p.live.Disconnect(w.ID)
		}
		return p, err
	}
	return nil, fmt.Errorf("%s is not on the drawing", loose)
}

func (h *held) pull(from layout.PortRef) (*Pull, error) {
	live, err := h.open()
	return &Pull{page: &h.page, live: live, from: from}, err
}

// portAt finds a place of a terminal: a free one, or else its outermost.
func (p *page) portAt(at model.TerminalRef) (layout.PortRef, bool) {
	for i := range p.boxes {
		x := &p.boxes[i]
		if x.part.ID != at.Part {
			continue
		}
		for _, place := range slices.Backward(x.ports) {
			if place.terminal == at.Name {
				return layout.PortRef{Box: string(x.part.ID), Port: place.id()}, true
			}
		}
	}
	return layout.PortRef{}, false
}

// To is the way that the wire would take to a cell: its corners, the first at its fast end.
// There is none if something lies in the cell or all around it.
func (p *Pull) To(c scene.Point) []scene.Point {
	var way []scene.Point
	for _, corner := range p.live.Trace(p.from, layout.Point{X: c.X, Y: c.Y}) {
		way = append(way, point(corner))
	}
	return way
}

// Onto is the way to a terminal. There is none if the terminal is not on the page.
func (p *Pull) Onto(t model.TerminalRef) []scene.Point {
	port, shown := p.page.portAt(t)
	if !shown || port == p.from {
		return nil
	}
	for i := range p.page.drawing.Boxes {
		b := &p.page.drawing.Boxes[i]
		if b.ID != port.Box {
			continue
		}
		if k := slices.IndexFunc(b.Ports, func(q layout.PortAt) bool { return q.ID == port.Port }); k >= 0 {
			return p.To(point(b.Ports[k].At))
		}
	}
	return nil
}
