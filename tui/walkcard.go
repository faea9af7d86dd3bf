package tui

import (
	"strings"

	"example.com/lugbook/model/lugline"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// side shows the lug being entered as a form, and below it what the stud carries.
func (w *walkLayer) side(d *desk, s *screen.Surface) {
	r := w.parse(d)
	title, dim, plain := d.theme.Prefix(theme.Title), d.theme.Prefix(theme.Dim), d.theme.Prefix(theme.Text)
	s.WriteIn(1, 0, s.W-1, "this lug, on "+lugline.Name(w.at), title)
	y := 1
	for _, f := range lugFields(&r) {
		s.WriteIn(1, y, 10, f[0], dim)
		s.WriteIn(12, y, s.W-13, f[1], plain)
		y++
	}
	y++
	s.WriteIn(1, y, s.W-1, "on the stud, from the seat outward", title)
	order, _ := d.sheet().StackOf(w.at)
	for i, id := range order {
		wire := d.sheet().Wire(id)
		s.WriteIn(1, y+1+i, s.W-2, strings.Join([]string{wireWords(wire), "to", wire.Far(w.at).String()}, " "), plain)
	}
}

// lugFields are the fields of what a line says, with their values.
func lugFields(r *lugline.Reading) [][2]string {
	judged := func(text string, is bool) string {
		if is && text != "" {
			return text + "  (judged)"
		}
		return text
	}
	far := r.Far.String()
	if r.None {
		far = "nothing is on this stud"
	}
	return [][2]string{
		{"colour", judged(r.Colour.Word(), r.ColourJudged)},
		{"gauge", judged(r.Gauge.String(), r.GaugeJudged)},
		{"far end", judged(far, r.FarJudged)},
		{"condition", conditions(r.Condition)},
		{"mark", r.Mark},
		{"bundle", r.Bundle},
		{"note", r.Note},
		{"expected", string(r.Confirms)},
	}
}
