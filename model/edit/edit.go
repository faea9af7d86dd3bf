// Package edit holds every change that can be made to a job. A change is a value
// with a name; a [History] applies it, undoes it and redoes it without limit. Forms,
// commands, remedies of findings and recipes all make the same edits, and nothing
// else changes a job that is in use.
package edit

import (
	"fmt"

	"example.com/lugbook/model"
)

// Edit is one change to a job. Apply changes the job that it is given and fails,
// leaving that job unusable, if the change makes no sense there; a [History] hands it
// a copy. Name says what the change is, in words for an undo list.
type Edit interface {
	Name() string
	Apply(*model.Job) error
}

// Group is several edits that are one step: all are applied or none, and one undo
// takes all of them back.
type Group struct {
	Title string
	Edits []Edit
}

// Name is the title of the group.
func (g Group) Name() string { return g.Title }

// Apply applies the edits in order.
func (g Group) Apply(j *model.Job) error {
	for _, e := range g.Edits {
		if err := e.Apply(j); err != nil {
			return err
		}
	}
	return nil
}

// sheetOf finds a sheet of the job.
func sheetOf(j *model.Job, name model.SheetName) (*model.Sheet, error) {
	if s := j.Sheet(name); s != nil {
		return s, nil
	}
	return nil, fmt.Errorf("the job has no %s sheet", name)
}

// partOf finds a part on a sheet of the job.
func partOf(j *model.Job, sheet model.SheetName, id model.PartID) (*model.Part, error) {
	s, err := sheetOf(j, sheet)
	if err != nil {
		return nil, err
	}
	if p := s.Part(id); p != nil {
		return p, nil
	}
	return nil, fmt.Errorf("no part %s on the %s sheet", id, sheet)
}

// wireOf finds a wire on a sheet of the job.
func wireOf(j *model.Job, sheet model.SheetName, id model.WireID) (*model.Sheet, *model.Wire, error) {
	s, err := sheetOf(j, sheet)
	if err != nil {
		return nil, nil, err
	}
	if w := s.Wire(id); w != nil {
		return s, w, nil
	}
	return nil, nil, fmt.Errorf("no wire %s on the %s sheet", id, sheet)
}
