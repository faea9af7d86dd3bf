package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// ratedFeed is a pack or string that feeds a switch through one fuse and one wire.
func ratedFeed(source, gauge string, insulation, rating int) string {
	return source + fmt.Sprintf(`
		part fu fuse-cartridge fuse-rating=%dA
		part key key-switch
		part sol contactor-48v
		wire a top.POS fu.in gauge=4/0AWG length=100mm
		wire b fu.out key.BAT gauge=%s insulation=%dC length=1m
		wire c key.IGN sol.coil+ gauge=4/0AWG insulation=200C length=1m
		wire d sol.coil- bottom.POST gauge=16AWG length=1m
		at top.POS cover=fitted`, rating, gauge, insulation)
}

// Sixteen LiFePO4 cells have 51.2 V nominal; the other pack is labelled 48 V as a string
// of lead batteries is.
const (
	lfp51  = "part top lithium-pack-16\npart bottom bus-post\nwire n top.NEG bottom.POST gauge=4AWG"
	lead48 = "part top lithium-pack-16 voltage=48V\npart bottom bus-post\nwire n top.NEG bottom.POST gauge=4AWG"
)

// TestRatingLimits holds the rule against 33 CFR 183.455(c) with table 5 of 183.425: under 50 V
// up to 150 % of the ampacity; from 50 V up the ampacity, or the next standard size
// (NEC 240.6(A)) if that is not over 150 %. Thinner wires than the table has are held against FAA
// AC 43.13-1B table 11-3.
func TestRatingLimits(t *testing.T) {
	for _, tt := range []struct {
		gauge      string
		insulation int
		rating     int
		below50    string // severity; empty if silent
		from50     string
	}{
		{"16AWG", 105, 25, "", ""},             // table 5: 25 A
		{"16AWG", 105, 30, "", "note"},         // 25 A is a standard size itself, so there is no next one
		{"16AWG", 105, 37, "", "note"},         // 37.5 A is 150 %
		{"16AWG", 105, 38, "danger", "danger"}, //
		{"16AWG", 60, 15, "", ""},              // table 5: 15 A
		{"16AWG", 60, 22, "", "note"},
		{"16AWG", 60, 23, "danger", "danger"},
		{"2AWG", 105, 210, "", ""}, // table 5: 210 A
		{"2AWG", 105, 225, "", ""}, // the next standard size above 210 A
		{"2AWG", 105, 250, "", "note"},
		{"2AWG", 105, 315, "", "note"},
		{"2AWG", 105, 316, "danger", "danger"},
		{"10AWG", 75, 40, "", ""}, // table 5: 40 A
		{"10AWG", 75, 61, "danger", "danger"},
		{"20AWG", 105, 5, "", ""},         // FAA AC 43.13-1B table 11-3: a fuse of 5 A
		{"20AWG", 105, 7, "note", "note"}, // or a breaker of 7.5 A
		{"20AWG", 105, 8, "danger", "danger"},
		{"22AWG", 105, 5, "", ""}, // fuse and breaker 5 A
		{"22AWG", 105, 6, "danger", "danger"},
	} {
		t.Run(fmt.Sprintf("%d A on %s %d C", tt.rating, tt.gauge, tt.insulation), func(t *testing.T) {
			require.Equal(t, tt.below50, gravest(t, "fuse-too-large", ratedFeed(lead48, tt.gauge, tt.insulation, tt.rating)), "under 50 V")
			require.Equal(t, tt.from50, gravest(t, "fuse-too-large", ratedFeed(lfp51, tt.gauge, tt.insulation, tt.rating)), "51.2 V")
		})
	}
}

// gravest is the severity of the first finding of a rule; empty if there is none.
func gravest(t *testing.T, id, text string) string {
	for _, f := range check(t, text) {
		if f.Rule == id {
			return string(f.Severity)
		}
	}
	return ""
}

// TestFuseVoltsGoByTheFullCharge: sixteen cells of 3.65 V reach 58.4 V, above the 32 V of
// ISO 8820-5 strip fuses and the 58 V of ISO 8820-6 bolt-in fuses.
func TestFuseVoltsGoByTheFullCharge(t *testing.T) {
	for volts, speaks := range map[string]bool{"32V": true, "58V": true, "58.4V": false, "60V": false, "125V": false} {
		text := edited(direct, "part fu1", "part fu1 fuse-class-t fuse-rating=200A voltage-rating="+volts)
		require.Equal(t, speaks, gravest(t, "fuse-volts", text) == "danger", volts)
	}
}

// TestSeriesBatteriesDoNotAddFaultCurrent: strings side by side add their
// short-circuit currents, batteries in series do not (ABYC E-11, interrupting capacity).
func TestSeriesBatteriesDoNotAddFaultCurrent(t *testing.T) {
	string2 := "part b1 lead-battery-12v fault-current=2400A\npart b2 lead-battery-12v fault-current=2400A\nwire j b1.+ b2.-\n" +
		"part fu fuse-cartridge interrupting-rating=%dA fuse-rating=15A\npart buz buzzer\nwire a b2.+ fu.in\nwire b fu.out buz.+\nwire c buz.- b1.-\njob system=24V"
	require.Equal(t, "danger", gravest(t, "fuse-interrupting", fmt.Sprintf(string2, 2300)))
	require.Empty(t, gravest(t, "fuse-interrupting", fmt.Sprintf(string2, 2400)))
}

// TestDistances holds the rule against 33 CFR 183.455(b): 7 in, or 40 in in a sheath.
func TestDistances(t *testing.T) {
	for _, tt := range []struct {
		length string
		want   string
	}{
		{"length=7in", ""}, {"length=7.1in", "fault"}, {"length=40in sheathed", ""}, {"length=41in sheathed", "note"},
		{"length=72in sheathed", "note"}, {"length=73in sheathed", "fault"},
	} {
		text := edited(direct, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C "+tt.length)
		require.Equal(t, tt.want, gravest(t, "fuse-too-far", text), tt.length)
	}
}

// TestFourLugsAreTheMost: ABYC E-11 11.14.6.9.
func TestFourLugsAreTheMost(t *testing.T) {
	text := "part bus bus-post\npart c connector-12\n"
	for i := 1; i <= 5; i++ {
		text += fmt.Sprintf("wire w%d bus.POST c.%da gauge=16AWG\n", i, i)
		want := ""
		if i > 4 {
			want = "caution"
		}
		require.Equal(t, want, gravest(t, "stack-count", text))
	}
}
