// Package both puts two sheets of a job on one: every part and wire that is on either, so
// that one drawing can show what became of each.
package both

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

// Merge is a job with one sheet of the later sheet's name that holds the parts and wires
// of both. Things on both are as the later sheet has them. Zones are those of the job.
func Merge(j *model.Job, c *compare.Comparison) *model.Job {
	sheet := c.Is.CloneAs(c.Is.Name)
	sheet.Drawn = nil
	for _, p := range c.Parts {
		if p.What == compare.Removed {
			gone := p.Was.Clone()
			gone.Place = nil // the drawing of the later sheet knows nothing of its place
			sheet.Parts = append(sheet.Parts, gone)
		}
	}
	for _, w := range c.Wires {
		if w.What == compare.Removed {
			sheet.Wires = append(sheet.Wires, w.Was.Clone())
		}
	}
	earlier := c.Was.CloneAs(c.Was.Name)
	for _, t := range earlier.Terminals {
		if sheet.Terminal(t.At) == nil {
			t.Stack = slices.DeleteFunc(t.Stack, func(id model.WireID) bool { return !slices.Contains(sheet.Landed(t.At), id) })
			sheet.Terminals = append(sheet.Terminals, t)
		}
	}
	out := *j
	out.Sheets = []model.Sheet{sheet}
	return &out
}
