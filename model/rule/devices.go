package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// nameOf is a device as a message names it: 70 A fuse fu1, or fuse fb.3 of a block; of
// what else limits a current, the part.
func (p *Pass) nameOf(l *network.Link) string {
	rated := p.Net.KnownFigure(l.Part, l.Element.Amps)
	if !l.Is(model.FuseElement) {
		return string(l.Part.ID)
	}
	if !rated.OK {
		return deviceWord(l) + " " + p.deviceSubject(l).String()
	}
	return fmt.Sprintf("%s %s %s", amps(rated.Value), deviceWord(l), p.deviceSubject(l))
}

// deviceWord is fuse, or breaker for what a hand can reset.
func deviceWord(l *network.Link) string {
	if l.Def.Control != nil {
		return "breaker"
	}
	return "fuse"
}

// deviceSubject is the part, or for one fuse of a block the terminal of its way.
func (p *Pass) deviceSubject(l *network.Link) Subject {
	fuses := 0
	for _, e := range l.Def.Elements {
		if e.Is == model.FuseElement {
			fuses++
		}
	}
	if fuses > 1 {
		return p.terminal(l.B)
	}
	return OfPart(l.Part.ID)
}

// partName is a device as a message names it where one finding stands for all fuses of a
// block.
func (p *Pass) partName(l *network.Link) string {
	if p.deviceSubject(l) != OfPart(l.Part.ID) {
		return "fuse block " + string(l.Part.ID)
	}
	return p.nameOf(l)
}

// namesOf names what limits a current.
func (p *Pass) namesOf(limits []*network.Link) string {
	var names []string
	for _, l := range limits {
		names = append(names, p.nameOf(l))
	}
	return listWords(names)
}

func (p *Pass) deviceSubjects(limits []*network.Link) []Subject {
	var subjects []Subject
	for _, l := range limits {
		subjects = append(subjects, p.deviceSubject(l))
	}
	return subjects
}

// areDevices reports whether only fuses and breakers limit a current.
func areDevices(limits []*network.Link) bool {
	for _, l := range limits {
		if !l.Is(model.FuseElement) {
			return false
		}
	}
	return len(limits) > 0
}

// typical reports whether the rating of a device is a library figure that nobody read
// off its label.
func (p *Pass) typical(l *network.Link, rating string) bool {
	return p.Net.KnownFigure(l.Part, rating).IsTypical()
}

// unconfirmed is what a message adds if its figures come from the library alone.
const unconfirmed = "; the library's typical figure decides: read the label"
