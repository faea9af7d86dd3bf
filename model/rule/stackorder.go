package rule

import (
	"cmp"
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/unit"
)

var stackOrder = Rule{
	ID: "stack-order", Title: "The lugs of a stud lie in the wrong order",
	Family: Studs, Severity: Fault,
	About: "Looks at the order of the lugs on each stud, counted from the seat outward. What carries clearly more current in the worst state " +
		"lies nearer the seat; among lugs that carry about the same, or too little to matter, the larger conductor does. From 20 A up the " +
		"current decides, and a current up to twice another counts as the same. A small lug under a large one is a fault, a lug " +
		"that only carries more current than the one under it a caution. An order that is not recorded is a note where sizes differ, and a " +
		"question where only currents do.",
	Why: "On a stud the current goes from face to face: the seat carries the sum of all lugs above it, the first lug carries what the second " +
		"brings, and so on outward; the stud itself only holds them together. A large lug on the seat has a large face for that sum. A small " +
		"lug under it rocks like a pebble under a plank: the large one touches along an edge, that edge gets hot, the heat lets the nut " +
		"settle, and the joint goes from good to burnt within a season. It costs a cable, often a controller's stud, and a day.",
	Tell: "Pack off, boot off, look at the stack from the side: lugs must lie flat on one another, and the thickest cable must be the one that touches the post. " +
		"Push the large cable sideways: it must not rock. Then clip the meter on, DC millivolts, black on the post and red on the barrel of the main cable, " +
		"pack on, and load the motor: 10 to 40 mV at 200 A is a good joint, above 100 mV is not.",
	Blind: "Largest on the seat is common practice; no standard read for this prints it as a clause. Currents are computed from what the sheet " +
		"records and from the ratings of the parts, each at its long-time value; where they can't be known (a " +
		"pack that is misconnected, a wire that ends loose on the sheet, a traction path without its motor) only sizes are compared. It takes every lug for a ring of usual thickness and does not know lugs that are bent or stacked back to back.",
	Bad:   "on iso.out the 16 AWG lug touches the seat and the 4 AWG lug lies on it",
	Good:  "on iso.out the 4 AWG lug touches the seat and the 16 AWG lug lies on it",
	Wrong: Example{Of: studExample, But: []string{"stack iso.out", "stack iso.out k1 w3"}},
	Right: Example{Of: studExample},
	Basis: Basis{"current is carried by the faces of the lugs and not by the stud (FAA AC 43.13-1B 11-174); so the seat carries the sum, and what " +
		"brings most of it belongs on the seat; largest first is how the trade does it", Practice},
	Remedy: "pack off, take the stack off and put it back so: largest current first, then largest lug; the ready-made edit records that order",
	Run:    runStackOrder,
}

// studExample is the small cart of the pages of this family: a pump behind an isolator, and a
// buzzer on the same stud.
const studExample = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=100A
part iso isolator
part pump pump-motor
part fu2 fuse-cartridge fuse-rating=5A
part buz buzzer
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out iso.in gauge=4AWG insulation=105C length=300mm
wire w3 iso.out pump.+ gauge=4AWG insulation=105C length=600mm
wire w4 pump.- pack.NEG gauge=4AWG insulation=105C length=600mm
wire k1 iso.out fu2.in gauge=16AWG insulation=105C length=100mm
wire k2 fu2.out buz.+ gauge=16AWG insulation=105C length=1m
wire k3 buz.- pack.NEG gauge=16AWG insulation=105C length=1m
stack iso.out w3 k1
stack pack.NEG w4 k3
at pack.POS cover=fitted
at fu1.in cover=fitted
`

func runStackOrder(p *Pass) {
	for _, s := range p.studs() {
		if len(s.wires) < 2 {
			continue
		}
		lugs, unsized := p.lugsOf(s)
		oneSize := !slices.ContainsFunc(lugs, func(l lug) bool { return l.wire.Gauge.Compare(lugs[0].wire.Gauge) != 0 })
		switch {
		case len(unsized) > 0 && s.known:
			p.missing(Gap{Datum: "the gauge", Field: "gauge", Decides: "whether the largest lug touches " + s.at.String(), Worst: Danger, Subjects: idSubjects(unsized)})
		case len(unsized) == 0 && oneSize && lugs[0].rank == lugs[len(lugs)-1].rank:
			continue
		case !s.known:
			p.missing(Gap{Datum: "the order of the lugs", Field: "stack", Decides: "whether the largest touches the terminal", Worst: Fault,
				Quiet: len(unsized) == 0 && oneSize, Subjects: []Subject{OfTerminal(s.at)}})
		}
		if s.known {
			p.judgeOrder(s, lugs, unsized)
		}
	}
}

// lug is a lug of known size in a stack.
type lug struct {
	wire  *model.Wire
	place int     // counted from the seat, from 1
	amps  float64 // all the time in the worst state; 0 if nothing flows or it can't be computed
	state string  // that state
	rank  int     // by current, 0 for the lugs that carry most
}

// lugsOf lists the lugs of known size in the order in which they belong, from the seat
// outward, and the wires of unknown size.
func (p *Pass) lugsOf(s stud) (lugs []lug, unsized []model.WireID) {
	for i, w := range s.wires {
		if w.Gauge.IsZero() {
			unsized = append(unsized, w.ID)
			continue
		}
		l := lug{wire: w, place: i + 1}
		l.amps, l.state = p.flows(w)
		lugs = append(lugs, l)
	}
	if p.currentsKnown(lugs, s.at) {
		p.rankByCurrent(lugs)
	}
	slices.SortStableFunc(lugs, func(a, b lug) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), b.wire.Gauge.Compare(a.wire.Gauge), cmp.Compare(a.place, b.place))
	})
	return lugs, unsized
}

// flows is what a wire carries all the time in the worst state, and that state.
func (p *Pass) flows(w *model.Wire) (amperes float64, state string) {
	if p.unsound() {
		return 0, ""
	}
	load := p.currents().Load(w)
	return load.Amps, load.State
}

// currentsKnown reports whether the sheet tells what each lug on a terminal carries: not if a
// wire ends loose or on a part that nobody has identified, and not if the traction path is
// recorded only in part, so that nothing drives.
func (p *Pass) currentsKnown(lugs []lug, at model.TerminalRef) bool {
	least := p.limit(basis.StackCurrent)
	return len(lugs) > 0 && !slices.ContainsFunc(lugs, func(l lug) bool {
		far := l.wire.Far(at)
		return l.amps < least && (far.IsLoose() || p.Net.DefinitionOf(far.At) == nil || p.traction(p.Net.WireLink(l.wire.ID)))
	})
}

// rankByCurrent gives lugs that carry about the same the same rank. Each is compared with the
// next smaller current, so that no order depends on which lugs are compared first.
func (p *Pass) rankByCurrent(lugs []lug) {
	least, spread := p.limit(basis.StackCurrent), 1+p.limit(basis.StackSpread)
	byCurrent := make([]*lug, len(lugs))
	for i := range lugs {
		byCurrent[i] = &lugs[i]
	}
	slices.SortStableFunc(byCurrent, func(a, b *lug) int { return cmp.Compare(b.amps, a.amps) })
	for i, l := range byCurrent[1:] {
		above := byCurrent[i]
		l.rank = above.rank
		if above.amps >= least && above.amps > spread*l.amps {
			l.rank++
		}
	}
}

// judgeOrder reports the first two neighbours that lie the wrong way round. Lugs of unknown
// size are passed over.
func (p *Pass) judgeOrder(s stud, belongs []lug, unsized []model.WireID) {
	lies := slices.Clone(belongs)
	slices.SortStableFunc(lies, func(a, b lug) int { return cmp.Compare(a.place, b.place) })
	for i := 1; i < len(lies); i++ {
		below, above := lies[i-1], lies[i]
		f := Finding{
			Subjects: []Subject{OfTerminal(s.at), OfWire(below.wire.ID), OfWire(above.wire.ID)},
			Fixes:    []edit.Edit{edit.Restack{Sheet: p.Sheet.Name, At: s.at, Order: orderOf(belongs, unsized)}},
		}
		larger := above.wire.Gauge.Compare(below.wire.Gauge)
		switch {
		case above.rank < below.rank:
			f.State = above.state
			f.Message = fmt.Sprintf("on %s %s, %s, carries %s and lies under %s, %s, that carries %s (%s); position %d counted from the seat: %s",
				s.at, below.wire.ID, below.wire.Gauge, amps(below.amps), above.wire.ID, above.wire.Gauge, amps(above.amps), above.state, below.place, bothReasons(larger))
			f.Figure = Figure{What: "current of " + string(above.wire.ID), Value: unit.A(above.amps).Any()}
			if larger <= 0 {
				f.Severity = Caution
			}
		case above.rank == below.rank && larger > 0:
			f.Message = fmt.Sprintf("on %s %s, %s, lies under %s, %s; position %d counted from the seat: the larger lug belongs on the seat (common practice, no clause)",
				s.at, below.wire.ID, below.wire.Gauge, above.wire.ID, above.wire.Gauge, below.place)
		default:
			continue
		}
		p.report(f)
		return
	}
}

// bothReasons says what current and size each ask for; larger compares the outer conductor
// with the inner one.
func bothReasons(larger int) string {
	switch {
	case larger > 0:
		return "by its current and by its size (common practice, no clause) the outer one belongs further in"
	case larger == 0:
		return "of two of one size the one with more current belongs further in"
	}
	return "by its current the outer one belongs further in, by size alone (common practice, no clause) they lie right; the current decides"
}

// orderOf is the order in which lugs belong; wires of unknown size go outermost.
func orderOf(belongs []lug, unsized []model.WireID) []model.WireID {
	var order []model.WireID
	for _, l := range belongs {
		order = append(order, l.wire.ID)
	}
	return append(order, unsized...)
}

func idSubjects(ids []model.WireID) []Subject {
	var subjects []Subject
	for _, id := range ids {
		subjects = append(subjects, OfWire(id))
	}
	return subjects
}
