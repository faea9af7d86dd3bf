package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
)

// TestBoltTorques holds the limits against the printed tables: FAA AC 43.13-1B table 7-1, fine
// thread, tension nuts, the upper figure in lbf in; US Army TM 9-2320-362-14&P table F-1, the
// lower grade, in N m.
func TestBoltTorques(t *testing.T) {
	const lbfIn = 0.112985 // N m
	for _, row := range []struct {
		stud string
		most float64
	}{
		{"#8", 15 * lbfIn}, {"#10", 25 * lbfIn}, {"1/4_in", 70 * lbfIn}, {"5/16_in", 140 * lbfIn},
		{"3/8_in", 190 * lbfIn}, {"7/16_in", 500 * lbfIn}, {"1/2_in", 690 * lbfIn},
		{"M6", 14}, {"M8", 27}, {"M10", 54}, {"M12", 95},
	} {
		for share, want := range map[float64]string{0.99: "", 1.01: "fault"} {
			text := edited(lithium, "at pack.POS", fmt.Sprintf("at pack.POS cover=fitted stud=%s torque=%.2f_N_m", row.stud, row.most*share))
			require.Equal(t, want, gravest(t, "torque-too-high", text), "%s, %.2f of the limit", row.stud, share)
		}
	}
}

// TestBatteryPostsLieFarBelowTheBoltTables: what makers' sheets of lithium batteries ask for
// (M8 insert 5.6 N m, 5/16 in stud 11.3, 1/4 in insert 6.8, M6 insert 2.6) passes.
func TestBatteryPostsLieFarBelowTheBoltTables(t *testing.T) {
	for stud, asked := range map[string]string{"M8": "5.6_N_m", "5/16_in": "11.3_N_m", "1/4_in": "6.8_N_m", "M6": "2.6_N_m"} {
		require.Empty(t, gravest(t, "torque-too-high", edited(lithium, "at pack.POS", "at pack.POS cover=fitted stud="+stud+" torque="+asked)), stud)
	}
}

// TestStudLimitsOfTheBaseTable: ABYC E-11 11.14.6.9 has four lugs; 11.14.5 allows friction
// terminals up to 20 A; a gauge number is a factor of 92^(2/39) = 1.261 in area (ASTM B258).
func TestStudLimitsOfTheBaseTable(t *testing.T) {
	for name, want := range map[string]float64{basis.LugsPerStud: 4, basis.StackCurrent: 20, basis.BarrelSpread: 0.25} {
		row, ok := basis.Find(name)
		require.True(t, ok)
		value, _ := row.Of(false)
		require.InDelta(t, want, value.SI(), 1e-9, name)
	}
	require.Equal(t, "fault", gravest(t, "lug-barrel", barrels("2AWG", "1AWG", "2AWG")), "a gauge number apart")
	require.Equal(t, "fault", gravest(t, "lug-barrel", barrels("1AWG", "2AWG", "1AWG")), "a gauge number apart")
}

// TestNearMisses holds the words against the nominal diameters of ASME B1.1 and the metric
// sizes as named: M6 and 1/4 in, M8 and 5/16 in, M10 and 3/8 in.
func TestNearMisses(t *testing.T) {
	for _, row := range []struct{ lug, stud, severity, says string }{
		{"M6", "1/4_in", "note", "metric lug, inch stud: 6.00 mm on 6.35 mm"},
		{"1/4_in", "M6", "caution", "inch lug, metric stud: 6.35 mm on 6.00 mm"},
		{"M8", "5/16_in", "note", "metric lug, inch stud: 8.00 mm on 7.94 mm"},
		{"5/16_in", "M8", "note", "inch lug, metric stud: 7.94 mm on 8.00 mm"},
		{"M10", "3/8_in", "caution", "metric lug, inch stud: 10.00 mm on 9.53 mm"},
		{"3/8_in", "M10", "caution", "inch lug, metric stud: 9.53 mm on 10.00 mm"},
	} {
		for _, f := range check(t, nearStud(row.lug, row.stud)) {
			if f.Rule == "lug-hole" {
				require.Equal(t, row.severity, string(f.Severity), "%s on %s", row.lug, row.stud)
				require.Contains(t, f.Message, row.says)
			}
		}
		require.Equal(t, row.severity, gravest(t, "lug-hole", nearStud(row.lug, row.stud)))
	}
}
