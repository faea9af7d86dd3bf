package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var fuseVolts = Rule{
	ID: "fuse-volts", Title: "A fuse is not made for the voltage it sees",
	Family: Protection, Severity: Danger,
	About: "Compares the DC voltage rating of each fuse and breaker with the highest voltage of the sources that reach it: the " +
		"full-charge voltage, not the nominal one. Sixteen LiFePO4 cells reach 58.4 V: 32 V blades and 58 V bolt-in " +
		"fuses are both too low.",
	Why: "Direct current has no zero crossing at which an arc goes out by itself. When the element melts the arc must be drawn so long and so " +
		"cool that the source cannot keep it: that is what the voltage rating promises. A 32 V blade on a pack melts and goes on burning " +
		"in its holder, often until the holder is on fire. A rating for AC says nothing about DC.",
	Tell: "Read the volts off the fuse itself and look for DC or VDC; ordinary automotive blades say 32 V. Measure the pack at the end of its " +
		"charge, not at rest: sixteen lithium cells read 58.4 V, eight 6 V batteries 58.8 V. The number on the fuse must not be smaller.",
	Blind: "Judges by the highest source that can reach either side of the fuse. The margin is the maker's: a fuse rated for just the " +
		"full-charge voltage is let pass. A breaker that is marked for AC alone, and contacts, have a rule of their own.",
	Bad:   "a 58 V bolt-in fuse on a 16-cell pack",
	Good:  "an 80 V or 125 V DC fuse on a 16-cell pack",
	Wrong: Example{Of: fusedPack, But: []string{"part fu1", "part fu1 fuse-class-t fuse-rating=200A voltage-rating=58V"}},
	Right: Example{Of: fusedPack},
	Basis: Basis{"the voltage rating of a device is not less than the voltage of its circuit; above its rating a fuse may keep an arc " +
		"instead of opening", "33 CFR 183.455(d), from memory; voltage ratings of ISO 8820-5 (32 V) and ISO 8820-6 (58 V)"},
	Remedy: "fit a fuse whose DC rating is above the full-charge voltage",
	Run:    runFuseVolts,
}

func runFuseVolts(p *Pass) {
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.FuseElement) || told[l.Part.ID] {
			continue
		}
		reached, source := p.highestAt(l)
		if source == nil {
			continue
		}
		if !reached.OK {
			p.missing(Gap{Datum: "the full-charge voltage", Field: "full-voltage", Decides: "which fuses are made for it", Worst: Danger, Subjects: []Subject{OfPart(source.Link.Part.ID)}})
			continue
		}
		rated := p.Net.KnownFigure(l.Part, l.Element.MaxVolts)
		if !rated.OK {
			p.missing(Gap{Datum: "the voltage rating", Field: "voltage-rating", Decides: "whether it opens at " + volts(reached.Value), Worst: Danger, Subjects: []Subject{OfPart(l.Part.ID)}})
			continue
		}
		if rated.Value < reached.Value {
			told[l.Part.ID] = true
			f := Finding{
				Message: fmt.Sprintf("%s is made for %s and sees %s from %s at full charge",
					p.partName(l), volts(rated.Value), volts(reached.Value), source.Link.Part.ID),
				Figure: Figure{What: "DC voltage rating", Value: unit.V(rated.Value).Any(), Limit: unit.V(reached.Value).Any(), Least: true,
					Decides: "the full-charge voltage of " + string(source.Link.Part.ID)},
				Subjects: []Subject{OfPart(l.Part.ID), OfPart(source.Link.Part.ID)},
			}
			if fix, ok := p.refitFuse(l, reached.Value, p.guard().Device(l).Amps); ok {
				f.Fixes = []edit.Edit{fix}
			}
			p.report(f)
		}
	}
}

// highestAt is the highest full voltage of the feeds that reach a device on either
// side of their circuit, in a solved state or by what can close, with the feed; nil if none
// does. A feed whose voltage is not known decides before all others.
func (p *Pass) highestAt(l *network.Link) (network.Known, *network.Feed) {
	var highest network.Known
	var source *network.Feed
	for i := range p.sides() {
		fs := &p.sides()[i]
		if fs.feed.Link.Part == l.Part || fs.sides.Of(l.A) == network.Neither && fs.sides.Of(l.B) == network.Neither {
			continue
		}
		if !fs.feed.Full.OK {
			return fs.feed.Full, &fs.feed
		}
		if source == nil || fs.feed.Full.Value > highest.Value {
			highest, source = fs.feed.Full, &fs.feed
		}
	}
	if f := p.guard().Highest(l); f != nil && !p.misconnected() && f.Link.Part != l.Part && (source == nil || f.Full.Value > highest.Value) {
		return f.Full, f
	}
	return highest, source
}
