package rule

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var packOnFrame = Rule{
	ID: "pack-on-frame", Title: "The pack is joined to the frame",
	Family: Frame, Severity: Caution,
	About: "Looks in every state whether anything that conducts joins the pack to the frame, and names the way. Two places of different " +
		"voltage that touch the frame are a short through it, and a danger. One place is a danger if the pack " +
		"reaches more than 60 V, a note if a leak leaves as much isolation as the limits ask for. The earth of the AC inlet and the negative of an isolated 12 V side belong on the frame and are no finding.",
	Why: "The pack of a cart floats: nothing joins it to the frame. A first touch, such as a chafed lead or a track of acid, does nothing that anybody " +
		"feels, and so it stays. The second touch, on any other battery of the string, closes the circuit through the frame, and nothing but that metal and " +
		"its bolts limits the current: a wrench between a post and the seat frame is then enough. Above 60 V the frame of a cart with one touch may also give a shock to a hand " +
		"on the other pole.",
	Tell: "Everything off and the charger unplugged, meter on DC volts: measure from the bare frame to pack positive and to pack negative. On a sound cart both " +
		"readings sink towards 0 V on a meter of 10 Mohm. Two readings that stay and add up to the pack's volts are a touch, and the one to pack negative is " +
		"the voltage of the place that touches: 0 is the negative itself, all of it the positive. Then, pack off each time, part the wiring piece by piece " +
		"until it goes.",
	Blind: "It knows only what is on the sheet: a leak is there once it is drawn as a part, from the readings. A motor that leaks inside shows as a leak at its stud. " +
		"What touches the frame only when wet or on a bump shows in no reading on the stand.",
	Bad:   "a chafed lead lets the pack's positive touch the frame",
	Good:  "both poles of the pack are kept off the frame",
	Wrong: Example{Of: framed, But: []string{"+", "part leak frame-leak resistance=1kohm", "+", "wire x1 leak.to lt1.+ gauge=10AWG length=10mm"}},
	Right: Example{Of: framed},
	Basis: Basis{"a pack that floats stands one fault to the frame; one that is joined shorts on it, and above 60 V the frame may shock",
		"common practice; 60 V d.c. is the end of voltage class A of ISO 6469-3, from memory"},
	Remedy: "take the joint to the frame off and give the device a return wire; insulate and guard what chafed",
	Run:    runPackOnFrame,

	Explains: []string{"stand-by-drain"}, Upsets: []string{"no-rest"},
}

// framed is a lamp on the pack, with a bolt in the frame beside it.
const framed = `
part pack lithium-pack-16
part fu1 fuse-cartridge fuse-rating=10A voltage-rating=80V interrupting-rating=10kA
part lt1 lamp-work-48v
part fr frame-point
wire w1 pack.POS fu1.in gauge=14AWG insulation=105C length=100mm
wire w2 fu1.out lt1.+ gauge=14AWG insulation=105C length=1m
wire w3 lt1.- pack.NEG gauge=14AWG insulation=105C length=1m
at pack.POS cover=fitted
at fu1.in cover=fitted`

// touchVolts is the highest d.c. voltage that counts as harmless to touch: the end of
// voltage class A of ISO 6469-3, from memory.
const touchVolts = 60

func runPackOnFrame(p *Pass) {
	frame := p.Net.Frame()
	if frame == network.None {
		return
	}
	if f, ok := p.shortThroughFrame(frame); ok {
		p.report(f)
		return
	}
	var gravest *Finding
	for _, s := range p.solved() {
		for _, island := range s.solution.Islands() {
			if !island.IsCoupled() || !slices.Contains(island.Nodes, frame) {
				continue
			}
			f, ok := p.frameFinding(s, frame, island)
			if ok && (gravest == nil || grade(f.Severity) < grade(gravest.Severity)) {
				gravest = &f
			}
		}
	}
	if gravest != nil {
		p.report(*gravest)
	}
}

// frameFinding tells how something that should float is joined to the frame.
func (p *Pass) frameFinding(s solved, frame network.Node, island network.Island) (Finding, bool) {
	var worst *network.Feed
	for i := range p.protection().Feeds {
		f := &p.protection().Feeds[i]
		if f.String != nil && slices.Contains(island.Nodes, f.At) && (worst == nil || f.Whole) {
			worst = f
		}
	}
	if worst == nil {
		return Finding{}, false
	}
	way := p.wayTo(s.solution, frame, worst)
	subjects := []Subject{OfPart(worst.Link.Part.ID)}
	var words []string
	for _, l := range way {
		if l.Wire != nil {
			subjects = appendNew(subjects, OfWire(l.Wire.ID))
		} else {
			subjects = appendNew(subjects, OfPart(l.Part.ID))
		}
	}
	for _, subject := range subjects[1:] {
		words = append(words, subject.String())
	}
	f := Finding{
		Severity: Caution, Subjects: subjects, State: s.state.Name,
		Message: fmt.Sprintf("the pack is joined to the frame (%s)", s.state.Name),
	}
	perVolt := p.ohmsOf(way) / max(1, worst.Full.Value)
	enough, source := p.limitFrom(basis.IsolationPerVolt)
	switch {
	case perVolt >= enough.SI():
		f.Severity = Note
	case worst.Full.Value > touchVolts:
		f.Severity = Danger
	}
	if len(words) > 0 {
		f.Message += " through " + strings.Join(words, ", ")
	}
	if worst.Full.OK {
		f.Message += fmt.Sprintf("; it reaches %s", volts(worst.Full.Value))
	}
	if perVolt >= 1 {
		f.Message += fmt.Sprintf("; %.0f ohm per volt, %s at least is asked for (%s)", perVolt, enough, source)
		f.Figure = Figure{What: "isolation per volt", Value: unit.Ohms(math.Round(perVolt)).Any(), Limit: enough, Least: true, Decides: source}
	}
	return f, true
}

// ohmsOf is the resistance of the resistors on a way.
func (p *Pass) ohmsOf(way []*network.Link) float64 {
	sum := 0.0
	for _, l := range way {
		if l.Is(model.ResistanceElement) {
			ohms, _ := p.Net.Figure(l.Part, l.Element.Ohms)
			sum += ohms
		}
	}
	return sum
}

// wayTo follows what conducts from the frame to the nearer terminal of a feed: metal, what is
// closed and a leak if that leads there, else everything.
func (p *Pass) wayTo(in *network.Solution, frame network.Node, f *network.Feed) []*network.Link {
	closed := func(l *network.Link) bool { return !isSwitching(l) || in.On(l) }
	for _, pass := range []func(*network.Link) bool{
		func(l *network.Link) bool {
			return closed(l) && (l.Conducts() || isSwitching(l) || l.Is(model.ResistanceElement) && l.Def.Family == model.Joining)
		},
		func(l *network.Link) bool {
			return closed(l) && !isActive(l)
		},
	} {
		reach := p.Net.Walk([]network.Node{frame}, func(l *network.Link, _ network.Node) bool { return pass(l) })
		var best []*network.Link
		for _, at := range []network.Node{f.Return, f.At} {
			if way := reach.Path(at); reach.Has(at) && (best == nil || len(way) < len(best)) {
				best = way
			}
		}
		if best != nil {
			return best
		}
	}
	return nil
}

// isSwitching reports whether a link conducts in some states only.
func isSwitching(l *network.Link) bool {
	return l.Is(model.ContactElement) || l.Is(model.FuseElement) || l.Is(model.DiodeElement)
}

// isActive reports whether a link gives or converts power, or passes no direct current.
func isActive(l *network.Link) bool {
	return l.Is(model.SourceElement) || l.Is(model.ChargerElement) || l.Is(model.CapacitorElement) ||
		l.Is(model.ConverterElement) || l.Kind == network.OutputLink
}
