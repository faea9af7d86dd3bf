package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var reverseWarning = Rule{
	ID: "reverse-warning", Title: "The reverse warning is lost, dead, or sounds when it must not",
	Family: Chain, Severity: Caution,
	About: "Computes the cart driving in reverse and forward and looks at its buzzers: one must have voltage in reverse and none in forward or parked. Another device " +
		"that works in reverse alone, such as a beacon or a lamp, counts as a warning too. A cart with a reverse and no such device is a " +
		"caution if an earlier sheet had one, else a note.",
	Why: "The buzzer is for the one who stands behind a cart that makes no noise. It is lost in conversions more than anything else: it hung on the old " +
		"harness, on a tap of the string, or on a controller pin that the new controller has not. Nobody misses it until somebody is run into.",
	Tell: "Lift the driven wheels, key on, lever to reverse, foot off: it sounds. Lever forward: it is silent. If not, measure across its two leads " +
		"in reverse: the voltage on its label and silent, the buzzer is dead; nothing, follow its feed back to the reverse contact of the " +
		"direction switch.",
	Blind: "It judges by voltage and not by sound. A buzzer of the wrong voltage is told by over-voltage and under-voltage, one with swapped leads by load-reversed. A " +
		"warning built into a controller or a display is not seen: note it on the part and waive the finding.",
	Bad:   "the buzzer hangs on the forward contact of the rocker",
	Good:  "the buzzer hangs on the reverse contact of the rocker",
	Wrong: Example{Of: reverseBuzzer, But: []string{"wire k4", "wire k4 dir.F buz.+ gauge=16AWG insulation=105C length=0.5m"}},
	Right: Example{Of: reverseBuzzer},
	Basis: Basis{"what moves backward without being seen is heard", Practice},
	Remedy: "feed a buzzer of the right voltage from the reverse contact of the direction switch, or from the pin of the controller that is made " +
		"for it",
	Run: runReverseWarning,

	Explains: []string{"dead-end-lead"},
}

// reverseBuzzer is a rocker with a buzzer.
const reverseBuzzer = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=5A
part key key-switch
part dir direction-rocker
part buz buzzer
wire k1 pack.POS fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN dir.COM gauge=16AWG insulation=105C length=0.3m
wire k4 dir.R buz.+ gauge=16AWG insulation=105C length=0.5m
wire k5 buz.- pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

// buzzerSymbol is the symbol by which a definition is a buzzer.
const buzzerSymbol = "buzzer"

func runReverseWarning(p *Pass) {
	back := p.inState(state.DriveReverse)
	if p.unsound() || back == nil {
		return
	}
	buzzers := p.buzzers()
	for _, l := range buzzers {
		p.judgeBuzzer(back, l)
	}
	if len(buzzers) == 0 && p.hasDrive() && !p.hasUntraced() && !p.worksInReverseAlone(back) {
		p.reportNoWarning()
	}
}

// buzzers lists the loads of the buzzers that have a wire; one without any is on no circuit.
func (p *Pass) buzzers() []*network.Link {
	var list []*network.Link
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; l.Is(model.LoadElement) && l.Def.Symbol == buzzerSymbol {
			list = append(list, l)
		}
	}
	return list
}

func (p *Pass) judgeBuzzer(back *network.Solution, l *network.Link) {
	id := l.Part.ID
	switch {
	case !across(back, l):
		f := Finding{State: state.DriveReverse, Subjects: []Subject{OfPart(id)}, Message: fmt.Sprintf("%s gets nothing in reverse", id)}
		p.addBreaks(&f, p.feedBreaks(back, l.A, l.B))
		p.report(f)
	case p.sounds(state.Parked, l):
		p.report(Finding{State: state.Parked, Subjects: []Subject{OfPart(id)}, Message: fmt.Sprintf("%s sounds with the cart parked", id)})
	case p.sounds(state.DriveForward, l):
		p.report(Finding{State: state.DriveForward, Subjects: []Subject{OfPart(id)}, Message: fmt.Sprintf("%s sounds in forward as in reverse", id)})
	}
}

// sounds reports whether a buzzer works in a state.
func (p *Pass) sounds(name string, l *network.Link) bool {
	in := p.inState(name)
	return in != nil && in.On(l) && across(in, l)
}

// across reports whether a device has voltage in a solution, whichever way round.
func across(in *network.Solution, l *network.Link) bool {
	v, known := in.Voltage(l.A, l.B)
	return known && math.Abs(v) > reversedVolts
}

// worksInReverseAlone reports whether some lamp or other load runs in reverse and not in
// forward. Drives and their brakes do not count.
func (p *Pass) worksInReverseAlone(back *network.Solution) bool {
	ahead := p.inState(state.DriveForward)
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.LoadElement) && l.Def.Family != model.Drive && back.On(l) && across(back, l) && (ahead == nil || !across(ahead, l)) {
			return true
		}
	}
	return false
}

func (p *Pass) reportNoWarning() {
	if had, sheet := p.hadBuzzer(); had != "" {
		p.report(Finding{
			Message:  fmt.Sprintf("nothing sounds in reverse: the buzzer %s of the %s sheet is not on this one", had, sheet),
			Subjects: p.controlsOf(model.Direction),
		})
		return
	}
	p.report(Finding{
		Severity: Note,
		Message:  "nothing on the sheet sounds or lights in reverse",
		Subjects: p.controlsOf(model.Direction),
	})
}

// hadBuzzer is the first buzzer of an earlier sheet of the job, with the sheet's name; empty if
// there was none.
func (p *Pass) hadBuzzer() (model.PartID, model.SheetName) {
	for i := range p.Job.Sheets {
		s := &p.Job.Sheets[i]
		if s.Name == p.Sheet.Name {
			break
		}
		at := slices.IndexFunc(s.Parts, func(part model.Part) bool {
			d := p.Net.Cat.Definition(part.Kind)
			return d != nil && d.Symbol == buzzerSymbol
		})
		if at >= 0 {
			return s.Parts[at].ID, s.Name
		}
	}
	return "", ""
}
