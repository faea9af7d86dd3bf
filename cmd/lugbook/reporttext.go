package main

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
)

// reportText is a report for a person to read.
func reportText(j *model.Job, r *rule.Report) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: %s\n", clean.Line(j.Title), r.Sheet, countsText(r.Findings))
	fmt.Fprintf(&b, "judged by %s\n", r.Basis)
	for _, own := range r.Basis.Own {
		fmt.Fprintf(&b, "  %s %s: %s\n", own.Name, own.Value, clean.Line(own.Reason))
	}
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Cause == "" {
			writeFinding(&b, f)
			writeConsequences(&b, r.Findings, f.Key)
		}
	}
	if s := j.Sheet(r.Sheet); s != nil {
		for _, w := range r.Stale(s) {
			fmt.Fprintf(&b, "\nthe waiver of %s covers nothing now: %s\n", clean.Line(w.Finding), w.Why)
		}
	}
	return b.String()
}

func writeFinding(b *strings.Builder, f *rule.Finding) {
	fmt.Fprintf(b, "\n%-8s%s [%s]\n", f.Severity, clean.Line(f.Message), f.Rule)
	line := func(what, text string) {
		if text != "" {
			fmt.Fprintf(b, "        %-8s%s\n", what+":", clean.Line(text))
		}
	}
	line("at", strings.Join(f.SubjectNames(), ", "))
	line("state", f.State)
	line("figure", f.Figure.String())
	line("remedy", f.Remedy)
	if len(f.Fixes) > 0 {
		line("fix", fmt.Sprintf("--fix=%s: %s", f.Key, f.Fixes[0].Name()))
	}
	line("basis", fmt.Sprintf("%s (%s)", f.Basis.Text, f.Basis.Source))
	if w := f.Waived; w != nil {
		line("waived", fmt.Sprintf("by %s on %s: %s", w.By, w.Date, w.Reason))
	}
}

// writeConsequences lists what follows from a finding below it, in short.
func writeConsequences(b *strings.Builder, findings []rule.Finding, cause string) {
	first := true
	for i := range findings {
		f := &findings[i]
		if f.Cause != cause {
			continue
		}
		if first {
			fmt.Fprintf(b, "        from it follow:\n")
			first = false
		}
		waived := ""
		if f.Waived != nil {
			waived = fmt.Sprintf(" (waived by %s on %s: %s)", f.Waived.By, f.Waived.Date, f.Waived.Reason)
		}
		fmt.Fprintf(b, "          %-8s%s [%s]%s\n", f.Severity, clean.Line(f.Message), f.Rule, clean.Line(waived))
	}
}

func counts(findings []rule.Finding) map[rule.Severity]int {
	n := map[rule.Severity]int{}
	for _, s := range rule.Severities() {
		n[s] = 0
	}
	for _, f := range findings {
		n[f.Severity]++
	}
	return n
}

// countsText counts the findings by severity; how many of them are waived is told last.
func countsText(findings []rule.Finding) string {
	n := counts(findings)
	words := make([]string, 0, len(n))
	for _, s := range rule.Severities() {
		plural := "s"
		if n[s] == 1 {
			plural = ""
		}
		words = append(words, fmt.Sprintf("%d %s%s", n[s], s, plural))
	}
	text := strings.Join(words, ", ")
	if waived := countWaived(findings); waived > 0 {
		text += fmt.Sprintf("; %d waived", waived)
	}
	return text
}

func countWaived(findings []rule.Finding) int {
	n := 0
	for i := range findings {
		if findings[i].Waived != nil {
			n++
		}
	}
	return n
}
