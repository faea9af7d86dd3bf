package lugline_test

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/unit"
)

// words are tokens of every class, well and ill formed.
var words = []string{
	"k", "r", "b4", "k6", "w/k18", "t6", "t", "r?4", "k1", "p2", "6", "4/0", "25m", "2.5m", "3awg", "gnye", "black", "rd/wh", "??", "?",
	"b2+", "b2", "b", "f1", "fu1", "sl", "ctl.b+", ">k1", ">", "b1-", "x1.7", "x1.J", "fr", "cb+", "s?", "b3+?", "m", "p",
	"#", "=", "%", "cut", "cap?", "none", "unk?", "!c", "!lh", "!q", "!burnt,m", "!", "@7", "@", `@"TO KEY"`, `@"`, "*loom2", `*""`,
	"'", `"`, "+", "-", "zork", "+x", "é6", "\xff", "\u00a0", ";", ";bent", "; tan", ";tan; bent", "k6;bent", "a.b.c", "K6",
}

// readings compares what two readings say.
var readings = []cmp.Option{
	cmpopts.EquateEmpty(), cmp.Comparer(func(a, b unit.Gauge) bool { return a == b }),
}

// contexts are a bare cart, one with wires expected at the stud, and one with an entry before.
func contexts(t testing.TB) []lugline.Context {
	bare := standing(t, "b2.+")
	wired := standing(t, "b2.+")
	gauge, err := unit.ParseGauge("6 AWG")
	require.NoError(t, err)
	wired.Sheet.Wires = []model.Wire{
		{ID: "w1", From: model.On("b1", "-"), To: model.On("b2", "+"), Gauge: gauge, Colour: model.Colour{Body: "BK"}, Judged: []model.Judgement{model.JudgedTo}},
		{ID: "w2", From: model.On("b2", "+"), To: model.LooseEnd(model.Untraced), Mark: "7"},
		{ID: "w3", From: model.On("x1", "J"), To: model.On("b2", "+"), Colour: model.Colour{Body: "PK"}},
	}
	last := lugline.Parse("t6 b1- !c ;tan", bare)
	after := wired
	after.Last = &last.Entry
	nothing := lugline.Parse("?? k", bare)
	unknown := bare
	unknown.Last = &nothing.Entry
	return []lugline.Context{bare, wired, after, unknown}
}

// mustHold checks everything that is true of the reading of any line.
func mustHold(t require.TestingT, line string, here lugline.Context) {
	r := lugline.Parse(line, here)
	end := 0
	for _, it := range r.Items {
		require.True(t, end <= it.Start && it.Start < it.End && it.End <= len(line), "item %+v of %q", it, line)
		end = it.End
	}
	require.True(t, utf8.ValidString(r.Text()), "%q", line)
	again := lugline.Parse(r.Line(here), here)
	if diff := cmp.Diff(r.Entry, again.Entry, readings...); diff != "" {
		require.Fail(t, "the reading does not read as itself", "%q, printed %q: %s", line, r.Line(here), diff)
	}
	require.Equal(t, r.Confirms, again.Confirms, "%q, printed %q", line, r.Line(here))
	for _, c := range r.Complete() {
		require.Equal(t, c.At, lugline.Parse(c.Line, here).Far.At, "%q completed as %q", line, c.Line)
	}
	e, err := r.Edit("w99")
	if err != nil {
		return
	}
	job := cart()
	job.Sheets[0] = here.Sheet.CloneAs(model.AsFound)
	require.NoError(t, edit.NewHistory(job, library).Do(e), "%q", line)
}

func TestEveryReadingReadsAsItself(t *testing.T) {
	all := contexts(t)
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.SampledFrom(words), 0, 6).Draw(t, "words")
		glue := rapid.SampledFrom([]string{" ", " ", "  ", "", "\t"}).Draw(t, "glue")
		mustHold(t, strings.Join(list, glue), rapid.SampledFrom(all).Draw(t, "context"))
	})
}

// Random lines, glued from the tokens and from single letters of the grammar.
func TestManyRandomLines(t *testing.T) {
	n := 3_000
	if testing.Short() {
		n = 1_000
	}
	all := contexts(t)
	random := rand.New(rand.NewPCG(1, 2))
	const letters = "rkbgywonvpet0123456789/.?>#=%!@*'\"+- ;xyzJ"
	for range n {
		var line strings.Builder
		for range random.IntN(6) {
			if random.IntN(3) == 0 {
				for range random.IntN(6) {
					line.WriteByte(letters[random.IntN(len(letters))])
				}
			} else {
				line.WriteString(words[random.IntN(len(words))])
			}
			if random.IntN(4) > 0 {
				line.WriteByte(' ')
			}
		}
		mustHold(t, line.String(), all[random.IntN(len(all))])
	}
}

func FuzzParse(f *testing.F) {
	for _, w := range words {
		f.Add(w + " k6 b2+")
	}
	f.Add(`' b3+ !c @7 *loom2 ;bent`)
	all := contexts(f)
	f.Fuzz(func(t *testing.T, line string) {
		for _, here := range all {
			mustHold(t, line, here)
		}
	})
}

func TestPrintedWiresReadAsThemselves(t *testing.T) {
	gauge := func(text string) unit.Gauge {
		g, err := unit.ParseGauge(text)
		require.NoError(t, err)
		return g
	}
	for _, c := range []struct {
		want string
		wire model.Wire
	}{
		{"k6 b2+", model.Wire{To: model.On("b2", "+"), Gauge: gauge("6 AWG"), Colour: model.Colour{Body: "BK"}}},
		{"25m? ke1?", model.Wire{To: model.On("key", "1"), Gauge: gauge("25 mm2"), Judged: []model.Judgement{model.JudgedTo, model.JudgedGauge}}},
		{"sr/gd3awg #", model.Wire{To: model.LooseEnd(model.Cut), Gauge: gauge("3 AWG"), Colour: model.Colour{Body: "SR", Stripe: "GD"}}},
		{"w/k4/0 ?", model.Wire{To: model.LooseEnd(model.Untraced), Gauge: gauge("4/0 AWG"), Colour: model.Colour{Body: "WH", Stripe: "BK"}}},
		{"k", model.Wire{To: model.LooseEnd(model.Untraced), Confidence: model.NotTraced, Colour: model.Colour{Body: "BK"}}},
		{`fu1 !fx,burnt @"a ""b"" c" *loom ;bent; kinked`, model.Wire{
			To: model.On("fuse", "1"), Condition: []model.Condition{model.Frayed, model.WrongLug, model.Burnt},
			Mark: `a "b" c`, Bundle: "loom", Note: "bent; kinked",
		}},
	} {
		t.Run(c.want, func(t *testing.T) {
			here := standing(t, "b1.-")
			c.wire.ID, c.wire.From = "w1", model.End{At: here.At}
			line := lugline.Print(&c.wire, here)
			require.Equal(t, c.want, line)
			again := lugline.Parse(line, here)
			require.Empty(t, cmp.Diff(lugline.EntryOf(&c.wire, here.At), again.Entry, readings...))
		})
	}
}

func TestPrintFromTheFarEnd(t *testing.T) {
	here := standing(t, "b2.+")
	here.Sheet.Terminals = []model.Terminal{{At: here.At, Condition: []model.Condition{model.Corroded, model.Chafed}}}
	w := model.Wire{ID: "w1", From: model.On("b1", "-"), To: model.On("b2", "+"), Judged: []model.Judgement{model.JudgedFrom}}
	require.Equal(t, "b1-? !c", lugline.Print(&w, here), "the joint's own condition is printed, the stud's other ones are not the wire's")
}

func TestStudsShortenToOneStudOnly(t *testing.T) {
	here := standing(t, "x1.9")
	for i := range here.Sheet.Parts {
		p := &here.Sheet.Parts[i]
		for _, name := range library.TerminalsOf(here.Sheet, p) {
			at := model.TerminalRef{Part: p.ID, Name: name}
			w := model.Wire{ID: "w1", From: model.End{At: here.At}, To: model.End{At: at}}
			line := lugline.Print(&w, here)
			require.LessOrEqual(t, len(line), len(at.String()))
			require.Equal(t, at, lugline.Parse(line, here).Far.At, line)
			require.Equal(t, at, lugline.Parse("k6 "+line, here).Far.At, line)
			require.Equal(t, at, lugline.Parse(strings.ToUpper(at.String()), here).Far.At)
		}
	}
}

func TestAnEndIsNoShortening(t *testing.T) {
	here := standing(t, "b1.-")
	for _, id := range []string{"cu", "cx"} {
		here.Sheet.Parts = append(here.Sheet.Parts, model.Part{ID: model.PartID(id), Kind: model.UnknownKind})
		here.Sheet.Wires = append(here.Sheet.Wires, model.Wire{ID: model.WireID(id), From: model.On(model.PartID(id), "t"), To: model.LooseEnd(model.Cut)})
	}
	w := model.Wire{ID: "w1", From: model.End{At: here.At}, To: model.On("cu", "t")}
	require.Equal(t, "cu.t", lugline.Print(&w, here), "ct fits two studs, and cut is a bare end")
	require.Equal(t, model.LooseEnd(model.Cut), lugline.Parse("k6 cut", here).Far)
}

func TestANumberIsNeverCutShort(t *testing.T) {
	here := standing(t, "x1.9")
	here.Sheet.Parts = append(here.Sheet.Parts, model.Part{ID: "b14", Kind: "battery"})
	r := lugline.Parse("k6 b4+", here)
	require.Equal(t, ref(t, "b4.+"), r.Far.At)
	r = lugline.Parse("k6 b1+", here)
	require.Equal(t, ref(t, "b1.+"), r.Far.At)
	here.Sheet.Parts = here.Sheet.Parts[6:]
	r = lugline.Parse("k6 b4+", here)
	require.Equal(t, []string{"b4+"}, r.Unknown, "b14 is another battery")
}
