package model

// Catalogue finds part definitions by kind. Definitions of an earlier list stand
// above those of a later one: the job's own above the shop's above the library's.
type Catalogue struct {
	order []string
	kinds map[string]*Definition
}

// NewCatalogue joins lists of definitions, the most particular list first.
func NewCatalogue(lists ...[]Definition) *Catalogue {
	c := &Catalogue{kinds: map[string]*Definition{}}
	for _, list := range lists {
		for i := range list {
			c.add(&list[i])
		}
	}
	return c
}

// For is the catalogue as the job sees it: its own definitions stand above.
func (c *Catalogue) For(j *Job) *Catalogue {
	if len(j.Definitions) == 0 {
		return c
	}
	own := NewCatalogue(j.Definitions)
	for _, kind := range c.order {
		own.add(c.kinds[kind])
	}
	return own
}

func (c *Catalogue) add(d *Definition) {
	if _, taken := c.kinds[d.Kind]; !taken {
		c.kinds[d.Kind] = d
		c.order = append(c.order, d.Kind)
	}
}

// Definition finds a kind; nil if no list has it.
func (c *Catalogue) Definition(kind string) *Definition { return c.kinds[kind] }

// Kinds lists all kinds in the order of the lists.
func (c *Catalogue) Kinds() []string { return c.order }

// RatingOf is a figure of a part: the part's own if it has one, else the
// definition's. It is false if neither states the figure.
func (c *Catalogue) RatingOf(p *Part, name string) (Rating, bool) {
	if r, ok := p.Rating(name); ok {
		return r, true
	}
	if d := c.Definition(p.Kind); d != nil {
		return d.Rating(name)
	}
	return Rating{}, false
}

// TerminalOf is the definition of the terminal that a reference names on a sheet;
// nil if the part or the terminal is not known.
func (c *Catalogue) TerminalOf(s *Sheet, at TerminalRef) *TerminalDef {
	p := s.Part(at.Part)
	if p == nil {
		return nil
	}
	if d := c.Definition(p.Kind); d != nil {
		return d.Terminal(at.Name)
	}
	return nil
}

// TerminalsOf lists a part's terminals by name: the definition's, or for a part of
// unknown kind those that its wires name, in the order of the sheet.
func (c *Catalogue) TerminalsOf(s *Sheet, p *Part) []string {
	var names []string
	if d := c.Definition(p.Kind); d != nil {
		for _, t := range d.Terminals {
			names = append(names, t.Name)
		}
		return names
	}
	seen := map[string]bool{}
	for i := range s.Wires {
		for _, e := range s.Wires[i].Ends() {
			if e.At.Part == p.ID && !seen[e.At.Name] {
				seen[e.At.Name] = true
				names = append(names, e.At.Name)
			}
		}
	}
	return names
}
