package layouttest

import (
	"fmt"

	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/chance"
)

// Channel is two walls of terminals with wires between them: the problem of routing a channel, turned upright.
type Channel struct {
	Graph layout.Graph
	// Drawing has the walls in place, as many columns apart as the density needs, and no wires.
	Drawing layout.Drawing
	// Density is the greatest number of wires that pass one row: no routing has fewer tracks.
	Density int
}

// NewChannel makes a channel of wires with two ends. No wires wait for each other in a circle, so that the density can
// be met unless a chain of them says otherwise.
func NewChannel(seed uint64, wires int) Channel {
	rnd := chance.New(seed)
	rows := wires + wires/2
	left := shuffled(&rnd, rows)[:wires]
	right := shuffled(&rnd, rows)[:wires]
	for wire := waiting(left, right); wire >= 0; wire = waiting(left, right) {
		right[wire] = free(&rnd, right, rows)
	}
	return newChannel(left, right, rows)
}

// shuffled is 0..n-1 in any order.
func shuffled(rnd *chance.Source, n int) []int {
	out := make([]int, n)
	for i := range out {
		j := rnd.Below(i + 1)
		out[i], out[j] = out[j], i
	}
	return out
}

// free is a row that no wire has at this wall.
func free(rnd *chance.Source, taken []int, rows int) int {
	used := make([]bool, rows)
	for _, row := range taken {
		used[row] = true
	}
	row := rnd.Below(rows)
	for used[row] {
		row = (row + 1) % rows
	}
	return row
}

// waiting is a wire that waits for itself, or -1: where two wires have one row, the one from the left must turn off
// before the one to the right does.
func waiting(left, right []int) int {
	at := map[int]int{}
	for wire, row := range right {
		at[row] = wire
	}
	for start := range left {
		wire, ok := at[left[start]]
		for steps := 0; ok && steps < len(left); steps++ {
			if wire == start {
				if steps > 0 {
					return start
				}
				break // a straight wire waits for nobody
			}
			wire, ok = at[left[wire]]
		}
	}
	return -1
}

func newChannel(left, right []int, rows int) Channel {
	c := Channel{Density: density(left, right, rows)}
	const width, pitch = 6, 2
	height := pitch*rows + pitch
	gap := c.Density + 1
	for side, ends := range [2][]int{left, right} {
		wall := layout.Box{ID: [2]string{"left", "right"}[side], W: width, H: height}
		at := layout.Rect{X: 2 + side*(width+gap), Y: 2, W: width, H: height}
		placed := layout.BoxAt{ID: wall.ID, Rect: at}
		for i, row := range ends {
			p := layout.Port{ID: fmt.Sprint("t", i), Sides: layout.SidesOf(layout.East), Offset: pitch * (row + 1)}
			spot := layout.PortAt{ID: p.ID, At: layout.Point{X: at.Right(), Y: at.Y + p.Offset}, Side: layout.East}
			if side == 1 {
				p.Sides, spot.Side, spot.At.X = layout.SidesOf(layout.West), layout.West, at.X
			}
			wall.Ports, placed.Ports = append(wall.Ports, p), append(placed.Ports, spot)
		}
		c.Graph.Boxes, c.Drawing.Boxes = append(c.Graph.Boxes, wall), append(c.Drawing.Boxes, placed)
		c.Drawing.W, c.Drawing.H = at.Right()+1, at.Bottom()+1
	}
	for i := range left {
		id, port := fmt.Sprint("w", i), fmt.Sprint("t", i)
		c.Graph.Wires = append(c.Graph.Wires, layout.Wire{ID: id,
			From: layout.PortRef{Box: "left", Port: port}, To: layout.PortRef{Box: "right", Port: port}})
		c.Drawing.Wires = append(c.Drawing.Wires, layout.WireAt{ID: id})
	}
	return c
}

// density is the greatest number of wires that pass one row, their ends included.
func density(left, right []int, rows int) int {
	most := 0
	for row := range rows {
		passing := 0
		for i := range left {
			if left[i] != right[i] && min(left[i], right[i]) <= row && row <= max(left[i], right[i]) {
				passing++
			}
		}
		most = max(most, passing)
	}
	return most
}

// Tracks is the number of columns with upright runs in a drawing.
func Tracks(d layout.Drawing) int {
	columns := map[int]bool{}
	for _, w := range d.Wires {
		for i := 1; i < len(w.Path); i++ {
			if w.Path[i].X == w.Path[i-1].X {
				columns[w.Path[i].X] = true
			}
		}
	}
	return len(columns)
}
