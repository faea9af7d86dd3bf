package edit

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
)

// SetState adds a state of the job's own, or puts it in the place of the one of its name.
type SetState struct{ State model.OwnState }

// Name names the state.
func (e SetState) Name() string { return fmt.Sprintf("set the state %s", e.State.Name) }

// Apply fails never; a state that makes no sense is found by the check that follows.
func (e SetState) Apply(j *model.Job) error {
	state := e.State
	state.Set = slices.Clone(state.Set)
	if was := j.OwnState(state.Name); was != nil {
		*was = state
		return nil
	}
	j.States = append(j.States, state)
	return nil
}

// RemoveState takes a state of the job's own away. It is refused while a reading was
// taken in it or another state starts from it.
type RemoveState struct{ State string }

// Name names the state.
func (e RemoveState) Name() string { return fmt.Sprintf("remove the state %s", e.State) }

// Apply fails if the job has no such state of its own.
func (e RemoveState) Apply(j *model.Job) error {
	if j.OwnState(e.State) == nil {
		return fmt.Errorf("the job has no state %s of its own", e.State)
	}
	j.States = slices.DeleteFunc(j.States, func(s model.OwnState) bool { return s.Name == e.State })
	return nil
}

// SetOpens records the time-current curve of a fuse or breaker as its maker publishes
// it, or forgets it if there are no points.
type SetOpens struct {
	Sheet  model.SheetName
	ID     model.PartID
	Points []model.OpenPoint
}

// Name names the part.
func (e SetOpens) Name() string {
	if len(e.Points) == 0 {
		return fmt.Sprintf("forget the curve of %s", e.ID)
	}
	return fmt.Sprintf("set the curve of %s", e.ID)
}

// Apply fails if there is no such part.
func (e SetOpens) Apply(j *model.Job) error {
	p, err := partOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	p.Opens = slices.Clone(e.Points)
	return nil
}
