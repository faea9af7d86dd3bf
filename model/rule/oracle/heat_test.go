package oracle

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// opensAt is the share of its rating at which a fuse opens in the end: it holds less for
// hours (ISO 8820-3: 135 % within half an hour).
const opensAt = 1.35

// fusedShare is how much of its ampacity a wire may be protected at: 33 CFR 183.455(c)(1)
// allows 150 %. What limits itself gives no more than that either.
const fusedShare = 1.5

// faultOhms is a dead short.
const faultOhms = 1e-3

// fault is a short laid somewhere.
type fault struct{ a, b network.Node }

// judgeHeat lays a dead short from every end of a wire to every return, and over every
// device, in a parked, a driving and a charging cart, and lets the devices open one after
// another.
func (x *exam) judgeHeat() {
	lines := x.lines()
	for _, s := range x.solved {
		x.compare(lines, s.solution, nil, fusedShare, "in use with "+s.state.Name)
		if !isFaulted(s.state) {
			continue
		}
		held := s.solution
		for _, f := range x.faults(held) {
			x.lay(lines, held, f)
		}
	}
}

// isFaulted picks the settings that shorts are laid in: parked, driving and charging with
// everything on.
func isFaulted(s state.State) bool {
	if !isUsual(s) || !isAt(s, model.Direction, "forward") && !isAt(s, model.Direction, "neutral") {
		return false
	}
	for _, set := range switchedOn {
		if !isAt(s, set.Control, set.Position) {
			return false
		}
	}
	return true
}

// lines lists the wires that are judged, with the current in amperes that each carries.
func (x *exam) lines() map[*network.Link]float64 {
	list := map[*network.Link]float64{}
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if l.Kind != network.WireLink || x.isLeftOut(l) {
			continue
		}
		if amps, ok := carries(l.Wire); ok {
			list[l] = amps
		}
	}
	return list
}

// carries is what a wire carries in amperes in 30 C; of unknown insulation, at best.
func carries(w *model.Wire) (float64, bool) {
	const best, thinnest = 200, 5 // AAC 43.13-1B table 11-3 protects 20 and 22 AWG at 5 A
	if w.Gauge.IsZero() {
		return 0, false
	}
	class := w.Insulation.Degrees()
	if class == 0 {
		class = best
	}
	k, err := conductor.Ampacity(w.Gauge, class, conductor.TableAmbient)
	if err != nil {
		return thinnest, true
	}
	return k.Amperes, true
}

// faults lists the shorts to lay: from the ends of wires to the returns that they have a
// voltage against, and over what lies between two terminals.
func (x *exam) faults(held *network.Solution) []fault {
	var list []fault
	seen := map[fault]bool{}
	add := func(a, b network.Node) {
		f := fault{a, b}
		if v, ok := held.Voltage(a, b); ok && math.Abs(v) > 1 && !seen[f] {
			seen[f] = true
			list = append(list, f)
		}
	}
	returns := x.returns()
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		switch {
		case l.Kind == network.WireLink:
			for _, at := range []network.Node{l.A, l.B} {
				if x.isLeadIn(l, at) {
					continue
				}
				for _, ret := range returns {
					add(at, ret)
				}
			}
		case l.Is(model.LoadElement), l.Is(model.CoilElement), l.Is(model.ConverterElement):
			add(l.A, l.B)
		}
	}
	return list
}

// lay lays one short and follows what opens.
func (x *exam) lay(lines map[*network.Link]float64, held *network.Solution, f fault) {
	changes := append([]network.Change{}, x.full...)
	bridge := []network.Bridge{{A: f.a, B: f.b, Ohms: faultOhms}}
	const mostDevices = 12
	for range mostDevices {
		s, err := x.net.SolveWith(held.State, network.Variation{Changes: changes, Bridges: bridge, Held: held})
		if err != nil {
			return
		}
		if len(changes) > len(x.full) {
			x.judgeOpen(s, changes[len(changes)-1].Link)
		}
		device, ratio := x.firstToOpen(s)
		where := "by a short at " + x.net.Point(f.a).String() + " with " + held.State.Name
		if device == nil {
			x.compare(lines, s, nil, fusedShare, where)
			return
		}
		scaled := 1 / ratio
		x.compare(lines, s, &scaled, fusedShare*opensAt, where)
		changes = append(changes, network.Change{Link: device, Open: true})
	}
}

// judgeOpen compares the voltage over a fuse that has just opened on a short with its rating.
func (x *exam) judgeOpen(s *network.Solution, fuse *network.Link) {
	rated, known := x.net.Figure(fuse.Part, fuse.Element.MaxVolts)
	if v, ok := s.Voltage(fuse.A, fuse.B); known && ok && math.Abs(v) > aboveKnown*rated {
		x.tell(volts, "fuse %s", fuse.Part.ID)
	}
}

// compare speaks of the wires that carry more than their line; scaled is what is left of
// the currents if the short is just weak enough for no device to open.
func (x *exam) compare(lines map[*network.Link]float64, s *network.Solution, scaled *float64, share float64, where string) {
	factor := 1.0
	if scaled != nil {
		factor = *scaled
	}
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if carried, judged := lines[l]; judged && factor*math.Abs(s.Current(l)) > share*carried*marginal {
			if h := (hazard{heat, string(l.Wire.ID)}); !x.told[h] {
				x.tell(heat, "%s", l.Wire.ID)
				x.notes = append(x.notes, h.String()+" "+where)
			}
		}
	}
}

// marginal keeps rounding out of it.
const marginal = 1.02

// firstToOpen is the fuse that is farthest beyond what it holds; nil if all hold.
func (x *exam) firstToOpen(s *network.Solution) (*network.Link, float64) {
	var first *network.Link
	most := 1.0
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if !l.Is(model.FuseElement) {
			continue
		}
		rated, known := x.net.Figure(l.Part, l.Element.Amps)
		if ratio := math.Abs(s.Current(l)) / (opensAt * rated); known && rated > 0 && ratio > most {
			first, most = l, ratio
		}
	}
	return first, most
}
