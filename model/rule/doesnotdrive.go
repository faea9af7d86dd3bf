package rule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var doesNotDrive = Rule{
	ID: "does-not-drive", Title: "The cart does not drive when it must",
	Family: Chain, Severity: Fault,
	About: "Computes the settings with the key on, in run, forward or reverse, the pedal down, no plug in, and speaks if no traction " +
		"current flows in one, or it flows and the motor cannot turn. Names the contactors that stay open with the voltage at their coil, the " +
		"inputs of the controller that get nothing, and what keeps the motor from turning. Then it follows the feed and the return of each: the last " +
		"point that has voltage and the first that has none, the wire that ends there, and where that wire went on the sheet before. Silent as long as the controller or the motor is not wired on the sheet.",
	Why: "To drive, a coil needs a way from pack positive and a way back to negative, and a controller needs all its inputs at once. One open contact anywhere in the row stops it all, " +
		"and the wires look right. After a conversion it is mostly the lock-out lead of the charge computer that was taken out: the coil's return or feed went through it and now ends in " +
		"the air; or the tow switch, the old receptacle's contact, the seat switch.",
	Tell: "Half-split: black lead on pack negative, all controls set to drive, driven wheels off the ground. Measure in the middle of the row named here. Voltage there: the break is behind it. None: it is " +
		"before. Pack voltage at both small studs of a contactor: its return is open. At coil+ alone and no click: the coil is open.",
	Blind: "It is silent until a controller's or a motor's traction terminals are wired on the sheet. Contacts and fuses are taken as sound; a contact that does not make is found with the meter " +
		"(the diagnosis takes your readings). It says nothing of a controller's parameters, throttle type, or sensors. A way that goes out of sight is named and not judged.",
	Bad:    "the lead of the pedal switch to the controller's key input is missing",
	Good:   "the key input is fed through key and pedal switch",
	Wrong:  Example{Of: seriesChain, But: []string{"wire k5", ""}},
	Right:  Example{Of: seriesChain},
	Basis:  Basis{"what must close and what must be fed to drive follows from the wiring", Physics},
	Remedy: "follow the feed of what gets no voltage back to where it ends",
	Run:    runDoesNotDrive,

	Explains: []string{"reverse-warning", "dead-end-lead"},
}

func runDoesNotDrive(p *Pass) {
	var failing []trial
	drives := false
	for _, t := range p.trials() {
		if t.motion.Must == meter.Drive && !t.motion.Drives && p.isWhole(t.state) {
			failing = append(failing, t)
		}
		drives = drives || t.motion.Must == meter.Drive && t.motion.Drives
	}
	if len(failing) == 0 {
		return
	}
	t := failing[0]
	asked := slices.DeleteFunc(slices.Clone(t.state.Set), func(s state.Setting) bool { return !asks(s.Control) })
	f := Finding{Message: fmt.Sprintf("it does not drive with %s", settingWords(asked))}
	if drives {
		f.Message += ", in other settings it does"
		f.State = settingWords(asked)
	}
	if t.motion.Asks {
		f.Message += ": it asks for current, but " + strings.Join(t.motion.But, ", and ")
		f.Subjects = p.driveParts()
		p.report(f)
		return
	}
	words, subjects, breaks := p.standing(t)
	if len(words) > 0 {
		f.Message += ": " + strings.Join(words, ", ")
	}
	if f.Subjects = subjects; len(subjects) == 0 {
		f.Subjects = p.driveParts()
		if breaks = p.motorBreaks(t.solution); len(breaks) == 0 {
			if bare := p.bareStuds(); len(bare) > 0 {
				f.Subjects = append(f.Subjects, bare...)
				f.Message += ": no wire lands on " + list(bare)
			}
		}
	}
	p.addBreaks(&f, breaks)
	p.report(f)
}

// standing tells what keeps a cart from driving, and where its feed ends: open main contactors
// with the voltage at their coils, and inputs of controllers that get nothing or hold it.
func (p *Pass) standing(t trial) (words []string, subjects []Subject, breaks []feedBreak) {
	in := t.solution
	inputs, held := p.lackingInputs(t), p.holdingInputs(in)
	for _, l := range p.openContactors(in) {
		words = append(words, fmt.Sprintf("%s stays open with %s at its coil", l.Part.ID, volts(p.coilVolts(in, l))))
		subjects = appendNew(subjects, OfPart(l.Part.ID))
		if coil := p.coilOf(l); coil != nil && (!p.isDriven(coil) || len(inputs)+len(held) == 0) {
			breaks = append(breaks, p.feedBreaks(in, coil.A, coil.B)...)
		}
	}
	for _, at := range inputs {
		words = append(words, at.String()+" gets nothing")
		subjects = appendNew(subjects, OfTerminal(at))
		breaks = append(breaks, p.feedBreaks(in, p.Net.Node(at), network.None)...)
	}
	for _, at := range held {
		words = append(words, fmt.Sprintf("%s is fed with %s and holds the drive", at, volts(p.levels(in).at(p.Net.Node(at)))))
		subjects = appendNew(subjects, OfTerminal(at))
	}
	return words, subjects, breaks
}

// openContactors lists the working contacts of main contactors that are open. A pair that changes
// over has chosen its direction if one of it is pulled in.
func (p *Pass) openContactors(in *network.Solution) []*network.Link {
	changes := func(l *network.Link) bool {
		return slices.ContainsFunc(l.Def.Elements, func(e model.Element) bool { return e.Rest == model.RestClosed })
	}
	var open []*network.Link
	chosen := false
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		switch {
		case !l.Is(model.ContactElement) || l.Element.Coil == "" || l.Element.Rest == model.RestClosed || !p.isTraction(l.A) || !p.isTraction(l.B):
		case in.On(l):
			chosen = chosen || changes(l)
		default:
			open = append(open, l)
		}
	}
	return slices.DeleteFunc(open, func(l *network.Link) bool { return chosen && changes(l) })
}

// lackingInputs lists the inputs of controllers that get nothing, of each controller those of
// the loads that lack the fewest: what drives forward needs no reverse input.
func (p *Pass) lackingInputs(t trial) []model.TerminalRef {
	var loads []*network.Link
	least := map[model.PartID]int{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !p.isDriveLoad(l) || t.solution.On(l) {
			continue
		}
		loads = append(loads, l)
		n := p.lack(t, l)
		if was, told := least[l.Part.ID]; !told || n < was {
			least[l.Part.ID] = n
		}
	}
	var list []model.TerminalRef
	for _, l := range loads {
		if p.lack(t, l) > least[l.Part.ID] {
			continue
		}
		for _, at := range p.starvedInputs(t.solution, l) {
			if !slices.Contains(list, at) {
				list = append(list, at)
			}
		}
	}
	return list
}

// lack counts the inputs that a controller's load lacks. One that it has in the other direction
// counts for more: it is that direction's own.
func (p *Pass) lack(t trial, l *network.Link) int {
	n := 0
	for _, at := range p.starvedInputs(t.solution, l) {
		n++
		for _, other := range p.trials() {
			if t.turns(other) && !slices.Contains(p.starvedInputs(other.solution, l), at) {
				n++
			}
		}
	}
	return n
}

// turns reports whether a trial differs from another in the direction alone, both chosen.
func (t trial) turns(other trial) bool {
	direction, chosen := t.state.Position(model.Direction)
	against, _ := other.state.Position(model.Direction)
	return chosen && direction != against && against != "neutral" &&
		slices.Equal(t.state.Set, other.state.With(model.Direction, direction).Set)
}

// holdingInputs lists the inputs of controllers that are fed and hold the drive.
func (p *Pass) holdingInputs(in *network.Solution) []model.TerminalRef {
	var list []model.TerminalRef
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !p.isDriveLoad(l) || in.On(l) {
			continue
		}
		for _, name := range l.Element.Blocked {
			at := model.TerminalRef{Part: l.Part.ID, Name: name}
			if v, known := in.Voltage(p.Net.Node(at), l.B); known && v > reversedVolts && !slices.Contains(list, at) {
				list = append(list, at)
			}
		}
	}
	return list
}

// starvedInputs lists the inputs of a controller's load that get nothing.
func (p *Pass) starvedInputs(in *network.Solution, l *network.Link) []model.TerminalRef {
	var list []model.TerminalRef
	for _, name := range l.Element.Fed {
		at := model.TerminalRef{Part: l.Part.ID, Name: name}
		if v, known := in.Voltage(p.Net.Node(at), l.B); !known || v < reversedVolts {
			list = append(list, at)
		}
	}
	return list
}

// motorBreaks tells where the traction circuit ends if contactors and inputs are as they
// should be.
func (p *Pass) motorBreaks(in *network.Solution) []feedBreak {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Part == nil || l.Def.Family != model.Drive || !l.Is(model.ResistanceElement) || !p.isTraction(l.A) || !p.isTraction(l.B) || in.Current(l) != 0 {
			continue
		}
		if breaks := p.feedBreaks(in, l.A, network.None); len(breaks) > 0 {
			return breaks
		}
	}
	return nil
}

// bareStuds lists the traction terminals of controllers and motors that no wire lands on, but for
// those that may stay bare.
func (p *Pass) bareStuds() []Subject {
	var bare []Subject
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		d := p.Net.Cat.Definition(part.Kind)
		if d == nil || d.Family != model.Drive {
			continue
		}
		for _, t := range d.Terminals {
			at := model.TerminalRef{Part: part.ID, Name: t.Name}
			if t.Serves == model.Traction && !isDiodeEnd(d, t.Name) && !p.wired(p.Net.Node(at)) {
				bare = append(bare, OfTerminal(at))
			}
		}
	}
	return bare
}

// coilVolts is the voltage over the coil that drives a contact; 0 if it is not certain.
func (p *Pass) coilVolts(in *network.Solution, contact *network.Link) float64 {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.CoilElement) && l.Part == contact.Part && l.Element.ID == contact.Element.Coil {
			v, _ := in.Voltage(l.A, l.B)
			return math.Abs(v)
		}
	}
	return 0
}

// driveParts lists the controllers, or else the motors.
func (p *Pass) driveParts() []Subject {
	var list []Subject
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; l.Part != nil && l.Def.Family == model.Drive && (p.isDriveLoad(l) || l.Is(model.ResistanceElement)) {
			list = appendNew(list, OfPart(l.Part.ID))
		}
	}
	return list
}
