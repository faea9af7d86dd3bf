package strictyaml

import (
	"slices"
	"strings"
)

// comment is a comment where it was found.
type comment struct {
	remark
	at  place
	own bool // nothing else is on its line
}

// scanner finds the comments of a text whose quoted scalars and brackets are known.
type scanner struct {
	text     string
	quotes   []quote
	flows    []*tree // not yet reached
	open     []*tree // flow collections around the current offset
	comments []comment

	line, lineStart int
	blank           bool // the line above has no text
}

// comments lists the comments of a parsed text in order and notes where its flow
// collections end.
func (p *parser) comments() []comment {
	s := scanner{text: p.src.text, quotes: p.quotes, flows: p.flows, line: 1}
	for i := 0; i < len(s.text); {
		i = s.step(i)
	}
	return s.comments
}

func (s *scanner) step(i int) int {
	if len(s.quotes) > 0 && s.quotes[0].offset == i {
		q := s.quotes[0]
		s.quotes = s.quotes[1:]
		return s.advance(i, s.skipQuote(q))
	}
	switch c := s.text[i]; {
	case c == '\n':
		return s.advance(i, i+1)
	case c == '#' && (i == s.lineStart || strings.IndexByte(" \t", s.text[i-1]) >= 0):
		return s.comment(i)
	case len(s.flows) > 0 && s.flows[0].at.offset == i:
		s.open = append(s.open, s.flows[0])
		s.flows = s.flows[1:]
	case (c == ']' || c == '}') && len(s.open) > 0:
		s.open[len(s.open)-1].end = i
		s.open = s.open[:len(s.open)-1]
	}
	return i + 1
}

// advance counts the lines between two offsets.
func (s *scanner) advance(from, to int) int {
	for i := from; i < to; i++ {
		if s.text[i] == '\n' {
			s.blank = strings.TrimSpace(s.text[s.lineStart:i]) == ""
			s.line++
			s.lineStart = i + 1
		}
	}
	return to
}

func (s *scanner) comment(i int) int {
	end := i + len(untilNewline(s.text[i:]))
	before := s.text[s.lineStart:i]
	s.comments = append(s.comments, comment{
		remark: remark{text: strings.TrimRight(s.text[i:end], " \t\r"), apart: s.blank},
		at:     place{line: s.line, column: len([]rune(before)) + 1, offset: i},
		own:    strings.TrimLeft(before, " \t") == "",
	})
	return end
}

// skipQuote finds the end of a quoted or block scalar. A block scalar's header may be
// followed by a comment, so the scan goes on there and the body is skipped as
// a quote of its own.
func (s *scanner) skipQuote(q quote) int {
	i := q.offset
	switch s.text[i] {
	case '"':
		for i++; i < len(s.text) && s.text[i] != '"'; i++ {
			if s.text[i] == '\\' {
				i++
			}
		}
		return min(i+1, len(s.text))
	case '\'':
		for i++; i < len(s.text); i++ {
			if s.text[i] == '\'' && !strings.HasPrefix(s.text[i:], "''") {
				break
			} else if s.text[i] == '\'' {
				i++
			}
		}
		return min(i+1, len(s.text))
	case '|', '>':
		header := i + len(untilNewline(s.text[i:]))
		if at := strings.IndexByte(s.text[i:header], '#'); at > 0 {
			s.comment(i + at)
		}
		return blockEnd(s.text, header, q.indent, s.text[i:header])
	}
	return i + 1
}

// blockEnd finds where the body of a block scalar ends: at the first line that has
// text left of the body's own indentation.
func blockEnd(text string, from, parent int, header string) int {
	indent := -1
	head, _, _ := strings.Cut(header, "#")
	if at := strings.IndexAny(head, "123456789"); at >= 0 {
		indent = max(parent, 0) + int(head[at]-'0')
	}
	for i := from; i < len(text); {
		line := untilNewline(text[i+1:])
		body := strings.TrimLeft(line, " ")
		width := len(line) - len(body)
		if strings.TrimRight(body, "\r") != "" {
			if indent < 0 {
				indent = max(width, parent+1)
			}
			if width < indent {
				return i + 1
			}
		}
		i += 1 + len(line)
	}
	return len(text)
}

func untilNewline(s string) string {
	line, _, _ := strings.Cut(s, "\n")
	return line
}

// attach gives every comment to the entry or block that it stands at.
func (p *parser) attach(root *tree, comments []comment) (header []remark) {
	comments, header = p.header(comments)
	next := 0
	for _, c := range comments {
		for next < len(p.entries) && p.entries[next].at.offset < c.at.offset {
			next++
		}
		var before, after *entry
		if next > 0 {
			before = p.entries[next-1]
		}
		if next < len(p.entries) {
			after = p.entries[next]
		}
		if c.own {
			attachOwn(root, before, after, c)
		} else if before == nil {
			header = append(header, c.remark)
		} else {
			attachTrailing(before, c)
		}
	}
	return header
}

// header splits off the comments that belong to the file: those above the first entry
// that a blank line parts from it, or all of them if there is no entry.
func (p *parser) header(comments []comment) (rest []comment, header []remark) {
	first := place{line: -1, offset: len(p.src.text)}
	if len(p.entries) > 0 {
		first = p.entries[0].at
	}
	above, _ := slices.BinarySearchFunc(comments, first.offset, func(c comment, offset int) int { return c.at.offset - offset })
	split, below := above, first.line
	for split > 0 && comments[split-1].own && comments[split-1].at.line == below-1 {
		split--
		below--
	}
	for _, c := range comments[:split] {
		header = append(header, c.remark)
	}
	return comments[split:], header
}

// attachOwn places a comment that has its line to itself.
func attachOwn(root *tree, before, after *entry, c comment) {
	if before != nil && before.value.at.offset > c.at.offset && (before.value.kind == scalarKind || before.value.flow) {
		before.head = append(before.head, c.remark)
		return
	}
	if block := endedBlock(before, after, c.at); block != nil {
		block.tail = append(block.tail, c.remark)
	} else if after != nil {
		after.head = append(after.head, c.remark)
	} else {
		root.tail = append(root.tail, c.remark)
	}
}

// endedBlock finds the block that a comment closes: of those that end between the
// entries around it, the deepest that does not start right of the comment. Only a comment
// right of the next entry closes a block; others belong to what follows. A
// bracket that is still open closes with the comment in it.
func endedBlock(before, after *entry, at place) *tree {
	if before == nil {
		return nil
	}
	var found *tree
	t := before.value
	if t.kind == scalarKind {
		t = before.in
	}
	for ; t != nil && !holds(t, after); t = t.parent() {
		switch {
		case t.flow && t.end > at.offset:
			return t
		case t.flow || t.column() > at.column:
		case after != nil && at.column <= after.in.column():
		case found == nil || t.column() == found.column():
			found = t
		}
	}
	return found
}

func (t *tree) parent() *tree {
	if t.owner == nil {
		return nil
	}
	return t.owner.in
}

// column is where the entries of a block start; for a list that is its dashes.
func (t *tree) column() int { return t.at.column }

// holds reports whether an entry is somewhere in t.
func holds(t *tree, e *entry) bool {
	if e == nil {
		return false
	}
	for in := e.in; in != nil; in = in.parent() {
		if in == t {
			return true
		}
	}
	return false
}

// attachTrailing places a comment at the end of a line: with the last entry that starts
// before it and is not in a bracket that closed before it.
func attachTrailing(e *entry, c comment) {
	for e.in.flow && e.in.end < c.at.offset && e.in.owner != nil {
		e = e.in.owner
	}
	if e.trail == "" {
		e.trail = c.text
		return
	}
	e.head = append(e.head, c.remark)
}
