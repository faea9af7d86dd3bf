package circuit

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// A voltmeter is a resistance across what it measures: its sensitivity in ohms per volt times
// its range. Kulshreshtha, Basic Electrical Engineering, chapter 18; Bakshi, Electronic
// Measurements, chapter 3; Gupta, Electronic Measurements, page 156; as recalculated in the
// FOSSEE Python Textbook Companions.
func TestTextbookMeterLoading(t *testing.T) {
	const divider = "s v x 0 150 0\nr1 r x y 100k\nr2 r y 0 50k\n"
	const small = "s v x 0 25 0\nr1 r x y 5k\nr2 r y 0 1k\n"
	for _, w := range []worked{
		{"Kulshreshtha, 1 kilohm per volt on 50 V", divider + "m r y 0 50k", "V(y)=30.00"},
		{"Kulshreshtha, 20 kilohm per volt on 50 V", divider + "m r y 0 1M", "V(y)=48.39"},
		{"10 Mohm of a digital meter", divider + "m r y 0 10M", "V(y)=49.8339"},
		{"Bakshi, no meter", small, "V(y)=4.167"},
		{"Bakshi, 1 kilohm per volt on 5 V", small + "m r y 0 5k", "V(y)=3.571"},
		{"Bakshi, 20 kilohm per volt on 5 V", small + "m r y 0 100k", "V(y)=4.132"},
		{"Gupta, 100 V at 5 mA are 20 kilohm in appearance", "s v x 0 100 0\nr r x 0 23.0769k\nm r x 0 150k", "O(s)=5.000m"},
	} {
		w.run(t)
	}
	for _, row := range []struct {
		circuit          string
		meter            float64
		percent, allowed float64
	}{
		{divider, 50e3, 40.00, .005}, {divider, 1e6, 3.23, .005}, {small, 5e3, 14.3, .05}, {small, 100e3, .83, .005},
	} {
		bare, loaded := parse(t, row.circuit), parse(t, row.circuit+fmt.Sprintf("m r y 0 %g", row.meter))
		before, after := bare.read(bare.solve(), "V(y)"), loaded.read(loaded.solve(), "V(y)")
		require.InDelta(t, row.percent, 100*(before-after)/before, row.allowed)
	}
	require.InDelta(t, 13.33, 100*(1-20/23.077), .005, "Gupta: the error of taking the meter's current for the resistor's")
}

// Silicon diodes of 0.7 V: Sedha, Applied Electronics, pages 239 to 240. One of 0.6 V and 12
// ohm: Singh, Semiconductor Devices, page 208.
func TestTextbookDiodes(t *testing.T) {
	for _, w := range []worked{
		{"Sedha, 6 V", "s v x 0 6 0\nd d x y .7 0\nr r y 0 800", "I(r)=6.625m"},
		{"Sedha, 5 V", "s v x 0 5 0\nd d x y .7 0\nr r y 0 510", "I(r)=8.43m"},
		{"Sedha, two in series on 6 V", "s v x 0 6 0\nd d x z .7 0\ne d z y .7 0\nr r y 0 1.5k", "I(r)=3.067m"},
		{"Sedha, two in series on 12 V", "s v x 0 12 0\nd d x z .7 0\ne d z y .7 0\nr r y 0 3.3k", "I(r)=3.212m"},
		{"Singh", "s v x 0 5 0\nd d x y .6 12\nr r y 0 1k", "I(d)=4.35m V(x,y)=.65"},
	} {
		w.run(t)
	}
}
