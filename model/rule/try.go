package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// Trial is what a ready-made edit would do.
type Trial struct {
	Job   *model.Job // the copy with the edit applied
	Gone  bool       // the finding is not there any more
	New   []Finding  // findings that were not there before, or are graver than they were
	After []Finding  // all findings of the copy
}

// Sound reports whether the edit removes its finding and brings no new danger.
func (t *Trial) Sound() bool {
	return t.Gone && !slices.ContainsFunc(t.New, func(f Finding) bool { return f.Severity == Danger })
}

// Try applies an edit to a copy of the job, judges the copy again and compares. before is the
// findings of the sheet as it is, key the finding that the edit is to mend. It fails if the
// edit can't be applied.
func Try(job *model.Job, sheet model.SheetName, lib *model.Catalogue, before []Finding, key string, e edit.Edit) (*Trial, error) {
	h := edit.NewHistory(job.Clone(), lib)
	if err := h.Do(e); err != nil {
		return nil, fmt.Errorf("%s: %w", e.Name(), err)
	}
	after, err := Check(h.Job(), sheet, lib)
	if err != nil {
		return nil, err
	}
	t := &Trial{Job: h.Job(), After: after, Gone: true}
	was := map[string]Severity{}
	for _, f := range before {
		was[f.Key] = f.Severity
	}
	for _, f := range after {
		if f.Key == key {
			t.Gone = false
		}
		if old, there := was[f.Key]; !there || grade(f.Severity) < grade(old) {
			t.New = append(t.New, f)
		}
	}
	return t, nil
}
