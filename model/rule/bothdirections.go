package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var bothDirections = Rule{
	ID: "both-directions", Title: "The contactors of both directions can be closed at once",
	Family: Chain, Severity: Danger,
	About: "Looks at carts that reverse by contactors. Speaks if in a state of the controls both directions are pulled in: a danger if they short the pack or a winding, a fault if the " +
		"field of a change-over pair is lost. Where the parts would make a short and nothing but the direction switch keeps them apart, it is a caution.",
	Why: "Direction contactors turn the field round between the same two conductors. Closed both at once they join these conductors to each other: with plain contactors in a " +
		"bridge that is a dead short of the pack through two contacts, which weld; with change-over contactors the field loses its " +
		"current, the motor stands, and if the armature is turning fast it can run away from its field.",
	Tell: "Main fuse and control fuse out, the two coil leads off the direction switch: feed the forward lead from a bench supply and then the " +
		"reverse lead too. If both click and stay, nothing keeps them apart. Look for a rocker bar between the two contactors (mechanical " +
		"interlock) or for the coil lead of each through a resting contact of the other.",
	Blind: "A mechanical interlock cannot be recorded: if there is one, say so in a note and waive the caution. An interlock inside a controller that drives both coils is " +
		"taken for granted.",
	Bad:    "a loop joins the forward and the reverse lead, so both coils pull in",
	Good:   "each coil has its own lead from the direction switch",
	Wrong:  Example{Of: twinContactors, But: []string{"+", "wire x1 dir.F dir.R gauge=16AWG insulation=105C length=50mm"}},
	Right:  Example{Of: twinContactors},
	Basis:  Basis{"contactors that reverse a motor are kept from closing together", Practice},
	Remedy: "lead the coil of each direction through a resting contact of the other, or fit a pair with a mechanical interlock",
	Run:    runBothDirections,

	Upsets: []string{"does-not-drive", "reverse-warning"},
}

// twinContactors is a pair of change-over contactors that turns a field round.
const twinContactors = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=10A
part key key-switch
part dir direction-rocker
part rf reverse-contactor clamp-voltage=80V
part rr reverse-contactor clamp-voltage=80V
wire k1 pack.POS fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN dir.COM gauge=16AWG insulation=105C length=0.3m
wire k4 dir.F rf.coil+ gauge=16AWG insulation=105C length=1m
wire k5 dir.R rr.coil+ gauge=16AWG insulation=105C length=1m
wire k6 rf.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire k7 rr.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire m3 rf.NC rr.NC gauge=2AWG insulation=105C length=0.2m
wire m4 rf.NO rr.NO gauge=2AWG insulation=105C length=0.2m
stack pack.NEG k6 k7
at pack.POS cover=fitted
`

func runBothDirections(p *Pass) {
	working := p.workingContacts()
	if p.unsound() || len(contactorsOf(working)) < 2 {
		return
	}
	var pulls []pulled
	for _, s := range p.Net.States() {
		if in, ok := p.pulledIn(s, working); ok {
			pulls = append(pulls, in)
		}
	}
	for _, in := range pulls {
		if short, what := p.shortThrough(in); len(short) > 1 {
			p.report(Finding{State: in.state, Subjects: short, Message: fmt.Sprintf("%s close together in %s and short %s", list(short), in.state, what)})
			return
		}
	}
	p.judgeChangeOvers(pulls)
	p.judgeApart(pulls)
}

// pulled is a state with the contactors that are pulled in before current flows through them.
type pulled struct {
	state    string
	in       *network.Solution // with the working contacts of all contactors open
	contacts []*network.Link   // those that close
}

func (in pulled) has(l *network.Link) bool { return slices.Contains(in.contacts, l) }

// workingContacts lists the contacts beside the drive that close when the coil of their contactor is
// fed, and those of change-over contactors.
func (p *Pass) workingContacts() []*network.Link {
	var list []*network.Link
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.ContactElement) && l.Element.Coil != "" && l.Element.Rest != model.RestClosed && p.isTraction(l.A) && p.isTraction(l.B) && p.coilOf(l) != nil &&
			(p.feedsDrive(l) || p.restingBeside(l) != nil) {
			list = append(list, l)
		}
	}
	return list
}

// pulledIn tells which contacts a state closes. What they short would drop them out again, so
// they are kept open while their coils are looked at.
func (p *Pass) pulledIn(s state.State, working []*network.Link) (pulled, bool) {
	changes := make([]network.Change, len(working))
	for i, l := range working {
		changes[i] = network.Change{Link: l, Open: true}
	}
	in, err := p.Net.SolveWith(s, network.Variation{Changes: changes})
	if err != nil {
		return pulled{}, false
	}
	found := pulled{state: s.Name, in: in}
	for _, l := range working {
		if in.On(p.coilOf(l)) {
			found.contacts = append(found.contacts, l)
		}
	}
	return found, true
}

// shortThrough lists the contactors that join the poles of the pack, or both ends of a winding, if
// some contacts close, and names what they short; none if they short nothing.
func (p *Pass) shortThrough(in pulled) (contactors []Subject, what string) {
	low, high, ok := p.poles()
	if !ok {
		return nil, ""
	}
	passes := func(l *network.Link, _ network.Node) bool { return carries(in.in, l) || in.has(l) }
	if reach := p.Net.Walk([]network.Node{high}, passes); reach.Has(low) {
		return contactorsOf(reach.Path(low)), "the pack"
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.ResistanceElement) || l.Def.Family != model.Drive || !p.isTraction(l.A) || !p.isTraction(l.B) {
			continue
		}
		reach := p.Net.Walk([]network.Node{l.A}, passes)
		if !reach.Has(l.B) {
			continue
		}
		closing := slices.DeleteFunc(reach.Path(l.B), func(c *network.Link) bool { return !in.has(c) || p.restingBeside(c) != nil })
		if found := contactorsOf(closing); len(found) > 1 {
			return found, fmt.Sprintf("the %s of %s", l.Element.ID, l.Part.ID)
		}
	}
	return nil, ""
}

// contactorsOf lists the contactors among some links.
func contactorsOf(links []*network.Link) []Subject {
	var list []Subject
	for _, l := range links {
		if l.Is(model.ContactElement) && l.Element.Coil != "" {
			list = appendNew(list, OfPart(l.Part.ID))
		}
	}
	return list
}

// judgeChangeOvers tells of pairs of change-over contactors that are both pulled in.
func (p *Pass) judgeChangeOvers(pulls []pulled) {
	for _, pair := range p.changeOvers() {
		for _, in := range pulls {
			if !in.has(pair[0]) || !in.has(pair[1]) {
				continue
			}
			both := []Subject{OfPart(pair[0].Part.ID), OfPart(pair[1].Part.ID)}
			p.report(Finding{
				Severity: Fault, State: in.state, Subjects: both,
				Message: fmt.Sprintf("%s are both pulled in with the cart in the state %s: both ends of the field lie on one conductor and it gets no current", list(both), in.state),
			})
			break
		}
	}
}

// changeOvers lists the pairs of change-over contactors whose resting contacts share one
// conductor and whose working contacts another.
func (p *Pass) changeOvers() [][2]*network.Link {
	metal := p.metal()
	working := p.workingContacts()
	var pairs [][2]*network.Link
	for i, a := range working {
		for _, b := range working[i+1:] {
			ra, rb := p.restingBeside(a), p.restingBeside(b)
			if ra != nil && rb != nil && a.Part != b.Part && metal.Same(a.B, b.B) && metal.Same(ra.B, rb.B) {
				pairs = append(pairs, [2]*network.Link{a, b})
			}
		}
	}
	return pairs
}

// restingBeside is the resting contact of the coil that moves a working one; nil if there is
// none.
func (p *Pass) restingBeside(work *network.Link) *network.Link {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Is(model.ContactElement) && l.Part == work.Part && l.Element.Coil == work.Element.Coil && l.Element.Rest == model.RestClosed {
			return l
		}
	}
	return nil
}

// judgeApart tells of contactors of which some close in forward alone and others in reverse
// alone, which would short the pack if all closed, with nothing between their coils.
func (p *Pass) judgeApart(pulls []pulled) {
	var ahead, back pulled
	for _, in := range pulls {
		switch in.state {
		case state.DriveForward:
			ahead = in
		case state.DriveReverse:
			back = in
		}
	}
	forward := slices.DeleteFunc(slices.Clone(ahead.contacts), back.has)
	reverse := slices.DeleteFunc(slices.Clone(back.contacts), ahead.has)
	if len(forward) == 0 || len(reverse) == 0 || p.keptApart(ahead, back, forward) || p.keptApart(back, ahead, reverse) {
		return
	}
	all := pulled{in: ahead.in, contacts: slices.Concat(ahead.contacts, back.contacts)}
	if short, what := p.shortThrough(all); len(short) > 1 {
		p.report(Finding{
			Severity: Caution, Subjects: short,
			Message: fmt.Sprintf("if %s are closed together they short %s, and only the direction switch keeps them apart", list(short), what),
		})
	}
}

// keptApart reports whether a controller drives the coil of one of some contacts that close in a
// state, or its feed goes through a resting contact that opens in the other.
func (p *Pass) keptApart(in, other pulled, contacts []*network.Link) bool {
	return slices.ContainsFunc(contacts, func(c *network.Link) bool {
		coil := p.coilOf(c)
		return p.isDriven(coil) || slices.ContainsFunc(p.wayOfFeed(in.in, coil), func(l *network.Link) bool {
			return l.Is(model.ContactElement) && l.Element.Rest == model.RestClosed && p.coilOf(l) != nil && other.in.On(p.coilOf(l))
		})
	})
}
