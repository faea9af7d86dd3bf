package unit

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestAnyKnowsItsDimension(t *testing.T) {
	tests := []struct {
		text  string
		of    Dimension
		print string
	}{
		{"51.2V", Voltage, "51.2 V"}, {"250 A", Current, "250 A"}, {"470 ohm", Resistance, "470 ohm"},
		{"105 Ah", Charge, "105 Ah"}, {"10 W", Power, "10 W"}, {"10 mF", Capacitance, "10 mF"}, {"105 C", Temperature, "105 C"},
		{"11 N m", Torque, "11 N m"}, {"2 s", Time, "2 s"}, {"24 in", Distance, "24 in"}, {`2'6"`, Distance, "2 ft 6 in"},
		{"1/2 in", Distance, "0.5 in"}, {"2/0 AWG", Area, "2/0 AWG"}, {"16 mm²", Area, "16 mm2"}, {"92%", Ratio, "92 %"},
		{"16 cells", Number, "16 cells"}, {"5 m", Distance, "5 m"}, {"5 min", Time, "5 min"},
	}
	seen := []string{}
	for _, tt := range tests {
		q, err := ParseAny(tt.text)
		require.NoError(t, err, tt.text)
		require.Equal(t, tt.of, q.Dimension())
		require.Equal(t, tt.print, q.String())
		pattern, _ := q.FormHint()
		require.Regexp(t, pattern, tt.text)
		require.Equal(t, 1, typed(q), tt.text)
		seen = append(seen, string(q.Dimension()))
	}
	for _, name := range Dimension("").Names() {
		require.True(t, slices.Contains(seen, name), name)
	}
	require.Empty(t, Any{}.Dimension())
	require.Zero(t, typed(Any{}))
	require.Empty(t, Any{}.String())
	require.True(t, Any{}.IsZero())
}

// typed counts the getters that give a value.
func typed(a Any) int {
	n := 0
	add := func(_ any, ok bool) {
		if ok {
			n++
		}
	}
	v, ok := a.Volt()
	add(v, ok)
	i, ok := a.Ampere()
	add(i, ok)
	r, ok := a.Ohm()
	add(r, ok)
	q, ok := a.AmpHour()
	add(q, ok)
	p, ok := a.Watt()
	add(p, ok)
	c, ok := a.Farad()
	add(c, ok)
	th, ok := a.Celsius()
	add(th, ok)
	m, ok := a.NewtonMetre()
	add(m, ok)
	s, ok := a.Second()
	add(s, ok)
	l, ok := a.Length()
	add(l, ok)
	f, ok := a.Percent()
	add(f, ok)
	k, ok := a.Count()
	add(k, ok)
	g, ok := a.Gauge()
	add(g, ok)
	return n
}

func TestAnyHoldsTypedValues(t *testing.T) {
	v, ok := V(51.2).Any().Volt()
	require.True(t, ok)
	require.Equal(t, V(51.2), v)
	g, ok := AWG(6).Any().Gauge()
	require.True(t, ok)
	require.Equal(t, AWG(6), g)
	require.True(t, Volt{}.Any().IsZero())
	require.True(t, Gauge{}.Any().IsZero())
	require.Equal(t, 51.2, V(51.2).Any().SI())
	require.InDelta(t, 16e-6, MM2(16).Any().SI(), 1e-15)
	require.Zero(t, Any{}.SI())
	checkText(t, A(250).Any())
	checkText(t, AWG(6).Any())
}
