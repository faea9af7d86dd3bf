package main

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/store"
)

// listFixes is the value of --fix that asks for the list alone.
const listFixes = "list"

// printFixes lists the ready-made edits of a report, with what each would do.
func (c *cli) printFixes(o *opened, r *rule.Report) error {
	var b strings.Builder
	for i := range r.Findings {
		f := &r.Findings[i]
		if len(f.Fixes) == 0 {
			continue
		}
		fmt.Fprintf(&b, "%-8s%s [%s]\n", f.Severity, clean.Line(f.Message), f.Rule)
		for n, e := range f.Fixes {
			fmt.Fprintf(&b, "        --fix=%s  %s\n", fixName(f.Key, n), clean.Line(triedText(o, r, f.Key, e)))
		}
	}
	if b.Len() == 0 {
		fmt.Fprintf(&b, "no finding of the %s sheet has a ready-made edit\n", r.Sheet)
	}
	_, err := io.WriteString(c.out, b.String())
	return err
}

// triedText names an edit and says what it would do, or why it can't be made.
func triedText(o *opened, r *rule.Report, key string, e edit.Edit) string {
	trial, err := rule.Try(o.job, r.Sheet, o.lib, r.Findings, key, e)
	if err != nil {
		return "can't be made: " + err.Error() // which names the edit
	}
	return e.Name() + ": " + trialText(trial)
}

// fixName is what --fix takes for one of the edits of a finding.
func fixName(key string, n int) string {
	if n == 0 {
		return key
	}
	return fmt.Sprintf("%s:%d", key, n+1)
}

// trialText says what an edit did to the findings.
func trialText(t *rule.Trial) string {
	if !t.Gone {
		return "leaves the finding"
	}
	if len(t.New) == 0 {
		return "mends it and changes nothing else for the worse"
	}
	var words []string
	for _, f := range t.New {
		words = append(words, fmt.Sprintf("%s %s", f.Severity, f.Key))
	}
	return "mends it, then there is " + strings.Join(words, ", ")
}

// fix makes the asked edits one after the other and saves the job file. It changes nothing if
// one of them is not there or not sound.
func (c *cli) fix(o *opened, r *rule.Report, asked []string, warnings io.Writer) error {
	report, job := *r, o.job
	var lines []string
	for _, name := range asked {
		f, e, err := findFix(&report, name)
		if err != nil {
			return err
		}
		trial, err := rule.Try(job, r.Sheet, o.lib, report.Findings, f.Key, e)
		if err != nil {
			return err
		}
		if !trial.Sound() {
			return fmt.Errorf("%s was not made: %s", e.Name(), trialText(trial))
		}
		lines = append(lines, fmt.Sprintf("%s: %s", e.Name(), trialText(trial)))
		job = trial.Job
		if report, err = rule.Judge(rule.All, job, r.Sheet, o.lib); err != nil {
			return err
		}
	}
	if o.file == nil {
		data, err := o.decoded.Encode(job)
		if err != nil {
			return err
		}
		return c.write(stdio, data)
	}
	outcome, err := o.file.Save(job, store.Options{})
	if err != nil {
		return err
	}
	warn(warnings, outcome)
	for _, line := range lines {
		fmt.Fprintln(c.out, clean.Line(line))
	}
	_, err = fmt.Fprintf(c.out, "%s, sheet %s: %s\n", clean.Line(job.Title), r.Sheet, countsText(report.Findings))
	return err
}

// findFix finds the edit that a word of --fix names.
func findFix(r *rule.Report, name string) (*rule.Finding, edit.Edit, error) {
	key, number, chosen := strings.Cut(name, ":")
	n := 1
	if chosen {
		var err error
		if n, err = strconv.Atoi(number); err != nil {
			return nil, nil, fmt.Errorf("--fix=%s: after the colon comes the number of the choice, such as :2", name)
		}
	}
	i := slices.IndexFunc(r.Findings, func(f rule.Finding) bool { return f.Key == key })
	switch {
	case i < 0:
		return nil, nil, fmt.Errorf("--fix=%s: the %s sheet has no such finding; lugbook check --fix FILE lists what there is", name, r.Sheet)
	case len(r.Findings[i].Fixes) == 0:
		return nil, nil, fmt.Errorf("--fix=%s: the finding has no ready-made edit; its remedy says what to do", name)
	case n < 1 || n > len(r.Findings[i].Fixes):
		return nil, nil, fmt.Errorf("--fix=%s: no such choice; there is %s", name, fixNames(key, len(r.Findings[i].Fixes)))
	}
	return &r.Findings[i], r.Findings[i].Fixes[n-1], nil
}

// fixNames lists what --fix takes for a finding with that many edits.
func fixNames(key string, edits int) string {
	names := make([]string, edits)
	for n := range names {
		names[n] = "--fix=" + fixName(key, n)
	}
	return strings.Join(names, " and ")
}
