package model

import (
	"example.com/lugbook/model/unit"
)

// Definition says what a kind of part is: its terminals, what is electrically
// inside, its figures and where each figure comes from.
type Definition struct {
	Kind       string        `yaml:",key"`
	Title      string        `yaml:"title,required" doc:"what it is called in the trade"`
	Family     Family        `yaml:"family,required" doc:"the family it is listed under"`
	Designator string        `yaml:"designator,required" doc:"short designator for parts of this kind, such as sol"`
	About      string        `yaml:"about,required" doc:"what it does and how to tell it on a cart"`
	Symbol     string        `yaml:"symbol" doc:"standard graphical symbol on drawings"`
	Control    *Switching    `yaml:"control,flow" doc:"what a person or the cart sets on it"`
	Terminals  []TerminalDef `yaml:"terminals,keyed,flow" doc:"its terminals"`
	InOrder    bool          `yaml:"in-order" doc:"true where the terminals of one face sit in the order of the list, as the ways of a connector do"`
	Elements   []Element     `yaml:"elements,keyed,flow" doc:"what is electrically between its terminals"`
	Opening    string        `yaml:"opening" doc:"name of the time-current gates of the standard that such a fuse or breaker is made to"`
	Ratings    []Rating      `yaml:"ratings,keyed,flow" doc:"its figures with their sources"`
}

// Family groups the kinds of part in lists.
type Family string

// The families of the parts library.
const (
	Storage    Family = "storage"    // batteries and packs
	Drive      Family = "drive"      // controllers, motors, resistor banks
	Switchgear Family = "switchgear" // contactors, switches, selectors, relays
	Protection Family = "protection" // fuses, breakers, isolators
	ChargeGear Family = "charging"   // chargers, receptacles, charge computers
	Supply     Family = "supply"     // reducers, outlets
	Metering   Family = "metering"   // meters, shunts
	Loads      Family = "loads"      // lamps, horn, buzzer
	Joining    Family = "joining"    // posts, splices, connectors, frame points
	Support    Family = "support"    // resistors, diodes
)

// Names lists the families in the order of lists.
func (Family) Names() []string {
	return []string{
		string(Storage), string(Drive), string(Switchgear), string(Protection), string(ChargeGear),
		string(Supply), string(Metering), string(Loads), string(Joining), string(Support),
	}
}

// Switching is the control of a part: its positions and the one it rests in.
type Switching struct {
	Sets      Control  `yaml:"sets,required" doc:"which control of the cart it is"`
	Positions []string `yaml:"positions,required,flow" doc:"its positions"`
	Rest      string   `yaml:"rest,required" doc:"the position at rest"`
}

// Control is something that a person or the cart sets.
type Control string

// The controls of a cart.
const (
	Key         Control = "key"        // off, on
	TowRun      Control = "tow-run"    // tow, run
	Direction   Control = "direction"  // forward, neutral, reverse
	Pedal       Control = "pedal"      // up, down
	PluggedIn   Control = "plugged-in" // no, yes: the charger has its AC supply, or the old plug is in
	PackOn      Control = "pack-on"    // off, on: the pack's own switch
	LightSwitch Control = "lights"     // off, on
	HornButton  Control = "horn"       // off, on
	Isolator    Control = "isolator"   // open, closed
	BrakeSwitch Control = "brake"      // up, down
	OtherSwitch Control = "other"      // any switch that no state depends on
)

// Names lists the words that a definition may use.
func (Control) Names() []string {
	return []string{
		string(Key), string(TowRun), string(Direction), string(Pedal), string(PluggedIn), string(PackOn),
		string(LightSwitch), string(HornButton), string(Isolator), string(BrakeSwitch), string(OtherSwitch),
	}
}

// TerminalDef is a terminal of a kind of part.
type TerminalDef struct {
	Name   string    `yaml:",key"`
	Form   Form      `yaml:"form,required" doc:"how conductors land on it"`
	Stud   unit.Stud `yaml:"stud" doc:"stud size if it is a stud"`
	Means  string    `yaml:"means" doc:"what the terminal is in words"`
	Serves Service   `yaml:"serves" doc:"the kind of circuit it belongs to"`
	Pole   Pole      `yaml:"pole" doc:"its polarity if it has one"`
	Metal  Metal     `yaml:"metal" doc:"one piece of metal on the cart that all terminals of this mark are part of"`
	Face   int       `yaml:"face" doc:"1 or 2 where the terminals sit on two opposite ends of the part, or a line reads on through it; without it a drawing may put the terminal on either side"`
}

// Metal is a piece of metal that many terminals are part of. The zero value means none.
type Metal string

// FrameMetal is the frame of the cart: its bolts are one node.
const FrameMetal Metal = "frame"

// Names lists the words that a definition may use.
func (Metal) Names() []string { return []string{string(FrameMetal)} }

// Form is how conductors land on a terminal.
type Form string

// The forms of terminal.
const (
	StudForm  Form = "stud"  // ordered stack of lugs on a post
	TabForm   Form = "tab"   // push-on blade
	ScrewForm Form = "screw" // clamp or screw
	PinForm   Form = "pin"   // way of a multi-way connector
	LeadForm  Form = "lead"  // flying wire of the part itself
)

// Names lists the words that a definition may use.
func (Form) Names() []string {
	return []string{string(StudForm), string(TabForm), string(ScrewForm), string(PinForm), string(LeadForm)}
}

// Pole is the polarity that a terminal is made for. The zero value means none.
type Pole string

// The poles.
const (
	Positive Pole = "positive"
	Negative Pole = "negative"
)

// Names lists the words that a definition may use.
func (Pole) Names() []string { return []string{string(Positive), string(Negative)} }

// Terminal finds a terminal of the definition by name; nil if it has none of that name.
func (d *Definition) Terminal(name string) *TerminalDef {
	for i := range d.Terminals {
		if d.Terminals[i].Name == name {
			return &d.Terminals[i]
		}
	}
	return nil
}

// Rating finds a figure of the definition.
func (d *Definition) Rating(name string) (Rating, bool) {
	for i := range d.Ratings {
		if d.Ratings[i].Name == name {
			return d.Ratings[i], true
		}
	}
	return Rating{}, false
}
