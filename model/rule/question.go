package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// Gap is a datum that a rule needs and that is not recorded.
type Gap struct {
	Datum    string    // what is missing, such as "the gauge"
	Field    string    // the property or rating of the subject that holds it, by its name in the job file
	Decides  string    // what it decides, such as "whether fu3 protects the wire"
	Worst    Severity  // how grave the finding may be once it is known
	Quiet    bool      // a question only: nothing among the findings
	Subjects []Subject // what it is missing of
}

// Question asks for one datum of one thing of a sheet.
type Question struct {
	Datum   string   // such as "the gauge"
	Field   string   // the property or rating that holds it
	Subject Subject  // the part, wire or terminal
	Decides []string // all that it decides
	Rules   []string // the rules that ask
	Worst   Severity // how grave what it decides may be
}

// String is the question in words.
func (q Question) String() string { return fmt.Sprintf("%s of %s", q.Datum, q.Subject) }

// kindKey tells the questions for one datum with one consequence.
type kindKey struct {
	datum string
	worst Severity
}

// kind is what questions of a kind have in common: the most that one of them decides, and how
// many there are.
type kind struct{ most, count int }

func (q Question) kind() kindKey { return kindKey{q.Datum, q.Worst} }

// gap is a gap with the rule that found it.
type gap struct {
	Gap
	rule string
}

// missing reports that a datum is not recorded and what it would decide: as a question, and
// unless it is quiet as a note. Each datum of a subject is noted once, whichever rule asks
// first. Nothing is asked quietly of what leaves the cart.
func (p *Pass) missing(g Gap) {
	if g.Quiet {
		g.Subjects = slices.DeleteFunc(slices.Clone(g.Subjects), p.leaves)
		p.shared.gaps = append(p.shared.gaps, gap{g, p.rule.ID})
		return
	}
	p.shared.gaps = append(p.shared.gaps, gap{g, p.rule.ID})
	subjects := slices.DeleteFunc(slices.Clone(g.Subjects), func(s Subject) bool {
		key := g.Datum + " of " + s.String()
		told := p.shared.noted[key]
		p.shared.noted[key] = true
		return told
	})
	if len(subjects) == 0 {
		return
	}
	p.report(Finding{
		Severity: Note,
		Message:  fmt.Sprintf("%s of %s is not recorded; it decides %s", g.Datum, list(subjects), g.Decides),
		Subjects: subjects,
		Remedy:   "read or measure it on the cart and record it",
		asks:     true,
	})
}

// leaves reports whether a later sheet has the part or wire no more.
func (p *Pass) leaves(s Subject) bool {
	i := slices.IndexFunc(p.Job.Sheets, func(x model.Sheet) bool { return x.Name == p.Sheet.Name })
	if i < 0 || i+1 == len(p.Job.Sheets) {
		return false
	}
	next := &p.Job.Sheets[i+1]
	if s.Wire != "" {
		return next.Wire(s.Wire) == nil
	}
	return next.Part(s.part()) == nil
}

// questions turns gaps into questions, one a datum and subject: what may turn out gravest
// first, then what decides most, then the data that are asked of few things.
func (o order) questions(gaps []gap) []Question {
	var list []Question
	place := map[string]int{}
	for _, g := range gaps {
		for _, s := range g.Subjects {
			key := cmp.Or(g.Field, g.Datum) + " of " + s.String()
			at, there := place[key]
			if !there {
				at = len(list)
				place[key] = at
				list = append(list, Question{Datum: g.Datum, Field: g.Field, Subject: s, Worst: g.Worst})
			}
			q := &list[at]
			q.Decides = appendOnce(q.Decides, g.Decides)
			q.Rules = appendOnce(q.Rules, g.rule)
			if grade(g.Worst) < grade(q.Worst) {
				q.Worst = g.Worst
			}
		}
	}
	kin := map[kindKey]kind{}
	for _, q := range list {
		k := kin[q.kind()]
		kin[q.kind()] = kind{most: max(k.most, len(q.Decides)), count: k.count + 1}
	}
	slices.SortStableFunc(list, func(a, b Question) int {
		x, y := kin[a.kind()], kin[b.kind()]
		return cmp.Or(
			cmp.Compare(grade(a.Worst), grade(b.Worst)),
			cmp.Compare(y.most, x.most),
			cmp.Compare(x.count, y.count),
			strings.Compare(a.Datum, b.Datum),
			cmp.Compare(o[a.Rules[0]], o[b.Rules[0]]),
			compareNatural(a.Subject.String(), b.Subject.String()),
		)
	})
	return list
}

func appendOnce(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}
