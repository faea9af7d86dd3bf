package rule_test

// fourSix is a string of four batteries on a 24 V cart, with what a test hangs on it.
const fourSix = `
job system=24V
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
wire j1 b1.+ b2.- gauge=4AWG
wire j2 b2.+ b3.- gauge=4AWG
wire j3 b3.+ b4.- gauge=4AWG
`

// lampOnPack is a lamp on a reducer of some kind behind a fuse, its return left to the test.
func lampOnPack(reducer, negative, back string) string {
	return "part pack lithium-pack-16\npart fu4 fuse-cartridge fuse-rating=15A\npart red " + reducer + "\npart lt lamp-headlight\npart fr frame-point\n" +
		"wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm\nwire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=1m\n" +
		"wire r3 red." + negative + " pack.NEG gauge=12AWG insulation=105C length=1m\nwire a1 red.OUT+ lt.+ gauge=12AWG insulation=105C length=1m\n" +
		"wire a2 lt.- " + back + " gauge=12AWG insulation=105C length=1m\nat pack.POS cover=fitted\nat fu4.in cover=fitted"
}

var supplyBad = []example{
	{rule: "under-voltage", name: "a 48 V coil on 36 V", text: "job system=36V\npart pack lithium-pack-12\npart fu fuse-inline-80v fuse-rating=5A\npart sol contactor-48v\n" +
		"wire k1 pack.POS fu.in gauge=16AWG length=100mm\nwire k2 fu.out sol.coil+ gauge=16AWG\nwire k3 sol.coil- pack.NEG gauge=16AWG"},
	{rule: "part-of-string", name: "two lamps on the first two, one on the last", text: fourSix + "part fu fuse-inline fuse-rating=5A\npart l1 lamp-12v\npart l2 lamp-tail\npart l3 lamp-12v voltage=6V current=2A\n" +
		"wire x1 b2.+ fu.in gauge=16AWG length=100mm\nwire x2 fu.out l1.+ gauge=16AWG\nwire x3 fu.out l2.+ gauge=16AWG\nwire x4 l1.- b1.- gauge=16AWG\nwire x5 l2.- b1.- gauge=16AWG\n" +
		"wire x6 l3.+ b4.+ gauge=16AWG\nwire x7 l3.- b3.+ gauge=16AWG"},
	{rule: "part-of-string", name: "a reducer on one of two packs in series", text: "job system=72V\npart p1 lithium-pack-12\npart p2 lithium-pack-12\npart fu fuse-cartridge fuse-rating=10A\npart red reducer-isolated\n" +
		"wire j1 p1.POS p2.NEG gauge=2AWG\nwire x1 p1.POS fu.in gauge=12AWG length=100mm\nwire x2 fu.out red.IN+ gauge=12AWG\nwire x3 red.IN- p1.NEG gauge=12AWG"},

	{rule: "frame-return", name: "to the pack", text: edited(lampOnPack("reducer-common-negative", "NEG", "fr.FRAME"), "+", "wire a3 fr.FRAME pack.NEG gauge=12AWG")},
	{rule: "frame-return", name: "to a reducer that shares its negative", text: edited(lampOnPack("reducer-common-negative", "NEG", "fr.FRAME"), "+", "wire a3 fr.FRAME red.NEG gauge=12AWG")},
	{rule: "frame-return", name: "to an isolated reducer", text: edited(lampOnPack("reducer-isolated", "IN-", "fr.FRAME"), "+", "wire a3 fr.FRAME red.OUT- gauge=12AWG")},
	{rule: "frame-return", name: "to nowhere, behind a button, two of them", text: edited(lampOnPack("reducer-isolated", "IN-", "fr.FRAME"), "+",
		"part hn horn-12v\npart hb horn-button\nwire h1 red.OUT+ hn.+ gauge=12AWG\nwire h2 hn.- hb.IN gauge=12AWG\nwire h3 hb.OUT fr.FRAME gauge=12AWG")},

	{rule: "shared-negative", name: "a joint over the frame", text: edited(lampOnPack("reducer-isolated", "IN-", "red.OUT-"), "+", "wire a3 fr.FRAME red.OUT- gauge=12AWG\nwire a4 fr.FRAME pack.NEG gauge=12AWG")},
	{rule: "shared-negative", name: "no way back", text: lampOnPack("reducer-isolated", "IN-", "pack.NEG")},
	{rule: "shared-negative", name: "taken for isolated", text: edited(lampOnPack("reducer-common-negative", "NEG", "red.NEG"), "+", "wire a3 fr.FRAME red.NEG gauge=12AWG")},

	{rule: "wake-on-hot-side", name: "looped to the input", text: edited(lithium, "wire r4", "wire r4 fu4.out fu5.in gauge=16AWG insulation=105C length=100mm")},
	{rule: "wake-on-hot-side", name: "through its fuse on the key's hot side", text: edited(lithium, "wire r4", "wire r4 key.BAT fu5.in gauge=16AWG insulation=105C length=100mm", "+", "stack key.BAT k2 r4\nstack key.IGN k3 k9")},

	{rule: "reducer-overloaded", name: "by typical figures", text: edited(lithium, "part red", "part red reducer-common-negative output-current=4A")},
	{rule: "reducer-overloaded", name: "with the lights on, by watts and ohms", text: edited(lithium, "part red", "part red reducer-common-negative output-current=5A",
		"part lt1", "part lt1 lamp-headlight current=4A\npart sw light-switch\npart usb2 usb-outlet current=2A", "part usb", "part usb usb-outlet current=2A", "wire a3", "wire a3 fb.1 sw.IN gauge=16AWG insulation=105C length=1m\nwire a7 sw.OUT lt1.+ gauge=16AWG insulation=105C length=1m")},

	{rule: "branch-unfused", name: "on the reducer, the wires stand it", text: edited(isolated, "wire w4", "")},
	{rule: "branch-unfused", name: "one fuse for lamps and horn", text: edited(isolated, "wire w4", "", "wire w5", "", "wire w6", "", "+",
		"part fs fuse-inline fuse-rating=30A\npart hn horn-12v\npart hb horn-button\nwire f0 red.OUT+ fs.in gauge=10AWG insulation=105C length=100mm\nwire f1 fs.out usb.+ gauge=18AWG insulation=60C\nwire f2 fs.out out.+ gauge=18AWG insulation=60C\nwire f3 fs.out hb.IN gauge=18AWG insulation=60C\nwire f4 hb.OUT hn.+ gauge=18AWG insulation=60C\nwire f5 hn.- red.OUT- gauge=18AWG")},
	{rule: "branch-unfused", name: "three behind a fuse on part of the string", text: fourSix + "part fu fuse-inline fuse-rating=5A\npart l1 lamp-12v\npart l2 lamp-tail\npart l4 lamp-tail\nwire x6 fu.out l4.+ gauge=16AWG\nwire x7 l4.- b1.- gauge=16AWG\n" +
		"wire x1 b2.+ fu.in gauge=16AWG length=100mm\nwire x2 fu.out l1.+ gauge=16AWG\nwire x3 fu.out l2.+ gauge=16AWG\nwire x4 l1.- b1.- gauge=16AWG\nwire x5 l2.- b1.- gauge=16AWG"},
}

var supplyGood = []example{
	{rule: "part-of-string", name: "a lamp on the whole", text: fourSix + "part lt lamp-12v voltage=24V\nwire x1 lt.+ b4.+ gauge=16AWG\nwire x2 lt.- b1.- gauge=16AWG"},
	{rule: "part-of-string", name: "one pack", text: lithium},
	{rule: "part-of-string", name: "a contact may put it on the whole", text: fourSix + "part lt lamp-12v voltage=24V\npart ry relay\nwire x1 lt.+ ry.30 gauge=16AWG\nwire x2 ry.87 b4.+ gauge=16AWG\nwire x3 ry.87a b2.+ gauge=16AWG\nwire x4 lt.- b1.- gauge=16AWG"},
	{rule: "frame-return", name: "an isolated 12 V side on the frame, with wires of its own", text: edited(lampOnPack("reducer-isolated", "IN-", "red.OUT-"), "+", "wire a3 fr.FRAME red.OUT- gauge=12AWG")},
	{rule: "frame-return", name: "no frame on the sheet", text: lithium},
	{rule: "shared-negative", name: "an isolated 12 V side on the frame", text: edited(lampOnPack("reducer-isolated", "IN-", "red.OUT-"), "+", "wire a3 fr.FRAME red.OUT- gauge=12AWG")},
	{rule: "shared-negative", name: "one negative for both, off the frame", text: lithium},
	{rule: "shared-negative", name: "a device that returns over the frame says it", text: edited(lampOnPack("reducer-common-negative", "NEG", "fr.FRAME"), "+", "wire a3 fr.FRAME red.NEG gauge=12AWG")},
	{rule: "wake-on-hot-side", name: "behind the key", text: lithium},
	{rule: "wake-on-hot-side", name: "no key on the sheet", text: isolated},
	{rule: "reducer-overloaded", name: "5 A of 20", text: lithium},
	{rule: "reducer-overloaded", name: "a load that is not recorded", text: edited(lithium, "+", "part x unknown\nwire x1 fb.4 x.+ gauge=16AWG")},
	{rule: "branch-unfused", name: "a block", text: lithium},
	{rule: "branch-unfused", name: "a pair behind a fuse that its wires stand", text: edited(isolated, "wire w4", "", "wire w5", "wire w5 fs.out usb.+ gauge=12AWG insulation=105C", "wire w6", "wire w6 fs.out out.+ gauge=12AWG insulation=105C", "+",
		"part fs fuse-inline fuse-rating=10A\nwire f0 red.OUT+ fs.in gauge=12AWG insulation=105C length=100mm")},
	{rule: "branch-unfused", name: "two lamps behind one switch", text: edited(isolated, "wire w4", "", "wire w5", "", "wire w6", "", "+",
		"part sw light-switch\nwire f0 red.OUT+ sw.IN gauge=12AWG insulation=105C\nwire f1 sw.OUT usb.+ gauge=12AWG insulation=105C\nwire f2 sw.OUT out.+ gauge=12AWG insulation=105C")},
	{rule: "branch-unfused", name: "what the pack feeds has other rules", text: lead},
}

// paired is a pack and a display on a CAN pair.
const paired = `
part pack lithium-pack-16
part disp can-display
part t1 can-terminator
part t2 can-terminator
wire n1 pack.CAN-H disp.CAN-H gauge=20AWG
wire n2 pack.CAN-L disp.CAN-L gauge=20AWG
wire n3 t1.CAN-H pack.CAN-H gauge=20AWG
wire n4 t1.CAN-L pack.CAN-L gauge=20AWG
wire n5 t2.CAN-H disp.CAN-H gauge=20AWG
wire n6 t2.CAN-L disp.CAN-L gauge=20AWG
`

var meteringBad = []example{
	{rule: "shunt-bypassed", name: "the charger", text: edited(lithium, "wire c3", "wire c3 chg.DC- shunt.BATT gauge=10AWG insulation=105C length=900mm", "stack nb.1", "", "+", "stack shunt.BATT w5 c3")},
	{rule: "shunt-bypassed", name: "the charger and the reducer on the pack's stud", text: edited(lithium, "wire c3", "wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm", "wire r3", "wire r3 red.NEG pack.NEG gauge=12AWG insulation=105C length=800mm",
		"stack nb.1", "", "stack nb.2", "", "+", "stack pack.NEG w5 c3 r3")},
	{rule: "shunt-bypassed", name: "the drive", text: edited(lithium, "wire w4", "wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm", "stack shunt.LOAD", "", "+", "stack pack.NEG w4 w5")},
	{rule: "shunt-bypassed", name: "a cable beside it", text: edited(lithium, "+", "wire x1 shunt.LOAD pack.NEG gauge=2AWG insulation=105C length=200mm", "stack shunt.LOAD", "stack shunt.LOAD w4 x1 n1")},
	{rule: "meter-always-on", name: "on the hot side of the key", text: edited(sepex, "wire k19", "wire k19 key.BAT vm.+ gauge=16AWG insulation=105C length=2m")},
	{rule: "meter-always-on", name: "a display on the pack", text: edited(ac72, "wire k14", "wire k14 fu3.out disp.supply+ gauge=18AWG insulation=105C")},
	{rule: "can-terminators", name: "three", text: edited(paired, "+", "part t3 can-terminator\nwire n7 t3.CAN-H disp.CAN-H gauge=20AWG\nwire n8 t3.CAN-L disp.CAN-L gauge=20AWG")},
	{rule: "can-terminators", name: "one", text: edited(paired, "wire n5", "", "wire n6", "", "part t2", "")},
	{rule: "can-terminators", name: "none", text: edited(paired, "wire n3", "", "wire n4", "", "part t1", "", "wire n5", "", "wire n6", "", "part t2", "")},
	{rule: "can-terminators", name: "one, and both devices are known to have none", text: edited(paired, "wire n5", "", "wire n6", "", "part t2", "", "part pack", "part pack lithium-pack-16 can-resistance=40kohm", "part disp", "part disp can-display can-resistance=25kohm")},
	{rule: "can-terminators", name: "two, and one inside", text: edited(paired, "part disp", "part disp can-display can-resistance=120ohm")},
	{rule: "can-terminators", name: "crossed", text: edited(paired, "wire n1", "wire n1 pack.CAN-H disp.CAN-L gauge=20AWG", "wire n2", "wire n2 pack.CAN-L disp.CAN-H gauge=20AWG")},
}

var meteringGood = []example{
	{rule: "shunt-bypassed", name: "all negatives on LOAD", text: lithium},
	{rule: "shunt-bypassed", name: "no shunt", text: ac72},
	{rule: "shunt-bypassed", name: "the meter's own supply on the battery side", text: edited(lithium, "wire s5", "wire s5 meter.supply- pack.NEG gauge=18AWG insulation=105C length=2m", "stack nb.3", "")},
	{rule: "meter-always-on", name: "a meter that counts", text: lithium},
	{rule: "meter-always-on", name: "behind the key", text: sepex},
	{rule: "can-terminators", name: "two", text: paired},
	{rule: "can-terminators", name: "one, and one inside", text: edited(paired, "wire n5", "", "wire n6", "", "part t2", "", "part disp", "part disp can-display can-resistance=120ohm")},
	{rule: "can-terminators", name: "nothing wired", text: lithium},
	{rule: "can-terminators", name: "one device alone", text: edited(paired, "wire n1", "", "wire n2", "", "wire n5", "", "wire n6", "")},
}
