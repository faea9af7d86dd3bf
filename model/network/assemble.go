package network

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/circuit"
	"example.com/lugbook/model/state"
)

// Figures that stand for what neither the part nor the library states. Typical, from
// memory.
const (
	assumedSourceOhms  = 10e-3
	assumedContactOhms = 1e-3
	assumedFuseOhms    = 1e-3
	assumedCoilOhms    = 100
	assumedSupplyOhms  = 10e-3 // of chargers and converter outputs
	assumedEfficiency  = 0.9
	assumedPullIn      = 0.7 // share of a coil's nominal voltage
	assumedDropOut     = 0.2 // share of a coil's pull-in voltage
	assumedLeast       = 1   // volts from which electronics act
)

// Figures by the names that the parts library gives them, where no element names them.
const (
	dropOutRating    = "drop-out-voltage"
	leastRating      = "min-input-voltage"
	efficiencyRating = "efficiency"
)

// assembler puts the links of a network into a circuit.
type assembler struct {
	n        *Network
	state    state.State
	c        *circuit.Circuit
	elements []circuit.Element
	bridges  []circuit.Element
	coils    map[coilID]circuit.Element
	changes  map[int]*Change // by link
	dead     bool
	held     *Solution
	celsius  float64
	sound    bool
}

type coilID struct {
	part model.PartID
	id   string
}

// coilsFirst adds the coils, so that contacts can name them.
func (b *assembler) coilsFirst() {
	for i := range b.n.links {
		l := &b.n.links[i]
		b.elements[i] = circuit.None
		change := b.change(l)
		if !l.Is(model.CoilElement) || change.Open {
			continue
		}
		ohms := change.ohms(b.figure(l, l.Element.Ohms, assumedCoilOhms))
		if b.held != nil {
			b.elements[i] = b.c.Resistor(circuit.Node(l.A), circuit.Node(l.B), ohms)
			continue
		}
		pullIn := b.figure(l, l.Element.PullIn, assumedPullIn*b.figure(l, l.Element.Volts, assumedLeast))
		dropOut := min(pullIn, b.figure(l, dropOutRating, assumedDropOut*pullIn))
		e := b.c.Coil(circuit.Node(l.A), circuit.Node(l.B), ohms, pullIn, dropOut)
		b.elements[i] = e
		b.coils[coilID{l.Part.ID, l.Element.ID}] = e
	}
}

// add puts one link into the circuit.
func (b *assembler) add(i int) {
	l := &b.n.links[i]
	change := b.change(l)
	if change.Open || change.Dead {
		return
	}
	x, y := change.ends(l)
	switch l.Kind {
	case Kind(model.CoilElement), OutputLink:
		return
	case WireLink:
		ohms, _ := b.n.wireOhms(l, b.celsius, b.sound)
		b.elements[i] = b.c.Resistor(x, y, change.ohms(ohms))
		return
	}
	switch l.Element.Is {
	case model.ContactElement:
		b.elements[i] = b.contact(l)
	case model.ResistanceElement, model.JoinElement:
		if ohms, ok := b.n.Figure(l.Part, l.Element.Ohms); ok || l.Is(model.JoinElement) {
			b.elements[i] = b.c.Resistor(x, y, change.ohms(ohms))
		}
	case model.FuseElement:
		b.elements[i] = b.c.Contact(x, y, change.ohms(b.figure(l, l.Element.Ohms, assumedFuseOhms)), change.Closed || b.inPosition(l))
	case model.DiodeElement:
		b.elements[i] = b.c.Diode(x, y)
	default:
		if b.inPosition(l) && !(b.dead && l.gives()) {
			b.elements[i] = b.active(i, l)
		}
	}
}

// active adds what gives or takes power.
func (b *assembler) active(i int, l *Link) circuit.Element {
	change := b.change(l)
	x, y := change.ends(l)
	switch l.Element.Is {
	case model.SourceElement:
		if volts, ok := b.n.Figure(l.Part, l.Element.Volts); ok {
			ohms := assumedSourceOhms
			if inside := b.n.SourceOhms(l); inside.OK {
				ohms = inside.Value
			}
			return b.c.Source(x, y, change.scaled(volts), max(leastOhms, ohms+change.AddOhms))
		}
	case model.ChargerElement:
		if volts, ok := b.n.Figure(l.Part, l.Element.Volts); ok {
			return b.c.Supply(x, y, circuit.Supply{Volts: change.scaled(volts), Ohms: assumedSupplyOhms, Limit: b.figure(l, l.Element.Amps, 0)})
		}
	case model.LoadElement:
		return b.load(l)
	case model.ConverterElement:
		return b.converter(i, l)
	}
	return circuit.None
}

// load adds a load. One of known voltage and current counts as the resistance that draws
// that current: right at its own voltage, and it lets a source that is overloaded
// sag instead of finding no rest. Others take their current or power from the least
// voltage they work at.
func (b *assembler) load(l *Link) circuit.Element {
	if b.held != nil {
		return circuit.None
	}
	x, y := circuit.Node(l.A), circuit.Node(l.B)
	change := b.change(l)
	if ohms, ok := b.loadOhms(l); ok && len(l.Element.Fed)+len(l.Element.Blocked) == 0 {
		return b.c.Resistor(x, y, max(leastOhms, ohms/change.scaled(1)))
	}
	load := circuit.Load{
		Amperes: change.scaled(b.figure(l, l.Element.Amps, 0)), Watts: change.scaled(b.figure(l, l.Element.Watts, 0)),
		LeastVolts: b.figure(l, leastRating, assumedLeast), Gate: b.gate(l),
	}
	if load.Amperes == 0 && load.Watts == 0 {
		return circuit.None
	}
	return b.c.Load(x, y, load)
}

func (b *assembler) loadOhms(l *Link) (float64, bool) {
	if ohms, ok := b.n.Figure(l.Part, l.Element.Ohms); ok && ohms > 0 {
		return ohms, true
	}
	volts, rated := b.n.Figure(l.Part, l.Element.Volts)
	amps, drawn := b.n.Figure(l.Part, l.Element.Amps)
	return volts / amps, rated && drawn && amps > 0 && volts > 0
}

// converter adds both sides of a converter; the output follows the input in the links.
func (b *assembler) converter(i int, l *Link) circuit.Element {
	if i+1 >= len(b.n.links) || b.n.links[i+1].Kind != OutputLink {
		return circuit.None
	}
	change := b.change(l)
	plus, minus := change.ends(&b.n.links[i+1])
	if b.held != nil {
		if b.held.On(&b.n.links[i+1]) {
			b.elements[i+1] = b.c.Supply(plus, minus, b.output(l, change))
		}
		return circuit.None
	}
	input, output := b.c.Converter(circuit.Node(l.A), circuit.Node(l.B), plus, minus, circuit.Converter{
		Output:     b.output(l, change),
		Efficiency: b.figure(l, efficiencyRating, assumedEfficiency),
		LeastVolts: b.figure(l, leastRating, assumedLeast),
		Gate:       b.gate(l),
	})
	b.elements[i+1] = output
	return input
}

// output is the output side of a converter.
func (b *assembler) output(l *Link, change Change) circuit.Supply {
	return circuit.Supply{
		Volts: change.scaled(b.figure(l, l.Element.OutVolts, 0)), Ohms: assumedSupplyOhms, Limit: b.figure(l, l.Element.Amps, 0),
	}
}

func (b *assembler) contact(l *Link) circuit.Element {
	x, y, e := circuit.Node(l.A), circuit.Node(l.B), l.Element
	change := b.change(l)
	ohms := change.ohms(b.figure(l, e.Ohms, assumedContactOhms))
	rest := e.Rest == model.RestClosed
	if change.Closed || b.held != nil {
		return b.c.Contact(x, y, ohms, change.Closed || b.held.On(l))
	}
	switch coil, driven := b.coils[coilID{l.Part.ID, e.Coil}]; {
	case driven:
		return b.c.CoilContact(x, y, ohms, coil, rest)
	case len(e.ClosedIn) > 0 && !b.inPosition(l):
		return b.c.Contact(x, y, ohms, false)
	case len(e.Fed)+len(e.Blocked) > 0:
		return b.c.GateContact(x, y, ohms, b.gate(l), rest)
	}
	return b.c.Contact(x, y, ohms, rest || len(e.ClosedIn) > 0)
}

// inPosition reports whether an element is in circuit by its part's own control. One
// that no position is said for always is.
func (b *assembler) inPosition(l *Link) bool {
	if len(l.Element.ClosedIn) == 0 {
		return true
	}
	return l.Def.Control != nil && slices.Contains(l.Element.ClosedIn, b.state.Of(l.Def.Control))
}

func (b *assembler) gate(l *Link) circuit.Gate {
	e := l.Element
	if len(e.Fed)+len(e.Blocked) == 0 {
		return circuit.Gate{}
	}
	node := func(name string) circuit.Node {
		if at := b.n.Node(model.TerminalRef{Part: l.Part.ID, Name: name}); at != None {
			return circuit.Node(at)
		}
		return circuit.Node(l.B)
	}
	volts := b.figure(l, e.PullIn, assumedLeast)
	thresholds := func(names []string) []circuit.Threshold {
		var list []circuit.Threshold
		for _, name := range names {
			list = append(list, circuit.Threshold{At: node(name), Volts: volts})
		}
		return list
	}
	g := circuit.Gate{Fed: thresholds(e.Fed), Blocked: thresholds(e.Blocked), Against: circuit.Node(l.B)}
	if e.Against != "" {
		g.Against = node(e.Against)
	}
	return g
}

func (b *assembler) figure(l *Link, rating string, otherwise float64) float64 {
	if v, ok := b.n.Figure(l.Part, rating); ok {
		return v
	}
	return otherwise
}
