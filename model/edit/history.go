package edit

import (
	"fmt"

	"example.com/lugbook/model"
)

// History is a job with everything that was done to it. The job that it hands out is
// never changed afterwards, so readers may keep it.
type History struct {
	lib      *model.Catalogue
	now      *model.Job
	past     []step // oldest first; each holds the job before the step
	future   []step // next to redo last; each holds the job after the step
	revision int
}

type step struct {
	name string
	job  *model.Job
}

// NewHistory starts with a job and no steps. lib is the parts library that edits are
// checked against.
func NewHistory(j *model.Job, lib *model.Catalogue) *History {
	return &History{lib: lib, now: j.Clone()}
}

// Job is the job as it stands. Treat it as read-only.
func (h *History) Job() *model.Job { return h.now }

// Revision grows with every change of the job, undo and redo included, so that
// anything computed from the job can be told from what is out of date.
func (h *History) Revision() int { return h.revision }

// Do applies an edit to a copy of the job and keeps the copy if the job is still
// consistent. On error the job and the steps stay as they were.
func (h *History) Do(e Edit) error {
	next := h.now.Clone()
	if err := e.Apply(next); err != nil {
		return fmt.Errorf("%s: %w", e.Name(), err)
	}
	if faults := next.Check(h.lib); len(faults) > 0 {
		return fmt.Errorf("%s: %w", e.Name(), faults[0])
	}
	h.past = append(h.past, step{e.Name(), h.now})
	h.future = nil
	h.show(next)
	return nil
}

// Undo takes the last step back and names it; false if there is none.
func (h *History) Undo() (name string, ok bool) {
	return h.swap(&h.past, &h.future)
}

// Redo does the last undone step again and names it; false if there is none.
func (h *History) Redo() (name string, ok bool) {
	return h.swap(&h.future, &h.past)
}

func (h *History) swap(from, to *[]step) (string, bool) {
	if len(*from) == 0 {
		return "", false
	}
	last := (*from)[len(*from)-1]
	*from = (*from)[:len(*from)-1]
	*to = append(*to, step{last.name, h.now})
	h.show(last.job)
	return last.name, true
}

func (h *History) show(j *model.Job) {
	h.now = j
	h.revision++
}

// Steps names the steps that can be undone, oldest first.
func (h *History) Steps() []string {
	names := make([]string, len(h.past))
	for i, s := range h.past {
		names[i] = s.name
	}
	return names
}

// NextUndo names the step that Undo would take back; false if there is none.
func (h *History) NextUndo() (string, bool) { return lastName(h.past) }

// NextRedo names the step that Redo would do again; false if there is none.
func (h *History) NextRedo() (string, bool) { return lastName(h.future) }

func lastName(steps []step) (string, bool) {
	if len(steps) == 0 {
		return "", false
	}
	return steps[len(steps)-1].name, true
}
