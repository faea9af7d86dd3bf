package rule

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
)

// faultCurrent is what a string drives through a dead short at the end of a path, in
// amperes at 20 C: its rest voltage over its resistance and that of the wires. Wires
// of unknown size or length count nothing, so that the current is not understated. It
// is not known if the resistance of a battery is not.
func (p *Pass) faultCurrent(f *network.Feed, path []*network.Link) network.Known {
	ohms, emf, source := 0.0, 0.0, ""
	for _, cell := range f.String.Cells {
		r := p.Net.SourceOhms(cell.Link)
		v := p.Net.KnownFigure(cell.Link.Part, cell.Link.Element.Volts)
		if !r.OK || !v.OK {
			return network.Known{}
		}
		ohms += r.Value
		emf += v.Value
		if source == "" || r.IsTypical() {
			source = r.Source
		}
	}
	for _, l := range path {
		if l.Kind == network.WireLink {
			ohms += p.wireOhms(l.Wire)
		}
	}
	if ohms <= 0 {
		return network.Known{}
	}
	return network.Known{Value: emf / ohms, OK: true, Source: source}
}

func (p *Pass) wireOhms(w *model.Wire) float64 {
	metres, known := p.Net.Length(w)
	perMetre, sized := conductor.OhmsPerMetre(w.Gauge, 20)
	if !known || !sized {
		return 0
	}
	return metres * perMetre
}
