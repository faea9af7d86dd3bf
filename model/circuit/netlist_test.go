package circuit

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// netlist is a circuit written as text, one element a line, so that tests read like the
// papers that they come from and the same words can be given to another program. Nodes have
// names. The elements are
//
//	NAME r a b OHMS               resistance
//	NAME v + - VOLTS OHMS         source
//	NAME i a b AMPERES            current from a to b through the source
//	NAME d anode cathode VOLTS OHMS
//	NAME l + - AMPERES LEAST      load of constant current
//	NAME p + - WATTS LEAST        load of constant power
//	NAME k + - OHMS PULLIN DROPOUT    coil
//	NAME no|nc a b OHMS COIL      contact of a coil
//	NAME c in+ in- out+ out- VOLTS OHMS EFFICIENCY IDLE LEAST
type netlist struct {
	t        testing.TB
	c        *Circuit
	rows     [][]string
	nodes    map[string]Node
	elements map[string]Element
}

func parse(t testing.TB, text string) *netlist {
	t.Helper()
	n := &netlist{t: t, c: New(), nodes: map[string]Node{}, elements: map[string]Element{}}
	for line := range strings.Lines(text) {
		if row := strings.Fields(line); len(row) > 0 {
			n.rows = append(n.rows, row)
			n.add(row)
		}
	}
	return n
}

func (n *netlist) node(name string) Node {
	if _, ok := n.nodes[name]; !ok {
		n.nodes[name] = n.c.Node()
	}
	return n.nodes[name]
}

// figure is a number with an optional unit prefix of one letter.
func (n *netlist) figure(text string) float64 {
	scale := 1.0
	for suffix, s := range map[string]float64{"u": 1e-6, "m": 1e-3, "k": 1e3, "M": 1e6} {
		if cut, ok := strings.CutSuffix(text, suffix); ok {
			text, scale = cut, s
		}
	}
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(n.t, err)
	return x * scale
}

func (n *netlist) add(row []string) {
	a, b := n.node(row[2]), n.node(row[3])
	f := func(i int) float64 { return n.figure(row[i]) }
	var e Element
	switch row[1] {
	case "r":
		e = n.c.Resistor(a, b, f(4))
	case "v":
		e = n.c.Source(a, b, f(4), f(5))
	case "i":
		e = n.c.Current(a, b, f(4))
	case "d":
		e = n.c.DropDiode(a, b, f(4), f(5))
	case "l":
		e = n.c.Load(a, b, Load{Amperes: f(4), LeastVolts: f(5)})
	case "p":
		e = n.c.Load(a, b, Load{Watts: f(4), LeastVolts: f(5)})
	case "k":
		e = n.c.Coil(a, b, f(4), f(5), f(6))
	case "no", "nc":
		e = n.c.CoilContact(a, b, f(4), n.elements[row[5]], row[1] == "nc")
	case "c":
		e, n.elements[row[0]+".out"] = n.c.Converter(a, b, n.node(row[4]), n.node(row[5]), Converter{
			Output: Supply{Volts: f(6), Ohms: f(7)}, Efficiency: f(8), IdleWatts: f(9), LeastVolts: f(10),
		})
	default:
		require.Fail(n.t, "no such element", row)
	}
	n.elements[row[0]] = e
}

func (n *netlist) solve() *Solution {
	n.t.Helper()
	s, err := n.c.Solve()
	require.NoError(n.t, err)
	checkLaws(n.t, n.c, s)
	return s
}

// read gives one figure of a solution: V(a) or V(a,b) in volts, I(NAME) in amperes from the first
// node to the second, O(NAME) for what comes out of the first, P(NAME) in watts, R(NAME)
// in ohms across it.
func (n *netlist) read(s *Solution, what string) float64 {
	n.t.Helper()
	kind, rest, ok := strings.Cut(strings.TrimSuffix(what, ")"), "(")
	require.True(n.t, ok, what)
	if kind == "V" {
		a, b, two := strings.Cut(rest, ",")
		if !two {
			b = "0"
		}
		require.Contains(n.t, n.nodes, a)
		require.Contains(n.t, n.nodes, b)
		v, known := s.Voltage(n.nodes[a], n.nodes[b])
		require.True(n.t, known, what)
		return v
	}
	require.Contains(n.t, n.elements, rest)
	e := n.elements[rest]
	switch kind {
	case "I":
		return s.Current(e)
	case "O":
		return -s.Current(e)
	case "P":
		return s.Power(e)
	}
	require.Equal(n.t, "R", kind)
	return s.across(e) / s.Current(e)
}

// printed is an answer as a source prints it; reading it, half a unit of its last digit is allowed.
func (n *netlist) printed(s *Solution, answers string) {
	n.t.Helper()
	for _, answer := range strings.Fields(answers) {
		what, text, ok := strings.Cut(answer, "=")
		require.True(n.t, ok, answer)
		scale, digits := 1.0, strings.TrimSuffix(text, "m")
		if digits != text {
			scale = 1e-3
		}
		want, err := strconv.ParseFloat(digits, 64)
		require.NoError(n.t, err)
		unit := 1.0
		if _, after, point := strings.Cut(digits, "."); point {
			unit, err = strconv.ParseFloat(fmt.Sprintf("1e-%d", len(after)), 64)
			require.NoError(n.t, err)
		}
		// A millionth of a unit is for halves that binary fractions round the other way.
		require.InDelta(n.t, want, n.read(s, what)/scale, 0.500001*unit, what)
	}
}
