package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/unit"
)

var deviceTooSlow = Rule{
	ID: "device-too-slow", Title: "A fuse opens later than its wire withstands a short",
	Family: Protection, Severity: Danger,
	About: "Solves a bolted short at both ends of each conductor, with the batteries full and the copper cold, and empty and hot, and " +
		"compares how long the device before it is sure to hold with how long the conductor withstands the current. A caution if the " +
		"opening times are from memory. Where the known times leave it open, one note names all devices whose maker's curve would " +
		"decide.",
	Why: "In a short there is no time to cool: all heat stays in the copper, and how long it stands that goes with the square of its area " +
		"over the square of the current. A fuse may be small enough by its rating and still so slow that a thin wire is past the limit of its insulation before " +
		"it opens. Slow fuses are fitted to stop nuisance trips of motors, on circuits that branch off into thin wires.",
	Tell: "Take the maker's curve of the fuse, go in at the current of a short at the far end of the wire, and read the longest time. Hold it " +
		"against t = (k S / I)^2 with S in mm2 and k 115 for PVC of 70 C: 16 AWG, 1.31 mm2, stands 250 A for 0.36 s. Cable that is hotter before " +
		"the short stands less: k 87 from 105 C. There is nothing to measure on the cart.",
	Blind: "Needs when the device opens: by the maker's points, or by the gates of the standard that it is made to. The gates of blade and strip fuses are " +
		"from memory and make a caution at most. Wires that the rating alone leaves unprotected, short leads to a device, and motor leads " +
		"are left out. The inductance of the loop is not counted.",
	Bad:   "a fuse that holds 100 A for a minute before 16 AWG",
	Good:  "a fuse that opens within 50 ms at 100 A before the same wire",
	Wrong: Example{Of: fusedTap, But: []string{"+", "opens fu3 100A 60s 90s", "+", "opens fu3 1000A 1s 2s"}},
	Right: Example{Of: fusedTap, But: []string{"+", quickPoints}},
	Basis: Basis{"a device interrupts a short before its heat brings the conductor to the limit of its insulation: t = (k S / I)^2",
		"IEC 60364-4-43 434.5.2, from memory"},
	Remedy: "fit a faster fuse, or a thicker wire",
	Run:    runDeviceTooSlow,

	Explains: []string{"not-selective"},
}

// quickPoints is a quick fuse's curve as lines of an example.
const quickPoints = "opens fu3 30A 200ms 300ms\nopens fu3 50A 10ms 15ms\nopens fu3 100A 1ms 2ms\nopens fu3 1000A 0.1ms 0.2ms"

func runDeviceTooSlow(p *Pass) {
	if p.misconnected() {
		return
	}
	var order []*network.Link
	late := map[*network.Link][]protect.Late{}
	for _, l := range p.guard().Late() {
		d := l.Opening.Device
		if late[d] == nil {
			order = append(order, d)
		}
		late[d] = append(late[d], l)
	}
	for _, d := range order {
		p.reportLate(d, late[d])
	}
	var devices []Subject
	for _, u := range p.guard().Unproven() {
		if late[u.Device] == nil && p.curveError(u.Device) == nil {
			devices = append(devices, p.deviceSubject(u.Device))
		}
	}
	if len(devices) > 0 {
		p.missing(Gap{Datum: "the maker's time-current curve", Field: "opens", Decides: "whether a short is off before the wires behind are too hot", Worst: Danger, Subjects: devices})
	}
}

// reportLate reports one device by the wire that withstands least.
func (p *Pass) reportLate(d *network.Link, late []protect.Late) {
	worst := late[0]
	var wires []*network.Link
	for _, l := range late {
		wires = append(wires, l.Conductor.Wire)
		if l.Opening.Stands < worst.Opening.Stands {
			worst = l
		}
	}
	w := worst.Conductor.Wire.Wire
	f := Finding{
		Message: fmt.Sprintf("%s for %s, %s: %s", p.nameOf(d), w.ID, w.Gauge, worst.Opening.Why),
		Figure: Figure{What: fmt.Sprintf("time that it holds %s", amps(worst.Opening.Amps)), Value: unit.S(worst.Opening.Band.Least).Any(),
			Limit: unit.S(worst.Opening.Stands / worst.Opening.Amps / worst.Opening.Amps).Any(), Decides: fmt.Sprintf("what %s withstands", w.Gauge)},
		Subjects: append([]Subject{p.deviceSubject(d)}, wireSubjects(wires)...),
	}
	if len(late) > 1 {
		f.Message += fmt.Sprintf("; too late for %d more", len(late)-1)
	}
	if worst.Opening.Band.Recalled || worst.Conductor.Capacity.Assumed {
		f.Severity = Caution
		f.Message += unconfirmed
	}
	p.report(f)
}
