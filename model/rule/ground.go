package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// Ground is what a job was judged by.
type Ground struct {
	Name model.Basis
	Own  []model.Limit // limits that the job sets for itself
}

func groundOf(j *model.Job) Ground {
	g := Ground{Name: j.Basis, Own: j.Limits}
	if g.Name == "" {
		g.Name = model.USSmallCraft
	}
	return g
}

// String says what was judged by, and that local codes prevail.
func (g Ground) String() string {
	text := map[model.Basis]string{
		model.USSmallCraft: "US small craft rules (33 CFR 183 subpart I, ABYC E-11) as the base table",
		model.HouseRule:    "the house rule: limits stricter than the US small craft rules",
		model.MakersData:   "the makers' data as far as the job records it, US small craft rules for the rest",
	}[g.Name]
	switch n := len(g.Own); {
	case n == 1:
		text += ", with one limit of the job's own"
	case n > 1:
		text += fmt.Sprintf(", with %d limits of the job's own", n)
	}
	return text + "; local codes and the makers' instructions prevail"
}

// limit is a limit of the table, as the job has it, in SI units. The names are the constants
// of package basis.
func (p *Pass) limit(name string) float64 {
	value, _ := p.limitFrom(name)
	return value.SI()
}

// limitFrom is a limit of the table, as the job has it, with where it is from.
func (p *Pass) limitFrom(name string) (value unit.Any, source string) {
	known, done := p.shared.limits[name]
	if !done {
		known.value, known.source = p.Job.LimitOf(name)
		p.shared.limits[name] = known
	}
	return known.value, known.source
}

// limited is a limit with where it is from.
type limited struct {
	value  unit.Any
	source string
}
