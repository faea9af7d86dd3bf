package rule_test

import "example.com/lugbook/model/rule"

// page is the right example of a rule's page.
func page(id string) string { return rule.Find(id).Right.Of }

// spliced is a fuse with a thick wire that goes on as a thinner one.
const spliced = `
part pack lithium-pack-16
part fu3 fuse-cartridge fuse-rating=25A
part sp splice
part buz buzzer
wire k1 pack.POS fu3.in gauge=10AWG insulation=105C length=100mm
wire k2 fu3.out sp.J gauge=12AWG insulation=105C length=1m
wire k3 sp.J buz.+ gauge=16AWG insulation=60C length=1m
wire k4 buz.- pack.NEG gauge=12AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu3.in cover=fitted
`

var protectionBad = []example{
	{rule: "no-main-fuse", name: "behind an isolator on the negative side too", text: edited(page("no-main-fuse"), "part fu1", "", "wire w1", "", "at fu1.in", "",
		"wire w2", "wire w2 pack.POS iso.in gauge=2AWG insulation=105C length=600mm serves=traction")},
	{rule: "fuse-too-large", name: "a thinner wire spliced on", text: spliced},
	{rule: "fuse-too-large", name: "a thinner wire behind a plug", text: edited(spliced, "part sp", "part plug connector-2 continuous-current=30A",
		"wire k2", "wire k2 fu3.out plug.1a gauge=12AWG insulation=105C length=1m", "wire k3", "wire k3 plug.1b buz.+ gauge=16AWG insulation=60C length=1m")},
	{rule: "fuse-too-large", name: "a thinner wire on a post", text: edited(spliced, "part sp", "part sp bus-post",
		"wire k2", "wire k2 fu3.out sp.POST gauge=12AWG insulation=105C length=1m", "wire k3", "wire k3 sp.POST buz.+ gauge=16AWG insulation=60C length=1m", "+", "stack sp.POST k2 k3")},
	{rule: "fuse-too-large", name: "a thinner wire behind a switch is not spliced on", text: edited(spliced, "part sp", "part sw switch continuous-current=30A",
		"wire k2", "wire k2 fu3.out sw.IN gauge=12AWG insulation=105C length=1m", "wire k3", "wire k3 sw.OUT buz.+ gauge=16AWG insulation=60C length=1m")},
	{rule: "fuse-too-large", name: "the size of a breaker before 20 AWG", text: edited(spliced, "part fu3", "part fu3 fuse-cartridge fuse-rating=6A", "wire k3", "wire k3 sp.J buz.+ gauge=20AWG insulation=105C length=1m")},
	{rule: "output-shorted", name: "behind a switch, through a fuse that holds", text: edited(page("output-shorted"), "part lt", "part sw switch\npart fx fuse-cartridge fuse-rating=40A",
		"wire a3", "wire a3 fb.IN fx.in gauge=10AWG insulation=105C length=100mm\nwire a7 fx.out sw.IN gauge=10AWG insulation=105C length=1m", "wire a4", "wire a4 sw.OUT fb.NEG1 gauge=10AWG insulation=105C length=1m")},
	{rule: "output-shorted", name: "of a charger", text: edited(lithium, "wire c3", "wire c3 chg.DC- chg.DC+ gauge=10AWG insulation=105C length=900mm", "stack nb.1", "")},
	{rule: "fuse-volts", name: "a larger one", text: edited(page("fuse-volts"), "part fu1", "part fu1 fuse-holder fuse-rating=200A voltage-rating=32V interrupting-rating=5000A")},
	{rule: "fuse-too-large", name: "a wire to the frame", text: edited(spliced, "+", "part fr frame-point\nwire x1 sp.J fr.FRAME gauge=16AWG insulation=60C length=1m", "wire k3", "wire k3 sp.J buz.+ gauge=12AWG insulation=105C length=1m")},
	{rule: "tap-unfused", name: "on the AC side of a charger", text: edited(lithium, "+", "wire x1 pack.POS chg.AC-L gauge=16AWG insulation=105C length=1m")},
	{rule: "fuse-too-far", name: "a second lead that is longer", text: edited(page("fuse-too-far"), "+", "wire x1 pack.POS fu1.in gauge=2AWG insulation=105C length=12in\nstack pack.POS w1 x1\nstack fu1.in w1 x1")},
	{rule: "fuse-too-far", name: "10 in", text: edited(page("fuse-too-far"), "wire w1", "wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=10in")},

	{rule: "fuse-too-small", text: edited(page("fuse-too-small"), "part fu3", "part fu3 fuse-cartridge fuse-rating=25A")},
	{rule: "fuse-too-small", name: "its wire allows no larger one", text: edited(page("fuse-too-small"), "part fu3", "part fu3 fuse-cartridge fuse-rating=25A",
		"wire y2", "wire y2 fu3.out sw.IN gauge=14AWG insulation=60C length=2m")},
	{rule: "fuse-too-small", name: "by a typical load", text: edited(lithium, "part fu1", "part fu1 fuse-class-t fuse-rating=125A", "wire w2", "wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm")},
	{rule: "fuse-too-small", name: "the peak lasts longer than it holds", text: edited(lithium, "part ctrl", "part ctrl controller-series continuous-current=150A peak-current=400A"), also: opens("fu1", 250, 100, 400, 5, 2000, 0.01)},

	{rule: "contact-overload", text: edited(page("contact-overload"), "part plug", "part plug connector-2 continuous-current=15A")},
	{rule: "contact-overload", name: "by a typical rating", text: edited(page("contact-overload"), "part plug", "part plug connector-2")},
	{rule: "contact-overload", name: "a post", text: edited(page("contact-overload"), "part plug", "part plug bus-post continuous-current=20A",
		"wire y2", "wire y2 fu3.out plug.POST gauge=10AWG insulation=105C length=2m", "wire y3", "wire y3 plug.POST pump.+ gauge=10AWG insulation=105C length=1m",
		"wire y4", "wire y4 pump.- pack.NEG gauge=10AWG insulation=105C length=1m", "wire y5", "")},
	{rule: "contact-overload", name: "the middle of a bar", text: edited(page("contact-overload"), "part plug", "part bar bus-bar-4 continuous-current=40A\npart p2 pump-motor current=27A",
		"part fu3", "part fu3 fuse-class-t fuse-rating=80A",
		"wire y1", "wire y1 pack.POS fu3.in gauge=4AWG insulation=105C length=100mm", "wire y2", "wire y2 fu3.out bar.1 gauge=4AWG insulation=105C length=2m",
		"wire y3", "wire y3 bar.3 pump.+ gauge=6AWG insulation=105C length=1m", "wire y4", "wire y4 pump.- pack.NEG gauge=6AWG insulation=105C length=1m",
		"wire y5", "wire y5 bar.4 p2.+ gauge=6AWG insulation=105C length=1m\nwire y6 p2.- pack.NEG gauge=6AWG insulation=105C length=1m")},
	{rule: "contact-overload", name: "a micro switch", text: edited(lithium, "part dir", "part dir direction-rotary continuous-current=200A micro-current=0.2A")},
	{rule: "contact-overload", name: "at the peak", text: edited(lithium, "part sol", "part sol contactor-48v continuous-current=200A peak-current=300A")},
	{rule: "contact-overload", name: "a shunt", text: edited(lithium, "part shunt", "part shunt shunt continuous-current=100A")},

	{rule: "not-made-for-dc", text: edited(page("fuse-too-small"), "part sw", "part sw switch continuous-current=40A voltage-rating=32V")},
	{rule: "not-made-for-dc", name: "an ordinary relay on the pack", text: edited(page("fuse-too-small"), "part sw", "part sw relay", "wire y2", "wire y2 fu3.out sw.30 gauge=10AWG insulation=105C length=2m",
		"wire y3", "wire y3 sw.87 pump.+ gauge=10AWG insulation=105C length=1m")},
	{rule: "not-made-for-dc", name: "a switch marked for AC", text: edited(page("fuse-too-small"), "part sw", "part sw switch continuous-current=40A ac-voltage=250V")},
	{rule: "not-made-for-dc", name: "a house breaker", text: edited(page("fuse-too-small"), "part fu3", "part fu3 breaker fuse-rating=40A ac-voltage=230V")},
	{rule: "not-made-for-dc", name: "a fuse for AC", text: edited(page("fuse-too-small"), "part fu3", "part fu3 fuse-holder fuse-rating=30A ac-voltage=250V")},
	{rule: "not-made-for-dc", name: "a switch in the return", text: edited(page("fuse-too-small"), "part sw", "part sw switch continuous-current=40A voltage-rating=32V",
		"wire y2", "wire y2 fu3.out pump.+ gauge=10AWG insulation=105C length=2m", "wire y3", "wire y3 pump.- sw.IN gauge=10AWG insulation=105C length=1m", "wire y4", "wire y4 sw.OUT pack.NEG gauge=10AWG insulation=105C length=2m")},

	{rule: "packs-in-parallel", text: edited(page("packs-in-parallel"), "part fu2", "", "wire x1", "", "wire x2", "wire x2 p2.POS bar.2 gauge=2AWG insulation=105C length=300mm", "at fu2.in", "")},
	{rule: "packs-in-parallel", name: "on one fuse", text: edited(page("packs-in-parallel"), "part fu2", "", "part fu1", "part fu1 fuse-class-t fuse-rating=225A",
		"wire w1", "wire w1 p1.POS fu1.in gauge=2AWG insulation=105C length=150mm", "wire x1", "wire x1 p2.POS fu1.in gauge=2AWG insulation=105C length=150mm", "wire x2", "", "at fu2.in", "", "+", "stack fu1.in w1 x1")},
	{rule: "packs-in-parallel", name: "the third of three", text: edited(page("packs-in-parallel"), "+",
		"part p3 lithium-pack-16\nwire z1 p3.POS bar.4 gauge=2AWG insulation=105C length=300mm\nwire z2 p3.NEG p2.NEG gauge=2AWG insulation=105C length=300mm\nat p3.POS cover=fitted")},
	{rule: "packs-in-parallel", name: "unequal", text: edited(page("packs-in-parallel"), "part fu2", "part fu2 fuse-class-t fuse-rating=100A")},
	{rule: "packs-in-parallel", name: "of two kinds", text: edited(page("packs-in-parallel"), "part fu2", "part fu2 fuse-holder fuse-rating=150A interrupting-rating=20kA")},
}

var protectionGood = []example{
	{rule: "no-main-fuse", name: "a breaker", text: edited(page("no-main-fuse"), "part fu1", "part fu1 breaker fuse-rating=150A")},
	{rule: "fuse-too-large", name: "a splice with a fuse behind it", text: edited(spliced, "part fu3", "part fu3 fuse-cartridge fuse-rating=15A")},
	{rule: "output-shorted", name: "a fuse opens on the short", text: edited(page("output-shorted"), "part lt", "part sw switch\npart fx fuse-cartridge fuse-rating=5A",
		"wire a3", "wire a3 fb.IN fx.in gauge=10AWG insulation=105C length=100mm\nwire a7 fx.out sw.IN gauge=10AWG insulation=105C length=1m", "wire a4", "wire a4 sw.OUT fb.NEG1 gauge=10AWG insulation=105C length=1m")},
	{rule: "fuse-too-small", name: "27 A through 40 A", text: page("fuse-too-small")},
	{rule: "fuse-too-small", name: "the peak is shorter than it holds", text: edited(lithium, "part ctrl", "part ctrl controller-series continuous-current=150A peak-current=400A"), also: opens("fu1", 250, 1000, 400, 60, 2000, 0.01)},
	{rule: "fuse-too-small", name: "two unread labels", text: edited(lithium, "part fu1", "part fu1 fuse-holder", "part ctrl", "part ctrl controller-series")},
	{rule: "fuse-too-small", name: "a cart without a controller", text: edited(resistor, "+", "part fm fuse-class-t fuse-rating=60A", "wire a1", "wire a1 b6.+ fm.in gauge=6AWG\nwire a0 fm.out sol.L1 gauge=6AWG")},
	{rule: "contact-overload", name: "27 A through 50 A", text: page("contact-overload")},
	{rule: "contact-overload", name: "the drive's and the contact's labels are unread", text: lithium},
	{rule: "contact-overload", name: "a cart without a controller", text: resistor},
	{rule: "not-made-for-dc", name: "80 V", text: page("not-made-for-dc")},
	{rule: "not-made-for-dc", name: "a switch whose rating nobody knows is a question", text: edited(page("fuse-too-small"), "part sw", "part sw switch continuous-current=40A")},
	{rule: "not-made-for-dc", name: "a relay on the 12 V side", text: edited(isolated, "+", "part rl relay\nwire x1 red.OUT+ rl.30 gauge=12AWG insulation=105C length=1m\nwire x2 rl.87 usb.+ gauge=12AWG insulation=105C length=1m")},
	{rule: "not-made-for-dc", name: "marked for AC and for DC", text: edited(page("fuse-too-small"), "part fu3", "part fu3 fuse-cartridge fuse-rating=40A ac-voltage=690V voltage-rating=1000V")},
	{rule: "packs-in-parallel", name: "150 A each", text: page("packs-in-parallel")},
	{rule: "packs-in-parallel", name: "one pack", text: lithium},
	{rule: "packs-in-parallel", name: "a fuse in each negative", text: edited(page("packs-in-parallel"),
		"wire w1", "wire w1 p1.NEG fu1.in gauge=2AWG insulation=105C length=150mm", "wire w2", "wire w2 p1.POS bar.1 gauge=2AWG insulation=105C length=300mm",
		"wire x1", "wire x1 p2.NEG fu2.in gauge=2AWG insulation=105C length=150mm", "wire x2", "wire x2 p2.POS bar.2 gauge=2AWG insulation=105C length=300mm",
		"wire w4", "wire w4 ctrl.B- fu1.out gauge=4/0AWG insulation=105C length=600mm", "wire x4", "wire x4 fu1.out fu2.out gauge=2AWG insulation=105C length=300mm", "stack p1.NEG", "stack fu1.out w4 x4")},
}
