package diagram

import (
	"slices"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// box is a part on a page with the places where its wires end.
type box struct {
	part  *model.Part
	def   *model.Definition // nil if the kind is unknown
	ports []port
}

// port is one place on a box: a terminal, or one lug's position on it.
type port struct {
	terminal string
	wire     model.WireID
	of       int // places of the terminal
	face     int // end of the part that it sits on; 0 if a drawing may choose

	seat      int  // position on a stud; 0 if not recorded or no order matters
	unordered bool // several lugs on a stud whose order is not recorded
}

// id names the port in the layout: the same while the wire stays on the terminal.
func (p port) id() string { return p.terminal + "/" + string(p.wire) }

// smallPart is the number of terminals up to which a part shows those without a wire.
const smallPart = 6

// box lists the ports of a part: one for each wire on a terminal, in stack order.
func (b *builder) box(p *model.Part) box {
	out := box{part: p, def: b.cat.Definition(p.Kind)}
	names := b.cat.TerminalsOf(b.sheet, p)
	for _, name := range names {
		at := model.TerminalRef{Part: p.ID, Name: name}
		order, known := b.sheet.StackOf(at)
		face := out.faceOf(name)
		for i, id := range order {
			place := port{terminal: name, of: len(order), wire: id, face: face}
			if b.stacked(out.def, name, len(order)) {
				place.unordered = !known
				if known {
					place.seat = i + 1
				}
			}
			out.ports = append(out.ports, place)
		}
		if len(order) == 0 && (b.options.Unwired || len(names) <= smallPart) {
			out.ports = append(out.ports, port{terminal: name, of: 1, face: face})
		}
	}
	return out
}

// faceOf is the end of the part that a terminal sits on; 0 if that is not known.
func (x *box) faceOf(terminal string) int {
	if x.def == nil {
		return 0
	}
	if t := x.def.Terminal(terminal); t != nil {
		return t.Face
	}
	return 0
}

// stacked reports whether the places of a terminal are an order of lugs on a stud.
func (b *builder) stacked(d *model.Definition, name string, lugs int) bool {
	if d == nil {
		return lugs > 1
	}
	t := d.Terminal(name)
	return t != nil && t.Form == model.StudForm
}

// label is what is written at a terminal. A point stands before a name that is a bare
// figure, as in part.terminal, so that it is not taken for a position on a stud; a
// question mark behind it says that several lugs are on it and their order is not recorded.
func (p port) label() string {
	name := p.terminal
	if strings.Trim(name, "0123456789") == "" {
		name = "." + name
	}
	if p.unordered {
		name += "?"
	}
	return name
}

// Room in a box, in cells.
const (
	seatRoom   = 2 // a lug's position and its bracket
	symbolRoom = 7 // a symbol in one row
	titleRoom  = 26
	leastBox   = 9
)

// size is the least box, its first row free for terminals, and its title.
func (x *box) size() (w, h, head int) {
	name := 0
	for _, p := range x.ports {
		need := scene.Width(p.label())
		if p.of > 1 || p.seat > 0 {
			need += seatRoom
		}
		name = max(name, need)
	}
	w = max(leastBox, 2*name+4)
	if x.symbol() != "" && len(x.def.Terminals) <= smallPart {
		w = max(w, 2*name+symbolRoom+4)
	}
	title := scene.Width(x.head()) + 1 + scene.Width(x.title()) + 4
	if title <= max(w, titleRoom) {
		return max(w, title), 3, 1
	}
	w = max(w, scene.Width(x.head())+4)
	lines := len(scene.Fold(x.title(), w-4))
	return w, 3 + lines, 1 + lines
}

func (x *box) head() string { return string(x.part.ID) + strings.Join(x.marks(), "") }

// mostTitle is how much of a name stands in a box; nobody reads an essay in a drawing.
const mostTitle = 80

// title is what stands in the box: what the part is, in words.
func (x *box) title() string { return scene.Shorten(x.name(), mostTitle) }

// name is what the part is, in words.
func (x *box) name() string {
	switch {
	case x.part.Name != "":
		return x.part.Name
	case x.def != nil:
		return short(x.def.Title)
	default:
		return "unknown part"
	}
}

// short is a kind's title without what it adds after a comma or in brackets.
func short(title string) string {
	if i := strings.IndexAny(title, ",("); i > 0 {
		return strings.TrimSpace(title[:i])
	}
	return title
}

func (x *box) symbol() string {
	if x.def == nil {
		return ""
	}
	return x.def.Symbol
}

// marks are the signs behind the designator: ! for a condition, ? for doubt.
func (x *box) marks() []string {
	var marks []string
	if len(x.part.Condition) > 0 {
		marks = append(marks, "!")
	}
	if x.def == nil || x.part.Confidence == model.NotTraced || x.part.Confidence == model.Assumed {
		marks = append(marks, "?")
	}
	return marks
}

// layoutBox describes the box to the layout. Terminals may sit on the left or the
// right in any order, but for those of a face; the places of one terminal stay together.
func (x *box) layoutBox() layout.Box {
	w, h, head := x.size()
	out := layout.Box{ID: string(x.part.ID), Zone: string(x.part.Zone), W: w - 1, H: h - 1, Head: head, Ordered: x.def != nil && x.def.InOrder}
	if at := x.part.Place; at != nil {
		out.Pin = &layout.Point{X: at.X, Y: at.Y}
	}
	for _, p := range x.ports {
		place := layout.Port{ID: p.id(), Face: p.face, Sides: layout.SidesOf(layout.East, layout.West), Offset: -1}
		if p.of > 1 {
			place.Group = p.terminal
		}
		out.Ports = append(out.Ports, place)
	}
	return out
}

// portOf finds the place of a wire on a terminal.
func (x *box) portOf(terminal string, id model.WireID) int {
	return slices.IndexFunc(x.ports, func(p port) bool { return p.terminal == terminal && p.wire == id })
}
