package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var notMadeForDC = Rule{
	ID: "not-made-for-dc", Title: "A switch or breaker is not made to break the pack",
	Family: Protection, Severity: Fault,
	About: "Looks at each contact of an isolator, contactor, relay or switch that can stand between the pack and something, and at each breaker and fuse. Speaks if " +
		"the DC voltage rating is below the full-charge voltage, or if the label gives volts of AC alone. A caution if typical figures decide. " +
		"A contact that breaks more than 1 A and whose DC rating is not recorded is asked for.",
	Why: "When a contact opens, the current goes on through an arc until the gap is long enough. On AC the arc goes out by itself a hundred times a second; on DC " +
		"nothing helps but the gap, the springs and the magnets that the maker put in. A house breaker or a 12 V relay on a full pack draws an arc that stays: it burns " +
		"the contacts together, or the housing down, and the one thing that should part pack and cart no longer does.",
	Tell: "Read the label: it must say DC or VDC with at least the pack's voltage at the end of its charge, 58.4 V for sixteen lithium cells. A wave " +
		"and 250 V, or 12 V or 14 VDC, are not that. On breakers and contactors for DC look for + and - at the studs: those break in one direction " +
		"alone. Do not try it out under load: an arc that stands is at your hand.",
	Blind: "Judges the volts, not the amperes at these volts, which makers give in a table of their own. Direction marks of breakers and contactors are not recorded. " +
		"What a charger alone could bring counts with the charger. Small contacts of which nobody recorded a rating are silent below 1 A. A fuse with a DC rating that is too low has a rule of its own, and so has what it can break.",
	Bad:   "a relay with contacts for 32 V switches a pump on the pack",
	Good:  "a relay with contacts for 80 V DC switches it",
	Wrong: Example{Of: fusedPump, But: []string{"part sw", "part sw switch continuous-current=40A voltage-rating=32V"}},
	Right: Example{Of: fusedPump},
	Basis: Basis{"the voltage rating of what opens a circuit is not less than the voltage of the circuit, for direct current; an AC rating does not stand for it",
		"33 CFR 183.455(d), from memory, for devices; common practice for contacts"},
	Remedy: "fit one whose DC rating is above the full-charge voltage",
	Run:    runNotMadeForDC,
}

// arcingAmps is the current in amperes from which a contact that opens draws an arc worth
// asking for its rating. Our choice: arcs between silver contacts stand from some 0.4 A, from
// memory.
const arcingAmps = 1

// The figures that say at which volts something opens.
const (
	dcRating = "voltage-rating"
	acRating = "ac-voltage"
)

func runNotMadeForDC(p *Pass) {
	if p.misconnected() {
		return
	}
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !p.opensByItself(l) || told[l.Part.ID] {
			continue
		}
		reached, source := p.standsAcross(l)
		if source == nil || !reached.OK {
			continue
		}
		told[l.Part.ID] = p.judgeOpening(l, reached.Value, source)
	}
}

// opensByItself reports whether a link is a fuse, or a contact that parts a circuit of direct
// current.
func (p *Pass) opensByItself(l *network.Link) bool {
	switch {
	case l.Is(model.FuseElement):
		return true
	case !l.Is(model.ContactElement) || l.Def.Family != model.Switchgear && l.Def.Family != model.Protection:
		return false
	}
	t := p.Net.TerminalDef(p.Net.Point(l.A).At)
	return t == nil || t.Serves != model.Mains
}

// standsAcross is the full-charge voltage that a contact has to part, with its source: that of
// the highest battery, pack or converter whose positive side reaches it, or that of any other across which it
// really stands in some state.
func (p *Pass) standsAcross(l *network.Link) (network.Known, *network.Feed) {
	var highest network.Known
	var source *network.Feed
	for i := range p.sides() {
		fs := &p.sides()[i]
		a, b := fs.sides.Of(l.A), fs.sides.Of(l.B)
		positive := a == network.Plus || a == network.Both || b == network.Plus || b == network.Both
		if fs.feed.Link.Part == l.Part || fs.feed.Link.Is(model.ChargerElement) || !fs.feed.Full.OK || !positive && !p.parts(l, &fs.feed) {
			continue
		}
		if source == nil || fs.feed.Full.Value > highest.Value {
			highest, source = fs.feed.Full, &fs.feed
		}
	}
	return highest, source
}

// mostOfIt is the share of a source's nominal voltage from which a contact is said to part it.
// Our choice: batteries sag and loads in series take some.
const mostOfIt = 0.6

// parts reports whether a contact in the return of a source stands across it in some state.
func (p *Pass) parts(l *network.Link, f *network.Feed) bool {
	for _, s := range p.solved() {
		returns := false
		for _, at := range []network.Node{l.A, l.B} {
			v, sure := s.solution.Voltage(at, f.Return)
			returns = returns || sure && math.Abs(v) < reversedVolts
		}
		if v, sure := s.solution.Voltage(l.A, l.B); sure && returns && math.Abs(v) > mostOfIt*f.Nominal.Value {
			return true
		}
	}
	return false
}

// judgeOpening holds the ratings of a contact or device against the voltage that it parts, and
// reports whether it spoke.
func (p *Pass) judgeOpening(l *network.Link, reached float64, source *network.Feed) bool {
	id := l.Part.ID
	f := Finding{
		Figure:   Figure{What: "DC voltage rating", Limit: unit.V(reached).Any(), Least: true, Decides: "the full-charge voltage of " + string(source.Link.Part.ID)},
		Subjects: []Subject{OfPart(id), OfPart(source.Link.Part.ID)},
	}
	rated, ac := p.statedVolts(l.Part, dcRating), p.statedVolts(l.Part, acRating)
	read := rated.OK && !rated.IsTypical()
	switch {
	case ac.OK && !ac.IsTypical() && !read:
		f.Figure = Figure{}
		f.Message = fmt.Sprintf("%s is marked %s AC and for no DC; it parts %s of %s at full charge", p.partName(l), volts(ac.Value), volts(reached), source.Link.Part.ID)
		if fix, ok := p.refitFuse(l, reached, p.breaks(l)); ok {
			f.Fixes = []edit.Edit{fix}
		}
	case l.Is(model.FuseElement):
		return false
	case rated.OK && rated.Value < reached:
		f.Figure.Value = unit.V(rated.Value).Any()
		f.Message = fmt.Sprintf("the contact of %s is made for %s and parts %s of %s at full charge", id, volts(rated.Value), volts(reached), source.Link.Part.ID)
		if !read {
			f.Severity = Caution
			f.Message += unconfirmed
		}
	case !rated.OK && p.worstThrough(l).Amps > arcingAmps:
		p.missing(Gap{Datum: "the DC voltage rating", Field: dcRating, Decides: "whether it can part " + volts(reached), Worst: Fault, Quiet: true, Subjects: []Subject{OfPart(id)}})
		return false
	default:
		return false
	}
	p.report(f)
	return true
}

// statedVolts is a voltage that a part is marked for; not known if the library has 0 V, which
// stands for nothing known.
func (p *Pass) statedVolts(part *model.Part, rating string) network.Known {
	known := p.Net.KnownFigure(part, rating)
	known.OK = known.OK && known.Value > 0
	return known
}

// breaks is the fault current in amperes that a device may have to break; none of a contact.
func (p *Pass) breaks(l *network.Link) float64 {
	if !l.Is(model.FuseElement) {
		return 0
	}
	return p.guard().Device(l).Amps
}
