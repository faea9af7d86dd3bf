package edit

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
)

// terminalOf finds what is recorded of a terminal and makes the record if there is none.
func terminalOf(s *model.Sheet, at model.TerminalRef) *model.Terminal {
	if t := s.Terminal(at); t != nil {
		return t
	}
	s.Terminals = append(s.Terminals, model.Terminal{At: at})
	return &s.Terminals[len(s.Terminals)-1]
}

// dropBlank removes terminal records that record nothing.
func dropBlank(s *model.Sheet) {
	s.Terminals = slices.DeleteFunc(s.Terminals, func(t model.Terminal) bool { return t.IsBlank() })
}

// seat puts a wire into the stack of a terminal. A position beyond the stack is its
// outer end. A number counts the lugs whose place is recorded; Outermost counts all
// that are there.
func seat(s *model.Sheet, at model.TerminalRef, id model.WireID, pos Seat) {
	if at.IsZero() || pos == SeatUnknown {
		return
	}
	var stack []model.WireID
	if t := s.Terminal(at); t != nil {
		stack = t.Stack
	}
	i := int(pos) - 1
	if i < 0 || i > len(stack) {
		if landed := s.Landed(at); len(stack) == 0 && len(landed) == 2 {
			// A single lug needs no record of its order; now that a second one comes on top it does.
			stack = slices.DeleteFunc(landed, func(w model.WireID) bool { return w == id })
		}
		i = len(stack)
	}
	terminalOf(s, at).Stack = slices.Insert(slices.Clone(stack), i, id)
}

func unseat(t *model.Terminal, id model.WireID) {
	t.Stack = slices.DeleteFunc(t.Stack, func(w model.WireID) bool { return w == id })
}

// Restack records the order of the lugs on a stud, from the seat outward.
type Restack struct {
	Sheet model.SheetName
	At    model.TerminalRef
	Order []model.WireID
}

// Name names the terminal.
func (e Restack) Name() string { return fmt.Sprintf("reorder the stack on %s", e.At) }

// Apply fails if there is no such sheet.
func (e Restack) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	terminalOf(s, e.At).Stack = slices.Clone(e.Order)
	dropBlank(s)
	return nil
}

// SetTerminal sets one property of a terminal from text, as the job file writes it.
type SetTerminal struct {
	Sheet       model.SheetName
	At          model.TerminalRef
	Field, Text string
}

// Name names the property and its new value.
func (e SetTerminal) Name() string { return setName(e.At.String(), e.Field, e.Text) }

// Apply fails if there is no such property or the text is not right for it.
func (e SetTerminal) Apply(j *model.Job) error {
	s, err := sheetOf(j, e.Sheet)
	if err != nil {
		return err
	}
	if err := field.Set(terminalOf(s, e.At), e.Field, e.Text); err != nil {
		return err
	}
	dropBlank(s)
	return nil
}
