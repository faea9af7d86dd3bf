package book

import (
	"fmt"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/rule"
)

// Page is the page of one rule.
type Page struct {
	Rule         *rule.Rule
	Wrong, Right Plate
}

// Plate is an example as drawn and judged.
type Plate struct {
	Caption string
	Drawn   scene.Page
	Says    []rule.Finding // what the rule says about it; nothing about the right one
}

// widest is how many columns an example may take, so that a terminal of 80 shows it.
const widest = 78

// PageOf makes the page of a rule. The wrong example is drawn from the right one, so that what
// is the same stands in the same place. It fails if an example of the rule can't be read or
// drawn.
func PageOf(r *rule.Rule, lib *model.Catalogue) (*Page, error) {
	p := &Page{Rule: r}
	var before *diagram.Drawing
	for _, half := range []struct {
		plate   *Plate
		example rule.Example
		caption string
	}{{&p.Right, r.Right, r.Good}, {&p.Wrong, r.Wrong, r.Bad}} {
		plate, drawn, err := plateOf(r, half.example, lib, before)
		if err != nil {
			return nil, fmt.Errorf("example of %s: %w", r.ID, err)
		}
		plate.Caption, before = half.caption, drawn
		*half.plate = plate
	}
	return p, nil
}

func plateOf(r *rule.Rule, e rule.Example, lib *model.Catalogue, before *diagram.Drawing) (Plate, *diagram.Drawing, error) {
	var plate Plate
	j, err := e.Job()
	if err != nil {
		return plate, nil, err
	}
	s := &j.Sheets[len(j.Sheets)-1]
	findings, err := rule.Check(j, s.Name, lib)
	if err != nil {
		return plate, nil, err
	}
	for _, f := range findings {
		if f.Rule == r.ID {
			plate.Says = append(plate.Says, f)
		}
	}
	j.Title = r.Title
	colour(s, lib.For(j))
	drawn, err := diagram.Draw(j, s.Name, lib, diagram.Options{Shapes: []diagram.Shape{{Columns: widest}}, Whole: true, Quick: true, Previous: before})
	if err != nil {
		return plate, nil, err
	}
	plate.Drawn = drawn.Pages[0]
	return plate, drawn, nil
}

// colour gives the wires of an example that is to be drawn the usual colours, where it records
// none: red on a positive terminal, black on a negative one, blue between.
func colour(s *model.Sheet, cat *model.Catalogue) {
	pole := func(e model.End) model.Pole {
		part := s.Part(e.At.Part)
		if part == nil {
			return ""
		}
		d := cat.Definition(part.Kind)
		if d == nil || d.Terminal(e.At.Name) == nil {
			return ""
		}
		return d.Terminal(e.At.Name).Pole
	}
	for i := range s.Wires {
		w := &s.Wires[i]
		if w.Colour != (model.Colour{}) {
			continue
		}
		text := "BU"
		switch from, to := pole(w.From), pole(w.To); {
		case from == model.Positive || to == model.Positive:
			text = "RD"
		case from == model.Negative || to == model.Negative:
			text = "BK"
		}
		if c, err := model.ParseColour(text); err == nil {
			w.Colour = c
		}
	}
}

// entry is one paragraph of a page with its heading.
type entry struct{ heading, text string }

// entries lists the paragraphs of a page in their order.
func (p *Page) entries() []entry {
	r := p.Rule
	return []entry{
		{"What it looks for", r.About},
		{"Why it matters", r.Why},
		{"How to tell on the cart", r.Tell},
		{"Basis", basisText(r.Basis)},
		{"Remedy", r.Remedy},
		{"Its limits", r.Blind},
	}
}

func basisText(b rule.Basis) string { return fmt.Sprintf("%s (%s)", b.Text, b.Source) }

// Cautions stands at the head of every book.
const Cautions = "The rules judge what a job file says. They do not see the cart, and no finding means that these rules found " +
	"nothing, not that a cart is safe. Local codes and the makers' instructions prevail. Packs drive thousands of amperes through a slipped spanner: " +
	"take off jewellery, wear eye protection, use insulated tools, disconnect the pack and discharge the controller's capacitors before " +
	"touching a stud. The AC side belongs to licensed people."
