package model

import (
	"strings"

	"example.com/lugbook/model/unit"
)

// PartID is a part's designator on a sheet, short and in the trade's words: sol, ctrl, b3.
type PartID string

// UnknownKind is the kind of a part that nobody has identified yet. Such a part
// has the terminals that its wires name.
const UnknownKind = "unknown"

// Part is one physical thing on a sheet.
type Part struct {
	ID         PartID      `yaml:",key"`
	Kind       string      `yaml:"kind,required" doc:"kind of part in the parts library, or unknown"`
	Name       string      `yaml:"name" doc:"what it is in words"`
	Zone       ZoneID      `yaml:"zone" doc:"where on the cart it sits"`
	Ratings    []Rating    `yaml:"ratings,keyed,flow" doc:"figures read off this very part; they stand above the library's"`
	Opening    string      `yaml:"opening" doc:"name of the time-current gates that this very fuse or breaker is made to"`
	Opens      []OpenPoint `yaml:"opens,flow" doc:"its time-current curve as its maker publishes it, by rising current"`
	Place      *Place      `yaml:"place,flow" doc:"where a person put its box on the drawing; it stays there"`
	Secured    Answer      `yaml:"secured" doc:"whether it is held so that it cannot move"`
	Condition  []Condition `yaml:"condition,flow" doc:"how it was found"`
	Confidence Confidence  `yaml:"confidence" doc:"how well it is known"`
	Note       string      `yaml:"note" doc:"anything worth knowing"`
	Photos     []string    `yaml:"photos,flow" doc:"photos by path relative to the job file"`
}

// Place is the top left corner of a part's box on the drawing, in grid cells.
type Place struct {
	X int `yaml:"x,required" doc:"columns from the left"`
	Y int `yaml:"y,required" doc:"rows from the top"`
}

// maxPlace is the farthest column or row of a place: beyond any sheet, near enough for
// every drawing to be computed.
const maxPlace = 10_000

// PlaceRange says in words which places are on a drawing.
const PlaceRange = "columns and rows from 0 to 10000"

// OnDrawing reports whether a box can be placed there.
func (p Place) OnDrawing() bool {
	return min(p.X, p.Y) >= 0 && max(p.X, p.Y) <= maxPlace
}

// Rating is one figure of a part or of a part definition.
type Rating struct {
	Name   string   `yaml:",key"`
	Value  unit.Any `yaml:"value,required,scalar" doc:"the figure with its unit, such as 250 A"`
	Source string   `yaml:"source" doc:"where the figure comes from: label, maker's record, a standard, or typical, from memory; replace by the label"`
}

// check finds a figure that cannot be: one below nothing that is no temperature, or a share
// above the whole.
func (r Rating) check(path []string) []Fault {
	size := r.Value.SI()
	switch {
	case size < 0 && r.Value.Dimension() != unit.Temperature:
		return []Fault{{Path: join(path, "value"), Text: r.Value.String(), Message: "a figure below nothing", Expected: "the figure without its sign; which terminal is positive is said elsewhere"}}
	case size > 1 && r.Value.Dimension() == unit.Ratio:
		return []Fault{{Path: join(path, "value"), Text: r.Value.String(), Message: "a share above the whole", Expected: "at most 100 %"}}
	}
	return nil
}

// Typical is the source of a library figure that nobody has confirmed.
const Typical = "typical, from memory; replace by the label"

// TerminalRef names a terminal as the job file, the commands and the drawings do: part.terminal.
type TerminalRef struct {
	Part PartID
	Name string
}

// IsZero reports whether the reference names nothing.
func (t TerminalRef) IsZero() bool { return t == TerminalRef{} }

// String is the written form, such as sol.L1.
func (t TerminalRef) String() string {
	if t.IsZero() {
		return ""
	}
	return string(t.Part) + "." + t.Name
}

// MarshalText writes part.terminal.
func (t TerminalRef) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads part.terminal. It fails if either half is missing or malformed.
func (t *TerminalRef) UnmarshalText(text []byte) error {
	part, name, found := strings.Cut(string(text), ".")
	if !found || !ValidID(part) || !validTerminalName(name) {
		return Expected("a terminal as part.terminal, such as sol.L1")
	}
	*t = TerminalRef{Part: PartID(part), Name: name}
	return nil
}

// FormHint describes the written form to the job file's schema.
func (TerminalRef) FormHint() (pattern, example string) {
	return `^[A-Za-z0-9_-]{1,64}\.[A-Za-z0-9_+-]{1,64}$`, "sol.L1"
}

// Terminal is what a sheet records of one terminal beyond the library's word on it.
type Terminal struct {
	At         TerminalRef      `yaml:",key"`
	Stack      []WireID         `yaml:"stack,flow" doc:"wires in the order of their lugs, from the seat outward; the first touches the terminal"`
	Stud       unit.Stud        `yaml:"stud" doc:"size of the stud as measured, such as M8 or 5/16 in"`
	Cover      Cover            `yaml:"cover" doc:"boot or cover over the terminal"`
	Torque     unit.NewtonMetre `yaml:"torque" doc:"tightening torque by the part's own record"`
	Washer     Washer           `yaml:"washer" doc:"where the innermost washer lies: outside the lugs, between two of them or under them"`
	Material   Material         `yaml:"material" doc:"what its contact face is made of"`
	Condition  []Condition      `yaml:"condition,flow" doc:"how it was found"`
	Confidence Confidence       `yaml:"confidence" doc:"how well it is known"`
	Note       string           `yaml:"note" doc:"anything worth knowing"`
	Photos     []string         `yaml:"photos,flow" doc:"photos by path relative to the job file"`
}

// IsBlank reports whether nothing is recorded but the terminal's name.
func (t *Terminal) IsBlank() bool {
	return len(t.Stack) == 0 && t.Stud.IsZero() && t.Cover == "" && t.Torque.IsZero() && t.Washer == "" && t.Material == "" &&
		len(t.Condition) == 0 && t.Confidence == "" && t.Note == "" && len(t.Photos) == 0
}

// Cover says whether a terminal is covered. The zero value means not recorded.
type Cover string

// What is known of a terminal's cover.
const (
	CoverFitted  Cover = "fitted"
	CoverMissing Cover = "missing"
)

// Names lists the words that a job file may use.
func (Cover) Names() []string { return []string{string(CoverFitted), string(CoverMissing)} }

// Rating finds a figure that the part itself carries.
func (p *Part) Rating(name string) (Rating, bool) {
	for i := range p.Ratings {
		if p.Ratings[i].Name == name {
			return p.Ratings[i], true
		}
	}
	return Rating{}, false
}
