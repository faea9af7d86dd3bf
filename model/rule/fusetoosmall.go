package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

var fuseTooSmall = Rule{
	ID: "fuse-too-small", Title: "A fuse is smaller than the load it carries",
	Family: Protection, Severity: Fault,
	About: "Takes what flows through each fuse and breaker in the worst of all states, with everything on that may be on. Speaks if it is more for long " +
		"than the rating allows, the house rule leaves a fifth of it free, or if a drive's peak lasts longer than the times known of " +
		"the device let it hold. A caution if typical figures or times from memory decide.",
	Why: "A fuse that is too small is no danger by itself. It opens on the steepest hill or with all lamps on, the cart stands there, and the next person " +
		"fits the size that holds: the largest in the box. Long before, a fuse near its limit is hot: its holder goes brown, its clips lose " +
		"their spring, and then it opens at half its rating.",
	Tell: "Switch everything on that hangs on the fuse and put a clamp meter for DC round its wire: the reading must stay below the number on the " +
		"fuse. Feel the holder after ten minutes. A fuse whose element has sagged in the middle was overloaded; one that is blown black was " +
		"shorted.",
	Blind: "From 135 % of the rating on another rule speaks, for then it surely opens. Knows the lasting current of loads, not their inrush; of a drive it knows continuous and peak ratings, and takes 30 s where nobody recorded " +
		"the time of the peak. It speaks of a peak only if the device has surely opened by then: what its times leave open goes unsaid, and so does a " +
		"typical rating against typical ratings of a drive, which it asks for. A hot place takes some off a fuse; " +
		"the base table does not count that, the house rule does.",
	Bad:   "a 25 A fuse feeds a pump that takes 29 A",
	Good:  "a 40 A fuse feeds the pump over a wire that allows it",
	Wrong: Example{Of: fusedPump, But: []string{"part fu3", "part fu3 fuse-cartridge fuse-rating=25A"}},
	Right: Example{Of: fusedPump},
	Basis: Basis{"a device carries the load of its circuit for ever and its peaks for their time; for loads that last the NEC asks 125 %",
		"common practice; NEC 210.20(A)"},
	Remedy: "fit the next size that carries the load if the wire allows it; else a thicker wire first, or fewer loads on the fuse",
	Run:    runFuseTooSmall,
}

// fusedPump is a pump with its fuse.
const fusedPump = `part pack lithium-pack-16
part fu3 fuse-cartridge fuse-rating=40A
part sw switch continuous-current=40A voltage-rating=80V
part pump pump-motor current=27A
wire y1 pack.POS fu3.in gauge=10AWG insulation=105C length=100mm
wire y2 fu3.out sw.IN gauge=10AWG insulation=105C length=2m
wire y3 sw.OUT pump.+ gauge=10AWG insulation=105C length=1m
wire y4 pump.- pack.NEG gauge=10AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu3.in cover=fitted`

func runFuseTooSmall(p *Pass) {
	if p.unsound() {
		return
	}
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.FuseElement) || p.startsBare(l.A) {
			continue
		}
		if _, opens := p.opening()[l]; opens {
			continue // fuse-opens speaks
		}
		if rated := p.Net.KnownFigure(l.Part, l.Element.Amps); rated.OK {
			p.judgeLoad(l, rated)
		}
	}
}

// judgeLoad holds what flows through a device against its rating, and its peaks against its
// times.
func (p *Pass) judgeLoad(l *network.Link, rated network.Known) {
	load := p.worstThrough(l)
	most := p.limit(basis.FuseLoad) * rated.Value
	f := Finding{Subjects: []Subject{p.deviceSubject(l)}}
	vague := rated.IsTypical()
	if load.Amps > most*(1+goodTo) {
		f.Message = fmt.Sprintf("%s carries %s for long (%s)", p.nameOf(l), amps(load.Amps), load.State)
		f.Figure = Figure{What: "lasting current", Value: unit.A(load.Amps).Any(), Limit: unit.A(most).Any(), Decides: "the rating of " + p.nameOf(l)}
		if most < rated.Value {
			f.Message += fmt.Sprintf("; %s is the most", amps(most))
		}
	} else if stage, band, opens := opensBy(load.Duty, rated.Value, p.guard().Curve(l)); opens {
		f.Message = fmt.Sprintf("%s has opened within %s s at %s, which the drive takes for %s s", p.nameOf(l), number(band.Most), amps(stage.Amps), number(stage.Seconds))
		f.Figure = Figure{What: "time of the peak", Value: unit.S(stage.Seconds).Any(), Limit: unit.S(band.Most).Any(), Decides: band.Source}
		vague = vague || band.Recalled || len(load.Assumed) > 0
	} else {
		return
	}
	switch drive := p.drawnByMemory(load); {
	case rated.IsTypical() && drive:
		p.missing(Gap{Datum: "the rated current", Field: l.Element.Amps, Decides: "whether it carries " + amps(load.Amps), Worst: Fault, Quiet: true, Subjects: []Subject{p.deviceSubject(l)}})
		return
	case vague || drive:
		f.Severity = Caution
		f.Message += p.taken(load) + unconfirmed
	}
	if fix, ok := p.largerFuse(l, load.Amps); ok {
		f.Fixes = []edit.Edit{fix}
	}
	p.report(f)
}

// mostlyDrive is the share of a drive's continuous rating from which a load is said to be the
// drive's. Our choice.
const mostlyDrive = 0.5

// drawnByMemory reports whether a load is that of a drive whose rating nobody read off its label.
func (p *Pass) drawnByMemory(load size.Load) bool {
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !p.isDriveLoad(l) {
			continue
		}
		if rated := p.Net.KnownFigure(l.Part, l.Element.Amps); rated.IsTypical() && load.Amps >= mostlyDrive*rated.Value {
			return true
		}
	}
	return false
}

// taken says what was assumed of a load.
func (p *Pass) taken(load size.Load) string {
	if len(load.Assumed) == 0 {
		return ""
	}
	return "; taken: " + strings.Join(load.Assumed, ", ")
}

// opensBy is the first stage of a duty that lasts longer than a device is sure to hold, with
// its times.
func opensBy(d heat.Duty, rated float64, c opening.Curve) (heat.Stage, opening.Band, bool) {
	for _, s := range d {
		if s.Amps <= rated {
			continue
		}
		if b := c.Band(s.Amps); b.Known && b.Most < s.Seconds {
			return s, b, true
		}
	}
	return heat.Stage{}, opening.Band{}, false
}

// largerFuse fits the next standard size that carries a load; false if a wire that the device
// limits does not allow it, or if peaks decide.
func (p *Pass) largerFuse(l *network.Link, load float64) (edit.Edit, bool) {
	rated, _ := p.Net.Figure(l.Part, l.Element.Amps)
	next, made := conductor.FuseAtLeast(load / p.limit(basis.FuseLoad))
	if !made || next.Amperes <= rated {
		return nil, false
	}
	for i := range p.Net.Links() {
		w := &p.Net.Links()[i]
		if w.Kind != network.WireLink {
			continue
		}
		c := p.guard().Outline(w)
		if !slices.Contains(c.Exposure.Limits, l) {
			continue
		}
		most, known := p.fuseLimitAt(w, c.Nominal)
		if !known || c.Exposure.IsUnrated() || c.Exposure.Amps-rated+next.Amperes > most {
			return nil, false
		}
	}
	return p.rate(l.Part.ID, l.Element.Amps, unit.A(next.Amperes).Any()), true
}
