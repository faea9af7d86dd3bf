package scene

import (
	"cmp"
	"slices"
	"strings"
)

// In is the page with a state painted over it: what each wire does, its figure and its
// arrows where they find room, and what each part does. Nothing moves. What has no room is
// told in the legend.
func (p *Page) In(s State) Page {
	out := *p
	out.State = s.Name
	out.Title.Shown = "state " + s.Name
	if s.About != "" {
		out.Title.Shown += ": " + s.About
	}
	out.Wires = slices.Clone(p.Wires)
	for i := range out.Wires {
		w := &out.Wires[i]
		w.Flow = s.Wires[w.ID]
		if told := w.Flow.String(); told != "" {
			w.Title += "; " + s.Name + ": " + told
		}
	}
	out.Boxes = slices.Clone(p.Boxes)
	var unsaid []string
	for i := range out.Boxes {
		b := &out.Boxes[i]
		b.Works = s.Parts[b.ID]
		if b.Works.Word == "" {
			continue
		}
		b.Title += "; " + s.Name + ": " + b.Works.Word
		if Inside(*b).Unsaid {
			unsaid = append(unsaid, b.ID+" "+b.Works.Word)
		}
	}
	unsaid = append(unsaid, out.figures()...)
	out.Legend = slices.Clone(p.Legend)
	if len(unsaid) > 0 {
		out.Legend = append(out.Legend, "Without room in the drawing: "+strings.Join(unsaid, ", ")+".")
	}
	out.Legend = append(out.Legend, s.Remarks...)
	return out
}

// course says which way the current of a wire goes, by an end that is a terminal; empty if
// the ends have no names.
func (w *Wire) course() string {
	from, to := w.From, w.To
	if from == "" || to == "" {
		return ""
	}
	if w.Flow.Amps < 0 {
		from, to = to, from
	}
	if strings.Contains(to, ".") {
		return "to " + to
	}
	return "from " + from
}

// String is what the wire does in words; empty if nothing is known of it.
func (f Flow) String() string {
	words := notEmpty(f.Energy.String())
	if f.Carries() {
		words = append(words, "carries current")
	}
	return strings.Join(append(words, notEmpty(f.Figure)...), ", ")
}

func notEmpty(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

// figures finds room for the figures of the wires, those of the largest currents first,
// and for the arrows. It lists what the lines of the wires cannot tell.
func (p *Page) figures() (unsaid []string) {
	var order []int
	for i := range p.Wires {
		if p.Wires[i].Flow.Energy != NotShown {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(abs(p.Wires[b].Flow.Amps), abs(p.Wires[a].Flow.Amps))
	})
	c := survey(p)
	for _, i := range order {
		w := &p.Wires[i]
		w.Flow.Note = c.placeFigure(w)
		c.take(w.ID, w.Flow.Note)
	}
	for _, i := range order {
		switch w := &p.Wires[i]; {
		case w.Flow.Carries():
			w.Flow.Arrows = c.arrows(w)
		case w.Flow.Energy == Unjudged:
			w.Flow.Arrows = c.sign(w)
		}
	}
	for i := range p.Wires {
		if told := c.untold(&p.Wires[i]); told != "" {
			unsaid = append(unsaid, p.Wires[i].ID+" "+told)
		}
	}
	return unsaid
}

// untold is what the line of a wire has no room to tell of what the wire does.
func (c *checker) untold(w *Wire) string {
	var words []string
	switch f := w.Flow; {
	case f.Energy == Unjudged && len(f.Arrows) == 0, !c.showsPattern(w):
		words = append(words, f.Energy.String())
	}
	if w.Flow.Carries() && (w.Flow.Note.Text == "" || len(w.Flow.Arrows) == 0) {
		words = append(append(words, w.Flow.Figure), notEmpty(w.course())...)
	}
	return strings.Join(words, " ")
}

// patternRoom is the length of the straight piece, in cells, that it takes to tell the
// pattern of a broken line from others.
var patternRoom = [...]int{NotShown: 0, Unjudged: 0, Dead: 5, Return: 6, Live: 0}

// showsPattern reports whether the line of a wire is anywhere long enough to show whether
// the wire is dead, on the minus side or live.
func (c *checker) showsPattern(w *Wire) bool {
	room := patternRoom[w.Flow.Energy]
	if room == 0 {
		return true
	}
	for i := 1; i < len(w.Path); i++ {
		for _, stretch := range c.stretches(w.ID, leg{w.Path[i-1], w.Path[i]}) {
			if len(stretch) >= room {
				return true
			}
		}
	}
	return false
}
