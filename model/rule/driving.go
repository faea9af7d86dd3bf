package rule

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// trial is what a sheet does in one setting of the controls that have to do with driving.
type trial struct {
	state    state.State
	motion   meter.Motion
	solution *network.Solution
}

// mostReasons is for how many reasons at once a cart may have to stay in a setting that is
// tried. What drives in spite of three drives in spite of fewer.
const mostReasons = 2

// trials tries the settings of the controls that have to do with driving, once. There are
// none if nothing of the drive is wired.
func (p *Pass) trials() []trial {
	if p.shared.tried {
		return p.shared.trials
	}
	p.shared.tried = true
	if p.unsound() || !p.hasDrive() {
		return nil
	}
	for _, s := range meter.Settings(p.Net) {
		if len(forbidding(s)) > mostReasons {
			continue
		}
		if solution, err := p.Net.Solve(s); err == nil {
			p.shared.trials = append(p.shared.trials, trial{s, meter.Moves(p.Net, solution), solution})
		}
	}
	return p.shared.trials
}

// unsound reports whether the pack is misconnected or a battery shorted, so that what flows
// cannot be judged yet.
func (p *Pass) unsound() bool { return p.misconnected() || len(p.Net.Shorted()) > 0 }

// hasDrive reports whether a source, and a controller or a motor's winding that is wired, are
// on the sheet.
func (p *Pass) hasDrive() bool {
	if _, ok := p.mainString(); !ok {
		return false
	}
	controllers, wired := false, false
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Part == nil || l.Def.Family != model.Drive {
			continue
		}
		switch {
		case p.isDriveLoad(l):
			controllers = true
			wired = wired || p.wired(l.A) && p.wired(l.B) || p.lacksOneLead(l)
		case l.Is(model.ResistanceElement) && !controllers && p.isTraction(l.A) && p.isTraction(l.B):
			wired = wired || p.wired(l.A) && p.wired(l.B)
		}
	}
	return wired
}

// lacksOneLead reports whether all studs of a controller but one are wired: a lead is off,
// and the sheet is whole otherwise. A stud with nothing but a diode behind it, as that of a plug
// brake, may stay bare if a motor is wired.
func (p *Pass) lacksOneLead(l *network.Link) bool {
	wired, bare, motor := 0, 0, p.hasWiredMotor()
	for _, t := range l.Def.Terminals {
		at := p.Net.Node(model.TerminalRef{Part: l.Part.ID, Name: t.Name})
		switch {
		case t.Serves != model.Traction:
		case p.wired(at):
			wired++
		case !motor || !isDiodeEnd(l.Def, t.Name):
			bare++
		}
	}
	return bare == 1 && wired > 1
}

// hasWiredMotor reports whether a wire lands on a winding.
func (p *Pass) hasWiredMotor() bool {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.ResistanceElement) && l.Def.Family == model.Drive && p.isTraction(l.A) && p.isTraction(l.B) && (p.wired(l.A) || p.wired(l.B)) {
			return true
		}
	}
	return false
}

// isDiodeEnd reports whether diodes, and nothing else, are at a terminal inside its part.
func isDiodeEnd(d *model.Definition, terminal string) bool {
	diodes := 0
	for _, e := range d.Elements {
		if !slices.Contains(e.Between, terminal) && !slices.Contains(e.Out, terminal) {
			continue
		}
		if e.Is != model.DiodeElement {
			return false
		}
		diodes++
	}
	return diodes > 0
}

// isTraction reports whether a terminal is of the traction circuit.
func (p *Pass) isTraction(at network.Node) bool {
	t := p.Net.TerminalDef(p.Net.Point(at).At)
	return t != nil && t.Serves == model.Traction
}

// forbidding lists the settings among some for which alone a cart must not drive.
func forbidding(s state.State) []state.Setting {
	var list []state.Setting
	for _, set := range s.Set {
		only := state.State{Set: []state.Setting{{Control: model.Key, Position: "on"}}}.With(set.Control, set.Position)
		if meter.Must(only) == meter.Stay {
			list = append(list, set)
		}
	}
	return list
}

// isWhole reports whether every part with a control has the position that a setting gives
// it. A pedal switch of two positions beside a wiper of five stands nowhere in the second
// step.
func (p *Pass) isWhole(s state.State) bool {
	for i := range p.Sheet.Parts {
		d := p.Net.Cat.Definition(p.Sheet.Parts[i].Kind)
		if d == nil || d.Control == nil {
			continue
		}
		if at, set := s.Position(d.Control.Sets); set && !slices.Contains(d.Control.Positions, at) {
			return false
		}
	}
	return true
}

// settingWords are the positions of some controls in words: key off and pedal up.
func settingWords(set []state.Setting) string {
	var words []string
	for _, s := range set {
		words = append(words, controlWord(s.Control)+" "+s.Position)
	}
	return listWords(words)
}

// controlWord is a control as people say it.
func controlWord(c model.Control) string { return strings.ReplaceAll(string(c), "-", " ") }
