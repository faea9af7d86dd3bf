package network

import "example.com/lugbook/model"

// Length is the length of a wire in metres along the conductor: as measured, else by
// the routed lengths of the runs between its zones, without tails and slack. It is
// false if neither is known.
func (n *Network) Length(w *model.Wire) (float64, bool) {
	if !w.Length.IsZero() {
		return w.Length.Metres(), true
	}
	zones := w.Via
	if len(zones) == 0 {
		zones = []model.ZoneID{n.zoneOf(w.From), n.zoneOf(w.To)}
	}
	if len(zones) < 2 {
		return 0, false
	}
	sum := 0.0
	for i := range zones[1:] {
		run, ok := n.job.RunLength(zones[i], zones[i+1])
		if !ok {
			return 0, false
		}
		sum += run.Metres()
	}
	return sum, true
}

func (n *Network) zoneOf(e model.End) model.ZoneID {
	if e.IsLoose() {
		return e.In
	}
	if p := n.parts[e.At.Part]; p != nil {
		return p.Zone
	}
	return ""
}
