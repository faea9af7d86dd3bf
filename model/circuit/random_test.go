package circuit

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

func nan() float64 { return math.NaN() }

// drawOhms gives resistances from joints to insulation.
func drawOhms(t *rapid.T, from, to float64) float64 {
	return math.Pow(10, rapid.Float64Range(from, to).Draw(t, "log ohms"))
}

// drawLinear builds a random circuit of resistors, sources and current sources.
func drawLinear(t *rapid.T, from, to float64) *Circuit {
	c := New()
	n := rapid.IntRange(2, 25).Draw(t, "nodes")
	for range n {
		c.Node()
	}
	node := rapid.Custom(func(t *rapid.T) Node { return Node(rapid.IntRange(0, n-1).Draw(t, "node")) })
	for i := 1; i < n; i++ {
		c.Resistor(Node(i), Node(rapid.IntRange(0, i-1).Draw(t, "to")), drawOhms(t, from, to))
	}
	for range rapid.IntRange(0, 30).Draw(t, "more") {
		a, b := node.Draw(t, "a"), node.Draw(t, "b")
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			c.Source(a, b, rapid.Float64Range(-100, 100).Draw(t, "volts"), drawOhms(t, from, to))
		case 1:
			c.Current(a, b, rapid.Float64Range(-400, 400).Draw(t, "amperes"))
		default:
			c.Resistor(a, b, drawOhms(t, from, to))
		}
	}
	return c
}

func TestLawsHoldOverTwelveDecadesOfResistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawLinear(t, -6, 6)
		s, err := c.Solve()
		require.NoError(t, err)
		checkLaws(t, c, s)
		for i, e := range c.elements {
			if e.kind != current {
				v, ok := s.Voltage(e.a, e.b)
				require.True(t, ok)
				amperes := s.Current(Element(i))
				require.InDelta(t, e.volts+e.ohms*amperes, v, 1e-9*(1+largest(s.volts)), "element %d", i)
			}
		}
	})
}

// The oracle states the problem the other way: node voltages from conductances, solved
// by gonum's LU. It is sound over a narrower range of resistances. 500 networks.
func TestAgainstNodalAnalysis(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for range 500 {
		c := randomLinear(r, 2+r.IntN(60), r.IntN(80))
		s, err := c.Solve()
		require.NoError(t, err)
		want := nodal(c)
		for i := range c.nodes {
			v, _ := s.Voltage(Node(i), 0)
			require.InDelta(t, want[i], v, 1e-9*(1+largest(want)), "node %d", i)
		}
	}
}

// randomLinear is a joined network of resistors, sources and current sources.
func randomLinear(r *rand.Rand, nodes, more int) *Circuit {
	c := New()
	for range nodes {
		c.Node()
	}
	ohms := func() float64 { return math.Pow(10, 4*r.Float64()-2) }
	for i := 1; i < nodes; i++ {
		c.Resistor(Node(i), Node(r.IntN(i)), ohms())
	}
	for range more {
		a, b := Node(r.IntN(nodes)), Node(r.IntN(nodes))
		switch r.IntN(4) {
		case 0:
			c.Source(a, b, 200*r.Float64()-100, ohms())
		case 1:
			c.Current(a, b, 800*r.Float64()-400)
		default:
			c.Resistor(a, b, ohms())
		}
	}
	return c
}

// nodal solves for all node voltages against node 0, which everything is joined to.
func nodal(c *Circuit) []float64 {
	g, rhs := nodalEquations(c)
	var v mat.VecDense
	if err := v.SolveVec(g, rhs); err != nil {
		panic(fmt.Sprint("the oracle failed: ", err))
	}
	return append([]float64{0}, v.RawVector().Data...)
}

// nodalEquations are the conductances of all nodes but node 0, and the currents into them.
func nodalEquations(c *Circuit) (mat.Matrix, mat.Vector) {
	n := c.nodes
	g := mat.NewDense(n, n, nil)
	rhs := mat.NewVecDense(n, nil)
	add := func(i, j Node, x float64) { g.Set(int(i), int(j), g.At(int(i), int(j))+x) }
	for _, e := range c.elements {
		inject := e.amperes
		if e.kind != current {
			y := 1 / e.ohms
			add(e.a, e.a, y)
			add(e.b, e.b, y)
			add(e.a, e.b, -y)
			add(e.b, e.a, -y)
			inject = -e.volts * y
		}
		rhs.SetVec(int(e.a), rhs.AtVec(int(e.a))-inject)
		rhs.SetVec(int(e.b), rhs.AtVec(int(e.b))+inject)
	}
	return g.Slice(1, n, 1, n), rhs.SliceVec(1, n)
}

func TestCholeskyAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 15).Draw(t, "n")
		root := mat.NewDense(n, n, nil)
		for i := range n {
			for j := range n {
				root.Set(i, j, rapid.Float64Range(-1, 1).Draw(t, "x"))
			}
			root.Set(i, i, root.At(i, i)+3)
		}
		var square mat.SymDense
		square.SymOuterK(1, root)
		a, b := make([]float64, n*n), make([]float64, n)
		for i := range n {
			b[i] = rapid.Float64Range(-10, 10).Draw(t, "b")
			for j := range n {
				a[i*n+j] = square.At(i, j)
			}
		}
		var oracle mat.Cholesky
		require.True(t, oracle.Factorize(&square))
		var want mat.VecDense
		require.NoError(t, oracle.SolveVecTo(&want, mat.NewVecDense(n, append([]float64(nil), b...))))
		var factor cholesky
		copy(factor.room(n), a)
		require.Equal(t, -1, factor.factorise())
		got := b
		factor.solve(got)
		for i := range n {
			require.InDelta(t, want.AtVec(i), got[i], 1e-8*(1+largest(got)))
		}
	})
}

func TestCholeskyNamesTheBadRow(t *testing.T) {
	var factor cholesky
	copy(factor.room(2), []float64{1, 0, 1, 1})
	require.Equal(t, 1, factor.factorise())
	factor.room(1)
	require.Equal(t, 0, factor.factorise())
}

// Circuits of everything: whatever the outcome, it is a lawful solution or a typed error.
func TestEverythingEndsLawfully(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawAnything(t)
		s, err := c.Solve()
		if err != nil {
			var chatter *Chatter
			require.ErrorAs(t, err, &chatter)
			require.NotEmpty(t, chatter.Elements)
			return
		}
		checkLaws(t, c, s)
		for i := range c.elements {
			checkElement(t, c, s, Element(i))
		}
	})
}

// checkElement holds an element's part of a solution against its own law.
func checkElement(t *rapid.T, c *Circuit, s *Solution, i Element) {
	e := &c.elements[i]
	stray := 1e-9 + 10*slack*largest(s.currents)
	amperes := s.Current(i)
	v, known := s.Voltage(e.a, e.b)
	switch e.kind {
	case resistor, source:
		require.True(t, known)
		require.InDelta(t, e.volts+e.ohms*amperes, v, 1e-9*(1+largest(s.volts)))
	case current:
		require.InDelta(t, e.amperes, amperes, stray)
	case diode:
		require.GreaterOrEqual(t, amperes, -stray)
		require.False(t, known && v > DiodeDrop+DiodeOhms*amperes+1e-6, "a diode holds no more than its drop")
	case supply:
		require.LessOrEqual(t, amperes, stray)
		require.True(t, e.limit == 0 || -amperes <= e.limit+stray)
	case coil:
		require.Equal(t, s.On(i), known && (math.Abs(v) >= e.pullIn || s.On(i) && math.Abs(v) >= e.dropOut))
	case load:
		checkLoad(t, c, s, i)
	}
}

// checkLoad: a load has what it asks for, or its voltage is too low, or it is starved and
// holds its least voltage or takes nothing.
func checkLoad(t *rapid.T, c *Circuit, s *Solution, i Element) {
	e := &c.elements[i]
	v, known := s.Voltage(e.a, e.b)
	require.True(t, known)
	leak := v / LeakOhms
	watts := e.watts
	if e.output > 0 && s.On(i) {
		watts += max(0, -s.Power(e.output)) / e.efficiency
	}
	switch near := 1e-7 * (1 + largest(s.volts)); {
	case s.On(i):
		require.False(t, s.Starved(i))
		require.GreaterOrEqual(t, v, e.volts-near)
		want := e.amperes
		if want == 0 {
			want = watts / v
		}
		require.InDelta(t, max(want, leak), s.Current(i), 1e-9*(1+largest(s.currents)))
	case !s.Starved(i):
		require.True(t, v < e.volts+near || !e.gate.always())
		require.InDelta(t, leak, s.Current(i), 1e-9)
	case e.output > 0:
		require.InDelta(t, leak, s.Current(i), 1e-9)
	default:
		held := s.Current(i) > leak+1e-9
		require.True(t, !held || math.Abs(v-e.volts) < near+sagOhms*s.Current(i), "%g V", v)
	}
}

func drawAnything(t *rapid.T) *Circuit {
	c := New()
	n := rapid.IntRange(2, 12).Draw(t, "nodes")
	for range n {
		c.Node()
	}
	node := rapid.Custom(func(t *rapid.T) Node { return Node(rapid.IntRange(0, n-1).Draw(t, "node")) })
	c.Source(0, 1, rapid.Float64Range(36, 88).Draw(t, "pack"), 0.01)
	for range rapid.IntRange(0, 25).Draw(t, "elements") {
		a, b, ohms := node.Draw(t, "a"), node.Draw(t, "b"), drawOhms(t, -4, 3)
		switch rapid.IntRange(0, 12).Draw(t, "kind") {
		case 0:
			c.Diode(a, b)
		case 1:
			by := c.Coil(a, b, 50+ohms, 30, 10)
			c.CoilContact(node.Draw(t, "c"), node.Draw(t, "d"), 1e-3, by, rapid.Bool().Draw(t, "rest"))
		case 2:
			c.Load(a, b, Load{Amperes: 3, LeastVolts: 20})
		case 3:
			c.Load(a, b, Load{Watts: 100, LeastVolts: 20})
		case 4:
			c.Supply(a, b, Supply{Volts: 58, Ohms: 0.01, Limit: rapid.SampledFrom([]float64{0, 20}).Draw(t, "limit")})
		case 5:
			gate := Gate{Fed: []Threshold{{node.Draw(t, "fed"), 20}}, Blocked: []Threshold{{node.Draw(t, "blocked"), 20}}, Against: 1}
			c.GateContact(a, b, 1e-3, gate, rapid.Bool().Draw(t, "rest"))
		case 6:
			c.Converter(a, b, node.Draw(t, "c"), node.Draw(t, "d"), Converter{
				Output: Supply{Volts: 13, Ohms: 0.01, Limit: 20}, Efficiency: 0.9, IdleWatts: 1, LeastVolts: 30,
			})
		case 7:
			c.Source(a, b, rapid.SampledFrom([]float64{0, 12, 48}).Draw(t, "volts"), ohms)
		case 8:
			c.Resistor(a, b, ohms)
			c.Current(a, b, rapid.Float64Range(-20, 20).Draw(t, "amperes"))
		case 9:
			gate := Gate{Fed: []Threshold{{node.Draw(t, "fed"), 20}}, Against: 1}
			c.Load(a, b, Load{Watts: 400, LeastVolts: 24, Gate: gate})
		default:
			c.Resistor(a, b, ohms)
		}
	}
	return c
}

// Without relays, gates and converters there is nothing that can chatter or race: diodes,
// supplies and loads always come to rest.
func TestWithoutRelaysAllComesToRest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawAnything(t)
		for i := range c.elements {
			if e := &c.elements[i]; e.moves() {
				*e = element{kind: resistor, a: e.a, b: e.b, ohms: 100, coil: None, output: None, input: None}
			} else if e.kind == contact || e.kind == supply {
				e.coil, e.input = None, None
			}
		}
		s, err := c.Solve()
		require.NoError(t, err)
		checkLaws(t, c, s)
	})
}
