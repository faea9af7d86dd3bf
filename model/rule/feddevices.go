package rule

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// fedDevices lists the loads, coils and converters that tracing puts across a source,
// one element of each part: the first that has figures to compare. The highest source
// decides. Loads that only stand for the idling of something else have no figures.
func (p *Pass) fedDevices() []fedDevice {
	var list []fedDevice
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !p.comparable(l) || told[l.Part.ID] {
			continue
		}
		if by := p.feedAcross(l); by != nil {
			told[l.Part.ID] = true
			list = append(list, fedDevice{link: l, by: by, nominal: by.Nominal, full: by.Full})
		}
	}
	return list
}

func (p *Pass) comparable(l *network.Link) bool {
	switch {
	case l.Is(model.LoadElement), l.Is(model.CoilElement), l.Is(model.ConverterElement), l.Is(model.CapacitorElement):
		return l.Def.Family != model.Storage && (l.Element.Volts != "" || l.Element.MaxVolts != "")
	}
	return false
}

// feedAcross is the source of the highest voltage that a device lies across, whichever
// way round; nil if tracing finds none.
func (p *Pass) feedAcross(l *network.Link) *network.Feed {
	var best *network.Feed
	for i := range p.sides() {
		fs := &p.sides()[i]
		if fs.feed.Link.Part == l.Part || fs.feed.Link.Is(model.ChargerElement) {
			continue
		}
		if side := fs.sides.Across(l.A, l.B); side != network.Plus && side != network.Minus {
			continue
		}
		if best == nil || fs.feed.Nominal.Value > best.Nominal.Value {
			best = &fs.feed
		}
	}
	return best
}
