package tui

import (
	"image"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/tui/nav"
)

// Distance from the edge of the drawing's pane at which it moves on by half its size.
const (
	edgeColumns = 8
	edgeRows    = 3
)

// goTo puts the cursor on a thing. One that is no longer on the sheet, as an older drawing may
// show it, is passed over.
func (d *desk) goTo(t thing) {
	if !t.on(d.sheet(), d.cat()) {
		return
	}
	d.cursor = t
	d.lug = ""
	if t.kind == wireThing {
		d.lug = t.wire
	}
	d.memory = nav.Position{At: -1}
	if p := d.picture(); p != nil {
		if i, drawn := p.index[t]; drawn && p.levels[t.kind].arrows != nil {
			d.memory = nav.At(p.levels[t.kind].member[i])
		}
	}
	d.follow()
}

// arrive keeps the cursor where it was on a new drawing; on the first one of a sheet it
// starts with the first thing.
func (d *desk) arrive(first bool) {
	lug := d.lug
	if p := d.picture(); d.cursor.kind == noThing {
		if first && len(p.order) > 0 {
			d.goTo(p.objects[p.order[0]].thing)
		}
		return
	}
	d.goTo(d.cursor)
	d.lug = lug
}

// move follows an arrow among things like the one that the cursor is on; from nowhere it
// goes to the part in the middle.
func (d *desk) move(dir nav.Dir) {
	if d.cursor.kind == noThing && d.picture() != nil {
		d.nearest(partThing, image.Rectangle{Min: d.view, Max: d.view.Add(d.plan.Canvas.Size())})
		return
	}
	d.moveAmong(d.cursor.kind, dir)
}

func (d *desk) moveAmong(k kind, dir nav.Dir) {
	p := d.picture()
	if p == nil {
		d.warn("nothing is drawn yet")
		return
	}
	level := &p.levels[k]
	if len(level.members) == 0 {
		return
	}
	if d.memory.At < 0 || d.memory.At >= len(level.members) || p.objects[level.members[d.memory.At]].thing != d.cursor {
		d.goTo(p.objects[level.members[0]].thing)
		return
	}
	next, moved := d.memory.Move(level.arrows, dir)
	if !moved {
		return
	}
	d.goTo(p.objects[level.members[next.At]].thing)
	d.memory = next
}

// step walks all things in reading order, by so many.
func (d *desk) step(by int) {
	p := d.picture()
	if p == nil || len(p.order) == 0 {
		return
	}
	at := 0
	if i, drawn := p.index[d.cursor]; drawn {
		n := len(p.order)
		at = ((slices.Index(p.order, i)+by)%n + n) % n
	}
	d.goTo(p.objects[p.order[at]].thing)
}

// inside goes from a part to its first terminal, from there to the lit wire, and from a
// wire to its card.
func (d *desk) inside() tea.Cmd {
	switch d.cursor.kind {
	case partThing:
		if names := d.terminals(d.cursor.at.Part); len(names) > 0 {
			d.goTo(ofTerminal(names[0]))
			return nil
		}
	case terminalThing:
		if w := d.litWire(); w != "" {
			d.goTo(ofWire(w))
			return nil
		}
	case looseThing:
		d.goTo(ofWire(d.cursor.wire))
		return nil
	}
	return openCard(d)
}

// outside goes from a wire to its from end, from a terminal to its part.
func (d *desk) outside() {
	switch d.cursor.kind {
	case terminalThing:
		d.goTo(ofPart(d.cursor.at.Part))
	case wireThing, looseThing:
		w := d.sheet().Wire(d.cursor.wire)
		switch {
		case !w.From.IsLoose():
			d.goTo(ofTerminal(w.From.At))
		case !w.To.IsLoose():
			d.goTo(ofTerminal(w.To.At))
		case d.cursor.kind == looseThing:
			d.goTo(ofWire(w.ID))
		}
		d.lug = w.ID
	}
}

// terminals lists a part's terminals, those that are drawn first and as they are read.
func (d *desk) terminals(id model.PartID) []model.TerminalRef {
	var refs []model.TerminalRef
	if p := d.work.picture; p != nil {
		for _, i := range p.order {
			if o := p.objects[i]; o.kind == terminalThing && o.at.Part == id && o.on(d.sheet(), d.cat()) {
				refs = append(refs, o.at)
			}
		}
	}
	if part := d.sheet().Part(id); part != nil {
		for _, name := range d.cat().TerminalsOf(d.sheet(), part) {
			if at := (model.TerminalRef{Part: id, Name: name}); !slices.Contains(refs, at) {
				refs = append(refs, at)
			}
		}
	}
	return refs
}

// litWire is the wire that is lit end to end: the selected one, or the lit lug of the
// selected terminal. It is empty if there is none.
func (d *desk) litWire() model.WireID {
	switch d.cursor.kind {
	case wireThing, looseThing:
		return d.cursor.wire
	case terminalThing:
		order, _ := d.sheet().StackOf(d.cursor.at)
		if slices.Contains(order, d.lug) {
			return d.lug
		}
		if len(order) > 0 {
			return order[0]
		}
	}
	return ""
}

// nextLug lights another lug of the selected terminal, outward or towards the seat.
func (d *desk) nextLug(by int) {
	order, _ := d.sheet().StackOf(d.cursor.at)
	at := slices.Index(order, d.litWire())
	if n := len(order); n > 0 {
		d.lug = order[(at+by+n)%n]
	}
}

// followWire jumps to the far end of the lit wire; again, and it returns.
func (d *desk) followWire() {
	w := d.sheet().Wire(d.litWire())
	side := edit.To
	switch {
	case d.cursor == ofEnd(w, edit.To):
		side = edit.From
	case d.cursor.kind == wireThing && w.To.IsLoose():
		side = edit.From
	}
	d.goTo(ofEnd(w, side))
	d.lug = w.ID
}

// follow moves the drawing by halves of its pane until the cursor is well inside. What the mouse
// is on stays where it is.
func (d *desk) follow() {
	pane := d.plan.Canvas.Size()
	p := d.picture()
	if p == nil || pane.X <= 0 || pane.Y <= 0 {
		return
	}
	at, drawn := p.place(d.cursor)
	if l, moving := topOf[*moveLayer](d); moving {
		at = at.Add(l.by)
	}
	shown := image.Rectangle{Min: d.view, Max: d.view.Add(pane)}
	if drawn && !(d.pointed && at.Overlaps(shown)) && !d.dragging() {
		d.view.X = pan(d.view.X, at.Min.X, at.Max.X, pane.X, edgeColumns)
		d.view.Y = pan(d.view.Y, at.Min.Y, at.Max.Y, pane.Y, edgeRows)
	}
	on := d.onScreen().grid
	d.view.X = bound(d.view.X, on.W, pane.X)
	d.view.Y = bound(d.view.Y, on.H, pane.Y)
}

// dragging reports whether the mouse holds something.
func (d *desk) dragging() bool {
	switch top := d.top().(type) {
	case *moveLayer:
		return top.mouse
	case *pullLayer:
		return top.mouse
	}
	return false
}

// pan moves the first shown cell so that the cells from low up to high are shown, with
// room around them if there is some.
func pan(first, low, high, shown, edge int) int {
	edge = min(edge, max(0, (shown-(high-low))/2))
	half := max(1, shown/2)
	for high+edge > first+shown && first < low-edge {
		first = min(first+half, low-edge)
	}
	for low-edge < first && first > 0 {
		first = max(0, first-half)
	}
	return first
}

// bound keeps the pane on the drawing.
func bound(first, size, shown int) int { return max(0, min(first, size-shown)) }

// look moves the drawing by halves of the pane, the cursor staying where it is unless it
// would leave the pane.
func (d *desk) look(dx, dy int) {
	p := d.picture()
	if p == nil {
		return
	}
	pane := d.plan.Canvas.Size()
	d.view.X = bound(d.view.X+dx*max(1, pane.X/2), p.grid.W, pane.X)
	d.view.Y = bound(d.view.Y+dy*max(1, pane.Y/2), p.grid.H, pane.Y)
	shown := image.Rectangle{Min: d.view, Max: d.view.Add(pane)}
	if at, drawn := p.place(d.cursor); drawn && !at.Overlaps(shown) {
		d.nearest(d.cursor.kind, shown)
	}
}

// nearest puts the cursor on the thing of a kind that is nearest to the middle of what is
// shown, of those that are in view if any is.
func (d *desk) nearest(k kind, shown image.Rectangle) {
	p, middle := d.picture(), shown.Min.Add(shown.Size().Div(2))
	best, far, inView := -1, 0, false
	for _, i := range p.levels[k].members {
		r := p.objects[i].rect
		off := r.Min.Add(r.Size().Div(2)).Sub(middle)
		distance, seen := off.X*off.X+4*off.Y*off.Y, r.Overlaps(shown)
		if best < 0 || seen && !inView || seen == inView && distance < far {
			best, far, inView = i, distance, seen
		}
	}
	if best >= 0 && (inView || d.cursor.kind == noThing) {
		d.goTo(p.objects[best].thing)
	}
}
