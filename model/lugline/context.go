package lugline

import (
	"slices"

	"example.com/lugbook/model"
)

// Context is where a line is entered: a stud on a sheet.
type Context struct {
	Sheet     *model.Sheet
	Catalogue *model.Catalogue // as the job sees it
	At        model.TerminalRef
	Last      *Entry // the entry before, for ditto and series; nil if there is none

	list []stud // all of the sheet, once they were listed
}

// studs lists the terminals of the sheet in its order.
func (c Context) studs() []stud {
	if c.list != nil {
		return c.list
	}
	var list []stud
	for i := range c.Sheet.Parts {
		p := &c.Sheet.Parts[i]
		part := pieces(string(p.ID))
		for _, name := range c.Catalogue.TerminalsOf(c.Sheet, p) {
			list = append(list, stud{model.TerminalRef{Part: p.ID, Name: name}, p, part, pieces(name)})
		}
	}
	return list
}

// Expected lists the wires that the sheet has on a stud though nobody standing there has
// given them a place in its stack yet: those entered from their other end.
func Expected(s *model.Sheet, at model.TerminalRef) []model.WireID {
	stack := recorded(s, at)
	return slices.DeleteFunc(s.Landed(at), func(id model.WireID) bool { return slices.Contains(stack, id) })
}

// recorded is the part of a stud's stack whose order is recorded.
func recorded(s *model.Sheet, at model.TerminalRef) []model.WireID {
	if t := s.Terminal(at); t != nil {
		return t.Stack
	}
	return nil
}

// expected finds the first expected wire that agrees with all that an entry says.
func (c Context) expected(e *Entry) *model.Wire {
	for _, id := range Expected(c.Sheet, c.At) {
		if w := c.Sheet.Wire(id); e.agrees(w, c.At) {
			return w
		}
	}
	return nil
}
