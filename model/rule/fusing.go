package rule

import (
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/protect"
)

// fusing is what the fusing rules share: where current enters, and which wires it
// loads beyond what they carry.
type fusing struct {
	entries  []network.Entry
	leads    []loaded // leads to devices, which carry less than what the devices at their end let through
	loaded   []loaded
	unsized  []pending
	unrated  []*network.Link // devices and sources whose rating is not recorded, and decides
	unclassd []pending
}

// loaded is a wire that carries less than what can persist in it.
type loaded struct {
	wire    *network.Link
	entry   *network.Entry // what loads it alone; nil if only all together do
	limits  []*network.Link
	amps    float64
	carries carrying
}

// pending are wires of one entry for which a datum is missing.
type pending struct {
	entry *network.Entry
	wires []*network.Link
}

// fusing compares every wire with what can persist in it, once. While the pack
// itself is misconnected there is nothing to compare: the fuses are at the wrong pole.
func (p *Pass) fusing() *fusing {
	if p.shared.fusing != nil {
		return p.shared.fusing
	}
	f := &fusing{}
	p.shared.fusing = f
	if p.misconnected() {
		return f
	}
	f.entries = p.protection().Entries()
	open := map[*network.Link][]*network.Entry{}
	for i := range f.entries {
		e := &f.entries[i]
		for _, l := range p.loadedWires(e) {
			open[l] = append(open[l], e)
		}
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if entries := open[l]; len(entries) > 0 && !p.exempt(l) {
			p.compare(f, l, entries)
		}
	}
	p.compareLeads(f)
	return f
}

// loadedWires are the wires that carry the current of an entry up to the next device. A
// short lead to a device is left out, for the device protects it, unless a source that
// limits itself feeds it: that has no device at its end. A longer one beside it counts.
func (p *Pass) loadedWires(e *network.Entry) []*network.Link {
	if e.Feed != nil && e.Feed.String == nil {
		return slices.Concat(e.Lead.Open, e.Lead.Leading)
	}
	wires := slices.Clone(e.Lead.Open)
	for _, l := range e.Lead.Leading {
		metres, known := p.Net.Length(l.Wire)
		if known && metres > conductor.AtSource.Within.Metres() && len(devicesBehind(e, l)) == 0 {
			wires = append(wires, l)
		}
	}
	return wires
}

// devicesBehind lists the devices that a lead is the way to.
func devicesBehind(e *network.Entry, l *network.Link) []*network.Link {
	var list []*network.Link
	for _, m := range e.Lead.Devices {
		if slices.Contains(m.Path, l) {
			list = append(list, m.Device)
		}
	}
	return list
}

// compareLeads judges the leads to devices by what the devices at their end let through
// together.
func (p *Pass) compareLeads(f *fusing) {
	told := map[*network.Link]bool{}
	for i := range f.entries {
		e := &f.entries[i]
		if e.Feed != nil && e.Feed.String == nil {
			continue
		}
		for _, l := range e.Lead.Leading {
			devices := devicesBehind(e, l)
			sum, known := p.ratedTogether(devices)
			if told[l] || !known || p.exempt(l) || e.Amps < sum {
				continue
			}
			told[l] = true
			if c := p.loadOf(l.Wire, sum, p.nominalAt(l)); c.load == over {
				at := &network.Entry{At: e.At, Amps: sum, Limits: devices, Lead: e.Lead}
				f.leads = append(f.leads, loaded{l, at, devices, sum, c})
			}
		}
	}
}

// ratedTogether is the sum of the ratings of devices; false if there is none, or one is not
// recorded.
func (p *Pass) ratedTogether(devices []*network.Link) (float64, bool) {
	sum := 0.0
	for _, d := range devices {
		rated, known := p.Net.Figure(d.Part, d.Element.Amps)
		if !d.Is(model.FuseElement) || !known {
			return 0, false
		}
		sum += rated
	}
	return sum, len(devices) > 0
}

// compare judges one wire by the entries that load it, and by its exposure to all of them
// together.
func (p *Pass) compare(f *fusing, l *network.Link, entries []*network.Entry) {
	for _, e := range entries {
		if e.IsUnrated() || math.IsInf(e.Amps, 1) {
			f.noteUnrated(e)
			return
		}
	}
	slices.SortStableFunc(entries, func(a, b *network.Entry) int { return int(math.Copysign(1, b.Amps-a.Amps)) })
	largest := entries[0]
	nominal := p.nominalAt(l)
	c := p.loadOf(l.Wire, largest.Amps, nominal)
	switch c.load {
	case unsized:
		f.unsized = wait(f.unsized, largest, l)
	case unclassed:
		f.unclassd = wait(f.unclassd, largest, l)
	case strained, over:
		f.loaded = append(f.loaded, loaded{l, largest, largest.Limits, largest.Amps, c})
	case carried:
		outline := p.guard().Outline(l)
		all := outline.Exposure
		if outline.Protected() == opening.Yes || len(all.Limits) < 2 || all.IsUnrated() || math.IsInf(all.Amps, 1) {
			return
		}
		if c := p.loadOf(l.Wire, all.Amps, nominal); c.load == over || c.load == strained && all.Amps > p.together(c) {
			f.loaded = append(f.loaded, loaded{l, nil, all.Limits, all.Amps, c})
		}
	}
}

// devicesAlone reports whether the fuses and breakers among some limits let more through
// than a wire carries, whatever the sources that limit themselves add.
func (p *Pass) devicesAlone(limits []*network.Link, c carrying) bool {
	sum := 0.0
	for _, l := range limits {
		if rated, known := p.Net.Figure(l.Part, l.Element.Amps); known && l.Is(model.FuseElement) {
			sum += rated
		}
	}
	return sum > strainLimit*c.amps
}

// noteUnrated keeps what an entry lacks. A battery with nothing behind it lacks
// nothing: other rules say that it is not fused.
func (f *fusing) noteUnrated(e *network.Entry) {
	limits := e.Limits
	if e.Feed != nil && e.Feed.String != nil && !e.IsUnrated() {
		return
	}
	for _, l := range limits {
		if !slices.Contains(f.unrated, l) {
			f.unrated = append(f.unrated, l)
		}
	}
}

func wait(list []pending, e *network.Entry, l *network.Link) []pending {
	for i := range list {
		if list[i].entry == e {
			list[i].wires = append(list[i].wires, l)
			return list
		}
	}
	return append(list, pending{e, []*network.Link{l}})
}

// exempt reports whether practice leaves a wire to something else than a fuse: the
// short leads of a resistor or diode that hangs on a stud, the motor leads of a cart with
// a controller, which limits their current, and the AC side of a charger. Common practice,
// no source.
func (p *Pass) exempt(l *network.Link) bool {
	hung, _ := protect.IsHungLead(p.Net, l)
	return hung || protect.IsMotorLead(p.Net, l) || p.isACLead(l)
}

// isACLead reports whether a wire belongs to the AC side of a charger, its protective earth
// included: it lands there, and nowhere else but on the frame.
func (p *Pass) isACLead(l *network.Link) bool {
	mains := false
	for _, e := range l.Wire.Ends() {
		t := p.Net.Cat.TerminalOf(p.Sheet, e.At)
		switch {
		case t == nil:
		case t.Serves == model.Mains:
			mains = true
		case t.Metal != model.FrameMetal:
			return false
		}
	}
	return mains
}

// isController tells a controller from other parts of the drive by its capacitor.
func isController(d *model.Definition) bool {
	return slices.ContainsFunc(d.Elements, func(e model.Element) bool { return e.Is == model.CapacitorElement })
}
