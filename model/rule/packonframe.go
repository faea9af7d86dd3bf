package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var packOnFrame = Rule{
	ID: "pack-on-frame", Title: "The pack is joined to the frame",
	Family: Frame, Severity: Caution,
	About: "Looks in every state whether anything that conducts joins the pack to the frame, and names the way. A danger if the pack " +
		"reaches more than 60 V, a note if a leak leaves as much isolation as road vehicles must have. The earth of the AC inlet and the negative of an isolated 12 V side belong on the frame and are no finding.",
	Bad:  "a radio returns through the frame, and the frame is joined to the pack's negative",
	Good: "both poles of the pack are kept off the frame, the AC earth is bonded to it",
	Basis: Basis{"a pack that floats stands one fault to the frame; one that is joined shorts on it, and above 60 V the frame may shock",
		"common practice; 60 V d.c. is the end of voltage class A of ISO 6469-3, from memory"},
	Remedy: "take the joint to the frame off and give the device a return wire",
	Run:    runPackOnFrame,
}

// touchVolts is the highest d.c. voltage that counts as harmless to touch: the end of
// voltage class A of ISO 6469-3, from memory.
const touchVolts = 60

// enoughPerVolt is the isolation of a d.c. circuit in ohm per volt that UN R100 asks of road
// vehicles, from memory.
const enoughPerVolt = 100

func runPackOnFrame(p *Pass) {
	frame := p.Net.Frame()
	if frame == network.None {
		return
	}
	for _, s := range p.solved() {
		for _, island := range s.solution.Islands() {
			if !island.IsCoupled() || !slices.Contains(island.Nodes, frame) {
				continue
			}
			if f, ok := p.frameFinding(s, frame, island); ok {
				p.report(f)
				return
			}
		}
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
	f := Finding{Subjects: subjects, Message: fmt.Sprintf("the pack is joined to the frame (%s)", s.state.Name)}
	perVolt := p.ohmsOf(way) / max(1, worst.Full.Value)
	switch {
	case perVolt >= enoughPerVolt:
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
		f.Message += fmt.Sprintf("; %.0f ohm per volt, %d at least is what road vehicles must have (UN R100, from memory)", perVolt, enoughPerVolt)
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
