package tui

import (
	"slices"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
)

// album keeps the drawings that were on the screen, so that undo, redo and another sheet bring
// back the very drawing that was there. The job of each step of the history is one that
// never changes, so it tells the steps apart. It is bounded: the drawings that were not looked
// at for longest go first, and are drawn anew if they are asked for again.
type album struct {
	leaves []leaf // looked at last comes last
	things int    // in all of them
}

// leaf is a drawing with what it shows.
type leaf struct {
	shows   shot
	drawing *diagram.Drawing
}

// shot is what a drawing shows: a sheet at a step of the history.
type shot struct {
	job     *model.Job
	sheet   model.SheetName
	unwired bool
}

// albumRoom is the most boxes and wires that are kept, of all drawings together: some dozens
// of megabytes. The newest drawing is kept however large it is.
const albumRoom = 40_000

// weight is the number of boxes and wires of a drawing.
func (l leaf) weight() int {
	n := 1
	for i := range l.drawing.Pages {
		n += len(l.drawing.Pages[i].Boxes) + len(l.drawing.Pages[i].Wires)
	}
	return n
}

// find is the drawing that showed this; nil if there is none.
func (a *album) find(of shot) *diagram.Drawing {
	i := slices.IndexFunc(a.leaves, func(l leaf) bool { return l.shows == of })
	if i < 0 {
		return nil
	}
	found := a.leaves[i]
	a.leaves = append(slices.Delete(a.leaves, i, i+1), found)
	return found.drawing
}

// forget lets go of the drawing that showed this.
func (a *album) forget(of shot) {
	if a.find(of) != nil {
		a.drop(len(a.leaves) - 1)
	}
}

// keep puts a drawing in the place of the one that showed the same before.
func (a *album) keep(of shot, d *diagram.Drawing) {
	a.forget(of)
	l := leaf{of, d}
	a.leaves = append(a.leaves, l)
	a.things += l.weight()
	for a.things > albumRoom && len(a.leaves) > 1 {
		a.drop(0)
	}
}

func (a *album) drop(i int) {
	a.things -= a.leaves[i].weight()
	a.leaves = slices.Delete(a.leaves, i, i+1)
}

// last is the newest drawing of a sheet, at whatever step; nil if there is none.
func (a *album) last(sheet model.SheetName) *diagram.Drawing {
	for _, l := range slices.Backward(a.leaves) {
		if l.shows.sheet == sheet {
			return l.drawing
		}
	}
	return nil
}

// shot is what is to be shown now.
func (d *desk) shot() shot { return shot{d.job(), d.sheetName, d.unwired} }

// before is the drawing that the next one of this sheet begins from: the newest of the sheet,
// else the one that its file tells of, else that of another sheet.
func (d *desk) before() *diagram.Drawing {
	if own := d.album.last(d.sheetName); own != nil {
		return own
	}
	if kept := diagram.Recall(d.sheet(), diagram.OnScreen); kept != nil {
		return kept
	}
	return d.work.last
}

// drawnJob is the job as it is saved: with how its sheets were drawn last, so that they are
// found as they were left.
func (d *desk) drawnJob() *model.Job {
	job := d.job().Clone()
	for i := range job.Sheets {
		s := &job.Sheets[i]
		if last := d.album.last(s.Name); last != nil {
			last.KeepIn(s, diagram.OnScreen)
		}
	}
	return job
}
