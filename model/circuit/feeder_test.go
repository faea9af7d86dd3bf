package circuit

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// cells are cells of some volts and ohms in series, from 0 to cN.
func cells(n int, cell string) string {
	var b strings.Builder
	below := "0"
	for i := range n {
		fmt.Fprintf(&b, "e%d v c%d %s %s\n", i+1, i+1, below, cell)
		below = fmt.Sprintf("c%d", i+1)
	}
	return b.String()
}

// parallel are cells side by side from 0 to x.
func parallel(n int, cell string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "e%d v x 0 %s\n", i+1, cell)
	}
	return b.String()
}

// feeder is a line of two wires with loads along it; ohms are of both wires together for a metre.
// Loads are named by their number; so are the wires that come before them.
func feeder(ohms, length float64, ends string, tapped ...float64) string {
	var b strings.Builder
	at, last := 0.0, "x0"
	for i := 0; i < len(tapped); i += 2 {
		n, amperes, metres := i/2+1, tapped[i], tapped[i+1]
		fmt.Fprintf(&b, "w%d r %s x%d %g\nl%d l x%d 0 %g 1\n", n, last, n, ohms*(metres-at), n, n, amperes)
		at, last = metres, fmt.Sprintf("x%d", n)
	}
	if length > at {
		fmt.Fprintf(&b, "w%d r %s end %g\n", len(tapped)/2+1, last, ohms*(length-at))
	}
	return b.String() + ends
}

func twoEnds(near, far float64) string {
	return fmt.Sprintf("near v x0 0 %g 0\nfar v end 0 %g 0", near, far)
}

// Distributors with loads along them. Theraja, A Textbook of Electrical Technology, volume
// III, pages 1577 to 1585.
func TestTextbookDistributors(t *testing.T) {
	for _, w := range []worked{
		{"p 1583", feeder(.8e-3, 200, twoEnds(236, 237), 20, 50, 40, 75, 25, 100, 30, 150),
			"I(w1)=53.75 I(w2)=33.75 I(w3)=-6.25 I(w4)=-31.25 I(w5)=-61.25 V(x2)=233.18"},
		{"p 1582", feeder(2*1.7e-8/2e-4, 500, twoEnds(255, 250), 120, 150, 160, 350), "V(x1)=250.13 V(x2)=247.73"},
		{"p 1579", feeder(.1e-3, 1750, twoEnds(200, 200), 50, 500, 100, 1200, 150, 1500), "O(near)=88.6 O(far)=211.4"},
		{"p 1585", feeder(.1/800, 800, twoEnds(248, 245), 20, 100, 80, 250, 50, 500, 70, 600, 40, 700), "O(near)=143.75 O(far)=116.25"},
		// The book gives 116.412 cm2 where its own figures make mm2.
		{"p 1577, 10 V along 116.412 mm2", feeder(2*1.78e-8/116.412e-6, 250, "near v x0 0 230 0", 30, 40, 40, 100, 100, 150, 50, 250), "V(x0,x4)=10.000"},
	} {
		w.run(t)
	}
	n := parse(t, feeder(.1/800, 800, twoEnds(248, 245), 20, 100, 80, 250, 50, 500, 70, 600, 40, 700))
	s := n.solve()
	lost := 0.0
	for i := range 6 {
		lost += n.read(s, fmt.Sprintf("P(w%d)", i+1))
	}
	require.InDelta(t, 847.34, lost, 0.005, "p 1585, watts lost")
}

// Theraja III, page 1577: 2 A for each of 200 m, one wire of 0.3 ohm per km. Fed at one end
// 12.0 V are lost to the far one, fed at both 3.0 V to the middle. Here each metre's load
// is in its middle, which gives the same.
func TestTextbookEvenLoad(t *testing.T) {
	var taps []float64
	for i := range 200 {
		taps = append(taps, 2, float64(i)+0.5)
	}
	n := parse(t, feeder(.3e-3, 200, "near v x0 0 250 0", taps...))
	n.printed(n.solve(), "V(x0,x200)=12.0")
	n = parse(t, feeder(.3e-3, 200, twoEnds(250, 250), taps...))
	n.printed(n.solve(), "V(x0,x100)=3.0")
}

// Lessons In Electric Circuits, volume DC, conductor sizing: 25 A at 230 V, 2300 ft away
// and 220 V at least allow 0.2 ohm each way, which No. 2/0 keeps and No. 1/0 does not.
// Circular mils of the sizes and 10.09 ohm circular mil per foot are the book's.
func TestTextbookConductorSizes(t *testing.T) {
	line := func(mils float64) string {
		ohms := 10.09 * 2300 / mils
		return fmt.Sprintf("s v x 0 230 0\ngo r x far %g\nback r near 0 %g\nl l far near 25 1", ohms, ohms)
	}
	n := parse(t, line(116035))
	s := n.solve()
	n.printed(s, "V(far,near)=220.000 R(go)=.2 R(back)=.2")
	n = parse(t, line(133100))
	require.Greater(t, n.read(n.solve(), "V(far,near)"), 220.0, "2/0")
	n = parse(t, line(105500))
	require.Less(t, n.read(n.solve(), "V(far,near)"), 220.0, "1/0")

	// No. 14, 4107 circular mils: printed 5.651 ohm a wire, 11.301 a loop, 20.352 A at most.
	one := 10.09 * 2300 / 4107
	n = parse(t, fmt.Sprintf("s v x 0 230 0\ngo r x far %g\nback r far 0 %g", one, one))
	n.printed(n.solve(), "R(go)=5.651 I(go)=20.352 R(s)=-11.301")
}

// Same book, temperature: 14 V, two wires of 15 ohm, load of 250 ohm; printed at 20 C 12.5
// and 0.75 V, at 35 C 12.42 and 0.79 V. The source and the load follow from the printed drops.
func TestTextbookWarmWires(t *testing.T) {
	for celsius, answers := range map[float64]string{20: "V(l)=12.5 V(x,far)=.75", 35: "V(l)=12.42 V(x,far)=.79"} {
		ohms := 15 * (1 + .004041*(celsius-20))
		text := fmt.Sprintf("s v x 0 14 0\ngo r x far %g\nr r far near 250\nback r near 0 %g", ohms, ohms)
		n := parse(t, text)
		n.printed(n.solve(), strings.ReplaceAll(answers, "V(l)", "V(far,near)"))
	}
}

// Same book, series-parallel: 71.429, 127.27 and 198.70 ohm.
func TestTextbookSeriesParallelOhms(t *testing.T) {
	n := parse(t, "i i 0 a 1\nr1 r a b 100\nr2 r a b 250\nr3 r b 0 350\nr4 r b 0 200")
	n.printed(n.solve(), "V(a,b)=71.429 V(b)=127.27 V(a)=198.70")
}

// Theraja III, page 1739: a 500 V line feeds two motors of 0.4 ohm that each turn 2100 N at 50
// km/h and 3500 W of losses. Printed: 138.32 A. The other root, 1180.84 A each, is not taken.
func TestTextbookTwoMotors(t *testing.T) {
	watts := 2100*50/3.6 + 3500
	n := parse(t, fmt.Sprintf("s v x 0 500 0\nr1 r x a .4\nm1 p a 0 %.12g 20\nr2 r x b .4\nm2 p b 0 %.12g 20", watts, watts))
	n.printed(n.solve(), "O(s)=138.32")
	other := (500 + math.Sqrt(500*500-4*.4*watts)) / (2 * .4)
	require.InDelta(t, 1180.84, other, 0.005, "so the printed root is of the same equation")
}
