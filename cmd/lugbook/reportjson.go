package main

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/rule"
)

type findingJSON struct {
	Key      string        `json:"key"`
	Rule     string        `json:"rule"`
	Severity rule.Severity `json:"severity"`
	Subjects []string      `json:"subjects"`
	Message  string        `json:"message"`
	State    string        `json:"state,omitempty"`
	Figure   *figureJSON   `json:"figure,omitempty"`
	Basis    basisJSON     `json:"basis"`
	Remedy   string        `json:"remedy"`
	Fixes    []string      `json:"fixes,omitempty"`
	Cause    string        `json:"cause,omitempty"`
	Waived   *waivedJSON   `json:"waived,omitempty"`
}

type figureJSON struct {
	What    string  `json:"what"`
	Value   string  `json:"value"`
	Limit   string  `json:"limit,omitempty"`
	Least   bool    `json:"least,omitempty"`
	Beyond  float64 `json:"beyond"`
	Decides string  `json:"decides,omitempty"`
}

type waivedJSON struct {
	Reason string `json:"reason"`
	By     string `json:"by"`
	Date   string `json:"date"`
}

type basisJSON struct {
	Text   string `json:"text"`
	Source string `json:"source"`
}

type checkJSON struct {
	Job      string                `json:"job"`
	Sheet    model.SheetName       `json:"sheet"`
	JudgedBy string                `json:"judged_by"`
	Limits   []limitJSON           `json:"limits,omitempty"`
	Findings []findingJSON         `json:"findings"`
	Counts   map[rule.Severity]int `json:"counts"`
	Waived   int                   `json:"waived"`
	Stale    []staleJSON           `json:"stale_waivers,omitempty"`
}

// limitJSON is a limit of the job's own.
type limitJSON struct {
	Name   string `json:"name"`
	Value  string `json:"value"`
	Reason string `json:"reason"`
}

type staleJSON struct {
	Finding string `json:"finding"`
	Why     string `json:"why"`
}

func (c *cli) printReportJSON(j *model.Job, r *rule.Report) error {
	report := checkJSON{
		Job: j.Title, Sheet: r.Sheet, JudgedBy: r.Basis.String(), Findings: []findingJSON{},
		Counts: counts(r.Findings), Waived: countWaived(r.Findings),
	}
	for _, own := range r.Basis.Own {
		report.Limits = append(report.Limits, limitJSON{own.Name, own.Value.String(), own.Reason})
	}
	if s := j.Sheet(r.Sheet); s != nil {
		for _, w := range r.Stale(s) {
			report.Stale = append(report.Stale, staleJSON(w))
		}
	}
	for i := range r.Findings {
		report.Findings = append(report.Findings, asFindingJSON(&r.Findings[i]))
	}
	return c.printAsJSON(report)
}

func asFindingJSON(f *rule.Finding) findingJSON {
	out := findingJSON{
		Key: f.Key, Rule: f.Rule, Severity: f.Severity, Subjects: f.SubjectNames(), Message: f.Message, State: f.State,
		Basis: basisJSON{f.Basis.Text, f.Basis.Source}, Remedy: f.Remedy, Cause: f.Cause,
	}
	if !f.Figure.IsZero() {
		out.Figure = &figureJSON{
			What: f.Figure.What, Value: f.Figure.Value.String(), Limit: f.Figure.Limit.String(), Least: f.Figure.Least,
			Beyond: f.Figure.Beyond(), Decides: f.Figure.Decides,
		}
	}
	for _, e := range f.Fixes {
		out.Fixes = append(out.Fixes, e.Name())
	}
	if f.Waived != nil {
		out.Waived = &waivedJSON{f.Waived.Reason, f.Waived.By, f.Waived.Date}
	}
	return out
}
