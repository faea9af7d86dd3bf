package support

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Short is a battery or pack whose poles are joined by metal, or several in a ring that
// drives its own current round.
type Short struct {
	Parts  []model.PartID `json:"parts"`
	IsRing bool           `json:"ring"`
}

// isRing reports whether a string closes on itself and its voltages do not cancel.
func isRing(s *network.String, firm *network.Groups) bool {
	return firm.Same(s.Low, s.High) && s.Volts > leftVolts
}

// shorts lists the sources that are shorted, and the rings of them.
func (d *desk) shorts() []Short {
	var list []Short
	for _, l := range d.n.Shorted() {
		list = append(list, Short{Parts: []model.PartID{l.Part.ID}})
	}
	firm := d.n.FirmGroups()
	strings := d.n.Strings()
	for i := range strings {
		if !isRing(&strings[i], firm) {
			continue
		}
		ring := Short{IsRing: true}
		for _, cell := range strings[i].Cells {
			ring.Parts = append(ring.Parts, cell.Link.Part.ID)
		}
		list = append(list, ring)
	}
	return list
}

// names lists the parts for a person.
func (s Short) names() string {
	names := make([]string, len(s.Parts))
	for i, id := range s.Parts {
		names[i] = string(id)
	}
	return strings.Join(names, ", ")
}

// why says what is wrong.
func (s Short) why() string {
	if s.IsRing {
		return fmt.Sprintf("%s are joined in a ring, the positive of each to the negative of the next", s.names())
	}
	return fmt.Sprintf("the poles of %s are joined by metal", s.names())
}

func (s Short) item() Item {
	return Item{Title: s.names(), Judgements: []Judgement{{Danger, s.why() + ": a dead short, none of its figures mean anything until it is parted"}}}
}
