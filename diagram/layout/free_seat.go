package layout

import (
	"cmp"
	"slices"
)

// ranking puts the ports of a box of a plane drawing in their order: groups in the order given or its reverse, those
// of an ordered box too, and the ports without wires between them.
type ranking struct {
	box   *Box
	at    *BoxAt
	wired []bool
	set   []bool // ports that have a side and a row
	head  int
	pitch int
}

// level tells whether the ports of a box sit on its left and right, and what says how.
func (b *Box) level() bool {
	return !slices.ContainsFunc(b.Ports, func(p Port) bool { return p.Sides&AnySide != SidesOf(East, West) })
}

// seat arranges both sides; it reports false when a side is too short.
func (s *ranking) seat() bool {
	s.set = slices.Clone(s.wired)
	s.join()
	down := s.downward()
	for _, side := range [2]Side{West, East} {
		list := s.on(side)
		want := s.sorted(list, down)
		if slices.Equal(list, want) && !slices.ContainsFunc(list, func(k int) bool { return !s.wired[k] }) {
			continue
		}
		room := s.at.Rect.H - min(1, s.at.Rect.H)
		first := min(s.first(list), room-(len(want)-1)*s.pitch)
		if first < s.head {
			return false
		}
		for i, k := range want {
			s.at.Ports[k].At.Y = s.at.Rect.Y + first + i*s.pitch
		}
	}
	return s.level()
}

// first is the offset of the topmost port with a wire, or the head of the box.
func (s *ranking) first(list []int) int {
	for _, k := range list {
		if s.wired[k] {
			return s.at.Ports[k].At.Y - s.at.Rect.Y
		}
	}
	return s.head
}

// level puts the ports of a box with one on either face into one row; it reports false when they cannot be.
func (s *ranking) level() bool {
	one, two, count := -1, -1, 0
	for k, p := range s.box.Ports {
		switch p.Face {
		case 1:
			one = k
			count++
		case 2:
			two = k
			count++
		}
	}
	if count != 2 || one < 0 || two < 0 {
		return true
	}
	if !s.wired[one] {
		one, two = two, one
	}
	s.at.Ports[two].At.Y = s.at.Ports[one].At.Y
	return len(s.on(s.at.Ports[two].Side)) == 1
}

// join gives the ports without wires a side: across from the other face, or the emptier one.
func (s *ranking) join() {
	facing := West
	for k, p := range s.box.Ports {
		if s.wired[k] && p.Face > 0 {
			facing = s.at.Ports[k].Side
			if p.Face == 2 {
				facing = facing.Opposite()
			}
		}
	}
	for k, p := range s.box.Ports {
		if s.wired[k] {
			continue
		}
		side := West
		switch {
		case p.Face == 1:
			side = facing
		case p.Face == 2:
			side = facing.Opposite()
		case s.mate(k) >= 0:
			side = s.at.Ports[s.mate(k)].Side
		case len(s.on(East)) < len(s.on(West)):
			side = East
		}
		s.at.Ports[k].Side, s.set[k] = side, true
		s.at.Ports[k].At = Point{X: s.at.Rect.X, Y: s.at.Rect.Bottom() + 1 + k} // below all with wires
		if side == East {
			s.at.Ports[k].At.X = s.at.Rect.Right()
		}
	}
}

// mate is a port of the group of port k that has its side, -1 for none.
func (s *ranking) mate(k int) int {
	for i, p := range s.box.Ports {
		if s.set[i] && p.Group != "" && p.Group == s.box.Ports[k].Group {
			return i
		}
	}
	return -1
}

// on lists the ports of a side from top to bottom.
func (s *ranking) on(side Side) []int {
	var list []int
	for k, p := range s.at.Ports {
		if s.set[k] && p.Side == side {
			list = append(list, k)
		}
	}
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(s.at.Ports[a].At.Y, s.at.Ports[b].At.Y) })
	return list
}

// downward tells whether fewer ports of the faces have to change places when they run down in the order given than
// when they run up.
func (s *ranking) downward() bool {
	balance := 0
	for _, side := range [2]Side{West, East} {
		list := s.on(side)
		for i, a := range list {
			for _, b := range list[i+1:] {
				balance += cmp.Compare(b, a)
			}
		}
	}
	return balance >= 0
}

// sorted brings the ports of a side in an order that is allowed, near the one they are in.
func (s *ranking) sorted(list []int, down bool) []int {
	var blocks [][]int
	for _, k := range list {
		group := s.box.Ports[k].Group
		i := slices.IndexFunc(blocks, func(b []int) bool { return group != "" && s.box.Ports[b[0]].Group == group })
		if i < 0 {
			blocks = append(blocks, []int{k})
		} else {
			blocks[i] = append(blocks[i], k)
		}
	}
	for _, b := range blocks {
		balance := 0
		for i := range b {
			for _, later := range b[i+1:] {
				balance += cmp.Compare(later, b[i])
			}
		}
		slices.Sort(b)
		if balance < 0 {
			slices.Reverse(b)
		}
	}
	if s.box.Ordered {
		slices.SortStableFunc(blocks, func(a, b []int) int {
			order := cmp.Compare(slices.Min(a), slices.Min(b))
			if down {
				return order
			}
			return -order
		})
	}
	return slices.Concat(blocks...)
}
