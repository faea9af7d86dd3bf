package view

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/diagram/view/both"
	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

// Compare is a sheet with an earlier one on one drawing: what was kept, removed, added,
// moved and changed, with a list of the differences.
var Compare = View{Name: "compare", About: "a sheet against an earlier one: kept, removed, added, moved, changed", Draw: drawCompare}

func drawCompare(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o diagram.Options) (*diagram.Drawing, error) {
	is, err := find(j, sheet)
	if err != nil {
		return nil, err
	}
	was, err := earlier(j, sheet, o.Against)
	if err != nil {
		return nil, err
	}
	c := compare.Of(was, is)
	if o.Previous == nil {
		if o.Previous, err = diagram.Draw(j, sheet, lib, o); err != nil {
			return nil, err
		}
	}
	drawn, err := diagram.Draw(both.Merge(j, c), sheet, lib, o)
	if err != nil {
		return nil, err
	}
	both.Mark(drawn.Pages, c)
	out := *drawn
	out.Pages = listed(drawn.Pages, c, lib.For(j), o)
	return &out, nil
}

// earlier is the sheet to compare with: the one that is asked for, else the one before.
func earlier(j *model.Job, sheet, against model.SheetName) (*model.Sheet, error) {
	if against == "" {
		if s := compare.Before(j, sheet); s != nil {
			return s, nil
		}
		return nil, fmt.Errorf("the job has no sheet before the %s sheet: name the one to compare with", sheet)
	}
	if against == sheet {
		return nil, fmt.Errorf("the %s sheet cannot be compared with itself: name another one", sheet)
	}
	return find(j, against)
}

// listed adds the lists of differences to the drawn pages.
func listed(drawn []scene.Page, c *compare.Comparison, cat *model.Catalogue, o diagram.Options) []scene.Page {
	kind := "compared with sheet " + string(c.Was.Name)
	for i := range drawn {
		drawn[i].Title.View = kind
	}
	drawn[0].Title.Notes = append(counts(c), drawn[0].Title.Notes...)
	like := scene.Page{Title: drawn[0].Title, Paper: drawn[0].Paper}
	like.Title.Notes, like.Title.Shown = nil, ""
	b := board.New(shapeOf(drawn[0], o), like)
	for i := range drawn {
		page := drawn[i]
		if len(drawn) > 1 {
			// Parts keep their places on the page that they were on, which may leave room.
			page = board.Trim(page)
		}
		b.Draw(page)
	}
	for _, t := range both.Tables(c, cat) {
		b.Table(t)
	}
	return b.Pages()
}

// shapeOf is the shape that a drawn page was made for.
func shapeOf(p scene.Page, o diagram.Options) diagram.Shape {
	if len(o.Shapes) == 0 {
		return diagram.Shape{Columns: p.W}
	}
	shape := o.Shapes[0]
	for _, s := range o.Shapes {
		if s.Paper == p.Paper {
			shape = s
			break
		}
	}
	if o.Whole {
		shape.Columns, shape.Rows = max(shape.Columns, p.W), 0
	}
	return shape
}

// counts says how many parts and wires became what.
func counts(c *compare.Comparison) []string {
	var words []string
	for _, what := range []compare.What{compare.Kept, compare.Removed, compare.Added, compare.Moved, compare.Changed} {
		if parts, wires := c.Count(what); parts+wires > 0 {
			words = append(words, fmt.Sprintf("%s: %s, %s", what, scene.Count(parts, "part", "parts"), scene.Count(wires, "wire", "wires")))
		}
	}
	if len(words) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("Sheet %s against sheet %s: %s.", c.Is.Name, c.Was.Name, strings.Join(words, "; "))}
}
