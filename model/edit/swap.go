package edit

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// SwapTerminals exchanges all that lands on two terminals: wires with their lugs, and the
// orders of the lugs.
type SwapTerminals struct {
	Sheet model.SheetName
	A, B  model.TerminalRef
}

// Name names both terminals.
func (e SwapTerminals) Name() string { return fmt.Sprintf("swap what lands on %s and %s", e.A, e.B) }

// Apply fails if there is no such sheet, or if the two are one.
func (e SwapTerminals) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	if e.A == e.B || e.A.IsZero() || e.B.IsZero() {
		return model.Expected("two terminals, such as red.IN+ and red.IN-")
	}
	other := func(at *model.TerminalRef) {
		switch *at {
		case e.A:
			*at = e.B
		case e.B:
			*at = e.A
		}
	}
	for i := range s.Wires {
		other(&s.Wires[i].From.At)
		other(&s.Wires[i].To.At)
	}
	a, b := terminalOf(s, e.A).Stack, terminalOf(s, e.B).Stack
	terminalOf(s, e.A).Stack, terminalOf(s, e.B).Stack = b, a
	dropBlank(s)
	return nil
}

// InsertInWire sets a part with two terminals into a wire: the near end of the wire is taken
// off its terminal and put on Out, and a new lead of the same make goes from that terminal to
// In, in the old place of the stack.
type InsertInWire struct {
	Sheet   model.SheetName
	Wire    model.WireID
	Near    Side // the end of the wire beside which the part is set in
	Part    model.Part
	In, Out string // terminals of the part, the one toward the near end first
	Lead    model.WireID
	Length  unit.Length // of the new lead
}

// Name names the part and the wire.
func (e InsertInWire) Name() string {
	return fmt.Sprintf("set %s (%s) into %s", e.Part.ID, e.Part.Kind, e.Wire)
}

// Apply fails if the wire is not there or its near end is loose, or if an id is taken.
func (e InsertInWire) Apply(j *model.Job) error {
	s, w, err := wireOf(j, e.Sheet, e.Wire)
	if err != nil {
		return err
	}
	near := w.From
	if e.Near == To {
		near = w.To
	}
	if near.IsLoose() {
		return fmt.Errorf("the %s end of %s is loose", e.Near, e.Wire)
	}
	lead := model.Wire{
		ID: e.Lead, From: near, To: model.End{At: model.TerminalRef{Part: e.Part.ID, Name: e.In}}, Length: e.Length,
		Gauge: w.Gauge, Colour: w.Colour, Serves: w.Serves, Insulation: w.Insulation, FromLug: w.LugAt(near.At), FromBarrel: w.BarrelAt(near.At),
	}
	place := SeatUnknown
	if t := s.Terminal(near.At); t != nil {
		for i, id := range t.Stack {
			if id == e.Wire {
				place = Seat(i + 1)
			}
		}
	}
	return Group{Edits: []Edit{
		AddPart{Sheet: e.Sheet, Part: e.Part},
		ReEnd{Sheet: e.Sheet, ID: e.Wire, Side: e.Near, End: model.End{At: model.TerminalRef{Part: e.Part.ID, Name: e.Out}}},
		AddWire{Sheet: e.Sheet, Wire: lead, FromSeat: place},
	}}.Apply(j)
}
