package diagnose

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Family groups faults of one nature.
type Family string

// The families of faults.
const (
	Healthy      Family = "nothing wrong"
	OpenWire     Family = "open wire"
	PoorJoint    Family = "poor joint"
	BlownFuse    Family = "blown fuse"
	StuckOpen    Family = "contact stuck open"
	Welded       Family = "contact welded"
	OpenPart     Family = "open inside" // a coil, winding or resistor
	Dead         Family = "does nothing"
	ReversedPart Family = "reversed diode"
	Shorted      Family = "shorted"
	Leak         Family = "frame leak"
	Asleep       Family = "pack off"
)

// Families lists the families in the order that their faults are listed in.
func Families() []Family {
	return []Family{Healthy, OpenWire, PoorJoint, BlownFuse, StuckOpen, Welded, OpenPart, Dead, ReversedPart, Shorted, Leak, Asleep}
}

// Fault is one thing that may be wrong, alone.
type Fault struct {
	ID     string // stable on a sheet, such as open:w12
	Family Family
	Text   string  // what is wrong: wire w12 is open
	Do     string  // what to do about it
	Weight float64 // how likely it is before any reading, against the others
	Basis  string  // where the weight comes from

	variants []int        // of the case, by rising ohms for a joint
	class    class        // for complaints
	at       network.Node // where it sits, roughly
}

// variant is a sheet with one fault of one size in it.
type variant struct {
	changes []network.Change
	bridges []network.Bridge
	shorts  bool // may blow fuses
}

// practice is the basis of the weights that common practice gives.
const practice = "common practice, no source; for ordering only"

// weights are how likely faults of a family are against each other: one fault of the
// family, not all together. Common practice, no source; for ordering only.
var weights = map[Family]float64{
	Healthy: 5, OpenWire: 0.6, PoorJoint: 0.5, BlownFuse: 4, StuckOpen: 4, Welded: 1, OpenPart: 3,
	Dead: 2, ReversedPart: 0.3, Shorted: 0.4, Leak: 0.5, Asleep: 4,
}

// seen are the factors by which a recorded condition raises the weight of a fault at the
// place it was seen. Common practice, no source.
var seen = map[Family]map[model.Condition]float64{
	OpenWire: {model.Broken: 5, model.Frayed: 4, model.Chafed: 3, model.Burnt: 3, model.Melted: 3, model.Spliced: 2, model.DoesntAct: 5},
	PoorJoint: {model.LooseFit: 6, model.Corroded: 6, model.Burnt: 6, model.Melted: 6, model.HeatMark: 6, model.Frayed: 3,
		model.Broken: 3, model.WrongLug: 4, model.Dirty: 2, model.Spliced: 2},
	BlownFuse: {model.Burnt: 4, model.Melted: 4, model.HeatMark: 3, model.Corroded: 2, model.DoesntAct: 5},
	StuckOpen: {model.DoesntAct: 6, model.Corroded: 3, model.Burnt: 3, model.Dirty: 2},
	Welded:    {model.Burnt: 4, model.HeatMark: 3, model.DoesntAct: 3, model.Bypassed: 4},
	OpenPart:  {model.DoesntAct: 6, model.Burnt: 4, model.Melted: 4},
	Dead:      {model.DoesntAct: 6, model.Burnt: 3, model.Melted: 3},
	Shorted:   {model.Burnt: 3, model.Melted: 3},
}

// raise is the largest of the factors of some conditions, and what was seen.
func raise(f Family, lists ...[]model.Condition) (factor float64, found model.Condition) {
	factor = 1
	for _, list := range lists {
		for _, c := range list {
			if by := seen[f][c]; by > factor {
				factor, found = by, c
			}
		}
	}
	return factor, found
}
