package strictyaml

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
)

// parser turns the library's nodes into a tree, within limits, and reports everything
// that strict YAML leaves out.
type parser struct {
	src    *source
	limits Limits
	report func(at place, text, message, expected string)

	nodes   int
	stopped bool     // a limit was passed; the rest is not looked at
	entries []*entry // in the order of the file
	quotes  []quote  // likewise
	flows   []*tree  // likewise
}

// quote is a scalar in which a # is no comment.
type quote struct {
	offset int
	indent int // of the block that holds a block scalar, -1 at the top
}

// load reads the one document of a text. It is nil if there is none; what went wrong is
// reported.
func (p *parser) load(text string) (root *tree) {
	defer func() {
		if r := recover(); r != nil { // the library panics only by mistake; a file must not end the program
			p.report(place{line: 1, column: 1}, "", "this file cannot be read as YAML", "")
			root = nil
		}
	}()
	loader, err := yaml.NewLoader(strings.NewReader(text))
	var document, second yaml.Node
	if err == nil {
		err = loader.Load(&document)
	}
	if errors.Is(err, io.EOF) || err == nil && len(document.Content) == 0 {
		p.report(place{line: 1, column: 1}, "", "the file holds no values", "")
		return nil
	}
	if err != nil {
		p.syntax(err)
		return nil
	}
	switch err := loader.Load(&second); {
	case err == nil:
		p.report(p.src.place(second.Line, second.Column), "", "a second document in one file", "one document")
	case !errors.Is(err, io.EOF):
		p.syntax(err)
		return nil
	}
	return p.value(document.Content[0], nil, -1, 1)
}

// syntax reports an error of the library at its own position. Its text may hold
// anything that the file holds; report cleans it.
func (p *parser) syntax(err error) {
	var load *yaml.LoadError
	if !errors.As(err, &load) {
		p.report(place{line: 1, column: 1}, "", "not YAML: "+shorten(err.Error()), "")
		return
	}
	message := "not YAML: " + shorten(load.Message)
	if load.ContextMsg != "" {
		message += " " + shorten(load.ContextMsg)
	}
	if load.ContextMark.Line > 0 && load.ContextMark.Line != load.Mark.Line {
		message += fmt.Sprintf(" that starts on line %d", load.ContextMark.Line)
	}
	p.report(p.src.place(load.Mark.Line, load.Mark.Column), "", message, "")
}

// value walks one node. indent is that of the block that holds it.
func (p *parser) value(n *yaml.Node, owner *entry, indent, depth int) *tree {
	t := &tree{owner: owner, text: n.Value, at: p.src.cursor}
	if n.Kind != yaml.ScalarNode || n.Value != "" || n.Style != 0 {
		t.at = p.src.place(n.Line, n.Column)
	}
	p.nodes++
	if p.nodes > p.limits.Nodes {
		p.stop(t.at, fmt.Sprintf("more than %d keys and values", p.limits.Nodes))
	} else if depth > p.limits.Depth {
		p.stop(t.at, fmt.Sprintf("nested deeper than %d levels", p.limits.Depth))
	}
	if p.stopped {
		t.bad = true
		return t
	}
	p.decorate(n, t)
	switch n.Kind {
	case yaml.MappingNode:
		t.kind = mappingKind
		p.collection(n, t)
		p.mapping(n, t, depth)
	case yaml.SequenceNode:
		t.kind = sequenceKind
		p.collection(n, t)
		for _, c := range n.Content {
			e := p.entry(t, p.src.place(c.Line, c.Column))
			e.value = p.value(c, e, t.at.column-1, depth+1)
		}
	case yaml.ScalarNode:
		p.scalar(n, t, indent)
	}
	return t
}

// decorate reports what strict YAML does without. The mark of an anchor, alias or tag
// is where its node starts.
func (p *parser) decorate(n *yaml.Node, t *tree) {
	mark := byte(0)
	if n.Value != "" || n.Kind != yaml.ScalarNode || n.Style != 0 {
		mark = p.src.text[min(t.at.offset, len(p.src.text)-1)]
	}
	switch {
	case n.Kind == yaml.AliasNode:
		p.report(t.at, "*"+n.Value, "an alias", "the value itself")
		t.bad = true
	case n.Anchor != "" || mark == '&':
		p.report(t.at, "&"+n.Anchor, "an anchor", "the value without it")
	case n.Style&yaml.TaggedStyle != 0 || mark == '!':
		p.report(t.at, n.Tag, "a tag", "the value without it")
	}
}

func (p *parser) collection(n *yaml.Node, t *tree) {
	if n.Style&yaml.FlowStyle == 0 {
		return
	}
	t.flow = true
	if c := p.src.text[t.at.offset]; c == '{' || c == '[' {
		p.flows = append(p.flows, t)
		return
	}
	t.end = t.at.offset // a pair without braces in a list holds no comments
}

func (p *parser) scalar(n *yaml.Node, t *tree, indent int) {
	const quoted = yaml.SingleQuotedStyle | yaml.DoubleQuotedStyle | yaml.LiteralStyle | yaml.FoldedStyle
	t.plain = n.Style&quoted == 0
	if !t.plain {
		p.quotes = append(p.quotes, quote{offset: t.at.offset, indent: indent})
	}
	if len(n.Value) > p.limits.Text {
		p.report(t.at, n.Value, fmt.Sprintf("a text of %d bytes", len(n.Value)), fmt.Sprintf("at most %d bytes", p.limits.Text))
		t.bad = true
	}
}

func (p *parser) mapping(n *yaml.Node, t *tree, depth int) {
	if keys := len(n.Content) / 2; keys > p.limits.Keys {
		p.stop(t.at, fmt.Sprintf("%d keys in one mapping; at most %d are read", keys, p.limits.Keys))
		return
	}
	lines := make(map[string]int, len(n.Content)/2)
	indent := t.at.column - 1
	for pair := range slices.Chunk(n.Content, 2) {
		e := p.entry(t, p.src.place(pair[0].Line, pair[0].Column))
		key := p.value(pair[0], e, indent, depth)
		good := p.key(key, lines)
		e.key = key.text
		e.value = p.value(pair[1], e, indent, depth+1)
		if !good {
			t.entries = t.entries[:len(t.entries)-1]
			e.value.bad = true
		}
	}
}

// key checks a key and remembers its line.
func (p *parser) key(k *tree, lines map[string]int) bool {
	switch {
	case k.bad:
		return false
	case k.kind != scalarKind:
		p.report(k.at, "", k.kind.String()+" as a key", "a name")
		return false
	case k.plain && isNull(k.text):
		p.report(k.at, k.text, "an empty key", "a name")
		return false
	case k.plain && k.text == "<<":
		p.report(k.at, k.text, "a merge key", "the keys themselves")
		return false
	case len(k.text) > maxKey:
		p.report(k.at, k.text, fmt.Sprintf("a key of %d bytes", len(k.text)), fmt.Sprintf("at most %d bytes", maxKey))
		return false
	}
	if first, taken := lines[k.text]; taken {
		p.report(k.at, k.text, "key given twice", fmt.Sprintf("each key once; the first is on line %d", first))
		return false
	}
	lines[k.text] = k.at.line
	return true
}

func (p *parser) entry(t *tree, at place) *entry {
	e := &entry{in: t, at: at}
	t.entries = append(t.entries, e)
	p.entries = append(p.entries, e)
	return e
}

func (p *parser) stop(at place, message string) {
	if !p.stopped {
		p.report(at, "", message, "a smaller file")
	}
	p.stopped = true
}

// isNull reports a plain scalar that YAML reads as no value.
func isNull(text string) bool {
	switch text {
	case "", "~", "null", "Null", "NULL":
		return true
	}
	return false
}
