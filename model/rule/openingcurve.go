package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

var openingCurve = Rule{
	ID: "opening-curve", Title: "What is recorded of when a fuse opens cannot be",
	Family: Protection, Severity: Fault,
	About: "Reads the maker's points and the name of the standard that a fuse or breaker is made to. Points that open later at more " +
		"current, or below the rating, and a standard that lugbook has no gates of are of no use: whatever rests on them is not known.",
	Why: "Whether a short is off in time, and which fuse goes first, is read off the times recorded here. A fuse melts sooner at more current: points " +
		"that say otherwise were read off the wrong axis or the wrong line, and every verdict that rests on them would be wrong with all " +
		"its decimals. So they are refused instead of used.",
	Tell: "Open the maker's sheet at the curve of this rating. Current runs along the bottom, time up the side, both in powers of ten. Read the " +
		"times at two, five and ten times the rating again; they must fall from one to the next.",
	Blind:  "Finds what contradicts itself, not what is merely wrong: a curve read off the sheet of another fuse is believed.",
	Bad:    "a fuse that opens within 1 s at 100 A and within 100 s at 1000 A",
	Good:   "a fuse that opens within 100 s at 100 A and within 1 s at 1000 A",
	Wrong:  Example{Of: fusedTap, But: []string{"+", "opens fu3 100A 1s 2s", "+", "opens fu3 1000A 100s 150s"}},
	Right:  Example{Of: fusedTap, But: []string{"+", quickPoints}},
	Basis:  Basis{"the opening time falls as the current rises", "follows from how a fuse works"},
	Remedy: "read the points off the maker's curve again",
	Run:    runOpeningCurve,
}

func runOpeningCurve(p *Pass) {
	told := map[model.PartID]bool{}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.FuseElement) || told[l.Part.ID] {
			continue
		}
		if err := p.curveError(l); err != nil {
			told[l.Part.ID] = true
			p.report(Finding{Message: fmt.Sprintf("%s: %v", p.partName(l), err), Subjects: []Subject{OfPart(l.Part.ID)}})
		}
	}
}

// curveError is what is wrong with what is recorded of when a device opens; nil if nothing.
func (p *Pass) curveError(l *network.Link) error {
	name := l.Part.Opening
	if name == "" {
		name = l.Def.Opening
	}
	rated, _ := p.Net.Figure(l.Part, l.Element.Amps)
	_, err := opening.Device(name, rated, l.Part.Opens)
	return err
}
