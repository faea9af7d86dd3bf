package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var deadEndLead = Rule{
	ID: "dead-end-lead", Title: "A wire leads to a part from which nothing goes on",
	Family: Ends, Severity: Caution,
	About: "Takes off, one after another, whatever hangs on the rest of the sheet by a single wire or element: no current can flow there in any " +
		"state. Wires among it that are joined to the positive side of a source are live leads to nowhere: a caution on a plan or an as-built " +
		"sheet, a note as found, where the rest may only not be recorded yet. Those that are not live are a note on a plan or an as-built " +
		"sheet, and as found where they end on an old charging socket.",
	Why: "What was left over from an earlier conversion, a removed charge computer or an old meter looks like part of the cart: it has colours, " +
		"a fuse, a tidy end on a terminal. The old sense lead is the classic: it still hangs on the socket, goes through its own small fuse, " +
		"and behind the fuse is nothing. It does no work, and it is one more live wire that can chafe. Worse, the next person trusts it: " +
		"measures on it, feeds something from it, or spends an afternoon on what it was for.",
	Tell: "Start at the end that has nothing behind it. Key on, everything on, clamp the wire with a DC clamp meter: nothing flows. Pack off, take it off at its " +
		"source, sleeve it, pack on and try everything; if nothing has changed, take the rest of it out too.",
	Blind: "Pins of which the library doesn't know the inside (plugs of controllers, data lines), parts of unknown kind and loose ends may lead " +
		"on, so what ends there is passed over. A lead that is needed but not finished looks the same as one that is left over. A wire that " +
		"could carry current and never does, behind a switch nobody uses, is not found.",
	Bad:    "the feed of the old buzzer goes through its fuse, and from there nowhere",
	Good:   "the feed goes through its fuse to the buzzer",
	Wrong:  Example{Of: studExample, But: []string{"wire k2", "", "wire k3", "", "part buz", "", "stack pack.NEG", "", "+", "sheet plan"}},
	Right:  Example{Of: studExample},
	Basis:  Basis{"a wire without a closed way back carries nothing; what is live and does nothing is only a risk", Practice},
	Remedy: "take it off at both ends, the source first, with its fuse; if it is to do something, finish it",
	Run:    runDeadEndLead,
}

func runDeadEndLead(p *Pass) {
	for _, d := range p.deadEnds() {
		if !p.tells(d) {
			continue
		}
		f := Finding{Subjects: wireSubjects(d.wires)}
		for _, at := range d.ends {
			f.Subjects = append(f.Subjects, p.terminal(at))
		}
		wires := list(f.Subjects[:len(d.wires)])
		switch live := p.isLive(d.root); {
		case live && p.Sheet.Name == model.AsFound:
			f.Severity = Note
			f.Message = fmt.Sprintf("%s, live from %s, %s to %s and no further: a left-over, or the rest is not recorded yet", wires, p.at(d.root), leadWord(d.wires), p.nodes(d.ends))
		case live:
			f.Message = fmt.Sprintf("%s, live from %s, %s to %s and no further", wires, p.at(d.root), leadWord(d.wires), p.nodes(d.ends))
		default:
			f.Severity = Note
			f.Message = fmt.Sprintf("%s %s to %s and no further: a left-over that does nothing", wires, leadWord(d.wires), p.nodes(d.ends))
		}
		p.report(f)
	}
}

// tells reports whether a dead end is told: if it is live; else as found only if it hangs on
// an old charging socket, for the rest may not be recorded yet. What joins a socket to its
// charge computer does its work by the plug.
func (p *Pass) tells(d deadEnd) bool {
	gear := map[model.PartID]bool{}
	for _, l := range d.wires {
		for _, e := range l.Wire.Ends() {
			if def := p.Net.DefinitionOf(e.At); def != nil && def.Family == model.ChargeGear {
				gear[e.At.Part] = true
			}
		}
	}
	return len(gear) < 2 && (p.isLive(d.root) || p.Sheet.Name != model.AsFound || len(gear) == 1)
}

// isLive reports whether a node can be joined to the positive side of a source.
func (p *Pass) isLive(at network.Node) bool {
	if at == network.None {
		return false
	}
	_, side := p.liveBy(at)
	return side == network.Plus
}

func leadWord(wires []*network.Link) string {
	if len(wires) == 1 {
		return "leads"
	}
	return "lead"
}

// nodes names some nodes.
func (p *Pass) nodes(at []network.Node) string {
	words := make([]string, len(at))
	for i, n := range at {
		words[i] = p.at(n)
	}
	return listWords(words)
}
