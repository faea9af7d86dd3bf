package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

// What ready-made edits of the protection are made of: which fuse fits before some wires, and
// which wire behind a fuse.

// fuseBefore is the standard rating of a fuse that protects all of some wires and carries what
// flows in them for long: the usual one for the thinnest (FAA AC 43.13-1B table 11-3), or more
// if the load asks for it; the largest that the wires allow if a drive's peaks flow. It is
// false if no size does both, or if what decides is not recorded.
func (p *Pass) fuseBefore(wires []*network.Link, taken float64, peaks bool) (float64, bool) {
	most, usual := 0.0, 0.0
	for i, l := range wires {
		limit, known := p.fuseLimitBefore(l)
		if !known {
			return 0, false
		}
		thin, _ := conductor.UsualFuse(l.Wire.Gauge)
		if i == 0 || limit < most {
			most = limit
		}
		if i == 0 || thin < usual {
			usual = thin
		}
	}
	largest, fits := conductor.FuseAtMost(most)
	least, made := conductor.FuseAtLeast(taken / p.limit(basis.FuseLoad))
	switch {
	case !fits || !made || least.Amperes > largest.Amperes:
		return 0, false
	case peaks || usual > largest.Amperes:
		return largest.Amperes, true
	}
	return max(usual, least.Amperes), true
}

// fuseLimitBefore is the largest rating of a device before a wire; not known if its size is not
// recorded. A class of insulation that is not recorded counts as the lowest.
func (p *Pass) fuseLimitBefore(l *network.Link) (float64, bool) {
	return p.fuseLimitAt(l, p.nominalAt(l))
}

// fuseLimitAt is fuseLimitBefore in a circuit of that voltage.
func (p *Pass) fuseLimitAt(l *network.Link, nominal float64) (float64, bool) {
	if l.Wire.Gauge.IsZero() {
		return 0, false
	}
	class := max(l.Wire.Insulation.Degrees(), worstClass)
	return p.loadAt(l.Wire, 0, nominal, class).limit, true
}

// worstThrough is what flows in a link in the worst of the states.
func (p *Pass) worstThrough(l *network.Link) size.Load {
	return p.lastingMost(func(in *network.Solution) float64 { return math.Abs(in.Current(l)) })
}

// lastingMost is the largest current of something over all states in which no device opens at
// once.
func (p *Pass) lastingMost(of func(*network.Solution) float64) size.Load {
	return p.currents().Most(func(in *network.Solution) float64 {
		if p.opensAtOnce(in) {
			return 0
		}
		return of(in)
	})
}

// carriedBy is what flows for long in the wire that carries most of some, and whether a drive's
// peaks flow in any.
func (p *Pass) carriedBy(wires []*network.Link) (amperes float64, peaks bool) {
	for _, l := range wires {
		load := p.currents().Load(l.Wire)
		amperes = max(amperes, load.Amps)
		peaks = peaks || len(load.Duty) > 1
	}
	return amperes, peaks
}

// cartridgeMost is the largest rating in amperes of the cartridge fuses of 10 x 38 mm; from
// memory.
const cartridgeMost = 30

// leadLength is the lead of a fuse that is set in at a stud: well within what 33 CFR
// 183.455(b) allows.
var leadLength = unit.LengthFromMetres(0.1)

// insertFuse sets a fuse into a wire at the end on a node, of a kind that opens at any pack's
// voltage and fault current; false if that end is loose.
func (p *Pass) insertFuse(l *network.Link, near network.Node, rating float64) (edit.Edit, bool) {
	return p.insertKind(l, near, kindFor(rating), rating, 0)
}

// insertKind is insertFuse of a kind, for several fuses in one step: number counts them from 0,
// so that each has a name of its own.
func (p *Pass) insertKind(l *network.Link, near network.Node, kind string, rating float64, number int) (edit.Edit, bool) {
	at := p.Net.Point(near).At
	if at.IsZero() {
		return nil, false
	}
	id := model.PartID(nthFree("fu", number, func(id string) bool { return p.Sheet.Part(model.PartID(id)) != nil }))
	lead := model.WireID(nthFree("wf", number, func(id string) bool { return p.Sheet.Wire(model.WireID(id)) != nil }))
	fuse := model.Part{ID: id, Kind: kind, Ratings: []model.Rating{{Name: "fuse-rating", Value: unit.A(rating).Any(), Source: toBeFitted}}}
	return edit.InsertInWire{
		Sheet: p.Sheet.Name, Wire: l.Wire.ID, Near: sideOf(l.Wire, at), Part: fuse, In: "in", Out: "out", Lead: lead, Length: leadLength,
	}, true
}

// nthFree is the free name after as many others as number says.
func nthFree(word string, number int, taken func(string) bool) string {
	return freeName(word, func(id string) bool {
		if taken(id) {
			return true
		}
		number--
		return number >= 0
	})
}

// smallerFuse fits the fuse that some wires behind a device allow; false if it is no smaller,
// if its rating is nobody's, or if the load asks for more.
func (p *Pass) smallerFuse(device *network.Link, wires []*network.Link) (edit.Edit, bool) {
	rated := p.Net.KnownFigure(device.Part, device.Element.Amps)
	if !device.Is(model.FuseElement) || !rated.OK || rated.IsTypical() {
		return nil, false
	}
	taken := p.worstThrough(device).Amps
	flowing, peaks := p.carriedBy(wires)
	rating, fits := p.fuseBefore(wires, max(taken, flowing), peaks)
	if !fits || rating >= rated.Value {
		return nil, false
	}
	return p.rate(device.Part.ID, device.Element.Amps, unit.A(rating).Any()), true
}

// thickEnough makes each of some wires as thick as a current that can persist asks for, in circuits
// of nominal volts; false if one is thick enough or if no size is, or if its insulation is not recorded.
func (p *Pass) thickEnough(wires []*network.Link, amperes float64, nominal func(*network.Link) float64) (edit.Edit, bool) {
	var edits []edit.Edit
	for _, l := range wires {
		size, ok := p.gaugeBehind(l, amperes, nominal(l))
		if !ok {
			return nil, false
		}
		edits = append(edits, p.setWire(l.Wire.ID, "gauge", size.String()))
	}
	if len(edits) == 0 {
		return nil, false
	}
	return together("fit thicker wire for "+list(wireSubjects(wires)), edits...), true
}

// gaugeBehind is the thinnest size thicker than a wire that carries a current by the rule for a
// circuit of that voltage.
func (p *Pass) gaugeBehind(l *network.Link, amperes, nominal float64) (unit.Gauge, bool) {
	if l.Wire.Insulation.Degrees() < worstClass {
		return unit.Gauge{}, false
	}
	for _, g := range size.SeriesOf(l.Wire.Gauge).Sizes() {
		if g.Compare(l.Wire.Gauge) <= 0 {
			continue
		}
		of := *l.Wire
		of.Gauge = g
		if p.loadOf(&of, amperes, nominal).load == carried {
			return g, true
		}
	}
	return unit.Gauge{}, false
}

// refitFuse puts a fuse of another kind, one that opens at some volts and breaks some amperes, in
// the place of one with two terminals; false if it is of that kind, if its rated current is
// nobody's, or if no kind does.
func (p *Pass) refitFuse(l *network.Link, volts, amperes float64) (edit.Edit, bool) {
	rated := p.Net.KnownFigure(l.Part, l.Element.Amps)
	if !l.Is(model.FuseElement) || l.Def.Control != nil || len(l.Def.Terminals) != 2 || !rated.OK || rated.IsTypical() {
		return nil, false
	}
	kind := kindFor(rated.Value)
	d := p.Net.Cat.Definition(kind)
	if kind == l.Part.Kind || d == nil || figureOf(d, "voltage-rating") < volts || figureOf(d, "interrupting-rating") < amperes {
		return nil, false
	}
	id := l.Part.ID
	edits := []edit.Edit{edit.SetPart{Sheet: p.Sheet.Name, ID: id, Field: "kind", Text: kind}}
	for _, r := range l.Part.Ratings {
		if r.Name != l.Element.Amps {
			edits = append(edits, edit.RatePart{Sheet: p.Sheet.Name, ID: id, Rating: model.Rating{Name: r.Name}})
		}
	}
	edits = append(edits, p.rate(id, "fuse-rating", unit.A(rated.Value).Any()))
	if len(l.Part.Opens) > 0 {
		edits = append(edits, edit.SetOpens{Sheet: p.Sheet.Name, ID: id})
	}
	if l.Part.Opening != "" {
		edits = append(edits, edit.SetPart{Sheet: p.Sheet.Name, ID: id, Field: "opening"})
	}
	return together(fmt.Sprintf("fit a %s as %s", kind, id), edits...), true
}

// figureOf is a figure of a kind in SI units; none if it has none.
func figureOf(d *model.Definition, rating string) float64 {
	r, _ := d.Rating(rating)
	return r.Value.SI()
}

// kindFor is the kind of fuse of a rating in amperes that opens at any pack's voltage and
// fault current.
func kindFor(rating float64) string {
	if rating > cartridgeMost {
		return "fuse-class-t"
	}
	return "fuse-cartridge"
}
