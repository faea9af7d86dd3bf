package chance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestNumbersAreTheSameEverywhere(t *testing.T) {
	r := New(1)
	got := make([]int, 6)
	for i := range got {
		got[i] = r.Below(1000)
	}
	require.Equal(t, []int{566, 745, 971, 444, 444, 762}, got)
}

func TestLogarithmTableIsClose(t *testing.T) {
	for i, got := range negLn {
		want := -math.Log((float64(i)+0.5)/lnSteps) * 256
		require.InDelta(t, want, float64(got), 2, "step %d", i)
	}
}

func TestTakesFollowsTheTemperature(t *testing.T) {
	r := New(7)
	count := func(d int, temperature int64) int {
		n := 0
		for range 10000 {
			if r.Takes(d, temperature) {
				n++
			}
		}
		return n
	}
	require.Equal(t, 10000, count(0, One), "what is no worse is always taken")
	require.Equal(t, 10000, count(-5, 0))
	require.InDelta(t, 10000*math.Exp(-1), count(10, 10*One), 250)
	require.InDelta(t, 10000*math.Exp(-3), count(30, 10*One), 150)
	require.Less(t, count(200, One), 10)
}

func TestWithinIsEven(t *testing.T) {
	r := New(3)
	var seen [5]int
	for range 5000 {
		seen[r.Within(2)+2]++
	}
	for _, n := range seen {
		require.InDelta(t, 1000, n, 150)
	}
}
