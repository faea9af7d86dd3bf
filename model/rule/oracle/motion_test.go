package oracle

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// moves is what a drive does in a setting.
type moves struct {
	flows bool // traction current
	asks  bool // a controller wants it
}

// tractionAmps is the current that counts as traction: far above what logic, coils and
// pre-charge resistors pass. Our choice.
const tractionAmps = 5

// movesIn looks at the currents of armatures and of the loads that stand for a controller's
// drive.
func (x *exam) movesIn(s *network.Solution) moves {
	var m moves
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		switch {
		case l.Part == nil || l.Def.Family != model.Drive:
		case isDriveLoad(l):
			m.asks = m.asks || s.On(l) || s.Starved(l)
			m.flows = m.flows || math.Abs(s.Current(l)) > tractionAmps
		case l.Is(model.ResistanceElement) && l.Element.ID == "armature":
			m.flows = m.flows || math.Abs(s.Current(l)) > tractionAmps
		}
	}
	return m
}

// isDriveLoad reports whether a link is a load of a controller that acts on its inputs or
// its pedal.
func isDriveLoad(l *network.Link) bool {
	return l.Is(model.LoadElement) && l.Def.Family == model.Drive && len(l.Element.Fed) > 0
}

func (x *exam) judgeMotion() {
	turns := x.turns()
	for _, s := range x.solved {
		m := x.movesIn(s.solution)
		if mayDrive(s.state) {
			x.drives[s.state.Name] = m.flows && turns && x.armed(s.solution) && x.fusesHold(s.solution) && x.excited(s.solution) && x.throttled(s.state)
		} else if m.flows || m.asks {
			x.tell(motion, "with %s", s.state.Name)
		}
	}
}

// fusesHold reports whether no fuse opens in a setting.
func (x *exam) fusesHold(s *network.Solution) bool {
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if !l.Is(model.FuseElement) {
			continue
		}
		if rated, known := x.net.Figure(l.Part, l.Element.Amps); known && math.Abs(s.Current(l)) > opensAt*rated {
			return false
		}
	}
	return true
}

// armed reports whether some armature gets the current that flows. Of a controller whose load lies
// between its own poles the current in the motor is not in the network.
func (x *exam) armed(s *network.Solution) bool {
	there := false
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		switch {
		case isDriveLoad(l) && x.hasPole(l.A) && x.hasPole(l.B):
			return true
		case l.Is(model.ResistanceElement) && l.Def.Family == model.Drive && l.Element.ID == "armature":
			there = true
			if math.Abs(s.Current(l)) > tractionAmps {
				return true
			}
		}
	}
	return !there
}

func (x *exam) hasPole(at network.Node) bool {
	t := x.net.TerminalDef(x.net.Point(at).At)
	return t != nil && t.Pole != ""
}

// excited reports whether every separate field gets a current.
func (x *exam) excited(s *network.Solution) bool {
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if l.Is(model.ResistanceElement) && l.Part.Kind == "motor-sepex" && l.Element.ID == "field" && math.Abs(s.Current(l)) < 1 {
			return false
		}
	}
	return true
}

// throttled reports whether a controller can tell from its throttle that the pedal is down: by
// the voltage of its wiper, or, of one with two wires, by its resistance.
func (x *exam) throttled(s state.State) bool {
	for i := range x.net.Sheet.Parts {
		p := &x.net.Sheet.Parts[i]
		at := func(name string) network.Node { return x.net.Node(model.TerminalRef{Part: p.ID, Name: name}) }
		switch {
		case at("throttle-wiper") != network.None:
			loaded := x.solve(s, network.Bridge{A: at("throttle-wiper"), B: at("throttle-low"), Ohms: 100e3})
			if loaded == nil {
				return false
			}
			if v, _ := loaded.Voltage(at("throttle-wiper"), at("throttle-low")); v < 1 {
				return false
			}
		case p.Kind == "controller-series":
			if ohms := x.ohmsBetween(s, at("2"), at("3")); ohms < 2e3 || ohms > 20e3 {
				return false
			}
		}
	}
	return true
}

// ohmsBetween is what an ohmmeter shows with the power off.
func (x *exam) ohmsBetween(s state.State, a, b network.Node) float64 {
	const test, inside = 1.0, 1e3
	probed, err := x.net.SolveWith(s, network.Variation{Dead: true, Bridges: []network.Bridge{{A: a, B: b, Volts: test, Ohms: inside}}})
	if err != nil {
		return 0
	}
	return test/math.Max(1e-9, math.Abs(probed.BridgeCurrent(0))) - inside
}

// turns reports whether each phase of a motor goes to one phase of a controller, and none is
// joined to another.
func (x *exam) turns() bool {
	metal := x.net.Joined((*network.Link).IsMetal)
	controllers := x.nodesOf(true)
	for _, phases := range x.nodesOf(false) {
		taken := map[int]bool{}
		for _, at := range phases {
			found := 0
			for _, set := range controllers {
				for _, out := range set {
					if metal.Same(at, out) {
						found++
					}
				}
			}
			if group := metal.Of(at); found != 1 || taken[group] {
				return false
			} else {
				taken[group] = true
			}
		}
	}
	return true
}

// nodesOf lists the phase terminals of each controller, or of each motor of three phases.
func (x *exam) nodesOf(controllers bool) [][]network.Node {
	var list [][]network.Node
	for i := range x.net.Sheet.Parts {
		p := &x.net.Sheet.Parts[i]
		d := x.net.Cat.Definition(p.Kind)
		if d == nil || d.Terminal("U") == nil || (p.Kind != "motor-ac") != controllers {
			continue
		}
		var set []network.Node
		for _, name := range []string{"U", "V", "W"} {
			set = append(set, x.net.Node(model.TerminalRef{Part: p.ID, Name: name}))
		}
		list = append(list, set)
	}
	return list
}

// judgeCoils speaks of a contactor of the traction circuit that is held with the key off and
// the pedal up, and nothing switched on at will.
func (x *exam) judgeCoils() {
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		if !l.Is(model.CoilElement) || !movesTraction(l) {
			continue
		}
		for _, s := range x.solved {
			if _, keyed := s.state.Position(model.Key); keyed && isAt(s.state, model.Key, "off") && isAt(s.state, model.Pedal, "up") && !isSwitchedOn(s.state) && s.solution.On(l) {
				x.tell(coil, "%s is held with %s", l.Part.ID, s.state.Name)
			}
		}
	}
}

// movesTraction reports whether a coil moves a contact between terminals of the traction
// circuit.
func movesTraction(l *network.Link) bool {
	for _, e := range l.Def.Elements {
		if e.Is == model.ContactElement && e.Coil == l.Element.ID && l.Def.Terminal(e.Between[0]).Serves == model.Traction {
			return true
		}
	}
	return false
}

// chargingAmps counts as charging: more than what a pack's own electronics take.
const chargingAmps = 0.5

// judgeCharging looks at rest, plugged in, whether the pack takes a current, and at the end
// of charge whether it still does from a charger of more voltage than the pack stands.
func (x *exam) judgeCharging() {
	for _, s := range x.solved {
		if !isAt(s.state, model.PluggedIn, "yes") || !isAt(s.state, model.Key, "off") || !isAt(s.state, model.Pedal, "up") ||
			!isAt(s.state, model.Direction, "neutral") || !isAt(s.state, model.TowRun, "run") {
			continue
		}
		if _, there := s.state.Position(model.PluggedIn); !there {
			return
		}
		if rest, err := x.net.Solve(s.state); err == nil && x.taken(rest) > chargingAmps && x.fusesHold(rest) {
			x.charges = true
		}
		if x.taken(s.solution) > chargingAmps && x.overcharges(s.solution) {
			x.tell(charge, "overcharges")
		}
		return
	}
}

// taken is the least current that any battery or pack takes: all of them must.
func (x *exam) taken(s *network.Solution) float64 {
	least := math.Inf(1)
	for i := range x.net.Links() {
		if l := &x.net.Links()[i]; l.Is(model.SourceElement) {
			least = min(least, s.Current(l))
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// overcharges compares the end voltage of a charger that gives with that of the packs: it
// must not be above, by a tenth if one of the figures is only typical.
func (x *exam) overcharges(s *network.Solution) bool {
	end, full, typical := 0.0, 0.0, false
	for i := range x.net.Links() {
		l := &x.net.Links()[i]
		switch {
		case l.Is(model.ChargerElement) && s.Current(l) < -chargingAmps:
			k := x.net.KnownFigure(l.Part, l.Element.Volts)
			end, typical = max(end, k.Value), typical || k.IsTypical()
		case l.Is(model.SourceElement):
			k := x.net.KnownFigure(l.Part, l.Element.MaxVolts)
			full += k.Value
			typical = typical || k.IsTypical()
		}
	}
	if typical {
		return end > 1.1*full
	}
	return end > 1.01*full
}
