package live

import (
	"math"
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Words of parts. Those that depart from rest are in capitals, so that they stand out
// without colour.
const (
	closedWord   = "CLOSED"
	openWord     = "open"
	onWord       = "ON"
	offWord      = "off"
	releasedWord = "released"
)

// working is what a part does: the position of a control that has several ways, else
// whether its contacts are closed, else whether it acts.
func (v *view) working(p *model.Part, links []*network.Link) scene.Working {
	def := v.n.Cat.Definition(p.Kind)
	if def == nil {
		return scene.Working{}
	}
	contacts := only(links, model.ContactElement)
	coils := only(links, model.CoilElement)
	switch {
	case def.Control != nil && (len(def.Control.Positions) > 2 || def.Control.Sets == model.TowRun):
		return position(v.s.State.Of(def.Control), def.Control)
	case len(coils) > 0 && len(contacts) > 0:
		return v.driven(coils, contacts)
	case len(contacts) > 0 && def.Family != model.Drive && len(only(links, model.ChargerElement))+len(only(links, model.ConverterElement)) == 0:
		if word, same := v.contactWord(contacts); same {
			return word
		}
		if def.Control != nil {
			return position(v.s.State.Of(def.Control), def.Control)
		}
		return scene.Working{}
	case def.Control != nil && def.Control.Sets == model.PluggedIn && len(only(links, model.ChargerElement)) == 0:
		return position(v.s.State.Of(def.Control), def.Control)
	case len(only(links, model.FuseElement)) > 0:
		return v.fuses(only(links, model.FuseElement))
	}
	return v.acting(def, links)
}

func only(links []*network.Link, kind model.ElementKind) []*network.Link {
	var list []*network.Link
	for _, l := range links {
		if l.Is(kind) {
			list = append(list, l)
		}
	}
	return list
}

func position(at string, c *model.Switching) scene.Working {
	if c.Sets == model.PluggedIn {
		if at == c.Rest {
			return scene.Working{Word: "unplugged"}
		}
		return scene.Working{Word: "PLUGGED IN", Active: true}
	}
	if at == c.Rest {
		return scene.Working{Word: at}
	}
	return scene.Working{Word: strings.ToUpper(at), Active: true}
}

// contactWord is closed or open if all contacts are.
func (v *view) contactWord(contacts []*network.Link) (w scene.Working, same bool) {
	closed := 0
	for _, l := range contacts {
		if v.s.On(l) {
			closed++
		}
	}
	switch closed {
	case 0:
		return scene.Working{Word: openWord}, true
	case len(contacts):
		return scene.Working{Word: closedWord, Active: true}, true
	}
	return scene.Working{}, false
}

// driven is what a contactor or relay does: closed or open, or for one with contacts of
// both kinds, or several coils, which coils have pulled in.
func (v *view) driven(coils, contacts []*network.Link) scene.Working {
	if w, same := v.contactWord(contacts); same && len(coils) == 1 {
		return w
	}
	var pulled []string
	for _, l := range coils {
		if v.s.On(l) {
			pulled = append(pulled, strings.ToUpper(l.Element.ID))
		}
	}
	switch {
	case len(pulled) == 0:
		return scene.Working{Word: releasedWord}
	case len(coils) == 1:
		return scene.Working{Word: "PULLED IN", Active: true}
	}
	return scene.Working{Word: strings.Join(pulled, " "), Active: true}
}

// fuses tells of fuses that are open, and of nothing else: a good fuse does nothing.
func (v *view) fuses(fuses []*network.Link) scene.Working {
	if slices.ContainsFunc(fuses, func(l *network.Link) bool { return !v.s.On(l) }) {
		return scene.Working{Word: "OPEN", Active: true}
	}
	return scene.Working{}
}

// acting is whether a part does its work: whether a load, a converter, a charger, a
// source or a coil of it acts. Parts that only conduct have no word.
func (v *view) acting(def *model.Definition, links []*network.Link) scene.Working {
	acts, on := false, false
	for _, l := range links {
		switch {
		case l.Is(model.LoadElement), l.Is(model.ResistanceElement) && def.Family == model.Loads:
			acts = true
			on = on || math.Abs(v.s.Current(l)) >= Least
		case l.Is(model.ConverterElement), l.Is(model.ChargerElement), l.Is(model.CoilElement):
			acts = true
			on = on || v.s.On(l)
		case l.Is(model.SourceElement) && len(l.Element.ClosedIn) > 0:
			acts = true
			on = on || v.s.On(l)
		}
	}
	switch {
	case !acts:
		return scene.Working{}
	case on:
		return scene.Working{Word: onWord, Active: true}
	}
	return scene.Working{Word: offWord}
}
