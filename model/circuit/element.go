package circuit

import "math"

type kind uint8

const (
	resistor kind = iota
	source
	current
	contact // moved by a coil, or not at all
	gated   // contact moved by a gate
	coil
	diode
	load
	supply
)

// element holds the figures of every kind; those that a kind has no use for are zero.
type element struct {
	kind       kind
	restClosed bool
	a, b       Node
	coil       Element // that moves a contact
	output     Element // supply behind the input of a converter
	input      Element // load before the output of a converter
	ohms       float64
	volts      float64 // from b to a, the drop of a diode, or that from which a load acts
	amperes    float64
	watts      float64
	limit      float64
	pullIn     float64
	dropOut    float64
	efficiency float64 // of a converter, at its input
	gate       *Gate   // nil if it is always on
}

// fixed reports whether an element conducts whatever happens.
func (e *element) fixed() bool {
	return e.kind == resistor || e.kind == source || e.kind == coil || e.kind == contact && e.coil == None && e.restClosed
}

// switches reports whether an element conducts at times.
func (e *element) switches() bool {
	switch e.kind {
	case gated, diode, load, supply:
		return true
	}
	return e.kind == contact && e.coil != None
}

// injects reports whether an element can be a current that is known.
func (e *element) injects() bool { return e.kind == current || e.kind == supply || e.kind == load }

// check says what is wrong with an element's figures; empty if nothing is.
func (e *element) check(nodes, elements int) string {
	for _, x := range [...]float64{e.ohms, e.volts, e.amperes, e.watts, e.limit, e.pullIn, e.dropOut, e.efficiency} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return "has a figure that is not finite"
		}
	}
	if !e.touches(nodes) {
		return "is on a node that does not exist"
	}
	switch {
	case e.ohms < 0:
		return "has a negative resistance"
	case e.kind == load && (e.amperes < 0 || e.watts < 0 || e.volts < 0):
		return "has a negative figure"
	case e.kind == load && e.amperes == 0 && (e.watts > 0 || e.output > 0) && e.volts == 0:
		return "takes constant power and needs a least voltage above zero"
	case e.kind == load && e.output > 0 && !(e.efficiency > 0 && e.efficiency <= 1):
		return "needs an efficiency above 0 and at most 1"
	case e.kind == diode && e.volts < 0:
		return "has a negative forward voltage"
	case e.kind == supply && e.limit < 0:
		return "has a negative current limit"
	case e.kind == coil && (e.dropOut < 0 || e.pullIn < e.dropOut):
		return "needs a pull-in voltage that is not below its drop-out voltage"
	case e.kind == contact && e.coil != None && (e.coil < 0 || int(e.coil) >= elements):
		return "is moved by a coil that does not exist"
	}
	return ""
}

// touches reports whether the nodes that an element is on or looks at are among so many.
func (e *element) touches(nodes int) bool {
	within := func(n Node) bool { return n >= 0 && int(n) < nodes }
	if !within(e.a) || !within(e.b) {
		return false
	}
	if e.gate == nil {
		return true
	}
	if !within(e.gate.Against) {
		return false
	}
	for _, list := range [...][]Threshold{e.gate.Fed, e.gate.Blocked} {
		for _, t := range list {
			if !within(t.At) {
				return false
			}
		}
	}
	return true
}

// check looks through the whole circuit.
func (c *Circuit) check() error {
	for i := range c.elements {
		e := &c.elements[i]
		why := e.check(c.nodes, len(c.elements))
		if why == "" && e.kind == contact && e.coil != None && c.elements[e.coil].kind != coil {
			why = "is moved by an element that is not a coil"
		}
		if why != "" {
			return &Invalid{Element: Element(i), Why: why}
		}
	}
	return nil
}
