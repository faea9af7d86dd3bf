package protect

import (
	"slices"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
)

// Lead is the unprotected way of a conductor from a source: nothing stands between them.
type Lead struct {
	Source  *network.Feed
	From    float64       // metres along the conductors from the source to the conductor's near end
	Until   float64       // and to the first device beyond it; to its far end if there is none
	Device  *network.Link // that device; nil if there is none
	Allowed conductor.Placement
	Unknown []*network.Link // wires on the way whose length is not recorded; they count nothing
	Limits  bool            // the source limits its own current, to Source.Limit
}

// Metres is how far from the source the first device stands.
func (l Lead) Metres() float64 { return l.Until }

// Within reports whether the device is as near as the placement allows.
func (l Lead) Within() bool { return l.Device != nil && l.Until <= l.Allowed.Within.Metres() }

// leads lists the sources that reach a wire before any device.
func (s *survey) leads(w *network.Link) []Lead {
	var list []Lead
	for i := range s.feeds {
		f := &s.feeds[i]
		if s.returns[f.At] {
			continue
		}
		in := s.leadIn(f)
		if !slices.Contains(in.Open, w) && !slices.Contains(in.Leading, w) {
			continue
		}
		list = append(list, s.lead(f, in, w))
	}
	return list
}

func (s *survey) leadIn(f *network.Feed) *network.LeadIn {
	if in, done := s.leadIns[f]; done {
		return in
	}
	in := s.net.LeadIn(f.At, s.returns)
	s.leadIns[f] = in
	return in
}

func (s *survey) lead(f *network.Feed, in *network.LeadIn, w *network.Link) Lead {
	near, far := w.A, w.B
	if in.Reach.Metres(far) < in.Reach.Metres(near) || in.Reach.Via(near) == w {
		near, far = far, near
	}
	l := Lead{Source: f, From: in.Reach.Metres(near), Limits: f.String == nil}
	l.Until = in.Reach.Metres(far)
	path := in.Reach.Path(far)
	for _, m := range in.Devices {
		if slices.Contains(m.Path, w) {
			l.Device, l.Until, path = m.Device, in.Reach.Metres(m.At), m.Path
			break
		}
	}
	sheathed := true
	for _, step := range path {
		if step.Kind != network.WireLink {
			continue
		}
		sheathed = sheathed && step.Wire.Sheathed
		if _, known := s.net.Length(step.Wire); !known {
			l.Unknown = append(l.Unknown, step)
		}
	}
	l.Allowed = conductor.PlacementFor(sheathed, f.String != nil)
	return l
}
