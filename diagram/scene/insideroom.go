package scene

// inner writes a text into the first inner rows that have room for it, in up to
// three lines, and reports whether it found room. Rows with writing in them are
// used only if shared, since 1 5 A 2 between two terminals would be misread.
func (a *arrangement) inner(text string, role WritingRole, shared bool) bool {
	for lines := 1; lines <= 3; lines++ {
		for y := a.box.Rect.Y + 1; y+lines-1 < a.box.Rect.Bottom(); y++ {
			start, room := a.freeRun(y, lines)
			if !shared && room < a.box.Rect.W-2 {
				continue
			}
			folded := Fold(text, room)
			if len(folded) == 0 || len(folded) > lines || broken(text, folded) {
				continue
			}
			for i, line := range folded {
				a.write(Point{start + (room-Width(line))/2, y + i}, line, role, -1)
			}
			return true
		}
	}
	return false
}

// broken reports whether folding had to break a word.
func broken(text string, folded []string) bool {
	letters := len(folded) - 1
	for _, line := range folded {
		letters += Width(line)
	}
	return letters != Width(text)
}

// freeRun finds the longest run of columns that are free in each of a number of
// rows, one blank kept to writing on either hand.
func (a *arrangement) freeRun(y, rows int) (start, length int) {
	r, run := a.box.Rect, 0
	for x := r.X + 1; x < r.Right(); x++ {
		run++
		for row := y; row < y+rows; row++ {
			if a.used.has(Point{x - 1, row}) && x > r.X+1 || a.used.has(Point{x, row}) || a.used.has(Point{x + 1, row}) && x+1 < r.Right() {
				run = 0
			}
		}
		if run > length {
			start, length = x-run+1, run
		}
	}
	return start, length
}

// symbolSizes are the sizes that a symbol can take, in cells, best first.
var symbolSizes = [...]struct{ w, h int }{{7, 3}, {7, 2}, {7, 1}, {5, 1}, {3, 1}}

// symbol finds room for the symbol as near to the middle of the box as there is,
// with a blank on either hand.
func (a *arrangement) symbol() {
	if a.box.Symbol == "" {
		return
	}
	r := a.box.Rect
	for _, size := range symbolSizes {
		best, found := 0, false
		for y := r.Y + 1; y+size.h-1 < r.Bottom(); y++ {
			for x := r.X + 1; x+size.w-1 < r.Right(); x++ {
				room := Rect{x, y, size.w, size.h}
				if around := (Rect{x - 1, y, size.w + 2, size.h}); !a.free(around) || x == r.X+1 || room.Right() == r.Right()-1 {
					continue
				}
				// The title weighs on the upper frame line, so half a row lower.
				off := 2*abs(2*x+size.w-2*r.X-r.W) + 3*abs(2*y+size.h-2*r.Y-r.H-1)
				if !found || off < best {
					best, found, a.Symbol = off, true, room
				}
			}
		}
		if found {
			return
		}
	}
}

func (a *arrangement) free(room Rect) bool {
	for y := room.Y; y <= room.Bottom(); y++ {
		for x := room.X; x <= room.Right(); x++ {
			if a.used.has(Point{x, y}) {
				return false
			}
		}
	}
	return true
}

// word writes what the part does in the state that is shown: at the right of the lower
// frame line, else of the upper one, else in a row with nothing else in it.
func (a *arrangement) word() {
	text := Clean(a.box.Works.Word)
	if text == "" {
		return
	}
	for _, y := range []int{a.box.Rect.Bottom(), a.box.Rect.Y} {
		if x, room := a.frameRun(y); Width(text)+2 <= room {
			a.Writings = append(a.Writings, Writing{At: Point{x + room - Width(text) - 2, y}, Text: " " + text + " ", Role: WorkWord, Port: -1})
			return
		}
	}
	if r := a.Symbol; r.W > 0 {
		for y := r.Y; y <= r.Bottom(); y++ {
			for x := r.X; x <= r.Right(); x++ {
				a.used.take(Point{x, y})
			}
		}
	}
	a.Unsaid = !a.inner(text, WorkWord, false)
}

func abs[T ~int | ~float64](n T) T { return max(n, -n) }
