package support_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/support"
)

// rig is a pack, a contactor that a key closes, and a controller behind it.
func rig(pack, controller, more string) string {
	return fmt.Sprintf(`
part pack lithium-pack-16 internal-resistance=8mohm standby-current=0.001mA %s
part sol contactor-48v
part ctrl controller-series logic-current=1mA %s
part key key-switch
part motor motor-series
wire w1 pack.POS sol.L1 gauge=2AWG length=0.1m
wire w2 sol.L2 ctrl.B+ gauge=2AWG length=0.1m
wire w3 ctrl.B- pack.NEG gauge=2AWG length=0.1m
wire k1 pack.POS key.BAT gauge=16AWG length=0.1m
wire k2 key.IGN sol.coil+ gauge=16AWG length=0.1m
wire k3 sol.coil- pack.NEG gauge=16AWG length=0.1m
%s`, pack, controller, more)
}

// Two direction contactors turn the field of the motor behind the controller: they close
// when the capacitor has long been full, and nothing fills through them.
func TestDirectionContactorsFillNothing(t *testing.T) {
	p := only(t, report(t, rig("", "", fmt.Sprintf(resistor, "470ohm")+`
part dir direction-rocker
part rf reverse-contactor
part rr reverse-contactor
wire m1 ctrl.B+ motor.A1 gauge=2AWG length=0.3m
wire m2 motor.A2 rf.NO gauge=2AWG length=0.3m
wire m3 rf.NO rr.NO gauge=2AWG length=0.1m
wire m4 rf.NC rr.NC gauge=2AWG length=0.1m
wire m5 rf.NC ctrl.M- gauge=2AWG length=0.3m
wire m6 rf.COM motor.S1 gauge=2AWG length=0.3m
wire m7 rr.COM motor.S2 gauge=2AWG length=0.3m
wire k4 sol.coil+ dir.COM gauge=16AWG length=0.3m
wire k5 dir.F rf.coil+ gauge=16AWG length=0.3m
wire k6 dir.R rr.coil+ gauge=16AWG length=0.3m
wire k7 rf.coil- pack.NEG gauge=16AWG length=0.3m
wire k8 rr.coil- pack.NEG gauge=16AWG length=0.3m
wire k9 sol.coil+ ctrl.KSI gauge=16AWG length=0.3m
`), support.Options{}))
	require.Equal(t, "sol", string(p.Line.Part))
	require.Len(t, p.Paths, 1)
	require.Equal(t, []model.PartID{"pre"}, p.Paths[0].Parts)
}

// A resistor round the contactor.
const resistor = `
part pre precharge-resistor resistance=%s power-rating=10W
wire p1 sol.L1 pre.a gauge=18AWG length=0.1m
wire p2 pre.b sol.L2 gauge=18AWG length=0.1m
`

func only(t *testing.T, r *support.Report) support.PreCharge {
	t.Helper()
	require.Len(t, r.PreCharge, 1)
	return r.PreCharge[0]
}

// By hand, formulas of tau = R C, t = R C ln(V/dV), E = C V^2 / 2 (no printed example of a
// contactor at 48 V was found). First set: tau 250 x 0.01 = 2.5 s; to a twentieth
// 2.5 ln 20 = 2.5 x 2.99573 = 7.489 s; 0.01 x 51.2^2 / 2 = 13.107 J; 51.2^2/250 = 10.486 W;
// 51.2/250 = 0.2048 A. Second set: tau 4.70 s, 95 % after 14.08 s, 17.05 J, 7.26 W, 0.124 A.
func TestPreChargeByHand(t *testing.T) {
	for _, c := range []struct {
		volts, ohms                             string
		tau, seconds, joules, watts, amps, left float64
	}{
		{"51.2V", "250ohm", 2.5, 7.489, 13.11, 10.49, 0.205, 51.2 * math.Exp(-1/2.5)},
		{"58.4V", "470ohm", 4.70, 14.08, 17.05, 7.26, 0.124, 58.4 * math.Exp(-1/4.7)},
	} {
		p := only(t, report(t, rig("rest-voltage="+c.volts+" full-voltage="+c.volts, "input-capacitance=10mF", fmt.Sprintf(resistor, c.ohms)), support.Options{}))
		require.InEpsilon(t, c.tau, p.Fill.Tau(), 1e-3)
		require.InEpsilon(t, c.seconds, p.Seconds5, 1e-3)
		require.InEpsilon(t, c.joules, p.Joules, 1e-3)
		require.InEpsilon(t, c.watts, p.PeakWatts, 1e-3)
		require.InEpsilon(t, c.amps, p.PeakAmps, 4e-3)
		require.InEpsilon(t, c.left, p.After(1), 1e-3)
		require.Equal(t, "parked", p.State)
		require.Less(t, p.Left, 0.01)
	}
}

// ngspice 39, 51.2 V behind 8 mohm, 250 ohm into 10 mF with 47 kohm across it:
//
//	VB b 0 51.2 / RB b p 8m / RP p c 250 / C1 c 0 10m IC=0 / RL c 0 47k
//
// 16.86242 V at 1 s, 32.29212 at 2.5, 44.10909 at 5, 48.43338 at 7.5, 50.52046 at 12; 48.64 V at
// 7.714908 s; in the end 50.92909 V. The wires and the BMS of the sheet add a few parts in a million.
func TestPreChargeWithLeakAgainstSimulator(t *testing.T) {
	p := only(t, report(t, rig("rest-voltage=51.2V full-voltage=51.2V", "input-capacitance=10mF", fmt.Sprintf(resistor, "250ohm")+`
		part leak precharge-resistor resistance=47kohm
		wire l1 leak.a ctrl.B+ gauge=18AWG length=0.1m
		wire l2 leak.b ctrl.B- gauge=18AWG length=0.1m`), support.Options{}))
	require.Len(t, p.Paths, 1, "the leak leads to the return, not round the contact")
	for seconds, volts := range map[float64]float64{1: 16.86242, 2.5: 32.29212, 5: 44.10909, 7.5: 48.43338, 12: 50.52046} {
		require.InEpsilon(t, volts, p.Fill.At(seconds), 2e-5, "%g s", seconds)
	}
	require.InEpsilon(t, 50.92909, p.Fill.Volts, 1e-5)
	require.InEpsilon(t, 7.714908, p.Seconds5, 1e-4)
	require.InDelta(t, 51.2-50.92909, p.Left, 1e-3)
}

// Without a resistor the current is the source over what resists: 51.2 V over 8 mohm, three
// joints pairs, wires and the contact.
func TestNoPreChargeIsLimitedByTheWiresAlone(t *testing.T) {
	r := report(t, rig("rest-voltage=51.2V full-voltage=51.2V", "input-capacitance=10mF", ""), support.Options{})
	p := only(t, r)
	require.Empty(t, p.Paths)
	require.InDelta(t, 51.2, p.Left, 0.01)
	// 8 mohm in the pack, 0.2 of the contact, six joints of 0.1, 0.3 m of 2 AWG at 0.5127 mohm/m.
	require.InEpsilon(t, 51.2/(8e-3+0.2e-3+0.6e-3+0.3*0.5127e-3), p.Inrush, 0.01)
	require.True(t, says(p.Judgements, support.Fault, "no pre-charge"))
	require.True(t, r.IsBad())
}

func TestResistorsSideBySideAreTold(t *testing.T) {
	p := only(t, report(t, rig("", "", fmt.Sprintf(resistor, "1kohm")+`
		part pre2 precharge-resistor resistance=1kohm
		wire q1 sol.L1 pre2.a gauge=18AWG length=0.1m
		wire q2 pre2.b sol.L2 gauge=18AWG length=0.1m`), support.Options{}))
	require.Len(t, p.Paths, 2)
	require.InEpsilon(t, 500, p.Fill.Ohms, 1e-3)
	require.True(t, says(p.Judgements, support.Note, "side by side"))
}

// A lamp on the load side holds the capacitor down: 53.3 V over 470 ohm and the 28.4 ohm of a
// 12 V lamp of 1.8 A and two resistors.
func TestLoadBehindTheContactLeavesVolts(t *testing.T) {
	p := only(t, report(t, rig("", "", fmt.Sprintf(resistor, "470ohm")+`
		part buz buzzer current=0.1A voltage=48V
		wire b1 ctrl.B+ buz.+ gauge=18AWG length=0.1m
		wire b2 ctrl.B- buz.- gauge=18AWG length=0.1m`), support.Options{}))
	// The buzzer counts as 480 ohm: 53.3 x 470/950 stay across the contact.
	require.InEpsilon(t, 53.3*470/950, p.Left, 1e-3)
	require.InEpsilon(t, 470*480/950.0, p.Fill.Ohms, 1e-3)
	require.Zero(t, p.Seconds5)
	require.True(t, says(p.Judgements, support.Fault, "something draws on the load side"))
}

func TestLampFillsFasterWhileItIsCold(t *testing.T) {
	p := only(t, report(t, rig("rest-voltage=51.2V full-voltage=51.2V", "input-capacitance=10mF", `
		part lamp precharge-lamp voltage=60V current=0.5A cold-resistance=10ohm
		wire p1 sol.L1 lamp.a gauge=18AWG length=0.1m
		wire p2 lamp.b sol.L2 gauge=18AWG length=0.1m`), support.Options{}))
	require.InEpsilon(t, 1.2, p.Fill.Tau(), 1e-3, "120 ohm hot")
	require.NotNil(t, p.Cold)
	require.InEpsilon(t, 0.1, p.Cold.Tau(), 1e-3, "10 ohm cold")
	require.InEpsilon(t, 5.12, p.PeakAmps, 1e-3)
}

// A controller that says that it fills itself does so from its key input.
func TestControllerFillsItself(t *testing.T) {
	const ac = `
part pack lithium-pack-16
part sol contactor-48v
part ctrl %s
part key key-switch
wire w1 pack.POS sol.L1 gauge=2AWG length=0.1m
wire w2 sol.L2 ctrl.B+ gauge=2AWG length=0.1m
wire w3 ctrl.B- pack.NEG gauge=2AWG length=0.1m
wire k1 pack.POS key.BAT gauge=16AWG length=0.1m
wire k2 key.IGN ctrl.KSI gauge=16AWG length=0.1m
part inh switch
wire k3 key.IGN inh.IN gauge=16AWG length=0.1m
wire k4 sol.coil+ inh.OUT gauge=16AWG length=0.1m
wire k5 sol.coil- ctrl.coil-driver gauge=16AWG length=0.1m`
	p := only(t, report(t, fmt.Sprintf(ac, "controller-ac-precharge"), support.Options{}))
	require.Len(t, p.Paths, 1)
	require.True(t, p.Paths[0].Inside)
	require.Equal(t, "key-on", p.State)
	require.InEpsilon(t, 100*5e-3, p.Fill.Tau(), 1e-3)
	require.True(t, says(p.Judgements, support.Note, "wait"))
	p = only(t, report(t, fmt.Sprintf(ac, "controller-ac"), support.Options{}))
	require.Empty(t, p.Paths)
	always := strings.NewReplacer("part inh switch\n", "", "wire k3 key.IGN inh.IN gauge=16AWG length=0.1m\n", "", "inh.OUT", "%s").Replace(ac)
	p = only(t, report(t, fmt.Sprintf(always, "controller-ac-precharge", "ctrl.coil-supply"), support.Options{}))
	require.Len(t, p.Paths, 1, "it closes the contactor at key-on, but not before it is full")
	require.True(t, p.Paths[0].Inside)
	require.Equal(t, "key-on", p.State)
	p = only(t, report(t, fmt.Sprintf(always, "controller-ac", "ctrl.coil-supply"), support.Options{}))
	require.Empty(t, p.Paths)
	unheld := strings.Replace(always, "wire k5 sol.coil- ctrl.coil-driver", "wire k5 sol.coil- ctrl.B-", 1)
	p = only(t, report(t, fmt.Sprintf(unheld, "controller-ac-precharge", "ctrl.coil-supply"), support.Options{}))
	require.Empty(t, p.Paths, "nothing holds the contact back while it fills")
}

// Whatever the resistor, capacitor and leak: time, energy and end follow the closed form.
func TestPreChargeOfAnySizes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		ohms := rapid.IntRange(10, 5000).Draw(rt, "ohms")
		leak := rapid.IntRange(2000, 500000).Draw(rt, "leak")
		mF := rapid.IntRange(1, 20).Draw(rt, "mF")
		r := report(t, rig("rest-voltage=51.2V full-voltage=58.4V", fmt.Sprintf("input-capacitance=%dmF", mF), fmt.Sprintf(resistor, fmt.Sprintf("%dohm", ohms))+fmt.Sprintf(`
			part leak precharge-resistor resistance=%dohm
			wire l1 leak.a ctrl.B+ gauge=18AWG length=0.1m
			wire l2 leak.b ctrl.B- gauge=18AWG length=0.1m`, leak)), support.Options{})
		p := only(t, r)
		share := float64(leak) / float64(leak+ohms)
		require.InEpsilon(rt, float64(ohms)*share*float64(mF)*1e-3, p.Fill.Tau(), 2e-3)
		require.InDelta(rt, 51.2*share, p.Fill.Volts, 0.02)
		require.InEpsilon(rt, float64(mF)*1e-3*58.4*58.4/2, p.Joules, 1e-9)
		require.Greater(rt, p.After(1), p.After(2)-1e-9)
	})
}
