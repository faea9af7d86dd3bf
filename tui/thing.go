package tui

import (
	"slices"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/rule"
)

// kind tells what a thing is.
type kind uint8

const (
	noThing kind = iota
	partThing
	terminalThing
	wireThing
	looseThing // the loose end of a wire
	kinds
)

// thing names something on a sheet that the cursor can be on.
type thing struct {
	kind kind
	at   model.TerminalRef // the part of a part, the terminal of a terminal
	wire model.WireID
	side edit.Side // of a loose end
}

func ofPart(id model.PartID) thing               { return thing{kind: partThing, at: model.TerminalRef{Part: id}} }
func ofTerminal(at model.TerminalRef) thing      { return thing{kind: terminalThing, at: at} }
func ofWire(id model.WireID) thing               { return thing{kind: wireThing, wire: id} }
func ofLoose(id model.WireID, s edit.Side) thing { return thing{kind: looseThing, wire: id, side: s} }

// ofEnd is the thing at one end of a wire.
func ofEnd(w *model.Wire, s edit.Side) thing {
	end := w.From
	if s == edit.To {
		end = w.To
	}
	if end.IsLoose() {
		return ofLoose(w.ID, s)
	}
	return ofTerminal(end.At)
}

// ofSubject is the thing that a finding is about.
func ofSubject(s rule.Subject) thing {
	switch {
	case s.Wire != "":
		return ofWire(s.Wire)
	case !s.Terminal.IsZero():
		return ofTerminal(s.Terminal)
	case s.Part != "":
		return ofPart(s.Part)
	default:
		return thing{}
	}
}

// ofRef is the thing that a cell of the drawing belongs to.
func ofRef(r scene.Ref) thing {
	switch r.Kind {
	case scene.BoxKind:
		return ofPart(model.PartID(r.ID))
	case scene.PortKind:
		return ofTerminal(model.TerminalRef{Part: model.PartID(r.ID), Name: r.Port})
	case scene.WireKind, scene.LabelKind:
		return ofWire(model.WireID(r.ID))
	case scene.FlagRef:
		return ofFlag(r.ID)
	default:
		return thing{}
	}
}

// on reports whether the thing is there on a sheet.
func (t thing) on(s *model.Sheet, cat *model.Catalogue) bool {
	switch t.kind {
	case partThing:
		return s.Part(t.at.Part) != nil
	case terminalThing:
		p := s.Part(t.at.Part)
		return p != nil && slices.Contains(cat.TerminalsOf(s, p), t.at.Name)
	case wireThing:
		return s.Wire(t.wire) != nil
	case looseThing:
		w := s.Wire(t.wire)
		return w != nil && ofEnd(w, t.side) == t
	default:
		return false
	}
}

// String is how the screen names the thing.
func (t thing) String() string {
	switch t.kind {
	case partThing:
		return string(t.at.Part)
	case terminalThing:
		return lugline.Name(t.at)
	case wireThing:
		return string(t.wire)
	case looseThing:
		return "loose end of " + string(t.wire)
	default:
		return "nothing"
	}
}
