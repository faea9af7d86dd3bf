package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var wideLoop = Rule{
	ID: "wide-loop", Title: "Positive and negative of a drive run apart",
	Family: Conductors, Severity: Note,
	About: "Follows the positive and the negative of each controller to the string, zone by zone along the runs, and adds up the runs that only one of the two takes. Speaks if that is more than " +
		"1 m, unless the job has another limit.",
	Why: "A controller takes its current in chops, thousands a second. Two cables close to each other undo each other's field; two that part company are a coil round whatever lies between. " +
		"The chops then put voltage into the signal leads in the loop, kick back at the controller's capacitors and warm them, and are heard in the radio.",
	Tell: "Follow both cables by hand from the pack to the controller: they should be tied together, or lie in the same run, but for the last hand's breadth. A throttle or meter that twitches under " +
		"load, and no longer when its lead is moved by hand, lies in the loop.",
	Blind: "It needs the zones of the parts and the runs between them; without them it is silent. Cables in the same run count as side by side, though they may lie at its two edges. Loops of " +
		"chargers and reducers are not judged: their current is steady.",
	Bad:  "the positive goes straight to the bay, the negative round by a post in the dash",
	Good: "both in the same run",
	Wrong: Example{Of: pairedMains, But: []string{"wire w3", "wire w3 ctrl.B- post.POST gauge=2AWG insulation=105C",
		"+", "part post bus-post zone=dash", "+", "wire w4 post.POST pack.NEG gauge=2AWG insulation=105C", "+", "stack post.POST w3 w4"}},
	Right:  Example{Of: pairedMains},
	Basis:  Basis{"the field of a pair of conductors falls with their distance, and what they induce grows with the area between them", "follows from the circuit: induction; 1 m is common practice, no source"},
	Remedy: "lead the two side by side and tie them together",
	Run:    runWideLoop,
}

// pairedMains is a drive whose mains lie in one run.
const pairedMains = `
part pack lithium-pack-16 zone=tray
part fu1 fuse-class-t fuse-rating=200A zone=tray
part ctrl controller-series continuous-current=100A peak-current=200A zone=bay
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out ctrl.B+ gauge=2AWG insulation=105C
wire w3 ctrl.B- pack.NEG gauge=2AWG insulation=105C
run tray bay 0.7m
run tray dash 1.4m
run dash bay 1.8m
at pack.POS cover=fitted
at fu1.in cover=fitted`

// leg is a run between two zones, by name.
type leg [2]model.ZoneID

func runWideLoop(p *Pass) {
	low, high, ok := p.Net.Poles()
	if !ok || p.unsound() {
		return
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.CapacitorElement) || l.Def.Family != model.Drive {
			continue
		}
		there, okThere := p.legsTo(l.A, high)
		back, okBack := p.legsTo(l.B, low)
		if okThere && okBack {
			p.judgeLoop(l, there, back)
		}
	}
}

// legs are the runs of one way, with the wires in them.
type legs struct {
	runs  []leg
	wires []Subject
}

// legsTo are the runs along the way from a node to another through what conducts; false if
// there is no way or the way of a wire is not known.
func (p *Pass) legsTo(from, to network.Node) (legs, bool) {
	reach := p.Net.Walk([]network.Node{from}, func(l *network.Link, _ network.Node) bool { return l.Conducts() || l.Firm() })
	if !reach.Has(to) {
		return legs{}, false
	}
	var way legs
	for _, l := range reach.Path(to) {
		if l.Wire == nil {
			continue
		}
		along := p.wayOf(l.Wire.ID).Along
		if len(along) == 0 {
			return legs{}, false
		}
		way.wires = append(way.wires, OfWire(l.Wire.ID))
		for i := range along[1:] {
			r := leg{along[i], along[i+1]}
			slices.Sort(r[:])
			if !slices.Contains(way.runs, r) {
				way.runs = append(way.runs, r)
			}
		}
	}
	return way, true
}

// judgeLoop compares the ways of positive and negative.
func (p *Pass) judgeLoop(l *network.Link, there, back legs) {
	limit, source := p.limitFrom(basis.LoopDistance)
	onlyThere, metresThere, okThere := p.without(there, back)
	onlyBack, metresBack, okBack := p.without(back, there)
	apart := metresThere + metresBack
	if !okThere || !okBack || apart <= limit.SI() {
		return
	}
	words := func(runs []string) string {
		if len(runs) == 0 {
			return "nowhere else"
		}
		return "along " + strings.Join(runs, " and ")
	}
	p.report(Finding{
		Message: fmt.Sprintf("positive and negative of %s run apart: %s %s %s, %s %s; %s in all, %s is the most",
			l.Part.ID, list(there.wires), goesOrGo(len(there.wires)), words(onlyThere), list(back.wires), words(onlyBack), metres(apart), limit),
		Subjects: appendNew(append([]Subject{OfPart(l.Part.ID)}, there.wires...), back.wires...),
		Figure:   Figure{What: "length that the two do not share", Value: unit.LengthFromMetres(apart).Any(), Limit: limit, Decides: source},
	})
}

// without is the runs of one way that the other does not take, in words and metres.
func (p *Pass) without(one, other legs) (runs []string, metres float64, ok bool) {
	for _, r := range one.runs {
		if slices.Contains(other.runs, r) {
			continue
		}
		length, known := p.Job.RunLength(r[0], r[1])
		if !known {
			return nil, 0, false
		}
		runs = append(runs, fmt.Sprintf("%s-%s", r[0], r[1]))
		metres += length.Metres()
	}
	return runs, metres, true
}
