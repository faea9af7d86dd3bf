package scene

// ZoneTitle is a zone's name placed in its frame.
type ZoneTitle struct {
	Zone string // id
	At   Point
	Text string // with a blank before and after
}

// ZoneTitles puts each zone's name into its upper frame line where no wire passes,
// or into the lower one, or shortened into the longest free stretch of the upper one.
func (p *Page) ZoneTitles() []ZoneTitle {
	wired, framed := map[Point]bool{}, map[int]bool{}
	for _, z := range p.Zones {
		framed[z.Rect.Y], framed[z.Rect.Bottom()] = true, true
	}
	if len(framed) == 0 {
		return nil
	}
	for _, w := range p.Wires {
		for _, c := range Cells(w.Path) {
			if framed[c.Y] {
				wired[c] = true
			}
		}
		for _, c := range w.Label.Cells() {
			wired[c] = true
		}
	}
	titles := make([]ZoneTitle, 0, len(p.Zones))
	for _, z := range p.Zones {
		name := Clean(z.Name)
		if name == "" {
			name = Clean(z.ID)
		}
		need := Width(name) + 2
		y := z.Rect.Y
		x, room := freeStretch(z.Rect, y, need, wired)
		if room < need {
			if lx, lroom := freeStretch(z.Rect, z.Rect.Bottom(), need, wired); lroom >= need {
				y, x, room = z.Rect.Bottom(), lx, lroom
			}
		}
		if room >= 3 {
			titles = append(titles, ZoneTitle{z.ID, Point{x, y}, " " + Shorten(name, room-2) + " "})
		}
	}
	return titles
}

// freeStretch finds the first stretch of a frame line that is long enough and free
// of wires, or the longest one.
func freeStretch(r Rect, y, need int, wired map[Point]bool) (x, room int) {
	run := 0
	for at := r.X + 1; at < r.Right(); at++ {
		if run++; wired[Point{at, y}] {
			run = 0
		}
		if run > room {
			x, room = at-run+1, run
		}
		if room >= need {
			break
		}
	}
	return x, room
}
