package ink

import "example.com/lugbook/diagram/scene"

// signRadius is that of the disc that bears the sign of a change.
const signRadius = 12

// changeSign draws the sign of a change in a disc in a cell.
func changeSign(at scene.Point, c scene.Change) []Mark {
	x, y := centre(at)
	return signAt(x, y, c)
}

func signAt(x, y int, c scene.Change) []Mark {
	return []Mark{{Shape: Circle, Pen: penSign, At: Point{x, y}, R: signRadius}, {Pen: penEnd, Path: signPath(x, y, c)}}
}

// signPath is the sign itself: a cross for removed, a plus for added, a wave for changed,
// an angle for moved.
func signPath(x, y int, c scene.Change) []Step {
	switch c {
	case scene.Removed:
		return append(straight(x-6, y-6, x+6, y+6), straight(x+6, y-6, x-6, y+6)...)
	case scene.Added:
		return append(straight(x-7, y, x+7, y), straight(x, y-7, x, y+7)...)
	case scene.Changed:
		return []Step{move(x-8, y+2), {Op: Quad, By: Point{x - 4, y - 8}, To: Point{x, y}}, {Op: Quad, By: Point{x + 4, y + 8}, To: Point{x + 8, y - 2}}}
	default:
		return straight(x-4, y-7, x+5, y, x-4, y+7)
	}
}

// cornerSigns draws the sign of what became of a part in two corners of its frame.
func cornerSigns(b scene.Box) []Mark {
	if b.Change.Sign() == "" {
		return nil
	}
	return append(changeSign(scene.Point{X: b.Rect.Right(), Y: b.Rect.Y}, b.Change),
		changeSign(scene.Point{X: b.Rect.X, Y: b.Rect.Bottom()}, b.Change)...)
}
