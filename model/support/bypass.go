package support

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// deepest is how many resistances in a row a path round a contact may have.
const deepest = 4

// coldShare is the resistance of a cold filament over that of a hot one. From memory.
const coldShare = 1.0 / 12

// Path is one way round an open contact through which a capacitor fills.
type Path struct {
	Parts  []model.PartID `json:"parts"`            // its resistors or lamps in order; the controller for one inside it
	Ohms   float64        `json:"ohms"`             // sum of its resistances; of lamps hot
	Cold   float64        `json:"cold,omitempty"`   // the same with lamps cold; 0 if it has no lamp
	Inside bool           `json:"inside,omitempty"` // built into the controller, by its figure

	links []*network.Link
}

// hindrance is a link that lets some current pass: a resistance or a lamp.
func hindrance(l *network.Link) bool {
	return l.Is(model.ResistanceElement) && !l.Conducts() || isLamp(l)
}

func isLamp(l *network.Link) bool {
	return l.Is(model.LoadElement) && l.Def.Symbol == "lamp" && len(l.Element.Fed) == 0
}

// bypass finds the ways from one group of nodes to another over resistances and lamps,
// without touching a third.
type bypass struct {
	n       *network.Network
	metal   *network.Groups
	to, off int
	basis   *basis
	found   []Path
	unknown []model.PartID // resistances of which nobody says how large they are
}

func (b *bypass) search(at int, links []*network.Link, seen map[int]bool) {
	if at == b.to {
		for _, l := range links {
			if b.ohms(l) <= 0 {
				b.unknown = append(b.unknown, l.Part.ID)
				return
			}
		}
		b.found = append(b.found, b.path(links))
		return
	}
	if len(links) == deepest {
		return
	}
	seen[at] = true
	defer delete(seen, at)
	for _, node := range b.metal.Members(at) {
		for _, l := range b.n.LinksAt(node) {
			next := b.metal.Of(l.Other(node))
			if hindrance(l) && !seen[next] && next != b.off {
				b.search(next, append(links[:len(links):len(links)], l), seen)
			}
		}
	}
}

func (b *bypass) path(links []*network.Link) Path {
	p := Path{links: links}
	lamp, cold := false, 0.0
	for _, l := range links {
		p.Parts = append(p.Parts, l.Part.ID)
		ohms := b.ohms(l)
		p.Ohms += ohms
		if !isLamp(l) {
			cold += ohms
			continue
		}
		lamp = true
		cold += b.basis.orElse(l.Part, "cold-resistance", coldShare*ohms, "cold it is taken for a twelfth of its hot resistance (filament, from memory)")
	}
	if lamp {
		p.Cold = cold
	}
	return p
}

// ohms is the resistance of a hindrance; of a lamp hot.
func (b *bypass) ohms(l *network.Link) float64 {
	if ohms, ok := b.basis.figure(l.Part, l.Element.Ohms); ok {
		return ohms
	}
	volts, _ := b.basis.figure(l.Part, l.Element.Volts)
	amps, _ := b.basis.figure(l.Part, l.Element.Amps)
	if volts <= 0 || amps <= 0 {
		return 0
	}
	return volts / amps
}

// parallel is the resistance of paths side by side, with lamps hot or cold.
func parallel(paths []Path, cold bool) float64 {
	siemens := 0.0
	for _, p := range paths {
		ohms := p.Ohms
		if cold && p.Cold > 0 {
			ohms = p.Cold
		}
		if ohms > 0 {
			siemens += 1 / ohms
		}
	}
	if siemens == 0 {
		return 0
	}
	return 1 / siemens
}
