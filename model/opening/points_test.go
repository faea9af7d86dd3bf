package opening

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

func point(amps, least, most float64) model.OpenPoint {
	p := model.OpenPoint{At: unit.A(amps), Least: unit.S(least)}
	if most > 0 {
		p.Most = unit.S(most)
	}
	return p
}

func TestMakersCurve(t *testing.T) {
	points := []model.OpenPoint{point(600, 1, 10), point(400, 60, 0), point(1500, 0.05, 0.3)}
	c, err := FromPoints(points)
	require.NoError(t, err)
	never := math.Inf(1)
	for _, tt := range []struct{ amps, least, most float64 }{
		{300, 60, never}, {400, 60, never}, {401, 1, never}, {600, 1, 10}, {601, 0.05, 10}, {1500, 0.05, 0.3}, {1501, 0, 0.3}, {1e6, 0, 0.3},
	} {
		b := c.Band(tt.amps)
		require.Equal(t, tt.least, b.Least, tt.amps)
		require.Equal(t, tt.most, b.Most, tt.amps)
		require.False(t, b.Recalled)
		require.Equal(t, "the maker's curve", b.Source)
	}
	require.Equal(t, 400.0, c.Gates()[0].Amps)
}

func TestDevice(t *testing.T) {
	points := []model.OpenPoint{point(600, 1, 10)}
	c, err := Device("iso-8820-5", 250, points)
	require.NoError(t, err)
	require.Equal(t, "the maker's curve", c.Band(600).Source, "what the maker says stands above the standard")
	require.Equal(t, math.Inf(1), c.Band(250).Least, "it carries its rating")
	require.Equal(t, 2.5, c.Band(1200).Most, "a fuse by its family: its I2t falls")
	c, err = Device("iec-60947-2", 250, points)
	require.NoError(t, err)
	require.Equal(t, 10.0, c.Band(1200).Most, "a release has no such law")
	c, err = Device("", 250, points)
	require.NoError(t, err)
	require.Equal(t, 10.0, c.Band(1200).Most, "nor has what is not known")
	c, err = Device("iso-8820-5", 0, points)
	require.NoError(t, err)
	require.Equal(t, 1.0, c.Band(250).Least)
	c, err = Device("iso-8820-5", 250, nil)
	require.NoError(t, err)
	require.Equal(t, Of(isoStrip, 250), c)
	c, err = Device("", 250, nil)
	require.NoError(t, err)
	require.False(t, c.Band(1000).Known)
	require.Equal(t, "nothing says when the device opens at 1000 A: neither the standard that it is made to nor its maker's curve is stated; the conductor withstands 1000 A for 1 s",
		Protects(c, 1000, 1).Why)
}

func TestCurvesThatCannotBe(t *testing.T) {
	tests := []struct {
		points []model.OpenPoint
		want   string
	}{
		{nil, "a maker's curve without points: state the opening times at one current at least"},
		{[]model.OpenPoint{point(0, 1, 2)}, "at 0 A the device opens in 1 s to 2 s: state a current above 0 and times of which the second is the longer"},
		{[]model.OpenPoint{point(5, 3, 2)}, "at 5 A the device opens in 3 s to 2 s: state a current above 0 and times of which the second is the longer"},
		{[]model.OpenPoint{point(600, 10, 20), point(500, 1, 5)}, "the device has opened within 5 s at 500 A but holds 10 s at 600 A: it must open sooner at more current"},
		{[]model.OpenPoint{point(500, 10, 20), point(500, 1, 5)}, "the device has opened within 5 s at 500 A but holds 10 s at 500 A: it must open sooner at more current"},
	}
	for _, tt := range tests {
		_, err := FromPoints(tt.points)
		require.EqualError(t, err, tt.want)
	}
	_, err := Device("iso-8820-5", 700, []model.OpenPoint{point(600, 1, 10)})
	require.EqualError(t, err, "the device has opened within 10 s at 600 A but holds for ever at 700 A: it must open sooner at more current")
	_, err = Device("iso-9", 30, nil)
	require.ErrorContains(t, err, `no gates are called "iso-9": use one of iec-60269-gg, `)
	_, err = Device("iso-9", 30, []model.OpenPoint{point(600, 1, 10)})
	require.Error(t, err)
}

// Points drawn from a device whose times fall make a curve that holds at every point, in
// whatever order they come; any points at all make a curve that falls, or an error.
func TestAnyPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []model.OpenPoint
		for range rapid.IntRange(1, 6).Draw(t, "points") {
			least := rapid.Float64Range(-1, 100).Draw(t, "least")
			points = append(points, point(rapid.Float64Range(-1, 1000).Draw(t, "at"), least, least+rapid.Float64Range(-5, 1000).Draw(t, "longer by")))
		}
		falling := rapid.Bool().Draw(t, "falling")
		if falling {
			for i := range points {
				points[i] = point(100*float64(i+1), 10/float64(i+1), 50/float64(i+1))
			}
		}
		c, err := FromPoints(rapid.Permutation(points).Draw(t, "order"))
		if err != nil {
			require.False(t, falling, err)
			return
		}
		again, err := FromPoints(points)
		require.NoError(t, err)
		for _, p := range points {
			b := c.Band(p.At.Amperes())
			require.Equal(t, again.Band(p.At.Amperes()), b)
			require.GreaterOrEqual(t, b.Least, p.Least.Seconds())
			require.GreaterOrEqual(t, b.Most, b.Least)
		}
		amps := []float64{rapid.Float64Range(0, 2000).Draw(t, "i"), rapid.Float64Range(0, 2000).Draw(t, "j")}
		slices.Sort(amps)
		require.GreaterOrEqual(t, c.Band(amps[0]).Least, c.Band(amps[1]).Least)
		require.GreaterOrEqual(t, c.Band(amps[0]).Most, c.Band(amps[1]).Most)
	})
}
