package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
)

// TestLeastSizes holds the rule against 33 CFR 183.425: (e) 16 AWG by itself, (d) 18 AWG in a
// sheath, (g) not below 1 A nor for pigtails shorter than 7 in.
func TestLeastSizes(t *testing.T) {
	for _, tt := range []struct {
		wire, current string
		speaks        bool
	}{
		{"gauge=16AWG length=2m", "2A", false},
		{"gauge=18AWG length=2m", "2A", true},
		{"gauge=18AWG length=2m sheathed", "2A", false},
		{"gauge=20AWG length=2m sheathed", "2A", true},
		{"gauge=20AWG length=2m", "0.9A", false},
		{"gauge=20AWG length=2m", "1.1A", true},
		{"gauge=20AWG length=6.9in", "2A", false},
		{"gauge=20AWG length=7.1in", "2A", true},
	} {
		text := edited(lamped, "wire w3", "wire w3 lt1.- b1.- insulation=105C "+tt.wire, "part lt1", "part lt1 lamp-12v voltage=12.7V current="+tt.current)
		require.Equal(t, tt.speaks, gravest(t, "wire-too-weak", text) != "", "%s %s", tt.wire, tt.current)
	}
}

// TestDropLimits: 3 % for circuits that matter and 10 % for others by ABYC E-11 11.14.2.6, 5 % in
// all by the informational note of NEC 215.2 (from memory). 10 AWG has 3.277 mohm per metre by
// ASTM B258 and IEC 60028, and 2 % more as it is stranded.
func TestDropLimits(t *testing.T) {
	for kind, limit := range map[string]float64{"lamp-work-48v": 3, "pump-motor": 10} {
		for _, metres := range []float64{limit * 51.2 / 100 / (10 * 3.277e-3 * 1.02) * 0.9, limit * 51.2 / 100 / (10 * 3.277e-3 * 1.02) * 1.12} {
			text := fmt.Sprintf("part pack lithium-pack-16 internal-resistance=1mohm\npart fu fuse-cartridge fuse-rating=30A\npart x %s current=10A voltage=51.2V\n"+
				"wire a pack.POS fu.in gauge=2AWG length=100mm\nwire b fu.out x.+ gauge=2AWG length=100mm\nwire c x.- pack.NEG gauge=10AWG insulation=105C length=%.0fmm", kind, 1000*metres)
			speaks := metres > limit*51.2/100/(10*3.277e-3*1.02)
			require.Equal(t, speaks, gravest(t, "drop-too-high", text) != "", "%s over %.1f m", kind, metres)
		}
	}
	row, ok := basis.Find(basis.DriveDrop)
	require.True(t, ok)
	require.Equal(t, "5 %", row.Base)
}

// TestSupports: 18 in and 36 in by ABYC E-11 11.14.6.8; 24 in by FAA AC 43.13-1B 11-96 and 46 CFR
// 183.340(b)(4).
func TestSupports(t *testing.T) {
	for _, tt := range []struct{ wire, hangs, want string }{
		{"c1 chg.DC+ fu2.in", "18in", ""}, {"c1 chg.DC+ fu2.in", "18.1in", "note"}, {"c1 chg.DC+ fu2.in", "24in", "note"}, {"c1 chg.DC+ fu2.in", "24.1in", "caution"},
		{"c3 chg.DC- pack.NEG", "36in", ""}, {"c3 chg.DC- pack.NEG", "36.1in", "caution"},
	} {
		text := edited(onCart, "wire "+tt.wire[:2], "wire "+tt.wire+" gauge=10AWG insulation=105C length=1m supported="+tt.hangs)
		require.Equal(t, tt.want, gravest(t, "unsupported", text), "%s %s", tt.wire, tt.hangs)
	}
}

// TestBends: ten times the outside diameter by US Army TM 1-1500-204-23-4; 10 AWG is 0.1019 in
// thick by ASTM B258, 25.9 mm for ten times.
func TestBends(t *testing.T) {
	for bend, want := range map[string]string{"25.8mm": "caution", "26mm": ""} {
		text := edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm bend="+bend)
		require.Equal(t, want, gravest(t, "tight-bend", text), bend)
	}
}

// TestEngineSpace: 33 CFR 183.425 table 5 note 1 leaves 0.85 of the ampacity of 105 C insulation at
// 50 C: 102 A of 6 AWG's 120 A. At 51.2 V the ampacity or the next standard size may protect it
// (183.455(c)(2)), 125 A in 30 C.
func TestEngineSpace(t *testing.T) {
	for rating, want := range map[string]string{"100A": "", "110A": "caution"} {
		text := edited(pumped, "part fu1", "part fu1 fuse-class-t fuse-rating="+rating, "+", "job hottest=50C")
		require.Equal(t, want, gravest(t, "place-too-hot", text), rating)
	}
}

// TestTerminalTemperatures: NEC 110.14(C), from memory, has 60 C up to 100 A and 75 C above; by 33
// CFR 183.425 table 5 10 AWG carries 40 A at 60 C, 4 AWG 125 A at 75 C.
func TestTerminalTemperatures(t *testing.T) {
	for _, tt := range []struct {
		gauge, current string
		speaks         bool
	}{{"10AWG", "36A", false}, {"10AWG", "42A", true}, {"4AWG", "115A", false}, {"4AWG", "131A", true}} {
		text := edited(pumped, "part pump", "part pump pump-motor voltage=51.2V current="+tt.current, "part sw", "part sw switch contact-resistance=1mohm", "part pack", "part pack lithium-pack-16 internal-resistance=1mohm",
			"part fu1", "part fu1 fuse-class-t fuse-rating=200A", "wire w2", "wire w2 fu1.out sw.IN gauge=2/0AWG insulation=105C length=200mm",
			"wire w3", "wire w3 sw.OUT pump.+ gauge="+tt.gauge+" insulation=105C length=50mm", "wire w4", "wire w4 pump.- pack.NEG gauge=2/0AWG insulation=105C length=200mm", "wire w1", "wire w1 pack.POS fu1.in gauge=2/0AWG insulation=105C length=150mm")
		require.Equal(t, tt.speaks, gravest(t, "terminal-class", text) != "", "%s %s", tt.gauge, tt.current)
	}
}

// TestAluminium: 61 % IACS (from memory) makes the same heat at the root of that current: 78 %.
// NEC 310.16 (from memory) has 90 A for aluminium and 115 A for copper of 2 AWG at 75 C: 78 %.
func TestAluminium(t *testing.T) {
	text := edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=2AWG insulation=105C length=1m material=aluminium")
	for _, f := range check(t, text) {
		if f.Rule == "not-copper" {
			require.Contains(t, f.Message, "about 164 A and not 210 A")
			require.InDelta(t, 90.0/115, 164.0/210, 0.005)
			return
		}
	}
	t.Fatal("it says nothing")
}

// TestIsolation: UN R100 asks for 100 ohm per volt of d.c. circuits, from memory; voltage class A of
// ISO 6469-3 ends at 60 V d.c., from memory. The pack of 24 cells reaches 87.6 V.
func TestIsolation(t *testing.T) {
	for ohms, want := range map[string]string{"8700ohm": "danger", "8800ohm": "note"} {
		text := edited(ac72, "+", "part lk frame-leak resistance="+ohms+"\nwire x1 lk.to ctrl.B- gauge=10AWG insulation=105C length=300mm")
		require.Equal(t, want, gravest(t, "pack-on-frame", text), ohms)
	}
	leak := edited(pumped, "+", "part lk frame-leak resistance=1kohm\nwire x1 lk.to pump.- gauge=10AWG insulation=105C length=30mm")
	require.Equal(t, "caution", gravest(t, "pack-on-frame", leak), "58.4 V")
}
