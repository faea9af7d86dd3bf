package tui

import (
	"fmt"
	"image"
	"strings"

	"example.com/lugbook/model/clean"
	"example.com/lugbook/tui/line"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// What a layer shows besides its place, if it has it to show.
type (
	sider   interface{ side(*desk, *screen.Surface) }
	filler  interface{ fill(*desk, *screen.Surface) } // over drawing and side
	reader  interface{ reading(*desk) string }
	entrant interface {
		entry(*desk) (lead string, l *line.Line, ghost string)
	}
)

// View is the screen: as many lines as it is high, each as wide as it is. Before the
// first size it is empty.
func (d *desk) View() string {
	if d.w == 0 || d.h == 0 {
		return ""
	}
	lines := make([]string, 0, d.h)
	lines = append(lines, d.row(d.plan.Header, d.drawHeader)...)
	lines = append(lines, d.body()...)
	lines = append(lines, d.row(d.plan.Route, d.drawRoute)...)
	lines = append(lines, d.row(d.plan.Reading, d.drawReading)...)
	lines = append(lines, d.row(d.plan.Entry, d.drawEntry)...)
	lines = append(lines, d.row(d.plan.Notice, d.drawNotice)...)
	lines = append(lines, d.row(d.plan.Hints, d.drawHints)...)
	return strings.Join(lines, "\n")
}

// row draws a pane of one line; nothing if it is not shown.
func (d *desk) row(r image.Rectangle, draw func(*screen.Surface)) []string {
	if r.Empty() {
		return nil
	}
	s := screen.New(r.Dx(), 1, d.session.ASCII)
	draw(s)
	return s.Lines(d.theme.Reset())
}

// body is what lies between the header and the bottom rows: the drawing, and the side.
func (d *desk) body() []string {
	p := d.plan
	area := p.Canvas.Union(p.Side).Union(p.Below)
	if area.Empty() {
		return d.blankRows()
	}
	if f, fills := d.top().(filler); fills {
		s := screen.New(area.Dx(), area.Dy(), d.session.ASCII)
		f.fill(d, s)
		return s.Lines(d.theme.Reset())
	}
	var canvas, side []string
	if !p.Canvas.Empty() {
		canvas = d.canvasLines()
	}
	if !p.Side.Empty() {
		side = d.sideLines(area.Dy())
	}
	lines := make([]string, area.Dy())
	for i := range lines {
		if i < len(canvas) {
			lines[i] = canvas[i]
		}
		if canvas != nil && side != nil {
			lines[i] += d.separator()
		}
		if i < len(side) {
			lines[i] += side[i]
		}
	}
	return lines
}

// blankRows fill a screen that is too small for the drawing.
func (d *desk) blankRows() []string {
	used := 0
	for _, r := range []image.Rectangle{d.plan.Header, d.plan.Route, d.plan.Reading, d.plan.Entry, d.plan.Notice, d.plan.Hints} {
		used += r.Dy()
	}
	lines := make([]string, max(0, d.h-used))
	for i := range lines {
		lines[i] = strings.Repeat(" ", d.w)
	}
	return lines
}

func (d *desk) separator() string {
	s := screen.New(1, 1, d.session.ASCII)
	s.Put(0, 0, '│', d.theme.Prefix(theme.Dim))
	return s.Lines(d.theme.Reset())[0]
}

// wantsSide reports whether something open needs the side column.
func (d *desk) wantsSide() bool {
	_, walking := d.sider().(*walkLayer)
	return d.sider() != nil && !walking
}

// sider is the topmost layer that draws in the side column; nil if none does.
func (d *desk) sider() sider {
	for i := len(d.layers) - 1; i >= 0; i-- {
		if s, ok := d.layers[i].(sider); ok {
			return s
		}
	}
	return nil
}

// sideLines draw the side column: what is open or else the card, and below it, or in its
// place if nothing is selected, the findings.
func (d *desk) sideLines(rows int) []string {
	open := d.sider()
	height := d.plan.Side.Dy()
	if _, listed := open.(*findingsLayer); listed {
		height = rows
	}
	s := screen.New(d.plan.Side.Dx(), height, d.session.ASCII)
	if open != nil {
		open.side(d, s)
	} else {
		d.drawCard(s, d.cursor, -1)
	}
	lines := s.Lines(d.theme.Reset())
	if rest := rows - len(lines); rest > 0 {
		below := screen.New(d.plan.Side.Dx(), rest, d.session.ASCII)
		d.drawFindings(below, -1)
		lines = append(lines, below.Lines(d.theme.Reset())...)
	}
	return lines
}

// drawHeader names the job, the sheet, what the cursor is on, the state in force, and
// says what is not saved. What has no room is left out, from the right.
func (d *desk) drawHeader(s *screen.Surface) {
	saved := "saved"
	switch {
	case d.saving:
		saved = "saving"
	case d.unsaved():
		saved = "NOT SAVED"
	case d.session.Save == nil:
		saved = "no file"
	}
	parts := []string{
		clean.Line(d.job().Title), strings.ToUpper(string(d.sheetName)), d.where(), saved,
		fmt.Sprintf("undo %d", len(d.history.Steps())), d.stateWords(),
	}
	x := 1
	for i, text := range parts {
		if text == "" {
			text = "untitled"
		}
		if i > 0 {
			text = "| " + text
		}
		room := s.W - x
		if i == 0 {
			room = min(room, max(10, s.W/3))
		}
		if n := len([]rune(text)); i > 2 && n > room || room <= 0 {
			break
		}
		role := theme.Text
		if i == 1 || i == 2 {
			role = theme.Title
		}
		x = s.WriteIn(x, 0, room, text, d.theme.Prefix(role)) + 1
	}
}

// where names the selected thing, with the lug of a terminal that is lit.
func (d *desk) where() string {
	if d.cursor.kind == noThing {
		return "nothing selected"
	}
	if d.cursor.kind == terminalThing {
		order, _ := d.sheet().StackOf(d.cursor.at)
		for i, id := range order {
			if id == d.litWire() {
				return fmt.Sprintf("at <%s> lug %d of %d", d.cursor, i+1, len(order))
			}
		}
	}
	return "at <" + d.cursor.String() + ">"
}

// drawReading says in words what is selected, or what is being typed.
func (d *desk) drawReading(s *screen.Surface) {
	text, role := d.reading(), theme.Text
	if d.plan.Notice.Empty() && d.notice.text != "" {
		text, role = d.notice.text, d.notice.role
	}
	s.WriteIn(1, 0, s.W-1, text, d.theme.Prefix(role))
}

func (d *desk) reading() string {
	if r, ok := d.top().(reader); ok {
		return r.reading(d)
	}
	words := d.describe(d.cursor)
	if figures := d.figureWords(d.cursor); figures != "" {
		return words + "  " + figures
	}
	return words
}

// describe is a thing in one line.
func (d *desk) describe(t thing) string {
	s := d.sheet()
	switch t.kind {
	case partThing:
		p := s.Part(t.at.Part)
		words := []string{d.title(t)}
		if p.Zone != "" {
			words = append(words, "in "+string(p.Zone))
		}
		return strings.Join(append(words, fmt.Sprintf("%d terminals", len(d.terminals(p.ID))), conditions(p.Condition)), "  ")
	case terminalThing:
		order, _ := s.StackOf(t.at)
		if len(order) == 0 {
			return d.title(t) + "  nothing on it"
		}
		w := s.Wire(d.litWire())
		return fmt.Sprintf("%s  %s to %s", d.title(t), wireWords(w), w.Far(t.at))
	case wireThing, looseThing:
		w := s.Wire(t.wire)
		return fmt.Sprintf("%s  %s to %s  %s", wireWords(w), w.From, w.To, conditions(w.Condition))
	}
	return ""
}

func conditions[T ~string](list []T) string {
	words := make([]string, len(list))
	for i, w := range list {
		words[i] = string(w)
	}
	return strings.Join(words, ", ")
}

// drawEntry draws the line that is typed in, with its caret.
func (d *desk) drawEntry(s *screen.Surface) {
	e, ok := d.top().(entrant)
	if !ok {
		if d.cursor.kind != noThing {
			s.WriteIn(1, 0, s.W-1, "<"+d.cursor.String()+">", d.theme.Prefix(theme.Title))
		}
		return
	}
	lead, l, ghost := e.entry(d)
	x := s.WriteIn(1, 0, s.W*2/3, lead+" ", d.theme.Prefix(theme.Key))
	letters := append([]rune(l.Text()), '_')
	room := max(1, s.W-x)
	first := max(0, min(l.Caret()-room+2, len(letters)-room))
	for i := first; i < len(letters) && x < s.W; i++ {
		prefix := d.theme.Prefix(theme.Text)
		if i == l.Caret() {
			prefix = d.theme.Prefix(theme.Selected)
		}
		x = s.Write(x, 0, string(letters[i]), prefix)
	}
	s.WriteIn(x, 0, s.W-x, ghost, d.theme.Prefix(theme.Dim))
}

// drawNotice shows what happened last, or else the gravest finding.
func (d *desk) drawNotice(s *screen.Surface) {
	if d.notice.text != "" {
		s.WriteIn(1, 0, s.W-1, d.notice.text, d.theme.Prefix(d.notice.role))
		return
	}
	if f := d.worst(); f != nil {
		look := severities[f.Severity]
		x := s.Write(1, 0, look.sign+" ", d.theme.Prefix(look.role))
		s.WriteIn(x, 0, s.W-x, f.Message, d.theme.Prefix(theme.Text))
	}
}

// drawRoute shows the studs around the one of the walk, and how many there are.
func (d *desk) drawRoute(s *screen.Surface) {
	w, walking := topOf[*walkLayer](d)
	if !walking {
		return
	}
	route := d.route()
	at := 0
	for i, stop := range route {
		if stop == w.at {
			at = i
		}
	}
	count := fmt.Sprintf("%d of %d", at+1, len(route))
	x, room := 1, s.W-len(count)-3
	for i := max(0, at-2); i < len(route) && x < room; i++ {
		sign, role := ". ", theme.Dim
		if i == at {
			sign, role = "> ", theme.Title
		}
		x = s.WriteIn(x, 0, room-x, sign+d.stopWords(route[i])+" | ", d.theme.Prefix(role))
	}
	s.Write(s.W-len(count)-1, 0, count, d.theme.Prefix(theme.Dim))
}
