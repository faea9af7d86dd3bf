package diagnose

import (
	"fmt"
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

// deadWord after a part's name is the complaint that the part does nothing.
const deadWord = "dead"

func (c *Case) findComplaint(name string) (*complaint, error) {
	if id, word, two := strings.Cut(name, " "); two && word == deadWord {
		return c.deadPart(model.PartID(id))
	}
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
	return nil, fmt.Errorf("no complaint %q; known are: %s; PART %s", name, strings.Join(names, "; "), deadWord)
}

// deadPart is the complaint that a part takes nothing where it should: in the first state
// in which the sound sheet gives it half its most or more.
func (c *Case) deadPart(id model.PartID) (*complaint, error) {
	if c.n.Part(id) == nil {
		return nil, c.unknown("part", string(id), c.partNames())
	}
	takes := func(c *Case, o *outcome) float64 {
		return c.sum(o, func(l *network.Link) bool { return l.Part != nil && l.Part.ID == id && takesPower(l) })
	}
	best, most := -1, leastFelt
	for _, s := range c.offered {
		if o := c.sound.got[0][s].full; o != nil {
			if amps := takes(c, o); amps > 2*most || best < 0 && amps > most {
				best, most = s, amps
			}
		}
	}
	if best < 0 {
		return nil, fmt.Errorf("part %q takes nothing in any state, so that nobody can find it dead", id)
	}
	return &complaint{
		name: string(id) + " " + deadWord, about: string(id) + " does nothing", state: c.states[best].Name,
		shows: func(c *Case, o, sound *outcome) bool { return takes(c, o) < 0.3*takes(c, sound) },
	}, nil
}

func (c *Case) partNames() []string {
	names := make([]string, len(c.sheet.Parts))
	for i := range c.sheet.Parts {
		names[i] = string(c.sheet.Parts[i].ID)
	}
	return names
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

// trust is the part of the suspicion that a complaint's classes decide; the weights of
// the faults decide the rest, since the classes are from memory. Our choice.
const trust = 0.7

// priors are the weights of the faults as shares of all. The shares that a complaint gives
// its classes bend them.
func (w *weigher) priors() []float64 {
	faults := w.c.faults
	own, bent := make([]float64, len(faults)), make([]float64, len(faults))
	for i := range faults {
		own[i] = faults[i].Weight
	}
	scaleTo(own, 1)
	if w.complain == nil || len(w.complain.shares) == 0 {
		return own
	}
	copy(bent, own)
	listed := map[class]bool{}
	for _, s := range w.complain.shares {
		listed[s.of] = true
		rescale(bent, s.part, func(i int) bool { return faults[i].class == s.of })
	}
	rescale(bent, w.complain.rest, func(i int) bool { return !listed[faults[i].class] })
	scaleTo(bent, 1)
	for i := range own {
		own[i] = trust*bent[i] + (1-trust)*own[i]
	}
	return own
}

// rescale gives some of the shares a new sum.
func rescale(shares []float64, sum float64, of func(int) bool) {
	old := 0.0
	for i, s := range shares {
		if of(i) {
			old += s
		}
	}
	for i := range shares {
		if of(i) && old > 0 {
			shares[i] *= sum / old
		}
	}
}

// scaleTo gives all shares a new sum.
func scaleTo(shares []float64, sum float64) { rescale(shares, sum, func(int) bool { return true }) }
