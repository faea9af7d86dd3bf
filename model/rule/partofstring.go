package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var partOfString = Rule{
	ID: "part-of-string", Title: "Something is fed from part of the string",
	Family: Supply, Severity: Fault,
	About: "Traces both terminals of each load, coil, meter and reducer to the posts between which it hangs, contacts taken as closed, and speaks if " +
		"those are not the two ends of the string. One finding for each stretch of batteries, with all that hangs on it.",
	Why: "A string is charged as one: every battery gets the same charge, whatever it gave. A lamp on two of eight batteries empties those two further than the " +
		"rest, and the next charge ends when the string is full, with the two still short. Day by day they fall behind, until they are driven " +
		"below empty while the cart drives and boil while it charges. Two packs in series suffer the same way, and the BMS of the weaker one switches the " +
		"cart off with the other still full. A reducer that takes its 12 V from the whole string costs less than one pair of batteries.",
	Tell: "Measure each battery at rest, some hours after a charge: those that feed something read a tenth of a volt or more below the others. Look for thin " +
		"wires on posts in the middle of the string.",
	Blind: "It says nothing about how far the batteries have drifted: that is for the meter. A balancer between batteries is no load, and its library kind " +
		"must be of the storage or charging family to be left alone. A device that contacts can put across the whole string as well as across a part " +
		"counts as right.",
	Bad:  "a lamp takes its 12 V off the first two of four batteries",
	Good: "the lamp is fed by a reducer on all four",
	Wrong: Example{Of: stringAndLamp, But: []string{
		"wire r2", "", "wire r3", "", "part red", "", "wire r1", "wire r1 b2.+ fu.in gauge=16AWG insulation=105C length=100mm",
		"wire a1", "wire a1 fu.out lt.+ gauge=16AWG insulation=105C length=1m", "wire a2", "wire a2 lt.- b1.- gauge=16AWG insulation=105C length=1m",
		"at b4.+", "at b2.+ cover=fitted"}},
	Right:  Example{Of: stringAndLamp},
	Basis:  Basis{"a tap is taken from the whole pack, never from a part of it: what one battery gives more than the rest it does not get back", Practice},
	Remedy: "take the tap off, and feed it from a reducer across the whole string; charge the drained batteries singly before they go on",
	Run:    runPartOfString,
}

// stretch is a piece of a string between two of its posts, counted from the low end, with what
// hangs on it.
type stretch struct {
	from, to int
	on       []*network.Link
}

func runPartOfString(p *Pass) {
	if p.unsound() {
		return
	}
	for _, s := range p.Net.Strings() {
		if len(s.Cells) < 2 {
			continue
		}
		for _, piece := range p.stretches(s) {
			p.reportStretch(s, piece)
		}
	}
}

// stretches lists the pieces of a string on which something hangs, but not the whole.
func (p *Pass) stretches(s network.String) []stretch {
	posts := p.reachOfPosts(s)
	var list []stretch
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !takesPower(l) {
			continue
		}
		from, to := widest(posts, l)
		if from < 0 || from == to || from == 0 && to == len(s.Cells) {
			continue
		}
		list = addToStretch(list, from, to, l)
	}
	return list
}

// reachOfPosts walks from each post of a string to all that hangs on it, no other post passed.
func (p *Pass) reachOfPosts(s network.String) []*network.Reach {
	at := []network.Node{s.Low}
	for _, cell := range s.Cells {
		at = append(at, cell.After)
	}
	post := map[int]bool{}
	for _, n := range at {
		post[p.firm().Of(n)] = true
	}
	var posts []*network.Reach
	for _, n := range at {
		own := p.firm().Of(n)
		posts = append(posts, p.Net.Walk([]network.Node{n}, func(l *network.Link, from network.Node) bool {
			next := p.firm().Of(l.Other(from))
			return leads(l) && (next == own || !post[next])
		}))
	}
	return posts
}

// widest is the widest pair of posts that the two terminals of a link can be joined to; -1 if it
// does not lie between two.
func widest(posts []*network.Reach, l *network.Link) (from, to int) {
	from, to = -1, -1
	for i, a := range posts {
		for k, b := range posts {
			if a.Has(l.A) && b.Has(l.B) && i != k && (from < 0 || max(i, k)-min(i, k) > to-from) {
				from, to = min(i, k), max(i, k)
			}
		}
	}
	return from, to
}

// addToStretch adds a link to the stretch that it hangs on, one of each part.
func addToStretch(list []stretch, from, to int, l *network.Link) []stretch {
	for i := range list {
		if list[i].from != from || list[i].to != to {
			continue
		}
		for _, other := range list[i].on {
			if other.Part == l.Part {
				return list
			}
		}
		list[i].on = append(list[i].on, l)
		return list
	}
	return append(list, stretch{from, to, []*network.Link{l}})
}

func (p *Pass) reportStretch(s network.String, piece stretch) {
	nominal, amperes := 0.0, 0.0
	var batteries []Subject
	for _, cell := range s.Cells[piece.from:piece.to] {
		v, _ := p.Net.Figure(cell.Link.Part, network.NominalRating)
		nominal += v
		batteries = appendNew(batteries, OfPart(cell.Link.Part.ID))
	}
	for _, l := range piece.on {
		amperes += p.rated(l, nominal)
	}
	f := Finding{Subjects: append(batteries, partsOf(piece.on)...)}
	f.Message = fmt.Sprintf("%s hang on %s alone, %s of a string of %d", list(partsOf(piece.on)), list(batteries), number(nominal)+" V", len(s.Cells))
	if len(partsOf(piece.on)) == 1 {
		f.Message = fmt.Sprintf("%s hangs on %s alone, %s of a string of %d", list(partsOf(piece.on)), list(batteries), number(nominal)+" V", len(s.Cells))
	}
	if amperes > 0 {
		f.Message += fmt.Sprintf(": up to %s that the rest does not give", amps(amperes))
		f.Figure = Figure{What: "current out of part of the string", Value: unit.A(amperes).Any()}
	}
	p.report(f)
}

// rated is the current in amperes that a load or coil takes at a voltage by its figures; 0 if
// none is known.
func (p *Pass) rated(l *network.Link, at float64) float64 {
	if l.Is(model.ConverterElement) {
		return 0
	}
	if amperes, ok := p.Net.Figure(l.Part, l.Element.Amps); ok {
		return amperes
	}
	if watts, ok := p.Net.Figure(l.Part, l.Element.Watts); ok && at > 0 {
		return watts / at
	}
	if ohms, ok := p.Net.Figure(l.Part, l.Element.Ohms); ok && ohms > 0 {
		return at / ohms
	}
	return 0
}

// stringAndLamp is a string of four batteries with a lamp on a reducer.
const stringAndLamp = `
job system=24V
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
part fu fuse-inline fuse-rating=5A interrupting-rating=5000A
part red reducer-isolated min-input-voltage=18V
part lt lamp-headlight
wire j1 b1.+ b2.- gauge=4AWG insulation=105C length=250mm
wire j2 b2.+ b3.- gauge=4AWG insulation=105C length=250mm
wire j3 b3.+ b4.- gauge=4AWG insulation=105C length=250mm
wire r1 b4.+ fu.in gauge=16AWG insulation=105C length=100mm
wire r2 fu.out red.IN+ gauge=16AWG insulation=105C length=1m
wire r3 red.IN- b1.- gauge=16AWG insulation=105C length=1m
wire a1 red.OUT+ lt.+ gauge=12AWG insulation=105C length=1m
wire a2 lt.- red.OUT- gauge=12AWG insulation=105C length=1m
at b4.+ cover=fitted
`
