package protect

import (
	"slices"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Pair is two devices in series: what is downstream is meant to open first.
type Pair struct {
	Up, Down *network.Link
	Amps     float64 // the greatest fault right behind the downstream one
	Verdict  opening.Verdict
}

// Pairs lists the devices in series next to each other.
func (s *Survey) Pairs() []Pair {
	var list []Pair
	seen := map[[2]*network.Link]bool{}
	for _, e := range s.entries {
		if len(e.Limits) != 1 || !isDevice(e.Limits[0]) || e.Lead == nil {
			continue
		}
		up := e.Limits[0]
		if e.At != up.A && e.At != up.B {
			continue // limited by it from farther away
		}
		for _, m := range e.Lead.Devices {
			key := [2]*network.Link{up, m.Device}
			if m.Device == up || seen[key] || seen[[2]*network.Link{m.Device, up}] || s.feedsInto(m.Device, e.Lead) {
				continue
			}
			seen[key] = true
			list = append(list, s.pair(up, m.Device))
		}
	}
	return list
}

// feedsInto reports whether a device is fed from its own far side as well, and so stands
// beside what feeds a lead and not behind it.
func (s *Survey) feedsInto(d *network.Link, lead *network.LeadIn) bool {
	return slices.ContainsFunc(s.entries, func(e network.Entry) bool {
		return slices.Contains(e.Limits, d) && lead.Reach.Has(e.At)
	})
}

func (s *Survey) pair(up, down *network.Link) Pair {
	d := s.Device(down)
	return Pair{Up: up, Down: down, Amps: d.through, Verdict: opening.Selective(d.Curve, s.Curve(up), d.through)}
}
