package rule

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
)

var reducerSwapped = Rule{
	ID: "reducer-swapped", Title: "The output of a reducer is joined to the pack",
	Family: Polarity, Severity: Danger,
	About: "Traces the output of each reducer to the positive pole of the pack: input and output swapped, or OUT+ tied to " +
		"the pack. A negative that input and output share is as it should be.",
	Why: "The output of a reducer is built for 12 V: its capacitors are made for 16 or 25 V and its load is whatever hangs on the 12 V side. The pack's " +
		"50 V on that side bursts the capacitors, and a joint between OUT+ and the pack feeds every lamp and radio with four times its voltage, " +
		"past the reducer and past its fuse. Input and output leads of many reducers differ in nothing but a colour.",
	Tell: "Read the label and follow each lead by hand. Take input and output off the reducer, leave its fuse in, and measure volts DC on the cart's " +
		"ends of the leads, black probe on the negative: the pack's voltage belongs on the input's leads, 0 V on the output's. Do not use ohms " +
		"here: the pack stands on one of the two pairs.",
	Blind: "It traces contacts as closed: a relay that can join both supplies is called out even if no state closes it. A reducer that has failed " +
		"inside and passes its input through looks right on the sheet, and a charger for a 12 V battery on the output side is no pack and is not seen.",
	Bad:  "the reducer fuse goes to red.OUT+ and red.IN+ to the 12 V fuse block",
	Good: "the reducer fuse goes to red.IN+ and red.OUT+ to the 12 V fuse block",
	Wrong: Example{Of: packAndReducer, But: []string{"wire r2", "wire r2 fu4.out red.OUT+ gauge=12AWG insulation=105C length=800mm",
		"wire a1", "wire a1 red.IN+ fb.IN gauge=10AWG insulation=105C length=1m"}},
	Right:  Example{Of: packAndReducer},
	Upsets: []string{"over-voltage", "not-selective"},
	Basis:  Basis{"the full pack voltage destroys the 12 V output stage, and whatever hangs on the output", Physics},
	Remedy: "do not connect it; with the fuse out find the lead from the pack on the output side and move it to IN+",
	Run:    runReducerSwapped,
}

func runReducerSwapped(p *Pass) {
	if p.survey().packReversed {
		return
	}
	for _, out := range p.sides() {
		if out.feed.Link.Kind != network.OutputLink {
			continue
		}
		for _, pack := range p.sides() {
			if pack.feed.String == nil || !pack.feed.Whole {
				continue
			}
			on := network.None
			for _, at := range []network.Node{out.feed.At, out.feed.Return} {
				if pack.sides.Of(at) == network.Plus {
					on = at
				}
			}
			if on != network.None {
				id := out.feed.Link.Part.ID
				p.report(Finding{
					Message:  fmt.Sprintf("%s leads to %s: the output of %s is on the pack", p.at(on), p.at(pack.feed.At), id),
					Subjects: []Subject{OfPart(id), p.terminal(on)},
					Fixes:    p.inputForOutput(out.feed.Link, on, pack),
				})
				break
			}
		}
	}
}

// inputForOutput is the swap of what lands on the positive input and output of a reducer; none
// if its input is on the pack as well, for then a joint between them is the mistake.
func (p *Pass) inputForOutput(out *network.Link, on network.Node, pack feedSides) []edit.Edit {
	in := p.Net.Node(model.TerminalRef{Part: out.Part.ID, Name: out.Element.Between[0]})
	if on != out.A || pack.sides.Of(in) != network.Neither {
		return nil
	}
	return p.swapped(in, on)
}
