package tui

import (
	"fmt"
	"image"
	"reflect"
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
)

// stamp says what something was computed from.
type stamp struct {
	revision int
	sheet    model.SheetName
	unwired  bool // the drawing shows terminals without a wire
}

// drawn is a finished drawing.
type drawn struct {
	stamp
	shows   shot
	picture *picture
	force   *force // the state that was in force, painted on it; nil if none was
	careful bool   // placed with all the time it takes
	err     error
}

// checked is a finished check.
type checked struct {
	stamp
	report rule.Report
	err    error
}

// work is what is being computed, and what the screen shows meanwhile.
type work struct {
	picture   *picture         // the newest drawing of the sheet; nil before the first
	last      *diagram.Drawing // the newest of any sheet: a sheet that is shown next keeps its places
	pictureOf stamp
	standIn   *picture // shown until the drawing that a box was dropped on is prepared
	standsFor stamp
	drawing   bool
	careful   bool // a careful drawing is on its way

	findings   []rule.Finding
	questions  []rule.Question
	findingsOf stamp
	checking   bool
	checkedYet bool

	force   *force // the newest computation of a state; nil if none is in force
	solving bool

	judged    judged // the readings of the sheet, compared
	judging   bool
	diagnosis *diagnosis // the newest; nil before the first
	thinking  bool
	news      int // counts what came of readings
}

// carefulParts is the number of parts up to which a job that was just opened is drawn
// once more with care: it takes a few seconds beside the screen.
const carefulParts = 40

func (d *desk) stamp() stamp {
	return stamp{d.history.Revision(), d.sheetName, d.unwired}
}

// refresh starts what has to be computed anew and is not being computed.
func (d *desk) refresh() tea.Cmd {
	if d.sheet() == nil {
		return nil
	}
	var cmds []tea.Cmd
	now := d.stamp()
	if d.empty() {
		d.work.picture, d.work.pictureOf = nil, now
	} else if !d.work.drawing && d.work.pictureOf != now {
		d.work.drawing = true
		cmds = append(cmds, d.draw(now, d.album.find(d.shot()), diagram.Options{Quick: true, Unwired: d.unwired, Previous: d.before()}))
	}
	if at := (stamp{revision: now.revision, sheet: now.sheet}); !d.work.checking && (!d.work.checkedYet || d.work.findingsOf != at) {
		d.work.checking = true
		cmds = append(cmds, d.check(at))
	}
	return tea.Batch(append(cmds, d.energise(), d.compareReadings(), d.think(), d.carry(), d.trace())...)
}

// draw computes a drawing beside the screen, or prepares the one that was there before.
func (d *desk) draw(of stamp, was *diagram.Drawing, o diagram.Options) tea.Cmd {
	shows, lib, ascii, drawer, solve := d.shot(), d.lib, d.session.ASCII, d.drawer, d.solver()
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = drawn{stamp: of, careful: !o.Quick, err: fmt.Errorf("the drawing failed: %v", r)}
			}
		}()
		drawing := was
		if drawing == nil {
			var err error
			if drawing, err = drawer(shows.job, of.sheet, lib, o); err != nil {
				return drawn{stamp: of, careful: !o.Quick, err: err}
			}
		}
		done := drawn{stamp: of, shows: shows, careful: !o.Quick, picture: newPicture(drawing, ascii)}
		if solve != nil {
			done.force = solve(done.picture)
		}
		return done
	}
}

// redraw starts a careful drawing of what is there.
func (d *desk) redraw() tea.Cmd {
	if d.work.careful || d.empty() {
		return nil
	}
	d.work.careful = true
	return d.draw(d.stamp(), nil, diagram.Options{Unwired: d.unwired})
}

func (d *desk) check(of stamp) tea.Cmd {
	job, lib, checker := d.job(), d.lib, d.checker
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				msg = checked{stamp: of, err: fmt.Errorf("the check failed: %v", r)}
			}
		}()
		report, err := checker(job, of.sheet, lib)
		return checked{of, report, err}
	}
}

// takeDrawing shows a finished drawing and puts it into the album. One of an older revision is
// dropped; if it was drawn with care, the next one keeps its places, unless a person has begun to
// arrange the drawing that is there.
func (d *desk) takeDrawing(m drawn) tea.Cmd {
	if m.careful {
		d.work.careful = false
	} else {
		d.work.drawing = false
	}
	d.keepForce(m.force)
	now := d.stamp()
	switch {
	case m.err != nil && m.stamp == now:
		d.work.pictureOf = now
		d.warn(clean.Line(m.err.Error()))
	case m.picture == nil || m.careful && d.arranging(m.shows):
	case m.stamp == now:
		first, opened := d.work.last == nil && len(d.sheet().Drawn) == 0, d.work.picture == nil
		d.hold(m.picture)
		d.hang(m)
		d.arrive(opened)
		if first && now.revision == 0 && len(d.sheet().Parts) <= carefulParts {
			return tea.Batch(d.redraw(), d.refresh())
		}
	case m.careful && m.sheet == now.sheet && m.unwired == now.unwired:
		d.album.forget(d.shot())
		d.hang(m)
	}
	return d.refresh()
}

// arranging reports whether something of the drawing is in the hand, or a person placed a box, or
// let one go, since another drawing was begun: that would take things away from under the hand.
func (d *desk) arranging(since shot) bool {
	_, moving := topOf[*moveLayer](d)
	_, pulling := topOf[*pullLayer](d)
	if moving || pulling {
		return true
	}
	was := since.job.Sheet(since.sheet)
	return slices.ContainsFunc(was.Parts, func(p model.Part) bool {
		now := d.sheet().Part(p.ID)
		return since.sheet == d.sheetName && now != nil && !reflect.DeepEqual(now.Place, p.Place)
	})
}

// hang puts a finished drawing on the screen and into the album.
func (d *desk) hang(m drawn) {
	d.work.picture, d.work.pictureOf, d.work.last = m.picture, m.stamp, m.picture.drawing
	d.album.keep(m.shows, m.picture.drawing)
}

// hold moves the pane so that the selected thing stays where it is on the screen when another
// drawing is shown, unless most of what is around it stays where it is on the drawing.
func (d *desk) hold(next *picture) {
	before := d.work.picture
	if d.standsIn() {
		before = d.work.standIn
	}
	if before == nil {
		return
	}
	view := &d.view
	if o := d.overview(); o != nil {
		view = &o.view
	}
	shown := image.Rectangle{Min: *view, Max: view.Add(d.plan.Canvas.Size())}
	was, drawn := before.place(d.cursor)
	is, stays := next.place(d.cursor)
	if drawn && stays && !before.steady(next, shown) {
		*view = view.Add(is.Min.Sub(was.Min))
	}
}

// steady reports whether more than half of the boxes in view lie where they did.
func (p *picture) steady(next *picture, shown image.Rectangle) bool {
	seen, still := 0, 0
	for _, o := range p.objects {
		if o.kind == partThing && o.rect.Overlaps(shown) {
			seen++
			if is, drawn := next.place(o.thing); drawn && is.Min == o.rect.Min {
				still++
			}
		}
	}
	return 2*still > seen
}

// takeFindings shows the result of a check. One of an older revision is dropped.
func (d *desk) takeFindings(m checked) tea.Cmd {
	d.work.checking = false
	now := stamp{revision: d.history.Revision(), sheet: d.sheetName}
	if m.stamp == now {
		d.work.checkedYet, d.work.findingsOf = true, now
		d.work.findings, d.work.questions = m.report.Findings, m.report.Questions
		d.work.news++
		if f, listed := topOf[*findingsLayer](d); listed {
			f.keepPlace(d)
		}
		if m.err != nil {
			d.warn(clean.Line(m.err.Error()))
		}
	}
	return d.refresh()
}
