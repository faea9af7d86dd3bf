// Package offgrid measures drawings whose coordinates are not whole cells, as general layout libraries make them:
// segments may be oblique, and wires may run side by side at less than a cell.
//
// It counts what package metrics counts, in the same meaning, and shares no code with it: on drawings that lie on the
// grid each checks the other.
package offgrid

import (
	"math"
	"strconv"
)

// Lengths in cells within which things are taken to be equal.
const (
	near      = 0.02 // two coordinates: programs print them rounded
	portNear  = 0.1  // a wire's end and its terminal
	grazed    = 0.1  // the least run along a border that counts, and the least overlap
	inset     = 0.05 // a box begins that far inside of its border
	closeRuns = 0.95 // parallel runs closer than this cannot be drawn on a character grid
)

// Point is a place in cells, x and y.
type Point [2]float64

// Box is a rectangle: its top-left corner and its size in cells.
type Box struct{ X, Y, W, H float64 }

// End is where a wire has to end.
type End struct {
	// Box is the index of the box it ends at.
	Box int
	// Port is equal for equal terminals of one box and different for different ones, or negative for an end that may
	// be anywhere.
	Port int
	// At is the place of the terminal, Out the direction in which a wire leaves it.
	At, Out Point
}

// Wire is one drawn wire. Path runs from From to To; fewer than two points mean not routed.
type Wire struct {
	From, To End
	Path     []Point
}

// Report holds the counts. Lengths are in cells, areas in cells of one unit by one unit.
type Report struct {
	Unrouted    int     `json:"unrouted"`    // wires without a path
	Through     int     `json:"through"`     // pairs of a wire and a foreign box whose inside it enters
	ThroughOwn  int     `json:"throughOwn"`  // likewise, a box that it ends at
	Graze       int     `json:"graze"`       // pairs of a wire and a box on whose border it runs
	Overlap     float64 `json:"overlap"`     // length on which wires of different nets lie on each other
	OverlapSame float64 `json:"overlapSame"` // length on which wires of one net lie on each other
	Touches     int     `json:"touches"`     // meetings without crossing away from a common terminal
	Tight       float64 `json:"tight"`       // length of parallel runs less than a cell apart
	PortMiss    int     `json:"portMiss"`    // ends away from their terminal
	PortDir     int     `json:"portDir"`     // ends that do not leave straight outward
	Oblique     int     `json:"oblique"`     // segments neither level nor upright
	NodeOverlap int     `json:"nodeOverlap"` // pairs of boxes that overlap
	Crossings   int     `json:"crossings"`   // crossings over pairs of wires
	CrossPoints int     `json:"crossPoints"` // distinct places of proper crossings
	Bends       int     `json:"bends"`       // bends over all wires
	MaxBends    int     `json:"maxBends"`    // bends of the worst wire
	Length      float64 `json:"length"`      // length of all wires
	Width       float64 `json:"width"`       // width of the drawing
	Height      float64 `json:"height"`      // height of the drawing
	Area        float64 `json:"area"`        // width times height
}

// Sound tells whether the drawing says what the graph says, if not on a character grid: no wire is missing, off its
// terminal, oblique, in a box, or on a wire of another net, and no two boxes overlap.
func (r Report) Sound() bool {
	return r.Unrouted+r.Through+r.ThroughOwn+r.PortMiss+r.PortDir+r.Oblique+r.NodeOverlap == 0 && r.Overlap == 0
}

// Faults is the number of countable faults and of lengths above zero: 0 for a drawing that can be printed as text.
func (r Report) Faults() int {
	n := r.Unrouted + r.Through + r.ThroughOwn + r.Graze + r.Touches + r.PortMiss + r.PortDir + r.Oblique + r.NodeOverlap
	if r.Overlap > 0 {
		n++
	}
	if r.Tight > 0 {
		n++
	}
	return n
}

// Measure counts everything. The time grows with the square of the number of wires.
func Measure(boxes []Box, wires []Wire) Report {
	var m Report
	around := nothing()
	for i, a := range boxes {
		around.add(Point{a.X, a.Y})
		around.add(Point{a.X + a.W, a.Y + a.H})
		for _, b := range boxes[i+1:] {
			if a.X+near < b.X+b.W && b.X+near < a.X+a.W && a.Y+near < b.Y+b.H && b.Y+near < a.Y+a.H {
				m.NodeOverlap++
			}
		}
	}
	lines := make([]line, len(wires))
	for i, w := range wires {
		path := clean(w.Path)
		if len(path) < 2 {
			m.Unrouted++
			continue
		}
		lines[i] = newLine(path)
		for _, p := range path {
			around.add(p)
		}
		m.wire(boxes, w, lines[i])
	}
	m.pairs(lines, nets(wires))
	if around.x0 <= around.x1 {
		m.Width, m.Height = around.x1-around.x0, around.y1-around.y0
	}
	m.Area = m.Width * m.Height
	for _, v := range []*float64{&m.Length, &m.Tight, &m.Overlap, &m.OverlapSame, &m.Width, &m.Height, &m.Area} {
		*v = math.Round(*v*10) / 10
	}
	return m
}

// line is a cleaned wire with the rectangle around it; no points for a wire that is not routed.
type line struct {
	pts []Point
	extent
}

func newLine(pts []Point) line {
	l := line{pts: pts, extent: nothing()}
	for _, p := range pts {
		l.add(p)
	}
	return l
}

// pairs counts what wires do to each other.
func (m *Report) pairs(lines []line, net []int) {
	spots := map[string]bool{}
	for i, a := range lines {
		for j := i + 1; j < len(lines) && a.pts != nil; j++ {
			b := lines[j]
			if b.pts == nil || a.apart(b.extent) {
				continue
			}
			c := contactsOf(a.pts, b.pts, spots)
			m.Crossings += c.crossings
			m.Touches += c.touches
			m.Tight += tightRun(a.pts, b.pts)
			switch {
			case c.overlap <= grazed:
			case net[i] == net[j]:
				m.OverlapSame += c.overlap
			default:
				m.Overlap += c.overlap
			}
		}
	}
	m.CrossPoints = len(spots)
}

// spotKey names a place to a tenth of a cell.
func spotKey(p Point) string {
	return strconv.FormatFloat(p[0], 'f', 1, 64) + "," + strconv.FormatFloat(p[1], 'f', 1, 64)
}

// nets numbers the nets: wires that share a terminal, directly or through other wires, have one number.
func nets(wires []Wire) []int {
	net := make([]int, len(wires))
	for i := range net {
		net[i] = i
	}
	find := func(i int) int {
		for net[i] != i {
			net[i] = net[net[i]]
			i = net[i]
		}
		return i
	}
	first := map[[2]int]int{}
	for i, w := range wires {
		for _, e := range []End{w.From, w.To} {
			if e.Port < 0 {
				continue
			}
			key := [2]int{e.Box, e.Port}
			if j, seen := first[key]; seen {
				net[find(i)] = find(j)
			} else {
				first[key] = i
			}
		}
	}
	for i := range net {
		net[i] = find(i)
	}
	return net
}
