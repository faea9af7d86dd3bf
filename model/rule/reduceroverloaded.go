package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

var reducerOverloaded = Rule{
	ID: "reducer-overloaded", Title: "The loads of a reducer add up to more than it gives",
	Family: Supply, Severity: Fault,
	About: "Adds up, in each state of the controls and with all switches on besides, what the loads and coils on each reducer's output take by their figures, and compares the largest sum with the " +
		"output current of the reducer. A caution if the library's typical figures decide.",
	Why: "A reducer does not give more than it is built for: it lowers its voltage, or switches off and tries again every second. So lamps dim when the horn sounds, a radio restarts, and the relay " +
		"of the brake lamp chatters, all of it only with everything on, which nobody tries in the shop. Run at its limit in a closed bay it gets hot and its capacitors dry out in a year or two.",
	Tell: "Switch on everything that can be on at once, at night with the brake down and the horn pressed, and measure at the reducer's output: it must stay at its voltage. A clamp meter round the output lead " +
		"shows the sum.",
	Blind: "A load takes what its figure says at its own voltage. The inrush of filament lamps and motors, some times that for a moment, is not in it, nor what is plugged into a socket beyond the current recorded for it, " +
		"nor a second reducer behind the first. Loads whose current is not recorded are asked for and left out.",
	Bad:    "a 5 A stereo and a 5 A outlet on a reducer of 8 A",
	Good:   "the same on a reducer of 20 A",
	Wrong:  Example{Of: twoOnReducer, But: []string{"part red", "part red reducer-isolated output-current=8A"}},
	Right:  Example{Of: twoOnReducer},
	Basis:  Basis{"the loads that can be on at once are within what the supply gives for long", Practice},
	Remedy: "fit a larger reducer, or divide the loads between two",
	Run:    runReducerOverloaded,
}

func runReducerOverloaded(p *Pass) {
	if p.unsound() {
		return
	}
	for i := range p.sides() {
		if fs := &p.sides()[i]; fs.feed.Link.Kind == network.OutputLink {
			p.judgeSum(fs, p.loadsOn(fs))
		}
	}
}

// loadsOn lists the loads and coils across an output, and asks for the current of those that
// have no figure.
func (p *Pass) loadsOn(out *feedSides) []*network.Link {
	var list []*network.Link
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !takesPower(l) || l.Is(model.ConverterElement) || l.Part == out.feed.Link.Part {
			continue
		}
		if side := out.sides.Across(l.A, l.B); side != network.Plus && side != network.Minus {
			continue
		}
		if p.rated(l, out.feed.Nominal.Value) > 0 {
			list = append(list, l)
			continue
		}
		p.missing(Gap{Datum: "the current", Field: "current", Decides: "whether " + string(out.feed.Link.Part.ID) + " gives enough for all its loads",
			Worst: Fault, Quiet: true, Subjects: []Subject{OfPart(l.Part.ID)}})
	}
	return list
}

// demand is what some loads take of a reducer in one state.
type demand struct {
	state string
	on    []*network.Link
	amps  float64
	sure  float64 // of that, by figures that somebody read
}

// judgeSum compares the largest demand of all states with what an output gives.
func (p *Pass) judgeSum(out *feedSides, loads []*network.Link) {
	reducer := out.feed.Link
	gives := p.Net.KnownFigure(reducer.Part, reducer.Element.Amps)
	if len(loads) == 0 {
		return
	}
	if !gives.OK {
		p.missing(Gap{Datum: "the output current", Field: reducer.Element.Amps, Decides: "whether it gives enough for all its loads", Worst: Fault, Subjects: []Subject{OfPart(reducer.Part.ID)}})
		return
	}
	worst := p.worstDemand(out, loads)
	limit := p.limit(basis.ReducerLoad) * gives.Value
	if worst.amps <= limit*(1+rounding) {
		return
	}
	_, source := p.limitFrom(basis.ReducerLoad)
	f := Finding{
		Message: fmt.Sprintf("%s are asked of %s, which gives %s: %s", amps(worst.amps), reducer.Part.ID, amps(gives.Value), p.ratedList(worst.on, out.feed.Nominal.Value)),
		Figure:  Figure{What: "sum of the loads", Value: unit.A(worst.amps).Any(), Limit: unit.A(limit).Any(), Decides: "the output current of " + string(reducer.Part.ID)},
		State:   worst.state, Subjects: append([]Subject{OfPart(reducer.Part.ID)}, partsOf(worst.on)...),
		Basis: Basis{p.rule.Basis.Text, source},
	}
	if gives.IsTypical() || worst.sure <= limit {
		f.Severity = Caution
		f.Message += unconfirmed
	}
	p.report(f)
}

// worstDemand is the demand of the state in which the loads take most together.
func (p *Pass) worstDemand(out *feedSides, loads []*network.Link) demand {
	var worst demand
	for at, solution := range p.currents().Lasting() {
		now := demand{state: at.Name}
		for _, l := range loads {
			if v, known := solution.Voltage(l.A, l.B); !known || math.Abs(v) < leastVolts {
				continue
			}
			amperes := p.rated(l, out.feed.Nominal.Value)
			now.on = append(now.on, l)
			now.amps += amperes
			if !p.typical(l, l.Element.Amps) {
				now.sure += amperes
			}
		}
		if now.amps > worst.amps {
			worst = now
		}
	}
	return worst
}

// ratedList names loads with what they take, the first few.
func (p *Pass) ratedList(loads []*network.Link, at float64) string {
	var words []string
	for _, l := range loads {
		words = append(words, fmt.Sprintf("%s %s", l.Part.ID, smallAmps(p.rated(l, at))))
	}
	return listWords(words)
}

// twoOnReducer is a reducer with a stereo and an outlet, each behind its own fuse.
const twoOnReducer = `
part pack lithium-pack-16
part fu4 fuse-cartridge fuse-rating=10A
part red reducer-isolated output-current=20A
part key key-switch
part fb fuse-block-6-neg
part st stereo current=5A
part out outlet-12v current=5A
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.IN- pack.NEG gauge=12AWG insulation=105C length=800mm
wire k1 fu4.out key.BAT gauge=16AWG insulation=105C length=1m
wire k2 key.IGN red.WAKE gauge=18AWG insulation=105C length=1m
wire a1 red.OUT+ fb.IN gauge=10AWG insulation=105C length=500mm
wire a2 red.OUT- fb.NEG gauge=10AWG insulation=105C length=500mm
wire a3 fb.1 st.+ gauge=14AWG insulation=105C length=500mm
wire a4 st.- fb.NEG1 gauge=14AWG insulation=105C length=500mm
wire a5 fb.2 out.+ gauge=14AWG insulation=105C length=500mm
wire a6 out.- fb.NEG2 gauge=14AWG insulation=105C length=500mm
stack fu4.out r2 k1
at pack.POS cover=fitted
at fu4.in cover=fitted
`
