package circuit

import "slices"

// Node is a point of a circuit, numbered from zero.
type Node int32

// Element is a component of a circuit, numbered from zero in the order of building.
type Element int32

// None is no element.
const None Element = -1

// Circuit is a network of elements between nodes. The zero value is empty and ready.
type Circuit struct {
	nodes    int
	elements []element
}

// New is an empty circuit.
func New() *Circuit { return &Circuit{} }

// Grow makes room for so many more elements.
func (c *Circuit) Grow(elements int) { c.elements = slices.Grow(c.elements, elements) }

// Node adds a node.
func (c *Circuit) Node() Node {
	c.nodes++
	return Node(c.nodes - 1)
}

func (c *Circuit) add(e element) Element {
	c.elements = append(c.elements, e)
	return Element(len(c.elements) - 1)
}

// Resistor adds a resistance in ohms, which may be zero: a piece of metal. Zero ohms
// all around a loop are a [Singular] error.
func (c *Circuit) Resistor(a, b Node, ohms float64) Element {
	return c.add(element{kind: resistor, a: a, b: b, ohms: ohms})
}

// Source adds a voltage source with a resistance in series. It takes current as well
// as it gives it, as a battery does.
func (c *Circuit) Source(positive, negative Node, volts, ohms float64) Element {
	return c.add(element{kind: source, a: positive, b: negative, volts: volts, ohms: ohms})
}

// Current adds a source that drives a current from a to b through itself. It is an
// [Open] error if nothing else conducts from b back to a.
func (c *Circuit) Current(a, b Node, amperes float64) Element {
	return c.add(element{kind: current, a: a, b: b, amperes: amperes})
}

// Contact adds a contact that nothing moves: closed, with a resistance in ohms, or open.
func (c *Circuit) Contact(a, b Node, ohms float64, closed bool) Element {
	return c.add(element{kind: contact, a: a, b: b, ohms: ohms, restClosed: closed, coil: None})
}

// Coil adds a coil of a resistance in ohms, which moves the contacts that name it. It
// pulls in at a voltage across it of pullIn of either polarity and holds down to dropOut.
func (c *Circuit) Coil(a, b Node, ohms, pullIn, dropOut float64) Element {
	return c.add(element{kind: coil, a: a, b: b, ohms: ohms, pullIn: pullIn, dropOut: dropOut})
}

// CoilContact adds a contact that a coil moves from its rest.
func (c *Circuit) CoilContact(a, b Node, ohms float64, by Element, restClosed bool) Element {
	return c.add(element{kind: contact, a: a, b: b, ohms: ohms, coil: by, restClosed: restClosed})
}

// GateContact adds a contact that moves from its rest while a gate is on.
func (c *Circuit) GateContact(a, b Node, ohms float64, gate Gate, restClosed bool) Element {
	return c.add(element{kind: gated, a: a, b: b, ohms: ohms, gate: gate.held(), restClosed: restClosed})
}

// DiodeDrop is the forward voltage of a conducting silicon diode, and DiodeOhms its
// slope, so that diodes in parallel share. Both are our choice of round figures.
const (
	DiodeDrop = 0.7
	DiodeOhms = 1e-3
)

// Diode adds a silicon diode.
func (c *Circuit) Diode(anode, cathode Node) Element {
	return c.DropDiode(anode, cathode, DiodeDrop, DiodeOhms)
}

// DropDiode adds a diode of a forward voltage and, in ohms, the slope beyond it. It
// conducts nothing below that voltage. Slopes of zero all around a loop are a [Singular]
// error, as of two ideal diodes in parallel.
func (c *Circuit) DropDiode(anode, cathode Node, volts, ohms float64) Element {
	return c.add(element{kind: diode, a: anode, b: cathode, volts: volts, ohms: ohms})
}

// Load is what a load takes while the voltage across it is at least LeastVolts, first
// node positive, and its gate is on: a constant current, or if Amperes is zero a constant
// power. A load of constant power needs a LeastVolts above zero. What cannot feed it at
// that voltage is held at it and gives what it can; see [Solution.Starved].
type Load struct {
	Amperes    float64
	Watts      float64
	LeastVolts float64
	Gate       Gate
}

// LeakOhms is what a load or the input of a converter conducts besides, acting or not: as
// much as a digital voltmeter. It lets a load that is off hold its nodes at one voltage,
// as real ones do, instead of leaving one unknown. Our choice.
const LeakOhms = 10e6

// sagOhms is the slope of a starved load's voltage from its least one, as low as the
// resistance of a closed contact.
const sagOhms = 1e-3

// Load adds a load.
func (c *Circuit) Load(positive, negative Node, l Load) Element {
	return c.add(element{
		kind: load, a: positive, b: negative, amperes: l.Amperes, watts: l.Watts, volts: l.LeastVolts, gate: l.Gate.held(),
		ohms: sagOhms, output: None,
	})
}

// Supply is a source that gives current but takes none, such as a charger or the
// output of a converter. It holds its voltage up to Limit in amperes and gives Limit
// beyond that; a Limit of zero is no limit.
type Supply struct {
	Volts float64
	Ohms  float64
	Limit float64
}

// Supply adds a one-way source with a current limit.
func (c *Circuit) Supply(positive, negative Node, s Supply) Element {
	return c.add(element{kind: supply, a: positive, b: negative, volts: s.Volts, ohms: s.Ohms, limit: s.Limit, input: None})
}

// Converter turns the power at its input into a supply at its output. It works while the
// input has at least LeastVolts, above zero, and its gate is on. It takes the output
// power divided by Efficiency (above 0, at most 1) and IdleWatts on top.
type Converter struct {
	Output     Supply
	Efficiency float64
	IdleWatts  float64
	LeastVolts float64
	Gate       Gate
}

// Converter adds a converter, as one element for its input and one for its output.
// The two sides are apart unless the circuit joins them.
func (c *Circuit) Converter(inPositive, inNegative, outPositive, outNegative Node, v Converter) (input, output Element) {
	input = c.add(element{
		kind: load, a: inPositive, b: inNegative, watts: v.IdleWatts, volts: v.LeastVolts, gate: v.Gate.held(),
		ohms: sagOhms, efficiency: v.Efficiency, output: Element(len(c.elements) + 1),
	})
	output = c.Supply(outPositive, outNegative, v.Output)
	c.elements[output].input = input
	return input, output
}

// Gate is a condition on voltages: on while every node of Fed has its voltage against
// the node Against and no node of Blocked has. A voltage that is unknown counts as
// none. The zero Gate is always on.
type Gate struct {
	Fed     []Threshold
	Blocked []Threshold
	Against Node
}

// Threshold is a node and the voltage in volts from which it counts as fed.
type Threshold struct {
	At    Node
	Volts float64
}
