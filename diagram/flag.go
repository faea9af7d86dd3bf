package diagram

import (
	"fmt"

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
	zone model.ZoneID      // where it stands on the page
	away model.TerminalRef // where the wire goes on, for a mark to another page
}

// flagPort is the id of a flag's only port.
const flagPort = "end"

var flagKinds = map[model.Loose]scene.FlagKind{
	model.Cut: scene.Cut, model.Capped: scene.Capped, model.Untraced: scene.Untraced,
}

// looseFlag is the flag of a loose end; zone is that of the wire's other end.
func looseFlag(w *model.Wire, side string, e model.End, zone model.ZoneID) flag {
	return flag{id: string(w.ID) + " " + side, kind: flagKinds[e.Loose], text: e.String(), wire: w.ID, zone: zone}
}

// awayFlag is the mark of a wire that goes on on another page. Its text is completed
// when the pages have their numbers.
func (b *builder) awayFlag(w *model.Wire, side string, e model.End, zone model.ZoneID) flag {
	return flag{
		id: string(w.ID) + " " + side, kind: scene.OffPage, wire: w.ID, zone: zone, away: e.At,
		text: fmt.Sprintf("%s to %s, p00", w.ID, e.At),
	}
}

// zoneWords is a zone by its name, or by its id if it has none.
func (b *builder) zoneWords(id model.ZoneID) string {
	if z := b.job.Zone(id); z != nil && z.Name != "" {
		return z.Name
	}
	return string(id)
}

// number completes the text of a mark to another page.
func (f *flag) number(b *builder, pages []page) string {
	part := b.sheet.Part(f.away.Part)
	for i := range pages {
		if pages[i].holds(part.Zone) {
			return fmt.Sprintf("%s to %s, p%d", f.wire, f.away, pages[i].number)
		}
	}
	return f.text
}

func (f *flag) layoutBox() layout.Box {
	return layout.Box{
		ID: f.id, Zone: string(f.zone), W: scene.Width(f.text), H: 0,
		Ports: []layout.Port{{ID: flagPort, Sides: layout.SidesOf(layout.East, layout.West), Offset: -1}},
	}
}
