package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var backfeed = Rule{
	ID: "backfeed", Title: "With the key off something behind it stays live",
	Family: Chain, Severity: Fault,
	About: "Computes every state with the key off and speaks if the switched side of the key has voltage all the same, more than 2 V, and what brings it is no " +
		"plain wire but a lamp, a coil, a relay, a charger or the output of a reducer. Names the way. A fault if something behind the key " +
		"acts on it, a caution if only a meter shows it.",
	Why: "A device lets current through both ways. A lamp, a relay coil or a gauge between an always live circuit and the switched side of the key feeds " +
		"backwards as soon as the key opens: the controller stays awake, the reducer never sleeps, the pack is flat in a week, and the cart " +
		"may drive with the key in the pocket.",
	Tell: "Key off, black lead on pack negative, red on the switched terminal of the key: more than 2 V is a backfeed. Take the fuses of the always " +
		"live circuits out one by one until it falls to 0, then the plugs of the devices on that fuse.",
	Blind: "It computes with sound switches and with the loads that are recorded; a voltage that a moist plug makes is not here. A plain wire past the key is " +
		"told by control-bypassed, a key input on the hot side by key-input-live. Which of two circuits was meant to be live at rest it cannot know.",
	Bad:    "a pilot lamp hangs between the hot side and the switched side of the key, and wakes the reducer through its filament",
	Good:   "the pilot lamp goes from the switched side to negative",
	Wrong:  Example{Of: wakeLamp, But: []string{"wire k5", "wire k5 lt.- key.IGN gauge=16AWG insulation=105C length=0.2m", "wire k4", "wire k4 key.BAT lt.+ gauge=16AWG insulation=105C length=0.2m"}},
	Right:  Example{Of: wakeLamp, But: []string{"+", "stack pack.NEG k7 k5"}},
	Basis:  Basis{"current goes through a device from whichever side it is fed", Physics},
	Remedy: "give the device its negative, or feed both its circuits from one side of the key; where two feeds must meet put a diode or a relay between",
	Run:    runBackfeed,

	Upsets: []string{"stand-by-drain"},
}

// wakeLamp is a reducer that the key wakes, with a pilot lamp.
const wakeLamp = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=10A
part key key-switch
part red reducer-isolated
part lt lamp-work-48v
wire k1 pack.POS fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN red.WAKE gauge=16AWG insulation=105C length=1m
wire k4 key.IGN lt.+ gauge=16AWG insulation=105C length=0.2m
wire k5 lt.- pack.NEG gauge=16AWG insulation=105C length=0.2m
wire k6 fu.out red.IN+ gauge=16AWG insulation=105C length=1m
wire k7 red.IN- pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

func runBackfeed(p *Pass) {
	if p.unsound() {
		return
	}
	told := map[network.Node]bool{}
	for _, s := range p.solved() {
		if at, set := s.state.Position(model.Key); !set || at != "off" {
			continue
		}
		for _, far := range p.behindKeys() {
			if told[far] {
				continue
			}
			if f, found := p.backfeedTo(s, far); found {
				told[far] = true
				p.report(f)
			}
		}
	}
}

// behindKeys lists the nodes on the switched side of the keys, one of each piece of metal.
func (p *Pass) behindKeys() []network.Node {
	metal := p.metal()
	var list []network.Node
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.ContactElement) || l.Def.Control == nil || l.Def.Control.Sets != model.Key || !slices.Contains(l.Element.ClosedIn, "on") {
			continue
		}
		if p.wired(l.B) && !slices.ContainsFunc(list, func(n network.Node) bool { return metal.Same(n, l.B) }) {
			list = append(list, l.B)
		}
	}
	return list
}

// backfeedTo is the finding about a node behind a key that has voltage in a state with the key
// off; false if it has none or plain metal brings it.
func (p *Pass) backfeedTo(s solved, far network.Node) (Finding, bool) {
	low, _, ok := p.poles()
	if !ok {
		return Finding{}, false
	}
	v, known := s.solution.Voltage(far, low)
	if !known || v < reversedVolts {
		return Finding{}, false
	}
	way := p.wayBack(s.solution, far)
	if !slices.ContainsFunc(way, func(l *network.Link) bool { return letsBack(l) }) && !p.chargerBegins(way) {
		return Finding{}, false
	}
	f := Finding{
		State:    s.state.Name,
		Message:  fmt.Sprintf("%s has %s with the key off, through %s", p.at(far), volts(v), wayWords(way)),
		Subjects: append([]Subject{p.terminal(far)}, waySubjects(way)...),
	}
	if s.state.Name != state.Parked {
		f.Message += fmt.Sprintf(" (%s)", s.state.Name)
	}
	acting := p.actingBehind(s.solution, far, way)
	if len(acting) == 0 {
		f.Severity = Caution
	} else {
		f.Message += fmt.Sprintf("; %s %s on it", list(acting), workWord(len(acting)))
		f.Subjects = appendNew(f.Subjects, acting...)
	}
	return f, true
}

func workWord(n int) string {
	if n == 1 {
		return "works"
	}
	return "work"
}

// wayBack is the shortest way from a source that gives to a node, through what is closed,
// devices and diodes; plain metal goes first.
func (p *Pass) wayBack(in *network.Solution, far network.Node) []*network.Link {
	returns := p.Net.Returns()
	var from []network.Node
	for _, f := range p.Net.Feeds() {
		if in.On(f.Link) && !returns[f.At] {
			from = append(from, f.At)
		}
	}
	for _, devices := range []bool{false, true} {
		reach := p.Net.Walk(from, func(l *network.Link, at network.Node) bool {
			switch {
			case returns[l.Other(at)]:
				return false
			case l.Is(model.DiodeElement):
				return l.A == at && in.On(l)
			}
			return carries(in, l) || devices && letsBack(l)
		})
		if reach.Has(far) {
			return reach.Path(far)
		}
	}
	return nil
}

// letsBack reports whether a link is a device that lets current through: a lamp, another load
// without electronics, a coil, a resistance.
func letsBack(l *network.Link) bool {
	return l.Is(model.CoilElement) || l.Is(model.ResistanceElement) || l.Is(model.LoadElement) && len(l.Element.Fed) == 0
}

// chargerBegins reports whether a way begins at a charger or at the output of a reducer.
func (p *Pass) chargerBegins(way []*network.Link) bool {
	if len(way) == 0 {
		return false
	}
	for _, f := range p.Net.Feeds() {
		if f.String == nil && (way[0].A == f.At || way[0].B == f.At) {
			return true
		}
	}
	return false
}

// actingBehind lists what acts on a node that is fed backwards: contacts that it pulls in,
// drives and converters that it wakes, loads that run on it.
func (p *Pass) actingBehind(in *network.Solution, far network.Node, way []*network.Link) []Subject {
	reach := p.Net.Walk([]network.Node{far}, func(l *network.Link, _ network.Node) bool { return carries(in, l) && !slices.Contains(way, l) })
	var list []Subject
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Part == nil || l.Kind == network.OutputLink || !in.On(l) || slices.Contains(way, l) {
			continue
		}
		fed := slices.ContainsFunc(l.Element.Fed, func(name string) bool {
			return reach.Has(p.Net.Node(model.TerminalRef{Part: l.Part.ID, Name: name}))
		})
		runs := (l.Is(model.CoilElement) || l.Is(model.LoadElement) && len(l.Element.Fed) == 0) && (reach.Has(l.A) || reach.Has(l.B))
		if fed || runs {
			list = appendNew(list, OfPart(l.Part.ID))
		}
	}
	return list
}
