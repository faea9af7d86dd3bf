package meter

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Point is a test point: where a technician puts the probes.
type Point struct {
	Red, Black model.TerminalRef
	Across     bool   // the probes are on the two terminals of one part; else black is on the pack's negative
	Means      string // what it tells, in words
}

// Name is the red terminal, or both where the reading is across a part.
func (p Point) Name() string {
	if p.Across {
		return p.Red.String() + " to " + p.Black.String()
	}
	return p.Red.String()
}

// Points derives the test points of a sheet from the kinds of its parts: the poles of the
// pack, the contactors, the switches of the control circuit, the inputs and studs of the
// controller, converters, chargers and signals. Points that no wire reaches are left out.
// There are none on a sheet without a battery.
func Points(n *network.Network) []Point {
	low, high, ok := n.Poles()
	if !ok {
		return nil
	}
	p := pointer{n: n, low: n.Point(low).At, seen: map[[2]model.TerminalRef]bool{}, landed: map[model.TerminalRef]bool{}}
	for i := range n.Sheet.Wires {
		for _, e := range n.Sheet.Wires[i].Ends() {
			p.landed[e.At] = true
		}
	}
	p.add(Point{Red: n.Point(high).At, Black: p.low, Across: true, Means: "the pack"})
	for _, of := range []func(*model.Part, *model.Definition){p.contactor, p.switches, p.drive, p.supply, p.signal} {
		for i := range n.Sheet.Parts {
			part := &n.Sheet.Parts[i]
			if d := n.Cat.Definition(part.Kind); d != nil {
				of(part, d)
			}
		}
	}
	return p.list
}

// pointer gathers test points.
type pointer struct {
	n      *network.Network
	low    model.TerminalRef
	landed map[model.TerminalRef]bool
	seen   map[[2]model.TerminalRef]bool
	list   []Point
}

func (p *pointer) add(at Point) {
	pair := [2]model.TerminalRef{at.Red, at.Black}
	if p.seen[pair] || at.Red == at.Black || !p.landed[at.Red] || at.Across && !p.landed[at.Black] {
		return
	}
	p.seen[pair] = true
	p.list = append(p.list, at)
}

// one adds a terminal against the pack's negative.
func (p *pointer) one(part *model.Part, d *model.Definition, terminal string) {
	t := d.Terminal(terminal)
	if t == nil {
		return
	}
	p.add(Point{Red: model.TerminalRef{Part: part.ID, Name: terminal}, Black: p.low, Means: t.Means})
}

// across adds a reading over two terminals of a part.
func (p *pointer) across(part *model.Part, between []string, means string) {
	if len(between) == 2 {
		p.add(Point{Red: model.TerminalRef{Part: part.ID, Name: between[0]}, Black: model.TerminalRef{Part: part.ID, Name: between[1]}, Across: true, Means: means})
	}
}

// contactor adds both sides of what a coil moves, and its coil.
func (p *pointer) contactor(part *model.Part, d *model.Definition) {
	for i := range d.Elements {
		e := &d.Elements[i]
		if e.Is != model.ContactElement || e.Coil == "" {
			continue
		}
		for _, t := range e.Between {
			p.one(part, d, t)
		}
		p.across(part, e.Between, "over the contacts")
	}
	for i := range d.Elements {
		if e := &d.Elements[i]; e.Is == model.CoilElement {
			for _, t := range e.Between {
				p.one(part, d, t)
			}
			p.across(part, e.Between, "over the coil")
		}
	}
}

// switches adds the contacts of the control circuit that a person or the plug moves.
func (p *pointer) switches(part *model.Part, d *model.Definition) {
	if d.Control == nil {
		return
	}
	for i := range d.Elements {
		e := &d.Elements[i]
		if e.Is != model.ContactElement || len(e.ClosedIn) == 0 || !allServe(d, e.Between, model.Controls) {
			continue
		}
		for _, t := range e.Between {
			p.one(part, d, t)
		}
	}
}

func allServe(d *model.Definition, terminals []string, s model.Service) bool {
	return !slices.ContainsFunc(terminals, func(name string) bool {
		t := d.Terminal(name)
		return t == nil || t.Serves != s
	})
}

// drive adds the studs of a controller and the pins that tell it to drive, and what it
// gives to the motor.
func (p *pointer) drive(part *model.Part, d *model.Definition) {
	if d.Family != model.Drive {
		return
	}
	var pins []string
	for i := range d.Elements {
		e := &d.Elements[i]
		pins = append(pins, e.Fed...)
		pins = append(pins, e.Blocked...)
		if e.Is == model.LoadElement || e.Is == model.ContactElement && len(e.Fed) > 0 {
			pins = append(pins, e.Between...)
		}
	}
	for _, t := range d.Terminals {
		if slices.Contains(pins, t.Name) {
			p.one(part, d, t.Name)
		}
	}
	plus := positiveStud(d)
	for i := range d.Elements {
		if e := &d.Elements[i]; e.Is == model.LoadElement && plus != "" && allServe(d, e.Between, model.Traction) && e.Between[0] != plus {
			p.across(part, []string{plus, e.Between[0]}, "what the motor gets")
		}
	}
}

// positiveStud is the positive traction stud of a controller; empty if it has none.
func positiveStud(d *model.Definition) string {
	for _, t := range d.Terminals {
		if t.Pole == model.Positive && t.Serves == model.Traction {
			return t.Name
		}
	}
	return ""
}

// supply adds converters and chargers: what they get, what wakes them, what they give.
func (p *pointer) supply(part *model.Part, d *model.Definition) {
	if d.Family == model.Drive {
		return
	}
	for i := range d.Elements {
		switch e := &d.Elements[i]; e.Is {
		case model.ConverterElement:
			p.across(part, e.Between, "what it gets")
			for _, t := range e.Fed {
				p.one(part, d, t)
			}
			p.across(part, e.Out, "what it gives")
		case model.ChargerElement:
			p.across(part, e.Between, "output of the charger")
		}
	}
}

// signal adds the buzzers and lamps of the control circuit.
func (p *pointer) signal(part *model.Part, d *model.Definition) {
	if d.Family != model.Loads {
		return
	}
	for i := range d.Elements {
		if e := &d.Elements[i]; e.Is == model.LoadElement && allServe(d, e.Between, model.Controls) {
			p.across(part, e.Between, d.Title)
		}
	}
}
