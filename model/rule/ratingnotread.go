package rule

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
)

var ratingNotRead = Rule{
	ID: "rating-not-read", Title: "A fuse's rating is the library's typical figure",
	Family: Paper, Severity: Note,
	About: "Sums up the fuses and breakers in circuit whose rating nobody read off the label, so that the typical figure of the library " +
		"stands for it: a note on a plan and an as-built sheet, a question as found. Their voltage and interrupting ratings, and the fault " +
		"current of a pack, are questions. Every other figure that decides something is asked for by the rule that needs it.",
	Why: "Whether a wire burns or a fuse opens hangs on one number that is printed on the fuse. As long as it is only what such a fuse usually " +
		"has, everything that is said of the wires behind it is said of another cart. It takes a minute with a lamp and a mirror.",
	Tell: "Pack off, take the fuse out and read it: amperes, volts and DC, and the interrupting rating in kA if it is there. A colour is not a rating, and what " +
		"is printed on the holder is only the most that it takes.",
	Blind: "It doesn't ask again for what another rule asked for already. A figure from a label can be read wrongly; the holder may hold another " +
		"fuse tomorrow.",
	Bad:    "the plan has the fuse fu1, and nobody read its rating",
	Good:   "fu1 has 5 A by its label",
	Wrong:  Example{Of: spliceExample, But: []string{"part fu1", "part fu1 fuse-cartridge", "+", "sheet plan"}},
	Right:  Example{Of: spliceExample, But: []string{"+", "sheet plan"}},
	Basis:  Basis{"a part's label or its maker's record stands above what is typical", Practice},
	Remedy: "read it off the part and record it with its source",
	Run:    runRatingNotRead,
}

// deciding are the ratings of which the gravest verdicts are made, with what each decides.
var deciding = []struct{ rating, datum, decides string }{
	{"fuse-rating", "the rating", "whether it protects the wires behind it"},
	{"voltage-rating", "the voltage rating", "whether it can open at the full-charge voltage"},
	{"interrupting-rating", "the interrupting rating", "whether it can break a short of the pack"},
	{"fault-current", "the fault current", "which fuses can break a short of it"},
}

func runRatingNotRead(p *Pass) {
	for i, d := range deciding {
		var typical []Subject
		for k := range p.Sheet.Parts {
			part := &p.Sheet.Parts[k]
			if p.isTypicalOf(part, d.rating) {
				typical = append(typical, OfPart(part.ID))
			}
		}
		if len(typical) > 0 {
			p.missing(Gap{Datum: d.datum + " on the label", Field: d.rating, Decides: d.decides, Worst: Danger,
				Quiet: i > 0 || p.Sheet.Name == model.AsFound, Subjects: typical})
		}
	}
}

// isTypicalOf reports whether a fuse, a breaker or a source that is wired has a rating that
// only the library states, as typical.
func (p *Pass) isTypicalOf(part *model.Part, rating string) bool {
	def := p.Net.Cat.Definition(part.Kind)
	if def == nil || !slices.ContainsFunc(def.Elements, func(e model.Element) bool { return e.Is == model.FuseElement || e.Is == model.SourceElement }) {
		return false
	}
	wired := slices.ContainsFunc(p.Sheet.Wires, func(w model.Wire) bool { return w.From.At.Part == part.ID || w.To.At.Part == part.ID })
	r, ok := p.Net.Cat.RatingOf(part, rating)
	return ok && wired && strings.HasPrefix(r.Source, "typical")
}
