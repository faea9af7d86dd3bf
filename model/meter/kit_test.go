package meter_test

import (
	"flag"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

var update = flag.Bool("update", false, "write the golden files")

// job reads a small job; each change is made before it is checked.
func job(t require.TestingT, text string, changes ...func(*model.Job)) *model.Job {
	j, err := mini.Job(text)
	require.NoError(t, err)
	for _, change := range changes {
		change(j)
	}
	require.Empty(t, j.Check(part.Library()))
	return j
}

func build(t require.TestingT, text string, changes ...func(*model.Job)) *network.Network {
	j := job(t, text, changes...)
	return network.Build(j, &j.Sheets[0], part.Library())
}

func at(t require.TestingT, text string) model.TerminalRef {
	var ref model.TerminalRef
	require.NoError(t, ref.UnmarshalText([]byte(text)))
	return ref
}

func stateOf(t require.TestingT, n *network.Network, name string) state.State {
	s, ok := state.Find(n.States(), name)
	require.True(t, ok, "no state %s", name)
	return s
}

func volts(t require.TestingT, n *network.Network, name, red, black string) meter.Reading {
	r, err := meter.Volts(n, stateOf(t, n, name), at(t, red), at(t, black))
	require.NoError(t, err)
	return r
}

func ohms(t require.TestingT, n *network.Network, name, red, black string) meter.Reading {
	r, err := meter.Ohms(n, stateOf(t, n, name), at(t, red), at(t, black))
	require.NoError(t, err)
	return r
}

// traction is a 48 V series cart without its control circuit.
const traction = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=250A
part sol contactor-48v
part ctrl controller-series
part motor motor-series
part dir direction-rotary
part key key-switch
part fu3 fuse-cartridge fuse-rating=10A
wire w1 pack.POS fu1.in gauge=2AWG length=0.2m
wire w2 fu1.out sol.L1 gauge=2AWG length=1m
wire w3 sol.L2 ctrl.B+ gauge=2AWG length=0.4m
wire w4 ctrl.B- pack.NEG gauge=2AWG length=1m
wire m1 ctrl.B+ motor.A1 gauge=2AWG length=0.7m
wire m2 motor.A2 dir.X1 gauge=2AWG length=0.7m
wire m3 dir.S1 motor.S1 gauge=2AWG length=0.7m
wire m4 motor.S2 dir.S2 gauge=2AWG length=0.7m
wire m5 dir.X2 ctrl.M- gauge=2AWG length=0.7m
wire k1 sol.L1 fu3.in gauge=16AWG length=0.2m
`

// precharged is a pre-charge resistor over the contacts and a diode over the coil.
const precharged = `
part pre precharge-resistor
part dio diode
wire p1 sol.L1 pre.a gauge=18AWG length=0.1m
wire p2 pre.b sol.L2 gauge=18AWG length=0.1m
wire d1 dio.cathode sol.coil+ gauge=18AWG length=0.1m
wire d2 dio.anode sol.coil- gauge=18AWG length=0.1m
`

// charged is an on-board charger; its interlock pair is still to be wired.
const charged = `
part chg charger-onboard-48v
part fu2 fuse-cartridge fuse-rating=30A
wire c1 chg.DC+ fu2.in gauge=10AWG length=0.5m
wire c2 fu2.out sol.L1 gauge=10AWG length=0.2m
wire c3 chg.DC- pack.NEG gauge=10AWG length=0.5m
`

// towed is the feed of the key through the tow switch.
const towed = `
part tow tow-run
wire k2 fu3.out tow.1 gauge=16AWG length=0.4m
wire k3 tow.2 key.BAT gauge=16AWG length=1m
`

// fed is the feed of the coil and of the key input from the key, through a direction micro
// switch and the pedal; what stands between key and micro is still to be wired.
const fed = `
part pedal pedal-switch
wire k5 dir.micro-no pedal.COM gauge=16AWG length=0.4m
wire k6 pedal.NO sol.coil+ gauge=16AWG length=1m
wire k7 sol.coil+ ctrl.KSI gauge=16AWG length=0.4m
`

// buzzing is a reverse buzzer.
const buzzing = `
part buz buzzer
wire b1 dir.micro-com dir.rev-com gauge=18AWG length=0.1m
wire b2 dir.rev-no buz.+ gauge=18AWG length=0.4m
wire b3 buz.- pack.NEG gauge=18AWG length=1m
`

// returned is the plain return of the coil.
const returned = `
wire k8 sol.coil- pack.NEG gauge=16AWG length=1m
`

// computed are the cables of a charge computer: what it shuts is still to be wired.
const computed = `
wire n1 pack.NEG cmp.NEG-PACK gauge=2AWG length=0.2m
wire n2 fu3.out cmp.supply gauge=16AWG length=0.4m
wire n3 rec.+ sol.L1 gauge=6AWG length=0.5m
wire n4 rec.- cmp.NEG-CART gauge=6AWG length=0.5m
part rec receptacle
`
