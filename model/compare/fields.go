package compare

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/field"
)

// records are properties that say how well a thing is known, what was written about it or
// how it is drawn. A thing is the same thing where only they differ.
var records = []string{"note", "photos", "confidence", "judged", "place"}

// fields lists the properties of two things of one type that differ, but for those named.
func fields(was, is any, but ...string) []Difference {
	var list []Difference
	for _, info := range field.List(is) {
		if slices.Contains(records, info.Name) || slices.Contains(but, info.Name) {
			continue
		}
		// List names what Get knows.
		before, _ := field.Get(was, info.Name)
		now, _ := field.Get(is, info.Name)
		if before != now {
			list = append(list, Difference{info.Name, before, now})
		}
	}
	return list
}

func partOf(was, is *model.Part) Part {
	p := Part{ID: is.ID, What: Kept, Was: was, Is: is}
	if was == nil {
		p.What = Added
		return p
	}
	p.Differs = append(fields(was, is), ratings(was, is)...)
	if points(was) != points(is) {
		p.Differs = append(p.Differs, Difference{"opens", points(was), points(is)})
	}
	switch {
	case was.Kind == is.Kind && was.Zone != is.Zone:
		p.What = Moved
	case len(p.Differs) > 0:
		p.What = Changed
	}
	return p
}

// ratings lists the figures that differ, in the order of the later part and then of the
// earlier. A figure with another source is the same figure.
func ratings(was, is *model.Part) []Difference {
	var list []Difference
	for _, r := range is.Ratings {
		before := ""
		if old, ok := was.Rating(r.Name); ok {
			before = old.Value.String()
		}
		if before != r.Value.String() {
			list = append(list, Difference{r.Name, before, r.Value.String()})
		}
	}
	for _, r := range was.Ratings {
		if _, stays := is.Rating(r.Name); !stays {
			list = append(list, Difference{r.Name, r.Value.String(), ""})
		}
	}
	return list
}

// points is a curve of a fuse in one line.
func points(p *model.Part) string {
	var words []string
	for _, o := range p.Opens {
		words = append(words, strings.Join(strings.Fields(o.At.String()+" "+o.Least.String()+" "+o.Most.String()), " "))
	}
	return strings.Join(words, ", ")
}
