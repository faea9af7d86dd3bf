package circuit

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// BenchmarkSolve is a cart of 200 nodes with diodes, coils and loads.
func BenchmarkSolve(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	c := New()
	for range 200 {
		c.Node()
	}
	c.Source(0, 1, 51.2, 0.01)
	for i := 2; i < 200; i++ {
		c.Resistor(Node(i), Node(r.IntN(i)), 1e-3)
	}
	for range 40 {
		c.Resistor(Node(r.IntN(200)), Node(r.IntN(200)), 10)
		c.Diode(Node(r.IntN(200)), Node(r.IntN(200)))
	}
	for range 10 {
		by := c.Coil(0, 1, 100, 30, 10)
		c.CoilContact(Node(r.IntN(200)), Node(r.IntN(200)), 1, by, false)
		c.Load(0, 1, Load{Watts: 100, LeastVolts: 20})
	}
	for b.Loop() {
		if _, err := c.Solve(); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCart solves what a cart of some wires looks like: a pack, a trunk, consumers
// behind wires on a common return, contactors, diodes and a converter.
func BenchmarkCart(b *testing.B) {
	for _, wires := range []int{60, 200, 500, 2000} {
		c := cartLike(wires)
		b.Run(fmt.Sprint(wires), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkResistive solves a cart-like network of resistances alone, and
// BenchmarkGonum the node equations of the same network: to be compared in one run.
func BenchmarkResistive(b *testing.B) {
	for _, nodes := range benchNodes {
		c := resistive(nodes)
		b.Run(fmt.Sprint(nodes), func(b *testing.B) {
			for b.Loop() {
				if _, err := c.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkGonum(b *testing.B) {
	for _, nodes := range benchNodes {
		g, rhs := nodalEquations(resistive(nodes))
		b.Run(fmt.Sprint(nodes), func(b *testing.B) {
			for b.Loop() {
				var v mat.VecDense
				if err := v.SolveVec(g, rhs); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

var benchNodes = []int{60, 200, 500}

// resistive is a tree of wires with a resistance across for every sixth node.
func resistive(nodes int) *Circuit {
	r := rand.New(rand.NewPCG(1, uint64(nodes)))
	c := New()
	for range nodes {
		c.Node()
	}
	c.Source(0, 1, 51.2, 0.01)
	for i := 2; i < nodes; i++ {
		c.Resistor(Node(i), Node(max(0, i-1-r.IntN(6))), 1e-2)
	}
	for range nodes / 6 {
		c.Resistor(Node(r.IntN(nodes)), Node(r.IntN(nodes)), 10)
	}
	return c
}

// cartLike is a cart of about so many wires of which every sixth feeds a consumer.
func cartLike(wires int) *Circuit {
	c := New()
	minus, plus := c.Node(), c.Node()
	c.Source(plus, minus, 51.2, 0.01)
	trunk := plus
	wire := func(from Node) Node {
		to := c.Node()
		c.Resistor(from, to, 2e-3)
		return to
	}
	for i := 0; i < wires/6; i++ {
		if i%12 == 11 {
			trunk = wire(trunk)
		}
		fed, back := wire(wire(wire(trunk))), wire(wire(minus))
		switch i % 10 {
		case 0:
			c.Load(fed, back, Load{Watts: 20, LeastVolts: 20})
		case 1:
			c.Load(fed, back, Load{Amperes: 1, LeastVolts: 20})
		case 2:
			c.Diode(fed, wire(back))
		case 3:
			if i < 40 {
				k := c.Coil(fed, back, 100, 30, 10)
				c.Resistor(back, c.Node(), 1)
				on := c.Node()
				c.CoilContact(trunk, on, 1e-3, k, false)
				c.Resistor(on, minus, 5)
				continue
			}
			c.Resistor(fed, back, 60)
		default:
			c.Resistor(fed, back, 40)
		}
	}
	out := c.Node()
	c.Converter(trunk, minus, out, minus, Converter{Output: Supply{Volts: 13, Ohms: 0.01, Limit: 20}, Efficiency: 0.9, IdleWatts: 1, LeastVolts: 30})
	c.Resistor(out, minus, 2)
	return c
}

// The networks that are timed are solved rightly, too.
func TestTimedNetworks(t *testing.T) {
	for _, wires := range []int{60, 200, 500, 2000} {
		solve(t, cartLike(wires))
	}
	for _, nodes := range benchNodes {
		c := resistive(nodes)
		want, s := nodal(c), solve(t, c)
		for i := range c.nodes {
			v, _ := s.Voltage(Node(i), 0)
			require.InDelta(t, want[i], v, 1e-6)
		}
	}
}
