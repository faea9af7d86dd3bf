package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var sourceExceedsWire = Rule{
	ID: "source-exceeds-wire", Title: "A source that limits itself gives more than its wire carries",
	Family: Protection, Severity: Fault,
	About: "A charger or reducer limits its own current, so its output needs no fuse as long as the wire carries that current. " +
		"Speaks if it does not, to 150 %; a caution if the current is the library's typical figure.",
	Why: "A charger is both ends of a problem: from the pack's side its lead needs a fuse, from its own side the lead must carry what it gives, for " +
		"it gives that for hours. A fuse at the pack sees nothing of what the charger drives into a chafed lead. A lead that is too thin runs warm " +
		"every night, goes brown, and lights what lies on it.",
	Tell: "Read the output current off the charger's plate and the size off its lead, up to the fuse at the pack: 18 AWG of 105 C takes 20 A, " +
		"10 AWG 60 A. Feel the lead after an hour of charging: warm to the hand all along means too thin.",
	Blind: "Takes the rated output as what persists. The branch circuit that feeds the charger and the pack's limit are other rules. If the " +
		"gauge is not recorded it asks; up to 150 % of the ampacity goes unsaid, unless the job or the house rule has a stricter share.",
	Bad:   "a 25 A charger on 18 AWG, for which only the 10 A fuse at the pack was chosen",
	Good:  "a 25 A charger feeds its charge fuse at the pack over 10 AWG",
	Wrong: Example{Of: chargedPack, But: []string{"part fu2", "part fu2 fuse-cartridge fuse-rating=10A", "wire c1", "wire c1 chg.DC+ fu2.in gauge=18AWG insulation=60C length=900mm"}},
	Right: Example{Of: chargedPack},
	Basis: Basis{"a self-limiting source needs no device at its output; its conductor must carry what it gives",
		"33 CFR 183.455(c) and 183.460, the latter from memory"},
	Remedy: "fit a thicker wire, or a fuse at the source's end of it",
	Run:    runSourceExceedsWire,
}

// chargedPack is a charger on a pack, with its fuse at the pack.
const chargedPack = `part pack lithium-pack-16
part fu2 fuse-cartridge fuse-rating=30A
part chg charger-onboard-48v charge-current=25A
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out pack.POS gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
at pack.POS cover=fitted
at fu2.out cover=fitted`

func runSourceExceedsWire(p *Pass) {
	f := p.fusing()
	for i := range f.entries {
		e := &f.entries[i]
		if len(e.Limits) == 0 || areDevices(e.Limits) {
			continue
		}
		var links []*network.Link
		worst := loaded{}
		for _, w := range append(f.loadedBy(e, over), f.chosenBy(e)...) {
			links = append(links, w.wire)
			if worst.wire == nil || w.carries.amps < worst.carries.amps {
				worst = w
			}
		}
		if worst.wire == nil {
			continue
		}
		finding := Finding{
			Message: fmt.Sprintf("%s can feed %s into %s, %s, %s, with no device between",
				list(partsOf(e.Limits)), amps(e.Amps), worst.wire.Wire.ID, worst.wire.Wire.Gauge, worst.carries),
			Figure:   worst.carries.figure("output current", e.Amps),
			Subjects: append(partsOf(e.Limits), wireSubjects(links)...),
		}
		if fix, ok := p.thickEnough(links, e.Amps, p.nominalAt); ok {
			finding.Fixes = []edit.Edit{fix}
		}
		unread := func(l *network.Link) bool { return p.typical(l, l.Element.Amps) }
		if worst.carries.load == strained || slices.ContainsFunc(e.Limits, unread) {
			finding.Severity = Caution
		}
		if p.devicesAlone(e.Limits, worst.carries) {
			finding.Severity = Danger
			finding.Message = fmt.Sprintf("%s let %s into %s, %s, %s", p.namesOf(e.Limits), amps(e.Amps), worst.wire.Wire.ID, worst.wire.Wire.Gauge, worst.carries)
			finding.Remedy = "fit a fuse that the wire carries where it leaves"
		}
		p.report(finding)
	}
}

// chosenBy lists the wires that an entry loads beyond the share that the job or the house rule
// has chosen.
func (f *fusing) chosenBy(e *network.Entry) []loaded {
	return slices.DeleteFunc(f.loadedBy(e, strained), func(w loaded) bool { return !w.carries.own })
}
