package diagnose

import (
	"fmt"
	"math"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/strictyaml"
)

// complaint is what the customer says, as something that a solved sheet shows or not.
type complaint struct {
	name, about string
	state       string
	shares      []share
	rest        float64
	shows       func(c *Case, o, sound *outcome) bool
}

// share is how much of the suspicion a class of faults takes.
type share struct {
	of   class
	part float64
}

// complaints is the table of what customers say. The shares are from memory, for
// ordering only.
var complaints = []complaint{
	{
		name: "no click", about: "forward, pedal down: the contactor does not pull in", state: state.DriveForward,
		shares: []share{{pedalSwitch, .18}, {directionSwitch, .16}, {returnPath, .15}, {keySwitch, .10}, {coil, .10}, {pack, .09}, {mainPath, .09}, {controlFuse, .08}, {chainWire, .05}},
		shows:  func(c *Case, o, sound *outcome) bool { return !c.clicks(o, sound) },
	},
	{
		name: "clicks, no go", about: "the contactor pulls in, the cart does not move", state: state.DriveForward,
		shares: []share{{mainContact, .30}, {mainPath, .05}, {directionSwitch, .20}, {controller, .27}, {motor, .12}}, rest: .06,
		shows: func(c *Case, o, sound *outcome) bool { return c.clicks(o, sound) && c.driven(o) < 0.2*c.driven(sound) },
	},
	{
		name: "weak", about: "drives, but slow or cutting out on hills", state: state.DriveForward,
		shares: []share{{mainPath, .40}, {pack, .35}, {mainContact, .10}}, rest: .15,
		shows: func(c *Case, o, sound *outcome) bool {
			return c.driven(o) >= 0.2*c.driven(sound) && c.driveVolts(o) < 0.97*c.driveVolts(sound)
		},
	},
	{
		name: "does not charge", about: "plugged in, nothing flows into the pack", state: state.Charging,
		shows: func(c *Case, o, sound *outcome) bool { return c.charged(o) < 0.2*c.charged(sound) },
	},
	{
		name: "no 12 V", about: "key on: what runs on a reducer is dead", state: state.KeyOn,
		shows: func(c *Case, o, sound *outcome) bool { return c.reduced(o) < 0.8*c.reduced(sound) },
	},
}

// Complaint is something a customer says that faults are weighed by.
type Complaint struct{ Name, About string }

// Complaints lists what customers say.
func Complaints() []Complaint {
	list := make([]Complaint, len(complaints))
	for i, c := range complaints {
		list[i] = Complaint{c.name, c.about}
	}
	return list
}

func findComplaint(name string) (*complaint, error) {
	var names []string
	for i := range complaints {
		if strings.EqualFold(complaints[i].name, name) {
			return &complaints[i], nil
		}
		names = append(names, complaints[i].name)
	}
	if near := strictyaml.Nearest(name, names); near != "" {
		return nil, fmt.Errorf("no complaint %q; did you mean %q?", name, near)
	}
	return nil, fmt.Errorf("no complaint %q; known are: %s", name, strings.Join(names, "; "))
}

// deaf is the share of complaints that are not as told. Our choice.
const deaf = 0.03

// complained is how likely the complaint is if a fault of one size is there.
func (w *weigher) complained(p size) float64 {
	s := w.c.stateNamed(w.complain.state)
	if s < 0 {
		return 1
	}
	sound := w.p.got[0][s].full
	shown, tried := 0.0, 0.0
	for _, v := range []int{p.from, p.to} {
		tried++
		switch o := w.p.got[v][s].full; {
		case o == nil || sound == nil:
			shown += 0.5
		case w.complain.shows(w.c, o, sound):
			shown++
		}
	}
	return deaf + (1-2*deaf)*shown/tried
}

// priors are the weights of the faults as shares. A complaint that the notes of the trade
// know gives each class of faults its share.
func (w *weigher) priors() []float64 {
	c := w.c
	prior := make([]float64, len(c.faults))
	ofClass := map[class]float64{}
	for i := range c.faults {
		prior[i] = c.faults[i].Weight
		ofClass[c.faults[i].class] += prior[i]
	}
	if w.complain != nil && len(w.complain.shares) > 0 {
		part := map[class]float64{}
		rest := w.complain.rest + 0.02
		for _, s := range w.complain.shares {
			part[s.of] = s.part
		}
		others := 0.0
		for i := range c.faults {
			if part[c.faults[i].class] == 0 {
				others += prior[i]
			}
		}
		for i := range c.faults {
			if p := part[c.faults[i].class]; p > 0 {
				prior[i] *= p / ofClass[c.faults[i].class]
			} else {
				prior[i] *= rest / others
			}
		}
	}
	sum := 0.0
	for _, p := range prior {
		sum += p
	}
	for i := range prior {
		prior[i] /= sum
	}
	return prior
}

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
