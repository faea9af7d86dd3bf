package model

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

func (c *checker) sheet(s *Sheet) {
	path := []string{"sheets", string(s.Name)}
	words(c, path, s.Name)
	parts, wires := map[string]string{}, map[string]string{}
	for i := range s.Parts {
		c.id(join(path, "parts", string(s.Parts[i].ID)), string(s.Parts[i].ID), parts)
		c.part(s, &s.Parts[i])
	}
	for i := range s.Wires {
		c.id(join(path, "wires", string(s.Wires[i].ID)), string(s.Wires[i].ID), wires)
		c.wire(s, &s.Wires[i])
	}
	for i := range s.Terminals {
		c.terminal(s, &s.Terminals[i])
	}
	for i := range s.Waived {
		c.waiver(join(path, "waived", s.Waived[i].Finding), &s.Waived[i])
	}
}

// waiver checks that a word on a finding can be answered for: by whom, when and why.
func (c *checker) waiver(path []string, w *Waiver) {
	words(c, join(path, "accepts"), w.Accepts)
	if grades := []string{"danger", "fault", "caution", "note"}; !slices.Contains(grades, w.Severity) {
		c.report(Fault{Path: join(path, "severity"), Text: w.Severity, Message: "not a known word",
			Expected: "how grave the finding was: " + strings.Join(grades, ", "), Known: grades})
	}
	if _, err := time.Parse(time.DateOnly, w.Date); err != nil {
		c.report(Fault{Path: join(path, "date"), Text: w.Date, Message: "not a date", Expected: "year-month-day, such as 2026-03-11"})
	}
	if IsBlank(w.Reason) {
		c.report(Fault{Path: join(path, "reason"), Text: w.Reason, Message: "no reason", Expected: "why it may stay, for the next technician"})
	}
	if IsBlank(w.By) {
		c.report(Fault{Path: join(path, "by"), Text: w.By, Message: "no name", Expected: "who says so"})
	}
}

func join(path []string, more ...string) []string { return slices.Concat(path, more) }

func (c *checker) part(s *Sheet, p *Part) {
	path := []string{"sheets", string(s.Name), "parts", string(p.ID)}
	d := c.cat.Definition(p.Kind)
	if d == nil && p.Kind != UnknownKind {
		c.report(Fault{Path: join(path, "kind"), Text: p.Kind, Message: "no such kind of part",
			Expected: "a kind of the parts library, one defined in the job, or unknown", Known: append(slices.Clone(c.cat.Kinds()), UnknownKind)})
	}
	c.zone(join(path, "zone"), p.Zone)
	if p.Place != nil && !p.Place.OnDrawing() {
		c.report(Fault{Path: join(path, "place"), Text: fmt.Sprintf("%d, %d", p.Place.X, p.Place.Y), Message: "a place off the drawing", Expected: PlaceRange})
	}
	c.photos(path, p.Photos)
	c.partWords(path, p)
	c.opening(join(path, "opening"), p.Opening)
	c.opens(join(path, "opens"), p.Opens)
	for _, r := range p.Ratings {
		c.rating(join(path, "ratings", r.Name), d, r)
	}
}

// rating checks a part's own figure: that it can be, and against the definition, if there
// is one.
func (c *checker) rating(path []string, d *Definition, r Rating) {
	c.faults = append(c.faults, r.check(path)...)
	if d == nil {
		return
	}
	known, ok := d.Rating(r.Name)
	if !ok {
		c.report(Fault{Path: path, Text: r.Name, Message: "a " + d.Title + " has no such figure", Expected: "a figure of the definition", Known: ratingNames(d)})
		return
	}
	if known.Value.Dimension() != r.Value.Dimension() {
		c.report(Fault{Path: join(path, "value"), Text: r.Value.String(), Message: "wrong kind of quantity for " + r.Name,
			Expected: fmt.Sprintf("a %s, such as %s", known.Value.Dimension(), known.Value)})
	}
}

func ratingNames(d *Definition) []string {
	var names []string
	for _, r := range d.Ratings {
		names = append(names, r.Name)
	}
	return names
}

func (c *checker) wire(s *Sheet, w *Wire) {
	path := []string{"sheets", string(s.Name), "wires", string(w.ID)}
	c.end(s, join(path, "from"), w.From)
	c.end(s, join(path, "to"), w.To)
	if !w.From.At.IsZero() && w.From.At == w.To.At {
		c.report(Fault{Path: join(path, "to"), Text: w.To.String(), Message: "both ends of a wire are on one terminal", Expected: "another terminal or a loose end"})
	}
	for _, z := range w.Via {
		c.zone(join(path, "via"), z)
	}
	c.photos(path, w.Photos)
	c.wireWords(path, w)
}

func (c *checker) end(s *Sheet, path []string, e End) {
	if e.IsLoose() {
		words(c, path, e.Loose)
		c.zone(path, e.In)
		if !e.At.IsZero() {
			c.report(Fault{Path: path, Text: e.At.String(), Message: "an end both loose and on a terminal", Expected: "one of the two"})
		}
		return
	}
	c.ref(s, path, e.At, e.String())
}

// ref checks that a terminal exists on the sheet.
func (c *checker) ref(s *Sheet, path []string, at TerminalRef, text string) {
	p := s.Part(at.Part)
	if p == nil {
		c.report(Fault{Path: path, Text: text, Message: "no part " + string(at.Part) + " on this sheet",
			Expected: "part.terminal of a part on the sheet", Known: c.refs(s, at.Name)})
		return
	}
	d := c.cat.Definition(p.Kind)
	if d == nil && !validTerminalName(at.Name) {
		c.report(Fault{Path: path, Text: text, Message: "not a usable terminal name", Expected: "letters, digits, + - or _"})
	}
	if d == nil || d.Terminal(at.Name) != nil {
		return
	}
	var known []string
	for _, t := range d.Terminals {
		known = append(known, TerminalRef{Part: p.ID, Name: t.Name}.String())
	}
	c.report(Fault{Path: path, Text: text, Message: "a " + d.Title + " has no terminal " + at.Name, Expected: "one of its terminals", Known: known})
}

// refs lists the terminals of that name on all parts of the sheet; none once there are
// faults enough, for every wire of a long sheet may lead to a part that is gone.
func (c *checker) refs(s *Sheet, name string) []string {
	if len(c.faults) >= maxSuggested {
		return nil
	}
	var refs []string
	for i := range s.Parts {
		refs = append(refs, TerminalRef{Part: s.Parts[i].ID, Name: name}.String())
	}
	return refs
}

func (c *checker) terminal(s *Sheet, t *Terminal) {
	path := []string{"sheets", string(s.Name), "terminals", t.At.String()}
	c.ref(s, path, t.At, t.At.String())
	c.photos(path, t.Photos)
	c.terminalWords(path, t)
	landed := s.Landed(t.At)
	for i, id := range t.Stack {
		switch {
		case !slices.Contains(landed, id):
			c.report(Fault{Path: join(path, "stack"), Text: string(id), Message: "wire in the stack does not land on " + t.At.String(),
				Expected: "a wire with an end there", Known: wireNames(landed)})
		case slices.Contains(t.Stack[:i], id):
			c.report(Fault{Path: join(path, "stack"), Text: string(id), Message: "wire twice in one stack", Expected: "each wire once"})
		}
	}
}

func wireNames(ids []WireID) []string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = string(id)
	}
	return names
}
