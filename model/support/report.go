package support

import "example.com/lugbook/model/network"

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
	Unsolved  []string    `json:"unsolved"` // states that come to no rest, in words
}

// Of computes the report of a sheet.
func Of(n *network.Network, o Options) *Report {
	d := newDesk(n)
	return &Report{
		PreCharge: listed(d.preCharges()), Coils: listed(d.coils()), StandBy: d.standBy(),
		Charging: listed(d.charging(o.Branch)), Ranges: listed(d.ranges()), Unsolved: listed(d.errors),
	}
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
