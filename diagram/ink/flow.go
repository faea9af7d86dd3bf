package ink

import "example.com/lugbook/diagram/scene"

// flow draws what a wire does in the state that is shown: its figure, and arrows or the
// sign of what is not judged.
func flow(w scene.Wire) []Mark {
	marks := letters(w.Flow.Note.At, penBold, scene.Clean(w.Flow.Note.Text))
	for _, a := range w.Flow.Arrows {
		x, y := centre(a.At)
		if w.Flow.Energy == scene.Unjudged {
			marks = append(marks, plate(a.At, 1), written(a.At.X*CellW, y, penAlarm, "?"))
			continue
		}
		marks = append(marks, arrow(x, y, a.Way))
	}
	return marks
}

// arrow is an arrow head that points a way, on an edge that sets it off from the line.
func arrow(x, y int, way scene.Side) Mark {
	dx, dy := way.Step()
	path := straight(x+dx*12, y+dy*12, x-dx*10-dy*10, y-dy*10-dx*10, x-dx*10+dy*10, y-dy*10+dx*10)
	return Mark{Pen: penArrow, Path: append(path, closed())}
}
