package model

import "slices"

// Clone is a deep copy: changing the copy never changes the original.
func (j *Job) Clone() *Job {
	c := *j
	c.Photos = slices.Clone(j.Photos)
	c.Zones = slices.Clone(j.Zones)
	c.Runs = slices.Clone(j.Runs)
	c.Limits = slices.Clone(j.Limits)
	c.Definitions = cloneEach(j.Definitions, Definition.clone)
	c.States = cloneEach(j.States, OwnState.clone)
	if j.Meter != nil {
		meter := *j.Meter
		c.Meter = &meter
	}
	c.Readings = slices.Clone(j.Readings)
	c.Sheets = cloneEach(j.Sheets, Sheet.clone)
	return &c
}

// CloneAs is a deep copy of the sheet under another name.
func (s *Sheet) CloneAs(name SheetName) Sheet {
	c := s.clone()
	c.Name = name
	return c
}

func cloneEach[T any](list []T, clone func(T) T) []T {
	if list == nil {
		return nil
	}
	out := make([]T, len(list))
	for i := range list {
		out[i] = clone(list[i])
	}
	return out
}

func (s Sheet) clone() Sheet {
	s.Parts = cloneEach(s.Parts, Part.Clone)
	s.Wires = cloneEach(s.Wires, Wire.Clone)
	s.Terminals = cloneEach(s.Terminals, Terminal.clone)
	s.Waived = cloneEach(s.Waived, Waiver.clone)
	s.Drawn = cloneEach(s.Drawn, Kept.clone)
	return s
}

// Clone is a deep copy of the part.
func (p Part) Clone() Part {
	p.Ratings = slices.Clone(p.Ratings)
	p.Opens = slices.Clone(p.Opens)
	p.Condition = slices.Clone(p.Condition)
	p.Photos = slices.Clone(p.Photos)
	if p.Place != nil {
		place := *p.Place
		p.Place = &place
	}
	return p
}

// Clone is a deep copy of the wire.
func (w Wire) Clone() Wire {
	w.Via = slices.Clone(w.Via)
	w.Judged = slices.Clone(w.Judged)
	w.Condition = slices.Clone(w.Condition)
	w.Photos = slices.Clone(w.Photos)
	return w
}

func (t Terminal) clone() Terminal {
	t.Stack = slices.Clone(t.Stack)
	t.Condition = slices.Clone(t.Condition)
	t.Photos = slices.Clone(t.Photos)
	return t
}

func (d Definition) clone() Definition {
	if d.Control != nil {
		control := *d.Control
		control.Positions = slices.Clone(control.Positions)
		d.Control = &control
	}
	d.Terminals = slices.Clone(d.Terminals)
	d.Elements = cloneEach(d.Elements, Element.clone)
	d.Ratings = slices.Clone(d.Ratings)
	return d
}

func (e Element) clone() Element {
	e.Between = slices.Clone(e.Between)
	e.ClosedIn = slices.Clone(e.ClosedIn)
	e.Fed = slices.Clone(e.Fed)
	e.Blocked = slices.Clone(e.Blocked)
	e.Out = slices.Clone(e.Out)
	return e
}
