package rule

import "example.com/lugbook/model"

// Rule is one thing that is judged on a sheet. Its texts are what its page says.
type Rule struct {
	ID       string   // plain words with hyphens, such as fuse-too-large
	Title    string   // one line
	Family   Family   // what it is listed under
	Severity Severity // of what it usually finds; a finding may say otherwise
	About    string   // what it looks for, and by which figures it decides
	Why      string   // why it matters, one paragraph that teaches a beginner
	Tell     string   // how to tell on the cart: what to look at, what to measure
	Blind    string   // its limits: where it stays silent, what it takes for granted, what only a question or note can settle
	Bad      string   // the wrong example in words
	Good     string   // the right example in words
	Wrong    Example  // an example that it finds
	Right    Example  // the same done right: it says nothing
	Basis    Basis    // why
	Remedy   string   // what to do about a finding
	Run      func(*Pass)

	// Explains lists the rules whose findings follow from one of this rule if they share a
	// subject with it, Upsets those whose findings follow wherever they are.
	Explains, Upsets []string
}

// Family groups the rules in lists.
type Family string

// The families of rules.
const (
	Polarity   Family = "polarity"
	Voltage    Family = "voltage"
	Protection Family = "protection"
	Conductors Family = "conductors"
	Chain      Family = "control chain"
	Contactors Family = "contactor support"
	Charging   Family = "charging"
	Supply     Family = "12 V side"
	Packs      Family = "pack and metering"
	Frame      Family = "frame and return"
	Studs      Family = "studs and lugs"
	Ends       Family = "loose ends"
	Mounting   Family = "mounting"
	Paper      Family = "paper"
)

// Families lists the families in the order of lists.
func Families() []Family {
	return []Family{
		Polarity, Voltage, Protection, Conductors, Chain, Contactors, Charging,
		Supply, Packs, Frame, Studs, Ends, Mounting, Paper,
	}
}

// Severity says how grave the consequence of a finding is for the wiring.
type Severity string

// The severities, gravest first.
const (
	Danger  Severity = "danger"  // fire, burn, runaway, or charging a pack that must not be
	Fault   Severity = "fault"   // will not work, or will be damaged
	Caution Severity = "caution" // will age or annoy
	Note    Severity = "note"    // a datum is missing, or something unusual
)

// Severities lists the severities, gravest first.
func Severities() []Severity { return []Severity{Danger, Fault, Caution, Note} }

// Basis is why something is a finding, with where that is written.
type Basis struct {
	Text   string
	Source string // a standard with its clause, or: common practice, no source
}

// Practice is the source of what everyone in the trade does and nobody has printed.
const Practice = "common practice, no source"

// Physics is the source of what follows from the circuit alone.
const Physics = "follows from the circuit"

// Subject is what a finding is about: a part, a wire or a terminal.
type Subject struct {
	Part     model.PartID
	Wire     model.WireID
	Terminal model.TerminalRef
}

// OfPart, OfWire and OfTerminal name a subject.
func OfPart(id model.PartID) Subject { return Subject{Part: id} }

// OfWire is a wire as a subject.
func OfWire(id model.WireID) Subject { return Subject{Wire: id} }

// OfTerminal is a terminal as a subject.
func OfTerminal(at model.TerminalRef) Subject { return Subject{Terminal: at} }

// String is the subject's id, or part.terminal.
func (s Subject) String() string {
	switch {
	case s.Part != "":
		return string(s.Part)
	case s.Wire != "":
		return string(s.Wire)
	}
	return s.Terminal.String()
}
