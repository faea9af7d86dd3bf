package rule

import (
	"fmt"

	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
)

var deviceTooSlow = Rule{
	ID: "device-too-slow", Title: "A fuse opens later than its wire withstands a short",
	Family: Protection, Severity: Danger,
	About: "Solves a bolted short at both ends of each conductor, with the batteries full and the copper cold, and empty and hot, and " +
		"compares how long the device before it is sure to hold with how long the conductor withstands the current. A caution if the " +
		"opening times are from memory. Where the known times leave it open, one note names all devices whose maker's curve would " +
		"decide. Silent about wires that the rating alone leaves unprotected, short leads to a device, and motor leads.",
	Bad:  "a fuse that holds 100 A for a minute before 2 m of 16 AWG, in which a short drives 250 A",
	Good: "a fuse that opens within 50 ms at 100 A before the same wire",
	Basis: Basis{"a device interrupts a short before its heat brings the conductor to the limit of its insulation: t = (k S / I)^2",
		"IEC 60364-4-43 434.5.2"},
	Remedy: "fit a faster fuse, or a thicker wire",
	Run:    runDeviceTooSlow,
}

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
		if late[u.Device] == nil {
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
		Message:  fmt.Sprintf("%s for %s, %s: %s", p.nameOf(d), w.ID, w.Gauge, worst.Opening.Why),
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
