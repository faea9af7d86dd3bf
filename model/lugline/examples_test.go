package lugline_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/lugline"
)

// The last entry of the examples: red, 2 gauge, to b2+, corroded.
const lastLine = "r2 b2+ !c"

func TestExamplesReadOneWay(t *testing.T) {
	for line, want := range map[string]string{
		"r4 sl":            "red, 4 AWG, b1- to sol.l, sound",
		"k6 b2+":           "black, 6 AWG, b1- to b2+, sound",
		"' b3+":            "red, 2 AWG, b1- to b3+, sound",
		"k6 b4+ !c":        "black, 6 AWG, b1- to b4+, corroded",
		"b18 k1":           "blue, 18 AWG, b1- to key.1, sound",
		"w/k 18 p2":        "white with black stripe, 18 AWG, b1- to ped.2, sound",
		"r14 ?":            "red, 14 AWG, b1- to out of sight, sound",
		"k14 unk":          "black, 14 AWG, b1- to out of sight, sound",
		"v18 #":            "violet, 18 AWG, b1- to a bare cut end, sound",
		"v18 =":            "violet, 18 AWG, b1- to a capped end, sound",
		"?? ?":             "colour and size not to be told, b1- to out of sight, sound",
		"r4 ctl.b+ !lh":    "red, 4 AWG, b1- to ctl.b+, loose, heat mark",
		"g4 fr1":           "green, 4 AWG, b1- to frs.1, sound",
		"k6":               "black, 6 AWG, from b1- and not followed, sound",
		"b4+":              "b1- to b4+, sound",
		"25m sl":           "25 mm2, b1- to sol.l, sound",
		"k 25m b2+":        "black, 25 mm2, b1- to b2+, sound",
		"r1/0 sl":          "red, 1/0 AWG, b1- to sol.l, sound",
		`" b5+`:            "red, 2 AWG, b1- to b5+, corroded",
		"%":                "b1-: nothing on this stud",
		"r16 fu1 @7":       "red, 16 AWG, b1- to fuse.1, sound, marked 7",
		"k6 b2+ ;lug bent": `black, 6 AWG, b1- to b2+, sound, note "lug bent"`,
		">key.1 r16":       "red, 16 AWG, b1- to key.1, sound",
		"r?4 sl":           "red (judged), 4 AWG, b1- to sol.l, sound",
		"k6 sl? *loom2":    "black, 6 AWG, b1- to sol.l (judged), sound, in loom2",
	} {
		t.Run(line, func(t *testing.T) {
			here := standing(t, "b1.-")
			last := lugline.Parse(lastLine, here)
			here.Last = &last.Entry
			r := lugline.Parse(line, here)
			require.Equal(t, want, r.Text())
			require.Empty(t, r.Unknown)
			require.Empty(t, r.Among)
		})
	}
}

func TestRulesOfAmbiguity(t *testing.T) {
	for _, c := range []struct{ line, want string }{
		{"b4", "blue, 4 AWG, from b1- and not followed, sound"},
		{"k1", "black, 1 AWG, from b1- and not followed, sound, or key.1: type >"},
		{">k1", "b1- to key.1, sound"},
		{"k1 k1", "black, 1 AWG, b1- to key.1, sound"},
		{"k k1", "black, b1- to key.1, sound"},
		{"k6 f1", "black, 6 AWG, b1- to one of fuse.1 or frs.1, sound"},
		{"k6 fu1", "black, 6 AWG, b1- to fuse.1, sound"},
		{"k4 b2+ 6", "black, 6 AWG, b1- to b2+, sound"},
		{"k4 b2+ b3+", "black, 4 AWG, b1- to b3+, sound"},
		{"k6 f1 b2+", "black, 6 AWG, b1- to b2+, sound"},
		{"k4 6 r", "red, 6 AWG, from b1- and not followed, sound"},
		{"k6 zork", "black, 6 AWG, from b1- and not followed, sound, needs a look: zork"},
		{"k6 A1", "black, 6 AWG, b1- to motor.a1, sound"}, // a terminal alone, if no part's name begins so
		{"k6 b1-", "black, 6 AWG, from b1- and not followed, sound, needs a look: b1-"},
		{"k6 b7+", "black, 6 AWG, from b1- and not followed, sound, needs a look: b7+"},
		{"k6 %", "black, 6 AWG, from b1- and not followed, sound, needs a look: %"},
		{"% !c", "b1-: nothing on this stud, corroded"},
		{"k6 !q", "black, 6 AWG, from b1- and not followed, sound, needs a look: !q"},
		{"k6 !", "black, 6 AWG, from b1- and not followed, sound"},
		{"!c ;boot gone", `b1-, corroded, note "boot gone"`},
		{"t6 b2+", `brown, 6 AWG, b1- to b2+, sound, note "tan"`},
		{"?? 6 b2+", "6 AWG, colour not to be told, b1- to b2+, sound"},
		{"?? r b2+", "red, size not to be told, b1- to b2+, sound"},
		{"k3awg b2+", "black, 3 AWG, b1- to b2+, sound"},
		{"k00 b2+", "black, 2/0 AWG, b1- to b2+, sound"},
		{"gnye 2.5m fr", "green-and-yellow, 2.5 mm2, b1- to fr.J, sound"},
		{"Black6? B2+", "black, 6 AWG (judged), b1- to b2+, sound"},
		{"k6 x1.7", "black, 6 AWG, b1- to x1.7, sound"},
		{`k6 b2+ @"TO KEY" *"left loom"`, "black, 6 AWG, b1- to b2+, sound, marked TO KEY, in left loom"},
		{"k6 b2+ !burnt,c", "black, 6 AWG, b1- to b2+, burnt, corroded"},
		{"k6 b2+ !c !l", "black, 6 AWG, b1- to b2+, loose"},
		{"k6 cut?", "black, 6 AWG, b1- to a bare cut end (judged), sound"},
		{"k6 unk?", "black, 6 AWG, b1- to out of sight (judged), sound"},
		{"'b3+", "b1- to b3+, sound"},
		{"+", "no such wire is expected at b1-, from b1- and not followed, sound"},
		{"", ""},
		{"   ", ""},
	} {
		t.Run(c.line, func(t *testing.T) {
			r := lugline.Parse(c.line, standing(t, "b1.-"))
			require.Equal(t, c.want, r.Text())
		})
	}
}

func TestItemsSpanTheLine(t *testing.T) {
	r := lugline.Parse("k4 b2+? 6 zork @7 ;bent", standing(t, "b1.-"))
	type part struct {
		class  lugline.Class
		text   string
		struck bool
	}
	var got []part
	for _, it := range r.Items {
		got = append(got, part{it.Class, r.Written[it.Start:it.End], it.Struck})
	}
	require.Equal(t, []part{
		{lugline.ColourItem, "k", false},
		{lugline.GaugeItem, "4", true},
		{lugline.FarItem, "b2+?", false},
		{lugline.GaugeItem, "6", false},
		{lugline.UnknownItem, "zork", false},
		{lugline.MarkItem, "@7", false},
		{lugline.NoteItem, ";bent", false},
	}, got)
	require.True(t, r.Items[2].Judged)
}
