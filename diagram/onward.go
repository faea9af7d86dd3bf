package diagram

import (
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// onward tells for each power wire which way it leads: true from its From to its To, false the
// other way. Wires of the way back and of controls are not in the map, nor are wires that
// join parts equally far from a battery.
func onward(s *model.Sheet, cat *model.Catalogue) map[model.WireID]bool {
	far := fromStorage(s, cat)
	out := map[model.WireID]bool{}
	for i := range s.Wires {
		w := &s.Wires[i]
		from, known := far[w.From.At.Part]
		to, alsoKnown := far[w.To.At.Part]
		if leadsOn(s, cat, w) && known && alsoKnown && from != to {
			out[w.ID] = from < to
		}
	}
	return out
}

// fromStorage counts for each part the power wires between it and the nearest battery or pack.
func fromStorage(s *model.Sheet, cat *model.Catalogue) map[model.PartID]int {
	far := map[model.PartID]int{}
	var queue []model.PartID
	for i := range s.Parts {
		if d := cat.Definition(s.Parts[i].Kind); d != nil && d.Family == model.Storage {
			far[s.Parts[i].ID] = 0
			queue = append(queue, s.Parts[i].ID)
		}
	}
	next := map[model.PartID][]model.PartID{}
	for i := range s.Wires {
		if w := &s.Wires[i]; leadsOn(s, cat, w) {
			a, b := w.From.At.Part, w.To.At.Part
			next[a], next[b] = append(next[a], b), append(next[b], a)
		}
	}
	for len(queue) > 0 {
		at := queue[0]
		queue = queue[1:]
		for _, to := range next[at] {
			if _, seen := far[to]; !seen {
				far[to] = far[at] + 1
				queue = append(queue, to)
			}
		}
	}
	return far
}

// leadsOn reports whether a wire is one that power takes to a load: drawn heavier than a
// control, between two parts, and on no negative terminal.
func leadsOn(s *model.Sheet, cat *model.Catalogue, w *model.Wire) bool {
	if kind := weight(w); kind != scene.Traction && kind != scene.Power {
		return false
	}
	for _, e := range w.Ends() {
		p := s.Part(e.At.Part)
		if p == nil {
			return false
		}
		if d := cat.Definition(p.Kind); d != nil {
			if t := d.Terminal(e.At.Name); t != nil && t.Pole == model.Negative {
				return false
			}
		}
	}
	return true
}
