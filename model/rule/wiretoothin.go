package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/size"
)

var wireTooThin = Rule{
	ID: "wire-too-thin", Title: "A wire gets hotter in use than its insulation stands",
	Family: Conductors, Severity: Fault,
	About: "Takes the worst current of each wire over all states, with the drive at its continuous rating for an hour after each peak; a " +
		"peak whose time is not recorded is taken for 30 s. Speaks if the conductor warms beyond its insulation class in 30 C, by its " +
		"ampacity and a thermal time constant. A caution if typical ratings decide. Silent about the traction path of a cart without a " +
		"controller: how long it takes its starting current is not known.",
	Bad:  "a drive of 200 A for an hour and 400 A for 30 s over 6 AWG of 105 C",
	Good: "the same drive over 2/0 AWG",
	Basis: Basis{"a conductor does not get hotter than its insulation stands; its ampacity is the current that brings it there",
		"33 CFR 183.425 table 5 with note 1; the time constant from the copper's heat, IEC 60287 for the steady rise"},
	Remedy: "fit a thicker wire, or insulation of a higher class",
	Run:    runWireTooThin,
}

// hot is a wire with what its current makes of it.
type hot struct {
	wire *network.Link
	load size.Load
	peak float64 // C
	most float64 // C that its insulation stands
	best bool    // the insulation is not recorded, and the best class would not do
}

func runWireTooThin(p *Pass) {
	if p.unsound() {
		return
	}
	var groups [][]hot
	place := map[string]int{}
	var unclassed []Subject
	controlled := slices.ContainsFunc(p.Net.Links(), func(l network.Link) bool { return p.isDriveLoad(&l) })
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if l.Kind != network.WireLink || l.Wire.Gauge.IsZero() || !controlled && p.traction(l) {
			continue
		}
		h, fits, known := p.warms(l)
		switch {
		case fits:
			continue
		case !known:
			unclassed = append(unclassed, OfWire(l.Wire.ID))
			continue
		}
		key := fmt.Sprintf("%s %g %d", l.Wire.Gauge, h.most, len(h.load.Duty))
		at, there := place[key]
		if !there {
			at = len(groups)
			place[key] = at
			groups = append(groups, nil)
		}
		groups[at] = append(groups[at], h)
	}
	for _, g := range groups {
		p.reportHot(g)
	}
	if len(unclassed) > 0 {
		p.missing(Gap{Datum: "the insulation class", Field: "insulation", Decides: "whether the wire stands what flows in it", Worst: Fault, Subjects: unclassed})
	}
}

// warms finds how warm a wire gets; known is false if the insulation class decides and is
// not recorded.
func (p *Pass) warms(l *network.Link) (h hot, fits, known bool) {
	h = hot{wire: l, load: p.currents().Load(l.Wire)}
	classes := []float64{l.Wire.Insulation.Degrees()}
	if classes[0] < worstClass {
		classes = []float64{worstClass, bestClass}
	}
	for i, class := range classes {
		fits := p.fitsAt(&h, class)
		if fits {
			return h, i == 0, i == 0
		}
	}
	h.best = len(classes) > 1
	return h, false, true
}

// fitsAt judges the duty of a wire at an insulation class. What no table covers fits.
func (p *Pass) fitsAt(h *hot, class float64) bool {
	cable, err := heat.Of(h.wire.Wire.Gauge, class, conductor.TableAmbient)
	if err != nil {
		return true
	}
	nominal := p.nominalAt(h.wire)
	bundled := p.guard().Outline(h.wire).Capacity.Bundled
	cable = cable.Bundled(conductor.BundleFactor(bundled, nominal))
	duty := h.load.Duty
	if len(duty) == 0 {
		duty = heat.Duty{{Amps: h.load.Amps, Seconds: heat.Settling}}
	}
	v, err := cable.Judge(duty)
	h.peak, h.most = v.Peak, cable.Limit
	return err != nil || v.Fits
}

// reportHot reports wires of one size by the one that gets hottest.
func (p *Pass) reportHot(g []hot) {
	h := slices.MaxFunc(g, func(a, b hot) int { return cmp.Compare(a.peak, b.peak) })
	subjects := []Subject{OfWire(h.wire.Wire.ID)}
	for _, x := range g {
		subjects = appendNew(subjects, OfWire(x.wire.Wire.ID))
	}
	flows := amps(h.load.Amps) + " for long"
	if len(h.load.Duty) > 1 {
		flows = fmt.Sprintf("%s for %s s and then %s for an hour", amps(h.load.Duty[0].Amps), number(h.load.Duty[0].Seconds), amps(h.load.Amps))
	}
	stands := "its insulation stands"
	if h.best {
		stands = "the best insulation stands"
	}
	f := Finding{
		Message: fmt.Sprintf("%s, %s, warms to %.0f C with %s (%s); %s %s C",
			h.wire.Wire.ID, h.wire.Wire.Gauge, h.peak, flows, h.load.State, stands, number(h.most)),
		Subjects: subjects,
	}
	if len(subjects) > 1 {
		f.Message += "; too hot as well: " + list(subjects[1:])
	}
	if len(h.load.Assumed) > 0 {
		f.Message += "; taken: " + strings.Join(h.load.Assumed, ", ")
	}
	if p.drivesByMemory(h.load) {
		f.Severity = Caution
		f.Message += unconfirmed
	}
	p.report(f)
}

// drivesByMemory reports whether the current of a driving state rests on a rating that
// nobody read off a controller's label.
func (p *Pass) drivesByMemory(load size.Load) bool {
	if !strings.Contains(load.State, "driv") {
		return false
	}
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; p.isDriveLoad(l) && p.typical(l, l.Element.Amps) {
			return true
		}
	}
	return false
}

// isDriveLoad reports whether a link is the load by which a controller takes its current.
func (p *Pass) isDriveLoad(l *network.Link) bool {
	return l.Is(model.LoadElement) && l.Def.Family == model.Drive && isController(l.Def) && l.Element.Amps != "" && len(l.Element.Fed) > 0
}
