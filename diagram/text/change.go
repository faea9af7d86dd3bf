package text

import "example.com/lugbook/diagram/scene"

// changes writes the signs of what became of wires on their lines, in brackets: a plus
// alone would pass for a bend in ASCII.
func (c canvas) changes(p *scene.Page) {
	wires := map[string]scene.Wire{}
	for _, w := range p.Wires {
		wires[w.ID] = w
	}
	for _, sign := range p.ChangeSigns() {
		like := wireCell(wires[sign.Wire], ChangeMark, scene.WireKind)
		beside := like
		if onLine := c.At(sign.At.X-1, sign.At.Y).Owner; onLine != like.Owner {
			beside.Owner = scene.Ref{} // across an upright run
		}
		c.write(sign.At.Add(-1, 0), "(", beside)
		c.write(sign.At, sign.Change.Sign(), like)
		c.write(sign.At.Add(1, 0), ")", beside)
	}
}

// cornerSigns writes the sign of what became of a part into two corners of its frame.
func (c canvas) cornerSigns(b scene.Box, owner scene.Ref) {
	like := Cell{Role: ChangeMark, Owner: owner, Change: b.Change}
	c.write(scene.Point{X: b.Rect.Right(), Y: b.Rect.Y}, b.Change.Sign(), like)
	c.write(scene.Point{X: b.Rect.X, Y: b.Rect.Bottom()}, b.Change.Sign(), like)
}
