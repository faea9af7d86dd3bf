package tui

import (
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram/book"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// pageLayer is the page of a rule, over the drawing and the side.
type pageLayer struct {
	rule  *rule.Rule
	page  *book.Page // nil until it is made
	width int        // that its paragraphs were broken for
	first int        // line at the top
	lines []string
}

// pageMade is a page that was made beside the screen.
type pageMade struct {
	rule string
	page *book.Page
	err  error
}

func (p *pageLayer) place() place                          { return inPage }
func (p *pageLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

func (p *pageLayer) reading(*desk) string { return p.rule.ID + ": " + p.rule.Title }

// Paragraphs of a page are this wide at most, however wide the screen is.
const pageColumns = 78

// openPage opens the page of a rule.
func (d *desk) openPage(id string) tea.Cmd {
	r := rule.Find(id)
	if r == nil {
		d.warn("no rule " + id)
		return nil
	}
	d.push(&pageLayer{rule: r})
	lib := d.lib
	return func() tea.Msg {
		page, err := book.PageOf(r, lib)
		return pageMade{rule: r.ID, page: page, err: err}
	}
}

// takePage shows a page that was made, if it is still asked for.
func (d *desk) takePage(m pageMade) {
	p, open := topOf[*pageLayer](d)
	switch {
	case m.err != nil:
		d.warn(clean.Line(m.err.Error()))
	case open && p.rule.ID == m.rule:
		p.page = m.page
	}
}

// breakLines breaks the page into lines for a width, unless it has them already. The paragraph
// that stood at the top stays about there.
func (p *pageLayer) breakLines(width int, ascii bool) {
	if width == p.width {
		return
	}
	before := len(p.lines)
	p.width, p.lines = width, strings.Split(strings.TrimRight(p.page.Text(width, ascii), "\n"), "\n")
	if before > 0 {
		p.first = p.first * len(p.lines) / before
	}
}

// step moves the page on by lines.
func (p *pageLayer) step(d *desk, by int) {
	p.first = max(0, min(p.first+by, len(p.lines)-1))
}

// fill draws the page over the whole body.
func (p *pageLayer) fill(d *desk, s *screen.Surface) {
	if p.page == nil {
		s.WriteIn(1, 0, s.W-1, "drawing the examples ...", d.theme.Prefix(theme.Dim))
		return
	}
	p.breakLines(min(pageColumns, s.W-2), s.ASCII)
	p.first = max(0, min(p.first, len(p.lines)-s.H))
	for y := 0; y < s.H && p.first+y < len(p.lines); y++ {
		line, role := p.lines[p.first+y], theme.Text
		if line != "" && line == strings.ToUpper(line) && line[0] >= 'A' && line[0] <= 'Z' || p.first+y == 0 {
			role = theme.Title
		}
		s.WriteIn(1, y, s.W-1, line, d.theme.Prefix(role))
	}
}

func pageActions() []Action {
	in := []place{inPage}
	only := func(d *desk) string {
		if _, ok := topOf[*pageLayer](d); !ok {
			return "only on the page of a rule; y on a finding opens it"
		}
		return ""
	}
	step := func(by int) func(*desk) tea.Cmd {
		return func(d *desk) tea.Cmd {
			p, _ := topOf[*pageLayer](d)
			p.step(d, by)
			return nil
		}
	}
	return []Action{
		{ID: "page-down", Title: "On in the page", Keys: []string{"pgdown", " ", "enter"}, Hint: "on", In: in, When: only, Run: step(15)},
		{ID: "page-up", Title: "Back in the page", Keys: []string{"pgup", "backspace"}, Hint: "back up", In: in, When: only, Run: step(-15)},
		{ID: "page-line-down", Title: "One line down the page", Keys: []string{"down"}, In: in, When: only, Run: step(1)},
		{ID: "page-line-up", Title: "One line up the page", Keys: []string{"up"}, In: in, When: only, Run: step(-1)},
	}
}
