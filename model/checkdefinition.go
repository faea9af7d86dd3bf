package model

import (
	"slices"
	"strconv"
)

// Check lists everything that is inconsistent in the definition. Paths start below
// the definition's kind.
func (d *Definition) Check() []Fault { return d.check() }

func (d *Definition) check(above ...string) []Fault {
	c := definitionChecker{d: d, path: append(above, d.Kind)}
	if !ValidID(d.Kind) {
		c.report(nil, d.Kind, "not a usable kind", "1 to 64 letters, digits, hyphens or underscores", nil)
	}
	if !ValidID(d.Designator) {
		c.report([]string{"designator"}, d.Designator, "not a usable designator", "a short id such as sol", nil)
	}
	for _, t := range d.Terminals {
		if !validTerminalName(t.Name) {
			c.report([]string{"terminals", t.Name}, t.Name, "not a usable terminal name", "letters, digits, + - or _", nil)
		}
		if !t.Stud.IsZero() && t.Form != StudForm {
			c.report([]string{"terminals", t.Name, "stud"}, t.Stud.String(), "a stud size on a terminal that is no stud", "form: stud", nil)
		}
		if t.Face < 0 || t.Face > 2 {
			c.report([]string{"terminals", t.Name, "face"}, strconv.Itoa(t.Face), "no such face", "1 or 2, for two opposite ends of the part", nil)
		}
	}
	if d.Opening != "" && !ValidID(d.Opening) {
		c.report([]string{"opening"}, d.Opening, "not a usable name", "1 to 64 letters, digits, hyphens or underscores", nil)
	}
	for _, r := range d.Ratings {
		c.faults = append(c.faults, r.check(join(c.path, "ratings", r.Name))...)
	}
	if d.Control != nil {
		c.oneOf([]string{"control", "rest"}, d.Control.Rest, "position", d.Control.Positions)
	}
	for i := range d.Elements {
		c.element(&d.Elements[i])
	}
	return c.faults
}

type definitionChecker struct {
	d      *Definition
	path   []string
	faults []Fault
}

func (c *definitionChecker) report(below []string, text, message, expected string, known []string) {
	c.faults = append(c.faults, Fault{Path: join(c.path, below...), Text: text, Message: message, Expected: expected, Known: known})
}

func (c *definitionChecker) oneOf(below []string, text, what string, known []string) {
	if !slices.Contains(known, text) {
		c.report(below, text, "no such "+what, "a "+what+" of the definition", known)
	}
}

func (c *definitionChecker) element(e *Element) {
	at := []string{"elements", e.ID}
	var terminals, elements, positions []string
	for _, t := range c.d.Terminals {
		terminals = append(terminals, t.Name)
	}
	for _, o := range c.d.Elements {
		if o.Is == CoilElement {
			elements = append(elements, o.ID)
		}
	}
	if c.d.Control != nil {
		positions = c.d.Control.Positions
	}
	if len(e.Between) != 2 {
		c.report(join(at, "between"), "", "an element is between two terminals", "two names, such as [L1, L2]", nil)
	}
	if len(e.Out) != 0 && len(e.Out) != 2 {
		c.report(join(at, "out"), "", "an output is between two terminals", "two names, such as [OUT+, OUT-]", nil)
	}
	for _, t := range slices.Concat(e.Between, e.Out, e.Fed, e.Blocked) {
		c.oneOf(at, t, "terminal", terminals)
	}
	if e.Against != "" {
		c.oneOf(join(at, "against"), e.Against, "terminal", terminals)
	}
	if e.Coil != "" {
		c.oneOf(join(at, "coil"), e.Coil, "coil", elements)
	}
	for _, p := range e.ClosedIn {
		c.oneOf(join(at, "closed-in"), p, "position", positions)
	}
	for _, r := range []string{e.Volts, e.Ohms, e.Amps, e.Watts, e.Farads, e.MaxVolts, e.PullIn, e.OutVolts} {
		if r != "" {
			c.oneOf(at, r, "rating", ratingNames(c.d))
		}
	}
}
