package protect

import (
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// Fault is what a bolted fault at one place drives, before anything opens.
type Fault struct {
	At       network.Node // where the conductor ends
	To       network.Node // what it is bolted to
	Amps     float64      // through the fault
	State    string       // the state in which it is most, or least
	solution *network.Solution
}

// Through is the part of the fault's current that flows through a link, in amperes.
func (f Fault) Through(l *network.Link) float64 {
	if f.solution == nil {
		return 0
	}
	return math.Abs(f.solution.Current(l))
}

// IsNone reports whether nothing drives the fault in any state.
func (f Fault) IsNone() bool { return f.solution == nil }

// extreme says with which figures a fault is computed: the sources full, the copper cold and
// every joint sound, bolted to the source's own return, or empty and hot, through the
// joints as found and the way back.
type extreme int

const (
	greatest extreme = iota
	least
)

// faultKey names a fault over all states.
type faultKey struct {
	at, to network.Node
	how    extreme
}

// boltKey names one state with the figures that faults in it are computed with.
type boltKey struct {
	state   int
	how     extreme
	celsius float64
}

// faultAmps is the current from which a fault counts as one: below it something limits it
// already.
const faultAmps = 1

// coldCelsius is the copper temperature of the greatest fault current in C, that of the
// tables. The least is taken at the highest temperature of the conductor's insulation.
const coldCelsius = 20

// worst is the greatest or the least fault at a node over all states in which there is one.
func (s *Survey) worst(at, to network.Node, how extreme, celsius float64) Fault {
	if at == network.None || to == network.None || at == to {
		return Fault{At: at, To: to}
	}
	key := faultKey{at, to, how}
	f, done := s.faults[key]
	if !done {
		f = s.fault(at, to, how, celsius)
		s.faults[key] = f
	}
	return f
}

// fault computes one fault in all states.
func (s *Survey) fault(at, to network.Node, how extreme, celsius float64) Fault {
	f := Fault{At: at, To: to}
	var in *network.Bolted
	for _, i := range s.distinct {
		if s.isApart(at, to, i) {
			continue
		}
		bolted := s.bolted(boltKey{i, how, celsius})
		if bolted == nil {
			continue
		}
		amps, err := bolted.Amps(at, to)
		amps = math.Abs(amps)
		if err != nil || amps < faultAmps {
			continue
		}
		better := amps > f.Amps*(1+sameAmps)
		if how == least {
			better = amps < f.Amps*(1-sameAmps)
		}
		if in == nil || better {
			f.Amps, f.State, in = amps, s.states[i].state.Name, bolted
		}
	}
	if in != nil {
		f.solution, _ = in.Solve(at, to)
	}
	return f
}

// sameAmps is the share by which two currents may differ and still count as one: of the
// states in which a fault is the same the first is told.
const sameAmps = 1e-9

// bolted sets one state up for faults; nil if the circuit has no solution.
func (s *Survey) bolted(key boltKey) *network.Bolted {
	bolted, done := s.bolts[key]
	if !done {
		one := &s.states[key.state]
		var err error
		bolted, err = s.net.Bolt(one.state, network.Variation{
			Held: one.solution, Celsius: key.celsius, Changes: s.charges[key.how], Sound: key.how == greatest, Bridges: s.giveBack(key.how),
		})
		if err != nil {
			bolted = nil
		}
		s.bolts[key] = bolted
	}
	return bolted
}

// isApart reports whether nothing joins two nodes in a state, so that no fault between them
// has a way.
func (s *Survey) isApart(at, to network.Node, i int) bool {
	in := s.states[i].solution
	for _, f := range s.regen {
		if _, joined := in.Voltage(f.At, f.Return); !joined {
			return false
		}
	}
	_, joined := in.Voltage(at, to)
	return !joined
}

// cutoffRating is the figure that the library gives the voltage of an empty source.
const cutoffRating = "cutoff-voltage"

// emptied sets each source to the voltage at which it is empty.
func (s *Survey) emptied() []network.Change {
	var list []network.Change
	for i := range s.net.Links() {
		l := &s.net.Links()[i]
		if !l.Is(model.SourceElement) {
			continue
		}
		rest, known := s.net.Figure(l.Part, l.Element.Volts)
		if volts, stated := s.net.Figure(l.Part, cutoffRating); known && stated && rest > 0 {
			list = append(list, network.Change{Link: l, Scale: volts / rest})
		}
	}
	return list
}

// giveBack are the drives that brake, each as the voltage of its pack behind as many ohms
// as let its regenerating current into a fault. In the least fault none does.
func (s *Survey) giveBack(how extreme) []network.Bridge {
	if how == least {
		return nil
	}
	var list []network.Bridge
	full := 0.0
	for _, f := range s.feeds {
		if f.String != nil {
			full = max(full, f.Full.Value)
		}
	}
	for _, f := range s.regen {
		if full > 0 {
			list = append(list, network.Bridge{A: f.At, B: f.Return, Volts: full, Ohms: full / f.Limit})
		}
	}
	return list
}

// crossing is the nearest node of the other side, by the fewest links and not over a wire:
// where a fault inside the part at its end leads. None if there is none.
func (s *Survey) crossing(from network.Node, without *network.Link) network.Node {
	seen := map[network.Node]bool{from: true}
	for queue := []network.Node{from}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		if s.returns[at] != s.returns[from] {
			return at
		}
		for _, l := range s.net.LinksAt(at) {
			next := l.Other(at)
			blocked := l == without || l.Kind == network.OutputLink || l.Is(model.SourceElement) || l.Is(model.ChargerElement)
			if !blocked && !seen[next] {
				seen[next] = true
				queue = append(queue, next)
			}
		}
	}
	return network.None
}
