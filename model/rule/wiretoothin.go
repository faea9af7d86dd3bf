package rule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

var wireTooThin = Rule{
	ID: "wire-too-thin", Title: "A wire gets hotter in use than its insulation stands",
	Family: Conductors, Severity: Fault,
	About: "Takes the worst current of each wire over all states, with the drive at its continuous rating for an hour after each peak; a " +
		"peak whose time is not recorded is taken for 30 s. Speaks if the conductor warms beyond its insulation class where it lies (30 C " +
		"unless the job or a zone says hotter), by its ampacity and a thermal time constant. A caution if typical ratings decide.",
	Why: "A wire is a heater: its warmth grows with the square of the current, so a third more current is nearly twice the heat. Copper stands " +
		"it, the jacket does not. It goes soft, then brittle, creeps away under ties and lugs, and one day the conductor lies bare on the frame " +
		"or on its neighbour. A short peak does little, for the copper must first warm up; what counts is the peak and the hour after it together. " +
		"The lug at the end of a hot wire gets hot too, loosens, and gets hotter still.",
	Tell: "Read the size on the jacket, or measure the bare copper: 4 AWG is 5.2 mm across the strands at the least, 2 AWG 6.5 mm. Drive up the " +
		"longest hill three times, stop and feel along the cable with the back of the hand: one that cannot be held for ten seconds is above 60 C. " +
		"A jacket that is shiny, stiff or shrunk back from its lug has been too hot before.",
	Blind: "Silent about the traction path of a cart without a controller: how long it takes its starting current is not known. The peak and " +
		"the hour after it are taken from the controller's ratings; a cart that tows or climbs all day is harder on its cables. Heat from a motor " +
		"or a brake beside the wire counts only if the zone's hottest temperature is recorded. A bad lug heats the wire as well: that is not seen here.",
	Bad:   "a pump of 55 A at the end of 12 AWG",
	Good:  "the same pump at the end of 6 AWG",
	Wrong: Example{Of: pumpCircuit, But: []string{"wire w3", "wire w3 sw.OUT pump.+ gauge=12AWG insulation=105C length=1m"}},
	Right: Example{Of: pumpCircuit},
	Basis: Basis{"a conductor does not get hotter than its insulation stands; its ampacity is the current that brings it there",
		"33 CFR 183.425 table 5 with note 1; the time constant from the copper's heat, IEC 60287 for the steady rise, from memory"},
	Remedy: "fit a thicker wire, or insulation of a higher class",
	Run:    runWireTooThin,
}

// pumpCircuit is a pump of 55 A on a pack of its own, wired as it should be.
const pumpCircuit = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=70A
part sw switch
part pump pump-motor current=55A
wire w1 pack.POS fu1.in gauge=6AWG insulation=105C length=150mm
wire w2 fu1.out sw.IN gauge=6AWG insulation=105C length=1m
wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m
wire w4 pump.- pack.NEG gauge=6AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu1.in cover=fitted`

// hot is a wire with what its current makes of it.
type hot struct {
	wire  *network.Link
	load  size.Load
	place float64 // C around it
	peak  float64 // C
	most  float64 // C that its insulation stands
	best  bool    // the insulation is not recorded, and the best class would not do
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
		key := fmt.Sprintf("%s %g %g %d", l.Wire.Gauge, h.most, h.place, len(h.load.Duty))
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
	h = hot{wire: l, load: p.currents().Load(l.Wire), place: p.hottest(l.Wire)}
	classes := []float64{l.Wire.Insulation.Degrees()}
	if classes[0] < worstClass {
		classes = []float64{worstClass, bestClass}
	}
	for i, class := range classes {
		fits := p.fitsAt(&h, l.Wire.Gauge, class)
		if fits {
			return h, i == 0, i == 0
		}
	}
	h.best = len(classes) > 1
	return h, false, true
}

// fitsAt judges the duty of a wire if it had a size and an insulation class. What no table
// covers fits, and what may not warm up at all is for another rule.
func (p *Pass) fitsAt(h *hot, gauge unit.Gauge, class float64) bool {
	cable, err := heat.Of(gauge, class, h.place)
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
		State:    h.load.State,
		Subjects: subjects,
		Figure:   Figure{What: "temperature of the conductor", Value: degrees(h.peak), Limit: degrees(h.most), Decides: "the insulation class"},
		Fixes:    p.thicker(g),
	}
	if h.place > conductor.TableAmbient {
		f.Message += fmt.Sprintf("; it lies in %s C", number(h.place))
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

// thicker is the edit that fits the thinnest size that stands the duty of all wires of a
// group, in the series of the wire there is; none if no size does, or if a wire shares its
// current with another beside it.
func (p *Pass) thicker(g []hot) []edit.Edit {
	for _, side := range p.parallels() {
		if slices.ContainsFunc(g, func(h hot) bool { return slices.Contains(side, h.wire) }) {
			return nil
		}
	}
	more := 1.0 // the current grows with what the wires do not lose any more
	for _, h := range g {
		ohms, _ := p.Net.WireOhms(h.wire)
		more += ohms * h.load.Amps / max(1, p.nominalAt(h.wire))
	}
	for _, gauge := range size.SeriesOf(g[0].wire.Wire.Gauge).Sizes() {
		fits := func(h hot) bool {
			h.load = raised(h.load, more)
			return p.fitsAt(&h, gauge, cmp.Or(h.wire.Wire.Insulation.Degrees(), size.DefaultInsulation))
		}
		if gauge.Compare(g[0].wire.Wire.Gauge) <= 0 || slices.ContainsFunc(g, func(h hot) bool { return !fits(h) }) {
			continue
		}
		var wires []Subject
		var edits []edit.Edit
		for _, h := range g {
			wires = append(wires, OfWire(h.wire.Wire.ID))
			edits = append(edits, p.setWire(h.wire.Wire.ID, "gauge", gauge.String()))
			if h.wire.Wire.Insulation.IsZero() {
				edits = append(edits, p.setWire(h.wire.Wire.ID, "insulation", degrees(size.DefaultInsulation).String()))
			}
		}
		return []edit.Edit{together(fmt.Sprintf("renew %s in %s", list(wires), gauge), edits...)}
	}
	return nil
}

// raised is a load of so many times the current.
func raised(load size.Load, times float64) size.Load {
	load.Amps *= times
	load.Duty = slices.Clone(load.Duty)
	for i := range load.Duty {
		load.Duty[i].Amps *= times
	}
	return load
}

// degrees is a temperature to the degree.
func degrees(celsius float64) unit.Any { return unit.C(math.Round(celsius)).Any() }

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
