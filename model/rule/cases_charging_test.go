package rule_test

// chargeCart is a pack in a cold place, its charger and its inlet, with all that is judged of
// charging recorded.
const chargeCart = `
job coldest=-10C
part pack lithium-pack-16 charge-lockout-temperature=0C min-charge-temperature=0C
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part fu2 fuse-cartridge fuse-rating=40A
part chg charger-onboard-48v charge-current=18A ac-current=10A
part inl ac-inlet ac-current=15A branch-current=15A
part fr frame-point
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out sol.L1 gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
wire x1 inl.L chg.AC-L gauge=14AWG insulation=105C length=400mm
wire x2 inl.N chg.AC-N gauge=14AWG insulation=105C length=400mm
wire x3 inl.PE chg.AC-PE gauge=14AWG insulation=105C length=400mm
wire x4 inl.PE fr.FRAME gauge=14AWG insulation=105C length=300mm
stack sol.L1 w2 c2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

var chargingBad = []example{
	{rule: "charges-nothing", text: edited(chargeCart, "wire c2", "wire c2 fu2.out sol.L2 gauge=10AWG insulation=105C length=120mm", "stack sol.L1", "")},
	{rule: "charges-nothing", name: "through the pre-charge resistor alone", text: edited(chargeCart, "wire c2", "wire c2 fu2.out sol.L2 gauge=10AWG insulation=105C length=120mm", "stack sol.L1", "",
		"+", "part pre precharge-resistor\nwire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=100mm\nwire p2 pre.b sol.L2 gauge=18AWG insulation=105C length=100mm")},
	{rule: "charges-nothing", name: "its output leads nowhere", text: edited(chargeCart, "wire c2", "wire c2 fu2.out capped gauge=10AWG insulation=105C length=120mm", "stack sol.L1", "")},
	{rule: "charge-computer-left", text: edited(chargeCart, "+", "part comp charge-computer-signal\n"+
		"wire w9 comp.NEG-PACK pack.NEG gauge=2AWG insulation=105C length=200mm", "wire c3", "wire c3 chg.DC- comp.NEG-CART gauge=10AWG insulation=105C length=900mm")},
	{rule: "branch-circuit", text: edited(chargeCart, "part chg", "part chg charger-onboard-48v charge-current=25A ac-current=13A")},
	{rule: "branch-circuit", name: "the inlet is too small", text: edited(chargeCart, "part inl", "part inl ac-inlet ac-current=10A branch-current=20A", "part chg", "part chg charger-onboard-48v charge-current=20A ac-current=12A")},
	{rule: "branch-circuit", name: "two chargers on one cord", text: edited(chargeCart, "+", "part ch2 charger-onboard-48v charge-current=10A ac-current=5A\n"+
		"part fu5 fuse-cartridge fuse-rating=25A\nwire c4 ch2.DC+ fu5.in gauge=12AWG insulation=105C length=900mm\nwire c5 fu5.out sol.L1 gauge=12AWG insulation=105C length=120mm\n"+
		"wire c6 ch2.DC- pack.NEG gauge=12AWG insulation=105C length=900mm\nwire x5 inl.L ch2.AC-L gauge=14AWG insulation=105C length=400mm\nwire x6 inl.N ch2.AC-N gauge=14AWG insulation=105C length=400mm\n"+
		"wire x7 inl.PE ch2.AC-PE gauge=14AWG insulation=105C length=400mm\nstack pack.NEG c3 c6", "stack sol.L1", "stack sol.L1 w2 c2 c5")},
	{rule: "cold-charging", text: edited(chargeCart, "part pack", "part pack lithium-pack-16 charge-lockout-temperature=-20C min-charge-temperature=0C")},
	{rule: "cold-charging", name: "nobody read the label", text: edited(chargeCart, "part pack", "part pack lithium-pack-16")},
	{rule: "brakes-full-pack", text: edited(sepex, "part pack", "part pack lithium-pack-16 full-regeneration-current=15A")},
}

var chargingGood = []example{
	{rule: "charges-nothing", name: "on the pack's side", text: chargeCart},
	{rule: "charges-nothing", name: "turned round is a mistake of its own", text: edited(chargeCart, "wire c1", "wire c1 chg.DC- fu2.in gauge=10AWG insulation=105C length=900mm", "wire c3", "wire c3 chg.DC+ pack.NEG gauge=10AWG insulation=105C length=900mm")},
	{rule: "charge-computer-left", name: "on a lead string it is at home", text: computer},
	{rule: "branch-circuit", name: "12 A on 15 A", text: edited(chargeCart, "part chg", "part chg charger-onboard-48v charge-current=20A ac-current=12A")},
	{rule: "branch-circuit", name: "nobody knows the circuit", text: edited(chargeCart, "part inl", "part inl ac-inlet", "part chg", "part chg charger-onboard-48v ac-current=14A")},
	{rule: "cold-charging", name: "it refuses in time", text: chargeCart},
	{rule: "cold-charging", name: "warm in the shed", text: edited(chargeCart, "job", "job coldest=5C", "part pack", "part pack lithium-pack-16")},
	{rule: "brakes-full-pack", name: "nobody knows what it takes", text: sepex},
	{rule: "brakes-full-pack", name: "series gives nothing back", text: lithium},
}
