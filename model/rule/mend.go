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

// acrossLead is the make of the leads of what is put across two studs: a resistor, a diode.
var acrossLead = model.Wire{Gauge: unit.AWG(18), Insulation: unit.C(105), Length: unit.LengthFromMetres(0.08)}

// putAcross puts a part with two leads across two terminals, on top of what is there.
func (p *Pass) putAcross(title string, part model.Part, first, second string, a, b model.TerminalRef) edit.Edit {
	edits := []edit.Edit{edit.AddPart{Sheet: p.Sheet.Name, Part: part}}
	for i, join := range []struct {
		lead string
		at   model.TerminalRef
	}{{first, a}, {second, b}} {
		w := acrossLead
		w.ID = model.WireID(fmt.Sprintf("%s-%d", part.ID, i+1))
		w.From, w.To = model.End{At: join.at}, model.End{At: model.TerminalRef{Part: part.ID, Name: join.lead}}
		edits = append(edits, edit.AddWire{Sheet: p.Sheet.Name, Wire: w, FromSeat: p.onTop(join.at)})
	}
	return together(title, edits...)
}

// onTop is the outermost place of a stack, as far as its order is recorded.
func (p *Pass) onTop(at model.TerminalRef) edit.Seat {
	if t := p.Sheet.Terminal(at); t != nil && len(t.Stack) > 0 {
		return edit.Outermost
	}
	return edit.SeatUnknown
}
