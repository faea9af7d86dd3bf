package support_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/support"
)

// Lessons In Electric Circuits, volume DC, chapter on batteries: 70 Ah last 20 h at 3.5 A and 10 h
// at 7 A.
func TestConstantHoursAsPrinted(t *testing.T) {
	require.InDelta(t, 20, support.ConstantHours(70, 3.5, 1), 1e-12)
	require.InDelta(t, 10, support.ConstantHours(70, 7, 1), 1e-12)
}

// Dhogal, Basic Electrical Engineering, p. 174 (re-worked in a public collection): 30 A for 6 h at
// 2 V come out after 40 A for 5 h at 2.5 V: 90 % of the ampere-hours, 72 % of the energy.
func TestLeadReturnsNineTenths(t *testing.T) {
	require.InDelta(t, 5, support.ConstantHours(30*6, 40, 0.90), 1e-12)
	require.InDelta(t, 0.72, 30.0*6*2/(40*5*2.5), 1e-12)
}

// 12 A of 120 V (80 % of 15 A, NEC 210.23(A)(1)) with an efficiency of 90 % and a power factor of
// 98 %: 12 x 120 x 0.9 x 0.98 = 1270 W, 21.7 A at 58.4 V.
func TestLargestChargerOnAnOrdinaryCircuit(t *testing.T) {
	b := support.Branch{Amps: 15, Volts: 120}
	require.InDelta(t, 12, b.Allows(), 1e-12)
	require.InDelta(t, 16, support.Branch{Amps: 20}.Allows(), 1e-12)
	ac := support.ACSide{Volts: 120, Efficiency: 0.9, PowerFactor: 0.98}
	require.InDelta(t, 1270, ac.Gives(b.Allows()), 0.5)
	require.InDelta(t, 21.7, ac.Gives(b.Allows())/58.4, 0.05)
	require.InDelta(t, 12, ac.Draws(58.4, ac.Gives(12)/58.4), 1e-9)
}

// AC amperes of charging currents, worked out on paper with 92 % and 98 % at 120 V, such as
// 58.4 x 18 / (0.92 x 0.98 x 120) = 1051.2 / 108.19 = 9.7 A.
func TestACAmpsByHand(t *testing.T) {
	ac := support.ACSide{Volts: 120, Efficiency: 0.92, PowerFactor: 0.98}
	for _, c := range []struct{ volts, amps, ac float64 }{{58.4, 18, 9.7}, {58.4, 25, 13.5}, {58.4, 22, 11.9}, {43.8, 20, 8.1}} {
		require.InDelta(t, c.ac, ac.Draws(c.volts, c.amps), 0.05)
	}
}

// Both published forms of the tail bound the range: 2 h become 2.5 to 3 h by the one and 2.5 h by
// the other.
func TestTailIsARange(t *testing.T) {
	require.Equal(t, support.Hours{Least: 2.5, Most: 3}, support.WithTail(2))
	require.Equal(t, support.Hours{Least: 10.5, Most: 12.5}, support.WithTail(10))
	require.Equal(t, support.Hours{Least: 1.25, Most: 2}, support.WithTail(1))
}

// Four fifths of 160 Ah at 25 mA: 128000 / 25 / 24 = 213 days.
func TestDaysByHand(t *testing.T) {
	require.InDelta(t, 213, support.Days(0.8*160, 25e-3), 0.5)
}

func charged(charger, pack string) string {
	return `
part pack lithium-pack-16 ` + pack + `
part chg charger-onboard-48v ` + charger + `
wire w1 chg.DC+ pack.POS gauge=10AWG length=1m
wire w2 chg.DC- pack.NEG gauge=10AWG length=1m
`
}

func TestChargerAgainstPack(t *testing.T) {
	for _, c := range []struct {
		name, charger, pack string
		branch              float64
		grade               support.Grade
		words               string
	}{
		{"fits", "", "", 0, support.Good, "end voltage 58.4 V"},
		{"circuit", "", "", 0, support.Good, "draws 9.72 A AC"},
		{"cells", "cells=15_cells", "", 0, support.Danger, "made for 15 cells"},
		{"lead", "cells=24_cells charge-voltage=58.8V", "", 0, support.Danger, "made for 24 cells of lead"},
		{"volts", "charge-voltage=60V", "", 0, support.Danger, "goes up to 60 V"},
		{"never full", "charge-voltage=54.4V", "", 0, support.Caution, "never full"},
		{"amps", "charge-current=60A", "", 60, support.Fault, "gives 60 A"},
		{"large", "charge-current=25A", "", 0, support.Fault, "draws 13.5 A AC"},
		{"on 20 A", "charge-current=25A", "", 20, support.Good, "draws 13.5 A AC"},
		{"label", "ac-current=13A", "", 0, support.Fault, "draws 13 A AC"},
		{"cold", "", "", 0, support.Note, "below 0 C"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := report(t, charged(c.charger, c.pack), support.Options{Branch: c.branch})
			require.Len(t, r.Charging, 1)
			got := r.Charging[0]
			require.True(t, says(got.Judgements, c.grade, c.words), "%v", got.Judgements)
			require.Equal(t, c.branch == 0, got.Branch.Assumed)
		})
	}
}

// 100 Ah at 18 A with 97 % returned: 100/17.46 = 5.73 h; 1 m of stranded 10 AWG each way, 3.34 mohm,
// and four joints of 0.1 mohm are 7.1 mohm: 0.13 V at 18 A.
func TestTimeAndDropByHand(t *testing.T) {
	got := report(t, charged("", ""), support.Options{}).Charging[0]
	require.InDelta(t, 5.73, got.Constant, 0.01)
	require.InDelta(t, 6.23, got.Full.Least, 0.01)
	require.InDelta(t, 7.16, got.Full.Most, 0.01)
	require.InDelta(t, 2*3.342e-3+4*0.1e-3, got.Ohms, 0.01e-3)
	require.InDelta(t, 0.1275, got.Drop, 0.001)
}

// Parked, a pack feeds its BMS, 15 mA, and the charger's leak, 5 mA: 80 Ah last 166.7 days.
func TestStandByByHand(t *testing.T) {
	s := report(t, charged("", ""), support.Options{}).StandBy
	require.InDelta(t, 20e-3, s.Amps, 1e-5)
	require.InDelta(t, 80/20e-3/24, s.Days, 0.1)
	require.Equal(t, "pack", string(s.Draws[0].Part))
	require.True(t, says(s.Judgements, support.Note, "pack draws 75 %"))
}

// Lamps on two batteries of a string empty those two first.
func TestTapEmptiesItsOwnBatteriesFirst(t *testing.T) {
	s := report(t, `
part b1 lead-battery-12v capacity=100Ah
part b2 lead-battery-12v capacity=100Ah
part lt1 lamp-12v voltage=12V current=1.2A
wire j1 b1.+ b2.- gauge=4AWG length=0.1m
wire l1 b1.+ lt1.+ gauge=16AWG length=0.1m
wire l2 b1.- lt1.- gauge=16AWG length=0.1m`, support.Options{}).StandBy
	require.Equal(t, "b1", string(s.First))
	require.InEpsilon(t, 50/(12.65/10)/24, s.Days, 0.01)
	require.True(t, says(s.Judgements, support.Fault, "after 1.6"), "%v", s.Judgements)
}

func TestNothingAtAll(t *testing.T) {
	r := report(t, "part lt1 lamp-12v", support.Options{})
	require.Nil(t, r.StandBy)
	require.Empty(t, r.PreCharge)
	require.False(t, r.IsBad())
	for _, s := range r.Sections() {
		require.Empty(t, s.Items, s.Title)
		require.NotEmpty(t, s.None, s.Title)
	}
}

// Limits from a label make a fault, limits from memory a caution.
func TestCurrentsAgainstLimits(t *testing.T) {
	r := report(t, charged("charge-current=18A", "charge-current=10A"), support.Options{})
	var charging *support.Current
	for i := range r.Ranges[0].Rows {
		if row := &r.Ranges[0].Rows[i]; row.What == "charging" {
			charging = row
		}
	}
	require.NotNil(t, charging)
	require.InDelta(t, 18, charging.Amps, 0.1)
	require.True(t, charging.Into)
	require.Equal(t, support.Fault, charging.Grade)
}

func TestBrakingIntoAFullPack(t *testing.T) {
	for _, c := range []struct {
		most  string
		grade support.Grade
	}{{"63V", support.Caution}, {"59V", support.Fault}} {
		r := report(t, `
part pack lithium-pack-16 internal-resistance=8mohm
part ctrl controller-sepex regeneration-current=100A max-input-voltage=`+c.most+`
wire w1 pack.POS ctrl.B+ gauge=2AWG length=0.1m
wire w2 ctrl.B- pack.NEG gauge=2AWG length=0.1m`, support.Options{})
		// 58.4 V and 100 A over 8 mohm: 59.2 V.
		require.True(t, says(r.Ranges[0].Judgements, c.grade, "= 59.2 V"), "%v", r.Ranges[0].Judgements)
	}
}
