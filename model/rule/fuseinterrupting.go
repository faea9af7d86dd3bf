package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var fuseInterrupting = Rule{
	ID: "fuse-interrupting", Title: "A fuse cannot break the fault current",
	Family: Protection, Severity: Danger,
	About: "Compares the interrupting rating of the first fuse or breaker on each way from a string or pack with the current of a dead " +
		"short right behind it, computed over all states with the batteries full, the copper cold, and what is not recorded of a " +
		"wire counting nothing. A device behind an adequate one is left to it. If a typical figure of the library decides, it is a caution.",
	Bad:  "a blade fuse that breaks 1000 A, right at a pack that drives 3550 A through a short",
	Good: "a class T fuse that breaks 20 kA at the pack",
	Basis: Basis{"a device that opens against more than its interrupting rating may burst or keep an arc; it must be at least the source's " +
		"short-circuit current", "ABYC E-11, interrupting capacity of main devices"},
	Remedy: "fit a fuse with a DC interrupting rating above the fault current as the first one on the pack",
	Run:    runFuseInterrupting,
}

func runFuseInterrupting(p *Pass) {
	told := map[model.PartID]bool{}
	for _, e := range p.fusing().entries {
		if e.Feed == nil || e.Feed.String == nil || !e.Feed.Whole {
			continue
		}
		devices := slices.Clone(e.Limits)
		for _, m := range e.Lead.Devices {
			devices = append(devices, m.Device)
		}
		for _, l := range devices {
			if l.Is(model.FuseElement) && !told[l.Part.ID] {
				told[l.Part.ID] = true
				p.judgeInterrupting(e.Feed, l)
			}
		}
	}
}

func (p *Pass) judgeInterrupting(f *network.Feed, l *network.Link) {
	inside, known := p.insideOf(f.String)
	if !known {
		p.missing(Gap{Datum: "the internal resistance", Field: "internal-resistance", Decides: "which fuses can break the fault current", Worst: Danger, Subjects: stringSubjects(*f.String)})
		return
	}
	d := p.guard().Device(l)
	if !d.Interrupting.OK {
		p.missing(Gap{Datum: "the interrupting rating", Field: "interrupting-rating", Decides: "whether it can break the fault current", Worst: Danger, Subjects: []Subject{OfPart(l.Part.ID)}})
		return
	}
	drives, at := d.Amps, p.terminal(f.At)
	where := fmt.Sprintf("a short right behind it drives %s at full charge (%s)", aboutAmps(drives), d.Fault.State)
	if d.Fault.IsNone() { // in the negative, or inside the string
		drives = p.guard().ShortAmps(f)
		where = fmt.Sprintf("a short of the whole drives %s at full charge", aboutAmps(drives))
	} else {
		at = p.terminal(d.Fault.At)
	}
	if drives <= d.Interrupting.Value {
		return
	}
	finding := Finding{
		Message:  fmt.Sprintf("%s breaks %s; %s", p.partName(l), amps(d.Interrupting.Value), where),
		Subjects: appendNew([]Subject{OfPart(l.Part.ID)}, at, p.terminal(f.At)),
	}
	if d.Interrupting.IsTypical() || inside {
		finding.Severity = Caution
		finding.Message += unconfirmed
	}
	p.report(finding)
}

// insideOf reports whether the resistance inside every battery of a string is known, and
// whether one of them is a typical figure.
func (p *Pass) insideOf(s *network.String) (typical, known bool) {
	for _, cell := range s.Cells {
		inside := p.Net.SourceOhms(cell.Link)
		if !inside.OK {
			return false, false
		}
		typical = typical || inside.IsTypical()
	}
	return typical, true
}
