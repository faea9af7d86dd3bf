package support

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// heldBack lists the states in which a contact would be closed but that its controller,
// which drives the coil and fills its own capacitor, holds it back until that is full: as
// solved with the contact open. Without such a controller there are none.
func (d *desk) heldBack(g gap) []*network.Solution {
	ohms, _ := (&basis{n: d.n}).figure(g.capacitor.Part, "precharge-resistance")
	if ohms <= 0 || !d.drives(g.capacitor.Part, g.contact) {
		return nil
	}
	var list []*network.Solution
	for _, name := range waiting {
		s := d.at(name)
		if s == nil || !s.On(g.contact) {
			continue
		}
		open := network.Variation{Changes: []network.Change{{Link: g.contact, Open: true}}}
		if held, err := d.n.SolveWith(s.State, open); err == nil {
			list = append(list, held)
		}
	}
	return list
}

// drives reports whether a driver of a controller switches the coil of a contact.
func (d *desk) drives(controller *model.Part, contact *network.Link) bool {
	links := d.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.CoilElement) || l.Part != contact.Part || l.Element.ID != contact.Element.Coil {
			continue
		}
		by, _ := d.driver(&winding{link: l, plus: l.A, minus: l.B})
		return by != nil && by.Part == controller
	}
	return false
}
