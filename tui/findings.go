package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/tui/screen"
	"example.com/lugbook/tui/theme"
)

// findingsLayer is the list of findings with one at hand; the cursor goes to what it is
// about.
type findingsLayer struct {
	at   int
	rule string // of the finding at hand; a check afresh may have moved it
	nth  int    // which of the things that the finding is about is shown
	was  thing  // where the cursor was before
}

func (f *findingsLayer) place() place                          { return inFindings }
func (f *findingsLayer) key(*desk, tea.KeyMsg) (tea.Cmd, bool) { return nil, false }

// severity is how a severity looks: a sign first, then a colour.
type severity struct {
	sign string
	role theme.Role
}

var severities = map[rule.Severity]severity{
	rule.Danger:  {"!!", theme.Danger},
	rule.Fault:   {"! ", theme.Fault},
	rule.Caution: {"~ ", theme.Caution},
	rule.Note:    {"? ", theme.Note},
}

// openFindings opens the list at the first finding about the selected thing, or goes to
// what the gravest one is about.
func openFindings(d *desk) tea.Cmd {
	f := &findingsLayer{was: d.cursor}
	d.push(f)
	for i := range d.work.findings {
		if about(&d.work.findings[i], d.cursor) {
			f.at = i
			return nil
		}
	}
	f.show(d)
	return nil
}

// about reports whether a finding is about a thing, or a terminal of it.
func about(f *rule.Finding, t thing) bool {
	for _, s := range f.Subjects {
		subject := ofSubject(s)
		if subject == t || t.kind == partThing && subject.kind == terminalThing && subject.at.Part == t.at.Part {
			return true
		}
	}
	return false
}

// finding is the one at hand; nil if there is none.
func (f *findingsLayer) finding(d *desk) *rule.Finding {
	if len(d.work.findings) == 0 {
		return nil
	}
	f.at = max(0, min(f.at, len(d.work.findings)-1))
	if at := nearestOf(d.work.findings, f.rule, f.at); at >= 0 {
		f.at = at
	}
	f.rule = d.work.findings[f.at].Rule
	return &d.work.findings[f.at]
}

// keepPlace counts anew which of the finding's things the cursor is on, after a check afresh.
func (f *findingsLayer) keepPlace(d *desk) {
	if at := f.finding(d); at != nil {
		if i := slices.IndexFunc(at.Subjects, func(s rule.Subject) bool { return ofSubject(s) == d.cursor }); i >= 0 {
			f.nth = i
		}
	}
}

// nearestOf is the finding of a rule nearest to a place in the list; -1 if there is none.
func nearestOf(findings []rule.Finding, of string, at int) int {
	best := -1
	for i := range findings {
		if findings[i].Rule == of && (best < 0 || max(i-at, at-i) < max(best-at, at-best)) {
			best = i
		}
	}
	return best
}

// step goes to another finding and shows what it is about.
func (f *findingsLayer) step(d *desk, by int) {
	f.at, f.nth, f.rule = f.at+by, 0, ""
	f.show(d)
}

// show puts the cursor on what the finding is about.
func (f *findingsLayer) show(d *desk) {
	if at := f.finding(d); at != nil && len(at.Subjects) > 0 {
		f.nth = (f.nth + len(at.Subjects)) % len(at.Subjects)
		d.goTo(ofSubject(at.Subjects[f.nth]))
	}
}

// turn shows another one of the things that the finding is about. If the one at hand was
// put right, the next one has its number already.
func (f *findingsLayer) turn(d *desk, by int) {
	if at := f.finding(d); by < 0 || about(at, d.cursor) {
		f.nth += by
	}
	f.show(d)
}

func (f *findingsLayer) reading(d *desk) string {
	at := f.finding(d)
	if at == nil {
		return "the rules found nothing; that is no word on what was not recorded"
	}
	return "remedy: " + at.Remedy
}

func (f *findingsLayer) side(d *desk, s *screen.Surface) {
	at := f.finding(d)
	var detail []string
	if at != nil {
		detail = fold(findingDetail(at), s.W-2)
	}
	below := min(len(detail)+1, max(s.H/2, s.H-1-len(d.work.findings)))
	list := screen.New(s.W, s.H-below, s.ASCII)
	d.drawFindings(list, f.at)
	s.Blit(list, 0, 0)
	for i := 1; i < below; i++ {
		line := detail[i-1]
		if i == below-1 && i < len(detail) {
			line += strings.Repeat(" ", s.W) // cut, and marked so: there is more
		}
		s.WriteIn(1, s.H-below+i, s.W-2, line, d.theme.Prefix(theme.Dim))
	}
}

// findingDetail is everything that a finding has to say.
func findingDetail(f *rule.Finding) string {
	lines := []string{f.Message}
	line := func(what, text string) {
		if text != "" {
			lines = append(lines, what+": "+text)
		}
	}
	line("in the state", f.State)
	line("figure", f.Figure.String())
	line("follows from", f.Cause)
	line("remedy", f.Remedy)
	for i, e := range f.Fixes {
		line(applyKeys[min(i, len(applyKeys)-1)]+" applies", e.Name())
	}
	line("basis", f.Basis.Text+" ("+f.Basis.Source+")")
	if w := f.Waived; w != nil {
		line("waived", "by "+w.By+" on "+w.Date+": "+w.Reason)
	}
	return strings.Join(lines, "\n")
}

// applyKeys make the ready-made edits of a finding: the first, and the other choice.
var applyKeys = []string{"a", "A"}

// drawFindings draws the list; at is the finding at hand, below 0 none.
func (d *desk) drawFindings(s *screen.Surface, at int) {
	head := findingCounts(d.work.findings)
	if !d.work.checkedYet {
		head = "checking ..."
	}
	s.WriteIn(1, 0, s.W-1, "findings  "+head, d.theme.Prefix(theme.Title))
	rows := max(1, s.H-1)
	first := scroll(at, len(d.work.findings), rows)
	for i := first; i < min(len(d.work.findings), first+rows); i++ {
		y, f := 1+i-first, &d.work.findings[i]
		look := severities[f.Severity]
		text := d.theme.Prefix(theme.Text)
		if i == at {
			text = d.theme.Prefix(theme.Selected)
			s.Write(0, y, ">", text)
		}
		indent := 0
		if f.Cause != "" {
			indent = 2 // it follows from the one above
		}
		s.Write(1+indent, y, look.sign, d.theme.Prefix(look.role))
		message := f.Message
		if f.Waived != nil {
			message = "waived: " + message
		}
		s.WriteIn(4+indent, y, s.W-5-indent, message, text)
	}
}

// findingCounts says how many findings there are of each severity, gravest first.
func findingCounts(findings []rule.Finding) string {
	var words []string
	for _, s := range rule.Severities() {
		n := 0
		for i := range findings {
			if findings[i].Severity == s {
				n++
			}
		}
		if n > 0 {
			words = append(words, counted(n, string(s)))
		}
	}
	if len(words) == 0 {
		return "none"
	}
	return strings.Join(words, ", ")
}

// counted is a number of things, with the word for one of them.
func counted(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return fmt.Sprintf("%d %s", n, word)
}

// worst is the finding to show in one line: the gravest about the selected thing, or of
// all. It is nil if there is none.
func (d *desk) worst() *rule.Finding {
	for i := range d.work.findings {
		if about(&d.work.findings[i], d.cursor) {
			return &d.work.findings[i]
		}
	}
	if len(d.work.findings) > 0 {
		return &d.work.findings[0]
	}
	return nil
}

// applyFix makes a ready-made edit of the finding at hand.
func applyFix(n int) func(*findingsLayer, *desk) {
	return func(f *findingsLayer, d *desk) { d.try(f.finding(d).Fixes[n]) }
}

func findingActions() []Action {
	in := []place{inFindings}
	open := func(d *desk) string {
		if _, ok := topOf[*findingsLayer](d); !ok {
			return "only in the list of findings; n opens it"
		}
		return ""
	}
	fresh := func(d *desk) string {
		f, ok := topOf[*findingsLayer](d)
		switch {
		case !ok:
			return open(d)
		case f.finding(d) == nil:
			return "there is no finding"
		case d.work.findingsOf != stamp{revision: d.history.Revision(), sheet: d.sheetName}:
			return "the sheet is being checked again; once more in a moment"
		}
		return ""
	}
	fixable := func(n int) func(*desk) string {
		return first(fresh, func(d *desk) string {
			f, _ := topOf[*findingsLayer](d)
			switch fixes := f.finding(d).Fixes; {
			case len(fixes) == 0:
				return "this finding has no ready-made edit; its remedy says what to do"
			case n >= len(fixes):
				return "this finding has one ready-made edit"
			}
			return ""
		})
	}
	act := func(id, title, hint, keys string, when func(*desk) string, run func(*findingsLayer, *desk)) Action {
		return Action{ID: id, Title: title, Hint: hint, Keys: strings.Fields(keys), In: in, When: when, Run: func(d *desk) tea.Cmd {
			f, _ := topOf[*findingsLayer](d)
			run(f, d)
			return nil
		}}
	}
	step := func(by int) func(*findingsLayer, *desk) { return func(f *findingsLayer, d *desk) { f.step(d, by) } }
	several := func(d *desk) string {
		f, ok := topOf[*findingsLayer](d)
		if !ok {
			return open(d)
		}
		if at := f.finding(d); at == nil || len(at.Subjects) < 2 && about(at, d.cursor) {
			return "the finding is about one thing"
		}
		return ""
	}
	turn := func(by int) func(*findingsLayer, *desk) { return func(f *findingsLayer, d *desk) { f.turn(d, by) } }
	return []Action{
		act("finding-go", "Go to what the finding is about", "go there", "enter", open, func(f *findingsLayer, d *desk) {
			d.pop()
			f.show(d)
		}),
		act("finding-apply", "Apply the finding's ready-made edit", "apply", applyKeys[0], fixable(0), applyFix(0)),
		act("finding-apply-other", "Apply the finding's other ready-made edit", "apply other", applyKeys[1], fixable(1), applyFix(1)),
		{ID: "finding-why", Title: "Show the page of the finding's rule: why, how to tell, examples", Hint: "why", Keys: []string{"y"}, In: in, When: fresh, Run: func(d *desk) tea.Cmd {
			f, _ := topOf[*findingsLayer](d)
			return d.openPage(f.finding(d).Rule)
		}},
		act("finding-waive", "Let the finding stay, with reason and name; again takes it back", "waive", "w", fresh, (*findingsLayer).waive),
		act("finding-down", "Next finding", "next", "down tab", open, step(1)),
		act("finding-place", "Next place that the finding is about", "next place", "right .", several, turn(1)),
		act("finding-place-back", "Place before that the finding is about", "", "left ,", several, turn(-1)),
		act("finding-up", "Finding above", "", "up shift+tab", open, step(-1)),
	}
}

// fold breaks a text into lines.
func fold(text string, cells int) []string {
	var lines []string
	for part := range strings.SplitSeq(clean.Text(text), "\n") {
		lines = append(lines, scene.Fold(part, max(1, cells))...)
	}
	return lines
}
