package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// feedBreak is where the feed or the return of a device ends, in words.
type feedBreak struct {
	words    string
	subjects []Subject
}

// tracer follows feeds and returns between the poles of a source in one solution.
type tracer struct {
	p        *Pass
	in       *network.Solution
	low      network.Node
	high     network.Node
	hot      *network.Reach // what is joined to high
	cold     *network.Reach // what is joined to low
	returned *network.Groups
}

// feedBreaks tells where the way from the pack to one terminal of a device ends, and where its
// way back from the other; nothing for what is in order. minus may be None.
func (p *Pass) feedBreaks(in *network.Solution, plus, minus network.Node) []feedBreak {
	low, high, ok := p.poles()
	if v, known := in.Voltage(high, low); !ok || !known || v < reversedVolts {
		return nil
	}
	t := tracer{p: p, in: in, low: low, high: high, returned: p.firm()}
	t.hot = t.walk(high, low, func(l *network.Link) bool { return carries(in, l) })
	t.cold = t.walk(low, high, func(l *network.Link) bool { return carries(in, l) })
	var list []feedBreak
	if !p.levels(in).isFed(plus) && !t.hot.Has(plus) {
		list = append(list, t.feed(plus))
	}
	if minus != network.None && !t.cold.Has(minus) {
		list = append(list, t.back(minus))
	}
	return list
}

// walk goes from one node over some links without entering what is firmly joined to another.
func (t *tracer) walk(from, not network.Node, pass func(*network.Link) bool) *network.Reach {
	return t.p.Net.Walk([]network.Node{from}, func(l *network.Link, at network.Node) bool {
		return !t.returned.Same(l.Other(at), not) && pass(l)
	})
}

// mayCarry reports whether a link joins its nodes in the solution or could if what drives it
// were there: the contacts of coils and drivers.
func (t *tracer) mayCarry(l *network.Link) bool {
	return carries(t.in, l) || l.Is(model.ContactElement) && (l.Element.Coil != "" || len(l.Element.Fed) > 0)
}

// couldCarry reports whether a link joins its nodes in any setting.
func (t *tracer) couldCarry(l *network.Link) bool {
	return t.mayCarry(l) || l.Is(model.ContactElement) && l.Conducts() || l.Is(model.FuseElement)
}

// feed tells where the way from the positive end to a node ends.
func (t *tracer) feed(to network.Node) feedBreak {
	if l, before, after := t.firstOpen(t.high, t.low, to, t.mayCarry); l != nil {
		return t.notClosed(l, before, after)
	}
	l, before, after := t.firstOpen(t.high, t.low, to, t.couldCarry)
	if l == nil {
		return t.nowhere(to, t.hot)
	}
	if end, found := t.liveEnd(); found {
		return feedBreak{
			words:    fmt.Sprintf("%s has %s and leads no further%s", t.p.at(end), volts(t.p.levels(t.in).at(end)), t.p.oldEnd(t.p.Net.Point(end))),
			subjects: []Subject{t.p.terminal(end)},
		}
	}
	return t.notClosed(l, before, after)
}

// notClosed tells of a contact or fuse at which the voltage ends.
func (t *tracer) notClosed(l *network.Link, before, after network.Node) feedBreak {
	return feedBreak{
		words:    fmt.Sprintf("%s has %s, %s has none: %s", t.p.at(before), volts(t.p.levels(t.in).at(before)), t.p.at(after), t.openWords(l)),
		subjects: []Subject{t.p.terminal(before), t.p.terminal(after)},
	}
}

// back tells where the way from a node to the negative end ends.
func (t *tracer) back(from network.Node) feedBreak {
	for _, pass := range []func(*network.Link) bool{t.mayCarry, t.couldCarry} {
		if l, before, after := t.firstOpen(t.low, t.high, from, pass); l != nil {
			return feedBreak{
				words:    fmt.Sprintf("the return of %s is open between %s and %s: %s", t.p.at(from), t.p.at(after), t.p.at(before), t.openWords(l)),
				subjects: []Subject{t.p.terminal(after), t.p.terminal(before)},
			}
		}
	}
	b := t.nowhere(from, t.cold)
	b.words = fmt.Sprintf("%s has no way back to negative: %s", t.p.at(from), b.words)
	return b
}

// firstOpen is the first link on the way between two nodes that carries nothing in the solution;
// nil if some links do not lead there.
func (t *tracer) firstOpen(from, not, to network.Node, pass func(*network.Link) bool) (open *network.Link, before, after network.Node) {
	reach := t.walk(from, not, pass)
	if !reach.Has(to) {
		return nil, network.None, network.None
	}
	at := from
	for _, l := range reach.Path(to) {
		next := l.Other(at)
		if !carries(t.in, l) {
			return l, at, next
		}
		at = next
	}
	return nil, network.None, network.None
}

// openWords tells why a contact or fuse carries nothing.
func (t *tracer) openWords(l *network.Link) string {
	switch {
	case l.Is(model.ContactElement) && l.Element.Coil != "":
		return fmt.Sprintf("%s is not pulled in, %s at its coil", l.Part.ID, volts(t.p.coilVolts(t.in, l)))
	case len(l.Element.Fed) > 0:
		return fmt.Sprintf("the driver of %s does not switch", l.Part.ID)
	case l.Def.Control != nil:
		return fmt.Sprintf("the contact of %s does not close with %s %s", l.Part.ID, controlWord(l.Def.Control.Sets), t.in.State.Of(l.Def.Control))
	}
	return fmt.Sprintf("%s is open", l.Part.ID)
}

// nowhere tells where what hangs on a node ends if nothing leads from it to a pole, and which
// live end has nothing on it.
func (t *tracer) nowhere(from network.Node, pole *network.Reach) feedBreak {
	reach := t.p.Net.Walk([]network.Node{from}, func(l *network.Link, at network.Node) bool {
		other := l.Other(at)
		return !t.returned.Same(other, t.low) && !t.returned.Same(other, t.high) && t.couldCarry(l)
	})
	var b feedBreak
	if at, found := t.liveEnd(); found && pole == t.hot {
		b.words = fmt.Sprintf("%s has %s and nothing on it, ", t.p.at(at), volts(t.p.levels(t.in).at(at)))
		b.subjects = append(b.subjects, t.p.terminal(at))
	}
	end := t.deadEnd(reach)
	b.subjects = append(b.subjects, t.p.terminal(end))
	switch point := t.p.Net.Point(end); {
	case !point.At.IsZero() && !t.p.wired(end):
		b.words += fmt.Sprintf("no wire lands on %s%s", point, t.p.oldWire(point.At))
	case point.How == model.Untraced:
		b.words += fmt.Sprintf("its way goes out of sight at %s: follow it", point)
	case end == from:
		b.words += fmt.Sprintf("no wire on %s leads there", point)
	default:
		b.words += fmt.Sprintf("its way ends at %s%s", point, t.p.oldEnd(point))
	}
	return b
}

// deadEnd is where a way ends: at a loose end, or else at the last terminal without a wire, or
// where it begins.
func (t *tracer) deadEnd(reach *network.Reach) network.Node {
	for _, at := range slices.Backward(reach.Order) {
		if t.p.Net.Point(at).At.IsZero() {
			return at
		}
	}
	for _, at := range slices.Backward(reach.Order) {
		if !t.p.wired(at) && t.throughOwn(reach, at) {
			return at
		}
	}
	return reach.Order[0]
}

// throughOwn reports whether a way came to a terminal through a contact that carries, or starts
// there.
func (t *tracer) throughOwn(reach *network.Reach, at network.Node) bool {
	via := reach.Via(at)
	return via == nil || via.IsMetal() || carries(t.in, via)
}

// liveEnd is the one end that is live because a switch is closed and that leads nowhere: a cut
// wire, or else a terminal of a switch without a wire. It is false if there is none, or more
// than one.
func (t *tracer) liveEnd() (network.Node, bool) {
	cut := func(at network.Node) bool { return t.p.Net.Point(at).How == model.Cut && t.isSwitched(at) }
	bare := func(at network.Node) bool { return t.p.Net.Point(at).How == "" && t.isBare(at) }
	for _, isEnd := range []func(network.Node) bool{cut, bare} {
		found, n := network.None, 0
		for _, at := range t.hot.Order {
			if isEnd(at) {
				found, n = at, n+1
			}
		}
		if n > 0 {
			return found, n == 1
		}
	}
	return network.None, false
}

// isSwitched reports whether the way from the positive end to a node passes a switch.
func (t *tracer) isSwitched(at network.Node) bool {
	return slices.ContainsFunc(t.hot.Path(at), func(l *network.Link) bool { return l.Is(model.ContactElement) && l.Def.Control != nil })
}

// isBare reports whether a node is a terminal of a switch that is live through its contact and
// has no wire.
func (t *tracer) isBare(at network.Node) bool {
	via := t.hot.Via(at)
	return via != nil && via.Is(model.ContactElement) && via.Def.Control != nil && !t.p.isTraction(at) && !t.p.wired(at)
}

// oldWire tells which wire an earlier sheet has on a terminal that has none on this one; empty
// if none.
func (p *Pass) oldWire(at model.TerminalRef) string {
	for _, s := range p.earlierSheets() {
		for i := range s.Wires {
			w := &s.Wires[i]
			for _, ends := range [][2]model.End{{w.From, w.To}, {w.To, w.From}} {
				if ends[0].At == at {
					return fmt.Sprintf("; on the %s sheet %s led there from %s", s.Name, w.ID, ends[1])
				}
			}
		}
	}
	return ""
}

// oldEnd tells where a loose end was joined on an earlier sheet; empty if it was not.
func (p *Pass) oldEnd(point network.Point) string {
	for _, s := range p.earlierSheets() {
		w := s.Wire(point.Wire)
		if w == nil {
			continue
		}
		end := w.From
		if point.To {
			end = w.To
		}
		if !end.At.IsZero() {
			return fmt.Sprintf(", which went to %s on the %s sheet", end.At, s.Name)
		}
	}
	return ""
}

// earlierSheets lists the sheets of the job before this one.
func (p *Pass) earlierSheets() []*model.Sheet {
	var list []*model.Sheet
	for i := range p.Job.Sheets {
		if p.Job.Sheets[i].Name == p.Sheet.Name {
			break
		}
		list = append(list, &p.Job.Sheets[i])
	}
	return list
}

// addBreaks adds to a finding where feeds and returns end, each once.
func (p *Pass) addBreaks(f *Finding, breaks []feedBreak) {
	var words []string
	for _, b := range breaks {
		if !slices.Contains(words, b.words) {
			words = append(words, b.words)
			f.Subjects = appendNew(f.Subjects, b.subjects...)
		}
	}
	if len(words) > 0 {
		f.Message += ": " + strings.Join(words, "; ")
	}
}
