package support

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// Options are what a person may say beside the sheet.
type Options struct {
	Branch float64 // amperes of the AC branch circuit of the chargers; 0: an ordinary one is assumed
}

// Report is everything that the package computes of one sheet.
type Report struct {
	PreCharge []PreCharge `json:"pre_charge"`
	Coils     []Coil      `json:"coils"`
	StandBy   *StandBy    `json:"stand_by"` // nil if the sheet has no battery or comes to no rest
	Charging  []Charging  `json:"charging"`
	Ranges    []Range     `json:"currents"`
	Shorts    []Short     `json:"shorts"`   // batteries and packs that are shorted; they are in nothing else
	Unsolved  []string    `json:"unsolved"` // states that could not be computed, each with why

	noPreCharge, noStandBy, noCharging string // why there is nothing of them, if not for want of parts
}

// Of computes the report of a sheet.
func Of(n *network.Network, o Options) *Report {
	d := newDesk(n)
	r := &Report{
		PreCharge: listed(d.preCharges()), Coils: listed(d.coils()), StandBy: d.standBy(),
		Charging: listed(d.charging(o.Branch)), Ranges: listed(d.ranges()), Shorts: listed(d.shorts()), Unsolved: listed(d.unsolved),
	}
	r.noPreCharge, r.noStandBy = d.whyNot(waiting...), d.whyNot(state.Parked)
	if r.noStandBy == "" && len(r.Shorts) > 0 {
		r.noStandBy = "not computed: " + r.Shorts[0].why()
	}
	if slices.ContainsFunc(n.Links(), func(l network.Link) bool { return l.Is(model.ChargerElement) }) {
		r.noCharging = d.whyNot(state.Charging)
	}
	return r
}

// listed is a list that prints as one in JSON even if it is empty.
func listed[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// StandByOf computes the drain at rest alone; nil as in Report.
func StandByOf(n *network.Network) *StandBy { return newDesk(n).standBy() }

// IsBad reports whether anything was judged worse than a caution.
func (r *Report) IsBad() bool {
	for _, section := range r.Sections() {
		for _, item := range section.Items {
			for _, j := range item.Judgements {
				if j.Grade.IsBad() {
					return true
				}
			}
		}
	}
	return false
}
