package conductor_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/unit"
)

// TestMeltingCurrents holds Preece's formula against printed examples (Raju, Electronic
// Devices, pages 23 and 24; Kapoor, page 29): 0.0201 and 0.0159 in, and the ratio of a
// wire to one of half its diameter, 27.5 A. A third, 0.0524 in, is a computed 122.9 A.
func TestMeltingCurrents(t *testing.T) {
	inches := func(in float64) float64 { return conductor.MeltingAmps(in * 25.4) }
	require.InDelta(t, 29.19, inches(0.0201), 0.005)
	require.InDelta(t, 20.54, inches(0.0159), 0.005)
	require.InDelta(t, 122.9, inches(0.0524), 0.05)
	const d = 3.0
	require.InDelta(t, 9.723, 27.5*conductor.MeltingAmps(d/2)/conductor.MeltingAmps(d), 0.001)
	require.InDelta(t, 333, conductor.MeltingAmps(unit.AWG(10).DiameterMM()), 0.5)
}
