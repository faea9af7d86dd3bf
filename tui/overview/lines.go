package overview

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/lugbook/diagram/scene"
)

// use is what a cell of the screen holds.
type use uint8

const (
	free use = iota
	blocked
	levelRun
	uprightRun
	corner
)

// attempts is how often the lines are drawn anew, those first that found no way.
const attempts = 12

// lines draws a line for each pair of boxes, near ones first; those that find no way are left
// out.
func (m *mosaic) lines(pairs []pair) []scene.Wire {
	order := slices.Clone(pairs)
	length := func(q pair) int {
		a, b := m.tokens[q.a].middle(), m.tokens[q.b].middle()
		return abs(a.X-b.X) + 2*abs(a.Y-b.Y)
	}
	slices.SortStableFunc(order, func(a, b pair) int { return cmp.Compare(length(a), length(b)) })
	var best []scene.Wire
	for range attempts {
		s := newSketch(m)
		w := walk{sketch: s, cost: make([]int32, len(sides)*m.w*m.h), back: make([]int32, len(sides)*m.w*m.h)}
		var done []scene.Wire
		var left, drawn []pair
		for _, q := range order {
			if line, found := w.line(q); found {
				done, drawn = append(done, line), append(drawn, q)
			} else {
				left = append(left, q)
			}
		}
		if len(done) > len(best) {
			best = done
		}
		if len(left) == 0 {
			break
		}
		order = slices.Concat(left, drawn)
	}
	return best
}

// sketch is the screen with the lines drawn so far.
type sketch struct {
	*mosaic
	uses []use
	by   []int // token beside a cell: its index, nobody or several
}

const (
	nobody  = -1
	several = -2
)

func newSketch(m *mosaic) *sketch {
	s := &sketch{mosaic: m, uses: make([]use, m.w*m.h), by: make([]int, m.w*m.h)}
	for i := range s.by {
		s.by[i] = nobody
	}
	for i, t := range m.tokens {
		for x := range t.w {
			s.uses[t.at.Y*m.w+t.at.X+x] = blocked
			for _, side := range []scene.Side{scene.North, scene.South} {
				s.beside(i, t.at.Add(x, 0), side)
			}
		}
		if t.w > 0 {
			s.beside(i, t.at, scene.West)
			s.beside(i, t.at.Add(t.w-1, 0), scene.East)
		}
	}
	return s
}

func (s *sketch) beside(token int, at scene.Point, side scene.Side) {
	at = at.Add(side.Step())
	if !s.on(at) {
		return
	}
	if k := at.Y*s.w + at.X; s.by[k] == nobody {
		s.by[k] = token
	} else if s.by[k] != token {
		s.by[k] = several
	}
}

func (s *sketch) use(p scene.Point) use { return s.uses[p.Y*s.w+p.X] }

func (s *sketch) on(p scene.Point) bool { return p.X >= 0 && p.Y >= 0 && p.X < s.w && p.Y < s.h }

// line draws the line of a pair, if there is a way for it.
func (s *walk) line(q pair) (scene.Wire, bool) {
	way := s.search(q)
	if way == nil {
		return scene.Wire{}, false
	}
	w := q.wires[0]
	line := scene.Wire{ID: w.ID, Path: corners(way), Weight: w.Weight, Colour: w.Colour, Flow: scene.Flow{Energy: w.Flow.Energy}, From: w.From, To: w.To}
	for _, other := range q.wires[1:] {
		if line.Weight, line.Colour = scene.Trunk, ""; other.Flow.Energy != w.Flow.Energy {
			line.Flow.Energy = scene.NotShown
		}
	}
	for i := 1; i+1 < len(way); i++ {
		k := way[i].Y*s.w + way[i].X
		switch {
		case s.uses[k] != free:
			s.uses[k] = blocked // a crossing
		case way[i-1].Y == way[i+1].Y:
			s.uses[k] = levelRun
		case way[i-1].X == way[i+1].X:
			s.uses[k] = uprightRun
		default:
			s.uses[k] = corner
		}
	}
	if n := len(q.wires); n > 1 {
		line.Label = s.count(way, strconv.Itoa(n))
	}
	return line, true
}

// count writes the number of wires in the middle of the longest level run, if it has room for
// it with a piece of line on either side.
func (s *sketch) count(way []scene.Point, text string) scene.Label {
	from, most := 0, 0
	for i, run := 1, 0; i < len(way); i++ {
		if run++; s.uses[way[i].Y*s.w+way[i].X] != levelRun || way[i].Y != way[i-1].Y {
			run = 0
		}
		if run > most {
			from, most = i-run+1, run
		}
	}
	if most < len(text)+2 {
		return scene.Label{}
	}
	row := way[from : from+most]
	left := row[0]
	if row[most-1].X < left.X {
		left = row[most-1]
	}
	label := scene.Label{Text: text, At: left.Add((most-len(text))/2, 0)}
	for _, c := range label.Cells() {
		s.uses[c.Y*s.w+c.X] = blocked
	}
	return label
}

// corners are the ends of a way of cells and where it turns.
func corners(way []scene.Point) []scene.Point {
	out := []scene.Point{way[0]}
	for i := 1; i+1 < len(way); i++ {
		if way[i-1].X != way[i+1].X && way[i-1].Y != way[i+1].Y {
			out = append(out, way[i])
		}
	}
	return append(out, way[len(way)-1])
}
