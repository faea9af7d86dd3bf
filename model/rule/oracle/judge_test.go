package oracle

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// The classes of danger and of failure.
const (
	heat    = "heat"    // a conductor can carry more than it stands, and nothing opens
	reverse = "reverse" // a polarised device sees its voltage the wrong way round
	motion  = "motion"  // it moves, or asks for it, in a setting that forbids it
	coil    = "coil"    // a contactor is held while the cart stands
	volts   = "volts"   // a device or an open fuse sees more than it is made for
	short   = "short"   // a source is shorted
	frame   = "frame"   // the frame is joined to the pack
	still   = "still"   // it does not drive where it did
	charge  = "charge"  // it does not charge any more, or overcharges
)

var classes = []string{heat, reverse, motion, coil, volts, short, frame, still, charge}

// hazard is one thing that a cart can do and must not.
type hazard struct{ class, what string }

func (h hazard) String() string { return h.class + ": " + h.what }

// solved is a setting with its solution at full charge.
type solved struct {
	state    state.State
	solution *network.Solution
}

// exam is a cart under judgement.
type exam struct {
	net     *network.Network
	full    []network.Change
	solved  []solved
	hazards []hazard
	told    map[hazard]bool

	drives  map[string]bool // by setting
	charges bool            // at rest

	notes []string // how the heat came about
}

// examine judges a sheet by its solved network, but for the heat of its wires.
func examine(job *model.Job, sheet model.SheetName, lib *model.Catalogue) *exam {
	x := &exam{net: network.Build(job, job.Sheet(sheet), lib), told: map[hazard]bool{}, drives: map[string]bool{}}
	x.full = mostCharged(x.net)
	for _, s := range settings(x.net) {
		if solution := x.solve(s); solution != nil {
			x.solved = append(x.solved, solved{s, solution})
		} else {
			x.tell(still, "no rest with %s", s.Name)
		}
	}
	x.judgePolarity()
	x.judgeVolts()
	x.judgeShorts()
	x.judgeMotion()
	x.judgeCoils()
	x.judgeFrame()
	x.judgeCharging()
	return x
}

// against lists what a mutant does that the clean cart does not, and what it does not any
// more.
func (x *exam) against(clean *exam) []hazard {
	var list []hazard
	for _, h := range x.hazards {
		if !clean.told[h] {
			list = append(list, h)
		}
	}
	for _, s := range clean.solved {
		if clean.drives[s.state.Name] && !x.drives[s.state.Name] {
			list = append(list, hazard{still, "does not drive with " + s.state.Name})
		}
	}
	if clean.charges && !x.charges {
		list = append(list, hazard{charge, "does not charge at rest"})
	}
	return list
}

func (x *exam) tell(class, format string, args ...any) {
	h := hazard{class, fmt.Sprintf(format, args...)}
	if !x.told[h] {
		x.told[h] = true
		x.hazards = append(x.hazards, h)
	}
}

// solve is the solution of a setting with bridges laid; nil if it comes to no rest.
func (x *exam) solve(s state.State, bridges ...network.Bridge) *network.Solution {
	solution, err := x.net.SolveWith(s, network.Variation{Changes: x.full, Bridges: bridges})
	if err != nil {
		return nil
	}
	return solution
}

// probeOhms loads a device so that what merely leaks through something else is not taken
// for a voltage that can do harm.
const probeOhms = 10e3

// stiff is the voltage over a device under the load of the probe.
func (x *exam) stiff(s state.State, l *network.Link) float64 {
	loaded := x.solve(s, network.Bridge{A: l.A, B: l.B, Ohms: probeOhms})
	if loaded == nil {
		return 0
	}
	v, _ := loaded.Voltage(l.A, l.B)
	return v
}

// reversedVolts is from where on a voltage counts as the wrong way round.
const reversedVolts = 2

func (x *exam) judgePolarity() {
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		switch {
		case l.Kind == network.WireLink, l.Kind == network.OutputLink:
		case l.Is(model.DiodeElement):
			x.judgeDiode(l)
		case l.Element.Polarised && !l.Is(model.SourceElement):
			for _, s := range x.solved {
				if v, ok := s.solution.Voltage(l.A, l.B); ok && v < -reversedVolts && x.stiff(s.state, l) < -reversedVolts {
					x.tell(reverse, "%s (%s)", l.Part.ID, l.Element.ID)
					break
				}
			}
		}
	}
}

// judgeDiode speaks of a diode of its own that carries more than it is made for: it lies
// across a supply the wrong way round.
func (x *exam) judgeDiode(l *network.Link) {
	most, known := x.net.Figure(l.Part, l.Element.Amps)
	for _, s := range x.solved {
		if known && s.solution.Current(l) > most {
			x.tell(reverse, "%s conducts what it must block", l.Part.ID)
			return
		}
	}
}

// The shares of a limit from which a voltage counts as above it: any, if the limit was read
// off the part, and only by a class if it is a library's typical figure.
const (
	aboveKnown   = 1.02
	aboveTypical = 1.5
	aboveCoil    = 1.25 // of a coil's nominal voltage: the next class is a third more
)

func (x *exam) judgeVolts() {
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		switch {
		case l.Is(model.LoadElement), l.Is(model.CoilElement), l.Is(model.ConverterElement), l.Is(model.CapacitorElement):
		default:
			continue
		}
		limit, known := x.mostVolts(l)
		if !known || l.Def.Family == model.Storage {
			continue
		}
		for _, s := range x.solved {
			if v, ok := s.solution.Voltage(l.A, l.B); ok && math.Abs(v) > limit && math.Abs(x.stiff(s.state, l)) > limit {
				x.tell(volts, "%s (%s)", l.Part.ID, l.Element.ID)
				break
			}
		}
	}
}

// mostVolts is the voltage above which a device suffers.
func (x *exam) mostVolts(l *network.Link) (float64, bool) {
	nominal := x.net.KnownFigure(l.Part, l.Element.Volts)
	if l.Is(model.CoilElement) {
		return aboveCoil * nominal.Value, nominal.OK
	}
	stands := x.net.KnownFigure(l.Part, l.Element.MaxVolts)
	switch {
	case stands.OK && !stands.IsTypical():
		return aboveKnown * stands.Value, true
	case stands.OK:
		return aboveTypical * stands.Value, true
	}
	return aboveTypical * nominal.Value, nominal.OK && l.Is(model.LoadElement)
}

// returns are the places that a fault current goes back to: the negative pole of the pack, and
// of every reducer's output that is kept apart from it.
func (x *exam) returns() []network.Node {
	var list []network.Node
	if low, _, ok := x.net.Poles(); ok {
		list = append(list, low)
	}
	apart := x.net.Joined((*network.Link).Firm)
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if l.Kind == network.OutputLink && l.Def.Family == model.Supply && !slices.ContainsFunc(list, func(at network.Node) bool { return apart.Same(at, l.B) }) {
			list = append(list, l.B)
		}
	}
	return list
}

// shortShare is the share of a source's short-circuit current that counts as a short.
const shortShare = 0.4

// judgeShorts speaks of a source that is shorted in some setting, or of a fuse that opens
// there at once.
func (x *exam) judgeShorts() {
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		for _, s := range x.solved {
			amps := math.Abs(s.solution.Current(l))
			switch {
			case l.Kind == network.OutputLink && l.Def.Family == model.Supply && s.solution.On(l), l.Is(model.ChargerElement) && s.solution.On(l):
				if v, ok := s.solution.Voltage(l.A, l.B); ok && math.Abs(v) < 1 {
					x.tell(short, "%s gives into a short", l.Part.ID)
				}
			case l.Is(model.SourceElement):
				emf, known := x.net.Figure(l.Part, l.Element.Volts)
				if inside := x.net.SourceOhms(l); known && inside.OK && amps > shortShare*emf/inside.Value {
					x.tell(short, "%s is shorted", l.Part.ID)
				}
			case l.Is(model.FuseElement):
				if rated, known := x.net.Figure(l.Part, l.Element.Amps); known && amps > opensAt*rated {
					x.tell(short, "fuse %s opens", l.Part.ID)
				}
			}
		}
	}
}

// touchVolts is the highest d.c. voltage that does no harm to touch: the end of voltage class
// A of ISO 6469-3, from memory.
const touchVolts = 60

// judgeFrame speaks of a frame that is joined to a pack of more than that.
func (x *exam) judgeFrame() {
	low, high, ok := x.net.Poles()
	at := x.net.Frame()
	if !ok || at == network.None {
		return
	}
	const touch = 100 // ohms, far below a body
	const felt = 0.05 // amperes
	for _, s := range x.solved {
		if pack, _ := s.solution.Voltage(high, low); pack <= touchVolts {
			continue
		}
		for _, pole := range []network.Node{low, high} {
			if _, joined := s.solution.Voltage(at, pole); !joined {
				continue
			}
			probed := x.solve(s.state, network.Bridge{A: at, B: pole, Ohms: touch})
			if probed != nil && math.Abs(probed.BridgeCurrent(0)) > felt {
				x.tell(frame, "joined to the pack")
				return
			}
		}
	}
}
