package rule_test

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// example is a job that a rule speaks about, or one on which it must stay silent though
// it comes near.
type example struct {
	rule, name, text string

	also func(*model.Sheet) // what a text cannot say; may be nil
}

// opens gives a part a maker's curve: pairs of amperes and seconds, to half as much more.
func opens(id model.PartID, points ...float64) func(*model.Sheet) {
	return func(s *model.Sheet) {
		for i := 0; i < len(points); i += 2 {
			s.Part(id).Opens = append(s.Part(id).Opens, model.OpenPoint{At: unit.A(points[i]), Least: unit.S(points[i+1]), Most: unit.S(1.5 * points[i+1])})
		}
	}
}

// quick gives both fuses of a cart curves that open fast.
func quick(s *model.Sheet) {
	opens("fu1", 600, 1, 1000, 0.1, 2000, 0.001)(s)
	opens("fu3", 30, 0.2, 50, 0.01, 100, 0.001, 1000, 0.0001)(s)
}

// isolated is a small cart with an isolated reducer and two polarised devices.
const isolated = `
part pack lithium-pack-16
part fu1 fuse-cartridge fuse-rating=15A
part red reducer-isolated
part usb usb-outlet
part out outlet-12v
wire w1 pack.POS fu1.in gauge=12AWG insulation=105C length=100mm
wire w2 fu1.out red.IN+ gauge=12AWG insulation=105C length=1m
wire w3 red.IN- pack.NEG gauge=12AWG insulation=105C length=1m
wire w4 fu1.out red.WAKE gauge=12AWG insulation=105C length=1m
wire w5 red.OUT+ usb.+ gauge=12AWG insulation=105C length=1m
wire w6 red.OUT+ out.+ gauge=12AWG insulation=105C length=1m
wire w7 red.OUT- usb.- gauge=12AWG insulation=105C length=1m
wire w8 red.OUT- out.- gauge=12AWG insulation=105C length=1m
at pack.POS cover=fitted
`

// direct is the least lithium cart that drives: pack, fuse, contactor, controller.
const direct = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part ctrl controller-series
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
wire k1 sol.L1 fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m
wire k5 sol.coil- pack.NEG gauge=16AWG insulation=105C length=1m
stack sol.L1 w2 k1
stack pack.NEG w4 k5
at pack.POS cover=fitted
at fu1.in cover=fitted
at sol.L1 cover=fitted
`

// bridge hangs an outlet between two poles by relays that nothing feeds, and between the same
// poles the other way round by lamps: pole is where the relay of its positive lead goes.
func bridge(pole, other string) string {
	return "job system=12V\npart b1 lead-battery-12v\npart fu fuse-inline fuse-rating=5A interrupting-rating=5000A\n" +
		"part usb usb-outlet\npart r1 relay\npart r2 relay\npart lt1 lamp-12v\npart lt2 lamp-12v\n" +
		"wire a b1.+ fu.in gauge=16AWG length=100mm\n" +
		"wire c usb.+ r1.87 gauge=16AWG\nwire d r1.30 " + pole + " gauge=16AWG\nwire e usb.- r2.87 gauge=16AWG\nwire f r2.30 " + other + " gauge=16AWG\n" +
		"wire g usb.+ lt1.+ gauge=16AWG\nwire h lt1.- " + other + " gauge=16AWG\nwire i usb.- lt2.+ gauge=16AWG\nwire j lt2.- " + pole + " gauge=16AWG\nat b1.+ cover=fitted"
}

var commonBad = []example{
	{rule: "battery-shorted", text: edited(isolated, "+", "part b1 lead-battery-6v\nwire x1 b1.+ b1.-")},
	{rule: "battery-shorted", name: "a ring", text: "part b1 lead-battery-6v\npart b2 lead-battery-6v\nwire x1 b1.+ b2.-\nwire x2 b2.+ b1.-\nat b1.+ cover=fitted\nat b2.+ cover=fitted\njob system=12V"},
	{rule: "battery-shorted", name: "two packs against each other", text: edited(direct, "+", "part p2 lithium-pack-16\nwire x1 pack.POS p2.NEG gauge=2AWG\nwire x2 pack.NEG p2.POS gauge=2AWG")},
	{rule: "battery-reversed", text: edited(lead, "wire j2", "wire j2 b2.+ b3.+ gauge=4AWG", "wire j3", "wire j3 b3.- b4.- gauge=4AWG")},
	{rule: "pack-reversed", text: edited(lithium, "wire w1", "wire w1 pack.NEG fu1.in gauge=2AWG insulation=105C length=150mm",
		"wire w5", "wire w5 shunt.BATT pack.POS gauge=2AWG insulation=105C length=200mm")},
	{rule: "string-count", name: "batteries not joined yet are a note", text: "part b1 lead-battery-6v\npart b2 lead-battery-6v\njob system=48V"},
	{rule: "string-count", name: "no system voltage", text: "part b1 lead-battery-6v\njob system="},
	{rule: "string-count", text: edited(lead, "part b8", "", "wire j7", "", "wire w1", "wire w1 b7.+ sol.L1 gauge=4AWG insulation=105C",
		"wire c1", "wire c1 rec.+ b7.+ gauge=10AWG", "stack b8.+", "stack b7.+ w1 c1", "at b8.+", "at b7.+ cover=fitted")},
	{rule: "charger-reversed", text: edited(lithium, "wire c1", "wire c1 chg.DC- fu2.in gauge=10AWG insulation=105C length=900mm",
		"wire c3", "wire c3 chg.DC+ nb.1 gauge=10AWG insulation=105C length=900mm")},
	{rule: "controller-reversed", text: edited(lithium, "wire w3", "wire w3 sol.L2 ctrl.B- gauge=2AWG insulation=105C length=300mm",
		"wire w4", "wire w4 ctrl.B+ shunt.LOAD gauge=2AWG insulation=105C length=700mm", "stack ctrl.B+", "stack ctrl.B+ w4 m1")},
	{rule: "reducer-input-reversed", text: edited(isolated, "wire w2", "wire w2 fu1.out red.IN- gauge=12AWG insulation=105C length=1m",
		"wire w3", "wire w3 red.IN+ pack.NEG gauge=12AWG insulation=105C length=1m")},
	{rule: "reducer-output-reversed", text: edited(isolated, "wire w5", "wire w5 red.OUT- usb.+ gauge=12AWG insulation=105C length=1m",
		"wire w6", "wire w6 red.OUT- out.+ gauge=12AWG insulation=105C length=1m",
		"wire w7", "wire w7 red.OUT+ usb.- gauge=12AWG insulation=105C length=1m",
		"wire w8", "wire w8 red.OUT+ out.- gauge=12AWG insulation=105C length=1m")},
	{rule: "reducer-swapped", text: edited(lithium, "wire r2", "wire r2 fu4.out red.OUT+ gauge=12AWG insulation=105C length=800mm",
		"wire a1", "wire a1 red.IN+ fb.IN gauge=10AWG insulation=105C length=2m")},
	{rule: "diode-reversed", text: edited(lithium, "wire d1", "wire d1 dio.anode sol.coil+ gauge=18AWG insulation=105C length=60mm",
		"wire d2", "wire d2 dio.cathode sol.coil- gauge=18AWG insulation=105C length=60mm")},
	{rule: "load-reversed", text: edited(lithium, "wire b1", "wire b1 dir.rev-no buz.- gauge=16AWG insulation=105C length=1m",
		"wire b2", "wire b2 buz.+ nb.3 gauge=16AWG insulation=105C length=1m")},
	{rule: "load-reversed", name: "an encoder", text: edited(ac72, "wire e1", "wire e1 ctrl.encoder+ enc.supply- gauge=20AWG", "wire e2", "wire e2 ctrl.encoder- enc.supply+ gauge=20AWG")},
	{rule: "load-reversed", name: "behind a lamp, by the solved voltages", text: "job system=12V\npart b1 lead-battery-12v\npart lt lamp-12v\npart fu fuse-inline fuse-rating=5A interrupting-rating=5000A\n" +
		"part usb usb-outlet\nwire a b1.+ fu.in gauge=16AWG length=100mm\nwire b fu.out lt.+ gauge=16AWG insulation=105C\nwire c lt.- usb.- gauge=16AWG insulation=105C\nwire d usb.+ b1.- gauge=16AWG\nat b1.+ cover=fitted"},
	{rule: "load-reversed", name: "what it sees against what could be joined to it", text: bridge("fu.out", "b1.-")},
	{rule: "meter-reversed", text: edited(lithium, "wire s4", "wire s4 fu6.out meter.supply- gauge=18AWG insulation=105C length=2m",
		"wire s5", "wire s5 meter.supply+ nb.3 gauge=18AWG insulation=105C length=2m")},
	{rule: "shunt-reversed", text: edited(lithium, "wire w4", "wire w4 ctrl.B- shunt.BATT gauge=2AWG insulation=105C length=700mm",
		"wire w5", "wire w5 shunt.LOAD pack.NEG gauge=2AWG insulation=105C length=200mm", "wire n1", "wire n1 shunt.BATT nb.1 gauge=6AWG insulation=105C length=200mm",
		"stack shunt.LOAD", "stack shunt.BATT w4 n1")},
	{rule: "shunt-reversed", name: "the sense pair", text: edited(lithium, "wire s1", "wire s1 shunt.sense+ meter.sense- gauge=18AWG insulation=105C length=2m",
		"wire s2", "wire s2 shunt.sense- meter.sense+ gauge=18AWG insulation=105C length=2m")},
	{rule: "over-voltage", text: edited(lithium, "wire a3", "wire a3 key.IGN lt1.+ gauge=16AWG insulation=105C length=1m")},
	{rule: "over-voltage", name: "a 36 V coil", text: edited(direct, "part sol", "part sol contactor-36v")},
	{rule: "over-voltage", name: "a typical figure decides", text: edited(direct, "part ctrl", "part ctrl controller-series", "part pack", "part pack lithium-pack-16 full-voltage=66V",
		"part fu1", "part fu1 fuse-class-t fuse-rating=200A")},
	{rule: "under-voltage", name: "a 72 V coil", text: edited(direct, "part sol", "part sol contactor-72v pull-in-voltage=54V")},
	{rule: "under-voltage", text: edited(lithium, "wire b1", "wire b1 fb.3 buz.+ gauge=16AWG insulation=105C length=1m")},

	{rule: "no-main-fuse", text: edited(direct, "part fu1", "part fu1 isolator", "at fu1.in", "at fu1.in cover=fitted\nat fu1.out cover=fitted",
		"part fu3", "part fu3 fuse-cartridge fuse-rating=10A")},
	{rule: "no-main-fuse", name: "and an unfused tap", text: edited(direct, "part fu1", "", "at fu1.in", "", "wire w1", "wire w1 pack.POS sol.L1 gauge=2AWG insulation=105C length=600mm", "wire w2", "",
		"wire k1", "wire k1 sol.L1 key.BAT gauge=16AWG insulation=105C length=2m", "wire k2", "", "part fu3", "", "stack sol.L1", "stack sol.L1 w1 k1")},
	{rule: "tap-unfused", text: edited(direct, "wire k1", "wire k1 pack.POS key.BAT gauge=16AWG insulation=105C length=2m", "wire k2", "", "part fu3", "",
		"stack sol.L1", "stack pack.POS w1 k1")},
	{rule: "tap-unfused", name: "part of the string", text: edited(lead, "+", "part lt lamp-12v\nwire x1 b2.+ lt.+ gauge=16AWG\nwire x2 lt.- b1.- gauge=16AWG")},
	{rule: "fuse-too-large", text: edited(lithium, "part fu3", "part fu3 fuse-inline-80v fuse-rating=60A")},
	{rule: "fuse-too-large", name: "the next size up from 50 V", text: edited(lithium, "part fu1", "part fu1 fuse-class-t fuse-rating=300A")},
	{rule: "fuse-too-large", name: "a bundle from 50 V", text: edited(lithium, "part fu3", "part fu3 fuse-inline-80v fuse-rating=20A",
		"wire k3", "wire k3 key.IGN dir.micro-com gauge=16AWG insulation=105C bundle=dash", "wire k4", "wire k4 dir.micro-no pedal.COM gauge=16AWG insulation=105C bundle=dash",
		"wire k5", "wire k5 pedal.NO chg.interlock-a gauge=16AWG insulation=105C bundle=dash", "wire k9", "wire k9 key.IGN dir.rev-com gauge=16AWG insulation=105C bundle=dash")},
	{rule: "fuse-too-large", name: "only the main fuse", text: edited(lithium, "wire k1", "wire k1 sol.L1 key.BAT gauge=16AWG insulation=105C length=2m", "wire k2", "", "part fu3", "")},
	{rule: "fuse-too-large", name: "the rating is the library's", text: edited(lithium, "part fu2", "part fu2 fuse-cartridge", "wire c1", "wire c1 chg.DC+ fu2.in gauge=16AWG insulation=60C length=900mm")},
	{rule: "fuse-opens", name: "a short behind a switch", text: edited(lithium, "wire b2", "wire b2 buz.+ nb.3 gauge=16AWG insulation=105C length=1m")},
	{rule: "fuse-opens", name: "too small for the drive", text: edited(lithium, "part fu1", "part fu1 fuse-class-t fuse-rating=60A")},
	{rule: "fuse-opens", name: "too small for the charger by the library's figures", text: edited(lithium, "part fu2", "part fu2 fuse-inline-80v")},
	{rule: "fuse-too-large", name: "a thin lead to the main fuse", text: edited(lithium, "wire w1", "wire w1 pack.POS fu1.in gauge=8AWG insulation=105C length=150mm")},
	{rule: "fuse-too-large", name: "a second lead to a fuse, and a longer one", text: edited(lithium, "+", "wire x1 fu1.out fu3.in gauge=16AWG insulation=105C length=700mm")},
	{rule: "fuse-too-large", name: "a wire to a contact that leads nowhere", text: edited(lithium, "+", "part sw switch\nwire x1 sol.L1 sw.IN gauge=16AWG insulation=105C length=700mm")},
	{rule: "fuse-too-large", name: "nobody knows the gauge", text: edited(lithium, "wire k3", "wire k3 key.IGN dir.micro-com", "wire k4", "wire k4 dir.micro-no pedal.COM")},
	{rule: "fuse-too-large", name: "the insulation decides", text: edited(lithium, "part fu3", "part fu3 fuse-inline-80v fuse-rating=25A", "wire k3", "wire k3 key.IGN dir.micro-com gauge=16AWG")},
	{rule: "feeds-add-up", text: edited(lithium, "+", "part x1 fuse-cartridge fuse-rating=40A\npart x2 fuse-cartridge fuse-rating=40A\npart bus bus-post\npart pump pump-motor\n"+
		"wire y1 sol.L1 x1.in gauge=8AWG insulation=105C length=100mm\nwire y2 fu1.out x2.in gauge=8AWG insulation=105C length=100mm\n"+
		"wire y3 x1.out bus.POST gauge=8AWG insulation=105C length=500mm\nwire y4 x2.out bus.POST gauge=8AWG insulation=105C length=500mm\n"+
		"wire y5 bus.POST pump.+ gauge=12AWG insulation=105C length=500mm\nwire y6 pump.- nb.4 gauge=8AWG insulation=105C length=500mm\n"+
		"stack bus.POST y3 y4 y5", "stack fu1.out", "stack fu1.out w2 y2 r1 s3", "stack sol.L1", "stack sol.L1 w2 y1 c2 k1",
		"wire p1", "", "wire p2", "", "part pre", "", "stack sol.L2", "stack sol.L2 w3")},
	{rule: "fuse-volts", name: "58 V on 16 cells", text: edited(lithium, "part fu1", "part fu1 fuse-class-t fuse-rating=200A voltage-rating=58V")},
	{rule: "fuse-volts", name: "an ordinary blade", text: edited(lithium, "part fu3", "part fu3 fuse-inline fuse-rating=10A")},
	{rule: "fuse-volts", name: "a block on the pack", text: edited(lithium, "wire a1", "wire a1 fu4.out fb.IN gauge=12AWG insulation=105C length=2m", "wire a3", "", "wire a4", "", "wire a5", "", "wire a6", "", "wire b1", "wire b1 fb.3 buz.+ gauge=16AWG insulation=105C length=1m")},
	{rule: "fuse-interrupting", text: edited(lithium, "part fu1", "part fu1 fuse-class-t fuse-rating=200A interrupting-rating=2000A", "part pack", "part pack lithium-pack-16 fault-current=5120A")},
	{rule: "fuse-interrupting", name: "by the library's figures", text: edited(lithium, "part fu1", "part fu1 fuse-inline-80v fuse-rating=200A")},
	{rule: "fuse-interrupting", name: "in the negative", text: edited(lead, "wire w3", "wire w3 ctrl.B- fn.out gauge=4AWG insulation=105C\npart fn fuse-inline-80v fuse-rating=200A interrupting-rating=1000A\nwire w4 fn.in b1.- gauge=4AWG insulation=105C",
		"wire k7", "wire k7 sol.coil- fn.out gauge=16AWG", "wire k10", "wire k10 buz.- fn.out gauge=16AWG", "wire c2", "wire c2 rec.- fn.out gauge=10AWG", "stack b1.-", "")},
	{rule: "fuse-too-far", text: edited(lithium, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=30in")},
	{rule: "fuse-too-far", name: "a tap behind the main fuse", text: edited(lithium, "wire k1", "wire k1 sol.L1 fu3.in gauge=16AWG insulation=105C length=1.2m")},
	{rule: "fuse-too-far", name: "sheathed from a battery post", text: edited(lithium, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=60in sheathed")},
	{rule: "fuse-too-far", name: "nobody measured", text: edited(lithium, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C")},
	{rule: "fuse-in-negative-only", text: edited(direct, "wire w1", "wire w1 pack.POS sol.L1 gauge=2AWG insulation=105C length=600mm", "wire w2", "",
		"wire w4", "wire w4 ctrl.B- fu1.out gauge=2AWG insulation=105C length=600mm\nwire w5 fu1.in pack.NEG gauge=2AWG insulation=105C length=100mm",
		"wire k5", "wire k5 sol.coil- fu1.out gauge=16AWG insulation=105C length=1m", "stack pack.NEG", "stack fu1.out w4 k5", "at fu1.in", "", "stack sol.L1", "stack sol.L1 w1 k1",
		"part fu3", "part fu3 fuse-cartridge fuse-rating=10A")},
	{rule: "source-exceeds-wire", name: "the main fuse has part in it", text: edited(lithium, "part fu3", "part fu3 fuse-inline-80v fuse-rating=300A")},
	{rule: "source-exceeds-wire", text: edited(lithium, "part chg", "part chg charger-onboard-48v charge-current=25A", "part fu2", "part fu2 fuse-cartridge fuse-rating=15A",
		"wire c1", "wire c1 chg.DC+ fu2.in gauge=18AWG insulation=60C length=900mm")},

	{rule: "stack-order", text: edited(lithium, "stack sol.L1", "stack sol.L1 k1 w2 c2 p1")},
	{rule: "stack-order", name: "not recorded", text: edited(lithium, "stack sol.L1", "")},
	{rule: "stack-order", name: "a gauge is missing", text: edited(lithium, "wire p1", "wire p1 sol.L1 pre.a length=80mm")},
	{rule: "stack-count", text: edited(lithium, "wire s3", "wire s3 sol.L1 fu6.in gauge=16AWG insulation=105C length=100mm", "stack fu1.out", "stack fu1.out w2 r1", "stack sol.L1", "stack sol.L1 w2 c2 k1 s3 p1")},
	{rule: "lug-hole", text: edited(lithium, "wire w2", "wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm from-lug=5/16_in to-lug=1/2_in",
		"wire k6", "wire k6 chg.interlock-b sol.coil+ gauge=16AWG insulation=105C length=2m to-lug=#8", "wire w5", "wire w5 shunt.BATT pack.NEG gauge=2AWG insulation=105C length=200mm to-lug=3/8_in")},
	{rule: "stud-cover", text: edited(lithium, "at pack.POS", "at pack.POS cover=missing")},
	{rule: "stud-cover", name: "not recorded", text: edited(lithium, "at pack.POS", "", "at fu1.in", "")},

	{rule: "cut-end-live", text: edited(lithium, "+", "wire x1 key.IGN cut gauge=16AWG insulation=105C")},
	{rule: "cut-end-live", name: "on the negative", text: edited(lithium, "+", "wire x1 cut nb.4 gauge=16AWG insulation=105C")},
	{rule: "capped-end-live", text: edited(lithium, "+", "wire x1 key.IGN capped gauge=16AWG insulation=105C")},
	{rule: "untraced-end-live", text: edited(lithium, "+", "wire x1 key.IGN untraced gauge=16AWG insulation=105C")},

	{rule: "return-overload", text: edited(lithium, "wire k8", "wire k8 sol.coil- nb.2 gauge=22AWG length=1m")},
	{rule: "return-overload", name: "chained negatives add up", text: edited(lithium, "wire a4", "wire a4 lt1.- usb.- gauge=16AWG insulation=105C length=1m",
		"wire a6", "wire a6 usb.- fb.NEG2 gauge=18AWG insulation=60C length=1m", "part fb", "part fb fuse-block-6-neg fuse-rating-1=10A fuse-rating-2=10A")},
	{rule: "return-overload", name: "the ratings are the library's", text: edited(lithium, "wire a4", "wire a4 lt1.- fb.NEG1 gauge=22AWG length=1m")},
	{rule: "return-overload", name: "between the rule from 50 V and 150 %", text: edited(lithium, "part fu3", "part fu3 fuse-inline-80v fuse-rating=20A", "wire k8", "wire k8 sol.coil- nb.2 gauge=16AWG insulation=60C length=1m")},
	{rule: "device-too-slow", text: lithium, also: opens("fu3", 100, 60, 1000, 1)},
	{rule: "opening-curve", text: lithium, also: opens("fu3", 100, 1, 1000, 100)},
	{rule: "not-selective", text: edited(direct, "part fu1", "part fu1 fuse-class-t fuse-rating=10A opening=iec-60269-gg", "part fu3", "part fu3 fuse-inline-80v fuse-rating=16A opening=iec-60269-gg")},
	{rule: "wire-too-thin", name: "by typical ratings", text: edited(lithium, "wire w3", "wire w3 sol.L2 ctrl.B+ gauge=6AWG insulation=105C length=300mm")},
	{rule: "wire-too-thin", text: edited(lithium, "part ctrl", "part ctrl controller-series continuous-current=250A peak-current=400A")},
	{rule: "wire-too-thin", name: "the insulation decides", text: edited(lithium, "wire m3", "wire m3 dir.S1 motor.S1 gauge=2AWG length=600mm")},
	{rule: "drop-too-high", text: edited(lithium, "wire a3", "wire a3 fb.1 lt1.+ gauge=18AWG insulation=105C length=12m")},
	{rule: "drop-too-high", name: "a corroded joint", text: edited(lithium, "+", "at ctrl.B- condition=corroded\nat sol.L2 condition=corroded")},
	{rule: "drop-too-high", name: "nobody measured", text: edited(lithium, "wire a1", "wire a1 red.OUT+ fb.IN insulation=105C length=8m", "wire a2", "wire a2 red.NEG fb.NEG insulation=105C length=8m")},

	{rule: "drives-unasked", name: "the plug's interlock is passed by", text: edited(lithium, "wire k6", "wire k6 pedal.NO sol.coil+ gauge=16AWG insulation=105C length=2m",
		"wire k7", "wire k7 pedal.NO ctrl.KSI gauge=16AWG insulation=105C length=2m")},
	{rule: "drives-unasked", name: "the key is bridged", text: edited(lithium, "wire k3", "wire k3 key.BAT dir.micro-com gauge=16AWG insulation=105C length=1m")},
	{rule: "drives-unasked", name: "neither key nor plug is asked", text: edited(lithium, "wire k3", "wire k3 key.BAT dir.micro-com gauge=16AWG insulation=105C length=1m",
		"wire k6", "wire k6 pedal.NO sol.coil+ gauge=16AWG insulation=105C length=2m", "wire k7", "wire k7 pedal.NO ctrl.KSI gauge=16AWG insulation=105C length=2m")},
	{rule: "does-not-drive", text: edited(lithium, "wire k7", "")},
	{rule: "does-not-drive", name: "the coil hangs on one lead", text: edited(lithium, "wire k8", "", "stack nb.2", "", "stack sol.coil-", "")},
	{rule: "does-not-drive", name: "the field lead is off", text: edited(sepex, "wire m3", "")},
	{rule: "does-not-drive", name: "the ends of the throttle are swapped", text: edited(sepex, "wire k14", "wire k14 thr.high ctrl.throttle-low gauge=18AWG", "wire k16", "wire k16 thr.low ctrl.throttle-high gauge=18AWG")},
	{rule: "does-not-drive", name: "the armature lead is off the controller", text: edited(sepex, "wire m2", "")},
	{rule: "drives-unasked", name: "the field lead is off and the tow switch is bridged", text: edited(sepex, "wire m3", "", "wire k4", "wire k4 tow.1 ctrl.logic gauge=16AWG insulation=105C length=2m",
		"wire k5", "wire k5 tow.1 key.BAT gauge=16AWG insulation=105C length=2m")},
	{rule: "no-rest", text: "job system=12V\npart b1 lead-battery-12v\npart fu fuse-inline fuse-rating=5A interrupting-rating=5000A\npart r relay\n" +
		"wire a b1.+ fu.in gauge=16AWG length=100mm\nwire b fu.out r.30 gauge=16AWG insulation=105C\nwire c r.87a r.86 gauge=16AWG insulation=105C\nwire d r.85 b1.- gauge=16AWG\nat b1.+ cover=fitted"},
	{rule: "starved", text: edited(isolated, "wire w2", "wire w2 fu1.out pre.a gauge=12AWG insulation=105C length=1m\npart pre precharge-resistor\nwire w9 pre.b red.IN+ gauge=12AWG insulation=105C length=100mm")},
	{rule: "pack-on-frame", text: edited(lithium, "+", "part fr frame-point\nwire x1 nb.4 fr.FRAME gauge=10AWG insulation=105C length=300mm")},
	{rule: "pack-on-frame", name: "72 V", text: edited(ac72, "+", "part fr frame-point\npart lk frame-leak resistance=1kohm\nwire x1 lk.to ctrl.B- gauge=10AWG insulation=105C length=300mm")},
	{rule: "pack-on-frame", name: "72 V with the key on", text: edited(ac72, "+", "part fr frame-point\nwire x1 key.IGN fr.FRAME gauge=14AWG insulation=105C length=300mm")},
	{rule: "pack-on-frame", name: "a leak as cars may have it", text: edited(ac72, "+", "part lk frame-leak resistance=50kohm\nwire x1 lk.to ctrl.B- gauge=10AWG insulation=105C length=300mm")},

	{rule: "pre-charge", name: "none", text: direct},
	{rule: "pre-charge", name: "the resistor burns", text: edited(lithium, "part pre", "part pre precharge-resistor resistance=47ohm power-rating=5W surge-power=25W")},
	{rule: "coil-suppression", text: edited(lithium, "part dio", "", "wire d1", "", "wire d2", "", "stack sol.coil+", "", "stack sol.coil-", "")},
	{rule: "coil-suppression", name: "a diode that does not stand it", text: edited(lithium, "part dio", "part dio diode reverse-voltage=50V continuous-current=1A")},
	{rule: "coil-suppression", name: "the driver may hold it", text: edited(ac72, "part ctrl", "part ctrl controller-ac-72v")},
	{rule: "charger-mismatch", text: edited(lithium, "part chg", "part chg charger-onboard-72v")},
	{rule: "charger-mismatch", name: "too much current", text: edited(lithium, "part chg", "part chg charger-onboard-48v charge-current=30A", "part pack", "part pack lithium-pack-16 charge-current=20A")},
	{rule: "charges-nothing", name: "a class too low", text: edited(lithium, "part chg", "part chg charger-onboard-36v")},
	{rule: "charges-nothing", name: "a lead of it is off", text: edited(lithium, "wire c1", "")},
	{rule: "charger-mismatch", name: "a curve for lead", text: edited(lithium, "part chg", "part chg charger-onboard-48v charge-voltage=60V")},
	{rule: "pack-current", text: edited(lithium, "part pack", "part pack lithium-pack-16 continuous-current=100A peak-current=200A", "part ctrl", "part ctrl controller-series continuous-current=150A peak-current=300A")},
	{rule: "pack-current", name: "by typical limits", text: edited(lithium, "part ctrl", "part ctrl controller-series continuous-current=120A peak-current=900A")},
	{rule: "stand-by-drain", text: edited(lithium, "wire r4", "wire r4 fu4.out fu5.in gauge=16AWG insulation=105C length=100mm")},
}

var commonGood = []example{
	{rule: "battery-shorted", name: "parallel packs are no ring", text: edited(direct, "+", "part p2 lithium-pack-16\nwire x1 p2.POS fu1.in\nwire x2 p2.NEG pack.NEG")},
	{rule: "battery-reversed", name: "eight in a row", text: lead},
	{rule: "pack-reversed", name: "one device reversed says nothing about the pack", text: edited(lithium, "wire b1", "wire b1 dir.rev-no buz.-", "wire b2", "wire b2 buz.+ nb.3")},
	{rule: "string-count", name: "51.2 V on 48 V", text: lithium},
	{rule: "string-count", name: "38.4 V on 36 V", text: "part pack lithium-pack-12\njob system=36V"},
	{rule: "string-count", name: "four of 12 V", text: "part a lead-battery-12v\npart b lead-battery-12v\npart c lead-battery-12v\npart d lead-battery-12v\n" +
		"wire j1 a.+ b.-\nwire j2 b.+ c.-\nwire j3 c.+ d.-"},
	{rule: "charger-reversed", name: "through a fuse and a bar", text: lithium},
	{rule: "controller-reversed", name: "through the contactor", text: lithium},
	{rule: "controller-reversed", name: "negative switched by an isolator", text: edited(direct, "part fu3", "part fu3 fuse-inline-80v fuse-rating=10A\npart iso isolator",
		"wire w4", "wire w4 ctrl.B- iso.in gauge=2AWG\nwire w5 iso.out pack.NEG gauge=2AWG", "stack pack.NEG", "")},
	{rule: "reducer-input-reversed", name: "isolated", text: isolated},
	{rule: "reducer-output-reversed", name: "one device is its own mistake", text: edited(isolated, "wire w5", "wire w5 red.OUT- usb.+", "wire w7", "wire w7 red.OUT+ usb.-")},
	{rule: "reducer-swapped", name: "a shared negative is no swap", text: lithium},
	{rule: "diode-reversed", name: "band to coil+", text: lithium},
	{rule: "diode-reversed", name: "a coil switched in its return", text: edited(lithium, "wire k6", "wire k6 key.IGN sol.coil+ gauge=16AWG insulation=105C",
		"wire k8", "wire k8 sol.coil- chg.interlock-b gauge=16AWG insulation=105C", "wire k5", "wire k5 nb.2 chg.interlock-a gauge=16AWG insulation=105C", "wire k7", "wire k7 pedal.NO ctrl.KSI gauge=16AWG insulation=105C", "stack nb.2", "")},
	{rule: "load-reversed", name: "a filament has no polarity", text: edited(isolated, "+", "part lt lamp-12v\nwire x1 lt.- red.OUT+ gauge=16AWG\nwire x2 lt.+ red.OUT- gauge=16AWG")},
	{rule: "load-reversed", name: "what it sees against what could be joined to it", text: bridge("b1.-", "fu.out")},
	{rule: "meter-reversed", name: "before and behind the shunt", text: lithium},
	{rule: "shunt-reversed", name: "pack negative alone on BATT", text: lithium},
	{rule: "over-voltage", name: "12 V on the reducer, 48 V on the pack", text: lithium},
	{rule: "over-voltage", name: "eight lead batteries at the end of charge", text: lead},
	{rule: "over-voltage", name: "a 36 V coil held by the controller", text: edited(sepex, "part sol", "part sol contactor-36v")},
	{rule: "under-voltage", name: "12 V on the reducer, 48 V on the pack", text: lithium},

	{rule: "no-main-fuse", name: "an isolator before the fuse", text: edited(direct, "part fu3", "part fu3 fuse-inline-80v fuse-rating=10A\npart iso isolator",
		"wire w1", "wire w1 pack.POS iso.in gauge=2AWG length=80mm\nwire w0 iso.out fu1.in gauge=2AWG length=80mm")},
	{rule: "no-main-fuse", name: "a fuse in the middle of the string", text: edited(lead, "+", "part fm fuse-class-t\nwire j9 fm.out b5.- gauge=4AWG", "wire j4", "wire j4 b4.+ fm.in gauge=4AWG")},
	{rule: "tap-unfused", name: "jumpers inside a string", text: edited(lead, "wire c1", "", "stack b8.+", "")},
	{rule: "tap-unfused", name: "branches ahead of the main fuse, each with its own", text: edited(lithium, "wire r1", "wire r1 pack.POS fu4.in gauge=12AWG length=120mm", "stack fu1.out", "stack fu1.out w2 s3")},
	{rule: "tap-unfused", name: "motor leads behind a controller", text: edited(direct, "part fu1", "part fu1 isolator", "+",
		"part motor motor-series\nwire m1 ctrl.B+ motor.A1 gauge=6AWG\nwire m2 motor.A2 ctrl.A2 gauge=6AWG")},
	{rule: "fuse-opens", name: "18 A through 40 A", text: lithium},
	{rule: "fuse-too-large", name: "150 % below 50 V", text: edited(lead, "part fu3", "part fu3 fuse-inline-80v fuse-rating=22A", "wire k2", "wire k2 fu3.out key.BAT gauge=16AWG insulation=60C")},
	{rule: "fuse-too-large", name: "a short lead to its own fuse", text: lithium},
	{rule: "fuse-too-large", name: "the leads of a resistor on the contactor", text: lithium},
	{rule: "fuse-too-large", name: "behind a coil nothing persists", text: edited(lithium, "wire k8", "wire k8 sol.coil- nb.2 gauge=18AWG insulation=60C")},
	{rule: "feeds-add-up", name: "charger and main fuse on the pack side", text: lithium},
	{rule: "fuse-volts", name: "32 V on the 12 V side", text: lithium},
	{rule: "fuse-volts", name: "80 V on 58.4 V", text: edited(lithium, "part fu1", "part fu1 fuse-class-t fuse-rating=200A voltage-rating=80V")},
	{rule: "fuse-interrupting", name: "a small fuse behind an adequate one", text: lithium},
	{rule: "fuse-too-far", name: "7 in", text: edited(lithium, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG length=7in")},
	{rule: "fuse-too-far", name: "40 in in a sheath", text: edited(lithium, "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG length=40in sheathed")},
	{rule: "fuse-too-far", name: "a tap that the main fuse protects anyway", text: edited(lithium, "wire r1", "wire r1 fu1.out fu4.in gauge=2AWG insulation=105C length=2m")},
	{rule: "fuse-in-negative-only", name: "a fuse in both", text: edited(direct, "part fu3", "part fu3 fuse-inline-80v fuse-rating=10A\npart fn fuse-class-t",
		"wire w4", "wire w4 ctrl.B- fn.in gauge=2AWG\nwire w5 fn.out pack.NEG gauge=2AWG", "wire k5", "wire k5 sol.coil- fn.in gauge=16AWG", "stack pack.NEG", "")},
	{rule: "source-exceeds-wire", name: "18 A over 10 AWG", text: lithium},

	{rule: "stack-order", name: "largest on the seat", text: lithium},
	{rule: "stack-order", name: "equal sizes need no order", text: "part b1 lead-battery-6v\npart b2 lead-battery-6v\nwire a b1.+ b2.- gauge=4AWG\nwire b b1.+ b2.- gauge=4AWG\njob system=12V"},
	{rule: "stack-count", name: "four", text: lithium},
	{rule: "lug-hole", name: "M8 on M8", text: lithium},
	{rule: "stud-cover", name: "a missing boot on a negative", text: edited(lithium, "+", "at pack.NEG cover=missing")},
	{rule: "stud-cover", name: "a missing boot behind the contactor", text: edited(lithium, "+", "at ctrl.B+ cover=missing")},
	{rule: "cut-end-live", name: "a wire that is off at its source", text: edited(lithium, "+", "wire x1 cut capped gauge=16AWG")},
	{rule: "capped-end-live", name: "on the negative", text: edited(lithium, "+", "wire x1 capped nb.4 gauge=16AWG")},
	{rule: "untraced-end-live", name: "on a signal pin", text: edited(lithium, "+", "wire x1 untraced pack.CAN-H gauge=18AWG")},

	{rule: "return-overload", name: "each negative to the bus by itself", text: lithium},
	{rule: "return-overload", name: "the leads of a shunt", text: edited(lithium, "wire s1", "wire s1 shunt.sense+ meter.sense+ gauge=22AWG length=2m", "wire s2", "wire s2 shunt.sense- meter.sense- gauge=22AWG length=2m")},
	{rule: "opening-curve", text: lithium, also: opens("fu3", 100, 100, 1000, 1)},
	{rule: "device-too-slow", name: "a quick fuse", text: edited(direct, "part fu1", "part fu1 fuse-class-t fuse-rating=200A"), also: quick},
	{rule: "not-selective", name: "sixteen times", text: edited(direct, "part fu1", "part fu1 fuse-class-t fuse-rating=160A opening=iec-60269-gg", "part fu3", "part fu3 fuse-inline-80v fuse-rating=10A opening=iec-60269-gg")},
	{rule: "not-selective", name: "nobody knows", text: lithium},
	{rule: "wire-too-thin", name: "2 AWG on 150 A for long and 400 A for 30 s", text: lithium},
	{rule: "wire-too-thin", name: "the starting current of speed coils", text: resistor},
	{rule: "drop-too-high", name: "a metre of 16 AWG", text: lithium},
	{rule: "drives-unasked", name: "interlocks in the feed of the coil", text: lithium},
	{rule: "drives-unasked", name: "the contactor closes with the key", text: ac72},
	{rule: "drives-unasked", name: "tow switch and interlock in the logic feed", text: sepex},
	{rule: "does-not-drive", name: "forward and reverse", text: lithium},
	{rule: "does-not-drive", name: "the motor is not on the sheet", text: direct},
	{rule: "no-rest", name: "a relay on the key", text: lithium},
	{rule: "starved", name: "a feed of its own", text: isolated},
	{rule: "pack-on-frame", name: "an isolated 12 V side on the frame", text: edited(isolated, "+", "part fr frame-point\nwire x1 red.OUT- fr.FRAME gauge=12AWG insulation=105C length=300mm")},
	{rule: "pack-on-frame", name: "the earth of the inlet", text: edited(lithium, "+", "part inl ac-inlet\npart fr frame-point\nwire x1 inl.PE fr.FRAME gauge=14AWG")},
	{rule: "pre-charge", name: "470 ohm over the studs", text: lithium},
	{rule: "coil-suppression", name: "a diode, band to coil+", text: lithium},
	{rule: "coil-suppression", name: "a driver with a clamp", text: ac72},
	{rule: "charger-mismatch", name: "16 cells on 16", text: lithium},
	{rule: "charger-mismatch", name: "lead on lead", text: lead},
	{rule: "pack-current", name: "the pack gives more", text: lithium},
	{rule: "stand-by-drain", name: "the wake lead behind the key", text: lithium},
}
