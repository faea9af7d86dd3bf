package rule

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

// stud is a terminal with a stack of lugs.
type stud struct {
	at    model.TerminalRef
	node  network.Node
	size  unit.Stud     // as measured, else by the library; zero if not known
	wires []*model.Wire // from the seat outward as far as the order is recorded
	known bool          // the order is recorded
	cover model.Cover
}

// studs lists the studs of the sheet with the wires on them, part by part. A terminal
// is a stud if the library says so or a stud size or a stack was recorded.
func (p *Pass) studs() []stud {
	if p.shared.studs != nil {
		return p.shared.studs
	}
	landed := map[model.TerminalRef]int{}
	for i := range p.Sheet.Wires {
		for _, e := range p.Sheet.Wires[i].Ends() {
			landed[e.At]++
		}
	}
	p.shared.studs = []stud{}
	for n := range p.Net.Size() {
		at := p.Net.Point(network.Node(n)).At
		if at.IsZero() || landed[at] == 0 {
			continue
		}
		if s, ok := p.studAt(at); ok {
			s.node = network.Node(n)
			p.shared.studs = append(p.shared.studs, s)
		}
	}
	return p.shared.studs
}

func (p *Pass) studAt(at model.TerminalRef) (stud, bool) {
	s := stud{at: at}
	def, record := p.Net.TerminalDef(at), p.Sheet.Terminal(at)
	isStud := false
	if def != nil {
		s.size, isStud = def.Stud, def.Form == model.StudForm
	}
	if record != nil {
		s.cover = record.Cover
		isStud = isStud || len(record.Stack) > 0 || !record.Stud.IsZero()
		if !record.Stud.IsZero() {
			s.size = record.Stud
		}
	}
	if !isStud {
		return s, false
	}
	order, known := p.Sheet.StackOf(at)
	s.known = known
	for _, id := range order {
		if w := p.Sheet.Wire(id); w != nil {
			s.wires = append(s.wires, w)
		}
	}
	return s, true
}
