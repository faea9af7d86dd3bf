package part

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
)

// describe says in one line what an element is, what it joins, what drives it and
// which figures it has.
func describe(d *model.Definition, e *model.Element) string {
	clauses := []string{string(e.Is) + " " + strings.Join(e.Between, " to ")}
	if len(e.Out) > 0 {
		clauses = append(clauses, "output "+strings.Join(e.Out, " to "))
	}
	clauses = append(clauses, drivers(e)...)
	if e.Polarised {
		clauses = append(clauses, "polarised")
	}
	return strings.Join(append(clauses, figures(d, e)...), "; ")
}

// drivers says when an element acts.
func drivers(e *model.Element) []string {
	var clauses []string
	verb := "acts"
	if e.Is == model.ContactElement {
		verb = "closed"
	}
	if len(e.ClosedIn) > 0 {
		clauses = append(clauses, verb+" in "+strings.Join(e.ClosedIn, ", "))
	}
	if e.Coil != "" {
		clauses = append(clauses, "moved by "+e.Coil)
	}
	if e.Rest != "" {
		clauses = append(clauses, "rests "+string(e.Rest))
	}
	if len(e.Fed) > 0 {
		if e.Rest == model.RestClosed {
			verb = "open"
		}
		clauses = append(clauses, verb+" while "+strings.Join(e.Fed, ", ")+areFed(e.Fed)+against(e))
	}
	if len(e.Blocked) > 0 {
		clauses = append(clauses, "never while "+strings.Join(e.Blocked, " or ")+" is fed"+against(e))
	}
	return clauses
}

func areFed(terminals []string) string {
	if len(terminals) == 1 {
		return " is fed"
	}
	return " are fed"
}

func against(e *model.Element) string {
	if e.Against == "" {
		return ""
	}
	return " against " + e.Against
}

// figures lists the figures of an element with their values.
func figures(d *model.Definition, e *model.Element) []string {
	var clauses []string
	for _, f := range []struct{ role, rating string }{
		{"", e.Volts}, {"", e.Ohms}, {"", e.Amps}, {"", e.Watts}, {"", e.Farads},
		{"up to ", e.MaxVolts}, {"from ", e.PullIn}, {"gives ", e.OutVolts},
	} {
		if f.rating == "" {
			continue
		}
		value := "not known"
		if r, ok := d.Rating(f.rating); ok {
			value = r.Value.String()
		}
		clauses = append(clauses, fmt.Sprintf("%s%s (%s)", f.role, value, f.rating))
	}
	return clauses
}
