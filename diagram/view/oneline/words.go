package oneline

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// figures are the ratings that a part is known by, family by family, in the order in which
// they are said, each with a word behind it.
var figures = map[model.Family][]struct{ rating, word string }{
	model.Storage:    {{"voltage", ""}, {"capacity", ""}, {"continuous-current", ""}},
	model.Drive:      {{"voltage", ""}, {"continuous-current", ""}, {"peak-current", " peak"}},
	model.Switchgear: {{"continuous-current", ""}, {"current-rating", ""}},
	model.Protection: {{"fuse-rating", ""}, {"continuous-current", ""}},
	model.ChargeGear: {{"charge-voltage", ""}, {"charge-current", ""}},
	model.Supply:     {{"output-voltage", ""}, {"output-current", ""}},
	model.Metering:   {{"continuous-current", ""}},
	model.Loads:      {{"voltage", ""}, {"power", ""}, {"current", ""}},
	model.Joining:    {{"continuous-current", ""}},
}

// unconfirmed stands behind a figure that nobody has read off the part.
const unconfirmed = "?"

// ratings are the figures of a part in words.
func ratings(p *model.Part, d *model.Definition) []string {
	if d == nil {
		return nil
	}
	var words []string
	for _, f := range figures[d.Family] {
		if r, ok := p.Rating(f.rating); ok {
			words = append(words, r.Value.String()+f.word)
		} else if r, ok := d.Rating(f.rating); ok && r.Value.SI() > 0 {
			words = append(words, r.Value.String()+f.word+unconfirmed)
		}
	}
	return words
}

// name is what a part is, in words.
func name(p *model.Part, d *model.Definition) string {
	switch {
	case p.Name != "":
		return p.Name
	case d != nil:
		return short(d.Title)
	default:
		return "unknown part"
	}
}

// short is a kind's title without what it adds after a comma or in brackets.
func short(title string) string {
	if i := strings.IndexAny(title, ",("); i > 0 {
		return strings.TrimSpace(title[:i])
	}
	return title
}

// Words is what stands in the box of a node: what it is and its figures.
func (n *Node) Words() string {
	switch {
	case len(n.Loads) > 0:
		return n.loads()
	case n.String != nil && len(n.Parts) > 1:
		return n.batteries()
	default:
		p := n.Parts[0]
		said := scene.Shorten(name(p, n.Def), mostName)
		figures := slices.DeleteFunc(ratings(p, n.Def), func(f string) bool { return strings.Contains(said, f) })
		return strings.Join(append([]string{said}, figures...), ", ")
	}
}

// mostName is how much of a name stands in a box.
const mostName = 40

// batteries tells of a string of several batteries.
func (n *Node) batteries() string {
	words := fmt.Sprintf("%d batteries in series", len(n.Parts))
	volts, known, turned := 0.0, true, 0
	for _, c := range n.String.Cells {
		r, ok := c.Link.Part.Rating("voltage")
		if !ok && c.Link.Def != nil {
			r, ok = c.Link.Def.Rating("voltage")
		}
		v, isVolt := r.Value.Volt()
		known = known && ok && isVolt
		if c.Reversed {
			volts -= v.Volts()
			turned++
		} else {
			volts += v.Volts()
		}
	}
	if known {
		words += ", " + unit.V(volts).String()
	}
	if turned > 0 {
		words += fmt.Sprintf(", %d turned round", turned)
	}
	for _, f := range ratings(n.Parts[0], n.Def) {
		if strings.HasSuffix(strings.TrimSuffix(f, unconfirmed), "Ah") {
			words += ", " + f
		}
	}
	return words
}

// mostLoads is how many small loads are named one by one.
const mostLoads = 4

// loads tells of small loads together.
func (node *Node) loads() string {
	if n := len(node.Loads) - mostLoads; n > 1 {
		return fmt.Sprintf("%s, %d more", strings.Join(node.Loads[:mostLoads], ", "), n)
	}
	return strings.Join(node.Loads, ", ")
}

// conductor is what stands on the line of an edge.
func (e *Edge) conductor() string {
	if e.Wire == nil {
		return ""
	}
	return e.Wire.Gauge.String()
}

// weight is the class of line of an edge.
func (e *Edge) weight() scene.Weight {
	if e.Wire == nil {
		return scene.Control
	}
	area := e.Wire.Gauge.AreaMM2()
	switch {
	case e.Wire.Serves == model.Traction:
		return scene.Traction
	case e.Wire.Serves == model.Charging || area >= powerArea:
		return scene.Power
	default:
		return scene.Control
	}
}
