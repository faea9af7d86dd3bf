package network_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
)

func build(t *testing.T, text string) *network.Network {
	t.Helper()
	job, err := mini.Job(text)
	require.NoError(t, err)
	require.Empty(t, job.Check(part.Library()))
	return network.Build(job, &job.Sheets[0], part.Library())
}

func ref(text string) model.TerminalRef {
	var at model.TerminalRef
	if err := at.UnmarshalText([]byte(text)); err != nil {
		panic(err)
	}
	return at
}

func node(t *testing.T, n *network.Network, text string) network.Node {
	t.Helper()
	at := n.Node(ref(text))
	require.NotEqual(t, network.None, at, text)
	return at
}

// four6 is a string of four 6 V batteries with a load at its ends.
const four6 = `
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
part buz buzzer
wire j1 b1.+ b2.-
wire j2 b2.+ b3.-
wire j3 b3.+ b4.-
wire p b4.+ buz.+
wire n b1.- buz.-
`

// plan is a small lithium cart: main fuse, contactor, series controller, key chain.
const plan = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part pre precharge-resistor
part dio diode
part ctrl controller-series
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
part pedal pedal-switch
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
wire w5 sol.L1 fu3.in gauge=16AWG insulation=105C length=100mm
wire w6 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire w7 key.IGN pedal.COM gauge=16AWG insulation=105C length=1m
wire w8 pedal.NO sol.coil+ gauge=16AWG insulation=105C length=2m
wire w9 pedal.NO ctrl.KSI gauge=16AWG insulation=105C length=2m
wire w10 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire w11 sol.L1 pre.a gauge=18AWG length=80mm
wire w12 sol.L2 pre.b gauge=18AWG length=80mm
wire w13 dio.cathode sol.coil+ gauge=18AWG length=60mm
wire w14 dio.anode sol.coil- gauge=18AWG length=60mm
`
