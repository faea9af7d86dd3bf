package rule

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
)

// judgeSeen reports the devices that no tracing puts across a source, and that find too much in
// some state all the same: through a diode, a coil or another load.
func (p *Pass) judgeSeen() {
	if p.unsound() {
		return
	}
	traced := map[model.PartID]bool{}
	for _, fed := range p.fedDevices() {
		traced[fed.link.Part.ID] = true
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !p.comparable(l) || l.Is(model.CoilElement) || traced[l.Part.ID] {
			continue
		}
		made, limit, ok := p.mostFor(l)
		if most, at := p.mostSeen(l); ok && most > limit && p.isStiff(l, at, limit) {
			traced[l.Part.ID] = true
			p.reportSeen(l, most, at, made)
		}
	}
}

// mostFor is the figure that a device is made for and the voltage above which it suffers: what it
// stands, if that was read off it, else grossly more than the library's figure or the nominal one.
func (p *Pass) mostFor(l *network.Link) (made, limit float64, ok bool) {
	stands := p.Net.KnownFigure(l.Part, l.Element.MaxVolts)
	nominal := p.Net.KnownFigure(l.Part, l.Element.Volts)
	switch grossly := p.limit(basis.GrossVoltage); {
	case stands.OK && !stands.IsTypical():
		return stands.Value, stands.Value, true
	case stands.OK:
		return stands.Value, grossly * stands.Value, true
	case nominal.OK && l.Is(model.LoadElement):
		return nominal.Value, grossly * nominal.Value, true
	}
	return 0, 0, false
}

// mostSeen is the highest voltage over a device in any state, either way round.
func (p *Pass) mostSeen(l *network.Link) (most float64, at state.State) {
	for _, s := range p.solved() {
		if v, ok := s.solution.Voltage(l.A, l.B); ok && math.Abs(v) > most {
			most, at = math.Abs(v), s.state
		}
	}
	return most, at
}

// probeOhms loads a device so that what merely leaks to it is not taken for a voltage that
// harms. Our choice.
const probeOhms = 10e3

// isStiff reports whether a voltage above a limit stays under the load of the probe.
func (p *Pass) isStiff(l *network.Link, at state.State, limit float64) bool {
	loaded, err := p.Net.SolveWith(at, network.Variation{Bridges: []network.Bridge{{A: l.A, B: l.B, Ohms: probeOhms}}})
	if err != nil {
		return false
	}
	v, ok := loaded.Voltage(l.A, l.B)
	return ok && math.Abs(v) > limit
}

func (p *Pass) reportSeen(l *network.Link, most float64, at state.State, made float64) {
	f := Finding{
		State: at.Name,
		Message: fmt.Sprintf("%s finds %s in the state %s and is made for %s: by no source of its own, but through a diode, a coil or another load",
			l.Part.ID, volts(most), at.Name, volts(made)),
		Figure:   Figure{What: "voltage at " + string(l.Part.ID), Value: unit.V(most).Any(), Limit: unit.V(made).Any(), Decides: "what it is made for"},
		Subjects: []Subject{OfPart(l.Part.ID)},
	}
	if most < p.limit(basis.GrossVoltage)*made {
		f.Severity = Fault
	}
	p.report(f)
}
