package rule

import (
	"fmt"
	"math"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// named is how many things a message names before it counts the rest.
const named = 6

// list names subjects: w1, w2 and w3; or w1, w2, w3, w4, w5, w6 and 3 more.
func list(subjects []Subject) string {
	words := make([]string, len(subjects))
	for i, s := range subjects {
		words[i] = s.String()
	}
	return listWords(words)
}

func listWords(words []string) string {
	switch {
	case len(words) == 0:
		return "nothing"
	case len(words) == 1:
		return words[0]
	case len(words) > named:
		return strings.Join(words[:named], ", ") + fmt.Sprintf(" and %d more", len(words)-named)
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

func wireSubjects(links []*network.Link) []Subject {
	var subjects []Subject
	for _, l := range links {
		subjects = append(subjects, OfWire(l.Wire.ID))
	}
	return subjects
}

// partsOf lists the parts of links, each once.
func partsOf(links []*network.Link) []Subject {
	var subjects []Subject
	seen := map[model.PartID]bool{}
	for _, l := range links {
		if l.Part != nil && !seen[l.Part.ID] {
			seen[l.Part.ID] = true
			subjects = append(subjects, OfPart(l.Part.ID))
		}
	}
	return subjects
}

// number writes a figure with as many digits as a person reads.
func number(x float64) string {
	switch a := math.Abs(x); {
	case a >= 100:
		return fmt.Sprintf("%.0f", x)
	case a >= 10:
		return strings.TrimSuffix(fmt.Sprintf("%.1f", x), ".0")
	}
	return strings.TrimSuffix(strings.TrimSuffix(fmt.Sprintf("%.2f", x), "0"), ".0")
}

func volts(x float64) string { return number(x) + " V" }
func amps(x float64) string  { return number(x) + " A" }

// aboutAmps writes a computed current with the two figures that it is good for.
func aboutAmps(x float64) string {
	if x <= 0 {
		return amps(x)
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-1)
	return "about " + amps(math.Round(x/step)*step)
}

// metres writes a length along a conductor in both units of the trade.
func metres(x float64) string { return fmt.Sprintf("%.0f mm (%s in)", x*1000, number(x/0.0254)) }

// at names a node.
func (p *Pass) at(n network.Node) string { return p.Net.Point(n).String() }

// terminal is a node as a subject: the terminal, or the wire of a loose end.
func (p *Pass) terminal(n network.Node) Subject {
	point := p.Net.Point(n)
	if point.At.IsZero() {
		return OfWire(point.Wire)
	}
	return OfTerminal(point.At)
}
