package circuit

import "testing"

// worked is an example of a textbook: a circuit and the answers that the book prints.
type worked struct {
	source  string
	circuit string
	answers string
}

func (w worked) run(t *testing.T) {
	t.Helper()
	t.Run(w.source, func(t *testing.T) {
		n := parse(t, w.circuit)
		n.printed(n.solve(), w.answers)
	})
}

// Batteries. Bird: Electrical Circuit Theory and Technology. Kulshreshtha: Basic Electrical
// Engineering. Dhogal: Basic Electrical Engineering with Numerical Problems. Circuits text: pages
// 19 to 24 of the samples of the collection. All as recalculated in the FOSSEE
// Python Textbook Companions.
func TestTextbookBatteries(t *testing.T) {
	for _, w := range []worked{
		{"Bird p 35, 8 cells in series, open", cells(8, "2.2 .2") + "m r c8 0 10M", "V(c8)=17.6"},
		{"Bird p 35, 8 cells in series, shorted", cells(8, "2.2 .2") + "m r c8 0 0", "I(m)=11.0"},
		{"Bird p 35, 8 cells in parallel, open", parallel(8, "2.2 .2") + "m r x 0 10M", "V(x)=2.2"},
		{"Bird p 35, 8 cells in parallel, shorted", parallel(8, "2.2 .2") + "m r x 0 0", "I(m)=88.0"},
		{"Bird p 35, cell at 5 A", "b v x 0 2 .02\nl i x 0 5", "V(x)=1.9"},
		{"Bird p 35, cell at 50 A", "b v x 0 2 .02\nl i x 0 50", "V(x)=1.0"},
		{"Bird p 36, battery of 0.1 ohm", "b v x 0 25 .1\nl i x 0 10", "V(x)=24"},
		{"Bird p 36, 10 cells", cells(10, "1.5 .2") + "l r c10 0 58", "I(l)=.25 V(c10)=14.5"},
		{"Kulshreshtha ch 4, most power of a battery that gives 300 A shorted", "b v x 0 12.6 .042\nl r x 0 .042", "P(l)=945.00"},
		{"Kulshreshtha ch 4, most power of 8 cells", cells(8, "1.5 .75") + "l r c8 0 6", "P(l)=6.00"},
		{"circuits text p 24, most power of 10 cells", cells(10, "1.5 .2") + "l r c10 0 2", "P(l)=28.12 V(c10)=7.50"},
		{"Bird p 188, most power of 6 V", "b v x 0 6 2.5\nl r x 0 2.5", "P(l)=3.6"},
		{"Bird p 188, most power of 30 V", "b v x 0 30 1.5\nl r x 0 1.5", "P(l)=150"},
		{"Dhogal p 176, 50 cells at 1.8 V on charge", "s v x 0 250 19.4\nlead r x y .1\nb v y 0 90 .5", "I(b)=8"},
		{"Dhogal p 176, 50 cells at 2.2 V on charge", "s v x 0 250 19.4\nlead r x y .1\nb v y 0 110 .5", "I(b)=7"},
		{"Bakshi p 43, motor that stands still", "s v x 0 20 0\nm v x 0 0 1", "I(m)=20"},
		{"Bakshi p 50, motor that starts", "s v x 0 250 0\nm v x 0 0 .08", "I(m)=3125"},
		{"Bakshi p 50, motor that runs", "s v x 0 250 0\nm v x 0 242 .08", "I(m)=100"},
	} {
		w.run(t)
	}
}

// Sources in parallel and bridges, same books; Anand: Electrical Power I.
func TestTextbookParallelSources(t *testing.T) {
	for _, w := range []worked{
		{"Bird p 168 and 178", "one v x 0 4 2\ntwo v x 0 2 1\nl r x 0 4", "O(one)=.857 O(two)=-.286 I(l)=.571 P(l)=1.306"},
		{"Bird p 173, the second reversed", "one v x 0 8 3\ntwo v 0 x 3 2\nl r x 0 18", "O(one)=2.229 O(two)=2.156 I(l)=.073 V(x)=1.313"},
		{"circuits text p 19, short", "one v x 0 21 3\ntwo v x 0 16 2\nl r x 0 0", "I(l)=15"},
		{"circuits text p 19, load", "one v x 0 21 3\ntwo v x 0 16 2\nl r x 0 6", "I(l)=2.50"},
		{"circuits text p 19, none", "one v x 0 21 3\ntwo v x 0 16 2", "O(one)=1 I(two)=1 V(x)=18"},
		{"circuits text p 19, resistance seen", "one v x 0 0 3\ntwo v x 0 0 2\ni i 0 x 1", "V(x)=1.2"},
		{"Bird p 185, short", "one v x 0 12 3\ntwo v x 0 24 2\nl r x 0 0", "I(l)=16"},
		{"Bird p 185, none", "one v x 0 12 3\ntwo v x 0 24 2", "V(x)=19.2"},
		{"Bird p 185, load", "one v x 0 12 3\ntwo v x 0 24 2\nl r x 0 1.8", "I(l)=6.4"},
		{"circuits text p 20, short", three + "l r y 0 0", "I(l)=.94"},
		{"circuits text p 20, load", three + "l r y 0 7", "I(l)=.50"},
		{"circuits text p 20, resistance seen", "one v x 0 0 3\ntwo v x 0 0 8\nthree v x 0 0 24\ns r x y 6\ni i 0 y 1", "V(y)=8.00"},
		{"Dhogal p 182, a battery that floats", "s v m 0 230 0\nr r m x 5\none v x 0 122 .4\ntwo v x 0 130 .5", "I(one)=20 I(two)=0 I(r)=20 P(r)=2000"},
		{"Dhogal p 183, bridge with a source across", "s v A C 34 0\nab r A B 1\nad r A D 6\nbd v D B 2 8\nbc r B C 2\ndc r D C 4",
			"I(ab)=12 I(ad)=3 O(bd)=1 I(bc)=11 I(dc)=4"},
		// Ratio arms 10 and 80. The loop measures 3400 x 10/80 = 425 ohm and balances with 2400 ohm in
		// series with the fault's side, 111.11 ohm or 2.614 km of 10 km away; the length is not
		// printed with the answer, it follows from it.
		{"Anand p 225, loop test in balance", "s v top bottom 6 0\np r top left 10\nq r left bottom 80\nfar r top 0 313.8889\nnear r 0 tail 111.1111\nset r tail bottom 2400\ng r left 0 50",
			"I(g)=0.0000"},
		// 1 km of cable of 1.6 ohm/km, ratio 3 to 1: the fault is at 500 m.
		{"Anand p 226, loop test of 1 km", "s v top bottom 6 0\na r top mid 3\nb r mid bottom 1\nfar r top 0 2.4\nnear r 0 bottom .8\ng r mid 0 1", "I(g)=0.0000"},
	} {
		w.run(t)
	}
}

const three = "one v x 0 5 3\ntwo v x 0 10 8\nthree v x 0 20 24\ns r x y 6\n"
