package protect

import (
	"math"
	"slices"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
)

// Lead is the way of a conductor from where current enters, with nothing before it that
// protects it, to the first device: from a source, or from a device or a larger conductor
// that lets more through than the conductor carries.
type Lead struct {
	Entry   *network.Entry
	Metres  float64       // along the conductors to the device, from the source or from the last conductor that carries the entry's current; to the conductor's far end if there is no device
	Device  *network.Link // the first device; nil if there is none
	Allowed conductor.Placement
	Unknown []*network.Link // wires on the way whose length is not recorded; they count nothing
}

// Within reports whether the device is as near as the placement allows.
func (l Lead) Within() bool { return l.Device != nil && l.Metres <= l.Allowed.Within.Metres() }

// From is the source that the way starts at; nil if it starts at a device.
func (l Lead) From() *network.Feed { return l.Entry.Feed }

// limitsItself reports whether the current enters from something that limits it to what the
// conductor carries.
func (l Lead) limitsItself(c *Conductor) bool {
	return c.Capacity.Missing == "" && l.Entry.Amps <= c.Capacity.Most
}

// leads lists the ways on which current comes to a conductor that nothing before it
// protects.
func (s *Survey) leads(c *Conductor) []Lead {
	var list []Lead
	for i := range s.entries {
		e := &s.entries[i]
		leading := slices.Contains(e.Lead.Leading, c.Wire)
		if !leading && !slices.Contains(e.Lead.Open, c.Wire) {
			continue
		}
		l := Lead{Entry: e}
		if e.Feed == nil && l.limitsItself(c) {
			continue
		}
		s.follow(&l, c.Wire, leading)
		list = append(list, l)
	}
	return list
}

// follow measures a way to the device that it leads to, back to where it is not carried
// any more.
func (s *Survey) follow(l *Lead, w *network.Link, leading bool) {
	reach := l.Entry.Lead.Reach
	far := w.B
	if reach.Via(w.A) == w || reach.Metres(w.A) > reach.Metres(w.B) {
		far = w.A
	}
	path := reach.Path(far)
	if leading {
		for _, m := range l.Entry.Lead.Devices {
			if slices.Contains(m.Path, w) {
				l.Device, path = m.Device, m.Path
				break
			}
		}
	}
	sheathed, start := true, true
	for i := len(path) - 1; i >= 0; i-- {
		step := path[i]
		if step.Kind != network.WireLink {
			continue
		}
		if s.carriesEntry(l.Entry, step) {
			start = false
			break
		}
		sheathed = sheathed && step.Wire.Sheathed
		metres, known := s.net.Length(step.Wire)
		if !known {
			l.Unknown = append(l.Unknown, step)
		}
		l.Metres += metres
	}
	battery := start && l.Entry.Feed != nil && l.Entry.Feed.String != nil
	l.Allowed = Placement(s.net.Job(), sheathed, battery)
}

// carriesEntry reports whether a wire may carry what an entry lets in.
func (s *Survey) carriesEntry(e *network.Entry, w *network.Link) bool {
	if math.IsInf(e.Amps, 1) || e.IsUnrated() {
		return false
	}
	k := CapacityOf(s.net.Job(), s.net.Sheet, w.Wire, s.nominalAt(w))
	return k.Missing == "" && e.Amps <= k.Most
}
