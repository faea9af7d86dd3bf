package support

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Pack is a lithium pack or a string of batteries with what its makers say of it. Figures
// that are not recorded are 0.
type Pack struct {
	Name       model.PartID `json:"name"` // of the pack, or of the highest battery of the string
	Batteries  int          `json:"batteries"`
	Cells      int          `json:"cells"`
	Nominal    float64      `json:"nominal"` // volts
	End        float64      `json:"end"`     // volts at the end of charge
	Ohms       float64      `json:"ohms"`    // inside
	AmpHours   float64      `json:"ampere_hours"`
	Usable     float64      `json:"usable"`       // ampere-hours
	Continuous float64      `json:"continuous"`   // amperes
	Peak       float64      `json:"peak"`         // amperes for some seconds
	Charge     float64      `json:"charge"`       // amperes
	Regen      float64      `json:"regeneration"` // amperes for some seconds

	Warm       float64        `json:"warm"`               // degrees C below which it must not be charged
	MustBeWarm bool           `json:"must_be_warm"`       // that such a limit is recorded
	Reversed   []model.PartID `json:"reversed,omitempty"` // batteries the wrong way round

	sources  []*network.Link
	recalled map[string]bool // limits that are the library's, by rating
}

// cellVolts is the nominal voltage of one cell; 0 if not known.
func (p Pack) cellVolts() float64 {
	if p.Cells == 0 {
		return 0
	}
	return p.Nominal / float64(p.Cells)
}

// IsLithium tells a lithium pack from lead-acid by its nominal voltage a cell: 3.2 V and
// more against 2 V.
func (p Pack) IsLithium() bool { return p.cellVolts() > 2.5 }

// pack reads the figures of a string: volts and ohms add up, the least of the rest counts.
func (d *desk) pack(f network.Feed, b *basis) Pack {
	p := Pack{Name: f.Link.Part.ID, Batteries: len(f.String.Cells), recalled: map[string]bool{}}
	for _, cell := range f.String.Cells {
		part := cell.Link.Part
		p.sources = append(p.sources, cell.Link)
		if cell.Reversed {
			p.Reversed = append(p.Reversed, part.ID)
		}
		if warm, ok := b.figure(part, "min-charge-temperature"); ok {
			p.Warm, p.MustBeWarm = warm, true
		}
		cells, _ := b.figure(part, "cells")
		p.Cells += int(cells)
		sum := func(to *float64, rating string) {
			v, _ := b.figure(part, rating)
			*to += v
		}
		sum(&p.Nominal, network.NominalRating)
		sum(&p.Ohms, cell.Link.Element.Ohms)
		end := cell.Link.Element.MaxVolts
		if _, ok := d.n.Cat.RatingOf(part, "charge-voltage"); ok {
			end = "charge-voltage"
		}
		sum(&p.End, end)
		lowest := func(to *float64, value float64) {
			if value > 0 && (*to == 0 || value < *to) {
				*to = value
			}
		}
		for _, limit := range []struct {
			rating string
			to     *float64
		}{
			{"capacity", &p.AmpHours}, {"continuous-current", &p.Continuous}, {"peak-current", &p.Peak},
			{"charge-current", &p.Charge}, {"regeneration-current", &p.Regen},
		} {
			v, _ := b.figure(part, limit.rating)
			lowest(limit.to, v)
			p.recalled[limit.rating] = p.recalled[limit.rating] || b.recalled(part, limit.rating)
		}
		lowest(&p.Usable, d.usable(part, b))
	}
	return p
}

// giving is the current in amperes out of a pack in a solved state; negative into it.
func (p Pack) giving(s *network.Solution) float64 {
	most := 0.0
	for _, l := range p.sources {
		if g := gives(s, l); math.Abs(g) > math.Abs(most) {
			most = g
		}
	}
	return most
}
