package layout

import (
	"fmt"
	"slices"

	"example.com/lugbook/diagram/layout/chance"
)

// sheet is a harness as a person edits it: parts in zones with terminals, wires from terminal to terminal. Each wire
// on a terminal is a port of its own, and the ports of one terminal form a group.
type sheet struct {
	rnd   chance.Source
	zones int
	parts []sheetPart
	wires []sheetWire
	next  int // number of the next part or wire
}

type sheetPart struct {
	id, zone, terminals, w int
}

type sheetWire struct {
	id   int
	ends [2]sheetEnd
}

// sheetEnd is a terminal of a part, or a loose end (part < 0).
type sheetEnd struct{ part, terminal int }

func newSheet(seed uint64, zones, parts, wires int) *sheet {
	s := &sheet{rnd: chance.New(seed), zones: zones}
	for range parts {
		s.addPart()
	}
	for range wires {
		s.addWire()
	}
	return s
}

func (s *sheet) number() int { s.next++; return s.next }

func (s *sheet) addPart() int {
	p := sheetPart{id: s.number(), zone: s.rnd.Below(s.zones+1) - 1, terminals: 1 + s.rnd.Below(4), w: 8 + s.rnd.Below(18)}
	s.parts = append(s.parts, p)
	return p.id
}

func (s *sheet) end() sheetEnd {
	if len(s.parts) == 0 || s.rnd.Below(12) == 0 {
		return sheetEnd{part: -1}
	}
	p := s.parts[s.rnd.Below(len(s.parts))]
	return sheetEnd{p.id, s.rnd.Below(p.terminals)}
}

func (s *sheet) addWire() {
	w := sheetWire{id: s.number(), ends: [2]sheetEnd{s.end(), s.end()}}
	for w.ends[0] == w.ends[1] {
		w.ends[1] = s.end()
		if w.ends[1].part < 0 {
			w.ends[1].terminal++ // two loose ends are two things
		}
	}
	s.wires = append(s.wires, w)
}

// edit makes one random change and lists the boxes it is about.
func (s *sheet) edit() (what string, about []string) {
	switch dice := s.rnd.Below(100); {
	case dice < 30 || len(s.wires) == 0 || len(s.parts) == 0:
		s.addWire()
		return "add wire", s.about(len(s.wires) - 1)
	case dice < 45:
		k := s.rnd.Below(len(s.wires))
		about = s.about(k)
		s.wires = slices.Delete(s.wires, k, k+1)
		return "remove wire", about
	case dice < 60:
		k := s.rnd.Below(len(s.wires))
		about = s.about(k)
		old := s.wires[k]
		s.wires[k].ends[s.rnd.Below(2)] = s.end()
		if s.wires[k].ends[0] == s.wires[k].ends[1] {
			s.wires[k] = old
		}
		return "end wire elsewhere", append(about, s.about(k)...)
	case dice < 80:
		about = []string{fmt.Sprint("p", s.addPart())}
		s.addWire()
		s.wires[len(s.wires)-1].ends = [2]sheetEnd{{s.parts[len(s.parts)-1].id, 0}, {s.parts[0].id, 0}}
		return "add part", append(about, s.about(len(s.wires)-1)...)
	case dice < 90:
		return "remove part", s.removePart(s.rnd.Below(len(s.parts)))
	}
	p := &s.parts[s.rnd.Below(len(s.parts))]
	p.zone = s.rnd.Below(s.zones+1) - 1
	return "change zone", append(s.flags(p.id), fmt.Sprint("p", p.id))
}

// removePart leaves the wires of a part with loose ends.
func (s *sheet) removePart(k int) []string {
	id := s.parts[k].id
	about := []string{fmt.Sprint("p", id)}
	s.parts = slices.Delete(s.parts, k, k+1)
	for w := range s.wires {
		for n := range s.wires[w].ends {
			if s.wires[w].ends[n].part == id {
				s.wires[w].ends[n] = sheetEnd{-1, n}
				about = append(about, s.about(w)...)
			}
		}
	}
	return about
}

// flags lists the flags whose zone is that of a part.
func (s *sheet) flags(part int) []string {
	var out []string
	for k, w := range s.wires {
		if w.ends[0].part == part || w.ends[1].part == part {
			out = append(out, s.about(k)...)
		}
	}
	return out
}

// about lists the boxes at the ends of a wire.
func (s *sheet) about(wire int) []string {
	var out []string
	for n, e := range s.wires[wire].ends {
		out = append(out, s.endID(s.wires[wire], n, e))
	}
	return out
}

func (s *sheet) endID(w sheetWire, n int, e sheetEnd) string {
	if e.part < 0 {
		return fmt.Sprintf("w%d %d", w.id, n)
	}
	return fmt.Sprint("p", e.part)
}

// graph describes the sheet to the layout.
func (s *sheet) graph() Graph {
	var g Graph
	used := map[int]bool{}
	for _, p := range s.parts {
		used[p.zone] = true
	}
	for z := range s.zones {
		if used[z] {
			g.Zones = append(g.Zones, Zone{ID: fmt.Sprint("z", z), Title: 6 + 5*z})
		}
	}
	sides := SidesOf(East, West)
	zone := map[int]string{}
	for _, p := range s.parts {
		b := Box{ID: fmt.Sprint("p", p.id), W: p.w, H: 2 + p.w%3, Head: 1 + p.w%2}
		if p.zone >= 0 {
			b.Zone = fmt.Sprint("z", p.zone)
		}
		zone[p.id] = b.Zone
		for t := range p.terminals {
			b.Ports = append(b.Ports, s.lugs(sheetEnd{p.id, t})...)
		}
		g.Boxes = append(g.Boxes, b)
	}
	for _, w := range s.wires {
		wire := Wire{ID: fmt.Sprint("w", w.id), Labels: []string{fmt.Sprintf("w%d 2.5 RD", w.id), fmt.Sprint("w", w.id)}}
		for n, ref := range [2]*PortRef{&wire.From, &wire.To} {
			e := w.ends[n]
			*ref = PortRef{s.endID(w, n, e), fmt.Sprintf("%d/%d.%d", e.terminal, w.id, n)}
			if e.part < 0 {
				g.Boxes = append(g.Boxes, Box{ID: ref.Box, W: 5 + w.id%9, Zone: zone[w.ends[1-n].part],
					Ports: []Port{{ID: ref.Port, Sides: sides, Offset: -1}}})
			}
		}
		g.Wires = append(g.Wires, wire)
	}
	return g
}

// lugs are the ports of a terminal.
func (s *sheet) lugs(e sheetEnd) []Port {
	var out []Port
	for _, w := range s.wires {
		for n := range w.ends {
			if w.ends[n] == e {
				out = append(out, Port{ID: fmt.Sprintf("%d/%d.%d", e.terminal, w.id, n), Sides: SidesOf(East, West), Offset: -1})
			}
		}
	}
	if len(out) == 0 {
		return []Port{{ID: fmt.Sprint(e.terminal, "/"), Sides: SidesOf(East, West), Offset: -1}}
	}
	for k := range out {
		if len(out) > 1 {
			out[k].Group = fmt.Sprint(e.terminal)
		}
	}
	return out
}
