package edit

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// Waive lets a finding stay, with reason, name and date. An older word on the same finding is
// replaced.
type Waive struct {
	Sheet  model.SheetName
	Waiver model.Waiver
}

// Name names the finding.
func (e Waive) Name() string { return "waive " + e.Waiver.Finding }

// Apply fails without a reason, a name and a date, and for a danger without the extra word.
func (e Waive) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	w := e.Waiver
	for _, need := range []struct{ what, text string }{{"a reason", w.Reason}, {"a name", w.By}, {"a date", w.Date}} {
		if model.IsBlank(need.text) {
			return fmt.Errorf("a waiver needs %s", need.what)
		}
	}
	if w.Severity == string(model.AcceptsDanger) && w.Accepts != model.AcceptsDanger {
		return errors.New("a danger is waived only with the word danger: accepts: danger")
	}
	w.Subjects = slices.Clone(w.Subjects)
	if old := s.Waiver(w.Finding); old != nil {
		*old = w
		return nil
	}
	s.Waived = append(s.Waived, w)
	return nil
}

// Unwaive takes back the word on a finding.
type Unwaive struct {
	Sheet   model.SheetName
	Finding string
}

// Name names the finding.
func (e Unwaive) Name() string { return "take back the waiver of " + e.Finding }

// Apply fails if nobody waived it.
func (e Unwaive) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	if s.Waiver(e.Finding) == nil {
		return fmt.Errorf("nobody waived %s on the %s sheet", e.Finding, e.Sheet)
	}
	s.Waived = slices.DeleteFunc(s.Waived, func(w model.Waiver) bool { return w.Finding == e.Finding })
	return nil
}

// renameWaived follows a new name of a part or wire through the waivers of a sheet.
func renameWaived(s *model.Sheet, from, to string) {
	follow := func(name string) string {
		if name == from || strings.HasPrefix(name, from+".") {
			return to + strings.TrimPrefix(name, from)
		}
		return name
	}
	for i := range s.Waived {
		w := &s.Waived[i]
		for k, name := range w.Subjects {
			w.Subjects[k] = follow(name)
		}
		rule, subjects, _ := strings.Cut(w.Finding, "@")
		names := strings.Split(subjects, "/")
		for k, name := range names {
			names[k] = follow(name)
		}
		w.Finding = rule + "@" + strings.Join(names, "/")
	}
}
