package rule

import (
	"errors"
	"fmt"

	"example.com/lugbook/model"
)

// Rule is one thing that is judged on a sheet.
type Rule struct {
	ID       string   // plain words with hyphens, such as fuse-too-large
	Title    string   // one line
	Family   Family   // what it is listed under
	Severity Severity // of what it usually finds; a finding may say otherwise
	About    string   // what it looks at, and where it stays silent
	Bad      string   // an example that it finds
	Good     string   // the same done right
	Basis    Basis    // why
	Remedy   string   // what to do about a finding
	Run      func(*Pass)
}

// Family groups the rules in lists.
type Family string

// The families of rules.
const (
	Polarity Family = "polarity"
	Fusing   Family = "fusing"
	Heat     Family = "heat and drop"
	Function Family = "function"
	Traction Family = "contactor and charging"
	Stacks   Family = "stacks"
	Ends     Family = "ends"
)

// Severity says how grave the consequence of a finding is for the wiring.
type Severity string

// The severities, gravest first.
const (
	Danger  Severity = "danger"  // fire, burst or shock
	Fault   Severity = "fault"   // does not work or does not last
	Caution Severity = "caution" // works, and should not be left so
	Note    Severity = "note"    // a datum is missing, or something worth knowing
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

// Validate lists what is wrong with a table of rules: an id twice, a missing text.
func Validate(rules []Rule) error {
	var faults []error
	seen := map[string]bool{}
	for i, r := range rules {
		if seen[r.ID] || !model.ValidID(r.ID) {
			faults = append(faults, fmt.Errorf("rule %d: the id %q is taken or not usable", i, r.ID))
		}
		seen[r.ID] = true
		for _, text := range []struct{ what, text string }{
			{"title", r.Title}, {"family", string(r.Family)}, {"severity", string(r.Severity)}, {"about", r.About},
			{"bad example", r.Bad}, {"good example", r.Good}, {"basis", r.Basis.Text}, {"source", r.Basis.Source}, {"remedy", r.Remedy},
		} {
			if text.text == "" {
				faults = append(faults, fmt.Errorf("rule %s: write its %s", r.ID, text.what))
			}
		}
		if r.Run == nil {
			faults = append(faults, fmt.Errorf("rule %s: it has no code", r.ID))
		}
	}
	return errors.Join(faults...)
}
