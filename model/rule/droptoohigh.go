package rule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

var dropTooHigh = Rule{
	ID: "drop-too-high", Title: "A load loses too much voltage on the way",
	Family: Conductors, Severity: Caution,
	About: "Follows the current of each load to its source and back in the state in which it loses most, and tells what each length of " +
		"copper, joint, contact and fuse takes. Lamps, electronics and supplies may lose 3 % of what the source gives, horns, pumps and " +
		"coils 10 %, a drive at its continuous rating 5 %, unless the job has limits of its own. Wires whose size or length is not recorded " +
		"are asked for if they decide.",
	Why: "Every metre of copper and every joint takes its share of the voltage, out and back. What is lost there turns to heat there. A lamp at " +
		"nine tenths of its voltage gives about two thirds of its light, a contactor coil that gets too little chatters and burns its contacts, a controller " +
		"sees a low pack and cuts its power on the hill although the pack is full. One bad joint often takes more than all the cable.",
	Tell: "With the load on, measure at its own two terminals and compare with the pack's terminals: the difference is the loss. Then go along " +
		"the way with both probes: from stud to lug, from end to end of each cable, across each contact and fuse. A good joint at 200 A takes 10 to 40 mV, " +
		"a main contact less than 100 mV; the piece that takes the most is the one to mend.",
	Blind: "A joint counts 0.1 mohm unless it is recorded as corroded, loose or burnt; what is bad and not recorded is not seen. Cable is taken at 20 C: " +
		"warm copper takes a tenth more. A drive is judged at its continuous rating, not at its peak, which may lose twice as much for some seconds.",
	Bad:   "a 5 A lamp on 12 V at the end of 6 m of 18 AWG",
	Good:  "the same lamp over 10 AWG",
	Wrong: Example{Of: lampCircuit, But: []string{"wire w3", "wire w3 sw.OUT lt1.+ gauge=18AWG insulation=105C length=3m", "wire w4", "wire w4 lt1.- b1.- gauge=18AWG insulation=105C length=3m"}},
	Right: Example{Of: lampCircuit},
	Basis: Basis{"3 % for circuits that matter, 10 % for the rest; NEC has 3 % for a branch and 5 % in all as advice",
		"ABYC E-11 11.14.2.6; NEC 210.19 and 215.2 informational notes, from memory"},
	Remedy: "clean or replace the joints that take most; then shorten or thicken the wire that does",
	Run:    runDropTooHigh,
}

// lampCircuit is a lamp of 5 A on a battery of 12 V, wired as it should be.
const lampCircuit = `
job system=12V
part b1 lead-battery-12v
part fu1 fuse-inline fuse-rating=10A
part sw light-switch contact-resistance=5mohm
part lt1 lamp-12v current=5A
wire w1 b1.+ fu1.in gauge=10AWG insulation=105C length=100mm
wire w2 fu1.out sw.IN gauge=10AWG insulation=105C length=500mm
wire w3 sw.OUT lt1.+ gauge=10AWG insulation=105C length=3m
wire w4 lt1.- b1.- gauge=10AWG insulation=105C length=3m
at b1.+ cover=fitted`

// criticalDrop is the share of its voltage that a load that matters may lose: ABYC E-11
// 11.14.2.6.
const criticalDrop = 0.03

// severalPieces is how many pieces of a drop a message tells.
const severalPieces = 5

func runDropTooHigh(p *Pass) {
	if p.unsound() {
		return
	}
	var groups [][]size.LoadDrop
	var unknown []Subject
	for _, d := range p.currents().Drops() {
		limit := p.mayLose(d)
		if shareOf(d) <= limit {
			continue
		}
		if sure := shareOf(d) * (1 - assumedOf(d)/d.Lost); sure <= limit {
			unknown = appendNew(unknown, assumedWires(d)...)
			continue
		}
		same := func(g []size.LoadDrop) bool { return g[0].Pieces[0].What == d.Pieces[0].What }
		if i := slices.IndexFunc(groups, same); i >= 0 {
			groups[i] = append(groups[i], d)
		} else {
			groups = append(groups, []size.LoadDrop{d})
		}
	}
	for _, g := range groups {
		p.reportDrop(g)
	}
	p.askSizes(unknown, "whether too much voltage is lost on the way to a load")
}

// askSizes asks for the sizes and the lengths of wires that are not recorded.
func (p *Pass) askSizes(wires []Subject, decides string) {
	for _, ask := range []struct {
		datum, field string
		known        func(*model.Wire) bool
	}{
		{"the gauge", "gauge", func(w *model.Wire) bool { return !w.Gauge.IsZero() }},
		{"the length", "length", func(w *model.Wire) bool { _, known := p.Net.Length(w); return known }},
	} {
		lacking := slices.DeleteFunc(slices.Clone(wires), func(s Subject) bool { return ask.known(p.Sheet.Wire(s.Wire)) })
		if len(lacking) > 0 {
			p.missing(Gap{Datum: ask.datum, Field: ask.field, Decides: decides, Worst: Caution, Subjects: lacking})
		}
	}
}

// shareOf is what a load loses as a share of what its source gives.
func shareOf(d size.LoadDrop) float64 { return d.Lost / (d.Volts + d.Lost) }

// mayLose is the share of its voltage that a load may lose.
func (p *Pass) mayLose(d size.LoadDrop) float64 { return p.limit(p.dropLimit(d)) }

// dropLimit is the name of the limit that a load is judged by.
func (p *Pass) dropLimit(d size.LoadDrop) string {
	def := p.Net.Cat.Definition(p.Net.Part(d.Part).Kind)
	switch def.Family {
	case model.Drive:
		if def.Symbol == brakeSymbol {
			return basis.OrdinaryDrop
		}
		return basis.DriveDrop
	case model.Supply, model.Metering:
		return basis.CriticalDrop
	case model.Loads:
		if slices.Contains(criticalSymbols, def.Symbol) {
			return basis.CriticalDrop
		}
	}
	return basis.OrdinaryDrop
}

// brakeSymbol marks the brake of a drive, which is a coil and takes none of its current.
const brakeSymbol = "coil"

// criticalSymbols mark the loads that light something or hold electronics.
var criticalSymbols = []string{"lamp", "led", "plug"}

// assumedOf is the part of a drop that rests on sizes and lengths nobody recorded.
func assumedOf(d size.LoadDrop) float64 {
	volts := 0.0
	for _, piece := range d.Pieces {
		if piece.Assumed {
			volts += piece.Volts
		}
	}
	return volts
}

// copperOf is the wire whose copper a piece is; false if it is none.
func copperOf(piece size.Piece) (model.WireID, bool) {
	id, copper := strings.CutPrefix(piece.What, "the copper of ")
	return model.WireID(id), copper
}

// assumedWires lists the wires on the way to a load whose size or length is not recorded.
func assumedWires(d size.LoadDrop) []Subject {
	var list []Subject
	for _, piece := range d.Pieces {
		if id, copper := copperOf(piece); copper && piece.Assumed {
			list = append(list, OfWire(id))
		}
	}
	return list
}

func appendNew(list []Subject, more ...Subject) []Subject {
	for _, s := range more {
		if !slices.Contains(list, s) {
			list = append(list, s)
		}
	}
	return list
}

// reportDrop reports the loads that lose most in the same place, by the one that loses the
// largest share.
func (p *Pass) reportDrop(g []size.LoadDrop) {
	worst := slices.MaxFunc(g, func(a, b size.LoadDrop) int {
		return cmp.Compare(shareOf(a)/p.mayLose(a), shareOf(b)/p.mayLose(b))
	})
	var pieces []string
	for _, piece := range worst.Pieces[:min(severalPieces, len(worst.Pieces))] {
		pieces = append(pieces, fmt.Sprintf("%s V in %s", hundredths(piece.Volts), piece.What))
	}
	subjects := []Subject{OfPart(worst.Part)}
	for _, d := range g {
		subjects = appendNew(subjects, OfPart(d.Part))
	}
	most, source := p.limitFrom(p.dropLimit(worst))
	message := fmt.Sprintf("%s loses %s V on the way in the state %s, %s %%; %s %% is the most: %s",
		worst.Part, hundredths(worst.Lost), worst.State, number(100*shareOf(worst)), number(100*most.SI()), strings.Join(pieces, ", "))
	if len(subjects) > 1 {
		message += "; as well " + list(subjects[1:])
	}
	for _, piece := range worst.Pieces[:min(severalPieces, len(worst.Pieces))] {
		for _, w := range p.Sheet.Wires {
			if strings.HasSuffix(piece.What, " of "+string(w.ID)) || strings.Contains(piece.What, " of "+string(w.ID)+" ") {
				subjects = appendNew(subjects, OfWire(w.ID))
			}
		}
	}
	p.report(Finding{
		Message: message, State: worst.State, Subjects: subjects, Fixes: p.thickerForDrop(g),
		Figure: Figure{What: "voltage lost", Value: share(shareOf(worst)), Limit: most, Decides: source},
	})
}

// thickerForDrop is the edit that thickens the wire that takes most to the thinnest size with
// which the loads of a group keep within their limits; none if a joint or a contact takes most,
// for those are to be mended first, or if no size does.
func (p *Pass) thickerForDrop(g []size.LoadDrop) []edit.Edit {
	id, copper := copperOf(g[0].Pieces[0])
	if !copper {
		return nil
	}
	gauge := p.Sheet.Wire(id).Gauge
	for _, to := range size.SeriesOf(gauge).Sizes() {
		keeps := func(d size.LoadDrop) bool {
			less := d.Pieces[0].Volts * (1 - gauge.AreaMM2()/to.AreaMM2())
			return (d.Lost-less)/(d.Volts+d.Lost) <= dropMargin*p.mayLose(d)
		}
		if to.Compare(gauge) > 0 && !slices.ContainsFunc(g, func(d size.LoadDrop) bool { return !keeps(d) }) {
			return []edit.Edit{p.setWire(id, "gauge", to.String())}
		}
	}
	return nil
}

// dropMargin is how much of its limit a thickened wire may leave to a load: less loss lets more
// current flow. Our choice.
const dropMargin = 0.95

// share is a share as a quantity, to a tenth of a percent.
func share(of float64) unit.Any {
	value, _ := unit.ParseAny(strconv.FormatFloat(math.Round(1000*of)/10, 'f', -1, 64) + " %")
	return value
}

// hundredths writes volts with two decimals.
func hundredths(volts float64) string { return fmt.Sprintf("%.2f", volts) }
