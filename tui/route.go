package tui

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/lugline"
)

// route lists the terminals in the order of the walk: part by part.
func (d *desk) route() []model.TerminalRef {
	s, cat := d.sheet(), d.cat()
	var route []model.TerminalRef
	for i := range s.Parts {
		for _, name := range cat.TerminalsOf(s, &s.Parts[i]) {
			route = append(route, model.TerminalRef{Part: s.Parts[i].ID, Name: name})
		}
	}
	return route
}

// walkOn stands at a neighbouring stud of the walk. After the last one it goes round to
// the first that is not done.
func (w *walkLayer) walkOn(d *desk, by int) {
	route := d.route()
	switch i := slices.Index(route, w.at) + by; {
	case i < 0:
		d.say("this is the first stud; Esc leaves the walk")
	case i < len(route):
		w.goTo(d, route[i])
	default:
		at, why := d.leftOpen(route)
		if why == "" {
			d.say("something is recorded of every stud; Esc leaves the walk")
			return
		}
		w.goTo(d, at)
		d.say("round again: " + why)
	}
}

// leftOpen is the first stud of the walk that is not done, and why: a wire is expected
// there that nobody has looked for, or nothing is recorded of it.
func (d *desk) leftOpen(route []model.TerminalRef) (at model.TerminalRef, why string) {
	s := d.sheet()
	for _, at := range route {
		if expected := lugline.Expected(s, at); len(expected) > 0 {
			return at, fmt.Sprintf("%s still expects %s", lugline.Name(at), expected[0])
		}
		order, _ := s.StackOf(at)
		if t := s.Terminal(at); len(order) == 0 && (t == nil || t.Confidence != model.Traced) {
			return at, "nothing is recorded of " + lugline.Name(at) + "; % says that nothing is on it"
		}
	}
	return at, ""
}

// stopWords is a stud of the route with how many lugs are on it, and how many more are
// expected.
func (d *desk) stopWords(at model.TerminalRef) string {
	words := lugline.Name(at)
	order, _ := d.sheet().StackOf(at)
	expected := len(lugline.Expected(d.sheet(), at))
	if seen := len(order) - expected; seen > 0 {
		words += fmt.Sprintf(" %d", seen)
	}
	if expected > 0 {
		words += fmt.Sprintf(" expects %d", expected)
	}
	return words
}
