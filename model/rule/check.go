package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// Finding is a rule's verdict on something of a sheet.
type Finding struct {
	Rule     string
	Severity Severity
	Message  string // what is so, with the numbers
	Subjects []Subject
	Basis    Basis
	Remedy   string
	Fixes    []edit.Edit // ready-made edits, each of which mends it alone; usually none
}

// Check runs all rules on a sheet of the job. The findings are sorted by severity,
// then by rule in the order of the table, then by subject. It fails only if the job has
// no such sheet.
func Check(job *model.Job, sheet model.SheetName, lib *model.Catalogue) ([]Finding, error) {
	s := job.Sheet(sheet)
	if s == nil {
		return nil, fmt.Errorf("the job has no %s sheet", sheet)
	}
	pass := newPass(job, s, lib)
	for i := range All {
		pass.run(&All[i])
	}
	findings := *pass.findings
	slices.SortStableFunc(findings, compare)
	return findings, nil
}

// Find is the rule of that id; nil if there is none.
func Find(id string) *Rule {
	i := slices.IndexFunc(All, func(r Rule) bool { return r.ID == id })
	if i < 0 {
		return nil
	}
	return &All[i]
}

func compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(grade(a.Severity), grade(b.Severity)),
		cmp.Compare(place(a.Rule), place(b.Rule)),
		compareSubjects(a.Subjects, b.Subjects),
		strings.Compare(a.Message, b.Message),
	)
}

func grade(s Severity) int { return slices.Index(Severities(), s) }

func place(id string) int {
	return slices.IndexFunc(All, func(r Rule) bool { return r.ID == id })
}

func compareSubjects(a, b []Subject) int {
	return slices.CompareFunc(a, b, func(x, y Subject) int { return compareNatural(x.String(), y.String()) })
}

// compareNatural orders ids as a person does: w2 before w10.
func compareNatural(a, b string) int {
	for a != "" && b != "" {
		na, nb := digits(a), digits(b)
		if na > 0 && nb > 0 {
			x, y := strings.TrimLeft(a[:na], "0"), strings.TrimLeft(b[:nb], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), strings.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[na:], b[nb:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

// digits is the length of the run of digits that s begins with.
func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}
