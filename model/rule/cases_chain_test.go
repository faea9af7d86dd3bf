package rule_test

import "example.com/lugbook/model"

// found gives a part a condition.
func found(id model.PartID, c model.Condition) func(*model.Sheet) {
	return func(s *model.Sheet) { s.Part(id).Condition = append(s.Part(id).Condition, c) }
}

// aux is a lead of a control circuit to append to a wire line.
const aux = " gauge=16AWG insulation=105C length=1m"

// throttled is the cart with its two-wire throttle.
var throttled = edited(lithium, "+", "part thr throttle-2wire\nwire t1 thr.a ctrl.2"+aux+"\nwire t2 thr.b ctrl.3"+aux)

var chainBad = []example{
	{rule: "control-bypassed", text: edited(lithium, "+", "wire x1 key.BAT key.IGN"+aux)},
	{rule: "control-bypassed", name: "the plug's interlock by a loop", text: edited(lithium, "+", "wire x1 chg.interlock-a chg.interlock-b"+aux)},
	{rule: "control-bypassed", name: "through another wire and a fuse", text: edited(lithium, "+", "part fx fuse-cartridge fuse-rating=5A\nwire x1 pedal.COM fx.in"+aux+"\nwire x2 fx.out pedal.NO"+aux)},
	{rule: "over-voltage", name: "a lamp behind a diode", text: edited(lithium, "+", "part d9 diode\npart lt lamp-12v\nwire x1 key.IGN d9.anode"+aux+"\nwire x2 d9.cathode lt.+"+aux+"\nwire x3 lt.- nb.4"+aux)},
	{rule: "control-bypassed", name: "both contacts of the pedal switch on one lead", text: edited(lithium, "+", "wire x1 pedal.NC pedal.NO"+aux)},
	{rule: "control-bypassed", name: "recorded, without a wire", text: lithium, also: found("key", model.Bypassed)},
	{rule: "control-bypassed", name: "a switch of a lamp", text: edited(isolated, "+", "part sw switch\npart lt lamp-work\nwire x1 red.OUT+ sw.IN"+aux+"\nwire x2 sw.OUT lt.+"+aux+"\nwire x3 lt.- red.OUT-"+aux+"\nwire x4 sw.IN sw.OUT"+aux)},
	{rule: "control-bypassed", name: "the key hangs on one lead", text: edited(lithium, "wire k3", "wire k3 key.BAT dir.micro-com"+aux, "wire k9", "wire k9 key.BAT dir.rev-com"+aux, "wire r4", "wire r4 key.BAT fu5.in"+aux)},
	{rule: "control-bypassed", name: "the contactor of a pump", text: edited(lithium, "+", "part psol contactor-48v\npart pump pump-motor\npart psw switch\nwire x1 fu4.out psol.L1"+aux+"\nwire x2 psol.L2 pump.+"+aux+"\nwire x3 pump.- nb.4"+aux+
		"\nwire x4 key.IGN psw.IN"+aux+"\nwire x5 psw.OUT psol.coil+"+aux+"\nwire x6 psol.coil- nb.4"+aux+"\nwire x7 psol.L1 psol.L2"+aux)},
	{rule: "coil-always-fed", text: edited(lithium, "wire k6", "wire k6 key.BAT sol.coil+ gauge=16AWG insulation=105C length=2m")},
	{rule: "coil-always-fed", name: "of a pump", text: edited(lithium, "+", "part psol contactor-48v\npart pump pump-motor\nwire x1 fu4.out psol.L1"+aux+"\nwire x2 psol.L2 pump.+"+aux+"\nwire x3 pump.- nb.4"+aux+
		"\nwire x4 fu3.out psol.coil+"+aux+"\nwire x5 psol.coil- nb.4"+aux)},
	{rule: "contactor-closes-early", text: edited(lithium, "wire k6", "wire k6 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m")},
	{rule: "contactor-closes-early", name: "in neutral", text: edited(lithium, "wire k4", "wire k4 key.IGN pedal.COM gauge=16AWG insulation=105C length=1m", "wire k3", "")},
	{rule: "contactor-closes-early", name: "no direction switch to choose one", text: edited(lithium, "wire k6", "wire k6 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m",
		"part dir", "", "wire m2", "wire m2 motor.A2 motor.S1 gauge=2AWG", "wire m3", "", "wire m4", "", "wire m5", "wire m5 motor.S2 ctrl.M- gauge=2AWG",
		"wire k3", "wire k3 key.IGN pedal.COM gauge=16AWG insulation=105C length=1m", "wire k4", "", "wire k9", "", "wire b1", "", "wire b2", "", "part buz", "", "stack nb.3", "")},
	{rule: "key-input-live", text: edited(sepex, "wire k6", "wire k6 key.BAT ctrl.KSI gauge=16AWG insulation=105C length=2m")},
	{rule: "key-input-live", name: "once direction and pedal are set", text: edited(lithium, "wire k7", "wire k7 pedal.NO ctrl.KSI gauge=16AWG insulation=105C length=2m",
		"wire k3", "wire k3 key.BAT dir.micro-com"+aux, "wire k6", "wire k6 key.IGN sol.coil+"+aux)},
	{rule: "no-tow-switch", text: edited(sepex, "wire k4", "wire k4 chg.interlock-b ctrl.logic"+aux, "wire k3", "", "part tow", "", "wire k5", "wire k5 chg.interlock-b key.BAT"+aux)},
	{rule: "no-tow-switch", name: "the switch is there and passed by", text: edited(sepex, "wire k4", "wire k4 tow.1 ctrl.logic"+aux)},
	{rule: "backfeed", name: "through a pilot lamp", text: edited(lithium, "+", "part lp lamp-work-48v\nwire x1 fu1.out lp.+"+aux+"\nwire x2 lp.- key.IGN"+aux)},
	{rule: "backfeed", name: "through the coil of a relay", text: edited(lithium, "+", "part ry relay-48v\nwire x1 fu1.out ry.86"+aux+"\nwire x2 ry.85 key.IGN"+aux)},
	{rule: "backfeed", name: "from the charger", text: edited(lithium, "wire c2", "wire c2 fu2.out key.IGN gauge=10AWG insulation=105C length=120mm", "stack sol.L1", "stack sol.L1 w2 k1 p1")},
	{rule: "backfeed", name: "only a meter shows it", text: edited(direct, "+", "part lp lamp-work-48v\nwire x1 fu1.out lp.+"+aux+"\nwire x2 lp.- key.IGN"+aux,
		"wire k3", "wire k3 key.IGN capped", "part ctrl", "part ctrl controller-series")},
	{rule: "throttle-wiring", text: edited(sepex, "wire k15", "")},
	{rule: "throttle-wiring", name: "not wired", text: edited(lithium, "+", "part thr throttle-2wire")},
	{rule: "throttle-wiring", name: "shorted", text: edited(throttled, "+", "wire x1 thr.a thr.b"+aux)},
	{rule: "throttle-wiring", name: "a lead on the negative of a meter", text: edited(throttled, "wire t2", "wire t2 thr.b vm.-"+aux, "+", "part vm voltmeter")},
	{rule: "throttle-wiring", name: "a lead on the neutral of the charger", text: edited(throttled, "wire t2", "wire t2 thr.b chg.AC-N"+aux)},
	{rule: "throttle-wiring", name: "a lead on the key", text: edited(throttled, "wire t2", "wire t2 thr.b key.IGN"+aux)},
	{rule: "throttle-wiring", name: "crossed ends", text: edited(sepex, "wire k14", "wire k14 thr.high ctrl.throttle-low gauge=18AWG", "wire k16", "wire k16 thr.low ctrl.throttle-high gauge=18AWG")},
	{rule: "reverse-warning", name: "none recorded", text: ac72},
	{rule: "reverse-warning", name: "dead", text: edited(lithium, "wire k9", "")},
	{rule: "reverse-warning", name: "sounds in forward", text: edited(lithium, "wire k9", "", "wire b1", "wire b1 dir.micro-no buz.+"+aux)},
	{rule: "reverse-warning", name: "sounds parked", text: edited(lithium, "wire k9", "", "wire b1", "wire b1 fu3.out buz.+"+aux)},
	{rule: "coil-marginal", name: "at the cutoff of the pack", text: edited(lithium, "part sol", "part sol contactor-48v pull-in-voltage=45V")},
	{rule: "coil-marginal", name: "hot", text: edited(lithium, "part sol", "part sol contactor-48v pull-in-voltage=39V", "part pack", "part pack lithium-pack-16 cutoff-voltage=48V")},
	{rule: "coil-marginal", name: "by the library's figure", text: edited(lithium, "part pack", "part pack lithium-pack-16 cutoff-voltage=33V")},
	{rule: "does-not-drive", name: "a pedal switch on its resting contact", text: edited(lithium, "wire k5", "wire k5 pedal.NC chg.interlock-a"+aux)},
	{rule: "does-not-drive", name: "the tow switch left out", text: edited(sepex, "wire k4", "", "wire k5", "wire k5 tow.1 key.BAT"+aux)},
	{rule: "does-not-drive", name: "it goes out of sight", text: edited(lithium, "wire k7", "wire k7 untraced ctrl.KSI"+aux)},
	{rule: "does-not-drive", name: "the lead of a motor without a field is off", text: edited(direct, "+", "part motor motor-pm\nwire m1 ctrl.B+ motor.A1 gauge=2AWG insulation=105C length=500mm\nwire k6 sol.coil+ ctrl.KSI"+aux)},
	{rule: "does-not-drive", name: "held by the lock-out pin", text: edited(sepex, "+", "wire x1 tow.2 ctrl.lockout"+aux)},
	{rule: "does-not-drive", name: "in reverse alone", text: edited(sepex, "wire k11", "wire k11 dir.R cut"+aux)},
	{rule: "does-not-drive", name: "a relay in the feed is not pulled in", text: edited(lithium, "wire k6", "wire k6 chg.interlock-b ry.30"+aux+"\npart ry relay-48v\nwire x1 ry.87 sol.coil+"+aux, "stack sol.coil+", "")},
	{rule: "does-not-drive", name: "the lead of a speed step is burnt off", text: edited(resistor, "part pedal", "part pedal pedal-switch-steps", "wire k4", "wire k4 pedal.P1 sol.coil+", "wire a4", "wire a4 wiper.C2 cut gauge=6AWG")},
	{rule: "does-not-drive", name: "the work contact of an interlock relay", text: edited(lithium, "+", "part acr ac-relay", "wire k5", "wire k5 pedal.NO acr.COM"+aux,
		"wire k6", "wire k6 acr.NO sol.coil+"+aux, "wire k7", "wire k7 acr.NO ctrl.KSI"+aux)},
	{rule: "pre-charge-twice", name: "three", text: edited(twoResistors, "+", "part pre3 precharge-resistor\nwire p5 sol.L1 pre3.a gauge=18AWG\nwire p6 sol.L2 pre3.b gauge=18AWG")},
	{rule: "both-directions", name: "pulled in together: the field is lost", text: edited(changing, "+", "wire x1 dir.F dir.R"+aux)},
	{rule: "both-directions", name: "a bridge round a motor without a field", text: edited(fourContactors, "part motor", "part motor motor-pm", "wire w4", "wire w4 f1.L2 motor.A1 gauge=2AWG", "wire w5", "wire w5 r1.L2 motor.A2 gauge=2AWG",
		"wire w6", "wire w6 f2.L1 motor.A2 gauge=2AWG", "wire w7", "wire w7 r2.L1 motor.A1 gauge=2AWG", "wire w9", "wire w9 f2.L2 pack.NEG gauge=2AWG", "wire w10", "")},
	{rule: "both-directions", name: "pulled in together: a short", text: edited(fourContactors, "+", "wire x1 dir.F dir.R"+aux)},
	{rule: "both-directions", name: "only the switch keeps them apart", text: fourContactors},
	{rule: "pre-charge-twice", text: twoResistors},
	{rule: "pre-charge-twice", name: "one outside, one inside", text: edited(ac72, "part ctrl", "part ctrl controller-ac-72v clamp-voltage=110V precharge-resistance=200ohm")},
	{rule: "controller-stays-charged", name: "past the isolator", text: edited(sepex, "wire p1", "wire p1 iso.in pre.a gauge=18AWG", "stack iso.in", "stack iso.in w2 c2 p1", "stack sol.L1", "stack sol.L1 w3 k1")},
	{rule: "controller-stays-charged", name: "nothing takes it off", text: edited(lead, "+", "part pre precharge-resistor\nwire p1 sol.L1 pre.a gauge=18AWG\nwire p2 sol.L2 pre.b gauge=18AWG")},
	{rule: "pre-charge", name: "none on 36 V", text: edited(direct, "+", "job system=36V", "part pack", "part pack lithium-pack-12", "part sol", "part sol contactor-36v", "part ctrl", "part ctrl controller-series voltage=36V")},
	{rule: "pre-charge", name: "none on 72 V", text: edited(ac72, "part pre", "", "wire p1", "", "wire p2", "", "stack sol.L1", "stack sol.L1 w2 c2 k1", "stack sol.L2", "")},
	{rule: "coil-suppression", name: "of two coils", text: edited(lithium, "part dio", "", "wire d1", "", "wire d2", "", "stack sol.coil+", "", "stack sol.coil-", "", "+", "part ry relay-48v\nwire x1 key.IGN ry.86"+aux+"\nwire x2 ry.85 nb.4"+aux)},
}

// fourContactors is a cart that reverses by four plain contactors in a bridge round its field.
const fourContactors = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part fu3 fuse-cartridge fuse-rating=10A
part key key-switch
part dir direction-rocker
part pedal pedal-switch
part motor motor-series
part f1 contactor-48v clamp-voltage=80V
part f2 contactor-48v clamp-voltage=80V
part r1 contactor-48v clamp-voltage=80V
part r2 contactor-48v clamp-voltage=80V
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out f1.L1 gauge=2AWG insulation=105C length=300mm
wire w3 f1.L1 r1.L1 gauge=2AWG insulation=105C length=100mm
wire w4 f1.L2 motor.S1 gauge=2AWG insulation=105C length=500mm
wire w5 r1.L2 motor.S2 gauge=2AWG insulation=105C length=500mm
wire w6 f2.L1 motor.S2 gauge=2AWG insulation=105C length=500mm
wire w7 r2.L1 motor.S1 gauge=2AWG insulation=105C length=500mm
wire w8 f2.L2 r2.L2 gauge=2AWG insulation=105C length=100mm
wire w9 f2.L2 motor.A1 gauge=2AWG insulation=105C length=500mm
wire w10 motor.A2 pack.NEG gauge=2AWG insulation=105C length=500mm
wire k1 fu1.out fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN pedal.COM gauge=16AWG insulation=105C length=1m
wire k4 pedal.NO dir.COM gauge=16AWG insulation=105C length=1m
wire k5 dir.F f1.coil+ gauge=16AWG insulation=105C length=1m
wire k6 f1.coil+ f2.coil+ gauge=16AWG insulation=105C length=100mm
wire k7 dir.R r1.coil+ gauge=16AWG insulation=105C length=1m
wire k8 r1.coil+ r2.coil+ gauge=16AWG insulation=105C length=100mm
wire n1 f1.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire n2 f2.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire n3 r1.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire n4 r2.coil- pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

// changing is the same with a pair of change-over contactors.
const changing = `
part pack lithium-pack-16
part fu3 fuse-cartridge fuse-rating=10A
part key key-switch
part dir direction-rocker
part rf reverse-contactor clamp-voltage=80V
part rr reverse-contactor clamp-voltage=80V
wire k1 pack.POS fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=1m
wire k3 key.IGN dir.COM gauge=16AWG insulation=105C length=1m
wire k4 dir.F rf.coil+ gauge=16AWG insulation=105C length=1m
wire k5 dir.R rr.coil+ gauge=16AWG insulation=105C length=1m
wire n1 rf.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire n2 rr.coil- pack.NEG gauge=16AWG insulation=105C length=1m
wire m3 rf.NC rr.NC gauge=2AWG insulation=105C length=200mm
wire m4 rf.NO rr.NO gauge=2AWG insulation=105C length=200mm
at pack.POS cover=fitted
`

// twoResistors is the cart with a second resistor on the studs of its contactor.
var twoResistors = edited(lithium, "+", "part pre2 precharge-resistor\nwire p3 sol.L1 pre2.a gauge=18AWG insulation=105C length=80mm\nwire p4 sol.L2 pre2.b gauge=18AWG insulation=105C length=80mm",
	"stack sol.L1", "stack sol.L1 w2 c2 k1 p1 p3", "stack sol.L2", "stack sol.L2 w3 p2 p4")

var chainGood = []example{
	{rule: "control-bypassed", name: "no bridge", text: lithium},
	{rule: "control-bypassed", name: "the contacts of a key with an accessory terminal on one lead", text: edited(lithium, "part key", "part key key-switch-acc", "+", "wire x1 key.ACC key.IGN"+aux)},
	{rule: "control-bypassed", name: "a contact beside a resistance", text: edited(lithium, "+", "part pr precharge-resistor\nwire x1 key.BAT pr.a"+aux+"\nwire x2 pr.b key.IGN"+aux)},
	{rule: "coil-always-fed", name: "behind key and pedal", text: lithium},
	{rule: "coil-always-fed", name: "the key's feed is live, the driver open", text: sepex},
	{rule: "contactor-closes-early", name: "behind key, lever and pedal", text: lithium},
	{rule: "contactor-closes-early", name: "the controller closes it with the key", text: ac72},
	{rule: "contactor-closes-early", name: "no pedal switch is recorded", text: direct},
	{rule: "key-input-live", name: "behind the pedal", text: lithium},
	{rule: "key-input-live", name: "behind the key", text: sepex},
	{rule: "key-input-live", name: "it drives with the key off: told once", text: edited(lithium, "wire k3", "wire k3 key.BAT dir.micro-com gauge=16AWG insulation=105C length=1m")},
	{rule: "no-tow-switch", name: "in the feed of the logic", text: sepex},
	{rule: "no-tow-switch", name: "the key takes it off", text: edited(sepex, "wire k4", "wire k4 key.IGN ctrl.logic"+aux, "wire k5", "wire k5 chg.interlock-b key.BAT"+aux, "wire k3", "", "part tow", "")},
	{rule: "no-tow-switch", name: "an AC drive's logic is its key input", text: ac72},
	{rule: "backfeed", name: "everything behind the key is dead", text: lithium},
	{rule: "backfeed", name: "a bridge of plain wire is another fault", text: edited(lithium, "+", "wire x1 key.BAT key.IGN"+aux)},
	{rule: "control-bypassed", name: "a bridge to a spare contact", text: edited(lithium, "+", "wire x1 pedal.COM pedal.NC"+aux)},
	{rule: "throttle-wiring", name: "two leads, either way round", text: edited(throttled, "wire t1", "wire t1 thr.a ctrl.3"+aux, "wire t2", "wire t2 thr.b ctrl.2"+aux)},
	{rule: "throttle-wiring", name: "three leads", text: sepex},
	{rule: "throttle-wiring", name: "a lead by way of a switch", text: edited(throttled, "wire t2", "part sw switch\nwire t2 thr.b sw.IN"+aux+"\nwire t3 sw.OUT ctrl.3"+aux)},
	{rule: "throttle-wiring", name: "a track with a supply of its own", text: edited(sepex, "wire k14", "part red reducer-isolated\nwire k14 thr.high red.OUT+ gauge=18AWG")},
	{rule: "throttle-wiring", name: "a lead goes out of sight", text: edited(sepex, "wire k15", "wire k15 thr.wiper untraced gauge=18AWG")},
	{rule: "reverse-warning", name: "at the reverse contact", text: lithium},
	{rule: "reverse-warning", name: "a lamp that lights in reverse alone", text: edited(lithium, "part buz", "part buz lamp-work-48v", "wire b1", "wire b1 dir.rev-no buz.+"+aux)},
	{rule: "reverse-warning", name: "not all is traced yet", text: edited(ac72, "+", "wire x1 untraced key.IGN"+aux)},
	{rule: "coil-marginal", name: "34 V on 16 cells", text: lithium},
	{rule: "coil-marginal", name: "eight lead batteries", text: lead},
	{rule: "both-directions", name: "each from its own lead", text: changing},
	{rule: "both-directions", name: "each through a resting contact of a relay of the other", text: edited(fourContactors,
		"wire k5", "wire k5 dir.F rr.30"+aux+"\npart rr relay-48v clamp-voltage=80V\nwire x1 rr.87a f1.coil+"+aux+"\nwire x2 dir.R rr.86"+aux+"\nwire x3 rr.85 pack.NEG"+aux)},
	{rule: "pre-charge-twice", name: "one", text: lithium},
	{rule: "controller-stays-charged", name: "the pack's own switch takes it off", text: lithium},
	{rule: "controller-stays-charged", name: "behind the isolator", text: sepex},
	{rule: "does-not-drive", name: "a controller that wants no direction", text: lithium},
}
