package part

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// Term is the name of a figure: the same thing has the same name in every kind.
type Term struct {
	Name  string
	Of    unit.Dimension
	Means string
}

// vocabulary holds every name of a figure that the library uses.
var vocabulary = []Term{
	{"voltage", unit.Voltage, "nominal voltage"},
	{"rest-voltage", unit.Voltage, "voltage of a source, full and rested, without load"},
	{"full-voltage", unit.Voltage, "highest voltage of a source, at the end of its charge"},
	{"cutoff-voltage", unit.Voltage, "voltage at which a source is empty or its BMS opens"},
	{"cells", unit.Number, "cells in series"},
	{"capacity", unit.Charge, "charge from full to empty"},
	{"usable-share", unit.Ratio, "share of the capacity that may be used before it is charged again"},
	{"internal-resistance", unit.Resistance, "resistance inside a source"},
	{"fault-current", unit.Current, "current of a source into a dead short, before anything opens"},
	{"standby-current", unit.Current, "current that it takes while everything is off"},
	{"min-charge-temperature", unit.Temperature, "below this it must not be charged"},
	{"charge-lockout-temperature", unit.Temperature, "below this it refuses to be charged, or to charge"},

	{"continuous-current", unit.Current, "current that it carries or gives for long (one hour for a controller or motor)"},
	{"peak-current", unit.Current, "current that it carries or gives for some seconds"},
	{"phase-current", unit.Current, "alternating current of a motor phase for some minutes"},
	{"voltage-rating", unit.Voltage, "highest DC voltage that it may interrupt or carry"},
	{"interrupting-rating", unit.Current, "largest fault current that it clears"},

	{"charge-voltage", unit.Voltage, "end voltage of charge, that a charger gives or a pack takes"},
	{"charge-current", unit.Current, "charging current, that a charger gives or a pack takes at most"},
	{"regeneration-current", unit.Current, "current of braking for some seconds, that a controller gives back or a pack takes at most"},
	{"full-regeneration-current", unit.Current, "current of braking for some seconds that a pack takes when it is full"},
	{"branch-current", unit.Current, "breaker of the AC branch circuit that an inlet is plugged into"},
	{"ac-voltage", unit.Voltage, "AC supply voltage; of a switch or fuse, the AC voltage that it is marked for"},
	{"ac-current", unit.Current, "AC supply current"},
	{"power-factor", unit.Ratio, "real over apparent power on the AC side"},

	{"coil-voltage", unit.Voltage, "nominal voltage of a coil"},
	{"coil-resistance", unit.Resistance, "resistance of a coil"},
	{"pull-in-voltage", unit.Voltage, "voltage at which a coil pulls in"},
	{"drop-out-voltage", unit.Voltage, "voltage at which a coil lets go"},
	{"coil-time-constant", unit.Time, "inductance of a coil over its resistance"},
	{"clamp-voltage", unit.Voltage, "voltage at which something built in holds the kick of a coil; that of a diode if it is one"},
	{"contact-resistance", unit.Resistance, "resistance of a closed contact"},
	{"micro-resistance", unit.Resistance, "resistance of a closed micro switch"},
	{"micro-current", unit.Current, "current that a micro switch carries for long"},

	{"fuse-rating", unit.Current, "rated current of a fuse or breaker"},
	{"fuse-rating-1", unit.Current, "rated current of the fuse in way 1"},
	{"fuse-rating-2", unit.Current, "rated current of the fuse in way 2"},
	{"fuse-rating-3", unit.Current, "rated current of the fuse in way 3"},
	{"fuse-rating-4", unit.Current, "rated current of the fuse in way 4"},
	{"fuse-rating-5", unit.Current, "rated current of the fuse in way 5"},
	{"fuse-rating-6", unit.Current, "rated current of the fuse in way 6"},

	{"current", unit.Current, "current that a load takes while it is fed"},
	{"resistance", unit.Resistance, "resistance between its two terminals"},
	{"can-resistance", unit.Resistance, "resistance between CAN-H and CAN-L inside a device: 120 ohm if it terminates the pair, 10 kohm and more if not"},
	{"power-rating", unit.Power, "power that a resistor stands for long"},
	{"surge-power", unit.Power, "power that a resistor stands for five seconds"},
	{"cold-resistance", unit.Resistance, "resistance of a filament lamp that is cold"},
	{"forward-voltage", unit.Voltage, "voltage across a diode that conducts"},
	{"reverse-voltage", unit.Voltage, "voltage that a diode holds back"},

	{"min-input-voltage", unit.Voltage, "lowest supply voltage at which it works"},
	{"max-input-voltage", unit.Voltage, "highest supply voltage that it stands"},
	{"output-voltage", unit.Voltage, "voltage that a reducer gives"},
	{"output-current", unit.Current, "largest current that a reducer gives"},
	{"efficiency", unit.Ratio, "output power of a reducer or charger over its input power"},
	{"idle-current", unit.Current, "input current of a reducer that is awake without load"},
	{"wake-voltage", unit.Voltage, "voltage above which a wake lead counts as fed"},

	{"input-capacitance", unit.Capacitance, "capacitance across the supply of a controller"},
	{"precharge-resistance", unit.Resistance, "resistance inside through which a controller fills its own capacitor from the key input"},
	{"input-resistance", unit.Resistance, "resistance of an input to the negative"},
	{"input-threshold", unit.Voltage, "voltage above which an input counts as fed"},
	{"logic-current", unit.Current, "supply current of a controller's logic"},
	{"driver-current", unit.Current, "largest current of a low-side driver"},
	{"driver-resistance", unit.Resistance, "resistance of a low-side driver that is on"},
	{"throttle-voltage", unit.Voltage, "supply that a controller gives to the throttle"},
	{"throttle-current", unit.Current, "largest current of a sensor supply"},
	{"encoder-voltage", unit.Voltage, "supply that a controller gives to the encoder"},
	{"speed-sensor-voltage", unit.Voltage, "supply that a controller gives to the speed sensor"},
	{"field-current", unit.Current, "largest current of a separate field"},
	{"field-voltage", unit.Voltage, "voltage that a controller gives to a separate field at full current"},

	{"armature-resistance", unit.Resistance, "resistance of an armature with its brushes, at rest"},
	{"field-resistance", unit.Resistance, "resistance of a field winding"},
	{"phase-resistance", unit.Resistance, "resistance of a motor winding"},
	{"section-resistance", unit.Resistance, "resistance of one section of a resistor bank"},
	{"track-resistance", unit.Resistance, "resistance of a potentiometer from end to end"},
	{"wiper-resistance", unit.Resistance, "resistance left between wiper and the end it lies at"},
	{"pedal-up-resistance", unit.Resistance, "resistance of a two-wire throttle with the pedal up"},
}

// Vocabulary lists the names of figures with their kind of quantity and meaning,
// related ones together.
func Vocabulary() []Term { return slices.Clone(vocabulary) }

// TermOf finds a name of the vocabulary.
func TermOf(name string) (Term, bool) {
	i := slices.IndexFunc(vocabulary, func(t Term) bool { return t.Name == name })
	if i < 0 {
		return Term{}, false
	}
	return vocabulary[i], true
}

// misnamed lists the figures of a definition whose name is of the vocabulary but whose
// value is another kind of quantity.
func misnamed(d *model.Definition) []model.Fault {
	var faults []model.Fault
	for _, r := range d.Ratings {
		if t, ok := TermOf(r.Name); ok && t.Of != r.Value.Dimension() {
			faults = append(faults, model.Fault{Path: []string{"definitions", d.Kind, "ratings", r.Name, "value"}, Text: r.Value.String(),
				Message: "wrong kind of quantity for " + r.Name, Expected: fmt.Sprintf("a %s: %s", t.Of, t.Means)})
		}
	}
	return faults
}
