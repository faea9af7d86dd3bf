package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

// What ready-made edits are made of. Each names the sheet of the pass.

// swapTerminals exchanges all that lands on two terminals.
func (p *Pass) swapTerminals(a, b model.TerminalRef) edit.Edit {
	return edit.SwapTerminals{Sheet: p.Sheet.Name, A: a, B: b}
}

// setWire sets one property of a wire.
func (p *Pass) setWire(id model.WireID, field, text string) edit.Edit {
	return edit.SetWire{Sheet: p.Sheet.Name, ID: id, Field: field, Text: text}
}

// setTerminal sets one property of a terminal.
func (p *Pass) setTerminal(at model.TerminalRef, field, text string) edit.Edit {
	return edit.SetTerminal{Sheet: p.Sheet.Name, At: at, Field: field, Text: text}
}

// rate gives a part a figure, such as another size of fuse to be fitted.
func (p *Pass) rate(id model.PartID, rating string, value unit.Any) edit.Edit {
	return edit.RatePart{Sheet: p.Sheet.Name, ID: id, Rating: model.Rating{Name: rating, Value: value, Source: toBeFitted}}
}

// toBeFitted is the source of a figure that a ready-made edit gives to a part.
const toBeFitted = "to be fitted"

// together makes several edits one step.
func together(title string, edits ...edit.Edit) edit.Edit {
	return edit.Group{Title: title, Edits: edits}
}

// freePart is a designator that no part of the sheet has: the word, or the word with the first
// free number.
func (p *Pass) freePart(word string) model.PartID {
	return model.PartID(freeName(word, func(id string) bool { return p.Sheet.Part(model.PartID(id)) != nil }))
}

// freeWire is a wire id that no wire of the sheet has.
func (p *Pass) freeWire(word string) model.WireID {
	return model.WireID(freeName(word, func(id string) bool { return p.Sheet.Wire(model.WireID(id)) != nil }))
}

func freeName(word string, taken func(string) bool) string {
	for n := 1; ; n++ {
		if name := fmt.Sprintf("%s%d", word, n); !taken(name) {
			return name
		}
	}
}

// sideOf is the end of a wire that lands on a terminal.
func sideOf(w *model.Wire, at model.TerminalRef) edit.Side {
	if w.From.At == at {
		return edit.From
	}
	return edit.To
}
