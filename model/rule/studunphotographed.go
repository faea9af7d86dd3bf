package rule

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/compare"
)

var studUnphotographed = Rule{
	ID: "stud-not-photographed", Title: "A stud that will be taken apart has no photo",
	Family: Paper, Severity: Note,
	About: "On a plan, compares each stud of a part that stays with the sheet before it. Where two or more lugs were and one of them goes, comes " +
		"or changes its place, a photo of the stud, or of its part, belongs on the sheet before: one note names those without.",
	Why: "A stack that is off is gone. Which lug lay on the seat, which way the barrels pointed, what was under the tape: a photo taken before " +
		"the first nut answers in a second what nobody remembers after lunch. It also shows the customer what was there.",
	Tell: "Light from the side, the whole stud and a hand's breadth of each cable in the picture, one more from where you stood. Look at it on " +
		"the screen before you loosen anything: if you can't count the lugs, take it again.",
	Blind: "It asks for a photo's name, and doesn't look at the photo. Studs of parts that come off altogether are left out, for nothing goes back " +
		"on them, and so are studs with one lug.",
	Bad:    "on the plan a third lug comes on iso.out and on pack.NEG, and nobody took a photo",
	Good:   "both studs have a photo on the as-found sheet",
	Wrong:  Example{Of: studExample, But: []string{"+", studChange}},
	Right:  Example{Of: studExample, But: []string{"+", "at iso.out photos=iso.jpg\nat pack.NEG photos=tray.jpg\n" + studChange}},
	Basis:  Basis{"every stud is photographed before the first nut is loosened", Practice},
	Remedy: "take the photo before the stack comes off, and name it at the stud",
	Run:    runStudUnphotographed,
}

// studChange is a plan on which a lamp joins the stud of the buzzer.
const studChange = `sheet plan
part fu3 fuse-cartridge fuse-rating=5A
part lt1 lamp-work-48v
wire a1 iso.out fu3.in gauge=16AWG insulation=105C length=100mm colour=OG
wire a2 fu3.out lt1.+ gauge=16AWG insulation=105C length=1m colour=OG
wire a3 lt1.- pack.NEG gauge=16AWG insulation=105C length=1m colour=BK
stack iso.out w3 k1 a1
stack pack.NEG w4 k3 a3`

func runStudUnphotographed(p *Pass) {
	before := compare.Before(p.Job, p.Sheet.Name)
	if p.Sheet.Name != model.Plan || before == nil {
		return
	}
	var bare []Subject
	for _, s := range p.studs() {
		was, _ := before.StackOf(s.at)
		if before.Part(s.at.Part) == nil || len(was) < 2 || !p.takenApart(s, was, before) {
			continue
		}
		if !isPhotographed(before, s.at) && !isPhotographed(p.Sheet, s.at) {
			bare = append(bare, OfTerminal(s.at))
		}
	}
	if len(bare) > 0 {
		p.missing(Gap{Datum: "a photo", Field: "photos", Decides: "what lay where once the stack is off", Worst: Note, Subjects: bare})
	}
}

// takenApart reports whether the lugs on a stud are not the same in the same order, or are on
// other wires by the same name.
func (p *Pass) takenApart(s stud, was []model.WireID, before *model.Sheet) bool {
	var now []model.WireID
	for _, w := range s.wires {
		now = append(now, w.ID)
	}
	return !slices.Equal(was, now) || slices.ContainsFunc(now, func(id model.WireID) bool {
		return before.Wire(id) != nil && before.Wire(id).Gauge != p.Sheet.Wire(id).Gauge
	})
}

// isPhotographed reports whether a sheet names a photo of a terminal or of its part.
func isPhotographed(s *model.Sheet, at model.TerminalRef) bool {
	t, part := s.Terminal(at), s.Part(at.Part)
	return t != nil && len(t.Photos) > 0 || part != nil && len(part.Photos) > 0
}
