package diagram

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// flag ends a wire on the page without a part.
type flag struct {
	id   string
	kind scene.FlagKind
	text string
	wire model.WireID
	end  model.End    // of the wire, that it stands for
	zone model.ZoneID // where it stands on the page
}

// flagPort is the id of a flag's only port.
const flagPort = "end"

var flagKinds = map[model.Loose]scene.FlagKind{
	model.Cut: scene.Cut, model.Capped: scene.Capped, model.Untraced: scene.Untraced,
}

// looseFlag is the flag of a loose end.
func looseFlag(w *model.Wire, side string, e model.End) flag {
	return flag{id: string(w.ID) + " " + side, kind: flagKinds[e.Loose], text: e.String(), wire: w.ID, end: e}
}

// awayFlag is the mark of a wire that goes on on another page. While it is not settled which
// one, it has the room for any number.
func (b *builder) awayFlag(w *model.Wire, side string, e model.End) flag {
	most := len(b.sheet.Parts) + len(b.sheet.Wires)
	number := strings.Repeat("0", len(fmt.Sprint(most)))
	if n, settled := b.where[e.At.Part]; settled {
		number = fmt.Sprint(n)
	}
	return flag{
		id: string(w.ID) + " " + side, kind: scene.OffPage, wire: w.ID, end: e,
		text: fmt.Sprintf("%s to %s, %spage %s", w.ID, e.At, b.zoneOf(e.At.Part), number),
	}
}

// How much of a zone's name stands in a mark, and on a page that is narrower than some.
const (
	zoneRoom   = 12
	briefRoom  = 8
	narrowPage = 100
)

// zoneOf is the zone of a part as a mark names it, with a blank behind it.
func (b *builder) zoneOf(id model.PartID) string {
	part := b.sheet.Part(id)
	if part == nil || part.Zone == "" || b.terse {
		return ""
	}
	room := zoneRoom
	if b.shape.Columns > 0 && b.shape.Columns < narrowPage {
		room = briefRoom
	}
	return scene.Shorten(b.zoneWords(part.Zone), room) + " "
}

// zoneWords is a zone by its name, or by its id if it has none.
func (b *builder) zoneWords(id model.ZoneID) string {
	if z := b.job.Zone(id); z != nil && z.Name != "" {
		return z.Name
	}
	return string(id)
}

func (f *flag) layoutBox() layout.Box {
	return layout.Box{
		ID: f.id, Zone: string(f.zone), W: scene.Width(f.text), H: 0,
		Ports: []layout.Port{{ID: flagPort, Sides: layout.SidesOf(layout.East, layout.West), Offset: -1}},
	}
}
