package tui

import (
	"fmt"
	"image"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/tui/nav"
	"example.com/lugbook/tui/overview"
)

// scale is how small the drawing is shown.
type scale uint8

const (
	smaller scale = iota // squeezed: what is written is left out as need be
	whole                // all of the job on the screen
)

// overviewLayer shows the drawing made smaller, to look around on and to choose where to go.
type overviewLayer struct {
	scale scale

	cursor thing // before it was opened
	lug    model.WireID
	view   image.Point

	of      reduction // what is shown
	picture *picture  // nil before the first
	form    overview.Form
	all     *overview.Whole // nil unless the scale is whole
	left    int             // lines of the chosen part without room
	making  bool
}

// reduction is everything that a drawing made smaller follows from.
type reduction struct {
	from   *picture
	force  *force // painted on it; nil if none is
	size   image.Point
	scale  scale
	chosen model.PartID // whose lines are drawn, where not all have room
}

func (o *overviewLayer) place() place { return inOverview }

func (o *overviewLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

// reading says what is chosen, and what the drawing leaves out.
func (o *overviewLayer) reading(d *desk) string {
	if o.picture == nil {
		return "making it smaller ..."
	}
	words := []string{"nothing chosen"}
	if d.cursor.kind != noThing {
		words[0] = strings.TrimSpace(d.describe(d.cursor))
	}
	return strings.Join(append(words, o.leftOut()...), "; ")
}

// leftOut says what the drawing does not show.
func (o *overviewLayer) leftOut() []string {
	if o.of.scale == smaller {
		return []string{[...]string{
			overview.Unlabelled: "labels of wires left out",
			overview.Unnamed:    "labels and terminals left out",
			overview.Designated: "all names left out",
			overview.Packed:     "all names left out, and drawn closer",
		}[o.form]}
	}
	var words []string
	if o.all.Starred {
		words = append(words, "only its own lines")
	}
	for _, left := range []struct {
		n    int
		what string
	}{{o.left, "of them without a way"}, {o.all.Loose, "loose wires left out"}, {o.all.Dots, "parts shown as dots"}, {o.all.Hidden, "parts left out"}} {
		if left.n > 0 {
			words = append(words, fmt.Sprint(left.what, ": ", left.n))
		}
	}
	return words
}

// overview is the layer that shows the drawing made smaller; nil if none does.
func (d *desk) overview() *overviewLayer {
	for _, l := range d.layers {
		if o, open := l.(*overviewLayer); open {
			return o
		}
	}
	return nil
}

// picture is the drawing as it is moved about on: as it is, or made smaller; nil if there is
// none.
func (d *desk) picture() *picture {
	if o := d.overview(); o != nil && o.picture != nil && d.work.picture != nil {
		return o.picture
	}
	return d.work.picture
}

// zoomOut opens the overview, or makes it show more.
func zoomOut(to scale) func(*desk) tea.Cmd {
	return func(d *desk) tea.Cmd {
		if o := d.overview(); o != nil {
			o.scale = to
			return nil
		}
		d.push(&overviewLayer{scale: to, cursor: d.cursor, lug: d.lug, view: d.view})
		return nil
	}
}

// leave goes back to the drawing as it was before the overview was opened.
func (o *overviewLayer) leave(d *desk) {
	d.pop()
	d.view, d.cursor = o.view, thing{}
	d.memory = nav.Position{At: -1}
	d.goTo(o.cursor)
	d.lug = o.lug
}

// zoomHere goes back to the drawing, to the place that is chosen.
func zoomHere(d *desk) tea.Cmd {
	d.pop()
	d.goTo(d.cursor)
	d.centre()
	return nil
}

// zoomIn shows more of less: it goes from the whole job to the squeezed drawing, from there to
// the place that is chosen.
func zoomIn(d *desk) tea.Cmd {
	if o := d.overview(); o.scale == whole {
		o.scale = smaller
		return nil
	}
	return zoomHere(d)
}

// centre moves the drawing so that the cursor is in the middle of the pane, if it can.
func (d *desk) centre() {
	p := d.picture()
	if p == nil {
		return
	}
	if at, drawn := p.place(d.cursor); drawn {
		d.view = at.Min.Add(at.Size().Div(2)).Sub(d.plan.Canvas.Size().Div(2))
		d.follow()
	}
}

// reduction is what is to be shown smaller now.
func (o *overviewLayer) reduction(d *desk) reduction {
	want := reduction{from: d.work.picture, size: d.plan.Canvas.Size(), scale: o.scale}
	if f := d.inForce(); f != nil && f.err == nil && f.picture == d.work.picture {
		want.force = f
	}
	if o.scale == whole && o.all != nil && o.all.Starred {
		want.chosen = d.cursor.at.Part
	}
	return want
}

// reduced is a drawing that was made smaller.
type reduced struct {
	layer   *overviewLayer
	of      reduction
	picture *picture
	form    overview.Form
	all     *overview.Whole
	left    int
}

// oversee starts to make the drawing smaller where what is shown is out of date.
func (d *desk) oversee() tea.Cmd {
	o := d.overview()
	if o == nil || o.making || d.work.picture == nil {
		return nil
	}
	of := o.reduction(d)
	if of == o.of && o.picture != nil || of.size.X <= 0 || of.size.Y <= 0 {
		return nil
	}
	o.making = true
	var same *overview.Whole
	if before := of; o.all != nil {
		if before.chosen = o.of.chosen; before == o.of {
			same = o.all
		}
	}
	ascii := d.session.ASCII
	return func() tea.Msg { return of.make(o, same, ascii) }
}

// make makes a drawing smaller; same is the whole as it is, if only another part was chosen.
func (r reduction) make(o *overviewLayer, same *overview.Whole, ascii bool) reduced {
	out := reduced{layer: o, of: r, all: same}
	page := r.from.page
	if r.force != nil {
		painted := page.In(r.force.shown)
		page = &painted
	}
	if r.scale == smaller {
		small, form := overview.Fill(page, r.size.X, r.size.Y)
		out.form, out.picture = form, pictureOf(&small, ascii)
		return out
	}
	if out.all == nil {
		all := overview.Fit(page, r.size.X, r.size.Y)
		out.all = &all
	}
	shown, left := out.all.Of(string(r.chosen))
	out.left, out.picture = left, pictureOf(&shown, ascii)
	return out
}

// takeReduced shows a drawing that was made smaller. One for a layer that was closed is
// dropped.
func (d *desk) takeReduced(m reduced) tea.Cmd {
	o := d.overview()
	if o != m.layer {
		return nil
	}
	o.making = false
	if m.of.from == d.work.picture && m.of.scale == o.scale {
		turned := o.picture == nil || m.of.scale != o.of.scale || m.of.size != o.of.size
		o.of, o.picture, o.form, o.all, o.left = m.of, m.picture, m.form, m.all, m.left
		d.settle()
		if turned {
			d.centre()
		}
	}
	return d.refresh()
}

// settle keeps the cursor on something that is drawn: on a terminal's part, or on one of a
// wire's, where the thing itself is left out.
func (d *desk) settle() {
	lug, p := d.lug, d.picture()
	if _, drawn := p.index[d.cursor]; !drawn && d.cursor.kind != noThing {
		d.cursor = ofPart(d.partOf(d.cursor))
	}
	d.goTo(d.cursor)
	d.lug = lug
}

// partOf is the part that a thing is of or ends on; empty if it is on none.
func (d *desk) partOf(t thing) model.PartID {
	w := d.sheet().Wire(t.wire)
	switch {
	case w == nil:
		return t.at.Part
	case w.From.IsLoose():
		return w.To.At.Part
	}
	return w.From.At.Part
}

// viewport is where what was shown before the overview lies on it; empty unless the whole job
// is shown.
func (d *desk) viewport() image.Rectangle {
	o := d.overview()
	if o == nil || o.all == nil || o.picture == nil {
		return image.Rectangle{}
	}
	size := d.plan.Canvas.Size()
	return area(o.all.Rect(scene.Rect{X: o.view.X, Y: o.view.Y, W: size.X, H: size.Y}))
}

// zoomActions make the drawing smaller and larger.
func zoomActions() []Action {
	over := func(d *desk) string {
		if _, open := topOf[*overviewLayer](d); !open {
			return "only while the drawing is shown smaller; - does that"
		}
		return ""
	}
	in := []place{inOverview}
	return []Action{
		{ID: "zoom-here", Title: "Go to what is chosen, on the drawing as it is", Hint: "go there", Keys: []string{"enter"}, In: in, When: over, Run: zoomHere},
		{ID: "zoom-in", Title: "Larger: the squeezed drawing, then the drawing as it is", Hint: "larger", Keys: []string{"+", "="}, In: in, When: over, Run: zoomIn},
		{ID: "zoom-on", Title: "Smaller still: the whole job on the screen", Hint: "smaller", Keys: []string{"-"}, In: in, When: canShrink(whole), Run: zoomOut(whole)},
	}
}

// shrinkActions begin to show the drawing smaller.
func shrinkActions() []Action {
	return []Action{
		{ID: "zoom-out", Title: "Smaller: the drawing squeezed, with less written on it", Hint: "smaller", Keys: []string{"-"}, In: []place{onDrawing}, When: canShrink(smaller), Run: zoomOut(smaller)},
		{ID: "zoom-all", Title: "The whole job on the screen: boxes, and a line for each two joined", Hint: "whole job", Keys: []string{"O"}, In: []place{onDrawing, inOverview}, When: canShrink(whole), Run: zoomOut(whole)},
	}
}

// canShrink is why the drawing cannot be shown as small as that.
func canShrink(to scale) func(*desk) string {
	return func(d *desk) string {
		if why := hasPicture(d); why != "" {
			return why
		}
		if o := d.overview(); o != nil && (o.scale == to || o.scale == whole) {
			return fmt.Sprintf("it is as small as that; %s goes back", keyName("enter"))
		}
		return ""
	}
}
