package protect

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
)

// RatingRule is the rule for the rating of a device before a wire in a circuit of a nominal
// voltage, with the limits as the job has them.
func RatingRule(j *model.Job, nominalVolts float64) conductor.RatingRule {
	r := conductor.RatingRuleFor(nominalVolts)
	name := basis.FuseShare
	if nominalVolts >= conductor.HighCircuit {
		name = basis.FuseShareHigh
		next, _ := j.LimitOf(basis.FuseNextSize)
		r.NextUp = next.SI()
		if j.OwnLimit(basis.FuseNextSize) {
			_, r.Basis = j.LimitOf(basis.FuseNextSize)
		}
	}
	share, source := j.LimitOf(name)
	r.Share = share.SI()
	if j.OwnLimit(name) {
		r.Basis = source
	}
	return r
}

// strainOf is the share of its ampacity that all devices before a wire may let through
// together.
func strainOf(j *model.Job) float64 {
	share, _ := j.LimitOf(basis.FuseShare)
	return share.SI()
}

// Placement is how far from its source a device may sit, with the limits as the job has them:
// sheathed if the conductor runs in a sheath or enclosure all the way to it, offBattery if it
// starts at a battery terminal.
func Placement(j *model.Job, sheathed, offBattery bool) conductor.Placement {
	at := conductor.PlacementFor(sheathed, offBattery)
	name := basis.FuseDistance
	switch at {
	case conductor.OffBattery:
		name = basis.FuseOffBattery
	case conductor.InSheath:
		name = basis.FuseSheathed
	}
	if !j.OwnLimit(name) {
		return at
	}
	value, source := j.LimitOf(name)
	if within, ok := value.Length(); ok {
		at.Within, at.Basis, at.Recalled = within, source, false
	}
	return at
}
