package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var fuseVolts = Rule{
	ID: "fuse-volts", Title: "A fuse is not made for the voltage it sees",
	Family: Protection, Severity: Danger,
	About: "Compares the DC voltage rating of each fuse and breaker with the highest voltage of the sources that reach it: the " +
		"full-charge voltage, not the nominal one. Sixteen LiFePO4 cells reach 58.4 V: 32 V blades and 58 V bolt-in " +
		"fuses are both too low.",
	Bad:  "a 58 V bolt-in fuse on a 16-cell pack",
	Good: "an 80 V or 125 V DC fuse on a 16-cell pack",
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
			p.report(Finding{
				Message: fmt.Sprintf("%s is made for %s and sees %s from %s at full charge",
					p.partName(l), volts(rated.Value), volts(reached.Value), source.Link.Part.ID),
				Subjects: []Subject{OfPart(l.Part.ID), OfPart(source.Link.Part.ID)},
			})
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
