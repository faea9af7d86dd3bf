package rule

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

// Finding is a rule's verdict on something of a sheet.
type Finding struct {
	Rule     string
	Key      string // what it is called: the rule, an @ and its subject; the same as long as the mistake is
	Severity Severity
	Message  string // what is so, with the numbers
	State    string // the state of the controls in which it is so; empty if in all
	Figure   Figure // what was measured against what; zero if nothing was
	Subjects []Subject
	Basis    Basis
	Remedy   string
	Fixes    []edit.Edit   // ready-made edits, each of which mends it alone; usually one or none
	Cause    string        // key of the finding that it follows from; empty if it stands for itself
	Waived   *model.Waiver // somebody's word that it may stay, while it holds

	asks bool // it says that a datum is missing
}

// Figure is a figure that was held against a limit.
type Figure struct {
	What    string   // what the figure is, such as "fuse rating"
	Value   unit.Any // as it is
	Limit   unit.Any // the most that it may be, or the least
	Least   bool     // the limit is the least
	Decides string   // what sets the limit, such as "ampacity at 105 C insulation"
}

// IsZero reports whether nothing was measured.
func (f Figure) IsZero() bool { return f.Value.IsZero() }

// Beyond is by how much the figure is beyond its limit as a share of the limit; zero if it
// is within it or if there is no limit.
func (f Figure) Beyond() float64 {
	limit := f.Limit.SI()
	if f.Limit.IsZero() || limit == 0 {
		return 0
	}
	over := (f.Value.SI() - limit) / math.Abs(limit)
	if f.Least {
		over = -over
	}
	return max(0, over)
}

// String says the figure, its limit, by how much it is beyond and what decides.
func (f Figure) String() string {
	if f.IsZero() {
		return ""
	}
	text := f.What + " " + asRead(f.Value)
	if f.Limit.IsZero() {
		return text
	}
	bound, beyond := "most", "over"
	if f.Least {
		bound, beyond = "least", "short"
	}
	text += fmt.Sprintf(", at %s %s", bound, asRead(f.Limit))
	if share := f.Beyond(); share > 0 {
		text += fmt.Sprintf(": %s %% %s", number(100*share), beyond)
	}
	if f.Decides != "" {
		text += "; " + f.Decides + " decides"
	}
	return text
}

// asRead writes a quantity with the four figures that a person reads; a gauge as it is named.
func asRead(q unit.Any) string {
	text := q.String()
	digits, of, _ := strings.Cut(text, " ")
	x, err := strconv.ParseFloat(digits, 64)
	if err != nil {
		return text
	}
	short := strconv.FormatFloat(x, 'g', 4, 64)
	if strings.Contains(short, "e") || len(short) >= len(digits) {
		return text
	}
	return short + " " + of
}

// worseThan reports whether the figure is further beyond than another figure of the same kind.
func (f Figure) worseThan(was unit.Any) bool {
	if f.Value.IsZero() || was.IsZero() || f.Value.Dimension() != was.Dimension() {
		return false
	}
	now, then := f.Value.SI(), was.SI()
	if f.Least {
		now, then = -now, -then
	}
	return now > then+worseBy*math.Abs(then)
}

// worseBy is how much a figure may be worse before it counts: what rounding makes.
const worseBy = 1e-6

// nameAll gives the findings their keys: the rule and its first subject, and as many more
// subjects as it takes to tell it from another finding of the rule.
func nameAll(findings []Finding) {
	taken := map[string]int{}
	for i := range findings {
		f := &findings[i]
		f.Key = f.Rule + "@" + subjectName(f.Subjects, 0)
		for n := 1; n < len(f.Subjects) && taken[f.Key] > 0; n++ {
			f.Key += "/" + subjectName(f.Subjects, n)
		}
		if n := taken[f.Key]; n > 0 {
			f.Key += fmt.Sprintf("/%d", n+1)
		}
		taken[f.Key]++
	}
}

func subjectName(subjects []Subject, i int) string {
	if i >= len(subjects) {
		return "sheet"
	}
	return subjects[i].String()
}

// shares reports whether two findings have a subject in common; a terminal is its part's too.
func (f *Finding) shares(other *Finding) bool {
	return slices.ContainsFunc(f.Subjects, func(a Subject) bool {
		return slices.ContainsFunc(other.Subjects, func(b Subject) bool { return a == b || a.part() == b.part() && a.part() != "" })
	})
}

// part is the part that a subject is or belongs to; empty for a wire.
func (s Subject) part() model.PartID {
	if s.Part != "" {
		return s.Part
	}
	return s.Terminal.Part
}

// SubjectNames lists the subjects of a finding by name.
func (f *Finding) SubjectNames() []string {
	names := make([]string, len(f.Subjects))
	for i, s := range f.Subjects {
		names[i] = s.String()
	}
	return names
}

// ParseSubject is the subject of that name on a sheet: a wire, a part or a terminal. A wire
// goes before a part of the same name. It is false if the sheet has none.
func ParseSubject(s *model.Sheet, name string) (Subject, bool) {
	if s.Wire(model.WireID(name)) != nil {
		return OfWire(model.WireID(name)), true
	}
	if s.Part(model.PartID(name)) != nil {
		return OfPart(model.PartID(name)), true
	}
	part, terminal, dotted := strings.Cut(name, ".")
	if !dotted || s.Part(model.PartID(part)) == nil {
		return Subject{}, false
	}
	return OfTerminal(model.TerminalRef{Part: model.PartID(part), Name: terminal}), true
}
