package symbol

import (
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
)

// starts names the terminals that belong at the left end of a symbol of which the ends
// are not alike.
var starts = []struct {
	symbols, terminals []string
}{
	{[]string{"battery", "cell"}, []string{"+", "B+", "POS"}},
	{[]string{"diode", "led"}, []string{"+", "A", "ANODE"}},
	{[]string{"charger"}, []string{"AC-L", "AC-N", "AC-PE", "L", "N", "PE"}},
	{[]string{"dc-dc"}, []string{"IN", "IN+", "IN-"}},
	{[]string{"contact-co", "selector", "direction-switch"}, []string{"COM"}},
}

// Of is the symbol of a part the way round that its terminals are: mirrored if what
// belongs at its left end is on the right of the box. It is false if there is none of
// that name.
func Of(b scene.Box) (Symbol, bool) {
	s, ok := Lookup(b.Symbol)
	balance := 0
	for _, p := range b.Ports {
		if !s.startsWith(p.Terminal()) {
			continue
		}
		switch p.Side {
		case scene.East:
			balance++
		case scene.West:
			balance--
		}
	}
	if balance > 0 {
		s = s.mirrored()
	}
	return s, ok
}

func (s Symbol) startsWith(terminal string) bool {
	for _, row := range starts {
		if slices.Contains(row.symbols, s.Name) {
			return slices.Contains(row.terminals, strings.ToUpper(terminal))
		}
	}
	return false
}

// mirrored is the symbol with left and right changed about. Letters are moved, not turned.
func (s Symbol) mirrored() Symbol {
	strokes := make([]Stroke, len(s.Strokes))
	for i, stroke := range s.Strokes {
		points := make([]Point, len(stroke.Points))
		for k, p := range stroke.Points {
			points[k] = Point{W - p.X, p.Y}
		}
		switch stroke.Op {
		case Arcs:
			slices.Reverse(points) // else they would turn the other way
		case Box, Bar:
			points[0].X, points[1].X = points[1].X, points[0].X
		}
		strokes[i] = stroke
		strokes[i].Points = points
	}
	s.Strokes = strokes
	for i, core := range s.core {
		s.core[i] = reversed(core, twins)
	}
	s.turned = !s.turned
	return s
}

// Letters that mirror each other, each as far from one end as its twin from the other:
// those of symbols in one row, where a stroke is no more than a sign, and those of
// symbols in three, where it is a blade.
const (
	twins  = "([<►◄>])"
	blades = "([<►┤┌└╱/\\╲┘┐├◄>])"
)

// reversed mirrors a row of letters.
func reversed(row, twins string) string {
	letters, pairs := []rune(row), []rune(twins)
	slices.Reverse(letters)
	for i, r := range letters {
		if at := slices.Index(pairs, r); at >= 0 {
			letters[i] = pairs[len(pairs)-1-at]
		}
	}
	return string(letters)
}
