package both

import (
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

// order is the order of the differences in a list.
var order = []compare.What{compare.Removed, compare.Added, compare.Moved, compare.Changed}

// Tables lists what is not as it was: parts, wires, terminals. cat is the parts library as
// the job sees it.
func Tables(c *compare.Comparison, cat *model.Catalogue) []board.Table {
	parts := board.Table{Title: "Parts that differ", Head: []string{"part", "became", "what it is, or what differs"}, Empty: "None."}
	wires := board.Table{Title: "Wires that differ", Head: []string{"wire", "became", "where it goes, or what differs"}, Empty: "None."}
	for _, what := range order {
		for i := range c.Parts {
			if p := &c.Parts[i]; p.What == what {
				parts.Rows = append(parts.Rows, board.Row{Cells: []string{string(p.ID), string(what), aboutPart(p, cat)}, Of: scene.Ref{Kind: scene.BoxKind, ID: string(p.ID)}})
			}
		}
		for i := range c.Wires {
			if w := &c.Wires[i]; w.What == what {
				wires.Rows = append(wires.Rows, board.Row{Cells: []string{string(w.ID), string(what), aboutWire(w)}, Of: scene.Ref{Kind: scene.WireKind, ID: string(w.ID)}})
			}
		}
	}
	terminals := board.Table{Title: "Terminals that differ in other things than their wires", Head: []string{"terminal", "what differs"}}
	for _, t := range c.Terminals {
		terminals.Rows = append(terminals.Rows, board.Row{
			Cells: []string{t.At.String(), sentence(t.Differs)}, Of: scene.Ref{Kind: scene.PortKind, ID: string(t.At.Part), Port: t.At.Name},
		})
	}
	return []board.Table{parts, wires, terminals}
}

func aboutPart(p *compare.Part, cat *model.Catalogue) string {
	if len(p.Differs) > 0 {
		return sentence(p.Differs)
	}
	return partWords(either(p.Is, p.Was), cat)
}

func aboutWire(w *compare.Wire) string {
	if len(w.Differs) > 0 {
		return sentence(w.Differs)
	}
	return wireWords(either(w.Is, w.Was))
}

func either[T any](first, second *T) *T {
	if first != nil {
		return first
	}
	return second
}

// partWords is what a part is, and where.
func partWords(p *model.Part, cat *model.Catalogue) string {
	kind := p.Kind
	if d := cat.Definition(p.Kind); d != nil {
		kind = d.Title
	}
	words := []string{kind}
	if p.Name != "" && !strings.EqualFold(p.Name, kind) {
		words = []string{p.Name + " (" + kind + ")"}
	}
	if p.Zone != "" {
		words = append(words, "in "+string(p.Zone))
	}
	return strings.Join(words, ", ")
}

func wireWords(w *model.Wire) string {
	words := []string{w.From.String() + " to " + w.To.String()}
	if conductor := strings.TrimSpace(w.Gauge.String() + " " + w.Colour.String()); conductor != "" {
		words = append(words, conductor)
	}
	return strings.Join(words, ", ")
}

// sentence is a list of differences in words.
func sentence(differs []compare.Difference) string {
	words := make([]string, len(differs))
	for i, d := range differs {
		words[i] = Words(d)
	}
	return strings.Join(words, "; ")
}
