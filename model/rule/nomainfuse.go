package rule

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var noMainFuse = Rule{
	ID: "no-main-fuse", Title: "No main fuse on the traction path",
	Family: Protection, Severity: Danger,
	About: "Follows everything that conducts from the positive pole of each string and each pack, contacts taken as closed, up to the " +
		"first fuse or breaker. Speaks once a pack if the traction cable reaches the contactor or the controller without one, and lists " +
		"every conductor that is left open by it. A fuse inside the string counts; so does one through which everything at the negative " +
		"pole passes, which is a finding of its own.",
	Why: "A pack drives thousands of amperes through a short. A dropped spanner, a cable worn through on the frame or a contactor that " +
		"welds makes one, and nothing but copper limits it: the cable glows within seconds, its insulation burns, and the fire is under " +
		"the seat beside the batteries. Nobody can pull the cable off while it happens. A fuse at the post turns all of that into a fuse " +
		"to be replaced.",
	Tell: "Follow the thickest cable from the pack's most positive post with a hand, key off. Before it reaches the solenoid or the controller it must " +
		"pass a fuse holder or a breaker. If it goes straight there, the cart has none, however many small fuses sit elsewhere. " +
		"A meter cannot tell it: volts are the same with and without.",
	Blind: "Jumpers between the batteries of a string are left alone: common practice accepts them unfused, for they are short and inside " +
		"the main fuse's loop. The breaking of a BMS inside a pack does not count as a fuse, for its transistors may fail closed. A pack " +
		"that is wired the wrong way round is judged when that is put right.",
	Bad:   "the pack's positive cable goes straight to the isolator and the controller",
	Good:  "the cable goes to a class T fuse a hand's breadth away, and from there to the isolator",
	Wrong: Example{Of: fusedPack, But: []string{"part fu1", "", "wire w1", "", "wire w2", "wire w2 pack.POS iso.in gauge=2AWG insulation=105C length=750mm", "at fu1.in", ""}},
	Right: Example{Of: fusedPack},
	Basis: Basis{"each ungrounded conductor has a fuse or breaker at its source; a pack's fault current burns any cable of a cart", "33 CFR 183.455(a), (b)"},
	Remedy: "fit a main fuse at the positive post, ahead of everything else: no larger than its cable carries, its DC rating above the full-charge " +
		"voltage, its interrupting rating above the fault current",
	Run: runNoMainFuse,

	Explains: []string{"fuse-interrupting"},
}

// fusedPack is a pack with its main fuse, an isolator and a controller.
const fusedPack = `part pack lithium-pack-16 internal-resistance=15mohm
part fu1 fuse-class-t fuse-rating=200A
part iso isolator
part ctrl controller-series
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out iso.in gauge=2AWG insulation=105C length=600mm
wire w3 iso.out ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
at pack.POS cover=fitted
at fu1.in cover=fitted`

func runNoMainFuse(p *Pass) {
	for i := range p.fusing().entries {
		e := &p.fusing().entries[i]
		if e.Feed == nil || e.Feed.String == nil || !e.Feed.Whole || !math.IsInf(e.Amps, 1) {
			continue
		}
		trunk, taps := p.split(p.fusible(e.Lead.Open))
		if len(trunk) == 0 {
			continue
		}
		f := Finding{
			Message: fmt.Sprintf("nothing protects %s: no fuse or breaker between %s and %s%s",
				list(wireSubjects(trunk)), p.at(e.At), p.at(p.farEnd(e.Lead, trunk[len(trunk)-1])), p.faultWords(e.Feed)),
			Subjects: append([]Subject{p.terminal(e.At)}, wireSubjects(trunk)...),
		}
		if fix, ok := p.mainFuseFor(e, trunk, taps); ok {
			f.Fixes = []edit.Edit{fix}
		}
		p.report(f)
	}
}

// mainFuseFor sets a fuse into the one traction cable that leaves a pole, as large as the cables
// behind it allow; false if more than one leaves, if taps without a fuse hang behind it, if no
// size fits both cables and load, or if another pack feeds the same cart: theirs must match.
func (p *Pass) mainFuseFor(e *network.Entry, trunk, taps []*network.Link) (edit.Edit, bool) {
	if len(p.Net.Strings()) > 1 {
		return nil, false
	}
	first := trunk[0]
	behind := func(l *network.Link) bool { return p.comesThrough(e.Lead, l, first) }
	for _, l := range trunk[1:] {
		if !behind(l) {
			return nil, false
		}
	}
	if slices.ContainsFunc(taps, behind) {
		return nil, false
	}
	flowing, _ := p.carriedBy(trunk)
	rating, fits := p.fuseBefore(trunk, flowing, true)
	if !fits {
		return nil, false
	}
	return p.insertFuse(first, first.Other(p.farEnd(e.Lead, first)), rating)
}

// comesThrough reports whether current comes to a wire through another.
func (p *Pass) comesThrough(lead *network.LeadIn, l, before *network.Link) bool {
	return slices.Contains(lead.Reach.Path(l.Other(p.farEnd(lead, l))), before)
}

// fusible leaves out the wires that practice leaves to something else than a fuse.
func (p *Pass) fusible(wires []*network.Link) []*network.Link {
	var list []*network.Link
	for _, l := range wires {
		if !p.exempt(l) {
			list = append(list, l)
		}
	}
	return list
}

// farEnd is the end of a wire that is farther from where current enters.
func (p *Pass) farEnd(lead *network.LeadIn, l *network.Link) network.Node {
	if lead.Reach.Via(l.A) == l {
		return l.A
	}
	return l.B
}

// faultWords says what a string can drive through a short, if its resistance is known.
func (p *Pass) faultWords(f *network.Feed) string {
	short := p.guard().ShortAmps(f)
	if math.IsInf(short, 1) || short <= 0 {
		return ""
	}
	return fmt.Sprintf("; a short there draws %s at full charge", aboutAmps(short))
}
