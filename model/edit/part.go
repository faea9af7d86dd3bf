package edit

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
)

// AddPart puts a part on a sheet.
type AddPart struct {
	Sheet model.SheetName
	Part  model.Part
}

// Name names the part.
func (e AddPart) Name() string { return fmt.Sprintf("add %s (%s)", e.Part.ID, e.Part.Kind) }

// Apply fails if the designator is taken.
func (e AddPart) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	if s.Part(e.Part.ID) != nil {
		return fmt.Errorf("%s is taken on the %s sheet", e.Part.ID, e.Sheet)
	}
	s.Parts = append(s.Parts, e.Part.Clone())
	return nil
}

// RemovePart takes a part off a sheet with what was read on its terminals. Wires on it
// lose their end there: it becomes what Leave says, cut if it says nothing. With
// WithWires the wires go too.
type RemovePart struct {
	Sheet     model.SheetName
	ID        model.PartID
	WithWires bool
	Leave     model.Loose
}

// Name names the part.
func (e RemovePart) Name() string { return fmt.Sprintf("remove %s", e.ID) }

// Apply fails if the part is not on the sheet.
func (e RemovePart) Apply(j *model.Job) error {
	p, err := partOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	s, zone := j.Sheet(e.Sheet), p.Zone
	leave := model.End{Loose: e.Leave, In: zone}
	if leave.Loose == "" {
		leave.Loose = model.Cut
	}
	onPart := func(end model.End) bool { return end.At.Part == e.ID }
	if e.WithWires {
		for _, w := range slices.Clone(s.Wires) {
			if onPart(w.From) || onPart(w.To) {
				removeWire(j, s, w.ID)
			}
		}
	}
	for i := range s.Wires {
		w := &s.Wires[i]
		if onPart(w.From) {
			moveEnd(w, From, leave)
		}
		if onPart(w.To) {
			moveEnd(w, To, leave)
		}
	}
	s.Terminals = slices.DeleteFunc(s.Terminals, func(t model.Terminal) bool { return t.At.Part == e.ID })
	s.Parts = slices.DeleteFunc(s.Parts, func(p model.Part) bool { return p.ID == e.ID })
	j.Readings = slices.DeleteFunc(j.Readings, func(r model.Reading) bool {
		return r.Sheet == e.Sheet && (r.Red.Part == e.ID || r.Black.Part == e.ID)
	})
	return nil
}

// RenamePart gives a part another designator on every sheet that has it, so that
// the sheets still compare.
type RenamePart struct{ From, To model.PartID }

// Name names both designators.
func (e RenamePart) Name() string { return fmt.Sprintf("rename %s to %s", e.From, e.To) }

// Apply fails if no sheet has the part or one already has the new designator.
func (e RenamePart) Apply(j *model.Job) error {
	found := false
	for i := range j.Sheets {
		s := &j.Sheets[i]
		if s.Part(e.To) != nil {
			return fmt.Errorf("%s is taken on the %s sheet", e.To, s.Name)
		}
		if p := s.Part(e.From); p != nil {
			found = true
			p.ID = e.To
			renameRefs(s, e.From, e.To)
			renameWaived(s, string(e.From), string(e.To))
		}
	}
	if !found {
		return fmt.Errorf("no part %s on any sheet", e.From)
	}
	for i := range j.Readings {
		renameRef(&j.Readings[i].Red, e.From, e.To)
		renameRef(&j.Readings[i].Black, e.From, e.To)
	}
	return nil
}

func renameRef(at *model.TerminalRef, from, to model.PartID) {
	if at.Part == from {
		at.Part = to
	}
}

func renameRefs(s *model.Sheet, from, to model.PartID) {
	rename := func(at *model.TerminalRef) { renameRef(at, from, to) }
	for i := range s.Wires {
		rename(&s.Wires[i].From.At)
		rename(&s.Wires[i].To.At)
	}
	for i := range s.Terminals {
		rename(&s.Terminals[i].At)
	}
}

// SetPart sets one property of a part from text, as the job file writes it.
type SetPart struct {
	Sheet       model.SheetName
	ID          model.PartID
	Field, Text string
}

// Name names the property and its new value.
func (e SetPart) Name() string { return setName(string(e.ID), e.Field, e.Text) }

// Apply fails if there is no such part or property or the text is not right for it.
func (e SetPart) Apply(j *model.Job) error {
	p, err := partOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	return field.Set(p, e.Field, e.Text)
}

func setName(subject, field, text string) string {
	if text == "" {
		return fmt.Sprintf("clear %s of %s", field, subject)
	}
	return fmt.Sprintf("set %s of %s to %s", field, subject, text)
}

// RatePart records a figure read off the part, or clears it if the value is zero.
type RatePart struct {
	Sheet  model.SheetName
	ID     model.PartID
	Rating model.Rating
}

// Name names the figure.
func (e RatePart) Name() string {
	return setName(string(e.ID), e.Rating.Name, e.Rating.Value.String())
}

// Apply fails if there is no such part.
func (e RatePart) Apply(j *model.Job) error {
	p, err := partOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	i := slices.IndexFunc(p.Ratings, func(r model.Rating) bool { return r.Name == e.Rating.Name })
	switch {
	case i >= 0 && e.Rating.Value.IsZero():
		p.Ratings = slices.Delete(p.Ratings, i, i+1)
	case i >= 0:
		p.Ratings[i] = e.Rating
	case !e.Rating.Value.IsZero():
		p.Ratings = append(p.Ratings, e.Rating)
	}
	return nil
}

// PlacePart pins a part's box on the drawing, or lets it go if Place is nil.
type PlacePart struct {
	Sheet model.SheetName
	ID    model.PartID
	Place *model.Place
}

// Name names the part.
func (e PlacePart) Name() string {
	if e.Place == nil {
		return fmt.Sprintf("unpin %s", e.ID)
	}
	return fmt.Sprintf("place %s", e.ID)
}

// Apply fails if there is no such part or the place is off the drawing.
func (e PlacePart) Apply(j *model.Job) error {
	p, err := partOf(j, e.Sheet, e.ID)
	if err != nil {
		return err
	}
	if e.Place != nil && !e.Place.OnDrawing() {
		return model.Expected("a place on the drawing: " + model.PlaceRange)
	}
	p.Place = nil
	if e.Place != nil {
		place := *e.Place
		p.Place = &place
	}
	return nil
}
