package edit

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
	"example.com/lugbook/model/unit"
)

// Seat says where in a stack a lug goes, counted from the seat outward.
type Seat int

// Seats that are not a number.
const (
	SeatUnknown Seat = 0  // the order was not looked at
	Outermost   Seat = -1 // on top of all that are there
)

// AddWire puts a wire on a sheet.
type AddWire struct {
	Sheet            model.SheetName
	Wire             model.Wire
	FromSeat, ToSeat Seat
}

// Name names the wire and its ends.
func (e AddWire) Name() string {
	return fmt.Sprintf("add %s, %s to %s", e.Wire.ID, e.Wire.From, e.Wire.To)
}

// Apply fails if the wire's id is taken.
func (e AddWire) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	if s.Wire(e.Wire.ID) != nil {
		return fmt.Errorf("%s is taken on the %s sheet", e.Wire.ID, e.Sheet)
	}
	s.Wires = append(s.Wires, e.Wire.Clone())
	seat(s, e.Wire.From.At, e.Wire.ID, e.FromSeat)
	seat(s, e.Wire.To.At, e.Wire.ID, e.ToSeat)
	return nil
}

// RemoveWire takes a wire off a sheet.
type RemoveWire struct {
	Sheet model.SheetName
	ID    model.WireID
}

// Name names the wire.
func (e RemoveWire) Name() string { return fmt.Sprintf("remove %s", e.ID) }

// Apply fails if the wire is not on the sheet.
func (e RemoveWire) Apply(j *model.Job) error {
	s, _, err := wireOf(j, e.Sheet, e.ID)
	if err == nil {
		removeWire(j, s, e.ID)
	}
	return err
}

// removeWire takes a wire off a sheet with what was read of it.
func removeWire(j *model.Job, s *model.Sheet, id model.WireID) {
	j.Readings = slices.DeleteFunc(j.Readings, func(r model.Reading) bool { return r.Sheet == s.Name && r.Wire == id })
	s.Wires = slices.DeleteFunc(s.Wires, func(w model.Wire) bool { return w.ID == id })
	for i := range s.Terminals {
		unseat(&s.Terminals[i], id)
	}
	dropBlank(s)
}

// RenameWire gives a wire another id on every sheet that has it.
type RenameWire struct{ From, To model.WireID }

// Name names both ids.
func (e RenameWire) Name() string { return fmt.Sprintf("rename %s to %s", e.From, e.To) }

// Apply fails if no sheet has the wire or one already has the new id.
func (e RenameWire) Apply(j *model.Job) error {
	found := false
	for i := range j.Sheets {
		s := &j.Sheets[i]
		if s.Wire(e.To) != nil {
			return fmt.Errorf("%s is taken on the %s sheet", e.To, s.Name)
		}
		if w := s.Wire(e.From); w != nil {
			found = true
			w.ID = e.To
			renameWaived(s, string(e.From), string(e.To))
			for k := range s.Terminals {
				stack := s.Terminals[k].Stack
				if at := slices.Index(stack, e.From); at >= 0 {
					stack[at] = e.To
				}
			}
		}
	}
	if !found {
		return fmt.Errorf("no wire %s on any sheet", e.From)
	}
	for i := range j.Readings {
		if r := &j.Readings[i]; r.Wire == e.From {
			r.Wire = e.To
		}
	}
	return nil
}

// Side tells the ends of a wire apart.
type Side string

// The ends of a wire.
const (
	From Side = "from"
	To   Side = "to"
)

// ReEnd moves one end of a wire to another terminal or leaves it loose.
type ReEnd struct {
	Sheet model.SheetName
	ID    model.WireID
	Side  Side
	End   model.End
	Seat  Seat
}

// Name names the wire and its new end.
func (e ReEnd) Name() string { return fmt.Sprintf("move the %s end of %s to %s", e.Side, e.ID, e.End) }

// Apply fails if there is no such wire or side. What was recorded of the old end, its
// lug and whether it was judged, goes with it.
func (e ReEnd) Apply(j *model.Job) error {
	s, w, err := wireOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	if e.Side != From && e.Side != To {
		return model.Expected("one of the ends from, to")
	}
	old := w.From
	if e.Side == To {
		old = w.To
	}
	if t := s.Terminal(old.At); t != nil {
		unseat(t, w.ID)
	}
	moveEnd(w, e.Side, e.End)
	seat(s, e.End.At, w.ID, e.Seat)
	dropBlank(s)
	return nil
}

// moveEnd gives a wire another end and forgets what was recorded of the old one.
func moveEnd(w *model.Wire, side Side, end model.End) {
	if side == From {
		w.From, w.FromLug, w.FromBarrel = end, unit.Stud{}, unit.Gauge{}
	} else {
		w.To, w.ToLug, w.ToBarrel = end, unit.Stud{}, unit.Gauge{}
	}
	w.Judged = slices.DeleteFunc(w.Judged, func(j model.Judgement) bool { return j == model.Judgement(side) })
}

// SetWire sets one property of a wire from text, as the job file writes it. An end
// that is set so is moved, its place in the stack left open.
type SetWire struct {
	Sheet       model.SheetName
	ID          model.WireID
	Field, Text string
}

// Name names the property and its new value.
func (e SetWire) Name() string { return setName(string(e.ID), e.Field, e.Text) }

// Apply fails if there is no such wire or property or the text is not right for it.
func (e SetWire) Apply(j *model.Job) error {
	s, w, err := wireOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	if e.Field != string(From) && e.Field != string(To) {
		return field.Set(w, e.Field, e.Text)
	}
	var end model.End
	if err := end.UnmarshalText([]byte(e.Text)); err != nil {
		return err
	}
	return ReEnd{Sheet: s.Name, ID: w.ID, Side: Side(e.Field), End: end}.Apply(j)
}
