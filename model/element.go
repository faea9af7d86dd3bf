package model

// Element is one electrical thing inside a part, between its terminals. The
// figures that it needs are ratings of the part, named here, so that a label read off
// the part changes how the part behaves.
type Element struct {
	ID      string      `yaml:",key"`
	Is      ElementKind `yaml:"is,required" doc:"what it is"`
	Between []string    `yaml:"between,required,flow" doc:"its two terminals; the first is the positive side where polarity matters (anode of a diode)"`

	// Figures, by the name of a rating.
	Volts    string `yaml:"volts" doc:"rating with its voltage: open-circuit of a source, nominal of a coil or load, output of a converter"`
	Ohms     string `yaml:"ohms" doc:"rating with its resistance: of a resistance or coil, internal of a source, closed of a contact or fuse"`
	Amps     string `yaml:"amps" doc:"rating with its current: of a load, limit of a charger or converter, rating of a fuse"`
	Watts    string `yaml:"watts" doc:"rating with its power, for a load of constant power"`
	Farads   string `yaml:"farads" doc:"rating with its capacitance"`
	MaxVolts string `yaml:"max-volts" doc:"rating with the highest voltage it stands or, for a source, gives at full charge"`

	Polarised bool `yaml:"polarised" doc:"true if it must see its first terminal positive whenever it is fed"`

	// What drives an element. A contact with none of these stays at rest; anything else
	// with none of these always acts.
	ClosedIn []string `yaml:"closed-in,flow" doc:"positions of the part's own control in which a contact is closed, or a source, charger or load acts"`
	Coil     string   `yaml:"coil" doc:"coil element that moves a contact"`
	Rest     Rest     `yaml:"rest" doc:"how a coil-driven or fed contact rests; open if not said"`
	Fed      []string `yaml:"fed,flow" doc:"terminals that must all be fed, against the reference, for a contact to move, a converter to wake or a load to act"`
	Blocked  []string `yaml:"blocked,flow" doc:"terminals that hold the element at rest while any of them is fed"`
	Against  string   `yaml:"against" doc:"reference terminal of fed and blocked"`
	PullIn   string   `yaml:"pull-in" doc:"rating with the voltage at which a coil pulls in, or above which fed counts"`

	Out      []string `yaml:"out,flow" doc:"output terminals of a converter, positive first"`
	OutVolts string   `yaml:"out-volts" doc:"rating with the output voltage of a converter"`
}

// ElementKind says what an element is.
type ElementKind string

// The elements.
const (
	SourceElement     ElementKind = "source"     // EMF with internal resistance
	ResistanceElement ElementKind = "resistance" // ohmic
	JoinElement       ElementKind = "join"       // plain metal: a bar, a pass-through, a closed link
	ContactElement    ElementKind = "contact"    // opens and closes
	CoilElement       ElementKind = "coil"       // moves contacts
	FuseElement       ElementKind = "fuse"       // opens on overcurrent
	DiodeElement      ElementKind = "diode"      // first terminal is the anode
	LoadElement       ElementKind = "load"       // takes current or power while fed
	ConverterElement  ElementKind = "converter"  // reducer: in between, out out
	ChargerElement    ElementKind = "charger"    // source while it has AC
	CapacitorElement  ElementKind = "capacitor"  // open for steady DC
)

// Names lists the words that a definition may use.
func (ElementKind) Names() []string {
	return []string{
		string(SourceElement), string(ResistanceElement), string(JoinElement), string(ContactElement),
		string(CoilElement), string(FuseElement), string(DiodeElement), string(LoadElement),
		string(ConverterElement), string(ChargerElement), string(CapacitorElement),
	}
}

// Rest is how a contact rests. The zero value is open.
type Rest string

// The rest states of a contact.
const (
	RestOpen   Rest = "open"
	RestClosed Rest = "closed"
)

// Names lists the words that a definition may use.
func (Rest) Names() []string { return []string{string(RestOpen), string(RestClosed)} }
