package support_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/support"
)

// ngspice 39: 0.5 H and 96 ohm with 0.5 A die away in a diode (IS=1e-9 N=1.8 RS=.02, 27 C) to a
// tenth in 11.2228 ms, in a plain short in 11.993 ms (0.5/96 ln 10). A diode of a steady 0.8 V
// comes within half a percent of the first.
func TestReleaseAgainstSimulator(t *testing.T) {
	require.InEpsilon(t, 11.2228e-3, support.ReleaseSeconds(0.5/96, 96, 0.5, 0.05, 0.8), 5e-3)
	require.InEpsilon(t, 11.993e-3, support.ReleaseSeconds(0.5/96, 96, 0.5, 0.05, 0), 1e-4)
	require.Zero(t, support.ReleaseSeconds(0.5/96, 96, 0.05, 0.05, 0.8))
}

const keyed = `
part pack lithium-pack-16
part sol contactor-48v coil-resistance=140ohm
part key key-switch
wire k0 pack.POS sol.L1 gauge=2AWG length=0.1m
wire k1 pack.POS key.BAT gauge=16AWG length=0.1m
wire k2 key.IGN sol.coil+ gauge=16AWG length=0.1m
wire k3 sol.coil- pack.NEG gauge=16AWG length=0.1m
`

func TestDiodeOfACoil(t *testing.T) {
	for _, c := range []struct {
		name, more string
		grade      support.Grade
		words      string
	}{
		{"none", "", support.Caution, "no diode across it"},
		{"right", "part dio diode\nwire d1 dio.cathode sol.coil+\nwire d2 dio.anode sol.coil-", support.Good, "band at sol.coil+"},
		{"reversed", "part dio diode\nwire d1 dio.anode sol.coil+\nwire d2 dio.cathode sol.coil-", support.Danger, "wrong way round"},
		{"low", "part dio diode reverse-voltage=50V\nwire d1 dio.cathode sol.coil+\nwire d2 dio.anode sol.coil-", support.Fault, "holds back 50 V"},
		{"near", "part dio diode reverse-voltage=100V\nwire d1 dio.cathode sol.coil+\nwire d2 dio.anode sol.coil-", support.Caution, "less than twice"},
		{"thin", "part dio diode continuous-current=0.2A\nwire d1 dio.cathode sol.coil+\nwire d2 dio.anode sol.coil-", support.Fault, "carries 200 mA"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := report(t, keyed+c.more, support.Options{})
			require.Len(t, r.Coils, 1)
			coil := r.Coils[0]
			require.True(t, says(coil.Judgements, c.grade, c.words), "%v", coil.Judgements)
			require.Equal(t, "key-on", coil.FedIn)
			require.Equal(t, "sol.coil+", coil.Plus.String())
			require.InEpsilon(t, 53.3/140, coil.Amps, 1e-2)
			require.Equal(t, c.grade == support.Danger || c.grade == support.Fault, r.IsBad())
		})
	}
}

// By hand: 53.3 V over 140 ohm is 0.381 A; it lets go at 10 V, 0.0714 A; against a diode of 0.8 V
// that is 6 ms x ln((0.381 + 0.0057) / (0.0714 + 0.0057)) = 6 x ln 5.014 = 9.67 ms.
func TestReleaseByHand(t *testing.T) {
	r := report(t, keyed+"part dio diode\nwire d1 dio.cathode sol.coil+\nwire d2 dio.anode sol.coil-", support.Options{})
	require.InEpsilon(t, 9.67e-3, r.Coils[0].Release, 5e-3)
	require.InEpsilon(t, 6e-3*53.3*53.3/140/2, r.Coils[0].Joules, 1e-2)
}

// Two coils on one driver add up; suppression built in is told, and a diode beside it too.
func TestDriverAndBuiltIn(t *testing.T) {
	const drive = `
part pack lithium-pack-16
part sol contactor-48v
part ctrl controller-ac-precharge driver-current=0.5A
part key key-switch
wire w1 pack.POS sol.L1 gauge=2AWG length=0.1m
wire w2 sol.L2 ctrl.B+ gauge=2AWG length=0.1m
wire w3 ctrl.B- pack.NEG gauge=2AWG length=0.1m
wire k1 pack.POS key.BAT gauge=16AWG length=0.1m
wire k2 key.IGN ctrl.KSI gauge=16AWG length=0.1m
wire k3 ctrl.coil-supply sol.coil+ gauge=16AWG length=0.1m
wire k4 sol.coil- ctrl.coil-driver gauge=16AWG length=0.1m
`
	one := report(t, drive, support.Options{}).Coils[0]
	require.Equal(t, "ctrl.coil-driver", one.Driver.At.String())
	require.True(t, says(one.Judgements, support.Good, "built in"))
	require.True(t, says(one.Judgements, support.Good, "the driver at ctrl.coil-driver"))
	two := report(t, drive+`
		part sol2 contactor-48v
		wire k5 ctrl.coil-supply sol2.coil+ gauge=16AWG length=0.1m
		wire k6 sol2.coil- ctrl.coil-driver gauge=16AWG length=0.1m
		part dio diode
		wire d1 dio.cathode sol.coil+
		wire d2 dio.anode sol.coil-`, support.Options{}).Coils
	require.Len(t, two, 2)
	require.True(t, says(two[0].Judgements, support.Fault, "the driver at ctrl.coil-driver"))
	require.True(t, says(two[0].Judgements, support.Note, "one too many"))
}
