package tui

import (
	"fmt"
	"math"
	"strings"

	"example.com/lugbook/diagram/live"
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
)

// inState is the name of the first row that the state in force gives.
const inState = "state"

// figureRows are the rows of a card that the state in force gives: volts, amperes, and
// what is closed. There are none if no state is in force.
func (d *desk) figureRows(t thing) []row {
	f := d.inForce()
	switch {
	case f == nil:
		return nil
	case f.err != nil:
		if who := f.unrest(); who != "" {
			return []row{{name: "no rest", value: who, about: "in " + f.state + " these keep switching, so there are no figures"}}
		}
		return []row{{name: "no figures", value: f.err.Error(), about: "the state in force cannot be computed"}}
	}
	switch t.kind {
	case partThing:
		return f.partFigures(t.at.Part)
	case terminalThing:
		return f.terminalFigures(t.at)
	case wireThing:
		return f.wireFigures(t.wire)
	case looseThing:
		return f.looseFigures(t.wire, t.side)
	}
	return nil
}

// volts is the voltage of a node in words, and what it is against.
func (f *force) volts(at network.Node) (value, about string) {
	volts, against, ok := live.Potential(f.network, f.solution, f.feeds, at)
	if !ok {
		return "floats", "nothing joins it to a source in " + f.state + ": a meter shows nothing certain"
	}
	return live.Volts(volts), fmt.Sprintf("in %s, red probe here, black on %s", f.state, f.network.Point(against))
}

// spread is the row that says between what a figure may lie, and why; none if it is sure.
func (f *force) spread(r meter.Reading, err error, write func(float64) string) []row {
	low, high := r.Low, r.High
	if high <= 0 {
		low, high = -high, -low // the way of a current has a row of its own
	}
	if err != nil || !r.Known || write(low) == write(high) {
		return nil
	}
	about := r.Range(f.bench.By)
	if len(r.Why) > 0 {
		about += "; " + strings.Join(r.Why, "; ")
	}
	return []row{{name: "may be", value: between(write(low), write(high)), about: about}}
}

// between joins two figures, with one unit if it is the same: 51.1 to 58.4 V.
func between(low, high string) string {
	figure, unit, _ := strings.Cut(low, " ")
	if strings.HasSuffix(high, " "+unit) {
		low = figure
	}
	return low + " to " + high
}

// voltSpread is that row for the voltage of a node.
func (f *force) voltSpread(at network.Node) []row {
	_, against, ok := live.Potential(f.network, f.solution, f.feeds, at)
	red, black := f.network.Point(at).At, model.TerminalRef{}
	if ok {
		black = f.network.Point(against).At
	}
	if red.IsZero() || black.IsZero() {
		return nil
	}
	r, err := f.bench.Volts(red, black)
	return f.spread(r, err, live.Volts)
}

// wireFigures are what flows in a wire, the voltage of its ends, and the drop along it.
func (f *force) wireFigures(id model.WireID) []row {
	l := f.network.WireLink(id)
	if l == nil {
		return nil
	}
	flow := f.shown.Wires[string(id)]
	rows := []row{{name: inState, value: flow.Energy.String(), about: "what the wire is joined to in " + f.state}}
	if flow.Carries() {
		rows = append(rows,
			row{name: "current", value: live.Amperes(math.Abs(flow.Amps)), about: "through the wire in " + f.state},
			row{name: "toward", value: f.toward(l, flow.Amps), about: "the way that the current goes"})
		r, err := f.bench.Amps(id)
		rows = append(rows, f.spread(r, err, live.Amperes)...)
	}
	if volts, ok := f.solution.Voltage(l.A, l.B); ok {
		rows = append(rows, row{name: "drop", value: live.Volts(math.Abs(volts)), about: "along the wire with its joints, in " + f.state})
	}
	for _, end := range []struct {
		name string
		at   network.Node
	}{{"at from", l.A}, {"at to", l.B}} {
		value, about := f.volts(end.at)
		rows = append(rows, row{name: end.name, value: value, about: about})
	}
	if _, assumed := f.network.WireOhms(l); assumed {
		rows = append(rows, row{name: "assumed", value: "gauge or length", about: "it is not recorded; a usual one stands for it in these figures"})
	}
	return rows
}

// toward names the end that a current in a wire goes to.
func (f *force) toward(l *network.Link, amps float64) string {
	if amps < 0 {
		return f.network.Point(l.A).String()
	}
	return f.network.Point(l.B).String()
}

// terminalFigures are the voltage of a terminal and what flows in its lugs.
func (f *force) terminalFigures(at model.TerminalRef) []row {
	node := f.network.Node(at)
	if node == network.None {
		return nil
	}
	value, about := f.volts(node)
	rows := append([]row{{name: inState, value: value, about: about}}, f.voltSpread(node)...)
	for _, l := range f.network.LinksAt(node) {
		if l.Kind != network.WireLink {
			continue
		}
		amps := f.solution.Current(l)
		if l.B == node {
			amps = -amps
		}
		way := "away"
		if amps < 0 {
			way = "here"
		}
		if value = "no current"; math.Abs(amps) >= live.Least {
			value = live.Amperes(math.Abs(amps)) + " " + way
		}
		rows = append(rows, row{name: "in " + string(l.Wire.ID), value: value, about: "current in that lug in " + f.state})
	}
	return rows
}

// looseFigures are the voltage of the loose end of a wire.
func (f *force) looseFigures(id model.WireID, side edit.Side) []row {
	l := f.network.WireLink(id)
	if l == nil {
		return nil
	}
	at := l.A
	if side == edit.To {
		at = l.B
	}
	value, about := f.volts(at)
	return []row{{name: inState, value: value, about: about}}
}

// partFigures are what a part does, its elements one by one, and the volts of its terminals.
func (f *force) partFigures(id model.PartID) []row {
	rows := []row{{name: inState, value: strings.ToLower(f.shown.Parts[string(id)].Word), about: "what the part does in " + f.state}}
	if rows[0].value == "" {
		rows[0].value = "-"
	}
	links := f.network.Links()
	for i := range links {
		if l := &links[i]; l.Part != nil && l.Part.ID == id && l.Element != nil && l.Kind != network.OutputLink && !l.Is(model.JoinElement) {
			rows = append(rows, f.elementRow(l))
		}
	}
	seen := map[network.Node]bool{}
	for i := range links {
		l := &links[i]
		for _, at := range []network.Node{l.A, l.B} {
			if p := f.network.Point(at); p.At.Part == id && !seen[at] {
				seen[at] = true
				value, about := f.volts(at)
				rows = append(rows, row{name: "at " + p.At.Name, value: value, about: about})
			}
		}
	}
	return rows
}

// elementRow is one element inside a part: on or off, current and volts.
func (f *force) elementRow(l *network.Link) row {
	var words []string
	if amps := math.Abs(f.solution.Current(l)); amps >= live.Least {
		words = append(words, live.Amperes(amps))
	}
	on := f.solution.On(l)
	switch l.Element.Is {
	case model.ContactElement, model.FuseElement:
		words = append(words, map[bool]string{true: "closed", false: "open"}[on])
	case model.CoilElement:
		words = append(words, map[bool]string{true: "pulled in", false: "released"}[on])
	case model.DiodeElement:
		words = append(words, map[bool]string{true: "conducts", false: "blocks"}[on])
	case model.LoadElement, model.ConverterElement, model.ChargerElement, model.SourceElement:
		words = append(words, map[bool]string{true: "on", false: "off"}[on])
	}
	if volts, ok := f.solution.Voltage(l.A, l.B); ok {
		words = append(words, live.Volts(volts))
	}
	value := strings.Join(words, ", ")
	return row{name: l.Element.ID, value: value, about: fmt.Sprintf("%s; %s between %s and %s, in %s", value, l.Element.Is, f.network.Point(l.A), f.network.Point(l.B), f.state)}
}

// figureWords are what the state in force says of a thing in one line; empty if none is,
// or it says nothing.
func (d *desk) figureWords(t thing) string {
	f, rows := d.inForce(), d.figureRows(t)
	if len(rows) == 0 {
		return ""
	}
	words := []string{rows[0].value}
	if f.err != nil {
		words[0] = rows[0].name + ": " + words[0]
	} else if l := f.network.WireLink(t.wire); t.kind == wireThing && l != nil {
		if amps := f.shown.Wires[string(t.wire)].Amps; amps != 0 {
			words = append(words, live.Amperes(math.Abs(amps))+" to "+f.toward(l, amps))
		}
		value, _ := f.volts(l.A)
		words = append(words, value)
	}
	return f.state + ": " + strings.Join(words, ", ")
}
