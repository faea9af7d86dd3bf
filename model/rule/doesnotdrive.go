package rule

import (
	"fmt"
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
		"inputs of the controller that get nothing, and what keeps the motor from turning. Silent as long as the controller or the motor is not wired on the sheet.",
	Bad:    "the lead of the pedal switch to the controller's key input is missing",
	Good:   "the key input is fed through key and pedal switch",
	Basis:  Basis{"what must close and what must be fed to drive follows from the wiring", Physics},
	Remedy: "follow the feed of what gets no voltage back to where it ends",
	Run:    runDoesNotDrive,
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
	words, subjects := p.standing(t.solution)
	if t.motion.Asks {
		words, subjects = []string{"it asks for current, but " + strings.Join(t.motion.But, ", and ")}, nil
	}
	message := fmt.Sprintf("it does not drive with %s", settingWords(asked))
	if drives {
		message += ", in other settings it does"
	}
	if len(words) > 0 {
		message += ": " + strings.Join(words, ", ")
	}
	if len(subjects) == 0 {
		subjects = p.driveParts()
	}
	p.report(Finding{Message: message, Subjects: subjects})
}

// standing tells what keeps a cart from driving: open main contactors with the voltage at
// their coils, and inputs of controllers that get nothing.
func (p *Pass) standing(in *network.Solution) (words []string, subjects []Subject) {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		switch {
		case l.Is(model.ContactElement) && l.Element.Coil != "" && !in.On(l) && p.isTraction(l.A) && p.isTraction(l.B):
			words = append(words, fmt.Sprintf("%s stays open with %s at its coil", l.Part.ID, volts(p.coilVolts(in, l))))
			subjects = appendNew(subjects, OfPart(l.Part.ID))
		case p.isDriveLoad(l) && !in.On(l):
			for _, name := range l.Element.Fed {
				at := model.TerminalRef{Part: l.Part.ID, Name: name}
				v, known := in.Voltage(p.Net.Node(at), l.B)
				if word := at.String() + " gets nothing"; (!known || v < reversedVolts) && !slices.Contains(words, word) {
					words = append(words, word)
					subjects = appendNew(subjects, OfTerminal(at))
				}
			}
		}
	}
	return words, subjects
}

// coilVolts is the voltage over the coil that drives a contact; 0 if it is not certain.
func (p *Pass) coilVolts(in *network.Solution, contact *network.Link) float64 {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.CoilElement) && l.Part == contact.Part && l.Element.ID == contact.Element.Coil {
			v, _ := in.Voltage(l.A, l.B)
			return v
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
