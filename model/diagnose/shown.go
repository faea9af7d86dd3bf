package diagnose

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// clicks reports whether the coil of the main contactor has pulled in: the one whose
// contact carries most when the sound sheet drives.
func (c *Case) clicks(o, sound *outcome) bool {
	links := c.n.Links()
	main, most := -1, 0.0
	for i := range links {
		if l := &links[i]; l.Is(model.ContactElement) && l.Element.Coil != "" && math.Abs(sound.amps[i]) > most {
			main, most = i, math.Abs(sound.amps[i])
		}
	}
	if main < 0 {
		return false
	}
	for i := range links {
		if l := &links[i]; l.Is(model.CoilElement) && l.Part == links[main].Part && l.Element.ID == links[main].Element.Coil {
			return o.on[i]
		}
	}
	return false
}

// driven is the current of the drive's loads and windings in amperes.
func (c *Case) driven(o *outcome) float64 {
	return c.sum(o, func(l *network.Link) bool { return l.Is(model.LoadElement) && l.Def.Family == model.Drive })
}

// driveVolts is the voltage across the acting load of the drive.
func (c *Case) driveVolts(o *outcome) float64 {
	most := 0.0
	links := c.n.Links()
	for i := range links {
		l := &links[i]
		if l.Is(model.LoadElement) && l.Def.Family == model.Drive && o.on[i] && o.amps[i] >= heavyAmps && o.island[l.A] == o.island[l.B] {
			most = max(most, o.volts[l.A]-o.volts[l.B])
		}
	}
	return most
}

// charged is the current of the chargers in amperes.
func (c *Case) charged(o *outcome) float64 {
	return c.sum(o, func(l *network.Link) bool { return l.Is(model.ChargerElement) })
}

// reduced is the sum of the output voltages of the reducers.
func (c *Case) reduced(o *outcome) float64 {
	sum := 0.0
	links := c.n.Links()
	for i := range links {
		if l := &links[i]; l.Kind == network.OutputLink && l.Def.Family == model.Supply && o.island[l.A] == o.island[l.B] {
			sum += o.volts[l.A] - o.volts[l.B]
		}
	}
	return sum
}

// takesPower reports whether a link is of those that do something with what they are fed.
func takesPower(l *network.Link) bool {
	return l.Is(model.LoadElement) || l.Is(model.CoilElement) || l.Is(model.ResistanceElement) || l.Is(model.ConverterElement)
}

func (c *Case) sum(o *outcome, of func(*network.Link) bool) float64 {
	sum := 0.0
	links := c.n.Links()
	for i := range links {
		if of(&links[i]) {
			sum += math.Abs(o.amps[i])
		}
	}
	return sum
}
