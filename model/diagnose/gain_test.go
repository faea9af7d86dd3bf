package diagnose

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
)

func TestDensityOfASpanIntegratesToOne(t *testing.T) {
	for _, s := range []span{{lo: 3, hi: 3}, {lo: 3, hi: 3.001}, {lo: 0, hi: 12}, {lo: -1, hi: 0.4}} {
		sum := 0.0
		const step = 1e-3
		for x := -10.0; x < 30; x += step {
			sum += s.density(x, 0.5) * step
		}
		require.InDelta(t, 1, sum, 1e-3, "%v", s)
	}
}

// Two equal suspects that a reading tells apart are 1 bit; four of which it tells two
// from two are 1 bit; a reading that all predict alike is none (Shannon's entropy by hand).
func TestGainIsTheInformationOfAReading(t *testing.T) {
	c := caseOf(t, lamp)
	v := ranked(t, c)
	c.settle(v, v.Suspects)
	var cases []candidate
	for i, id := range []string{"blown:fu1.fuse", "stuck:lsw.contact", "open:w3", "open:w1"} {
		s := suspectOf(v, id)
		cases = append(cases, candidate{suspect: i, size: size{from: s.variants[0], to: s.variants[0], share: 0.25}})
	}
	at := func(line string) *observation {
		r := readings(t, line)
		o, err := c.observe(&r[0])
		require.NoError(t, err)
		return &o
	}
	require.InDelta(t, 1, v.w.gain(cases, at("lights-key-off fu1.out pack.NEG 0 V")), 1e-9, "fuse and w1 against switch and w3")
	require.InDelta(t, 0, v.w.gain(cases, at("lights-key-off lt1.+ pack.NEG 0 V")), 1e-9, "the lamp is dead in all")
	require.InDelta(t, 1, v.w.gain(cases[:2], at("lights-key-off lsw.IN pack.NEG 0 V")), 1e-9)
	require.InDelta(t, 0.8112781, v.w.gain(cases, at("lights-key-off fu1.in pack.NEG 0 V")), 1e-6, "w1 against three: H(1/4)")
}

func TestThePackIsReadFirstAndAConclusionEndsTheSearch(t *testing.T) {
	c := caseOf(t, lamp)
	next, more := c.Next(ranked(t, c), Place{})
	require.True(t, more)
	require.Equal(t, "pack.POS against pack.NEG in parked", next.Red.String()+" against "+next.Black.String()+" in "+next.State)
	v := ranked(t, c, "parked pack.POS pack.NEG 53.3 V", "lights-key-off fu1.in pack.NEG 53.3 V", "lights-key-off fu1.out pack.NEG 0 V", "parked fu1.in fu1.out open")
	_, more = c.Next(v, Place{})
	require.False(t, more)
}

// BenchmarkDiagnose ranks a full cart by four readings and proposes the next one, from
// nothing: faults listed and solved.
func BenchmarkDiagnose(b *testing.B) {
	job := decodedJob(b, "festival-bowser")
	list := readings(b, "parked pack.POS pack.NEG 79.1 V", "drive-forward sol.coil+ pack.NEG 79.0 V", "drive-forward sol.coil- pack.NEG 79.0 V", "drive-forward ctrl.KSI pack.NEG 79.0 V")
	for b.Loop() {
		c, err := New(job, model.Plan, part.Library())
		require.NoError(b, err)
		v, err := c.Rank(list, "")
		require.NoError(b, err)
		_, more := c.Next(v, Place{State: "drive-forward"})
		require.True(b, more)
	}
}
