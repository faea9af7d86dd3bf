package size_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/size"
)

// What hangs on a reducer that shares its negative with the pack belongs to the reducer's
// 12 V, out and back; what feeds the reducer to the pack's 51.2 V.
func TestNominalBehindACommonNegative(t *testing.T) {
	s, sheet := surveyed(t, `
part pack lithium-pack-16
part red reducer-common-negative
part key key-switch
part lt lamp-12v current=2A
wire i pack.POS red.IN+ gauge=16AWG length=1m
wire n red.NEG pack.NEG gauge=16AWG length=1m
wire k pack.POS key.BAT gauge=16AWG length=1m
wire a key.IGN red.WAKE gauge=16AWG length=1m
wire p red.OUT+ lt.+ gauge=16AWG length=3m
wire m lt.- pack.NEG gauge=16AWG length=3m
`)
	for id, volts := range map[model.WireID]float64{"i": 51.2, "p": 12, "m": 12} {
		require.InDelta(t, volts, s.Row(wire(t, sheet, id), size.Options{}).Choice.Required.Volts, 1e-9, id)
	}
	drops := s.Drops()
	for _, d := range drops {
		if d.Part == "lt" {
			// 2 A over 7 m of 16 AWG, some 13.4 mohm a metre, is 1.6 % of 12 V and 0.4 % of 51.2 V.
			require.InEpsilon(t, d.Lost/12, d.Share, 1e-9)
			return
		}
	}
	require.Fail(t, "no drop of the lamp", "%v", drops)
}

// By hand: a full pack of 58.4 V behind 8 mohm; its fuse of 1 mohm, if it states none, and two
// sound joints of 0.1 mohm at each wire; 0.2 m and 0.3 m of 2 AWG, 0.5127 mohm a metre, out
// and at its end a bolted fault to the negative pole. The corroded joint does not count.
func TestLargestFaultIsOfAFullPackOverSoundJoints(t *testing.T) {
	s, sheet := surveyed(t, `
part pack lithium-pack-16 internal-resistance=8mohm rest-voltage=53V full-voltage=58.4V
part fu1 fuse-class-t fuse-rating=300A resistance=1mohm opening=iec-60269-gg
part red reducer-isolated standby-current=1A
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=0.2m
wire w2 fu1.out red.IN+ gauge=2AWG insulation=105C length=0.3m
wire w3 red.IN- pack.NEG gauge=2AWG insulation=105C length=0.5m
at fu1.in condition=corroded
`)
	r := s.Row(wire(t, sheet, "w2"), size.Options{}).Choice.Required
	require.Equal(t, "iec-60269-gg", r.Opening.Name)
	// The end of w2 nearer the pack: w1 with its joints and the fuse.
	near := 8e-3 + 0.2e-3 + 0.2*0.5127e-3 + 1e-3
	require.InEpsilon(t, 58.4/near, r.Fault, 5e-3)
}

// A load in a state of charging, and one that a pre-charge alone feeds, lose nothing to speak of.
func TestDropsLeaveOutChargingAndPreCharge(t *testing.T) {
	s, _ := surveyed(t, `
part pack lithium-pack-16
part sol contactor-48v
part pre precharge-resistor resistance=10ohm
part red reducer-isolated standby-current=1A
part chg charger-onboard-48v
part key key-switch
part lt lamp-12v current=2A
wire w1 pack.POS sol.L1 gauge=10AWG length=1m
wire w2 sol.L2 red.IN+ gauge=10AWG length=1m
wire w3 red.IN- pack.NEG gauge=10AWG length=1m
wire p1 sol.L1 pre.a gauge=16AWG length=0.1m
wire p2 pre.b sol.L2 gauge=16AWG length=0.1m
wire c1 chg.DC+ pack.POS gauge=10AWG length=1m
wire c2 chg.DC- pack.NEG gauge=10AWG length=1m
wire k1 pack.POS key.BAT gauge=16AWG length=1m
wire k2 key.IGN sol.coil+ gauge=16AWG length=1m
wire k3 sol.coil- pack.NEG gauge=16AWG length=1m
`)
	drops := s.Drops()
	require.NotEmpty(t, drops)
	seen := false
	for _, d := range drops {
		require.NotContains(t, d.State, "charging")
		require.Less(t, d.Share, 0.05, "%s %s in %s", d.Part, d.Of, d.State)
		seen = seen || d.Part == "red"
	}
	require.True(t, seen, "it is fed through the contactor with the key on")
}

// The pieces of a circuit at the sizes that were picked keep within the drop together, though
// each carries another current: a lamp at the end of a trunk that feeds a second one.
func TestPiecesOfACircuitShareItsDrop(t *testing.T) {
	s, sheet := surveyed(t, `
part b1 lead-battery-12v
part lt1 lamp-12v current=6A
part lt2 lamp-12v current=5A
part sp1 splice
part sp2 splice
wire p b1.+ sp1.J gauge=10AWG insulation=105C length=3m
wire q sp1.J lt1.+ gauge=10AWG insulation=105C length=4m
wire q2 sp1.J lt2.+ gauge=10AWG insulation=105C length=1m
wire r lt1.- sp2.J gauge=10AWG insulation=105C length=4m
wire r2 lt2.- sp2.J gauge=10AWG insulation=105C length=1m
wire n sp2.J b1.- gauge=10AWG insulation=105C length=3m
job system=12V
`)
	lost := 0.0
	for _, id := range []model.WireID{"p", "q", "r", "n"} {
		row := s.Row(wire(t, sheet, id), size.Options{})
		r := row.Choice.Required
		require.InDelta(t, 14, r.Circuit, 1e-9, id)
		chosen, ok := row.Choice.Chosen()
		require.True(t, ok)
		v, ok := chosen.Verdict(size.Drop)
		require.True(t, ok)
		require.Contains(t, v.Text, "in the 14 m of the whole circuit")
		// mohm a metre of the picked size at 20 C: rho of copper over its area.
		lost += row.Load.Amps * 17.241e-3 / row.Choice.Gauge.AreaMM2() * wireMetres(t, s, sheet, id)
		require.Equal(t, []size.Demand{size.Drop}, row.Choice.Decided, id)
	}
	require.LessOrEqual(t, lost, 0.03*12)
	require.Greater(t, lost, 0.015*12, "and not far below it")
}

func wireMetres(t *testing.T, _ *size.Survey, sheet *model.Sheet, id model.WireID) float64 {
	t.Helper()
	return wire(t, sheet, id).Length.Metres()
}

// At the sizes picked, the traction circuit of the tug's plan keeps within its drop; by pieces
// judged alone a cable of a tenth of its length could take all of it.
func TestTractionCircuitKeepsWithinItsDrop(t *testing.T) {
	data, err := cart.Read("greenhouse-tug")
	require.NoError(t, err)
	decoded, problems := jobfile.Decode("greenhouse-tug", data, part.Library())
	require.Empty(t, problems)
	sheet := decoded.Job.Sheet(model.Plan)
	s := size.Of(network.Build(decoded.Job, sheet, part.Library()))
	row := s.Row(wire(t, sheet, "w14"), size.Options{})
	r := row.Choice.Required
	require.Greater(t, r.Circuit, 2*r.Loop)
	var thinnest string
	for _, n := range row.Choice.Needs {
		if n.Demand == size.Drop {
			thinnest = n.Gauge.String()
		}
	}
	require.NotEqual(t, "12 AWG", thinnest)
	peak := 0.0
	for _, stage := range row.Load.Duty {
		peak = math.Max(peak, stage.Amps)
	}
	chosen, _ := row.Choice.Chosen()
	require.LessOrEqual(t, peak*17.241e-3/chosen.Gauge.AreaMM2()*r.Circuit, size.Dip*0.03*r.Volts)
}

// A state that comes to no rest is told apart from one that is left out for its short.
func TestUnsolvedStatesAreTold(t *testing.T) {
	s, _ := surveyed(t, `
part pack lithium-pack-16
part r1 relay-48v
wire w1 pack.POS r1.30 gauge=16AWG length=0.5m
wire w2 r1.87a r1.86 gauge=16AWG length=0.5m
wire w3 r1.85 pack.NEG gauge=16AWG length=0.5m`)
	require.Contains(t, s.Unsolved(), "parked: no rest: r1 keeps switching")
	require.Empty(t, s.Skipped())
}

// A figure that no circuit can have leaves nothing computed, and nothing idle. A file with it
// is refused, so that this one is made without the check of a file.
func TestNothingComputedIsNotIdle(t *testing.T) {
	job, err := mini.Job(`
part pack lithium-pack-16
part red reducer-isolated efficiency=150%
part lt lamp-12v
wire i pack.POS red.IN+ gauge=16AWG length=1m
wire n red.IN- pack.NEG gauge=16AWG length=1m
wire p red.OUT+ lt.+ gauge=16AWG length=3m
wire m lt.- red.OUT- gauge=16AWG length=3m`)
	require.NoError(t, err)
	s := size.Of(network.Build(job, &job.Sheets[0], part.Library()))
	require.NotEmpty(t, s.Unsolved())
	row := s.Row(job.Sheets[0].Wire("p"), size.Options{})
	require.False(t, row.Idle)
	require.Equal(t, "not computed in any state", row.Missing)
}

// The current of a charger enters a string at its top: the lead of its negative belongs to the
// whole string, not to the lowest battery.
func TestChargeLeadBelongsToTheString(t *testing.T) {
	s, sheet := surveyed(t, `
part b1 lead-battery-12v
part b2 lead-battery-12v
part chg charger-onboard-48v charge-voltage=29V charge-current=20A
wire j b1.+ b2.- gauge=10AWG length=0.3m
wire c1 chg.DC+ b2.+ gauge=10AWG length=1m
wire c2 chg.DC- b1.- gauge=10AWG length=1m
job system=24V
`)
	require.InDelta(t, 24, s.Row(wire(t, sheet, "c2"), size.Options{}).Choice.Required.Volts, 1e-9)
}

// A fault pulls down what holds its own contactor; its first current flows all the same.
func TestLargestFaultFlowsBeforeTheContactorDrops(t *testing.T) {
	s, sheet := surveyed(t, `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=300A opening=iec-60269-gg
part sol contactor-48v
part key key-switch
part red reducer-isolated standby-current=1A
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=0.2m
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=0.3m
wire w3 sol.L2 red.IN+ gauge=2AWG insulation=105C length=0.3m
wire w4 red.IN- pack.NEG gauge=2AWG insulation=105C length=0.5m
wire k1 fu1.out key.BAT gauge=16AWG length=1m
wire k2 key.IGN sol.coil+ gauge=16AWG length=1m
wire k3 sol.coil- pack.NEG gauge=16AWG length=1m
`)
	require.Greater(t, s.Row(wire(t, sheet, "w3"), size.Options{}).Choice.Required.Fault, 1000.0)
}
