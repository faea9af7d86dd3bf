package protect_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/opening"
)

func TestAShortedPackIsLimitedByNothing(t *testing.T) {
	r := read(t, cart+"wire zz pack.POS pack.NEG gauge=2AWG insulation=105C length=1m\n")
	c := of(t, r, "zz")
	require.True(t, math.IsInf(c.Exposure.Amps, 1))
	require.Equal(t, opening.No, c.Protected())
	require.False(t, r.Holds())

	fused := of(t, read(t, cart+"wire zz sol.L1 pack.NEG gauge=2AWG insulation=105C length=1m\n"), "zz")
	require.Equal(t, 200.0, fused.Exposure.Amps, "behind the main fuse")
}

func TestTheNegativeOfAParallelPackCarriesWhatItsPositiveDoes(t *testing.T) {
	r := read(t, cart+"part pk2 lithium-pack-16\nwire zp pk2.POS pack.POS gauge=2AWG insulation=105C length=300mm\nwire zn pk2.NEG pack.NEG gauge=2AWG insulation=105C length=300mm\n")
	require.True(t, math.IsInf(of(t, r, "zp").Exposure.Amps, 1))
	require.True(t, math.IsInf(of(t, r, "zn").Exposure.Amps, 1))
	require.Equal(t, opening.No, of(t, r, "zn").Protected())
}

// TestTheFaultGoesHomeToThePack: a charger of a higher voltage does not draw the fault to
// its own terminal, behind its cable.
func TestTheFaultGoesHomeToThePack(t *testing.T) {
	const charger = "part chg charger-onboard-48v charge-voltage=60V\nwire c1 chg.DC+ sol.L1 gauge=10AWG insulation=105C length=3m\nwire c2 chg.DC- pack.NEG gauge=10AWG insulation=105C length=3m\n"
	with, without := device(t, read(t, cart+charger), "fu1"), device(t, read(t, cart), "fu1")
	require.InDelta(t, without.Amps, with.Amps, 25, "the charger adds its own current at most")
}

func TestAFuseInTheNegativeIsJudgedToo(t *testing.T) {
	r := read(t, strings.NewReplacer("wire w4 ctrl.B- pack.NEG", "part fun fuse-inline fuse-rating=200A\nwire w9 fun.out pack.NEG gauge=2AWG insulation=105C length=100mm\nwire w4 ctrl.B- fun.in").Replace(cart))
	d := device(t, r, "fun")
	require.InEpsilon(t, 5000, d.Amps, 0.2)
	require.Equal(t, opening.No, d.Breaks())
}

// TestATapOfAStringSeesItsOwnVolts: two of four 6 V batteries, 14.7 V at the end of charge.
func TestATapOfAStringSeesItsOwnVolts(t *testing.T) {
	const tapped = `
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
part ful fuse-inline fuse-rating=10A
part lamp lamp-12v
wire j1 b1.+ b2.- gauge=4AWG length=200mm
wire j2 b2.+ b3.- gauge=4AWG length=200mm
wire j3 b3.+ b4.- gauge=4AWG length=200mm
wire t1 b2.+ ful.in gauge=16AWG insulation=105C length=100mm
wire t2 ful.out lamp.+ gauge=16AWG insulation=105C length=1m
wire t3 lamp.- b1.- gauge=16AWG insulation=105C length=1m
`
	r := read(t, tapped)
	require.InDelta(t, 14.7, device(t, r, "ful").Full.Value, 0.1)
	require.InDelta(t, 12, of(t, r, "t2").Nominal, 0.1)
}

func TestPracticeLeavesOnlyWhatItKnowsToBeShort(t *testing.T) {
	const lead = "part pre precharge-resistor\nwire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm\nwire p2 pre.b sol.L2 gauge=18AWG insulation=105C\n"
	r := read(t, cart+lead)
	require.Equal(t, opening.Yes, of(t, r, "p1").Protected())
	require.Equal(t, opening.NotKnown, of(t, r, "p2").Protected())
}

func TestAMotorLeadIsLeftToTheControllerOnlyBehindAFuse(t *testing.T) {
	const loop = "part motor motor-series\nwire m1 ctrl.B+ motor.A1 gauge=4AWG insulation=105C length=600mm\nwire m2 motor.A2 motor.S1 gauge=4AWG insulation=105C length=100mm\nwire m3 motor.S2 ctrl.M- gauge=4AWG insulation=105C length=600mm\n"
	require.Equal(t, opening.Yes, of(t, read(t, cart+loop), "m1").Protected())
	bare := strings.NewReplacer("part fu1 fuse-class-t fuse-rating=200A\n", "", "pack.POS fu1.in", "pack.POS sol.L1", "wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm\n", "").Replace(cart + loop)
	require.Equal(t, opening.No, of(t, read(t, bare), "m1").Protected())
}

func TestAPoorJointDoesNotMakeAFaultSmaller(t *testing.T) {
	poor := strings.Replace(cart, "wire w1 pack.POS fu1.in gauge=2AWG", "wire w1 pack.POS fu1.in condition=corroded gauge=2AWG", 1)
	require.InDelta(t, device(t, read(t, cart), "fu1").Amps, device(t, read(t, poor), "fu1").Amps, 1, "it may be cleaned tomorrow")
	require.Less(t, of(t, read(t, poor), "w3").Least.Amps, of(t, read(t, cart), "w3").Least.Amps, "but it makes a fuse slower today")
}

// TestParallelStringsAddTheirFaultCurrents: parallel batteries add their short-circuit
// ratings, batteries in series do not. Six 6 V batteries of 2400 A in three strings of two
// make 7200 A (worked example of ABYC E-11 for the interrupting capacity of main devices).
func TestParallelStringsAddTheirFaultCurrents(t *testing.T) {
	var text strings.Builder
	text.WriteString("part plus bus-bar-4\npart minus bus-bar-4\npart fu fuse-class-t\npart lamp lamp-12v\n" +
		"wire f1 plus.4 fu.in gauge=4/0AWG length=1mm\nwire f2 fu.out lamp.+ gauge=4/0AWG length=1mm\nwire f3 lamp.- minus.4 gauge=4/0AWG length=1mm\n")
	for i := range 3 {
		fmt.Fprintf(&text, "part a%[1]d lead-battery-6v fault-current=2400A\npart b%[1]d lead-battery-6v fault-current=2400A\n"+
			"wire x%[1]d a%[1]d.- minus.%[1]d gauge=4/0AWG length=1mm\nwire y%[1]d a%[1]d.+ b%[1]d.- gauge=4/0AWG length=1mm\nwire z%[1]d b%[1]d.+ plus.%[1]d gauge=4/0AWG length=1mm\n", i+1)
	}
	r := read(t, text.String())
	const volts, joints = 2 * 6.32, 0.2e-3 + 0.6e-3/3 // six good joints a string, two before the fuse
	ohms := volts/device(t, r, "fu").Amps - joints
	require.InEpsilon(t, 7200, volts/ohms, 0.04, "bolted to the pole of one string, behind the joints of the others")
}
