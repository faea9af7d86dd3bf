package rule

import (
	"slices"

	"example.com/lugbook/model"
)

// waive marks the findings that somebody lets stay, as long as their word holds.
func waive(s *model.Sheet, findings []Finding) {
	for i := range findings {
		if w := s.Waiver(findings[i].Key); w != nil && w.Reason != "" && holds(w, &findings[i]) {
			findings[i].Waived = w
		}
	}
}

// holds reports whether a waiver still covers a finding: it is not graver than it was, it is
// about nothing else, and its figure is not worse. A danger needs the extra word.
func holds(w *model.Waiver, f *Finding) bool {
	if f.Severity == Danger && w.Accepts != model.AcceptsDanger {
		return false
	}
	if was := Severity(w.Severity); grade(was) < 0 || grade(f.Severity) < grade(was) {
		return false
	}
	for _, s := range f.Subjects {
		if !slices.Contains(w.Subjects, s.String()) {
			return false
		}
	}
	return !f.Figure.worseThan(w.Figure)
}

// WaiverFor is the waiver that lets a finding stay as it is now.
func WaiverFor(f *Finding, reason, by, date string, accepts model.Accepted) model.Waiver {
	return model.Waiver{
		Finding: f.Key, Reason: reason, By: by, Date: date, Accepts: accepts,
		Severity: string(f.Severity), Figure: f.Figure.Value, Subjects: f.SubjectNames(),
	}
}

// Stale is a waiver that covers nothing of a report, and why.
type Stale struct {
	Finding string
	Why     string
}

// Stale lists the waivers of a sheet that cover nothing of a report: their finding is gone, is
// worse than what was waived, or is a danger without the extra word.
func (r *Report) Stale(s *model.Sheet) []Stale {
	var list []Stale
	for i := range s.Waived {
		w := &s.Waived[i]
		at := slices.IndexFunc(r.Findings, func(f Finding) bool { return f.Key == w.Finding })
		switch {
		case at < 0:
			list = append(list, Stale{w.Finding, "the sheet has no such finding now"})
		case r.Findings[at].Waived != nil:
		case r.Findings[at].Severity == Danger && w.Accepts != model.AcceptsDanger:
			list = append(list, Stale{w.Finding, "it is a danger, which takes accepts: danger"})
		default:
			list = append(list, Stale{w.Finding, "it is worse than it was, or about something else as well"})
		}
	}
	return list
}
