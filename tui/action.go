package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// place is what the keys are in: the drawing, or the topmost layer over it.
type place string

// The places.
const (
	onDrawing  place = "drawing"
	inWalk     place = "walk"     // entering lugs at a stud
	inPull     place = "pull"     // choosing where a new wire goes
	inMove     place = "move"     // moving a box
	inOverview place = "overview" // the drawing made smaller
	inCard     place = "card"     // the fields of what is selected
	inStack    place = "stack"    // the order of lugs on a stud
	inFindings place = "findings" // the list of findings
	inJump     place = "jump"     // typing the letters of a place
	inList     place = "list"     // a list with a filter
	inRecords  place = "records"  // a list with a filter whose lines can be changed and taken away
	inField    place = "field"    // one value being typed
	inReading  place = "reading"  // what a meter shows, being typed
	inPage     place = "page"     // the page of a rule
)

// types reports whether letters are typed there. Where they are not, they act.
func (p place) types() bool {
	return p == inWalk || p == inList || p == inRecords || p == inField || p == inReading
}

// Action is one thing that can be done. Its keys, its hint, its line in the help and
// in the command list all come from here.
type Action struct {
	ID    string   // command word
	Title string   // one line
	Keys  []string // that do it, in each of its places
	Hint  string   // word or two in the hints; empty if it is not hinted
	In    []place
	When  func(*desk) string // why it cannot be done now; empty if it can; nil: always
	Run   func(*desk) tea.Cmd
}

// refusal is why the action cannot be done now; empty if it can.
func (a *Action) refusal(d *desk) string {
	if a.When == nil {
		return ""
	}
	return a.When(d)
}

// table lists all actions in the order of hints and help.
func table() []Action {
	return slices.Concat(
		walkActions(), pullActions(), moveActions(), fieldActions(), listActions(), stackActions(), cardActions(), zoomActions(),
		findingActions(), pageActions(), readingActions(), recordActions(), editActions(), fileActions(), pointActions(), sheetActions(), stateActions(), viewActions(), shrinkActions(),
	)
}

// find is the action that a key does in a place; nil if there is none.
func (d *desk) find(in place, key string) *Action {
	for i := range d.actions {
		if a := &d.actions[i]; slices.Contains(a.Keys, key) && slices.Contains(a.In, in) {
			return a
		}
	}
	return nil
}

// do runs an action, or says why it cannot be done.
func (d *desk) do(a *Action) tea.Cmd {
	if why := a.refusal(d); why != "" {
		d.warn(strings.ReplaceAll(a.ID, "-", " ") + ": " + why)
		return nil
	}
	return a.Run(d)
}

// everywhere are the places where letters act.
var everywhere = []place{onDrawing, inCard, inFindings, inOverview}
