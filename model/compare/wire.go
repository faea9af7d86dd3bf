package compare

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
)

func wireOf(was, is *model.Wire) Wire {
	w := Wire{ID: is.ID, What: Kept, Was: was, Is: is}
	if was == nil {
		w.What = Added
		return w
	}
	old := alongside(was, is)
	var ends []Difference
	for k, field := range []string{"from", "to"} {
		if before, now := old.Ends()[k], is.Ends()[k]; before != now {
			ends = append(ends, Difference{field, before.String(), now.String()})
		}
	}
	w.Differs = append(ends, fields(old, is, "from", "to")...)
	switch {
	case len(ends) > 0:
		w.What = Moved
	case len(w.Differs) > 0:
		w.What = Changed
	}
	return w
}

// alongside is the wire the way round that has most ends where the other has them: which
// end is called from has no meaning.
func alongside(w, other *model.Wire) *model.Wire {
	same := func(a, b *model.Wire) (n int) {
		for k, e := range a.Ends() {
			if e == b.Ends()[k] {
				n++
			}
		}
		return n
	}
	turned := w.Clone()
	turned.From, turned.To = w.To, w.From
	turned.FromLug, turned.ToLug = w.ToLug, w.FromLug
	turned.FromBarrel, turned.ToBarrel = w.ToBarrel, w.FromBarrel
	slices.Reverse(turned.Via)
	if same(&turned, other) > same(w, other) {
		return &turned
	}
	return w
}

// terminals finds what differs at terminals of parts that are on both sheets.
func (c *Comparison) terminals() {
	seen := map[model.TerminalRef]bool{}
	for _, s := range []*model.Sheet{c.Is, c.Was} {
		for i := range s.Terminals {
			at := s.Terminals[i].At
			if seen[at] || c.Is.Part(at.Part) == nil || c.Was.Part(at.Part) == nil {
				continue
			}
			seen[at] = true
			if differs := c.terminal(at); len(differs) > 0 {
				c.Terminals = append(c.Terminals, Terminal{at, differs})
			}
		}
	}
}

func (c *Comparison) terminal(at model.TerminalRef) []Difference {
	was, is := &model.Terminal{}, &model.Terminal{}
	if t := c.Was.Terminal(at); t != nil {
		was = t
	}
	if t := c.Is.Terminal(at); t != nil {
		is = t
	}
	list := fields(was, is, "stack")
	if before, now := c.staying(c.Was, at), c.staying(c.Is, at); before != now {
		list = append(list, Difference{"stack", before, now})
	}
	return list
}

// staying is the recorded order of the lugs that are on a terminal on both sheets; empty
// where no order is recorded or a single lug has none.
func (c *Comparison) staying(s *model.Sheet, at model.TerminalRef) string {
	order, known := s.StackOf(at)
	other := c.Was
	if s == c.Was {
		other = c.Is
	}
	there := other.Landed(at)
	var words []string
	for _, id := range order {
		if slices.Contains(there, id) {
			words = append(words, string(id))
		}
	}
	if !known || len(words) < 2 {
		return ""
	}
	return strings.Join(words, ", ")
}
