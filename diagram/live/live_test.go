package live_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

// in solves a state of a small sheet.
func in(t *testing.T, text, name string) scene.State {
	t.Helper()
	job, err := mini.Job(text)
	require.NoError(t, err)
	require.Empty(t, job.Check(part.Library()))
	n := network.Build(job, &job.Sheets[0], part.Library())
	s, ok := state.Find(n.States(), name)
	require.True(t, ok, name)
	solved, err := n.Solve(s)
	require.NoError(t, err)
	return live.Of(n, solved)
}

// lamps is a pack that feeds a contactor through a key, and a lamp behind its contact.
const lamps = `
part pack lithium-pack-16
part fu fuse-inline-80v fuse-rating=10A
part key key-switch
part sol contactor-48v
part lt lamp-work-48v
wire p pack.POS fu.in gauge=10AWG length=1m
wire f fu.out sol.L1 gauge=10AWG length=1m
wire b fu.out key.BAT gauge=16AWG length=1m
wire i key.IGN sol.coil+ gauge=16AWG length=1m
wire c sol.coil- pack.NEG gauge=16AWG length=1m
wire l sol.L2 lt.+ gauge=16AWG
wire m lt.- pack.NEG gauge=16AWG length=1m
`

func TestWiresAreDeadOnTheMinusSideOrLive(t *testing.T) {
	parked, on := in(t, lamps, state.Parked), in(t, lamps, state.KeyOn)
	for wire, want := range map[string][2]scene.Energy{
		"p": {scene.Live, scene.Live}, "b": {scene.Live, scene.Live}, "i": {scene.Dead, scene.Live},
		"c": {scene.Return, scene.Return}, "l": {scene.Dead, scene.Live}, "m": {scene.Return, scene.Return},
	} {
		require.Equal(t, want, [2]scene.Energy{parked.Wires[wire].Energy, on.Wires[wire].Energy}, wire)
	}
	require.Zero(t, parked.Wires["p"].Amps)
	require.Regexp(t, `^5[0-9]\.?[0-9]? V$`, parked.Wires["p"].Figure, "what a meter shows on it")
	require.Positive(t, on.Wires["l"].Amps, "from the contactor to the lamp")
	require.Positive(t, on.Wires["m"].Amps, "from the lamp back to the pack")
	require.InDelta(t, on.Wires["l"].Amps, on.Wires["m"].Amps, 1e-6)
	require.Contains(t, on.Remarks[0], "1 of 7 wires", "the length of l is not recorded")
}

func TestPartsSayWhatTheyDo(t *testing.T) {
	parked, on := in(t, lamps, state.Parked), in(t, lamps, state.KeyOn)
	for part, want := range map[string][2]string{
		"pack": {"ON", "ON"}, "key": {"open", "CLOSED"}, "sol": {"open", "CLOSED"}, "lt": {"off", "ON"}, "fu": {"", ""},
	} {
		require.Equal(t, want, [2]string{parked.Parts[part].Word, on.Parts[part].Word}, part)
		require.Equal(t, want[1] != "" && want[1][0] < 'a', on.Parts[part].Active, part)
	}
	asleep := in(t, lamps, state.PackAsleep)
	require.Equal(t, scene.Working{Word: "off"}, scene.Working{Word: asleep.Parts["pack"].Word})
	require.Equal(t, scene.Dead, asleep.Wires["f"].Energy)
}

// A wire behind a coil or a lamp whose return is open reads the full voltage: it must not
// pass for dead.
func TestWhatHangsOnASourceThroughACoilIsLive(t *testing.T) {
	s := in(t, lamps+"\npart sw switch\nwire x pack.POS lt2.+\nwire y lt2.- sw.IN\nwire z sw.OUT pack.NEG\npart lt2 lamp-work-48v", state.Parked)
	require.Equal(t, scene.Live, s.Wires["y"].Energy)
	require.Regexp(t, `V$`, s.Wires["y"].Figure)
}

func TestWhatNobodyKnowsIsNotJudged(t *testing.T) {
	s := in(t, lamps+`
part ctrl controller-ac
part motor motor-ac
part q unknown
wire u ctrl.U motor.U
wire un sol.L2 untraced
wire uq key.IGN q.x
wire cut sol.L2 cut
wire away capped cut`, state.Parked)
	require.Equal(t, scene.Unjudged, s.Wires["u"].Energy, "motor phases")
	require.Equal(t, scene.Unjudged, s.Wires["un"].Energy, "an untraced end may be fed from there")
	require.Equal(t, scene.Unjudged, s.Wires["l"].Energy, "what is joined to it as well")
	require.Equal(t, scene.Unjudged, s.Wires["uq"].Energy, "an unknown part may feed it")
	require.Equal(t, scene.Unjudged, s.Wires["away"].Energy, "nothing is known to feed it")
	require.Contains(t, s.Remarks[len(s.Remarks)-1], "take them for live")
}

func TestMainsIsNeverCalledDead(t *testing.T) {
	s := in(t, `
part inlet ac-inlet
part chg charger-onboard-48v
part pack lithium-pack-16
wire a inlet.L chg.AC-L serves=mains
wire b chg.DC+ pack.POS
wire c chg.DC- pack.NEG`, state.Charging)
	require.Equal(t, scene.Unjudged, s.Wires["a"].Energy)
	require.Negative(t, -s.Wires["b"].Amps, "the charger gives")
	require.Equal(t, "ON", s.Parts["chg"].Word)
}

func TestFiguresAsAMeterShowsThem(t *testing.T) {
	for amps, want := range map[float64]string{
		187.4: "187 A", 99.6: "100 A", 12.34: "12 A", 3.14: "3.1 A", 1: "1 A", 0.9961: "1 A", 0.5: "500 mA", 0.0123: "12 mA", 0.00163: "1.6 mA", 0.0004: "0 A", -2: "-2 A",
	} {
		require.Equal(t, want, live.Amperes(amps), "%v", amps)
	}
	for volts, want := range map[float64]string{
		51.24: "51.2 V", 102.4: "102 V", 5: "5 V", 0.213: "0.213 V", 0.093: "93 mV", 0.0123: "12 mV", 0.0001: "0 V", -51.26: "-51.3 V", 0: "0 V",
	} {
		require.Equal(t, want, live.Volts(volts), "%v", volts)
	}
}

func TestAnIsolatedSupplyIsReadAgainstItsOwnMinus(t *testing.T) {
	text := lamps + `
part red reducer-isolated
part l2 lamp-12v
wire r1 fu.out red.IN+
wire r2 red.IN- pack.NEG
wire r3 key.IGN red.WAKE
wire r4 red.OUT+ l2.+
wire r5 red.OUT- l2.-`
	on := in(t, text, state.KeyOn)
	require.Equal(t, scene.Live, on.Wires["r4"].Energy)
	require.Equal(t, scene.Return, on.Wires["r5"].Energy)
	require.Positive(t, on.Wires["r4"].Amps)
	require.Equal(t, "ON", on.Parts["red"].Word)
	require.Equal(t, scene.Dead, in(t, text, state.Parked).Wires["r4"].Energy)

	job, err := mini.Job(text)
	require.NoError(t, err)
	n := network.Build(job, &job.Sheets[0], part.Library())
	s, _ := state.Find(n.States(), state.KeyOn)
	solved, err := n.Solve(s)
	require.NoError(t, err)
	volts, against, ok := live.Potential(n, solved, n.Feeds(), n.Node(model.TerminalRef{Part: "l2", Name: "+"}))
	require.True(t, ok)
	require.InDelta(t, 12, volts, 0.5)
	require.Equal(t, "red.OUT-", n.Point(against).String())
}
