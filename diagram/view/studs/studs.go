// Package studs draws the studs of a sheet as cards: each stud from the side, its lugs
// apart, from the seat outward, with what is known of them.
package studs

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

// Stud is a terminal with a stack of lugs.
type Stud struct {
	At      model.TerminalRef
	Part    *model.Part // nil if the sheet has no such part
	Size    unit.Stud   // as measured, else by the library; zero if not known
	Usual   bool        // the size is the library's
	Record  *model.Terminal
	Ordered bool // the order of the lugs is known
	Lugs    []Lug
}

// Lug is one lug of a stud.
type Lug struct {
	Wire  *model.Wire
	Load  size.Load // in the worst of the states
	Mains bool      // its current is not computed
}

// Of lists the studs with at least one lug, part by part. A terminal is a stud if the
// library says so or if a stud size or a stack is recorded of it. leftOut is the number of
// states that say nothing about currents: something is shorted in them, or they come to no
// rest.
func Of(n *network.Network) (list []Stud, leftOut int) {
	survey := size.Of(n)
	leftOut = len(survey.Skipped()) + len(survey.Unsolved())
	for i := range n.Sheet.Parts {
		p := &n.Sheet.Parts[i]
		for _, name := range n.Cat.TerminalsOf(n.Sheet, p) {
			if s, ok := stud(n, p, model.TerminalRef{Part: p.ID, Name: name}, survey); ok {
				list = append(list, s)
			}
		}
	}
	return list, leftOut
}

func stud(n *network.Network, p *model.Part, at model.TerminalRef, survey *size.Survey) (Stud, bool) {
	s := Stud{At: at, Part: p, Record: n.Sheet.Terminal(at)}
	is := false
	if def := n.TerminalDef(at); def != nil {
		s.Size, s.Usual, is = def.Stud, true, def.Form == model.StudForm
	}
	if r := s.Record; r != nil {
		is = is || len(r.Stack) > 0 || !r.Stud.IsZero()
		if !r.Stud.IsZero() {
			s.Size, s.Usual = r.Stud, false
		}
	}
	order, known := n.Sheet.StackOf(at)
	s.Ordered = known
	for _, id := range order {
		w := n.Sheet.Wire(id)
		if w == nil || !w.LandsOn(at) {
			continue
		}
		s.Lugs = append(s.Lugs, Lug{Wire: w, Load: survey.Load(w), Mains: w.Serves == model.Mains})
	}
	return s, is && len(s.Lugs) > 0
}
