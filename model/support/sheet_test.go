package support_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/part"
	"example.com/lugbook/model/support"
)

// section is one section of a report in words.
func section(t *testing.T, r *support.Report, title string) support.Section {
	t.Helper()
	for _, s := range r.Sections() {
		if s.Title == title {
			return s
		}
	}
	require.Fail(t, "no section", title)
	return support.Section{}
}

func TestACSideOfNothingIsMissing(t *testing.T) {
	for rating, words := range map[string]string{
		"ac-voltage=0V":     "not known: its AC current, for ac-voltage is 0 V",
		"efficiency=0%":     "not known: its AC current, for efficiency is 0 %",
		"power-factor=0%":   "not known: its AC current, for power-factor is 0 %",
		"charge-current=0A": "not known: its AC current, for charge-current is 0 A",
		"charge-voltage=0V": "not known: its AC current, for charge-voltage is 0 V",
		"efficiency=92%":    "draws 9.72 A AC",
	} {
		r := report(t, charged(rating, ""), support.Options{})
		_, err := json.Marshal(r)
		require.NoError(t, err, rating)
		got := r.Charging[0].Judgements
		require.True(t, says(got, support.Note, words) || says(got, support.Good, words), "%s: %v", rating, got)
	}
}

// A charger of 0 A is one of which nobody knows the current: the network has nothing that
// limits it then, and what it drives is no charging current.
func TestChargerOfNoCurrentIsNotRecorded(t *testing.T) {
	r := report(t, charged("charge-current=0A", "charge-current=50A"), support.Options{})
	require.True(t, says(r.Charging[0].Judgements, support.Note, "whether it gives more than pack takes, for charge-current is 0 A"), "%v", r.Charging[0].Judgements)
	require.True(t, says(r.Ranges[0].Judgements, support.Note, "what chg charges with, for its charge-current is 0 A"), "%v", r.Ranges[0].Judgements)
	for _, row := range r.Ranges[0].Rows {
		require.NotEqual(t, "charging", row.What)
	}
	require.False(t, r.IsBad())
	require.Equal(t, "chg: up to 58.4 V, current not known", section(t, r, "Charging").Items[0].Title)
}

// NEC 210.21(B): 16 A from a 20 A circuit, but 12 A from a 15 A receptacle on it.
func TestSmallReceptacleOnACircuitOf20A(t *testing.T) {
	r := report(t, charged("charge-current=25A", ""), support.Options{Branch: 20})
	got := r.Charging[0].Judgements
	require.True(t, says(got, support.Caution, "receptacles of 15 A, and those allow 12 A"), "%v", got)
	require.True(t, says(got, support.Good, "up to 16 A"), "%v", got)
	require.False(t, says(report(t, charged("charge-current=18A", ""), support.Options{Branch: 20}).Charging[0].Judgements, support.Caution, "receptacles"), "9.7 A")
	require.False(t, says(report(t, charged("charge-current=25A", ""), support.Options{Branch: 30}).Charging[0].Judgements, support.Caution, "receptacles"))
}

// A figure of 0 anywhere gives a report that can be printed.
func TestZeroFiguresNeverBreakTheReport(t *testing.T) {
	const sheet = `
part pack lithium-pack-16 %s
part sol contactor-48v %s
part pre precharge-resistor %s
part ctrl controller-sepex %s
part key key-switch
part dio diode %s
part red reducer-isolated %s
part lt lamp-12v %s
part lamp precharge-lamp %s
part chg charger-onboard-48v %s
wire w1 pack.POS sol.L1 gauge=2AWG length=0.1m
wire w2 sol.L2 ctrl.B+ gauge=2AWG length=0.1m
wire w3 ctrl.B- pack.NEG gauge=2AWG length=0.1m
wire k1 pack.POS key.BAT gauge=16AWG length=0.1m
wire k2 key.IGN sol.coil+ gauge=16AWG length=0.1m
wire k3 sol.coil- pack.NEG gauge=16AWG length=0.1m
wire d1 dio.cathode sol.coil+
wire d2 dio.anode sol.coil-
wire p1 sol.L1 pre.a
wire p2 pre.b sol.L2
wire q1 sol.L1 lamp.a
wire q2 lamp.b sol.L2
wire r1 red.IN+ sol.L2
wire r2 red.IN- ctrl.B-
wire t1 red.OUT+ lt.+
wire t2 red.OUT- lt.-
wire c1 chg.DC+ pack.POS
wire c2 chg.DC- pack.NEG
`
	kinds := []string{"lithium-pack-16", "contactor-48v", "precharge-resistor", "controller-sepex", "diode", "reducer-isolated", "lamp-12v", "precharge-lamp", "charger-onboard-48v"}
	for i, kind := range kinds {
		def := part.Library().Definition(kind)
		require.NotNil(t, def, kind)
		for _, rating := range def.Ratings {
			text := rating.Value.String()
			at := strings.LastIndexByte(text, ' ')
			if at < 0 {
				continue
			}
			fill := make([]any, len(kinds))
			for k := range fill {
				fill[k] = ""
			}
			fill[i] = fmt.Sprintf("%s=0_%s", rating.Name, text[at+1:])
			t.Run(kind+" "+rating.Name, func(t *testing.T) {
				r := report(t, fmt.Sprintf(sheet, fill...), support.Options{})
				out, err := json.Marshal(r)
				require.NoError(t, err)
				require.NotContains(t, string(out), "Inf")
				for _, s := range r.Sections() {
					for _, item := range s.Items {
						require.NotContains(t, fmt.Sprint(item), "Inf")
						require.NotContains(t, fmt.Sprint(item), "NaN")
					}
				}
			})
		}
	}
}

// acDrive is a cart round an AC controller, which is not in it.
const acDrive = `
part pack lithium-pack-16
part sol contactor-48v
part key key-switch
part dir direction-rocker
part pedal pedal-switch
wire w2 pack.POS sol.L1 gauge=2AWG length=0.6m
wire w3 sol.L2 ctrl.B+ gauge=2AWG length=0.3m
wire w4 ctrl.B- pack.NEG gauge=2AWG length=0.9m
wire w5 sol.L1 key.BAT gauge=16AWG length=1m
wire w7 key.IGN pedal.COM gauge=16AWG length=1m
wire w8 pedal.NO ctrl.foot gauge=18AWG length=1m
wire w9 key.IGN ctrl.KSI gauge=18AWG length=1m
wire w10 key.IGN dir.COM gauge=18AWG length=1m
wire w11 dir.F ctrl.fwd gauge=18AWG length=1m
wire w12 ctrl.coil-supply sol.coil+ gauge=18AWG length=1m
wire w13 ctrl.coil-driver sol.coil- gauge=18AWG length=1m`

// A small cart whose controller gives little for long cannot take more on the flat, whatever
// carts take as a rule; while its figure is the library's, that says nothing.
func TestCruisingWithinWhatTheDriveTakes(t *testing.T) {
	for figure, most := range map[string]float64{"continuous-current=40A": 40, "continuous-current=300A": 84.4, "": 84.4} {
		r := report(t, "part ctrl controller-ac "+figure+acDrive, support.Options{})
		i := slices.IndexFunc(r.Ranges[0].Rows, func(c support.Current) bool { return c.What == "cruising" })
		require.InDelta(t, most, r.Ranges[0].Rows[i].Most, 1, figure)
	}
}

// A peak below the rating for long cannot be: the larger stands for both.
func TestPeakBelowContinuous(t *testing.T) {
	for peak, contradicts := range map[string]bool{"100A": true, "350A": false} {
		r := report(t, "part ctrl controller-ac continuous-current=200A peak-current="+peak+acDrive, support.Options{})
		amps := map[string]float64{}
		for _, row := range r.Ranges[0].Rows {
			amps[row.What] = row.Amps
		}
		require.InDelta(t, 200, amps["driving for long"], 1)
		require.Equal(t, contradicts, says(r.Ranges[0].Judgements, support.Caution, "its peak of 100 A contradicts its 200 A for long"))
		if contradicts {
			require.InDelta(t, 200, amps["driving for seconds"], 1)
		} else {
			require.InDelta(t, 350, amps["driving for seconds"], 1)
		}
	}
}

// A resistor or a capacitor so large that nothing has passed by the time that the contact
// closes is as good as no pre-charge. By hand: 5 s of 468 kohm and 5 mF, 2340 s, is nothing.
func TestPreChargeThatTakesTooLong(t *testing.T) {
	for _, c := range []struct{ ohms, farads string }{{"1000Mohm", "10mF"}, {"470kohm", "10mF"}, {"470ohm", "1000F"}} {
		r := report(t, rig("", "input-capacitance="+c.farads, fmt.Sprintf(resistor, c.ohms)), support.Options{})
		p := only(t, r)
		require.True(t, says(p.Judgements, support.Fault, "it fills too slowly"), "%v", p.Judgements)
		require.Greater(t, p.Waited, 50.0)
		require.InDelta(t, 30, p.Wait, 0)
		require.Contains(t, fmt.Sprint(p.Assumptions), "30 s after the battery is connected")
	}
	// 53.3 V behind 1 kohm and 10 mF: after 30 s 53.3 exp(-3) = 2.65 V are left, less than a twentieth.
	p := only(t, report(t, rig("", "input-capacitance=10mF", fmt.Sprintf(resistor, "1kohm")), support.Options{}))
	require.InDelta(t, 2.65, p.Waited, 0.01)
	require.True(t, says(p.Judgements, support.Good, "the contact closes on"), "%v", p.Judgements)
	// With 2 kohm it is 53.3 exp(-1.5) = 11.9 V, over some 9 mohm: above what the contact makes.
	p = only(t, report(t, rig("", "input-capacitance=10mF", fmt.Sprintf(resistor, "2kohm")), support.Options{}))
	require.InDelta(t, 11.9, p.Waited, 0.05)
	require.True(t, says(p.Judgements, support.Fault, "it fills too slowly"), "%v", p.Judgements)
}

func TestBridgedContactorIsADanger(t *testing.T) {
	for by, more := range map[string]string{
		"pre (0 ohm)": fmt.Sprintf(resistor, "0ohm"), "pre (100 mohm)": fmt.Sprintf(resistor, "100mohm"),
		"a wire": "wire p1 sol.L1 sol.L2 gauge=10AWG length=0.1m",
	} {
		r := report(t, rig("", "", more), support.Options{})
		p := only(t, r)
		require.True(t, p.Bridged)
		require.True(t, says(p.Judgements, support.Danger, by+" bridges sol: ctrl is always live"), "%v", p.Judgements)
		require.True(t, r.IsBad())
		_, err := json.Marshal(r)
		require.NoError(t, err)
	}
}

func TestCoilOfNothingIsAShort(t *testing.T) {
	r := report(t, strings.Replace(keyed, "coil-resistance=140ohm", "coil-resistance=0ohm", 1), support.Options{})
	require.True(t, says(r.Coils[0].Judgements, support.Danger, "next to nothing resists"), "%v", r.Coils[0].Judgements)
	require.Equal(t, "key-on", r.Coils[0].FedIn)
	require.NotContains(t, section(t, r, "Coils and their suppression").Items[0].Title, "not fed")
}

// What the batteries give is the current out of them, also where most of it is lost on the way.
func TestDrainIsWhatTheBatteriesGive(t *testing.T) {
	r := report(t, `
part p1 lithium-pack-16
part m motor-series
wire w1 p1.POS m.A1 gauge=2AWG length=0.5m
wire w2 m.A2 m.S1 gauge=2AWG length=0.5m
wire w3 m.S2 p1.NEG gauge=2AWG length=0.5m`, support.Options{})
	require.Greater(t, r.StandBy.Amps, 100.0)
	require.InEpsilon(t, r.StandBy.Drain, r.StandBy.Amps, 1e-6)
	require.InEpsilon(t, r.StandBy.Volts*r.StandBy.Amps, r.StandBy.Watts, 1e-6)
	require.True(t, strings.HasPrefix(section(t, r, support.RestTitle).Items[0].Lines[2], "wires "), "%v", section(t, r, support.RestTitle).Items[0].Lines)
}

func TestShortedPacksAreNoPacks(t *testing.T) {
	ring := report(t, `
part p1 lithium-pack-16
part p2 lithium-pack-16
wire w1 p1.POS p2.NEG gauge=2AWG length=0.5m
wire w2 p2.POS p1.NEG gauge=2AWG length=0.5m`, support.Options{})
	require.Len(t, ring.Shorts, 1)
	require.True(t, ring.Shorts[0].IsRing)
	require.Empty(t, ring.Ranges)
	require.True(t, ring.IsBad())
	require.Equal(t, "not computed: p1, p2 are joined in a ring, the positive of each to the negative of the next", section(t, ring, support.RestTitle).None)
	wired := report(t, `
part pack lithium-pack-16
wire w1 pack.POS pack.NEG gauge=2AWG length=0.5m`, support.Options{})
	require.True(t, wired.IsBad())
	require.Equal(t, "not computed: the poles of pack are joined by metal", section(t, wired, support.RestTitle).None)
	// Two packs side by side are neither.
	require.Empty(t, report(t, `
part p1 lithium-pack-16
part p2 lithium-pack-16
wire w1 p1.POS p2.POS gauge=2AWG length=0.5m
wire w2 p2.NEG p1.NEG gauge=2AWG length=0.5m`, support.Options{}).Shorts)
}

// A relay that breaks its own coil comes to no rest: nothing is said of that state as if it
// were known, and the report is bad.
func TestStateWithoutARest(t *testing.T) {
	r := report(t, `
part pack lithium-pack-16
part r1 relay-48v
part chg charger-onboard-48v
wire w1 pack.POS r1.30 gauge=16AWG length=0.5m
wire w2 r1.87a r1.86 gauge=16AWG length=0.5m
wire w3 r1.85 pack.NEG gauge=16AWG length=0.5m
wire c1 chg.DC+ pack.POS
wire c2 chg.DC- pack.NEG`, support.Options{})
	require.NotEmpty(t, r.Unsolved)
	require.Nil(t, r.StandBy)
	require.True(t, r.IsBad())
	require.Contains(t, section(t, r, support.RestTitle).None, "not computed: parked: no rest: r1")
	require.Contains(t, section(t, r, "Charging").None, "not computed: charging: no rest: r1")
	coils := section(t, r, "Coils and their suppression").Items
	require.Equal(t, "r1: comes to no rest", coils[0].Title)
	require.True(t, says(coils[0].Judgements, support.Fault, "keeps switching"), "%v", coils[0].Judgements)
	require.True(t, says(section(t, r, "Not computed").Items[0].Judgements, support.Fault, "nothing is known of this state"))
}
