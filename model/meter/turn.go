package meter

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// The ratings by which a definition tells what a winding is.
const (
	armatureRating = "armature-resistance"
	fieldRating    = "field-resistance"
	phaseRating    = "phase-resistance"
)

// motor is a part with an armature or with phases.
type motor struct {
	part      *model.Part
	armatures []*network.Link
	fields    []*network.Link
	phases    []*network.Link
}

// motors lists the motors of a sheet by their windings: a resistor bank has none.
func motors(n *network.Network) []motor {
	var list []motor
	links := n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.ResistanceElement) || !isTraction(n, l) || !isWinding(l.Element) {
			continue
		}
		if len(list) == 0 || list[len(list)-1].part != l.Part {
			list = append(list, motor{part: l.Part})
		}
		m := &list[len(list)-1]
		switch l.Element.Ohms {
		case armatureRating:
			m.armatures = append(m.armatures, l)
		case fieldRating:
			m.fields = append(m.fields, l)
		default:
			m.phases = append(m.phases, l)
		}
	}
	return list
}

func isWinding(e *model.Element) bool {
	return e.Ohms == armatureRating || e.Ohms == fieldRating || e.Ohms == phaseRating
}

// standing tells why no motor can turn, a line for each; nothing if one can, or if the
// sheet has no motor.
func (w *works) standing() []string {
	var list []string
	for _, m := range motors(w.n) {
		why := w.direct(m)
		if len(m.phases) > 0 {
			why = w.phased(m)
		}
		if why == "" {
			return nil
		}
		list = append(list, why)
	}
	return list
}

// direct tells why a motor with an armature does not turn: it needs current in the
// armature and in each field. A controller that is defined without its motor side feeds
// it unseen; then only shorted windings are held against it.
func (w *works) direct(m motor) string {
	unseen := slices.ContainsFunc(w.asking, w.inside)
	for _, winding := range []struct {
		name  string
		links []*network.Link
	}{{"armature", m.armatures}, {"field", m.fields}} {
		for _, l := range winding.links {
			switch {
			case w.tied.Same(l.A, l.B):
				return fmt.Sprintf("the %s of %s is shorted", winding.name, m.part.ID)
			case !unseen && math.Abs(w.s.Current(l)) <= driveAmps:
				return fmt.Sprintf("the %s of %s carries none", winding.name, m.part.ID)
			}
		}
	}
	return ""
}

// inside reports whether a load of a controller lies between its poles, so that the
// current in the motor is not that of the load.
func (w *works) inside(l *network.Link) bool {
	a, b := w.n.TerminalDef(w.n.Point(l.A).At), w.n.TerminalDef(w.n.Point(l.B).At)
	return a.Pole != "" && b.Pole != ""
}

// phased tells why a motor with phases does not turn: each phase needs an output of its
// own, all of one controller that asks for current.
func (w *works) phased(m motor) string {
	terminals := phaseTerminals(m)
	phases := w.groups(m.part.ID, terminals)
	why := fmt.Sprintf("no controller that takes it feeds the phases of %s", m.part.ID)
	for _, load := range w.asking {
		outputs := outputsOf(load.Def)
		if !w.inside(load) {
			continue
		}
		if len(outputs) == 0 {
			return ""
		}
		reach := w.groups(load.Part.ID, outputs)
		if w.anyUnsure(slices.Concat(phases, reach)) {
			return ""
		}
		lost := missing(terminals, phases, reach)
		switch {
		case repeated(phases) || repeated(reach):
			why = fmt.Sprintf("phases between %s and %s are joined to each other", load.Part.ID, m.part.ID)
		case len(lost) == len(terminals):
		case len(lost) > 0:
			why = fmt.Sprintf("no output of %s reaches %s of %s", load.Part.ID, words(lost), m.part.ID)
		default:
			return ""
		}
	}
	return why
}

// missing lists the phases that no output reaches.
func missing(terminals []string, phases, outputs []int) []string {
	var list []string
	for i, g := range phases {
		if !slices.Contains(outputs, g) {
			list = append(list, terminals[i])
		}
	}
	return list
}

// repeated reports whether two of some groups are the same.
func repeated(groups []int) bool {
	sorted := slices.Sorted(slices.Values(groups))
	return len(slices.Compact(sorted)) < len(groups)
}

// phaseTerminals lists the terminals of a motor that its phases end at.
func phaseTerminals(m motor) []string {
	var list []string
	for _, l := range m.phases {
		for _, t := range l.Element.Between {
			if !slices.Contains(list, t) {
				list = append(list, t)
			}
		}
	}
	return list
}

// outputsOf lists the studs of a controller that give the motor its phases: they have no
// pole, and no element is at them, for what they carry is no direct current.
func outputsOf(d *model.Definition) []string {
	var list []string
	for _, t := range d.Terminals {
		if t.Serves == model.Traction && t.Pole == "" && !touched(d, t.Name) {
			list = append(list, t.Name)
		}
	}
	return list
}
