package ink

import (
	"cmp"
	"fmt"
	"slices"

	"example.com/lugbook/diagram/scene"
)

// widths are those of a wire's casing and core, and of the line of the paper's tone that
// splits the core of a mains wire in two, in tenths of a unit.
var widths = [...]struct{ casing, core, split int }{
	scene.Control:  {52, 26, 0},
	scene.Power:    {76, 50, 0},
	scene.Traction: {120, 94, 0},
	scene.Mains:    {112, 86, 32},
	scene.Trunk:    {180, 148, 0},
}

// Striped is the pattern of the second colour of an insulation.
var Striped = Dash{8, 12}

// patterns are those of wires by what a state does to them, and of their stripes: a stripe
// must not be longer than the piece of core that it lies on.
var patterns = [...]struct{ line, stripe Dash }{
	scene.NotShown: {Dash{}, Striped},
	scene.Unjudged: {Dash{}, Striped},
	scene.Dead:     {Dash{4, 10}, Dash{4, 24}},
	scene.Return:   {Dash{28, 8}, Dash{4, 32}},
	scene.Live:     {Dash{}, Striped},
}

// dotted is the pattern of a wire that was removed.
var dotted = struct{ line, stripe Dash }{Dash{8, 8}, Dash{8, 24}}

// strokes lays the strokes of a wire on each other: casing, body, stripe, split. A plain
// colour that stands out on light and dark ground fills the casing's width alone.
func strokes(w scene.Wire, body, stripe Tone, path []Step) []Mark {
	size, dash := widths[w.Weight], patterns[w.Flow.Energy]
	if w.Change == scene.Removed {
		dash = dotted
	}
	var marks []Mark
	lay := func(t Tone, width int, d Dash) {
		marks = append(marks, Mark{Pen: Pen{Line: t, Width: width, Dash: d}, Path: path})
	}
	if stripe == "" && body.standsOut() {
		lay(body, size.casing, dash.line)
	} else {
		lay(Casing, size.casing, dash.line)
		lay(body, size.core, dash.line)
	}
	if stripe != "" {
		lay(stripe, size.core, dash.stripe)
	}
	if size.split > 0 {
		lay(Page, size.split, dash.line)
	}
	return marks
}

// wires draws the wires, each cut where it passes under another and where its own label
// stands. Bands under live wires come first, below all lines.
func (s *setter) wires() {
	under := s.bridges()
	paths := make([][]Step, len(s.page.Wires))
	bands := Group{Kind: Ground}
	for i, w := range s.page.Wires {
		gaps := append(under[w.ID], labelGaps(w.Label)...)
		paths[i] = wirePath(w.Path, append(gaps, labelGaps(w.Flow.Note)...))
		if w.Flow.Energy == scene.Live {
			bands.Marks = append(bands.Marks, Mark{Pen: penGlow, Path: paths[i]})
		}
	}
	if len(bands.Marks) > 0 {
		s.add(bands)
	}
	for i, w := range s.page.Wires {
		g := Group{Kind: WireGroup, ID: w.ID, Title: w.Title}
		if g.Title == "" {
			g.Title = fmt.Sprintf("%s: %s to %s", w.ID, w.From, w.To)
		}
		body, stripe := Insulation(w.Colour)
		g.Marks = append([]Mark{{Pen: penHit, Path: paths[i]}}, strokes(w, body, stripe, paths[i])...)
		g.Marks = append(g.Marks, letters(w.Label.At, penText, scene.Clean(w.Label.Text))...)
		g.Marks = append(g.Marks, flow(w)...)
		for _, sign := range s.signs[w.ID] {
			g.Marks = append(g.Marks, changeSign(sign.At, w.Change)...)
		}
		s.add(g)
	}
}

// bridges are the gaps in level runs where upright ones pass over them, by the wire that
// passes under: as wide as a column, and wider where the line above is broad.
func (s *setter) bridges() map[string][]gap {
	weights := map[string]scene.Weight{}
	for _, w := range s.page.Wires {
		weights[w.ID] = w.Weight
	}
	under := map[string][]gap{}
	for _, c := range s.page.Crossings() {
		x, _ := centre(c.At)
		half := max(CellW, widths[weights[c.Over]].casing/10+2*air) / 2
		under[c.Under] = append(under[c.Under], gap{Y: c.At.Y, From: x - half, To: x + half, level: true})
	}
	return under
}

// gap is a piece of a line that is left out: of a level run in a row, or of an upright
// one in a column.
type gap struct {
	X, Y     int // the column, or the row
	From, To int // units
	level    bool
}

// air is the blank between a line and a text in it.
const air = 4

// labelGaps are the pieces of a line that its label takes.
func labelGaps(l scene.Label) []gap {
	if l.Text == "" {
		return nil
	}
	n := scene.Width(l.Text)
	if !l.Vertical {
		return []gap{{Y: l.At.Y, From: l.At.X*CellW - air, To: (l.At.X+n)*CellW + air, level: true}}
	}
	var gaps []gap
	for x := l.At.X; x < l.At.X+n; x++ {
		gaps = append(gaps, gap{X: x, From: l.At.Y*CellH + air, To: (l.At.Y+1)*CellH - air})
	}
	return gaps
}

// bend is the radius of a wire's bends. Half a column: two bends fit into one column.
const bend = CellW / 2

// wirePath is the path of a wire along the middles of its cells, its bends rounded and
// the gaps left out.
func wirePath(corners []scene.Point, gaps []gap) []Step {
	var path []Step
	for i, at := range corners {
		x, y := centre(at)
		if i == 0 {
			path = append(path, move(x, y))
			continue
		}
		before := corners[i-1]
		path = append(path, breaks(before, at, gaps)...)
		dx, dy := direction(before, at)
		if i == len(corners)-1 {
			path = append(path, draw(x, y))
			continue
		}
		nextX, nextY := direction(at, corners[i+1])
		path = append(path, draw(x-dx*bend, y-dy*bend), Step{Op: Quad, By: Point{x, y}, To: Point{x + nextX*bend, y + nextY*bend}})
	}
	return path
}

// breaks draws a leg up to its last gap and skips the gaps.
func breaks(from, to scene.Point, gaps []gap) []Step {
	level := from.Y == to.Y
	along := func(p scene.Point) int {
		x, y := centre(p)
		if level {
			return x
		}
		return y
	}
	a, b := along(from), along(to)
	low, high := min(a, b)+bend, max(a, b)-bend
	var on []gap
	for _, g := range gaps {
		if g.level == level && (level && g.Y == from.Y || !level && g.X == from.X) && g.To > low && g.From < high {
			on = append(on, gap{From: max(g.From, low), To: min(g.To, high)})
		}
	}
	on = merged(on)
	if a > b {
		slices.Reverse(on)
	}
	var path []Step
	x, y := centre(from)
	for _, g := range on {
		first, second := g.From, g.To
		if a > b {
			first, second = second, first
		}
		if level {
			path = append(path, draw(first, y), move(second, y))
		} else {
			path = append(path, draw(x, first), move(x, second))
		}
	}
	return path
}

// merged sorts gaps and makes one of those that touch.
func merged(gaps []gap) []gap {
	slices.SortFunc(gaps, func(g, h gap) int { return cmp.Compare(g.From, h.From) })
	var out []gap
	for _, g := range gaps {
		if n := len(out); n > 0 && g.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, g.To)
		} else {
			out = append(out, g)
		}
	}
	return out
}

func direction(from, to scene.Point) (dx, dy int) {
	return min(1, max(-1, to.X-from.X)), min(1, max(-1, to.Y-from.Y))
}
