package support

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// PreCharge is how the capacitor behind a contactor fills before its contact closes.
type PreCharge struct {
	Line       model.TerminalRef `json:"line"`       // of the contact, toward the source
	Load       model.TerminalRef `json:"load"`       // of the contact, toward the capacitor
	Controller model.PartID      `json:"controller"` // with the capacitor
	Farads     float64           `json:"farads"`

	Paths  []Path  `json:"paths"`               // round the open contact
	State  string  `json:"state"`               // in which it fills
	Volts  float64 `json:"volts"`               // of the source at the contact, in that state
	Full   float64 `json:"full"`                // the same at the end of charge; as Volts if not known
	Left   float64 `json:"left"`                // volts across the open contact in the end
	LeftIn string  `json:"left_in"`             // state of the most volts left
	Fill   RC      `json:"fill"`                // as the capacitor sees it; empty without a path
	Cold   *RC     `json:"fill_cold,omitempty"` // the same while lamps are cold; nil without one

	Bridged bool    `json:"bridged,omitempty"`      // the paths resist next to nothing: the capacitor is always live
	Wait    float64 `json:"wait_seconds,omitempty"` // that the contact is taken to wait
	Waited  float64 `json:"left_after_wait"`        // volts across the open contact then

	Seconds5   float64 `json:"seconds_to_5_percent,omitempty"` // until the source is within 5 %
	Seconds2V  float64 `json:"seconds_to_2_volts,omitempty"`   // until the source is within 2 V
	Joules     float64 `json:"joules"`                         // that fill the capacitor, at the full voltage
	PeakWatts  float64 `json:"peak_watts,omitempty"`           // in all paths at the first moment, at the full voltage
	PeakAmps   float64 `json:"peak_amps,omitempty"`
	ClosedOhms float64 `json:"closed_ohms"` // of source, wires and contacts once the contact is closed
	Inrush     float64 `json:"inrush_amps"` // that the contact makes on what is left across it

	Judgements  []Judgement  `json:"judgements"`
	Assumptions []Assumption `json:"assumptions"`

	unknown []model.PartID // resistances round the contact that are not known
}

// After is the voltage across the open contact some seconds after an empty capacitor
// began to fill.
func (p PreCharge) After(seconds float64) float64 {
	if p.Fill.Tau() <= 0 {
		return p.Volts
	}
	return p.Volts - p.Fill.At(seconds)
}

// gap is a contactor's main contact with the capacitor that it keeps from the source.
type gap struct {
	contact, capacitor *network.Link
	line, load         network.Node
	other              network.Node // the capacitor's other terminal
}

// How long the contact is taken to wait: from connecting the battery to the first drive if
// the capacitor fills while the cart is parked, and from turning the key to the pedal if not.
// Our choice.
const (
	waitParked = 30
	waitKey    = 5
)

// preCharges looks at every contactor between a source and a capacitor.
func (d *desk) preCharges() []PreCharge {
	var list []PreCharge
	links := d.n.Links()
	for i := range links {
		if !links[i].Is(model.CapacitorElement) {
			continue
		}
		for k := range links {
			if links[k].Is(model.ContactElement) && links[k].Element.Coil != "" {
				if g, ok := d.gap(&links[k], &links[i]); ok {
					list = append(list, d.preCharge(g))
				} else if p, ok := d.bridged(&links[k], &links[i]); ok {
					list = append(list, p)
				}
			}
		}
	}
	return list
}

// waiting are the states in which a contact may wait to close.
var waiting = []string{state.Parked, state.KeyOn, state.ForwardPedalUp}

// before lists the states, as solved, in which a contact waits to close.
func (d *desk) before(contact *network.Link) []*network.Solution {
	var list []*network.Solution
	for _, name := range waiting {
		if s := d.at(name); s != nil && !s.On(contact) {
			list = append(list, s)
		}
	}
	return list
}

// gap tells whether a contact stands between a capacitor and a live source.
func (d *desk) gap(contact, capacitor *network.Link) (gap, bool) {
	for _, s := range d.before(contact) {
		metal := groups(d.n, s, contact)
		if metal.Same(capacitor.A, capacitor.B) || metal.Same(contact.A, contact.B) {
			continue
		}
		for _, pole := range [][2]network.Node{{capacitor.A, capacitor.B}, {capacitor.B, capacitor.A}} {
			for _, end := range [][2]network.Node{{contact.A, contact.B}, {contact.B, contact.A}} {
				g := gap{contact: contact, capacitor: capacitor, load: end[0], line: end[1], other: pole[1]}
				if metal.Same(g.load, pole[0]) && !metal.Same(g.line, pole[1]) && d.isAtSource(g.line, metal) && volts(s, g.line, g.other) > leftVolts {
					return g, true
				}
			}
		}
	}
	return gap{}, false
}

// isAtSource reports whether metal joins a node to either end of a string of batteries. The
// contact of a direction contactor, which turns the field of a motor behind the capacitor,
// is live through that motor alone: it fills nothing when it closes.
func (d *desk) isAtSource(at network.Node, metal *network.Groups) bool {
	return slices.ContainsFunc(d.whole(), func(f network.Feed) bool { return metal.Same(at, f.At) || metal.Same(at, f.Return) })
}

// volts is the size of a voltage, 0 if it is not certain.
func volts(s *network.Solution, a, b network.Node) float64 {
	v, _ := s.Voltage(a, b)
	return math.Abs(v)
}

func (d *desk) preCharge(g gap) PreCharge {
	b := &basis{n: d.n}
	p := PreCharge{Line: d.n.Point(g.line).At, Load: d.n.Point(g.load).At, Controller: g.capacitor.Part.ID}
	p.Farads, _ = b.figure(g.capacitor.Part, g.capacitor.Element.Farads)
	var filling *network.Solution
	for _, s := range append(d.before(g.contact), d.heldBack(g)...) {
		if filling != nil && len(p.Paths) > 0 {
			break
		}
		filling = s
		p.Paths, p.unknown = d.paths(g, s, b)
	}
	p.State, p.Volts = filling.State.Name, volts(filling, g.line, g.other)
	p.Full = p.Volts
	if full, ok := d.fullVolts(); ok {
		p.Full = max(full, p.Volts)
	}
	p.Joules = Joules(p.Farads, p.Full)
	p.Left, p.Waited, p.LeftIn = p.Volts, p.Volts, p.State
	if len(p.Paths) > 0 {
		d.fill(&p, g, filling)
		p.wait(b)
	}
	d.closing(&p, g, filling, b)
	d.judgePreCharge(&p, g, filling, b)
	p.Assumptions = b.lines
	return p
}

// paths lists the ways round an open contact in a state, and the resistances on others that
// are not known.
func (d *desk) paths(g gap, s *network.Solution, b *basis) (paths []Path, unknown []model.PartID) {
	metal := groups(d.n, s, g.contact)
	search := bypass{n: d.n, metal: metal, to: metal.Of(g.load), off: metal.Of(g.other), basis: b}
	search.search(metal.Of(g.line), nil, map[int]bool{})
	part := g.capacitor.Part
	if ohms, _ := b.figure(part, "precharge-resistance"); ohms > 0 && volts(s, d.inside(g), g.other) > leftVolts {
		search.found = append(search.found, Path{Parts: []model.PartID{part.ID}, Ohms: ohms, Inside: true})
	}
	return search.found, search.unknown
}

// inside is the node from which a controller fills itself: its key input, or else its own
// supply before the contact.
func (d *desk) inside(g gap) network.Node {
	if at := d.n.Node(model.TerminalRef{Part: g.capacitor.Part.ID, Name: "KSI"}); at != network.None {
		return at
	}
	return g.line
}

// fill computes how the capacitor fills over the paths. The resistance that it sees follows
// from its voltage with and without a trial load, so that all that draws from it counts.
func (d *desk) fill(p *PreCharge, g gap, s *network.Solution) {
	p.Fill = d.seen(p, g, s)
	p.Left, p.LeftIn = max(0, p.Volts-p.Fill.Volts), p.State
	for _, later := range d.before(g.contact) {
		left := volts(later, g.line, g.other) - d.seen(p, g, later).Volts
		if paths, _ := d.paths(g, later, &basis{n: d.n}); left > p.Left+leftVolts && len(paths) > 0 {
			p.Left, p.LeftIn = left, later.State.Name
		}
	}
	hot, cold := parallel(p.Paths, false), parallel(p.Paths, true)
	if cold < hot {
		p.Cold = &RC{Ohms: p.Fill.Ohms * cold / hot, Farads: p.Farads, Volts: p.Fill.Volts}
	}
	p.Seconds5, _ = p.Fill.Reaches((1 - leftShare) * p.Volts)
	p.Seconds2V, _ = p.Fill.Reaches(p.Volts - leftVolts)
	p.PeakAmps = p.Full / cold
	p.PeakWatts = p.Full * p.PeakAmps
}

// wait computes what is left across the contact after the usual wait.
func (p *PreCharge) wait(b *basis) {
	p.Waited = p.Left
	if p.Farads <= 0 {
		return
	}
	p.Wait = waitKey
	words := "the contact is taken to close %g s after the key is turned (our choice)"
	if p.State == state.Parked {
		p.Wait, words = waitParked, "the contact is taken to close %g s after the battery is connected (our choice)"
	}
	b.assume(string(p.Line.Part), fmt.Sprintf(words, p.Wait))
	p.Waited = max(p.Left, p.After(p.Wait))
}

// seen is the source that a capacitor sees in a state with the contact open.
func (d *desk) seen(p *PreCharge, g gap, s *network.Solution) RC {
	var bridges []network.Bridge
	for _, path := range p.Paths {
		if path.Inside {
			bridges = append(bridges, network.Bridge{A: d.inside(g), B: g.capacitor.A, Ohms: path.Ohms})
		}
	}
	open := network.Change{Link: g.contact, Open: true}
	idle, err := d.n.SolveWith(s.State, network.Variation{Changes: []network.Change{open}, Bridges: bridges})
	if err != nil {
		return RC{}
	}
	trial := 10 * parallel(p.Paths, false)
	bridges = append(bridges, network.Bridge{A: g.capacitor.A, B: g.capacitor.B, Ohms: trial})
	loaded, err := d.n.SolveWith(s.State, network.Variation{Changes: []network.Change{open}, Bridges: bridges})
	if err != nil {
		return RC{}
	}
	steady, under := volts(idle, g.capacitor.A, g.capacitor.B), volts(loaded, g.capacitor.A, g.capacitor.B)
	if under == 0 {
		return RC{}
	}
	return RC{Ohms: trial * (steady - under) / under, Farads: p.Farads, Volts: steady}
}

// closing computes the current that the contact makes: what is left across it over the
// resistance of source, wires and contacts.
func (d *desk) closing(p *PreCharge, g gap, s *network.Solution, b *basis) {
	const short = 1e-6
	solved, err := d.n.SolveWith(s.State, network.Variation{
		Changes: []network.Change{{Link: g.contact, Closed: true}},
		Bridges: []network.Bridge{{A: g.capacitor.A, B: g.capacitor.B, Ohms: short}},
	})
	if err != nil || solved.BridgeCurrent(0) == 0 {
		return
	}
	links := d.n.Links()
	var path []*network.Link
	for i := range links {
		if math.Abs(solved.Current(&links[i])) > math.Abs(solved.BridgeCurrent(0))/10 {
			path = append(path, &links[i])
		}
	}
	b.wires(path)
	p.ClosedOhms = p.Volts / math.Abs(solved.BridgeCurrent(0))
	p.Inrush = p.Waited / p.ClosedOhms
}
