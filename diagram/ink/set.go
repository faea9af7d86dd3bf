package ink

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/clean"
)

// Set sets a page on paper. Equal pages give equal sheets.
func Set(p *scene.Page) *Sheet {
	on, at := fit(p)
	what, issue := p.Title.Heading()
	s := setter{
		Sheet: &Sheet{Paper: on, Unit: at.unit, W: at.w, H: at.h, Heading: strings.Join(append(what, issue...), ", "), About: about(p)},
		page:  p, ends: map[scene.Point]bool{}, signs: map[string][]scene.ChangeSign{},
	}
	for _, w := range p.Wires {
		if len(w.Path) > 0 {
			s.ends[w.Path[0]], s.ends[w.Path[len(w.Path)-1]] = true, true
		}
	}
	for _, sign := range p.ChangeSigns() {
		s.signs[sign.Wire] = append(s.signs[sign.Wire], sign)
	}
	s.add(Group{Marks: []Mark{{Shape: Rect, Pen: penPaper, W: at.w, H: at.h}, at.frame}})
	first := len(s.Groups)
	s.zones()
	s.wires()
	for _, b := range p.Boxes {
		s.part(b)
	}
	for _, f := range p.Flags {
		s.flag(f)
	}
	s.pieces()
	for i := range s.Groups[first:] {
		for k := range s.Groups[first+i].Marks {
			s.Groups[first+i].Marks[k].shift(at.drawX, at.drawY)
		}
	}
	s.add(at.marks())
	return s.Sheet
}

type setter struct {
	*Sheet
	page  *scene.Page
	ends  map[scene.Point]bool // cells where wires end
	signs map[string][]scene.ChangeSign
}

func (s *setter) add(g Group) { s.Groups = append(s.Groups, g) }

// shift moves a mark. Its path is copied, for marks of one wire share theirs.
func (m *Mark) shift(dx, dy int) {
	by := func(p Point) Point { return Point{p.X + dx, p.Y + dy} }
	m.At = by(m.At)
	path := make([]Step, len(m.Path))
	for i, s := range m.Path {
		path[i] = Step{Op: s.Op, To: by(s.To), By: by(s.By)}
	}
	m.Path = path
	for i := range m.Dots {
		m.Dots[i] = by(m.Dots[i])
	}
}

// marks draws what stands below the drawing along the foot of the sheet.
func (at place) marks() Group {
	left, right := at.frame.At.X, at.frame.At.X+at.frame.W
	ruled := func(y int) Mark { return Mark{Pen: penRule, Path: straight(left, y, right, y)} }
	g := Group{Kind: BlockGroup, Marks: []Mark{ruled(at.blockY - insetY)}}
	for i, l := range at.block {
		middle := at.blockY + i*CellH + CellH/2
		if l.rule {
			g.Marks = append(g.Marks, ruled(middle))
		}
		for _, t := range l.texts {
			g.Marks = append(g.Marks, written(left+insetX+t.col*CellW, middle, t.pen, t.text))
		}
		for _, piece := range l.samples {
			g.Marks = append(g.Marks, piece.marks(left+insetX+piece.col*CellW, middle)...)
		}
	}
	return g
}

// about says in words what the drawing holds.
func about(p *scene.Page) string {
	text := fmt.Sprintf("Wiring drawing with %s and %s", scene.Count(len(p.Boxes), "part", "parts"), scene.Count(len(p.Wires), "wire", "wires"))
	if p.Title.View != "" {
		text = "Drawing: " + clean.Line(p.Title.View)
		if len(p.Boxes) > 0 {
			text += fmt.Sprintf(", with %s and %s", scene.Count(len(p.Boxes), "box", "boxes"), scene.Count(len(p.Wires), "line", "lines"))
		}
	}
	var names []string
	for _, z := range p.Zones {
		names = append(names, clean.Line(named(z.Name, z.ID)))
	}
	if len(names) > 0 {
		text += fmt.Sprintf(" in %s: %s", scene.Count(len(names), "zone", "zones"), strings.Join(names, ", "))
	}
	text += "."
	for _, remark := range p.Title.Remarks() {
		text += " " + remark
	}
	return text
}
