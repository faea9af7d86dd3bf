package rule

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/size"
)

var dropTooHigh = Rule{
	ID: "drop-too-high", Title: "A load loses too much voltage on the way",
	Family: Conductors, Severity: Caution,
	About: "Follows the current of each load to its source and back in the state in which it loses most, and tells what each length of " +
		"copper, joint, contact and fuse takes. Lamps, electronics and supplies may lose 3 % of what the source gives, horns, pumps and " +
		"coils 10 %, a drive at its continuous rating 5 %. A note names the wires whose size or length is not recorded if they decide.",
	Bad:  "a 5 A lamp on 12 V at the end of 6 m of 18 AWG",
	Good: "the same lamp over 12 AWG",
	Basis: Basis{"3 % for circuits that matter, 10 % for the rest; NEC has 3 % for a branch and 5 % in all as advice",
		"ABYC E-11 11.14.2.6; NEC 210.19 and 215.2 informational notes, both from memory"},
	Remedy: "clean or replace the joints that take most; then shorten or thicken the wire that does",
	Run:    runDropTooHigh,
}

// The most that may be lost on the way to a load and back, as a share of the nominal
// voltage: ABYC E-11 11.14.2.6 for loads that matter and for the rest; for a drive the 5 %
// that the informational notes of NEC 215.2 advise for feeder and branch together.
const (
	criticalDrop = 0.03
	ordinaryDrop = 0.10
	driveDrop    = 0.05
)

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
			unknown = appendNew(unknown, p.assumedWires(d)...)
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
	if len(unknown) > 0 {
		p.missing(Gap{Datum: "the size or length", Field: "length", Decides: "whether too much voltage is lost on the way to a load", Worst: Caution, Subjects: unknown})
	}
}

// shareOf is what a load loses as a share of what its source gives.
func shareOf(d size.LoadDrop) float64 { return d.Lost / (d.Volts + d.Lost) }

// mayLose is the share of its voltage that a load may lose.
func (p *Pass) mayLose(d size.LoadDrop) float64 {
	def := p.Net.Cat.Definition(p.Net.Part(d.Part).Kind)
	switch def.Family {
	case model.Drive:
		return driveDrop
	case model.Supply, model.Metering:
		return criticalDrop
	case model.Loads:
		if slices.Contains(criticalSymbols, def.Symbol) {
			return criticalDrop
		}
	}
	return ordinaryDrop
}

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

// assumedWires lists the wires on the way to a load whose size or length is not recorded.
func (p *Pass) assumedWires(d size.LoadDrop) []Subject {
	var list []Subject
	for _, piece := range d.Pieces {
		if id, copper := strings.CutPrefix(piece.What, "the copper of "); copper && piece.Assumed {
			list = append(list, OfWire(model.WireID(id)))
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
	message := fmt.Sprintf("%s loses %s V on the way in the state %s, %s %%; %s %% is the most: %s",
		worst.Part, hundredths(worst.Lost), worst.State, number(100*shareOf(worst)), number(100*p.mayLose(worst)), strings.Join(pieces, ", "))
	if len(subjects) > 1 {
		message += "; as well " + list(subjects[1:])
	}
	p.report(Finding{Message: message, Subjects: subjects})
}

// hundredths writes volts with two decimals.
func hundredths(volts float64) string { return fmt.Sprintf("%.2f", volts) }
