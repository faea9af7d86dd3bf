package tui

import (
	"errors"
	"image"
	"sync/atomic"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/tui/frame"
	"example.com/lugbook/tui/nav"
	"example.com/lugbook/tui/theme"
)

// desk is the whole screen: the one Bubble Tea model.
type desk struct {
	session Session
	lib     *model.Catalogue
	theme   *theme.Theme
	actions []Action
	drawer  func(*model.Job, model.SheetName, *model.Catalogue, diagram.Options) (*diagram.Drawing, error)
	checker func(*model.Job, model.SheetName, *model.Catalogue) (rule.Report, error)
	history *edit.History
	saved   *model.Job                 // the job as it was last saved
	latest  *atomic.Pointer[model.Job] // what is not saved, for rescue; nil if nothing

	catalogue   *model.Catalogue
	catalogueOf *model.Job

	sheetName model.SheetName
	stateName string
	unwired   bool
	mouse     bool

	w, h   int // 0 before the first size
	plan   frame.Plan
	layers []layer

	cursor  thing
	memory  nav.Position // of the arrows
	lug     model.WireID // the lug of the selected terminal that is lit
	view    image.Point  // upper left cell of the drawing on the screen
	grip    grip         // what the mouse holds
	pointed bool         // the mouse, and no key, was used last

	work   work
	album  album
	notice notice
	canvas canvasMemo

	drafts    map[model.TerminalRef]string // lines begun and not kept
	lastEntry *lugline.Entry
	lastLine  kept
	lastPart  model.Part // what was added last
	poles     poles
	tell      int      // number of the reading to tell of once it is compared; 0 if none
	complaint string   // what the customer says; empty if nothing in particular
	recent    []string // ids of actions run from the list, last first
	saving    bool
	quitting  bool
}

// layer is something open over the drawing.
type layer interface {
	// place says which actions its keys do.
	place() place
	// key takes a key that no action of its place has; false if it means nothing there.
	key(*desk, tea.KeyMsg) (tea.Cmd, bool)
}

// notice is what happened last.
type notice struct {
	text string
	role theme.Role
}

func newDesk(s Session, t *theme.Theme) *desk {
	job := s.Job
	if len(job.Sheets) == 0 {
		job = job.Clone()
		job.Sheets = []model.Sheet{{Name: model.AsFound}}
	}
	d := &desk{
		session: s, lib: s.Library, theme: t, actions: table(), drawer: diagram.Draw, checker: judge, history: edit.NewHistory(job, s.Library),
		unwired: true, mouse: s.Mouse, drafts: map[model.TerminalRef]string{}, latest: &atomic.Pointer[model.Job]{},
	}
	d.saved = d.job()
	if s.Notice != "" {
		d.warn(s.Notice)
	}
	d.sheetName = s.Sheet
	if d.sheet() == nil {
		d.sheetName = job.Sheets[len(job.Sheets)-1].Name
	}
	return d
}

func (d *desk) job() *model.Job     { return d.history.Job() }
func (d *desk) sheet() *model.Sheet { return d.job().Sheet(d.sheetName) }
func (d *desk) unsaved() bool       { return d.job() != d.saved }
func (d *desk) say(text string)     { d.notice = notice{text, theme.Text} }
func (d *desk) warn(text string)    { d.notice = notice{"! " + text, theme.Caution} }
func (d *desk) empty() bool         { return len(d.sheet().Parts)+len(d.sheet().Wires) == 0 }
func (d *desk) push(l layer)        { d.layers = append(d.layers, l) }

// cat is the parts library as the job sees it.
func (d *desk) cat() *model.Catalogue {
	if job := d.job(); d.catalogueOf != job {
		d.catalogue, d.catalogueOf = d.lib.For(job), job
	}
	return d.catalogue
}

// pop closes the topmost layer.
func (d *desk) pop() {
	if len(d.layers) > 0 {
		d.layers = d.layers[:len(d.layers)-1]
	}
}

// top is the topmost layer; nil if there is none.
func (d *desk) top() layer {
	if len(d.layers) == 0 {
		return nil
	}
	return d.layers[len(d.layers)-1]
}

// here is the place that the keys are in.
func (d *desk) here() place {
	if top := d.top(); top != nil {
		return top.place()
	}
	return onDrawing
}

// topOf is the topmost layer if it is of a type.
func topOf[L layer](d *desk) (l L, ok bool) {
	l, ok = d.top().(L)
	return l, ok
}

// Init has nothing to do: the first size starts the work.
func (d *desk) Init() tea.Cmd { return nil }

// apply makes an edit. On an error the job stays as it was; the error leaves out the name
// of the edit, which the person knows.
func (d *desk) apply(e edit.Edit) error {
	if err := d.history.Do(e); err != nil {
		if cause := errors.Unwrap(err); cause != nil {
			return cause
		}
		return err
	}
	d.changed()
	return nil
}

// act makes an edit and says so, and how to undo it.
func (d *desk) act(e edit.Edit) error {
	if err := d.apply(e); err != nil {
		return err
	}
	d.say(e.Name() + "; u undoes it")
	return nil
}

// try makes an edit that no one is typing: an error is shown.
func (d *desk) try(e edit.Edit) {
	if err := d.act(e); err != nil {
		d.warn(explain(err))
	}
}

// changed brings everything in line with a job that is another one now.
func (d *desk) changed() {
	if d.unsaved() {
		d.latest.Store(d.job())
	} else {
		d.latest.Store(nil)
	}
	if d.sheet() == nil {
		sheets := d.job().Sheets
		d.sheetName = sheets[len(sheets)-1].Name
	}
	if !d.cursor.on(d.sheet(), d.cat()) {
		d.cursor = thing{}
	}
	if w := d.sheet().Wire(d.lug); w == nil || !w.LandsOn(d.cursor.at) {
		d.lug = ""
	}
	d.closeStale()
}

// judge runs all rules on a sheet.
func judge(j *model.Job, sheet model.SheetName, lib *model.Catalogue) (rule.Report, error) {
	return rule.Judge(rule.All, j, sheet, lib)
}
