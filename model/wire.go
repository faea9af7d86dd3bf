package model

import (
	"slices"

	"example.com/lugbook/model/unit"
)

// WireID is a wire's number or name on a sheet: w12.
type WireID string

// Wire is one conductor between two ends. From and To have no electrical meaning:
// they only tell the ends apart.
type Wire struct {
	ID         WireID       `yaml:",key"`
	From       End          `yaml:"from,required" doc:"one end: part.terminal, cut, capped or untraced (a loose end may add its zone: cut in dash)"`
	To         End          `yaml:"to,required" doc:"the other end"`
	Gauge      unit.Gauge   `yaml:"gauge" doc:"conductor size, such as 6 AWG or 16 mm2"`
	Colour     Colour       `yaml:"colour" doc:"insulation colour after IEC 60757, body/stripe, such as RD or RD/WH"`
	Serves     Service      `yaml:"serves" doc:"the kind of circuit it serves"`
	Insulation unit.Celsius `yaml:"insulation" doc:"temperature rating of the insulation, such as 105 C"`
	Length     unit.Length  `yaml:"length" doc:"measured length along the conductor"`
	Via        []ZoneID     `yaml:"via,flow" doc:"zones it passes through, end to end, for a length by the runs"`
	Sheathed   bool         `yaml:"sheathed" doc:"true if it runs in a sheath or enclosure all the way"`
	FromLug    unit.Stud    `yaml:"from-lug" doc:"hole size of the lug at the from end"`
	ToLug      unit.Stud    `yaml:"to-lug" doc:"hole size of the lug at the to end"`
	FromBarrel unit.Gauge   `yaml:"from-barrel" doc:"conductor size that the barrel of the lug at the from end is made for"`
	ToBarrel   unit.Gauge   `yaml:"to-barrel" doc:"conductor size that the barrel of the lug at the to end is made for"`
	Material   Material     `yaml:"material" doc:"what the conductor is made of; copper unless said"`
	Supported  unit.Length  `yaml:"supported" doc:"longest stretch between two clips or ties"`
	Bend       unit.Length  `yaml:"bend" doc:"tightest radius that it is bent to"`
	Relieved   Answer       `yaml:"strain-relief" doc:"whether something else than its ends takes a pull on it"`
	Guarded    Answer       `yaml:"guarded" doc:"whether a grommet, loom or clearance guards it at every edge and hole"`
	Judged     []Judgement  `yaml:"judged,flow" doc:"what about it was judged, not proved"`
	Condition  []Condition  `yaml:"condition,flow" doc:"how it was found"`
	Confidence Confidence   `yaml:"confidence" doc:"how well it is known"`
	Bundle     string       `yaml:"bundle" doc:"loom or cable it runs in"`
	Mark       string       `yaml:"mark" doc:"what is printed on it"`
	Note       string       `yaml:"note" doc:"anything worth knowing"`
	Photos     []string     `yaml:"photos,flow" doc:"photos by path relative to the job file"`
}

// LandsOn reports whether either end of the wire is on the terminal.
func (w *Wire) LandsOn(at TerminalRef) bool {
	return !at.IsZero() && (w.From.At == at || w.To.At == at)
}

// Ends returns both ends, from first.
func (w *Wire) Ends() [2]End { return [2]End{w.From, w.To} }

// Far returns the end that is not on the given terminal.
func (w *Wire) Far(at TerminalRef) End {
	if w.From.At == at {
		return w.To
	}
	return w.From
}

// LugAt is the hole size of the lug on the given terminal; zero if not recorded.
func (w *Wire) LugAt(at TerminalRef) unit.Stud {
	if w.From.At == at {
		return w.FromLug
	}
	return w.ToLug
}

// BarrelAt is the conductor size that the lug on the given terminal is made for; zero if not
// recorded.
func (w *Wire) BarrelAt(at TerminalRef) unit.Gauge {
	if w.From.At == at {
		return w.FromBarrel
	}
	return w.ToBarrel
}

// IsJudged reports whether a property was judged and not proved.
func (w *Wire) IsJudged(j Judgement) bool { return slices.Contains(w.Judged, j) }

// Judgement names a property of a wire that was judged by eye and not proved.
type Judgement string

// The properties of a wire that can be judged.
const (
	JudgedFrom   Judgement = "from"
	JudgedTo     Judgement = "to"
	JudgedGauge  Judgement = "gauge"
	JudgedColour Judgement = "colour"
	JudgedLength Judgement = "length"
)

// Names lists the words that a job file may use.
func (Judgement) Names() []string {
	return []string{string(JudgedFrom), string(JudgedTo), string(JudgedGauge), string(JudgedColour), string(JudgedLength)}
}

// Service is the kind of circuit that a wire serves. The zero value means not recorded.
type Service string

// The kinds of circuit on a cart.
const (
	Traction  Service = "traction"  // pack, contactor, controller, motor
	Charging  Service = "charging"  // charger to pack
	Controls  Service = "control"   // key, pedal, direction, coil, signals
	Accessory Service = "accessory" // reducer, lights, horn, outlets
	Mains     Service = "mains"     // the AC side of the charger
)

// Names lists the words that a job file may use.
func (Service) Names() []string {
	return []string{string(Traction), string(Charging), string(Controls), string(Accessory), string(Mains)}
}
