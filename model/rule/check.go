package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// Report is what the rules say about a sheet.
type Report struct {
	Sheet     model.SheetName
	Findings  []Finding  // gravest first; what follows from a cause comes right after it
	Questions []Question // what is not recorded, gravest consequence first
	Basis     Ground     // what was judged by
}

// Judge runs rules on a sheet of the job, All of them for a verdict. It fails only if the job
// has no such sheet.
func Judge(rules []Rule, job *model.Job, sheet model.SheetName, lib *model.Catalogue) (Report, error) {
	s := job.Sheet(sheet)
	if s == nil {
		return Report{}, fmt.Errorf("the job has no %s sheet", sheet)
	}
	pass := newPass(job, s, lib)
	for i := range rules {
		pass.run(&rules[i])
	}
	findings := *pass.findings
	order := newOrder(rules)
	slices.SortStableFunc(findings, order.compare)
	nameAll(findings)
	findings = underCauses(rules, findings)
	waive(s, findings)
	return Report{Sheet: sheet, Findings: findings, Questions: order.questions(pass.shared.gaps), Basis: groundOf(job)}, nil
}

// Check is the findings of all rules on a sheet of the job. It fails only if the job has no
// such sheet.
func Check(job *model.Job, sheet model.SheetName, lib *model.Catalogue) ([]Finding, error) {
	r, err := Judge(All, job, sheet, lib)
	return r.Findings, err
}

// Find is the rule of that id; nil if there is none.
func Find(id string) *Rule { return findRule(All, id) }

func findRule(rules []Rule, id string) *Rule {
	i := slices.IndexFunc(rules, func(r Rule) bool { return r.ID == id })
	if i < 0 {
		return nil
	}
	return &rules[i]
}

// order is the order of findings: by severity, then by rule in the order of its table, then
// by subject.
type order map[string]int

func newOrder(rules []Rule) order {
	o := order{}
	for i := range rules {
		o[rules[i].ID] = i
	}
	return o
}

func (o order) compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(grade(a.Severity), grade(b.Severity)),
		cmp.Compare(o[a.Rule], o[b.Rule]),
		compareSubjects(a.Subjects, b.Subjects),
		strings.Compare(a.Message, b.Message),
	)
}

func grade(s Severity) int { return slices.Index(Severities(), s) }

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
