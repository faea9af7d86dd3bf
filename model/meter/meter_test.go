package meter_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// TestWhatAMeterMayBeOffBy are the worked figures of a university's note on the uncertainty
// of digital multimeters (32.00 V at 2.5 % + 3 counts is 0.83 V), and others reckoned the
// same way: share of the reading and counts of the last digit.
func TestWhatAMeterMayBeOffBy(t *testing.T) {
	for _, c := range []struct {
		share, counts, display float64
		of                     unit.Dimension
		shown, step, off       float64
	}{
		{0.025, 3, 4000, unit.Voltage, 32, 0.01, 0.83},
		{0.005, 2, 2000, unit.Voltage, 51.2, 0.1, 0.456},
		{0.005, 2, 6000, unit.Voltage, 51.2, 0.01, 0.276},
		{0.005, 2, 2000, unit.Voltage, 0.025, 0.0001, 0.000325},
		{0.02, 5, 2000, unit.Current, 150, 0.1, 3.5},
		{0.01, 5, 2000, unit.Voltage, 0, 0.0001, 0.0005},
		{0.01, 5, 2000, unit.Voltage, -51.2, 0.1, 1.012},
		{0.01, 5, 2000, unit.Resistance, 199.9, 0.1, 2.499},
		{0.01, 5, 2000, unit.Resistance, 470, 1, 9.7},
	} {
		i := meter.Instrument{Share: c.share, Counts: c.counts, Display: c.display}
		require.InDelta(t, c.step, i.Step(c.of, c.shown), 1e-12)
		require.InDelta(t, c.off, i.Off(c.of, c.shown), 1e-9)
	}
}

func TestTheMeterOfTheJobIsTaken(t *testing.T) {
	usual := meter.Of(nil)
	require.True(t, usual.Assumed)
	require.Equal(t, "1 % + 5 counts of 2000, assumed: no meter is recorded", usual.String())
	own := meter.Of(&model.Meter{Accuracy: unit.Pct(0.5), Counts: 2, Display: 6000})
	require.Equal(t, meter.Instrument{Share: 0.005, Counts: 2, Display: 6000, Input: 10e6}, own)
	require.InDelta(t, 2e5, meter.Of(&model.Meter{Input: unit.Ohms(2e5)}).Input, 0)
}

// TestVerdicts: a drop is never the difference of two readings of the pack, 51.2 and 51.0 V
// are 0.2 V within 0.9 V; read over the joint it is decided.
func TestVerdicts(t *testing.T) {
	by := meter.Instrument{Share: 0.005, Counts: 2, Display: 2000}
	drop := meter.Reading{Unit: unit.Voltage, Known: true, Value: 0.02, Low: 0, High: 0.1}
	require.Equal(t, meter.Pass, drop.Judge(by, 0.025, false))
	require.Equal(t, meter.Fail, drop.Judge(by, 0.31, false))
	require.Equal(t, meter.Between, drop.Judge(by, 0.0999, false))
	require.Equal(t, meter.Between, drop.Judge(by, 0.1001, false))
	pack := meter.Reading{Unit: unit.Voltage, Known: true, Value: 51.2, Low: 51, High: 51.4}
	require.Equal(t, meter.Between, pack.Judge(by, 51.2, false), "a range of 0.1 V cannot tell")
	pack.Known = false
	require.Equal(t, meter.Between, pack.Judge(by, 20, false), "nothing is sure of it")
	open := meter.Reading{Unit: unit.Resistance, Known: true, Open: true}
	require.Equal(t, meter.Pass, open.Judge(by, 0, true))
	require.Equal(t, meter.Fail, open.Judge(by, 3, false))
	lamp := meter.Reading{Unit: unit.Resistance, Known: true, Value: 3, Low: 2, High: 4}
	require.Equal(t, meter.Fail, lamp.Judge(by, 0, true))
	clamped := meter.Reading{Unit: unit.Current, Known: true, Value: 150, Low: 140, High: 160}
	require.Equal(t, meter.Pass, clamped.Judge(by, 150, false))
	require.Equal(t, meter.Between, clamped.Judge(by, 158, false), "a clamp is off by 3.7 A there")
}

// divider is a lamp of 3 ohm behind a resistor of 60 ohm on a battery that is no more than
// its voltage.
const divider = `
part b1 lead-battery-12v rest-voltage=12.6V voltage=12.6V full-voltage=12.6V internal-resistance=0.000001ohm
part pre precharge-resistor resistance=60ohm
part lt lamp-12v voltage=12V current=4A
wire w1 b1.+ pre.a gauge=4AWG length=0.001m
wire w2 pre.b lt.+ gauge=4AWG length=0.001m
wire w3 lt.- b1.- gauge=4AWG length=0.001m
`

// TestASpreadByHand: V = E Rl/(R + Rl) with E 12.6 V, R 60 ohm within 10 %, Rl 3 ohm by a
// current within 20 %. V = 0.6000; with R 66 ohm 0.5478, a move of 0.0522; with 4.8 A and
// so Rl 2.5 ohm 0.5040, a move of 0.0960. Root of the sum of squares: 0.1093. Strays of
// 5 mV come on top.
func TestASpreadByHand(t *testing.T) {
	r := volts(t, build(t, divider), state.Parked, "lt.+", "lt.-")
	require.InDelta(t, 0.6, r.Value, 1e-4)
	require.InDelta(t, 0.1093+0.005, r.High-r.Value, 3e-4)
	require.InDelta(t, 0.1093+0.005, r.Value-r.Low, 3e-4)
	require.InDelta(t, 0.006+5*0.001, r.Off, 1e-4, "1 % and 5 counts on the 2 V range")
	require.Equal(t, []string{"currents of lt are from the label or typical", "resistance of pre", "a meter of 1 % + 5 counts of 2000, assumed: no meter is recorded"}, r.Why)
}

func read(red, black, value string) func(*model.Job) {
	return func(j *model.Job) {
		v, err := unit.ParseAny(value)
		if err != nil {
			panic(err)
		}
		var r, b model.TerminalRef
		if r.UnmarshalText([]byte(red)) != nil || b.UnmarshalText([]byte(black)) != nil {
			panic(red)
		}
		j.Readings = append(j.Readings, model.Reading{Sheet: model.AsFound, State: state.Parked, Red: r, Black: b, Value: v})
	}
}

func TestTheChargeOfThePackIsARangeUntilSomebodyReadsIt(t *testing.T) {
	n := build(t, variant("V1"))
	unread := volts(t, n, state.Parked, "sol.L1", "pack.NEG")
	require.InDelta(t, 53.3, unread.Value, 0.1)
	require.InDelta(t, 51.2, unread.Low, 0.1)
	require.InDelta(t, 58.4, unread.High, 0.1)
	require.Contains(t, unread.Why[0], "charge of the pack is not known")

	n = build(t, variant("V1"), read("pack.POS", "pack.NEG", "52.1 V"))
	known := volts(t, n, state.Parked, "sol.L1", "pack.NEG")
	require.InDelta(t, 52.1, known.Value, 0.05)
	require.InDelta(t, 52.1*0.01+0.5, known.High-known.Value, 0.01, "as sure as the meter that read the pack")
	require.Contains(t, known.Why[0], "the pack as read: 52.1 V on pack.POS against pack.NEG")

	n = build(t, variant("V1"), read("pack.POS", "pack.NEG", "52.1 V"), read("fu1.in", "ctrl.B-", "51.9 V"), read("sol.L1", "ctrl.B-", "20 V"))
	require.InDelta(t, 51.9, volts(t, n, state.Parked, "sol.L1", "pack.NEG").Value, 0.05, "the latest of the poles, wherever on their metal")

	charging := func(j *model.Job) { j.Readings[0].State = state.Charging }
	n = build(t, variant("V1"), read("pack.POS", "pack.NEG", "57 V"), charging)
	require.InDelta(t, 53.3, volts(t, n, state.Parked, "sol.L1", "pack.NEG").Value, 0.1, "not at rest")
}

// TestAReadingThatNoChargeExplainsIsToldAndNotUsed: a pack that is reversed or tripped is
// not a flat one.
func TestAReadingThatNoChargeExplainsIsToldAndNotUsed(t *testing.T) {
	for _, shown := range []string{"0 V", "-51.8 V", "9 V"} {
		n := build(t, variant("V1"), read("pack.POS", "pack.NEG", shown))
		r := volts(t, n, state.Parked, "sol.L1", "pack.NEG")
		require.InDelta(t, 53.3, r.Value, 0.1, shown)
		require.InDelta(t, 58.4, r.High, 0.1, shown)
		require.Contains(t, r.Why, "charge of the pack is not known; the reading of its poles, "+shown+
			" on pack.POS against pack.NEG, contradicts the sheet and is not used: the pack is reversed, tripped or another")
	}
	n := build(t, variant("V1"), read("pack.POS", "pack.NEG", "52.1 V"), read("fu1.in", "ctrl.B-", "0 V"))
	r := volts(t, n, state.Parked, "sol.L1", "pack.NEG")
	require.InDelta(t, 52.1, r.Value, 0.05, "the one before")
	require.Contains(t, r.Why, "the pack as read: 52.1 V on pack.POS against pack.NEG; the reading of its poles, 0 V on fu1.in against ctrl.B-, "+
		"contradicts the sheet and is not used: the pack is reversed, tripped or another")

	asleep := func(j *model.Job) { j.Readings[0].State = state.PackAsleep }
	n = build(t, variant("V1"), read("pack.POS", "pack.NEG", "0 V"), asleep)
	require.Contains(t, volts(t, n, state.Parked, "sol.L1", "pack.NEG").Why, "charge of the pack is not known: no reading of its poles is recorded",
		"a pack that is switched off shows nothing")

	n = build(t, variant("V1"), read("pack.NEG", "pack.POS", "-52.1 V"))
	swapped := volts(t, n, state.Parked, "sol.L1", "pack.NEG")
	require.InDelta(t, 52.1, swapped.Value, 0.05, "the probes were swapped")
	require.InDelta(t, 52.1*0.01+0.5, swapped.High-swapped.Value, 0.01)
}

func TestAClampIsAssumedThoughAMeterIsRecorded(t *testing.T) {
	amps := func(changes ...func(*model.Job)) meter.Reading {
		n := build(t, divider, changes...)
		r, err := meter.Amps(n, stateOf(t, n, state.Parked), "w1")
		require.NoError(t, err)
		return r
	}
	require.Contains(t, amps().Why, "a clamp of 2 % + 5 counts of 2000, assumed: no meter is recorded")
	own := amps(func(j *model.Job) { j.Meter = &model.Meter{Accuracy: unit.Pct(0.5), Counts: 2, Display: 6000} })
	require.Contains(t, own.Why, "a clamp of 2 % + 5 counts of 2000, assumed: of the meter only its accuracy on volts and ohms is recorded")
	require.InDelta(t, amps().Off, own.Off, 1e-12)
}

func TestACartStaysWithItsIsolatorOpen(t *testing.T) {
	n := planned(t, "marina-shuttle")
	s := stateOf(t, n, state.Isolated)
	require.Equal(t, meter.Stay, meter.Must(s))
	pressed := s.With(model.Key, "on").With(model.Direction, "forward").With(model.Pedal, "down")
	require.Equal(t, meter.Stay, meter.Must(pressed))
	require.Equal(t, meter.Drive, meter.Must(pressed.With(model.Isolator, "closed")))
}

func TestATrialCountsWhereTheCartMustDrive(t *testing.T) {
	trial, err := meter.Try(planned(t, "marina-shuttle"))
	require.NoError(t, err)
	require.Equal(t, 2, trial.Asked, "forward and reverse")
	require.Greater(t, trial.Tried, 10)
	require.Empty(t, trial.Breaches)
	trial, err = meter.Try(build(t, divider))
	require.NoError(t, err)
	require.Equal(t, meter.Trial{Tried: 1}, trial)
}

func TestWhatIsNotRecordedIsNamed(t *testing.T) {
	n := build(t, `
part b1 lead-battery-12v rest-voltage=12.6V voltage=12.6V full-voltage=12.6V
part lt lamp-12v voltage=12V current=40A
wire w1 b1.+ lt.+ gauge=16AWG
wire w2 lt.- b1.- gauge=16AWG length=2m condition=corroded
`)
	r := volts(t, n, state.Parked, "b1.+", "lt.+")
	require.Contains(t, r.Why, "length or size of w1 is not recorded: usual ones stand for them")
	require.Greater(t, r.High, 2*r.Value-0.2)
	r = volts(t, n, state.Parked, "lt.-", "b1.-")
	require.Contains(t, r.Why, "joints of w2 are recorded in a condition whose resistance is a guess")
	require.NotContains(t, r.Why, "length or size of w1 is not recorded: usual ones stand for them")
}

func TestAmperes(t *testing.T) {
	n := build(t, divider)
	s := stateOf(t, n, state.Parked)
	r, err := meter.Amps(n, s, "w1")
	require.NoError(t, err)
	require.InDelta(t, 0.2, r.Value, 1e-4)
	require.InDelta(t, 0.02*0.2+0.05, r.Off, 1e-4, "a clamp of 2 % + 5 counts of 10 mA")
	require.Equal(t, unit.Current, r.Unit)
	back, err := meter.Amps(n, s, "w3")
	require.NoError(t, err)
	require.InDelta(t, r.Value, back.Value, 1e-9)
	_, err = meter.Amps(n, s, "w9")
	require.ErrorContains(t, err, "no wire w9")
}

func TestOhms(t *testing.T) {
	n := build(t, divider+`
part dio diode
part sol contactor-48v coil-resistance=140ohm
part key key-switch
wire d1 dio.anode key.BAT gauge=16AWG length=0.1m
wire d2 key.IGN sol.coil+ gauge=16AWG length=0.1m
wire d3 sol.coil- sol.L1 gauge=16AWG length=0.1m
`)
	r := ohms(t, n, state.Parked, "pre.a", "pre.b")
	require.InDelta(t, 60, r.Value, 0.01, "the battery and the lamp behind it are out")
	require.InDelta(t, 6+0.5, r.High-r.Value, 0.01, "a tenth, and the test leads")
	require.InDelta(t, 0.6+5*0.1, r.Off, 0.001)
	require.InDelta(t, 3, ohms(t, n, state.Parked, "lt.+", "lt.-").Value, 0.01)
	coil := ohms(t, n, state.KeyOn, "key.BAT", "sol.L1")
	require.InDelta(t, 140, coil.Value, 0.1)
	open := ohms(t, n, state.Parked, "key.BAT", "sol.L1")
	require.True(t, open.Open && open.Known)
	require.Zero(t, open.Value)
	contact := ohms(t, n, state.KeyOn, "sol.L1", "sol.L2")
	require.True(t, contact.Open, "the coil is not fed with the power off")

	// 3 V behind 3 kohm drive (3 - 0.7)/(3000 + 140) through diode and coil, 0.73 mA: the
	// meter takes the drop for ohms, 3 V/0.73 mA - 3 kohm. Turned round it sees nothing.
	forward := ohms(t, n, state.KeyOn, "dio.cathode", "dio.anode")
	require.True(t, forward.Open, "turned round it does not conduct")
	onward := ohms(t, n, state.KeyOn, "dio.anode", "sol.L1")
	require.InDelta(t, 140, onward.Value, 0.5, "past the diode")
	through := ohms(t, n, state.Parked, "dio.anode", "dio.cathode")
	require.InDelta(t, 3*3000/2.3-3000, through.Value, 1)
	require.Contains(t, through.Why, "it reads through diode dio")

	bench, err := meter.At(n, stateOf(t, n, state.Parked))
	require.NoError(t, err)
	_, err = bench.Ohms(at(t, "pre.a"), at(t, "pre.b"))
	require.ErrorContains(t, err, "with the power off")
}

func TestWhatIsNotThereIsAnError(t *testing.T) {
	n := build(t, divider)
	s := stateOf(t, n, state.Parked)
	_, err := meter.Volts(n, s, at(t, "b1.+"), at(t, "b9.-"))
	var lost *meter.NoTerminalError
	require.ErrorAs(t, err, &lost)
	require.Equal(t, "b9.-", lost.At.String())
	require.EqualError(t, err, "the as-found sheet has no terminal b9.-")
}

func TestAChatteringSheetHasNoReading(t *testing.T) {
	n := build(t, `
part b1 lead-battery-12v
part k1 relay
wire w1 b1.+ k1.30 gauge=16AWG length=1m
wire w2 k1.87a k1.86 gauge=16AWG length=1m
wire w3 k1.85 b1.- gauge=16AWG length=1m
`)
	_, err := meter.Volts(n, stateOf(t, n, state.Parked), at(t, "b1.+"), at(t, "b1.-"))
	var chatter *network.ChatterError
	require.ErrorAs(t, err, &chatter)
	table, err := meter.Tabulate(n, n.States())
	require.NoError(t, err)
	require.Equal(t, []model.PartID{"k1"}, table.Columns[0].Chatter)
	require.Equal(t, []string{"parked: no rest: k1 keeps switching"}, table.Breaches())
	trial, err := meter.Try(n)
	require.NoError(t, err)
	require.Equal(t, 1, trial.Tried)
	require.Len(t, trial.Breaches, 1)
}

func TestExpectedIsTheReadingThatWasTaken(t *testing.T) {
	n := build(t, divider)
	r := model.Reading{State: state.Parked, Red: at(t, "lt.+"), Black: at(t, "lt.-"), Value: unit.V(1).Any()}
	got, err := meter.Expected(n, &r)
	require.NoError(t, err)
	require.Equal(t, unit.Voltage, got.Unit)
	r.Value = unit.Ohms(1).Any()
	got, err = meter.Expected(n, &r)
	require.NoError(t, err)
	require.Equal(t, unit.Resistance, got.Unit)
	got, err = meter.Expected(n, &model.Reading{State: state.Parked, Wire: "w1", Value: unit.A(1).Any()})
	require.NoError(t, err)
	require.Equal(t, unit.Current, got.Unit)
	r.State = state.Charging
	_, err = meter.Expected(n, &r)
	require.ErrorContains(t, err, "a state that the sheet has, not charging")
}

// TestReadingsOfTheCarts: on every worked cart, every test point in every state has a
// finite range around its value, and probes that are swapped show the negative of it.
func TestReadingsOfTheCarts(t *testing.T) {
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for i := range d.Job.Sheets {
			n := network.Build(d.Job, &d.Job.Sheets[i], part.Library())
			points := meter.Points(n)
			require.Greater(t, len(points), 15, name)
			for _, s := range n.States() {
				b, err := meter.At(n, s)
				require.NoError(t, err)
				for _, p := range points {
					r, err := b.Volts(p.Red, p.Black)
					require.NoError(t, err)
					require.LessOrEqual(t, r.Low, r.Value)
					require.GreaterOrEqual(t, r.High, r.Value)
					require.False(t, math.IsInf(r.High-r.Low, 0) || math.IsNaN(r.High-r.Low))
					require.Equal(t, p.Across, p.Black != points[0].Black || p == points[0])
				}
			}
		}
	}
}

// TestProbesSwapAndAdd: swapped probes show the negative, and readings over two legs add up
// to the reading over both.
func TestProbesSwapAndAdd(t *testing.T) {
	nets := map[string]*network.Network{}
	var names []string
	for _, v := range variants {
		nets[v.name] = build(t, v.text)
		names = append(names, v.name)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := nets[rapid.SampledFrom(names).Draw(t, "cart")]
		b, err := meter.At(n, rapid.SampledFrom(n.States()).Draw(t, "state"))
		require.NoError(t, err)
		points := meter.Points(n)
		var probes []model.TerminalRef
		for _, p := range points {
			probes = append(probes, p.Red)
		}
		probe := rapid.SampledFrom(probes)
		x, y, z := probe.Draw(t, "x"), probe.Draw(t, "y"), probe.Draw(t, "z")
		read := func(red, black model.TerminalRef) meter.Reading {
			r, err := b.Volts(red, black)
			require.NoError(t, err)
			return r
		}
		xy, yx, yz, xz := read(x, y), read(y, x), read(y, z), read(x, z)
		require.InDelta(t, xy.Value, -yx.Value, 1e-6)
		require.Equal(t, xy.Floating, yx.Floating)
		if !xy.Floating && !yz.Floating {
			require.False(t, xz.Floating)
			require.InDelta(t, xz.Value, xy.Value+yz.Value, 0.01*60, "up to what the meter's own input pulls through an input of 47 kohm")
		}
	})
}
