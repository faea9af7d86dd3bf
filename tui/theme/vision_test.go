package theme

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

type matrix [3][3]float64

// visions turn linear sRGB into what people with one kind of cone missing see: Machado, Oliveira and Fernandes,
// "A Physiologically-based Model for Simulation of Color Vision Deficiency" (2009), severity 1.0; from memory.
var visions = map[string]matrix{
	"normal": {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
	"protan": {
		{0.152286, 1.052583, -0.204868},
		{0.114503, 0.786281, 0.099216},
		{-0.003882, -0.048116, 1.051998},
	},
	"deutan": {
		{0.367322, 0.860646, -0.227968},
		{0.280085, 0.672501, 0.047413},
		{-0.011820, 0.042940, 0.968881},
	},
	"tritan": {
		{1.255528, -0.076749, -0.178779},
		{-0.078411, 0.930809, 0.147602},
		{0.004733, 0.691367, 0.303900},
	},
}

// toXYZ turns linear sRGB into CIE XYZ (IEC 61966-2-1).
var toXYZ = matrix{
	{0.4124564, 0.3575761, 0.1804375},
	{0.2126729, 0.7151522, 0.0721750},
	{0.0193339, 0.1191920, 0.9503041},
}

func (m matrix) times(v [3]float64) (out [3]float64) {
	for i, row := range m {
		out[i] = row[0]*v[0] + row[1]*v[1] + row[2]*v[2]
	}
	return out
}

// lab is a colour as seen, in CIE L*a*b* under D65.
func lab(c rgb, vision matrix) [3]float64 {
	seen := vision.times([3]float64{linear(c[0]), linear(c[1]), linear(c[2])})
	for i := range seen {
		seen[i] = min(1, max(0, seen[i]))
	}
	xyz := toXYZ.times(seen)
	white := [3]float64{0.95047, 1, 1.08883}
	var f [3]float64
	for i := range f {
		if v := xyz[i] / white[i]; v > 216.0/24389 {
			f[i] = math.Cbrt(v)
		} else {
			f[i] = (24389.0/27*v + 16) / 116
		}
	}
	return [3]float64{116*f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])}
}

// distance is the colour difference of CIE 1976.
func distance(a, b [3]float64) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}

// The severities keep apart for everybody where the ground is known.
func TestSeveritiesForColourBlindEyes(t *testing.T) {
	severities := []Role{Danger, Fault, Caution, Note}
	for _, c := range []struct {
		ground Ground
		least  float64
	}{{Dark, 44}, {Light, 30}, {Neutral, 7}} {
		for vision, m := range visions {
			for i, a := range severities {
				for _, b := range severities[i+1:] {
					apart := distance(lab(looks[a].colour(c.ground, Indexed).rgb(), m), lab(looks[b].colour(c.ground, Indexed).rgb(), m))
					require.GreaterOrEqual(t, apart, c.least, "roles %d and %d on ground %d, %s", a, b, c.ground, vision)
				}
			}
		}
	}
}
