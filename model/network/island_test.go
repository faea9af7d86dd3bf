package network_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/state"
)

// floating has a pack, an isolated reducer with a lamp, and two bolts of the frame.
const floating = `
part pack lithium-pack-16
part red reducer-isolated
part lamp lamp-12v
part fr1 frame-point
part fr2 frame-point
part inlet ac-inlet
part chg charger-onboard-48v
wire r1 pack.POS red.IN+ gauge=12AWG length=1m
wire r2 pack.NEG red.IN- gauge=12AWG length=1m
wire r3 pack.POS red.WAKE gauge=18AWG length=1m
wire o1 red.OUT+ lamp.+ gauge=14AWG length=1m
wire o2 red.OUT- lamp.- gauge=14AWG length=1m
wire e1 inlet.PE fr1.FRAME gauge=12AWG length=1m
wire e2 inlet.L chg.AC-L gauge=14AWG length=1m
`

func TestIslandsAreToldApartAndNamed(t *testing.T) {
	n := build(t, floating)
	require.Equal(t, node(t, n, "fr1.FRAME"), node(t, n, "fr2.FRAME"), "the frame is one piece of metal")
	require.Equal(t, node(t, n, "fr1.FRAME"), n.Frame())
	s := solve(t, n, state.Parked)
	names := map[string]bool{}
	for _, i := range s.Islands() {
		require.False(t, i.IsCoupled(), i.Name())
		names[i.Name()] = true
	}
	for _, want := range []string{"the pack", "the output of red", "the frame", "mains"} {
		require.True(t, names[want], want)
	}
	_, sure := s.Between(ref("pack.NEG"), ref("lamp.-"))
	require.False(t, sure)
}

func TestALeakCouplesPackAndFrame(t *testing.T) {
	n := build(t, floating+"part lk frame-leak resistance=20kohm\nwire l1 pack.POS lk.to length=1m gauge=16AWG\n")
	s := solve(t, n, state.Parked)
	var coupled []string
	for _, i := range s.Islands() {
		if i.IsCoupled() {
			coupled = append(coupled, i.Name())
		}
	}
	require.Equal(t, []string{"the pack and the frame"}, coupled)
	volts, sure := s.Between(ref("fr1.FRAME"), ref("pack.NEG"))
	require.True(t, sure)
	require.InDelta(t, 53.3, volts, 0.1)
}
