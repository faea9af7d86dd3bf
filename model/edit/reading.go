package edit

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
)

// AddReading records what a meter showed, after all that was recorded before.
type AddReading struct{ Reading model.Reading }

// Name names what was probed and what was shown.
func (e AddReading) Name() string { return "record " + readingName(e.Reading) }

// Apply fails never; a reading of what is not there is found by the check that follows.
func (e AddReading) Apply(j *model.Job) error {
	j.Readings = append(j.Readings, e.Reading)
	return nil
}

func readingName(r model.Reading) string { return fmt.Sprintf("%s on %s", r.Shown(), r.Where()) }

// UpdateReading puts another reading in the place of one that is recorded.
type UpdateReading struct {
	Index   int // among the job's readings
	Reading model.Reading
}

// Name names what was probed and what was shown.
func (e UpdateReading) Name() string {
	return fmt.Sprintf("correct reading %d to %s", e.Index+1, readingName(e.Reading))
}

// Apply fails if there are not so many readings.
func (e UpdateReading) Apply(j *model.Job) error {
	if err := hasReading(j, e.Index); err != nil {
		return err
	}
	j.Readings[e.Index] = e.Reading
	return nil
}

func hasReading(j *model.Job, index int) error {
	if index < 0 || index >= len(j.Readings) {
		return fmt.Errorf("no reading %d: the job has %d", index+1, len(j.Readings))
	}
	return nil
}

// RemoveReading forgets a reading.
type RemoveReading struct{ Index int } // among the job's readings

// Name numbers the reading as lists show it, from one.
func (e RemoveReading) Name() string { return fmt.Sprintf("remove reading %d", e.Index+1) }

// Apply fails if there are not so many readings.
func (e RemoveReading) Apply(j *model.Job) error {
	if err := hasReading(j, e.Index); err != nil {
		return err
	}
	j.Readings = slices.Delete(j.Readings, e.Index, e.Index+1)
	return nil
}

// SetMeter records the shop's meter, or forgets it if Meter is nil.
type SetMeter struct{ Meter *model.Meter }

// Name says what the meter's maker says of it.
func (e SetMeter) Name() string {
	if e.Meter == nil {
		return "forget the meter"
	}
	return fmt.Sprintf("set the meter to %s + %d counts of %d", e.Meter.Accuracy, e.Meter.Counts, e.Meter.Display)
}

// Apply fails never; figures that no meter has are found by the check that follows.
func (e SetMeter) Apply(j *model.Job) error {
	j.Meter = nil
	if e.Meter != nil {
		meter := *e.Meter
		j.Meter = &meter
	}
	return nil
}
