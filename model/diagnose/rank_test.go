package diagnose

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/part"
)

// lamp is the smallest search: a lamp behind a fuse and a switch.
const lamp = `
part pack lithium-pack-16
part fu1 fuse-inline-80v fuse-rating=10A
part lsw light-switch
part lt1 lamp-work-48v
wire w1 pack.POS fu1.in gauge=14AWG length=1m
wire w2 fu1.out lsw.IN gauge=14AWG length=1m
wire w3 lsw.OUT lt1.+ gauge=14AWG length=1m
wire w4 lt1.- pack.NEG gauge=14AWG length=1m
`

func caseOf(t testing.TB, text string) *Case {
	t.Helper()
	job, err := mini.Job(text)
	require.NoError(t, err)
	c, err := New(job, model.AsFound, part.Library())
	require.NoError(t, err)
	return c
}

func readings(t testing.TB, lines ...string) []model.Reading {
	t.Helper()
	var list []model.Reading
	for _, line := range lines {
		r, err := ParseReading(line, model.AsFound)
		require.NoError(t, err)
		list = append(list, r)
	}
	return list
}

func ranked(t testing.TB, c *Case, lines ...string) *Verdict {
	t.Helper()
	v, err := c.Rank(readings(t, lines...), "")
	require.NoError(t, err)
	return v
}

func weightOf(c *Case, id string) Fault {
	i := slices.IndexFunc(c.faults, func(f Fault) bool { return f.ID == id })
	return c.faults[i]
}

func TestReadingsOnBothSidesOfAFuseNameIt(t *testing.T) {
	v := ranked(t, caseOf(t, lamp), "lights-key-off fu1.in pack.NEG 53.3 V", "lights-key-off fu1.out pack.NEG 0 V")
	require.Equal(t, "blown:fu1.fuse", v.Suspects[0].ID)
	require.Greater(t, v.Suspects[0].Probability, 0.9)
	require.Empty(t, v.Contradicts)
	require.Less(t, v.Suspects[0].Agrees[1], 1.0)
	require.Equal(t, "53.3 V", v.Expected[0].Text(Volts))
}

func TestAReadingThatNothingGivesIsTold(t *testing.T) {
	v := ranked(t, caseOf(t, lamp), "parked pack.POS pack.NEG 130 V")
	require.Equal(t, []int{0}, v.Contradicts)
	require.False(t, v.PackRead, "130 V is no pack of 48 V")
	require.Greater(t, v.NotInList, 0.5)
}

func TestALowPackIsNoFault(t *testing.T) {
	v := ranked(t, caseOf(t, lamp), "parked pack.POS pack.NEG 47.2 V", "lights-key-off lt1.+ lt1.- 47.0 V")
	require.True(t, v.PackRead)
	require.InDelta(t, 47.2/53.3, v.PackScale, 0.002)
	require.Equal(t, Healthy, v.Suspects[0].Family)
}

func TestOhmsAndAmpsAreWeighed(t *testing.T) {
	c := caseOf(t, lamp)
	v := ranked(t, c, "parked fu1.in fu1.out open")
	require.Equal(t, "blown:fu1.fuse", v.Suspects[0].ID)
	v = ranked(t, c, "lights-key-off w1 0 A", "parked fu1.in fu1.out 0.2 ohm")
	require.NotEqual(t, Healthy, v.Suspects[0].Family)
	require.Less(t, suspectOf(v, "blown:fu1.fuse").Probability, 0.01)
}

func suspectOf(v *Verdict, id string) *Suspect {
	i := slices.IndexFunc(v.Suspects, func(s Suspect) bool { return s.ID == id })
	return &v.Suspects[i]
}

func TestAShortBlowsTheFuseAheadOfIt(t *testing.T) {
	c := caseOf(t, lamp+"part dio diode\nwire d1 dio.cathode lt1.+ gauge=18AWG\nwire d2 dio.anode lt1.- gauge=18AWG\n")
	p := c.solverFor(1)
	v := weightOf(c, "shorted:dio.diode").variants[0]
	p.ensure([]int{v}, c.offered)
	require.Len(t, p.blown[v], 1)
	require.Equal(t, model.PartID("fu1"), p.blown[v][0].Part.ID)
}

func TestWhatWasSeenRaisesItsJoint(t *testing.T) {
	plain := weightOf(caseOf(t, lamp), "joint:w2@lsw.IN")
	c := caseOf(t, lamp+"at lsw.IN condition=corroded\n")
	seen := weightOf(c, "joint:w2@lsw.IN")
	require.InDelta(t, 6*plain.Weight, seen.Weight, 1e-9)
	require.Contains(t, seen.Basis, "corroded is recorded there")
	require.InDelta(t, plain.Weight, weightOf(c, "joint:w2@fu1.out").Weight, 1e-9)
}

func TestJointsAtBothEndsOfAWireAreTied(t *testing.T) {
	c := caseOf(t, lamp)
	v := ranked(t, c, "parked pack.POS pack.NEG 53.3 V", "lights-key-off fu1.out lsw.IN 6 V")
	ties := c.Ties(v, 12)
	require.Equal(t, []string{"joint:w2@fu1.out", "joint:w2@lsw.IN"}, []string{v.Suspects[ties[0].Suspects[0]].ID, v.Suspects[ties[0].Suspects[1]].ID})
	require.Len(t, ties[0].Suspects, 2)
	require.False(t, ties[0].Hidden)
}

func TestUnknownNamesSayTheNearest(t *testing.T) {
	c := caseOf(t, lamp)
	for line, want := range map[string]string{
		"parkd pack.POS pack.NEG 53 V":  `did you mean "parked"`,
		"parked pack.PSO pack.NEG 53 V": `did you mean "pack.POS"`,
		"parked w11 3 A":                `did you mean "w1"`,
	} {
		_, err := c.Rank(readings(t, line), "")
		require.ErrorContains(t, err, want)
	}
	_, err := c.Rank(nil, "no clik")
	require.ErrorContains(t, err, `did you mean "no click"`)
	_, err = c.Rank(nil, "pack dead")
	require.NoError(t, err, "its own electronics take some milliamperes")
	_, err = c.Rank(nil, "lsw dead")
	require.ErrorContains(t, err, "takes nothing in any state")
}

func TestAComplaintBendsThePriors(t *testing.T) {
	c := caseOf(t, lamp)
	plain, err := c.Rank(nil, "")
	require.NoError(t, err)
	told, err := c.Rank(nil, "lt1 dead")
	require.NoError(t, err)
	require.Greater(t, suspectOf(told, "blown:fu1.fuse").Probability, 1.3*suspectOf(plain, "blown:fu1.fuse").Probability)
	require.Less(t, suspectOf(told, "nothing").Probability, suspectOf(plain, "nothing").Probability)
}

// drawn are some readings of the lamp with whatever a meter may show.
func drawn(t *rapid.T) []model.Reading {
	places := []string{"pack.POS pack.NEG", "fu1.in pack.NEG", "fu1.out pack.NEG", "lsw.OUT pack.NEG", "lt1.+ lt1.-", "pack.POS lt1.-", "fu1.in fu1.out"}
	line := rapid.Custom(func(t *rapid.T) model.Reading {
		state := rapid.SampledFrom([]string{"parked", "lights-key-off", "key-on"}).Draw(t, "state")
		if state == "key-on" {
			state = "parked"
		}
		value := rapid.SampledFrom([]string{"0 V", "0.02 V", "6 V", "51 V", "53.3 V", "0 ohm", "open", "12 ohm"}).Draw(t, "value")
		r, err := ParseReading(state+" "+rapid.SampledFrom(places).Draw(t, "place")+" "+value, model.AsFound)
		require.NoError(t, err)
		return r
	})
	return rapid.SliceOfN(line, 0, 5).Draw(t, "readings")
}

func TestProbabilitiesSumToOneWhateverIsReadInWhateverOrder(t *testing.T) {
	c, fresh := caseOf(t, lamp), caseOf(t, lamp)
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		v, err := c.Rank(list, "")
		require.NoError(t, err)
		sum := v.NotInList
		for _, s := range v.Suspects {
			require.False(t, math.IsNaN(s.Probability))
			sum += s.Probability
		}
		require.InDelta(t, 1, sum, 1e-9)

		mixed, err := fresh.Rank(rapid.Permutation(list).Draw(t, "order"), "")
		require.NoError(t, err)
		require.InDelta(t, v.NotInList, mixed.NotInList, 1e-9)
		for i := range v.Suspects {
			require.InDelta(t, v.Suspects[i].Probability, suspectOf(mixed, v.Suspects[i].ID).Probability, 1e-9)
		}
	})
}

// listed is the probability that it is something on the list.
func listed(v *Verdict) float64 {
	sum := 0.0
	for _, s := range v.Suspects {
		sum += s.Probability
	}
	return sum
}

func TestAReadingThatAllPredictAlikeChangesNoRanking(t *testing.T) {
	// Two splices that nothing joins: their probes float whatever is wrong.
	c := caseOf(t, lamp+"part sp1 splice\npart sp2 splice\nwire x1 sp1.SPLICE cut\nwire x2 sp2.SPLICE cut\n")
	same := readings(t, "parked sp1.SPLICE sp2.SPLICE 0 V")
	rapid.Check(t, func(t *rapid.T) {
		list := drawn(t)
		before, err := c.Rank(list, "")
		require.NoError(t, err)
		after, err := c.Rank(append(slices.Clone(list), same...), "")
		require.NoError(t, err)
		for i := range before.Suspects {
			was := suspectOf(before, after.Suspects[i].ID).Probability / listed(before)
			require.InDelta(t, was, after.Suspects[i].Probability/listed(after), 1e-9)
			require.InDelta(t, before.Suspects[i].Probability/listed(before), was, 1e-9, "those that are as likely may change places")
		}
	})
}

func TestTheSameQuestionHasTheSameAnswer(t *testing.T) {
	var first *Verdict
	var proposed Proposal
	for range 3 {
		c := opened(t, "quarry-inspection", model.Plan)
		v, err := c.Rank(readings(t, "parked pack.POS pack.NEG 39.9 V", "drive-forward sol.coil+ pack.NEG 0 V"), "no click")
		require.NoError(t, err)
		next, more := c.Next(v, Place{})
		require.True(t, more)
		if first == nil {
			first, proposed = v, next
		}
		require.Equal(t, proposed, next)
		for i := range v.Suspects {
			require.Equal(t, first.Suspects[i].ID, v.Suspects[i].ID)
			require.Equal(t, first.Suspects[i].Probability, v.Suspects[i].Probability)
		}
	}
}

func FuzzParseReading(f *testing.F) {
	for _, seed := range []string{"parked pack.POS pack.NEG 53 V", "parked w1 3 A", "parked a.b c.d open", "x", "a b.c d.e 4 mohm", "parked w1 open"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := ParseReading(text, model.Plan)
		if err != nil {
			return
		}
		again := r.State + " " + string(r.Wire) + " " + r.Shown()
		if r.Wire == "" {
			again = r.State + " " + r.Red.String() + " " + r.Black.String() + " " + r.Shown()
		}
		back, err := ParseReading(again, model.Plan)
		require.NoError(t, err)
		require.Equal(t, r, back)
	})
}
