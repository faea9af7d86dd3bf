package both

import (
	"slices"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

var changes = map[compare.What]scene.Change{
	compare.Kept: scene.Kept, compare.Removed: scene.Removed, compare.Added: scene.Added,
	compare.Moved: scene.Moved, compare.Changed: scene.Changed,
}

// Mark tells on the pages of a merged sheet what became of each part and wire, and gives
// the lugs the positions that they have on the sheet that they are on.
func Mark(pages []scene.Page, c *compare.Comparison) {
	parts, wires := map[string]*compare.Part{}, map[string]*compare.Wire{}
	for i := range c.Parts {
		parts[string(c.Parts[i].ID)] = &c.Parts[i]
	}
	for i := range c.Wires {
		wires[string(c.Wires[i].ID)] = &c.Wires[i]
	}
	for i := range pages {
		p := &pages[i]
		ends := map[scene.Point]model.WireID{}
		for k := range p.Wires {
			w := &p.Wires[k]
			if d := wires[w.ID]; d != nil {
				w.Change = changes[d.What]
				w.Title += "; " + told(d.What, d.Differs)
			}
			if len(w.Path) > 0 {
				ends[w.Path[0]], ends[w.Path[len(w.Path)-1]] = model.WireID(w.ID), model.WireID(w.ID)
			}
		}
		for k := range p.Boxes {
			b := &p.Boxes[k]
			if d := parts[b.ID]; d != nil {
				b.Change = changes[d.What]
				b.Title += "; " + told(d.What, d.Differs)
				seats(b, ends, c)
			}
		}
	}
}

// told is what became of a thing in one line.
func told(what compare.What, differs []compare.Difference) string {
	words := string(what)
	for _, d := range differs {
		words += ", " + Words(d)
	}
	return words
}

// Words is a difference in words: gauge 4 AWG, was 6 AWG.
func Words(d compare.Difference) string {
	nothing := "not recorded"
	if d.Field == "condition" {
		nothing = "good" // no condition recorded means that nothing wrong was seen
	}
	was, is := d.Was, d.Is
	if was == "" {
		was = nothing
	}
	if is == "" {
		is = nothing
	}
	return d.Field + " " + is + ", was " + was
}

// seats puts right the positions of lugs: on the merged sheet lugs of both sheets share a
// stud, and no order of them all is recorded.
func seats(b *scene.Box, ends map[scene.Point]model.WireID, c *compare.Comparison) {
	for i := range b.Ports {
		p := &b.Ports[i]
		wire, wired := ends[p.At]
		if !wired || p.Seat == 0 && p.Name == p.ID {
			continue // no lug, or no stack
		}
		at := model.TerminalRef{Part: model.PartID(b.ID), Name: p.ID}
		sheet := c.Is
		if sheet.Wire(wire) == nil {
			sheet = c.Was
		}
		order, known := sheet.StackOf(at)
		p.Seat, p.Name = 0, p.ID
		switch k := slices.Index(order, wire); {
		case !known:
			p.Name = p.ID + "?"
		case k >= 0 && sheet == c.Is || k >= 0 && c.Is.Part(at.Part) == nil:
			p.Seat = k + 1
		}
	}
	names(b)
}

// names gives all positions of a stud one name: with a question mark if any is in doubt.
func names(b *scene.Box) {
	for i := range b.Ports {
		if p := &b.Ports[i]; p.Name != p.ID {
			for k := range b.Ports {
				if b.Ports[k].ID == p.ID {
					b.Ports[k].Name = p.Name
				}
			}
		}
	}
}
