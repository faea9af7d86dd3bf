package rule

import (
	"errors"
	"fmt"

	"example.com/lugbook/model"
)

// Validate lists what is wrong with a table of rules: an id twice, a missing text, a rule
// that it names and that is not there.
func Validate(rules []Rule) error {
	var faults []error
	seen := map[string]bool{}
	for i := range rules {
		r := &rules[i]
		if seen[r.ID] || !model.ValidID(r.ID) {
			faults = append(faults, fmt.Errorf("rule %d: the id %q is taken or not usable", i, r.ID))
		}
		seen[r.ID] = true
		for _, missing := range r.unwritten() {
			faults = append(faults, fmt.Errorf("rule %s: write its %s", r.ID, missing))
		}
	}
	for i := range rules {
		for _, id := range append(append([]string{}, rules[i].Explains...), rules[i].Upsets...) {
			if !seen[id] {
				faults = append(faults, fmt.Errorf("rule %s: it names %s, which is no rule", rules[i].ID, id))
			}
		}
	}
	return errors.Join(faults...)
}

// unwritten lists what a rule lacks.
func (r *Rule) unwritten() []string {
	var list []string
	for _, text := range []struct{ what, text string }{
		{"title", r.Title}, {"family", string(r.Family)}, {"severity", string(r.Severity)}, {"about", r.About},
		{"why", r.Why}, {"how to tell", r.Tell}, {"limits", r.Blind},
		{"bad example", r.Bad}, {"good example", r.Good}, {"wrong example", r.Wrong.Of}, {"right example", r.Right.Of},
		{"basis", r.Basis.Text}, {"source", r.Basis.Source}, {"remedy", r.Remedy},
	} {
		if text.text == "" {
			list = append(list, text.what)
		}
	}
	if r.Run == nil {
		list = append(list, "code")
	}
	return list
}
