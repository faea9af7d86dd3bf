package meter

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// throttlePin begins what a definition says of the pins for the throttle.
const throttlePin = "throttle"

// isThrottle reports whether a definition is a pedal potentiometer: the pedal moves it,
// and it has a track.
func isThrottle(d *model.Definition) bool {
	return d != nil && d.Control != nil && d.Control.Sets == model.Pedal && d.Family != model.Drive && len(trackOf(d)) > 0
}

// trackOf lists the terminals of the track and of the wiper on it.
func trackOf(d *model.Definition) []string {
	var list []string
	for i := range d.Elements {
		if d.Elements[i].Is == model.ResistanceElement {
			list = append(list, d.Elements[i].Between...)
		}
	}
	for i := range d.Elements {
		e := &d.Elements[i]
		if slices.ContainsFunc(e.Between, func(t string) bool { return slices.Contains(list, t) }) {
			list = append(list, e.Between...)
		}
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// throttlePins lists the pins of a controller that the throttle goes to.
func throttlePins(d *model.Definition) []string {
	var list []string
	for _, t := range d.Terminals {
		if t.Serves == model.Controls && strings.HasPrefix(t.Means, throttlePin) {
			list = append(list, t.Name)
		}
	}
	return list
}

// throttles lists the pedal potentiometers of a sheet.
func throttles(n *network.Network) []*model.Part {
	var list []*model.Part
	for i := range n.Sheet.Parts {
		if p := &n.Sheet.Parts[i]; isThrottle(n.Cat.Definition(p.Kind)) {
			list = append(list, p)
		}
	}
	return list
}

// unread tells which controllers that ask for current have no throttle that they can read.
// A sheet without a throttle says nothing of it.
func (w *works) unread() []string {
	var list []string
	throttles := throttles(w.n)
	for i, load := range w.asking {
		pins := throttlePins(load.Def)
		if len(pins) == 0 || len(throttles) == 0 || i > 0 && w.asking[i-1].Part == load.Part {
			continue
		}
		if !w.otherwise(load, pins) && !slices.ContainsFunc(throttles, func(p *model.Part) bool { return w.reads(load, pins, p) }) {
			list = append(list, fmt.Sprintf("the leads of the throttle at %s are open or joined to each other", load.Part.ID))
		} else if w.turned(load, pins) {
			list = append(list, fmt.Sprintf("the ends of the throttle at %s are swapped: with the pedal down its wiper is at the low end", load.Part.ID))
		}
	}
	return list
}

// reads reports whether a controller can read a throttle: each end of the track and the
// wiper has a pin of its own, as far as there are pins, and the pins that take a signal
// and give nothing are among them. What goes out of sight may lead to its place.
func (w *works) reads(load *network.Link, pins []string, p *model.Part) bool {
	track := w.groups(p.ID, trackOf(w.n.Cat.Definition(p.Kind)))
	var joined, loose []int
	signals := true
	for _, pin := range pins {
		g := w.group(load.Part.ID, pin)
		switch {
		case slices.Contains(track, g):
			joined = append(joined, g)
		case !touched(load.Def, pin):
			signals = false
			loose = append(loose, g)
		}
	}
	loose = append(loose, slices.DeleteFunc(slices.Clone(track), func(g int) bool { return slices.Contains(joined, g) })...)
	slices.Sort(joined)
	return w.anyUnsure(loose) || signals && len(slices.Compact(joined)) >= min(len(pins), len(track))
}

// turned reports whether the wiper of a throttle that a controller feeds shows less than half
// of that voltage with the pedal down.
func (w *works) turned(load *network.Link, pins []string) bool {
	if down, set := w.s.State.Position(model.Pedal); !set || down != "down" {
		return false
	}
	for _, e := range load.Def.Elements {
		if e.Is != model.ConverterElement || !slices.Contains(pins, e.Out[0]) || !slices.Contains(pins, e.Out[1]) {
			continue
		}
		high, low := model.TerminalRef{Part: load.Part.ID, Name: e.Out[0]}, model.TerminalRef{Part: load.Part.ID, Name: e.Out[1]}
		fed, ok := w.s.Between(high, low)
		for _, pin := range pins {
			shown, known := w.s.Between(model.TerminalRef{Part: load.Part.ID, Name: pin}, low)
			if ok && known && fed > 0 && !touched(load.Def, pin) && shown < fed/2 {
				return true
			}
		}
	}
	return false
}

// otherwise reports whether something else than a potentiometer is at a pin that takes a
// signal, such as a pedal with electronics of its own.
func (w *works) otherwise(load *network.Link, pins []string) bool {
	signals := slices.DeleteFunc(slices.Clone(pins), func(pin string) bool { return touched(load.Def, pin) })
	groups := w.groups(load.Part.ID, signals)
	for i := range w.n.Size() {
		at := w.n.Point(network.Node(i)).At
		d := w.n.DefinitionOf(at)
		if d == nil || at.Part == load.Part.ID || isThrottle(d) || !slices.Contains(groups, w.tied.Of(network.Node(i))) {
			continue
		}
		if d.Control != nil && d.Control.Sets == model.Pedal || acts(d, at.Name) {
			return true
		}
	}
	return false
}

// acts reports whether an element at a terminal is more than metal and contacts.
func acts(d *model.Definition, terminal string) bool {
	plain := []model.ElementKind{model.JoinElement, model.ContactElement, model.FuseElement}
	return slices.ContainsFunc(d.Elements, func(e model.Element) bool {
		return !slices.Contains(plain, e.Is) && slices.Contains(e.Between, terminal)
	})
}
