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

// PageOf makes the page of a rule. It fails if an example of the rule can't be read or drawn.
func PageOf(r *rule.Rule, lib *model.Catalogue) (*Page, error) {
	p := &Page{Rule: r}
	for _, half := range []struct {
		plate   *Plate
		example rule.Example
		caption string
	}{{&p.Wrong, r.Wrong, r.Bad}, {&p.Right, r.Right, r.Good}} {
		plate, err := plateOf(r, half.example, half.caption, lib)
		if err != nil {
			return nil, fmt.Errorf("example of %s: %w", r.ID, err)
		}
		*half.plate = plate
	}
	return p, nil
}

func plateOf(r *rule.Rule, e rule.Example, caption string, lib *model.Catalogue) (Plate, error) {
	plate := Plate{Caption: caption}
	j, err := e.Job()
	if err != nil {
		return plate, err
	}
	sheet := j.Sheets[len(j.Sheets)-1].Name
	findings, err := rule.Check(j, sheet, lib)
	if err != nil {
		return plate, err
	}
	for _, f := range findings {
		if f.Rule == r.ID {
			plate.Says = append(plate.Says, f)
		}
	}
	j.Title = caption
	drawn, err := diagram.Draw(j, sheet, lib, diagram.Options{Shapes: []diagram.Shape{{Columns: widest}}, Whole: true})
	if err != nil {
		return plate, err
	}
	plate.Drawn = drawn.Pages[0]
	return plate, nil
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
