package model

import (
	"slices"
	"strings"
	"unicode"

	"example.com/lugbook/model/unit"
)

// Waiver is somebody's word that a finding may stay. The finding stays listed, and comes
// back when it gets worse than it was.
type Waiver struct {
	Finding  string   `yaml:",key"`
	Reason   string   `yaml:"reason,required" doc:"why it may stay, for the next technician"`
	By       string   `yaml:"by,required" doc:"who says so"`
	Date     string   `yaml:"date,required" doc:"date, year-month-day"`
	Accepts  Accepted `yaml:"accepts" doc:"danger if a danger is waived; without this word no danger is"`
	Severity string   `yaml:"severity,required" doc:"how grave the finding was: danger, fault, caution or note"`
	Figure   unit.Any `yaml:"figure,scalar" doc:"the figure of the finding as it was; it comes back when its figure is worse"`
	Subjects []string `yaml:"subjects,flow" doc:"the parts, wires and terminals that it was about; it comes back when there are others"`
}

func (w Waiver) clone() Waiver {
	w.Subjects = slices.Clone(w.Subjects)
	return w
}

// Accepted is the extra word that waives a danger. The zero value means that it was not said.
type Accepted string

// AcceptsDanger is the word without which no danger is waived.
const AcceptsDanger Accepted = "danger"

// Names lists the words that a job file may use.
func (Accepted) Names() []string { return []string{string(AcceptsDanger)} }

// Waiver finds the waiver of a finding; nil if nobody waived it.
func (s *Sheet) Waiver(finding string) *Waiver {
	for i := range s.Waived {
		if s.Waived[i].Finding == finding {
			return &s.Waived[i]
		}
	}
	return nil
}

// IsBlank reports whether a text shows nothing: it is empty, or spaces, controls and characters
// without width alone.
func IsBlank(text string) bool {
	return strings.IndexFunc(text, func(r rune) bool { return unicode.IsGraphic(r) && !unicode.IsSpace(r) }) < 0
}
