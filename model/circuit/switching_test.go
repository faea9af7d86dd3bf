package circuit

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestIslandsDoNotKnowEachOther(t *testing.T) {
	c := New()
	a, b := c.Node(), c.Node()
	x, y := c.Node(), c.Node()
	alone := c.Node()
	c.Source(a, b, 48, 0.01)
	c.Source(x, y, 12, 0.01)
	gap := c.Contact(a, x, 1e-4, false)
	s := solve(t, c)
	require.Equal(t, []int{0, 0, 1, 1, 2}, []int{s.Island(a), s.Island(b), s.Island(x), s.Island(y), s.Island(alone)})
	require.InDelta(t, 48, volts(t, s, a, b), 1e-12)
	require.InDelta(t, -12, volts(t, s, y, x), 1e-12)
	_, ok := s.Voltage(a, x)
	require.False(t, ok, "no reference between them")
	require.False(t, s.On(gap))
	require.Zero(t, s.Current(gap))

	c.Contact(b, y, 1e-4, true)
	s = solve(t, c)
	require.InDelta(t, 36, volts(t, s, a, x), 1e-12, "one joint gives a reference and no current")
}

func TestDiode(t *testing.T) {
	build := func(volts float64) (*Solution, Element, Node, Node) {
		c := New()
		plus, after, minus := c.Node(), c.Node(), c.Node()
		c.Source(plus, minus, volts, 0)
		d := c.Diode(plus, after)
		c.Resistor(after, minus, 100)
		return solve(t, c), d, after, minus
	}
	s, d, after, minus := build(12.7)
	require.True(t, s.On(d))
	require.InDelta(t, 12, volts(t, s, after, minus), 2e-4)
	s, d, after, minus = build(-12)
	require.False(t, s.On(d))
	require.Zero(t, s.Current(d))
	require.Zero(t, volts(t, s, after, minus))
	s, d, _, _ = build(0.5)
	require.False(t, s.On(d), "below the forward drop")
}

// A load behind a diode comes on; behind the diode the wrong way round it gets nothing.
func TestLoadBehindADiode(t *testing.T) {
	for _, reversed := range []bool{false, true} {
		for _, l := range []Load{{Amperes: 3, LeastVolts: 20}, {Watts: 150, LeastVolts: 20}} {
			c := New()
			plus, fed, minus := c.Node(), c.Node(), c.Node()
			c.Source(plus, minus, 51.2, 0.01)
			d := Element(1)
			if reversed {
				c.Diode(fed, plus)
			} else {
				c.Diode(plus, fed)
			}
			e := c.Load(fed, minus, l)
			s := solve(t, c)
			require.Equal(t, !reversed, s.On(d))
			require.Equal(t, !reversed, s.On(e))
			if reversed {
				require.InDelta(t, 0, volts(t, s, fed, minus), 1e-6)
			} else {
				require.InDelta(t, 50.47, volts(t, s, fed, minus), 0.01)
			}
		}
	}
}

func TestDiodeOnAnOpenEndShowsTheSupply(t *testing.T) {
	c := New()
	plus, after, minus := c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 51.2, 0.01)
	c.Diode(plus, after)
	s := solve(t, c)
	require.InDelta(t, 50.5, volts(t, s, after, minus), 1e-9)
}

// Two packs feed one bus through diodes: the higher takes it alone.
func TestHigherSourceBlocksTheOther(t *testing.T) {
	c := New()
	high, low, bus, minus := c.Node(), c.Node(), c.Node(), c.Node()
	c.Source(high, minus, 52, 0.01)
	c.Source(low, minus, 50, 0.01)
	first, second := c.Diode(high, bus), c.Diode(low, bus)
	c.Resistor(bus, minus, 10)
	s := solve(t, c)
	require.True(t, s.On(first))
	require.False(t, s.On(second))
	require.InDelta(t, 51.3/10.011, s.Current(first), 1e-9)
}

// A full bridge: whatever the polarity of the source, the load sees it upright.
func TestBridgeOfDiodes(t *testing.T) {
	for _, emf := range []float64{48, -48} {
		c := New()
		x, y, plus, minus := c.Node(), c.Node(), c.Node(), c.Node()
		c.Source(x, y, emf, 0.01)
		c.Diode(x, plus)
		c.Diode(y, plus)
		c.Diode(minus, x)
		c.Diode(minus, y)
		r := c.Resistor(plus, minus, 20)
		s := solve(t, c)
		require.InDelta(t, 46.6/20.012, s.Current(r), 1e-9)
	}
}

// contactor is a pack whose key feeds a coil that closes the main contact to a load.
func contactor(key bool, pack float64) (*Circuit, Element, Element, Node, Node) {
	c := New()
	plus, fed, main, minus := c.Node(), c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, pack, 0.01)
	c.Contact(plus, fed, 0.05, key)
	coil := c.Coil(fed, minus, 100, 34, 12)
	contact := c.CoilContact(plus, main, 2e-4, coil, false)
	c.Load(main, minus, Load{Amperes: 250, LeastVolts: 30})
	return c, coil, contact, main, minus
}

func TestCoilClosesItsContact(t *testing.T) {
	c, coil, contact, main, minus := contactor(true, 51.2)
	s := solve(t, c)
	require.True(t, s.On(coil))
	require.True(t, s.On(contact))
	// 250 A through the load and what the coil takes, from 51.2 V behind 10 mohm.
	coilAmperes := (51.2 - 250*0.01) / 100.06
	require.InDelta(t, 51.2-(250+coilAmperes)*0.01-250*2e-4, volts(t, s, main, minus), 1e-9)

	c, coil, contact, main, minus = contactor(false, 51.2)
	s = solve(t, c)
	require.False(t, s.On(coil))
	require.False(t, s.On(contact))
	require.InDelta(t, 0, volts(t, s, main, minus), 1e-9, "a load that is off holds its nodes together")

	c, coil, _, _, _ = contactor(true, 33)
	require.False(t, solve(t, c).On(coil), "too low to pull in")
}

// The coil pulls in at 36 V; under load the pack sags below that, but not below drop-out.
func TestCoilHoldsDownToDropOut(t *testing.T) {
	c := New()
	plus, main, minus := c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 38, 0.04)
	coil := c.Coil(plus, minus, 100, 36, 15)
	c.CoilContact(plus, main, 2e-4, coil, false)
	c.Load(main, minus, Load{Amperes: 300, LeastVolts: 15})
	s := solve(t, c)
	require.True(t, s.On(coil))
	require.Less(t, volts(t, s, plus, minus), 36.0)
}

// A relay that breaks its own coil is a buzzer.
func TestBuzzerChatters(t *testing.T) {
	c := New()
	plus, fed, minus := c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 48, 0.1)
	coil := Element(2)
	contact := c.CoilContact(plus, fed, 0.01, coil, true)
	require.Equal(t, coil, c.Coil(fed, minus, 100, 30, 10))
	_, err := c.Solve()
	var chatter *Chatter
	require.ErrorAs(t, err, &chatter)
	require.Equal(t, []Element{coil}, chatter.Elements)
	require.EqualError(t, err, "the circuit comes to no rest: elements 2 keep switching")
	require.NotEqual(t, contact, coil)
}

// A load that would pull its supply below its least voltage is starved: it holds the
// supply there and takes what comes, without chatter. A converter gives up instead.
func TestOverloadStarves(t *testing.T) {
	for _, l := range []Load{{Watts: 30e3, LeastVolts: 30}, {Amperes: 600, LeastVolts: 30}} {
		c := New()
		plus, minus := c.Node(), c.Node()
		c.Source(plus, minus, 51.2, 0.05)
		e := c.Load(plus, minus, l)
		s := solve(t, c)
		require.True(t, s.Starved(e))
		require.False(t, s.On(e))
		require.InDelta(t, 30, volts(t, s, plus, minus), 0.5)
		require.InDelta(t, (51.2-volts(t, s, plus, minus))/0.05, s.Current(e), 1e-6)
	}
	c := New()
	plus, minus, out := c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 51.2, 50)
	in, output := c.Converter(plus, minus, out, minus, Converter{
		Output: Supply{Volts: 13, Ohms: 0.01, Limit: 20}, Efficiency: 0.9, LeastVolts: 36,
	})
	c.Resistor(out, minus, 1)
	s := solve(t, c)
	require.True(t, s.Starved(in))
	require.False(t, s.On(in))
	require.False(t, s.On(output))
	require.Zero(t, volts(t, s, out, minus))
	require.InDelta(t, 51.2, volts(t, s, plus, minus), 1e-3)
}

// A contactor whose coil returns through a contact that opens while the charger is in,
// with a resistor across its own contact: on charge with the key on and the pedal down, the controller
// gets what the resistor lets through. It starves; nothing chatters.
func TestLockedOutControllerStarvesBehindItsPreCharge(t *testing.T) {
	for _, charging := range []bool{false, true} {
		for _, l := range []Load{{Amperes: 250, LeastVolts: 30}, {Watts: 9000, LeastVolts: 30}} {
			c := New()
			plus, key, back, main, minus := c.Node(), c.Node(), c.Node(), c.Node(), c.Node()
			c.Source(plus, minus, 51.2, 0.01)
			c.Contact(plus, key, 0.05, true)
			if charging {
				c.Supply(plus, minus, Supply{Volts: 58, Ohms: 0.01, Limit: 20})
			}
			lockout := c.Coil(plus, minus, 500, 55, 10)
			c.Contact(plus, main, 2e-4, false)
			coil := c.Coil(key, back, 100, 34, 12)
			c.CoilContact(plus, main, 2e-4, coil, false)
			c.Contact(back, minus, 0.01, !charging)
			c.Resistor(plus, main, 250)
			l.Gate = Gate{Fed: []Threshold{{key, 20}, {main, 20}}, Against: minus}
			e := c.Load(main, minus, l)
			s := solve(t, c)
			require.False(t, s.On(lockout))
			require.Equal(t, !charging, s.On(coil))
			require.Equal(t, !charging, s.On(e))
			require.Equal(t, charging, s.Starved(e))
			if charging {
				require.InDelta(t, 30, volts(t, s, main, minus), 0.01)
				require.InDelta(t, (volts(t, s, plus, minus)-30)/250, s.Current(e), 1e-4)
			}
		}
	}
}

// A load whose gate it pulls down itself rests, starved; a relay that does so chatters.
func TestLoadThatCutsItselfOffStarves(t *testing.T) {
	c := New()
	plus, minus := c.Node(), c.Node()
	c.Source(plus, minus, 51.2, 1)
	e := c.Load(plus, minus, Load{Amperes: 30, LeastVolts: 5, Gate: Gate{Fed: []Threshold{{plus, 40}}, Against: minus}})
	s := solve(t, c)
	require.True(t, s.Starved(e))
	require.InDelta(t, 51.2, volts(t, s, plus, minus), 1e-4)
}

// Two relays, each fed through the other's resting contact: the faster wins, and nobody
// knows which that is. With a resistance that delays neither but keeps the second from
// ever pulling in, the first wins for certain.
func TestInterlockedRelaysRace(t *testing.T) {
	for _, even := range []bool{true, false} {
		c := New()
		plus, fed1, fed2, minus := c.Node(), c.Node(), c.Node(), c.Node()
		c.Source(plus, minus, 48, 0.1)
		first, second := Element(1), Element(2)
		require.Equal(t, first, c.Coil(fed1, minus, 100, 30, 10))
		require.Equal(t, second, c.Coil(fed2, minus, 100, 30, 10))
		c.CoilContact(plus, fed1, 0.01, second, true)
		if even {
			c.CoilContact(plus, fed2, 0.01, first, true)
			_, err := c.Solve()
			var race *Race
			require.ErrorAs(t, err, &race)
			require.Equal(t, []Element{first, second}, race.Elements)
			require.EqualError(t, err, "where the circuit comes to rest depends on which of elements 1, 2 is faster")
			var chatter *Chatter
			require.ErrorAs(t, err, &chatter)
			require.Equal(t, race.Elements, chatter.Elements)
			continue
		}
		c.CoilContact(plus, fed2, 100, first, true)
		s := solve(t, c)
		require.True(t, s.On(first))
		require.False(t, s.On(second))
	}
}

func TestGates(t *testing.T) {
	for _, row := range []struct {
		key, pedal, charge, want bool
	}{
		{true, true, false, true}, {true, false, false, false}, {false, true, false, false}, {true, true, true, false},
	} {
		c := New()
		plus, key, pedal, charge, out, minus := c.Node(), c.Node(), c.Node(), c.Node(), c.Node(), c.Node()
		c.Source(plus, minus, 48, 0.01)
		c.Contact(plus, key, 0.01, row.key)
		c.Contact(plus, pedal, 0.01, row.pedal)
		c.Contact(plus, charge, 0.01, row.charge)
		gate := Gate{Fed: []Threshold{{key, 20}, {pedal, 20}}, Blocked: []Threshold{{charge, 20}}, Against: minus}
		makes := c.GateContact(plus, out, 0.01, gate, false)
		breaks := c.GateContact(plus, out, 0.01, gate, true)
		l := c.Load(plus, minus, Load{Amperes: 1, Gate: gate})
		s := solve(t, c)
		require.Equal(t, row.want, s.On(makes))
		require.Equal(t, !row.want, s.On(breaks))
		require.Equal(t, row.want, s.On(l))
	}
}

// A charger in constant current, at its voltage, and not at all.
func TestSupply(t *testing.T) {
	for _, row := range []struct {
		pack, amperes float64
		on            bool
	}{
		{51.2, 20, true}, {58.3, 5, true}, {60, 0, false},
	} {
		c := New()
		plus, minus := c.Node(), c.Node()
		c.Source(plus, minus, row.pack, 0.01)
		charger := c.Supply(plus, minus, Supply{Volts: 58.4, Ohms: 0.01, Limit: 20})
		s := solve(t, c)
		require.InDelta(t, -row.amperes, s.Current(charger), 1e-9)
		require.Equal(t, row.on, s.On(charger))
	}
	c := New()
	plus, minus := c.Node(), c.Node()
	c.Supply(plus, minus, Supply{Volts: 58.4, Ohms: 0.01, Limit: 20})
	require.InDelta(t, 58.4, volts(t, solve(t, c), plus, minus), 1e-12, "without anything to feed it shows its voltage")
	c.Resistor(plus, minus, 1)
	require.InDelta(t, 20, volts(t, solve(t, c), plus, minus), 1e-9, "it gives its limit into a low resistance")
}

// Two supplies side by side against a third, and nothing else: the third limits the
// current, the two share it.
func TestSuppliesInOneLoopSettle(t *testing.T) {
	c := New()
	a, b := c.Node(), c.Node()
	p := Supply{Volts: 58, Ohms: 0.01, Limit: 20}
	first, second, against := c.Supply(a, b, p), c.Supply(a, b, p), c.Supply(b, a, p)
	s := solve(t, c)
	require.InDelta(t, -10, s.Current(first), 1e-9)
	require.InDelta(t, -10, s.Current(second), 1e-9)
	require.InDelta(t, -20, s.Current(against), 1e-9)
}

func TestConverter(t *testing.T) {
	c := New()
	plus, minus, wake, out, back := c.Node(), c.Node(), c.Node(), c.Node(), c.Node()
	c.Source(plus, minus, 51.2, 0)
	c.Contact(plus, wake, 0.01, true)
	in, output := c.Converter(plus, minus, out, back, Converter{
		Output: Supply{Volts: 13.2, Ohms: 0.001, Limit: 20}, Efficiency: 0.9, IdleWatts: 2, LeastVolts: 36,
		Gate: Gate{Fed: []Threshold{{wake, 20}}, Against: minus},
	})
	lamps := c.Resistor(out, back, 1.319)
	s := solve(t, c)
	require.InDelta(t, 10, s.Current(lamps), 1e-9)
	require.InDelta(t, (13.19*10/0.9+2)/51.2, s.Current(in), 1e-9)
	require.True(t, s.On(output))
	_, known := s.Voltage(out, minus)
	require.False(t, known, "its sides are apart")

	c.elements[1].restClosed = false // asleep
	s = solve(t, c)
	require.InDelta(t, 51.2/LeakOhms, s.Current(in), 1e-12)
	require.Zero(t, s.Current(lamps))
	require.False(t, s.On(output))
}

func TestErrors(t *testing.T) {
	tests := []struct {
		build func(c *Circuit, a, b Node)
		want  string
	}{
		{func(c *Circuit, a, b Node) { c.Resistor(a, b, -1) }, "element 0 has a negative resistance"},
		{func(c *Circuit, a, b Node) { c.Resistor(a, 7, 1) }, "element 0 is on a node that does not exist"},
		{func(c *Circuit, a, b Node) { c.Source(a, b, nan(), 1) }, "element 0 has a figure that is not finite"},
		{func(c *Circuit, a, b Node) { c.Coil(a, b, 1, 5, 10) }, "element 0 needs a pull-in voltage that is not below its drop-out voltage"},
		{func(c *Circuit, a, b Node) { c.CoilContact(a, b, 1, 9, false) }, "element 0 is moved by a coil that does not exist"},
		{func(c *Circuit, a, b Node) { c.CoilContact(a, b, 1, 0, false) }, "element 0 is moved by an element that is not a coil"},
		{func(c *Circuit, a, b Node) { c.Load(a, b, Load{Watts: 5}) }, "element 0 takes constant power and needs a least voltage above zero"},
		{func(c *Circuit, a, b Node) { c.Load(a, b, Load{Amperes: -5}) }, "element 0 has a negative figure"},
		{func(c *Circuit, a, b Node) { c.Supply(a, b, Supply{Limit: -1}) }, "element 0 has a negative current limit"},
		{func(c *Circuit, a, b Node) { c.Converter(a, b, a, b, Converter{LeastVolts: 5}) }, "element 0 needs an efficiency above 0 and at most 1"},
		{func(c *Circuit, a, b Node) { c.Current(a, b, 5) }, "the current of element 0 has no way back: join its nodes"},
		{func(c *Circuit, a, b Node) { c.Source(a, b, 5, 0); c.Resistor(a, b, 0) }, "the loop through node 0 that element 1 closes has no resistance: give one of its elements some"},
	}
	for _, tt := range tests {
		c := New()
		tt.build(c, c.Node(), c.Node())
		_, err := c.Solve()
		require.EqualError(t, err, tt.want)
	}
	s := solve(t, New())
	require.Zero(t, s.Balance())
}
