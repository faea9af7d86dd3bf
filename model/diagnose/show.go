package diagnose

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// KindOf is what a meter was set to for a reading.
func KindOf(r *model.Reading) Kind {
	switch r.Dimension() {
	case unit.Current:
		return Amps
	case unit.Resistance:
		return Ohms
	}
	return Volts
}

// alikeShare is the share of a value within which the ends of a band are shown as one
// figure.
const alikeShare = 0.02

// Text is a band in words: 53.3 V, 3 to 12 V, about 0 V, open, anything.
func (b Band) Text(kind Kind) string {
	switch {
	case b.Restless:
		return "anything, it comes to no rest"
	case kind == Ohms && b.Low >= openShown:
		return openWord
	case b.Floating && math.Max(math.Abs(b.Low), math.Abs(b.High)) < spreadFloat:
		return "about 0 " + string(kind) + ", nothing holds it"
	case b.High-b.Low <= alikeShare*math.Max(math.Abs(b.Low), math.Abs(b.High)) || b.High-b.Low < spreadFloor:
		return figure((b.Low+b.High)/2) + " " + string(kind)
	}
	return figure(b.Low) + " to " + figure(b.High) + " " + string(kind)
}

// openShown is the resistance from which a meter shows no continuity: the end of a plain
// meter's highest range.
const openShown = 2e6

// figure is a number with three figures, and no more than a hundredth.
func figure(x float64) string {
	if math.Abs(x) < 0.005 {
		return "0"
	}
	digits := 2 - int(math.Floor(math.Log10(math.Abs(x))))
	return fmt.Sprintf("%.*f", min(2, max(0, digits)), x)
}
