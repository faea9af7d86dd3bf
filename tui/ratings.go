package tui

import (
	"errors"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// label is the source of a figure that is typed at the cart.
const label = "label"

// ratingRows are a part's figures: those that its kind has, with the part's own in their
// place. A part that nobody has identified may have any figure.
func (d *desk) ratingRows(p *model.Part) []row {
	var rows []row
	def := d.cat().Definition(p.Kind)
	if def == nil {
		for _, r := range p.Ratings {
			rows = append(rows, ratingRow(p.ID, d.sheetName, r))
		}
		return append(rows, otherRating(p.ID, d.sheetName))
	}
	for _, r := range def.Ratings {
		if own, has := p.Rating(r.Name); has {
			r = own
		}
		rows = append(rows, ratingRow(p.ID, d.sheetName, r))
	}
	return rows
}

func ratingRow(id model.PartID, sheet model.SheetName, r model.Rating) row {
	about := r.Source
	if term, known := part.TermOf(r.Name); known {
		about = term.Means + "; source: " + r.Source
	}
	return row{name: r.Name, value: r.Value.String(), about: about, edit: func(d *desk) tea.Cmd {
		d.ask(r.Name, "value with its unit as on the label, or value; source   was "+r.Value.String()+", nothing takes the library's", r.Value.String(),
			func(d *desk, text string) (tea.Cmd, error) {
				return nil, d.rate(id, sheet, r.Name, text, r.Value.String())
			})
		return nil
	}}
}

// otherRating records a figure that has no row yet.
func otherRating(id model.PartID, sheet model.SheetName) row {
	return row{name: "other figure", value: "...", about: "any figure off the label: its name, then its value", edit: func(d *desk) tea.Cmd {
		f := d.ask("figure", "name = value, such as fuse-rating = 250 A; Tab goes through the names", "", func(d *desk, text string) (tea.Cmd, error) {
			name, value, found := strings.Cut(text, "=")
			if !found {
				return nil, errors.New("expected a name, = and a value with its unit")
			}
			return nil, d.rate(id, sheet, strings.TrimSpace(name), strings.TrimSpace(value), "")
		})
		for _, term := range part.Vocabulary() {
			f.words = append(f.words, term.Name+" = ")
		}
		return nil
	}}
}

// rate records a figure that was typed; empty text goes back to the library's. A bare number
// has the unit of what was there.
func (d *desk) rate(id model.PartID, sheet model.SheetName, name, text, was string) error {
	value, source, sourced := strings.Cut(text, ";")
	r := model.Rating{Name: name, Source: label}
	if sourced && strings.TrimSpace(source) != "" {
		r.Source = strings.TrimSpace(source)
	}
	term, known := part.TermOf(name)
	if !known {
		return fmt.Errorf("no figure is called %s; Tab goes through the names", name)
	}
	if value = strings.TrimSpace(value); value != "" {
		value = withUnit(value, was, "")
		any, err := unit.ParseAny(value)
		if err != nil {
			return err
		}
		if any.Dimension() != term.Of {
			return fmt.Errorf("%s is a %s, and %s is not", name, term.Of, value)
		}
		r.Value = any
	}
	return d.act(edit.RatePart{Sheet: sheet, ID: id, Rating: r})
}
