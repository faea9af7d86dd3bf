package meter_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// resistance is the isolation resistance of UN R100's annex on measuring it from the
// vehicle's side: vb the pack, v the larger reading of a pole to the frame, with v1 the
// same with a known ro between that pole and the frame.
func resistance(ro, vb, v, v1 float64) float64 { return ro * vb * (1/v1 - 1/v) }

// ideal is a pack without resistance and drain of its own, and wires without resistance.
const ideal = ` standby-current=0A internal-resistance=0.000001ohm rest-voltage=`

// TestIsolationOfLeaksAtThePoles: 76.8 V with 20 kohm from plus and 60 kohm from minus to
// the frame, and a meter of 10 Mohm. Readings derived from the two dividers with the
// meter in them: 57.51373 V, and 19.49486 V with 7680 ohm beside the meter. UN R100's
// formula then gives the 20 kohm exactly: the meter cancels.
func TestIsolationOfLeaksAtThePoles(t *testing.T) {
	leaks := `
part pack lithium-pack-24` + ideal + `76.8V
part fr frame-point
part up frame-leak resistance=20kohm
part down frame-leak resistance=60kohm
wire w1 up.to pack.POS gauge=16AWG length=0.1m
wire w2 up.FRAME fr.FRAME gauge=16AWG length=0.1m
wire w3 down.to pack.NEG gauge=16AWG length=0.1m
wire w4 down.FRAME fr.FRAME gauge=16AWG length=0.1m
`
	v1 := volts(t, build(t, leaks), state.Parked, "fr.FRAME", "pack.NEG")
	require.InDelta(t, 57.51373, v1.Value, 5e-5)
	require.False(t, v1.Floating)
	v2 := volts(t, build(t, leaks), state.Parked, "pack.POS", "fr.FRAME")
	require.Less(t, v2.Value, v1.Value, "the side of the smaller reading leaks more")
	with := volts(t, build(t, leaks+`
part ro precharge-resistor resistance=7680ohm
wire w5 ro.a fr.FRAME gauge=16AWG length=0.1m
wire w6 ro.b pack.NEG gauge=16AWG length=0.1m
`), state.Parked, "fr.FRAME", "pack.NEG")
	require.InDelta(t, 19.49486, with.Value, 5e-5)
	require.InDelta(t, 20e3, resistance(7680, 76.8, v1.Value, with.Value), 1)
}

// TestIsolationOfOneLeakInsideThePack: 51.2 V with one leak of 40 kohm at 30 % of the pack.
// Derived: a meter of Rm shows a share of the pack as Rm/(Rm + 40 kohm) lets through; two
// readings give the leak back, R = Rm (Vb/(V1 + V2) - 1), and its place. UN R100's formula
// takes it for 57.14 kohm, the leak over the larger share: it holds at a pole alone.
func TestIsolationOfOneLeakInsideThePack(t *testing.T) {
	inside := `
part low lithium-pack-12` + ideal + `15.36V
part high lithium-pack-16` + ideal + `35.84V
part fr frame-point
part leak frame-leak resistance=40kohm
wire w1 low.POS high.NEG gauge=16AWG length=0.1m
wire w2 leak.to high.NEG gauge=16AWG length=0.1m
wire w3 leak.FRAME fr.FRAME gauge=16AWG length=0.1m
`
	for _, c := range []struct{ input, v1, v2 float64 }{{10e6, 15.29880, 35.69721}, {2e6, 15.05882, 35.13725}, {200e3, 12.8, 29.86667}} {
		with := func(j *model.Job) {
			j.Meter = &model.Meter{Accuracy: unit.Pct(0.5), Counts: 1, Display: 60000, Input: unit.Ohms(c.input)}
		}
		n := build(t, inside, with)
		v1, v2 := volts(t, n, state.Parked, "fr.FRAME", "low.NEG").Value, volts(t, n, state.Parked, "high.POS", "fr.FRAME").Value
		require.InDelta(t, c.v1, v1, 5e-5)
		require.InDelta(t, c.v2, v2, 5e-5)
		require.InDelta(t, 40e3, c.input*(51.2/(v1+v2)-1), 2)
		require.InDelta(t, 0.3, v1/(v1+v2), 1e-6)
	}
	ro := build(t, inside+`
part ro precharge-resistor resistance=5120ohm
wire w4 ro.a high.POS gauge=16AWG length=0.1m
wire w5 ro.b fr.FRAME gauge=16AWG length=0.1m
`, func(j *model.Job) {
		j.Meter = &model.Meter{Accuracy: unit.Pct(0.5), Counts: 1, Display: 60000, Input: unit.Ohms(1e9)}
	})
	with := volts(t, ro, state.Parked, "high.POS", "fr.FRAME").Value
	require.InDelta(t, 4.066950, with, 5e-5)
	require.InDelta(t, 57142.9, resistance(5120, 51.2, 35.84, with), 1)
}
