package meter_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/state"
)

// lead is a string of two batteries with a lamp behind a switch.
const lead = `
part b1 lead-battery-6v
part b2 lead-battery-6v
part lsw light-switch
part lt lamp-12v
wire w1 b1.- b2.+ gauge=6AWG length=0.3m
wire w3 lsw.OUT lt.+ gauge=14AWG length=1m
wire w4 lt.- b2.- gauge=14AWG length=1m
`

func TestOhmsTellHowThePowerIsTakenOff(t *testing.T) {
	plain := build(t, lead+"wire w2 b1.+ lsw.IN gauge=14AWG length=1m")
	between := "the batteries taken out: they cannot be switched off, and no cable parts them from the probes; read volts here"
	first := "the batteries taken out: they cannot be switched off, lift w4 at b2.- first and cover the end"
	require.Contains(t, ohms(t, plain, state.Parked, "lt.+", "lt.-").Why, first)
	require.Contains(t, ohms(t, plain, state.LightsKeyOff, "lt.+", "lt.-").Why, first)
	require.Contains(t, ohms(t, plain, state.Parked, "lsw.IN", "lsw.OUT").Why, first, "an open contact too")
	require.Contains(t, ohms(t, plain, state.Parked, "b1.+", "b1.-").Why, between)

	apart := build(t, lead+`
part iso isolator
part pre precharge-resistor
wire w2 b1.+ iso.in gauge=6AWG length=1m
wire w5 iso.out lsw.IN gauge=14AWG length=1m
`)
	require.Contains(t, ohms(t, apart, state.Parked, "lsw.IN", "lsw.OUT").Why, "the batteries taken out: open the isolator first")
	require.Contains(t, ohms(t, apart, state.Parked, "b1.+", "b2.-").Why, between, "the isolator does not part them either")
	require.Empty(t, ohms(t, apart, state.Isolated, "lsw.IN", "lsw.OUT").Why, "nothing to take off, the contact is open")
	for _, why := range ohms(t, apart, state.Parked, "pre.a", "pre.b").Why {
		require.NotContains(t, why, "taken out", "no wire joins it to the batteries")
	}

	pack := build(t, `
part pack lithium-pack-16
part lt lamp-work-48v
wire w1 pack.POS lt.+ gauge=14AWG length=1m
wire w2 lt.- pack.NEG gauge=14AWG length=1m
`)
	require.Contains(t, ohms(t, pack, state.Parked, "lt.+", "lt.-").Why, "pack taken out: switch it off first")
	require.NotContains(t, ohms(t, pack, state.PackAsleep, "lt.+", "lt.-").Why, "pack taken out: switch it off first")
}
