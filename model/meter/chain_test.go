package meter_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// expectation is a cell of a table of volts as the trade writes it.
type expectation struct {
	text string
	ok   func(volts, pack float64, r meter.Reading) bool
}

var (
	zero = expectation{"0", func(v, _ float64, _ meter.Reading) bool { return math.Abs(v) < 0.3 }}
	// floats is a 0 of the tables where nothing holds the node: a meter pulls it anywhere
	// between, and the reading says so.
	floats    = expectation{"0, floating", func(_, _ float64, r meter.Reading) bool { return r.Floating && !r.Known }}
	vp        = expectation{"Vp", func(v, pack float64, _ meter.Reading) bool { return math.Abs(v-pack) < 0.6 }}
	fedBy     = expectation{"Vp less 0 to 5", func(v, pack float64, _ meter.Reading) bool { return v > pack-5 && v < pack+0.1 }}
	pulled    = expectation{"0.1 to 1", func(v, _ float64, _ meter.Reading) bool { return v > 0.1 && v < 1 }}
	almost    = expectation{"Vp less 1", func(v, pack float64, _ meter.Reading) bool { return v > pack-1.5 && v < pack }}
	throttled = expectation{"0 to Vp by pedal and speed", func(v, pack float64, r meter.Reading) bool {
		return !r.Known && !r.Floating && r.Low <= 0 && r.High >= pack-0.6 && v >= -0.3
	}}
)

// row is one state of such a table: a cell for each column, and whether the cart moves.
type row struct {
	state string
	set   []state.Setting
	cells []expectation
	moves bool
}

func checkTable(t *testing.T, n *network.Network, columns [][2]string, rows []row) {
	t.Helper()
	for _, r := range rows {
		s := stateOf(t, n, r.state)
		for _, set := range r.set {
			s = s.With(set.Control, set.Position)
		}
		bench, err := meter.At(n, s)
		require.NoError(t, err)
		pack, err := bench.Volts(at(t, "pack.POS"), at(t, "pack.NEG"))
		require.NoError(t, err)
		require.Greater(t, pack.Value, 51.0, "48 V LFP pack, 51 to 54 V at rest")
		require.Less(t, pack.Value, 54.0)
		require.Len(t, r.cells, len(columns))
		for i, c := range columns {
			reading, err := bench.Volts(at(t, c[0]), at(t, c[1]))
			require.NoError(t, err)
			require.True(t, r.cells[i].ok(reading.Value, pack.Value, reading), "%s, %s against %s: %.3f V (pack %.3f, floating %v) is not %s",
				r.state, c[0], c[1], reading.Value, pack.Value, reading.Floating, r.cells[i].text)
		}
		require.Equal(t, r.moves, meter.Moves(n, bench.Solution()).Drives, r.state)
	}
}

func variant(name string) string {
	for _, v := range variants {
		if v.name == name {
			return v.text
		}
	}
	return ""
}

var positiveColumns = [][2]string{
	{"key.IGN", "pack.NEG"}, {"dir.micro-no", "pack.NEG"}, {"sol.coil+", "pack.NEG"}, {"sol.coil-", "pack.NEG"}, {"sol.coil+", "sol.coil-"},
	{"sol.L1", "pack.NEG"}, {"sol.L2", "pack.NEG"}, {"ctrl.B+", "ctrl.M-"}, {"buz.+", "buz.-"},
}

// TestVoltsOfAPositiveSwitchedChain is the state table of a 48 V series cart with a pre-charge
// resistor, black on the pack's negative. Common practice, no source. B+ to M- is taken
// where the motor joins them; with the direction switch in neutral M- floats.
func TestVoltsOfAPositiveSwitchedChain(t *testing.T) {
	n := build(t, variant("V1")+buzzing)
	checkTable(t, n, positiveColumns, []row{
		{state: state.Parked, cells: []expectation{zero, floats, zero, zero, zero, vp, fedBy, floats, zero}},
		{state: state.KeyOn, cells: []expectation{vp, floats, zero, zero, zero, vp, fedBy, floats, zero}},
		{state: state.ForwardPedalUp, cells: []expectation{vp, vp, zero, zero, zero, vp, fedBy, zero, zero}},
		{state: state.DriveForward, cells: []expectation{vp, vp, vp, zero, vp, vp, vp, throttled, zero}, moves: true},
		{state: state.DriveReverse, cells: []expectation{vp, vp, vp, zero, vp, vp, vp, throttled, vp}, moves: true},
		{state: state.NeutralPedalDown, cells: []expectation{vp, zero, zero, zero, zero, vp, fedBy, floats, zero}},
		{state: state.Tow, cells: []expectation{zero, floats, zero, zero, zero, vp, fedBy, floats, zero}},
		{state: state.Tow, set: []state.Setting{{Control: "key", Position: "on"}, {Control: "direction", Position: "forward"}, {Control: "pedal", Position: "down"}},
			cells: []expectation{zero, zero, zero, zero, zero, vp, fedBy, zero, zero}},
	})
}

// TestVoltsWithTheChargerIn are the two ways in which a plug keeps the contactor open: the
// interlocked return lets coil- float up to the pack, the lock-out in the feed leaves coil+
// dead. Common practice, no source.
func TestVoltsWithTheChargerIn(t *testing.T) {
	columns := [][2]string{{"sol.coil+", "pack.NEG"}, {"sol.coil-", "pack.NEG"}, {"sol.coil+", "sol.coil-"}, {"sol.L1", "pack.NEG"}, {"sol.L2", "pack.NEG"}}
	in := func(cells ...expectation) []row { return []row{{state: state.ChargingKeyOnPedalDown, cells: cells}} }
	checkTable(t, build(t, variant("V5-L2")), columns, in(zero, zero, zero, vp, fedBy))
	// With the lock-out in the return the key input is live: the controller asks for current
	// and pulls its own B+ down through the pre-charge resistor to where it gives up.
	drained := expectation{"24 V, where the controller gives up", func(v, _ float64, _ meter.Reading) bool { return math.Abs(v-24) < 0.1 }}
	checkTable(t, build(t, variant("V4")), columns, in(vp, vp, zero, vp, drained))
	checkTable(t, build(t, variant("V5-L1")), columns, in(vp, vp, zero, vp, drained))
}

// TestWithoutPreChargeTheLoadSideIsDead: then the whole pack stands over the open contacts.
// Common practice, no source.
func TestWithoutPreChargeTheLoadSideIsDead(t *testing.T) {
	n := build(t, strings.Replace(variant("V1"), precharged, "", 1))
	checkTable(t, n, [][2]string{{"sol.L1", "pack.NEG"}, {"sol.L2", "pack.NEG"}, {"sol.L1", "sol.L2"}}, []row{
		{state: state.ForwardPedalUp, cells: []expectation{vp, floats, floats}},
		{state: state.DriveForward, cells: []expectation{vp, vp, zero}, moves: true},
	})
}

// TestVoltsOfAControllerDrivenChain is the state table of a sepex cart whose controller pulls
// the coil. Common practice, no source. Two rows of it are not here: pedal down before the
// key, which needs the past, and a hold voltage that is chopped.
func TestVoltsOfAControllerDrivenChain(t *testing.T) {
	n := build(t, variant("V2"))
	columns := [][2]string{
		{"ctrl.logic", "pack.NEG"}, {"ctrl.KSI", "pack.NEG"}, {"ctrl.foot", "pack.NEG"}, {"ctrl.fwd", "pack.NEG"}, {"ctrl.rev", "pack.NEG"},
		{"sol.coil+", "pack.NEG"}, {"sol.coil-", "pack.NEG"}, {"sol.coil+", "sol.coil-"},
	}
	checkTable(t, n, columns, []row{
		{state: state.Tow, cells: []expectation{floats, zero, zero, zero, zero, floats, floats, zero}},
		{state: state.Parked, cells: []expectation{vp, zero, zero, zero, zero, vp, vp, zero}},
		{state: state.KeyOn, cells: []expectation{vp, vp, zero, zero, zero, vp, vp, zero}},
		{state: state.ForwardPedalUp, cells: []expectation{vp, vp, zero, vp, zero, vp, vp, zero}},
		{state: state.DriveForward, cells: []expectation{vp, vp, vp, vp, zero, vp, pulled, almost}, moves: true},
		{state: state.DriveReverse, cells: []expectation{vp, vp, vp, zero, vp, vp, pulled, almost}, moves: true},
		{state: state.ChargingKeyOnPedalDown, cells: []expectation{vp, zero, vp, vp, zero, vp, vp, zero}},
	})
}
