package studs

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view/board"
	"example.com/lugbook/model"
)

// Measures of a card in cells.
const (
	edge     = 2 // frame and a blank
	stackW   = 7
	nutW     = 5
	textLeft = edge + stackW + 1
	leastTo  = 8
)

// comfortable is the least width of a card where the page has room for it.
const comfortable = 56

// row is what stands beside a lug: position, wire, conductor, where it goes, amperes.
type row [5]string

// gaps are the blanks before each text beside a lug.
var gaps = [len(row{})]int{0, 1, 1, 2, 2}

// Areas in mm2 from which the lug of a conductor is drawn thicker: 12 AWG and 6 AWG.
const (
	mediumArea = 3
	thickArea  = 13
)

// Legend explains the cards.
func Legend(list []Stud, leftOut int) []string {
	if len(list) == 0 {
		return nil
	}
	lines := []string{
		"Each stud is drawn from its seat outward: position 1 touches the terminal, the nut comes last. Lugs of conductors from 3 mm2 (12 AWG) and from 13 mm2 (6 AWG) are drawn thicker.",
		"Beside each lug: position, wire, conductor, where the wire goes, and the amperes that it carries for long in the worst state of the controls, by the figures on record; the peaks of a drive are higher.",
	}
	if leftOut > 0 {
		lines = append(lines, fmt.Sprintf("States left out of the amperes, because something is shorted in them or they come to no rest: %d.", leftOut))
	}
	if slices.ContainsFunc(list, func(s Stud) bool { return !s.Ordered }) {
		lines = append(lines, "A question mark in place of a position: the order of the lugs is not recorded.")
	}
	return lines
}

// Cards sets each stud as a card, all of one width, at most so many columns wide.
func Cards(j *model.Job, list []Stud, columns int) []board.Item {
	rows := make([][]row, len(list))
	widths := make([]int, len(row{}))
	for i := range list {
		rows[i] = list[i].rows()
		for _, r := range rows[i] {
			for c, cell := range r {
				widths[c] = max(widths[c], scene.Width(cell))
			}
		}
	}
	need := textLeft + edge
	for c, w := range widths {
		need += w + gaps[c]
	}
	width := min(max(need, comfortable), columns)
	cards := make([]board.Item, len(list))
	for i := range list {
		c := card{Stud: &list[i], width: width, widths: widths, fits: need <= width}
		cards[i] = c.set(j, rows[i])
	}
	return cards
}

// rows are the texts of the lugs, from the seat outward.
func (s *Stud) rows() []row {
	rows := make([]row, len(s.Lugs))
	for i, l := range s.Lugs {
		position := strconv.Itoa(i + 1)
		if !s.Ordered {
			position = "?"
		}
		gauge, colour := l.Wire.Gauge.String(), l.Wire.Colour.String()
		if gauge == "" {
			gauge = "size ?"
		}
		if colour == "" {
			colour = "?"
		}
		rows[i] = row{position, string(l.Wire.ID), gauge + " " + colour, l.Wire.Far(s.At).String(), l.current()}
	}
	return rows
}

func (l *Lug) current() string {
	switch {
	case l.Mains:
		return "mains"
	case l.Load.Amps < live.Least:
		return "0 A"
	default:
		return live.Amperes(l.Load.Amps)
	}
}

// card is a stud's card in the making.
type card struct {
	*Stud
	board.Item
	width  int
	widths []int // of the texts beside the lugs
	fits   bool  // these find room side by side
}

// set draws the stud from its nut down to its seat.
func (c *card) set(j *model.Job, rows []row) board.Item {
	of := scene.Ref{Kind: scene.PortKind, ID: string(c.At.Part), Port: c.At.Name}
	y := 1
	for _, line := range scene.Fold(c.title(j), c.width-2*edge) {
		p := c.Write(edge, y, line)
		p.Strong, p.Of = true, of
		y++
	}
	y = c.fold(c.about(), y)
	middle := edge + stackW/2
	c.Add(scene.Piece{Kind: scene.Tip, Rect: scene.Rect{X: middle, Y: y - 1, W: 1, H: 1}, Of: of})
	c.Add(scene.Piece{Kind: scene.Nut, Rect: scene.Rect{X: middle - nutW/2, Y: y, W: nutW, H: 1}, Of: of})
	y = c.fold(c.torque(), y)
	for i, l := range slices.Backward(c.Lugs) {
		y = c.lug(l, rows[i], i+1, y)
	}
	c.Add(scene.Piece{Kind: scene.Seat, Rect: scene.Rect{X: edge, Y: y, W: stackW, H: 1}, Of: of})
	y = c.fold(c.seat(), y)
	c.Add(scene.Piece{Kind: scene.Frame, Rect: scene.Rect{W: c.width, H: y + 1}, Of: scene.Ref{Kind: scene.BoxKind, ID: string(c.At.Part)}})
	return c.Item
}

// fold writes a text beside the stud and is the row below it.
func (c *card) fold(text string, y int) int {
	for _, line := range scene.Fold(text, max(c.width-textLeft-edge, leastTo)) {
		c.Write(textLeft, y, line)
		y++
	}
	return y
}

// lug draws one lug with its texts and is the row below it. Where the texts do not fit side
// by side they are folded.
func (c *card) lug(l Lug, r row, seat, y int) int {
	of := scene.Ref{Kind: scene.PortKind, ID: string(c.At.Part), Port: c.At.Name}
	if c.Ordered {
		of.Seat = seat
	}
	c.Add(scene.Piece{
		Kind: scene.Lug, Rect: scene.Rect{X: edge, Y: y, W: stackW, H: 1}, Of: of, Colour: l.Wire.Colour.String(),
		Thick: thickness(l.Wire), Title: fmt.Sprintf("%s position %s: %s", c.At, r[0], strings.Join(r[1:], ", ")),
	})
	if !c.fits {
		return c.fold(strings.Join(r[:], " "), y)
	}
	x := textLeft
	for k, cell := range r {
		x += gaps[k]
		at := x
		if k == len(r)-1 {
			at += c.widths[k] - scene.Width(cell) // figures end in one column
		}
		p := c.Write(at, y, cell)
		p.Of, p.Strong = of, k == 1
		x += c.widths[k]
	}
	return y + 1
}

// thickness is how thick the lug of a wire is drawn.
func thickness(w *model.Wire) int {
	switch area := w.Gauge.AreaMM2(); {
	case area >= thickArea:
		return 3
	case area >= mediumArea:
		return 2
	default:
		return 1
	}
}
