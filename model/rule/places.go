package rule

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/harness"
)

// ways is how the wires of the sheet lie along the runs of the job, in the order of the sheet.
func (p *Pass) ways() []harness.Wire {
	if p.shared.harness == nil {
		p.shared.harness = harness.Of(p.Job, p.Sheet)
	}
	return p.shared.harness.Wires
}

// wayOf is how one wire lies.
func (p *Pass) wayOf(id model.WireID) harness.Wire {
	if p.shared.lies == nil {
		p.shared.lies = map[model.WireID]*harness.Wire{}
		for i, w := range p.ways() {
			p.shared.lies[w.Wire.ID] = &p.ways()[i]
		}
	}
	if w := p.shared.lies[id]; w != nil {
		return *w
	}
	return harness.Wire{}
}

// hottest is the hottest temperature in C along a wire: of the zones that it passes, or of its
// ends if its way is not known, each by its own record or that of the job; 30 C, that of the
// ampacity table, if nobody recorded any.
func (p *Pass) hottest(w *model.Wire) float64 {
	celsius, _ := p.hottestZone(w)
	return celsius
}

// hottestZone is hottest with the zone that decides; empty if none does by its own record.
func (p *Pass) hottestZone(w *model.Wire) (celsius float64, zone model.ZoneID) {
	celsius = conductor.TableAmbient
	if !p.Job.Hottest.IsZero() {
		celsius = max(celsius, p.Job.Hottest.Degrees())
	}
	way := p.wayOf(w.ID)
	zones := way.Along
	if len(zones) == 0 {
		zones = []model.ZoneID{way.From, way.To}
	}
	all, base := true, celsius
	celsius = conductor.TableAmbient
	for _, id := range zones {
		z := p.Job.Zone(id)
		if z == nil || z.Hottest.IsZero() {
			all = false
			continue
		}
		if own := z.Hottest.Degrees(); own > celsius {
			celsius, zone = own, id
		}
	}
	if !all && base >= celsius {
		return base, ""
	}
	return celsius, zone
}
