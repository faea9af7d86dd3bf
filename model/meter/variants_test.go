package meter_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// series is the traction part of the carts with a series motor behind a charge computer.
var series = strings.Replace(traction, "wire w4 ctrl.B- pack.NEG", "wire w4 ctrl.B- cmp.NEG-CART", 1)

// sepex is a cart with a separately excited motor; feed of the coil and charge lock-out
// are still to be wired.
const sepex = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=250A
part sol contactor-48v
part ctrl controller-sepex
part motor motor-sepex
part dir direction-rocker
part key key-switch
part tow tow-run
part pedal pedal-switch
part fu3 fuse-cartridge fuse-rating=10A
wire w1 pack.POS fu1.in gauge=2AWG length=0.2m
wire w2 fu1.out sol.L1 gauge=2AWG length=1m
wire w3 sol.L2 ctrl.B+ gauge=2AWG length=0.4m
wire w4 ctrl.B- cmp.NEG-CART gauge=2AWG length=1m
wire m1 ctrl.B+ motor.A1 gauge=2AWG length=0.7m
wire m2 motor.A2 ctrl.M- gauge=2AWG length=0.7m
wire m3 ctrl.F1 motor.F1 gauge=10AWG length=0.7m
wire m4 ctrl.F2 motor.F2 gauge=10AWG length=0.7m
wire k1 sol.L1 fu3.in gauge=16AWG length=0.2m
wire k2 fu3.out tow.1 gauge=16AWG length=0.4m
wire k3 tow.2 key.BAT gauge=16AWG length=1m
wire k4 tow.2 ctrl.logic gauge=16AWG length=1m
wire k5 key.IGN pedal.COM gauge=16AWG length=0.4m
wire k6 pedal.NO ctrl.foot gauge=16AWG length=1m
wire k7 key.IGN dir.COM gauge=16AWG length=0.4m
wire k8 dir.F ctrl.fwd gauge=16AWG length=1m
wire k9 dir.R ctrl.rev gauge=16AWG length=1m
wire k11 tow.2 sol.coil+ gauge=16AWG length=0.4m
wire k12 sol.coil- ctrl.coil-driver gauge=16AWG length=0.4m
`

// onKey is the charger's interlock between key and key input of a controller that drives
// its own contactor.
const onKey = charged + `
wire i1 key.IGN chg.interlock-a gauge=16AWG length=1m
wire i2 chg.interlock-b ctrl.KSI gauge=16AWG length=1m
`

// variants are the usual control chains of the main contactor, as carts are built: common
// practice, no source.
var variants = []struct{ name, about, text string }{
	{"V1", "positive-switched: key, direction micro, pedal, coil; charger's interlock in the feed",
		traction + precharged + charged + towed + fed + returned + `
wire i1 key.IGN chg.interlock-a gauge=16AWG length=1m
wire i2 chg.interlock-b dir.micro-com gauge=16AWG length=1m`},
	{"V2", "controller-driven: the coil is fed in run, the controller's driver pulls it low",
		strings.Replace(sepex, "cmp.NEG-CART", "pack.NEG", 1) + precharged + onKey},
	{"V3", "negative-switched: coil fed from the key and micro, the pedal switches its return",
		traction + precharged + charged + towed + `
part pedal pedal-switch
wire i1 key.IGN chg.interlock-a gauge=16AWG length=1m
wire i2 chg.interlock-b dir.micro-com gauge=16AWG length=1m
wire k5 dir.micro-no sol.coil+ gauge=16AWG length=1m
wire k6 sol.coil- pedal.COM gauge=16AWG length=1m
wire k7 pedal.NO pack.NEG gauge=16AWG length=1m
wire k9 dir.micro-no ctrl.KSI gauge=16AWG length=1m`},
	{"V4", "interlocked return: the socket's contact between coil and negative opens with the plug",
		traction + precharged + towed + fed + `
part rec receptacle-interlock
wire i1 key.IGN dir.micro-com gauge=16AWG length=1m
wire n3 rec.+ sol.L1 gauge=6AWG length=0.5m
wire n4 rec.- pack.NEG gauge=6AWG length=0.5m
wire i2 sol.coil- rec.interlock-a gauge=16AWG length=1m
wire i3 rec.interlock-b pack.NEG gauge=16AWG length=1m`},
	{"V5-L1", "computer lock-out in the return of the coil",
		series + precharged + towed + fed + computed + `
part cmp charge-computer-return
wire i1 key.IGN dir.micro-com gauge=16AWG length=1m
wire i2 sol.coil- cmp.lockout-a gauge=16AWG length=1m
wire i3 cmp.lockout-b pack.NEG gauge=16AWG length=1m`},
	{"V5-L2", "computer lock-out in the feed of the coil",
		strings.Replace(series, "sol.coil- pack.NEG", "sol.coil- cmp.NEG-CART", 1) + precharged + towed + strings.Replace(fed, "pedal.NO sol.coil+", "pedal.NO cmp.lockout-a", 1) + returned + computed + `
part cmp charge-computer-feed
wire i1 key.IGN dir.micro-com gauge=16AWG length=1m
wire i2 cmp.lockout-b sol.coil+ gauge=16AWG length=1m`},
	{"V5-L3", "computer lock-out by a signal pin of the controller",
		sepex + precharged + computed + `
part cmp charge-computer-signal
wire i1 key.IGN ctrl.KSI gauge=16AWG length=1m
wire i2 cmp.lockout ctrl.lockout gauge=16AWG length=1m`},
	{"V6", "key-closed: the controller closes the contactor with the key and holds it",
		precharged + charged + `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=250A
part sol contactor-48v
part ctrl controller-ac
part motor motor-ac
part dir direction-rocker
part key key-switch
part pedal pedal-switch
part fu3 fuse-cartridge fuse-rating=10A
wire w1 pack.POS fu1.in gauge=2AWG length=0.2m
wire w2 fu1.out sol.L1 gauge=2AWG length=1m
wire w3 sol.L2 ctrl.B+ gauge=2AWG length=0.4m
wire w4 ctrl.B- pack.NEG gauge=2AWG length=1m
wire m1 ctrl.U motor.U gauge=2AWG length=0.7m
wire m2 ctrl.V motor.V gauge=2AWG length=0.7m
wire m3 ctrl.W motor.W gauge=2AWG length=0.7m
wire k1 sol.L1 fu3.in gauge=16AWG length=0.2m
` + strings.ReplaceAll(towed, "tow.2 key.BAT", "tow.2 key.BAT") + `
wire i1 key.IGN chg.interlock-a gauge=16AWG length=1m
wire i2 chg.interlock-b ctrl.KSI gauge=16AWG length=1m
wire k5 key.IGN pedal.COM gauge=16AWG length=0.4m
wire k6 pedal.NO ctrl.foot gauge=16AWG length=1m
wire k7 key.IGN dir.COM gauge=16AWG length=0.4m
wire k8 dir.F ctrl.fwd gauge=16AWG length=1m
wire k9 dir.R ctrl.rev gauge=16AWG length=1m
wire k11 ctrl.coil-supply sol.coil+ gauge=16AWG length=0.4m
wire k12 ctrl.coil-driver sol.coil- gauge=16AWG length=0.4m`},
	{"V7", "resistor speed control: the main contactor as V1, more contactors short the coils by steps of the pedal", resistors},
}

// resistors is a cart without electronics: the pedal's first step closes the main
// contactor, later ones short sections of the resistor bank.
const resistors = charged + towed + `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=250A
part sol contactor-48v
part sol2 contactor-48v
part sol3 contactor-48v
part res resistor-bank
part motor motor-series
part dir direction-rotary
part key key-switch
part pedal pedal-switch-steps
part fu3 fuse-cartridge fuse-rating=10A
wire w1 pack.POS fu1.in gauge=2AWG length=0.2m
wire w2 fu1.out sol.L1 gauge=2AWG length=1m
wire w3 sol.L2 res.T1 gauge=4AWG length=0.4m
wire w4 sol.L2 sol2.L1 gauge=4AWG length=0.2m
wire w5 sol2.L1 sol3.L1 gauge=4AWG length=0.2m
wire w6 sol2.L2 res.T3 gauge=4AWG length=0.4m
wire w7 sol3.L2 res.OUT gauge=4AWG length=0.4m
wire m1 res.OUT motor.A1 gauge=4AWG length=0.7m
wire m2 motor.A2 dir.X1 gauge=4AWG length=0.7m
wire m3 dir.S1 motor.S1 gauge=4AWG length=0.7m
wire m4 motor.S2 dir.S2 gauge=4AWG length=0.7m
wire m5 dir.X2 pack.NEG gauge=4AWG length=0.7m
wire k1 sol.L1 fu3.in gauge=16AWG length=0.2m
wire i1 key.IGN chg.interlock-a gauge=16AWG length=1m
wire i2 chg.interlock-b dir.micro-com gauge=16AWG length=1m
wire k5 dir.micro-no pedal.COM gauge=16AWG length=0.4m
wire k6 pedal.P1 sol.coil+ gauge=16AWG length=1m
wire k7 pedal.P3 sol2.coil+ gauge=16AWG length=1m
wire k8 pedal.P5 sol3.coil+ gauge=16AWG length=1m
wire k9 sol.coil- pack.NEG gauge=16AWG length=1m
wire k10 sol2.coil- pack.NEG gauge=16AWG length=1m
wire k11 sol3.coil- pack.NEG gauge=16AWG length=1m
`

// everyState are the states that the rule is asked in: those that the controls give.
func moves(t *testing.T, text string) (*network.Network, []meter.Motion) {
	n := build(t, text)
	var list []meter.Motion
	for _, s := range n.States() {
		solved, err := n.Solve(s)
		require.NoError(t, err, s.Name)
		list = append(list, meter.Moves(n, solved))
	}
	return n, list
}

// TestEveryControlChainDrivesWhenItMustAndNeverElse is the golden rule of the contactor's
// control chain: for a cart to drive there is, in run with the key on, a direction chosen,
// the pedal down and no charger, a closed path through the coil, and in no other state.
// Common practice, no source.
func TestEveryControlChainDrivesWhenItMustAndNeverElse(t *testing.T) {
	var out bytes.Buffer
	for _, v := range variants {
		n, list := moves(t, v.text)
		fmt.Fprintf(&out, "%s: %s\n", v.name, v.about)
		for i, s := range n.States() {
			m := list[i]
			fmt.Fprintf(&out, "  %-28s must %-7s drives %-5v closed %v\n", s.Name, m.Must, m.Drives, m.Closed)
			require.True(t, m.Satisfied, "%s in %s", v.name, s.Name)
			driving := s.Name == state.DriveForward || s.Name == state.DriveReverse
			require.Equal(t, driving, m.Must == meter.Drive, s.Name)
			if v.name == "V6" { // holds the contactor from the key on; pedal and direction do not move it
				position, _ := s.Position(model.Key)
				plug, _ := s.Position(model.PluggedIn)
				require.Equal(t, position == "on" && plug == "no", len(m.Closed) > 0, s.Name)
				continue
			}
			require.Equal(t, driving, len(m.Closed) > 0, "%s in %s", v.name, s.Name)
			require.False(t, m.Held)
		}
	}
	golden(t, "variants.golden", out.Bytes())
}

// TestEverySettingOfEveryControlChain asks the rule in every setting of the controls, not
// only in those that have a name: tow with the key on and the pedal down, too.
func TestEverySettingOfEveryControlChain(t *testing.T) {
	for _, v := range variants {
		n := build(t, v.text)
		trial, err := meter.Try(n)
		require.NoError(t, err)
		require.GreaterOrEqual(t, trial.Tried, 2*2*3*2*2*2, v.name)
		require.Empty(t, trial.Breaches, v.name)
		for _, s := range meter.Settings(n) {
			solved, err := n.Solve(s)
			require.NoError(t, err)
			m := meter.Moves(n, solved)
			require.Equal(t, v.name == "V6" && m.Held, m.Held, "%s: %s", v.name, s.Name)
		}
	}
}

func golden(t *testing.T, name string, have []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.WriteFile(path, have, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), string(have))
}

// TestAChainThatBreaksTheRuleIsNamed takes one thing out of each chain.
func TestAChainThatBreaksTheRuleIsNamed(t *testing.T) {
	text := func(name string) string {
		for _, v := range variants {
			if v.name == name {
				return v.text
			}
		}
		return ""
	}
	drives, stays := "it drives and must not", "it must drive and does not"
	for _, c := range []struct {
		name, variant, from, to string
		state, say              string
	}{
		{"no interlock in the feed", "V1", "wire i1 key.IGN chg.interlock-a", "wire i1 key.IGN dir.micro-com", state.ChargingKeyOnPedalDown, drives},
		{"pedal bridged", "V1", "wire k6 pedal.NO", "wire k6 pedal.COM", "", ""},
		{"return of the coil cut", "V1", "wire k8 sol.coil- pack.NEG", "wire k8 sol.coil- cut", state.DriveForward, stays},
		{"driver off the coil", "V2", "wire k12 sol.coil- ctrl.coil-driver", "wire k12 sol.coil- untraced", state.DriveReverse, stays},
		{"socket's contact bridged", "V4", "wire i3 rec.interlock-b", "wire i3 rec.interlock-a", state.ChargingKeyOnPedalDown, drives},
		{"lock-out lead of the computer off", "V5-L3", "wire i2 cmp.lockout ctrl.lockout", "wire i2 cmp.lockout capped", state.ChargingKeyOnPedalDown, drives},
		{"field of the motor open", "V7", "wire m3 dir.S1 motor.S1", "wire m3 dir.S1 cut", state.DriveForward, stays},
	} {
		t.Run(c.name, func(t *testing.T) {
			broken := strings.Replace(text(c.variant), c.from, c.to, 1)
			require.NotEqual(t, text(c.variant), broken)
			n := build(t, broken)
			table, err := meter.Tabulate(n, n.States())
			require.NoError(t, err)
			breaches := strings.Join(table.Breaches(), "\n")
			if c.say == "" { // the controller still waits for the pedal, but the contactor does not
				require.Empty(t, breaches)
				up, err := n.Solve(stateOf(t, n, state.ForwardPedalUp))
				require.NoError(t, err)
				require.True(t, meter.Moves(n, up).Held)
				return
			}
			require.Contains(t, breaches, c.state+": "+c.say)
		})
	}
}
