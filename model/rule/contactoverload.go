package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

var contactOverload = Rule{
	ID: "contact-overload", Title: "A contact, plug, post or shunt carries more than it is rated for",
	Family: Protection, Severity: Fault,
	About: "Takes what flows through each contact, plug pin, bar, post, shunt and fuse block in the worst of all states, with everything on that may be on. " +
		"Speaks if it is more for long than the part's continuous rating, the house rule leaves a fifth of it free, or more at a drive's peak than " +
		"its peak rating. A caution if typical figures decide.",
	Why: "A wire that is thick enough ends in a plug that is not. The heat of a contact is made in a spot of some square millimetres, and it grows with the " +
		"square of the current: twice the rating is four times the heat. The spring loses its temper, the contact gets worse, and so on until " +
		"the housing melts, long before any fuse for the wire takes notice. A relay or contactor welds shut instead and does not let go.",
	Tell: "Read the amperes off the part or its maker's sheet; for a plug the size of the pin decides. Put a clamp meter for DC round the wire with " +
		"everything on. Measure millivolts across the closed contact: more than 50 mV in a plug or a switch, or 100 mV in a main contact at 200 A, " +
		"is a bad or overloaded one. Brown plastic and a pin that has lost its shine tell the rest.",
	Blind: "Knows lasting currents, and a drive's peak; how long a contact stands more than its rating is left out. A part of which no continuous rating is known " +
		"goes unsaid, and so does what flows until a fuse opens at once. Where both the part's rating and the drive's are typical figures it asks for the label instead of speaking. " +
		"The traction path of a cart without a controller is left out, for nobody knows how long its starting current lasts. Breaking a current is another rule's matter.",
	Bad:   "a plug of 15 A in the feed of a pump that takes 27 A",
	Good:  "a plug of 50 A in the same feed",
	Wrong: Example{Of: pluggedPump, But: []string{"part plug", "part plug connector-2 continuous-current=15A"}},
	Right: Example{Of: pluggedPump},
	Basis: Basis{"a part carries for long no more than its maker rates it for; ABYC E-11 asks of a battery switch that it carries what its devices let through",
		"the makers' ratings; ABYC E-11 11.6.1.2"},
	Remedy: "fit a part that is rated for the current, or take the load off it",
	Run:    runContactOverload,
}

// pluggedPump is a pump behind a plug.
const pluggedPump = `part pack lithium-pack-16
part fu3 fuse-cartridge fuse-rating=40A
part plug connector-2 continuous-current=50A
part pump pump-motor current=27A
wire y1 pack.POS fu3.in gauge=10AWG insulation=105C length=100mm
wire y2 fu3.out plug.1a gauge=10AWG insulation=105C length=2m
wire y3 plug.1b pump.+ gauge=10AWG insulation=105C length=1m
wire y4 pump.- plug.2b gauge=10AWG insulation=105C length=1m
wire y5 plug.2a pack.NEG gauge=10AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu3.in cover=fitted`

// The figures that say what a part carries.
const (
	continuousRating = "continuous-current"
	peakRating       = "peak-current"
	microRating      = "micro-current"
	microResistance  = "micro-resistance"
)

func runContactOverload(p *Pass) {
	if p.unsound() {
		return
	}
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		if d := p.Net.Cat.Definition(part.Kind); d != nil && carriesOnly(d.Family) {
			p.judgeCarrier(part, d)
		}
	}
}

// goodTo is how far a computed current may be beyond a rating before it counts: sources above
// their nominal voltage and the losses on the way make as much. Our choice.
const goodTo = 0.02

// carriesOnly reports whether parts of a family let current pass and do nothing else with it.
func carriesOnly(f model.Family) bool {
	switch f {
	case model.Switchgear, model.Protection, model.ChargeGear, model.Metering, model.Joining:
		return true
	}
	return false
}

// passage is something of a part that current passes, with the figure that limits it.
type passage struct {
	at     Subject
	rating string
	amps   func(*network.Solution) float64
}

// judgeCarrier reports a part by the passage that is worst overloaded, the first of equal ones.
func (p *Pass) judgeCarrier(part *model.Part, d *model.Definition) {
	var worst Finding
	for _, way := range p.passages(part, d) {
		rated := p.Net.KnownFigure(part, way.rating)
		if !rated.OK {
			continue
		}
		load := p.lastingMost(way.amps)
		f, overloaded := p.overloaded(part, way, rated, load)
		if overloaded && f.Figure.Beyond() > worst.Figure.Beyond()+worseBy {
			worst = f
		}
	}
	if worst.Message != "" {
		p.report(worst)
	}
}

// overloaded holds a load against a part's continuous rating, and its peak against the peak
// rating. What typical figures of part and drive say is only asked for.
func (p *Pass) overloaded(part *model.Part, way passage, rated network.Known, load size.Load) (Finding, bool) {
	most := p.limit(basis.ContactLoad) * rated.Value
	f := Finding{Subjects: []Subject{OfPart(part.ID)}}
	peak := p.Net.KnownFigure(part, peakRating)
	switch {
	case load.Amps > most*(1+goodTo):
		f.Figure = Figure{What: "lasting current", Value: unit.A(load.Amps).Any(), Limit: unit.A(most).Any(), Decides: "the continuous rating of " + string(part.ID)}
		f.Message = fmt.Sprintf("%s carries %s for long (%s); it is rated for %s", way.at, amps(load.Amps), load.State, amps(rated.Value))
		if most < rated.Value {
			f.Message += fmt.Sprintf(", of which %s are the most", amps(most))
		}
	case way.rating == continuousRating && peak.OK && len(load.Duty) > 1 && load.Duty[0].Amps > peak.Value*(1+goodTo):
		rated = peak
		f.Figure = Figure{What: "peak current", Value: unit.A(load.Duty[0].Amps).Any(), Limit: unit.A(peak.Value).Any(), Decides: "the peak rating of " + string(part.ID)}
		f.Message = fmt.Sprintf("%s carries %s at the peak of the drive; it stands %s for seconds", way.at, amps(load.Duty[0].Amps), amps(peak.Value))
	default:
		return Finding{}, false
	}
	switch drive := p.drawnByMemory(load); {
	case rated.IsTypical() && drive:
		p.missing(Gap{Datum: "the rating for lasting current", Field: way.rating, Decides: "whether it carries " + amps(load.Amps), Worst: Fault, Quiet: true, Subjects: f.Subjects})
		return Finding{}, false
	case rated.IsTypical() || drive:
		f.Severity = Caution
		f.Message += unconfirmed
	}
	return f, true
}

// passages lists the ways of current through a part: its contacts, pins, bars and shunts, the
// terminals where several of them meet, and the one terminal of a post.
func (p *Pass) passages(part *model.Part, d *model.Definition) []passage {
	var list []passage
	meets := map[network.Node][]*network.Link{}
	var order []network.Node
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Part != part || !l.Is(model.ContactElement) && !l.Is(model.JoinElement) && !l.Is(model.ResistanceElement) && !l.Is(model.FuseElement) && !l.Is(model.ChargerElement) {
			continue
		}
		rating := continuousRating
		if l.Element.Ohms == microResistance {
			rating = microRating
		}
		if p.startsBare(l.A) {
			continue
		}
		list = append(list, passage{OfPart(part.ID), rating, func(in *network.Solution) float64 { return math.Abs(in.Current(l)) }})
		for _, at := range []network.Node{l.A, l.B} {
			if meets[at] == nil {
				order = append(order, at)
			}
			meets[at] = append(meets[at], l)
		}
	}
	for _, at := range order {
		if links := meets[at]; len(links) > 1 {
			list = append(list, passage{p.terminal(at), continuousRating, func(in *network.Solution) float64 { return math.Abs(enters(in, links, at)) }})
		}
	}
	at := p.Net.Node(model.TerminalRef{Part: part.ID, Name: d.Terminals[0].Name})
	if len(d.Elements) == 0 && len(d.Terminals) == 1 && !p.startsBare(at) {
		list = append(list, passage{OfPart(part.ID), continuousRating, func(in *network.Solution) float64 { return passesPost(in, p.Net.LinksAt(at)) }})
	}
	return list
}

// startsBare reports whether a terminal is of the traction path of a cart without a controller:
// how long that takes its starting current is not known.
func (p *Pass) startsBare(at network.Node) bool {
	if !p.isTraction(at) {
		return false
	}
	if p.shared.bare == nil {
		bare := p.hasDrive() && !slices.ContainsFunc(p.Net.Links(), func(l network.Link) bool { return p.isDriveLoad(&l) })
		p.shared.bare = &bare
	}
	return *p.shared.bare
}

// enters is the current that goes from a node into some links.
func enters(in *network.Solution, links []*network.Link, at network.Node) float64 {
	sum := 0.0
	for _, l := range links {
		if l.A == at {
			sum += in.Current(l)
		} else {
			sum -= in.Current(l)
		}
	}
	return sum
}

// passesPost is the current that comes to a post and leaves it again.
func passesPost(in *network.Solution, links []*network.Link) float64 {
	sum := 0.0
	for _, l := range links {
		sum += math.Abs(in.Current(l)) / 2
	}
	return sum
}
