package edit

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
	"example.com/lugbook/model/unit"
)

// SetJob sets one property of the job itself from text, as the job file writes it.
type SetJob struct{ Field, Text string }

// Name names the property and its new value.
func (e SetJob) Name() string { return setName("the job", e.Field, e.Text) }

// Apply fails if there is no such property or the text is not right for it.
func (e SetJob) Apply(j *model.Job) error { return field.Set(j, e.Field, e.Text) }

// StartSheet adds a sheet: a copy of another one, or empty if Copy is not set.
type StartSheet struct{ New, Copy model.SheetName }

// Name names both sheets.
func (e StartSheet) Name() string {
	if e.Copy == "" {
		return fmt.Sprintf("start an empty %s sheet", e.New)
	}
	return fmt.Sprintf("start the %s sheet from %s", e.New, e.Copy)
}

// Apply fails if jobs have no such sheet, if the job has it already or lacks the one to copy.
func (e StartSheet) Apply(j *model.Job) error {
	if names := e.New.Names(); !slices.Contains(names, string(e.New)) {
		return model.Expected("one of the sheets " + strings.Join(names, ", "))
	}
	if j.Sheet(e.New) != nil {
		return fmt.Errorf("the %s sheet is there already", e.New)
	}
	fresh := model.Sheet{Name: e.New}
	if e.Copy != "" {
		s, err := sheetOf(j, e.Copy)
		if err != nil {
			return err
		}
		fresh = s.CloneAs(e.New)
		fresh.Note = ""
	}
	j.Sheets = append(j.Sheets, fresh)
	sortSheets(j)
	return nil
}

// sortSheets keeps the sheets in the order of the work.
func sortSheets(j *model.Job) {
	order := model.AsFound.Names()
	slices.SortStableFunc(j.Sheets, func(a, b model.Sheet) int {
		return slices.Index(order, string(a.Name)) - slices.Index(order, string(b.Name))
	})
}

// SetSheet sets one property of a sheet itself from text.
type SetSheet struct {
	Sheet       model.SheetName
	Field, Text string
}

// Name names the property and its new value.
func (e SetSheet) Name() string { return setName("the "+string(e.Sheet)+" sheet", e.Field, e.Text) }

// Apply fails if there is no such sheet or property.
func (e SetSheet) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	return field.Set(s, e.Field, e.Text)
}

// AddZone adds a place on the cart.
type AddZone struct{ Zone model.Zone }

// Name names the zone.
func (e AddZone) Name() string { return fmt.Sprintf("add zone %s", e.Zone.ID) }

// Apply fails if the id is taken.
func (e AddZone) Apply(j *model.Job) error {
	if j.Zone(e.Zone.ID) != nil {
		return fmt.Errorf("zone %s is there already", e.Zone.ID)
	}
	j.Zones = append(j.Zones, e.Zone)
	return nil
}

// SetRun records the routed length between two zones, or forgets it if the length is zero.
type SetRun struct {
	From, To model.ZoneID
	Length   unit.Length
}

// Name names both zones.
func (e SetRun) Name() string {
	return setName(fmt.Sprintf("the run from %s to %s", e.From, e.To), "length", e.Length.String())
}

// Apply fails never; a zone that does not exist is found by the check that follows.
func (e SetRun) Apply(j *model.Job) error {
	j.Runs = slices.DeleteFunc(j.Runs, func(r model.Run) bool {
		return r.From == e.From && r.To == e.To || r.From == e.To && r.To == e.From
	})
	if !e.Length.IsZero() {
		j.Runs = append(j.Runs, model.Run{From: e.From, To: e.To, Length: e.Length})
	}
	return nil
}
