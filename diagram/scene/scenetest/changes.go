package scenetest

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
)

// Changes is a comparison of two sheets: what stays, and parts and wires of each weight
// that were removed, added, changed and moved, on level lines and on upright ones.
func Changes() *scene.Page {
	s := &Sketch{scene.Page{W: 100, H: 36}}
	s.Title = scene.TitleBlock{Job: "Changes", View: "compare", Sheet: "plan against as-found", Page: 1, Pages: 1}
	s.Table.Head = []string{"wire", "what became of it", "from", "to"}
	weights := []scene.Weight{scene.Control, scene.Power, scene.Traction, scene.Mains, scene.Control}
	words := []string{"kept", "removed", "added", "changed", "moved"}
	for i, change := range []scene.Change{scene.Kept, scene.Removed, scene.Added, scene.Changed, scene.Moved} {
		left, right := fmt.Sprintf("a%d", i), fmt.Sprintf("b%d", i)
		s.Box(left, words[i], "fuse", at(2, 2+i*6, 18, 4), "E2 out", "S4 aux", "W1 in").Change = change
		s.Box(right, words[i], "lamp", at(58, 2+i*6, 18, 4), "W2 in", "E1 out").Change = change
		w := s.Wire(fmt.Sprintf("w%d", i), left+".out", right+".in", weights[i], "RD", fmt.Sprintf("w%d 10 RD", i), 0)
		w.Change = change
		s.Table.Rows = append(s.Table.Rows, []string{w.ID, words[i], w.From, w.To})
	}
	for i, change := range []scene.Change{scene.Kept, scene.Removed, scene.Added, scene.Changed, scene.Moved} {
		id := fmt.Sprintf("u%d", i)
		at := scene.Point{X: 80 + i*4, Y: 2}
		s.Flag(id+"n", scene.Cut, "", at, scene.South)
		s.Flag(id+"s", scene.Capped, "", at.Add(0, 32), scene.North)
		s.Wire(id, id+"n", id+"s", weights[i], "BU", "", -1).Change = change
	}
	return &s.Page
}
