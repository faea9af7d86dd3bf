package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var shuntBypassed = Rule{
	ID: "shunt-bypassed", Title: "Current goes past the shunt",
	Family: Packs, Severity: Caution,
	About: "Takes the shunt out and looks what still reaches the pole of the pack that it sits at: each load, charger, reducer and drive that does is not counted. Meters are let be. " +
		"Speaks as well if metal joins both sides of the shunt.",
	Why: "A state-of-charge meter knows only what passes its shunt. A load that returns to the pack's own stud is not taken off, so that the gauge shows more than there is, a little more every day. A charger whose minus goes there " +
		"is worse: what it puts in is not counted, the gauge falls for ever and stands at empty with a full pack, or jumps to full when the meter takes the end-of-charge voltage for its mark.",
	Tell: "Look at the pack's stud on the shunt's side: it must hold one cable, the one to BATT, and BATT no other. With one device on at a time the meter must show its current; with the charger running it must show charge.",
	Blind: "It follows metal, fuses and contacts. A current past the shunt inside a device, a pack with its own meter inside, and taps on batteries inside a string, which pass the shunt or not by where they return, " +
		"are judged only at the pole where the shunt sits. Some makers want the meter's own supply on the battery side: meters are not told.",
	Bad:  "the reducer's negative goes to shunt.BATT, on the pack's side of the shunt",
	Good: "the reducer's negative goes to shunt.LOAD, as every negative does",
	Wrong: Example{Of: shuntAndMeter, But: []string{"wire r3", "wire r3 red.IN- shunt.BATT gauge=12AWG insulation=105C length=800mm",
		"stack shunt.LOAD", "stack shunt.BATT w5 r3"}},
	Right:  Example{Of: shuntAndMeter},
	Basis:  Basis{"the negative of the pack alone is on the BATT side of a shunt, everything else on its LOAD side", Practice},
	Remedy: "move the negative of the device to the LOAD side of the shunt",
	Run:    runShuntBypassed,
}

func runShuntBypassed(p *Pass) {
	low, high, ok := p.Net.Poles()
	if !ok || p.unsound() {
		return
	}
	for i := range p.Net.Links() {
		shunt := &p.Net.Links()[i]
		if !isShunt(shunt) {
			continue
		}
		for _, pole := range []network.Node{low, high} {
			reach := p.Net.Walk([]network.Node{pole}, func(l *network.Link, _ network.Node) bool { return l != shunt && leads(l) })
			if reach.Has(shunt.A) && reach.Has(shunt.B) {
				p.reportBridged(shunt)
			} else if reach.Has(shunt.A) || reach.Has(shunt.B) {
				p.judgePast(shunt, reach)
			}
		}
	}
}

// onReducer reports whether a link lies across the output of a reducer: it is the reducer that
// takes its current from the pack.
func (p *Pass) onReducer(l *network.Link) bool {
	for i := range p.sides() {
		if fs := &p.sides()[i]; fs.feed.Link.Kind == network.OutputLink && fs.sides.Across(l.A, l.B) != network.Neither {
			return true
		}
	}
	return false
}

// isShunt reports whether a link is the resistance of a shunt.
func isShunt(l *network.Link) bool {
	return l.Is(model.ResistanceElement) && l.Def.Family == model.Metering && l.Conducts()
}

// reportBridged tells which wires join both sides of a shunt.
func (p *Pass) reportBridged(shunt *network.Link) {
	reach := p.Net.Walk([]network.Node{shunt.A}, func(l *network.Link, _ network.Node) bool { return l != shunt && l.Firm() })
	way := wiresOf(reach.Path(shunt.B))
	if len(way) == 0 {
		return
	}
	p.report(Finding{
		Severity: Fault,
		Message:  fmt.Sprintf("%s join both sides of %s: most of the current goes past it", list(way), shunt.Part.ID),
		Subjects: append([]Subject{OfPart(shunt.Part.ID)}, way...),
	})
}

// judgePast speaks about what hangs on the pack's side of a shunt: chargers by themselves, and
// the rest together.
func (p *Pass) judgePast(shunt *network.Link, reach *network.Reach) {
	var chargers, loads []*network.Link
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !reach.Has(l.A) && !reach.Has(l.B) || !p.wired(l.A) || !p.wired(l.B) {
			continue
		}
		switch {
		case l.Is(model.ChargerElement):
			chargers = append(chargers, l)
		case takesPower(l) && l.Def.Family != model.Metering && !p.onReducer(l), p.isDriveLoad(l):
			loads = append(loads, l)
		}
	}
	for _, l := range chargers {
		p.reportPast(shunt, reach, []*network.Link{l}, fmt.Sprintf("%s charges past %s: what it gives is not counted, and the gauge falls for ever", l.Part.ID, shunt.Part.ID))
	}
	if len(loads) > 0 {
		verb := "take"
		if len(partsOf(loads)) == 1 {
			verb = "takes"
		}
		p.reportPast(shunt, reach, loads, fmt.Sprintf("%s %s current past %s: it is not counted, and the gauge shows more than there is", list(partsOf(loads)), verb, shunt.Part.ID))
	}
}

func (p *Pass) reportPast(shunt *network.Link, reach *network.Reach, links []*network.Link, message string) {
	f := Finding{Message: message, Subjects: append(partsOf(links), OfPart(shunt.Part.ID))}
	amperes, wires := 0.0, []*network.Link(nil)
	for _, l := range links {
		if v, ok := p.Net.Figure(l.Part, l.Element.Amps); ok && !l.Is(model.ConverterElement) {
			amperes += v
		}
		at := l.B
		if !reach.Has(at) {
			at = l.A
		}
		if way := reach.Path(at); len(way) > 0 {
			wires = append(wires, way[0])
		}
	}
	if amperes > 0 {
		f.Figure = Figure{What: "current past the shunt", Value: unit.A(amperes).Any()}
	}
	f.Fixes = p.beyondShunt(shunt, wires)
	p.report(f)
}

// beyondShunt moves wires from the pack's stud of a shunt to the other; none unless all that goes
// past it lands there.
func (p *Pass) beyondShunt(shunt *network.Link, wires []*network.Link) []edit.Edit {
	batt, load := p.Net.Point(shunt.A).At, p.Net.Point(shunt.B).At
	var moves []edit.Edit
	seen := map[*network.Link]bool{}
	for _, w := range wires {
		if w.Kind != network.WireLink || w.Wire.From.At != batt && w.Wire.To.At != batt {
			return nil
		}
		if !seen[w] {
			seen[w] = true
			moves = append(moves, edit.ReEnd{Sheet: p.Sheet.Name, ID: w.Wire.ID, Side: sideOf(w.Wire, batt), End: model.End{At: load}, Seat: edit.Outermost})
		}
	}
	if len(moves) == 0 {
		return nil
	}
	return []edit.Edit{together(fmt.Sprintf("move what goes past %s to %s", shunt.Part.ID, load), moves...)}
}
