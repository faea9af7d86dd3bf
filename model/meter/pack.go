package meter

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// pack is the voltage of the batteries as an input. If somebody read the poles of the
// pack, the batteries are taken to have what was read, within the meter's accuracy;
// else anything between nominal and full is possible.
func (b *Bench) pack() input {
	var sources []*network.Link
	links := b.n.Links()
	for i := range links {
		if links[i].Is(model.SourceElement) {
			sources = append(sources, &links[i])
		}
	}
	if len(sources) == 0 {
		return input{}
	}
	r, ratio, against := b.measured()
	if r != nil {
		off := b.By.Off(unit.Voltage, r.Value.SI()) / math.Abs(r.Value.SI())
		in := input{why: fmt.Sprintf("the pack as read: %s on %s", r.Value, r.Where()) + against, always: against != ""}
		for _, l := range sources {
			b.base.Changes = merge(b.base.Changes, []network.Change{{Link: l, Scale: ratio}})
			in.high = append(in.high, network.Change{Link: l, Scale: 1 + off})
		}
		return in
	}
	in := input{why: "charge of the pack is not known: no reading of its poles is recorded", ranged: true}
	if against != "" {
		in.why, in.always = "charge of the pack is not known"+against, true
	}
	for _, l := range sources {
		rest, ok := b.n.Figure(l.Part, l.Element.Volts)
		if !ok || rest <= 0 {
			continue
		}
		high, low := rest, rest
		if full, ok := b.n.Figure(l.Part, l.Element.MaxVolts); ok {
			high = max(high, full)
		}
		if nominal, ok := b.n.Figure(l.Part, network.NominalRating); ok {
			low = min(low, nominal)
		}
		in.high = append(in.high, network.Change{Link: l, Scale: high / rest})
		in.low = append(in.low, network.Change{Link: l, Scale: low / rest})
	}
	return in
}

// emptyShare is the share of the volts that a sheet gives below which no charge explains a
// reading of the poles: such a pack is reversed, tripped or not the one on the sheet. Our
// choice; a battery that gives current has more even when it is flat.
const emptyShare = 0.5

// measured finds the latest reading of the poles of the pack, taken on this sheet at rest,
// and by what the figures of the batteries are to be multiplied for it to come out; nil if
// there is none. A reading that no charge explains is not taken for it; against says so.
func (b *Bench) measured() (taken *model.Reading, ratio float64, against string) {
	low, high, ok := b.n.Poles()
	if !ok {
		return nil, 0, ""
	}
	metal := b.n.MetalGroups() // a fuse between may have blown
	readings := b.n.Job().Readings
	for i := len(readings) - 1; i >= 0; i-- {
		r := &readings[i]
		if r.Sheet != b.n.Sheet.Name || r.Dimension() != unit.Voltage {
			continue
		}
		red, black := b.n.Node(r.Red), b.n.Node(r.Black)
		if red == network.None || black == network.None {
			continue
		}
		straight := metal.Same(red, high) && metal.Same(black, low)
		if !straight && !(metal.Same(red, low) && metal.Same(black, high)) {
			continue
		}
		ratio, ok := b.ratio(r, red, black)
		switch {
		case !ok:
		case ratio >= emptyShare:
			return r, ratio, against
		case against == "":
			against = fmt.Sprintf("; the reading of its poles, %s on %s, contradicts the sheet and is not used: the pack is reversed, tripped or another", r.Value, r.Where())
		}
	}
	return nil, 0, against
}

// ratio is what was read over what is computed in the state of the reading; false for a
// state in which the pack is not at rest, or gives nothing.
func (b *Bench) ratio(r *model.Reading, red, black network.Node) (float64, bool) {
	s, ok := state.Find(b.n.States(), r.State)
	if !ok || Must(s) == Drive {
		return 0, false
	}
	if at, _ := s.Position(model.PluggedIn); at == "yes" {
		return 0, false
	}
	solved, err := b.n.Solve(s)
	if err != nil {
		return 0, false
	}
	volts, known := solved.Voltage(red, black)
	if !known || math.Abs(volts) <= negligible {
		return 0, false
	}
	return r.Value.SI() / volts, true
}
