package meter

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// Duty is what a cart owes in a state of its controls.
type Duty string

// The duties: with the key on, in run, a direction chosen, the pedal down and no charger
// plugged in a cart drives; in any other state it must not.
const (
	Drive Duty = "drives"
	Stay  Duty = "stays"
)

// driving is where a control must stand for the cart to drive. Common practice, no source.
var driving = map[model.Control]func(position string) bool{
	model.Key:       func(p string) bool { return p == "on" },
	model.TowRun:    func(p string) bool { return p == "run" },
	model.Direction: func(p string) bool { return p == "forward" || p == "reverse" },
	model.Pedal:     func(p string) bool { return p != "up" },
	model.PluggedIn: func(p string) bool { return p == "no" },
	model.PackOn:    func(p string) bool { return p == "on" },
	model.Isolator:  func(p string) bool { return p == "closed" },
}

// Must is the duty of a cart in a state. A control that the cart has not forbids nothing;
// a state without key, direction and pedal asks for no drive.
func Must(s state.State) Duty {
	asked := false
	for _, set := range s.Set {
		if wants, ok := driving[set.Control]; ok && !wants(set.Position) {
			return Stay
		}
		asked = asked || set.Control == model.Key || set.Control == model.Direction || set.Control == model.Pedal
	}
	if !asked {
		return Stay
	}
	return Drive
}

// driveAmps is the traction current from which a cart counts as driving: far above what a
// pre-charge resistor lets through, far below what a cart on the level takes.
const driveAmps = 1

// Motion is what a sheet does in a state, and what it owes.
type Motion struct {
	Must      Duty
	Asks      bool           // traction current flows in a motor or controller
	Drives    bool           // it asks, and nothing on the sheet keeps the motor from turning
	But       []string       // what does, in words that follow "it asks for current, but"
	Closed    []model.PartID // main contactors that are closed
	Held      bool           // a main contactor is closed though the cart does not drive
	Satisfied bool           // it drives when it must, and asks for nothing when it must not
}

// Moves tells whether the cart drives in a solution, and whether it must. A cart that must
// stay breaks that by asking for current: what keeps its motor from turning is a fault of
// its own and may be mended any day.
func Moves(n *network.Network, s *network.Solution) Motion {
	m := Motion{Must: Must(s.State)}
	drive := driveMetal(n)
	links := n.Links()
	for i := range links {
		l := &links[i]
		switch {
		case isMain(n, l) && s.On(l) && (drive[l.A] || drive[l.B]):
			m.Closed = append(m.Closed, l.Part.ID)
		case isTraction(n, l) && math.Abs(s.Current(l)) > driveAmps:
			m.Asks = true
		}
	}
	if m.Asks {
		m.But = hindrances(n, s)
	}
	m.Drives = m.Asks && len(m.But) == 0
	m.Held = len(m.Closed) > 0 && !m.Drives
	m.Satisfied = m.Drives
	if m.Must == Stay {
		m.Satisfied = !m.Asks
	}
	return m
}

// isMain reports whether a link is the main contact of a contactor: moved by a coil, in
// the traction circuit.
func isMain(n *network.Network, l *network.Link) bool {
	return l.Is(model.ContactElement) && l.Element.Coil != "" && serves(n, l, model.Traction)
}

// driveMetal marks the nodes that metal joins to a controller, a motor or what else is of
// the drive.
func driveMetal(n *network.Network) []bool {
	metal := n.MetalGroups()
	of := make([]bool, metal.Count())
	for i := range n.Size() {
		if d := n.DefinitionOf(n.Point(network.Node(i)).At); d != nil && d.Family == model.Drive {
			of[metal.Of(network.Node(i))] = true
		}
	}
	marks := make([]bool, n.Size())
	for i := range marks {
		marks[i] = of[metal.Of(network.Node(i))]
	}
	return marks
}

// isTraction reports whether a link is what takes the traction current: the load of a
// controller, or the winding of a motor.
func isTraction(n *network.Network, l *network.Link) bool {
	return l.Part != nil && l.Def.Family == model.Drive && (l.Is(model.LoadElement) || l.Is(model.ResistanceElement)) && serves(n, l, model.Traction)
}

// serves reports whether both terminals of a link belong to a kind of circuit.
func serves(n *network.Network, l *network.Link, s model.Service) bool {
	a, b := n.TerminalDef(n.Point(l.A).At), n.TerminalDef(n.Point(l.B).At)
	return a != nil && b != nil && a.Serves == s && b.Serves == s
}
