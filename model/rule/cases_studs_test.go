package rule_test

// nearStud is a lug of one size on the stud of a bus post of another.
func nearStud(lug, size string) string {
	return edited(lithium, "+", "part post bus-post\nwire x1 fu1.out post.POST gauge=12AWG insulation=105C length=100mm to-lug="+lug+"\nat post.POST stud="+size,
		"stack fu1.out", "stack fu1.out w2 r1 x1 s3")
}

// barrels is the small lithium cart with a lead of the meter of one size, and lugs made for two.
func barrels(wire, from, to string) string {
	return edited(lithium, "wire n1", "wire n1 shunt.LOAD nb.1 gauge="+wire+" insulation=105C length=200mm from-barrel="+from+" to-barrel="+to)
}

// thinCharge is the small lithium cart with a charge lead that carries more than the bar's own
// cable: a thick jumper to a second bar that hardly anything flows in.
var thinCharge = edited(lithium, "part chg", "part chg charger-onboard-48v charge-current=25A", "wire c2", "wire c2 fu2.out post.POST gauge=10AWG insulation=105C length=120mm",
	"+", "part post bus-post\npart post2 bus-post\nwire x1 post.POST sol.L1 gauge=8AWG insulation=105C length=200mm\nwire x2 post.POST post2.POST gauge=6AWG insulation=105C length=200mm serves=control\n"+
		"wire x3 post2.POST fu3.in gauge=16AWG insulation=105C length=100mm\nstack post.POST x2 x1 c2\nstack post2.POST x2 x3",
	"wire k1", "", "stack sol.L1", "stack sol.L1 w2 x1 p1")

var studsBad = []example{
	{rule: "stack-order", name: "more current on a smaller cable", text: thinCharge},
	{rule: "stack-order", name: "more current on a cable of the same size", text: edited(thinCharge, "wire x2", "wire x2 post.POST post2.POST gauge=8AWG insulation=105C length=200mm serves=control")},
	{rule: "stack-order", name: "by current and by size", text: edited(lithium, "stack ctrl.B+", "stack ctrl.B+ m1 x1 w3", "+",
		"part lt9 lamp-work-48v\nwire x1 ctrl.B+ lt9.+ gauge=14AWG insulation=105C length=1m\nwire x2 lt9.- nb.4 gauge=14AWG insulation=105C length=1m")},
	{rule: "stack-order", name: "a loose end may carry anything, so only sizes are compared", text: edited(lithium, "stack sol.L1", "stack sol.L1 k1 w2 c2 p1 x1",
		"+", "wire x1 sol.L1 untraced gauge=12AWG insulation=105C")},
	{rule: "lug-hole", name: "inch on metric", text: nearStud("5/16_in", "M8")},
	{rule: "lug-hole", name: "metric on inch", text: nearStud("M6", "1/4_in")},
	{rule: "lug-hole", name: "a 3/8 in ring does not pass M10", text: nearStud("3/8_in", "M10")},
	{rule: "lug-hole", name: "the stud is not known", text: edited(lithium, "+", "part box unknown\nwire x1 fu1.out box.A gauge=12AWG insulation=105C length=100mm to-lug=M8\nwire x2 box.A box.B gauge=12AWG to-lug=M8\nstack box.A x1 x2")},
	{rule: "stack-count", name: "the house rule has three", text: edited(lithium, "+", "job basis=house-rule")},
	{rule: "lug-barrel", text: barrels("2AWG", "4AWG", "2AWG")},
	{rule: "lug-barrel", name: "strands must be cut off", text: barrels("2AWG", "2AWG", "4AWG")},
	{rule: "lug-barrel", name: "of a thin wire", text: barrels("18AWG", "10AWG", "18AWG")},
	{rule: "lug-barrel", name: "the house rule has a tenth", text: barrels("6AWG", "16_mm2", "6AWG") + "\njob basis=house-rule"},
	{rule: "lug-barrel", name: "the gauge is not known", text: edited(lithium, "wire w5", "wire w5 shunt.BATT pack.NEG insulation=105C length=200mm to-barrel=2AWG")},
	{rule: "lug-barrel", name: "the wrong lug, nobody said why", text: edited(lithium, "wire k6", "wire k6 chg.interlock-b sol.coil+ gauge=16AWG insulation=105C length=2m to-lug=#10 condition=wrong-lug")},
	{rule: "washer-in-path", name: "between", text: edited(lithium, "+", "at sol.L1 washer=between")},
	{rule: "washer-in-path", name: "under thin lugs", text: edited(lithium, "+", "at sol.coil+ washer=under")},
	{rule: "dissimilar-metals", text: edited(lithium, "wire n1", "wire n1 shunt.LOAD nb.1 gauge=6AWG insulation=105C length=200mm material=aluminium", "+", "at nb.1 washer=outside")},
	{rule: "dissimilar-metals", name: "aluminium on a brass face", text: edited(lithium, "wire w5", "wire w5 shunt.BATT pack.NEG gauge=2AWG insulation=105C length=200mm material=aluminium", "+", "at pack.NEG washer=outside material=brass")},
	{rule: "dissimilar-metals", name: "the washers are not recorded", text: edited(lithium, "wire n1", "wire n1 shunt.LOAD nb.1 gauge=6AWG insulation=105C length=200mm material=aluminium")},
	{rule: "dissimilar-metals", name: "plain copper on lead", text: edited(lead, "wire j1", "wire j1 b1.+ b2.- gauge=4AWG material=copper", "+", "at b1.+ material=lead")},
	{rule: "worn-joint", name: "by current", text: edited(lithium, "+", "at ctrl.B- condition=corroded\nat sol.coil- condition=loose,dirty")},
	{rule: "worn-joint", name: "a frayed lug", text: edited(lithium, "wire w3", "wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm condition=frayed")},
	{rule: "worn-joint", name: "it stays on the plan", text: edited(lithium, "+", "at ctrl.B- condition=corroded\nsheet plan")},
	{rule: "torque-not-known", text: edited(lithium, "+", "sheet plan")},
	{rule: "torque-too-high", text: edited(lithium, "at pack.POS", "at pack.POS cover=fitted torque=80_N_m")},
	{rule: "stud-cover", name: "behind the main fuse", text: edited(lithium, "+", "at sol.L1 cover=missing")},
}

var studsGood = []example{
	{rule: "stack-order", name: "a thin lug with more current lies on the seat", text: edited(thinCharge, "stack post.POST", "stack post.POST x1 c2 x2")},
	{rule: "stack-order", name: "the traction path is recorded only in part", text: edited(computer, "stack comp.NEG-CART", "stack comp.NEG-CART w4 c2")},
	{rule: "lug-barrel", name: "35 mm2 on 2 AWG", text: barrels("2AWG", "35_mm2", "2AWG")},
	{rule: "lug-barrel", name: "a terminal for 16 to 14 AWG", text: barrels("16AWG", "14AWG", "16AWG")},
	{rule: "lug-barrel", name: "the hole says what is wrong", text: edited(lithium, "wire k6", "wire k6 chg.interlock-b sol.coil+ gauge=16AWG insulation=105C length=2m to-lug=3/8_in condition=wrong-lug")},
	{rule: "washer-in-path", name: "outside", text: edited(lithium, "+", "at sol.L1 washer=outside")},
	{rule: "washer-in-path", name: "one lug has nothing between", text: edited(lithium, "+", "at pack.NEG washer=between")},
	{rule: "washer-in-path", name: "plated, under aluminium", text: edited(lithium, "wire n1", "wire n1 shunt.LOAD nb.1 gauge=6AWG insulation=105C length=200mm material=aluminium", "+", "at nb.1 washer=between")},
	{rule: "dissimilar-metals", name: "a washer between", text: edited(lithium, "wire n1", "wire n1 shunt.LOAD nb.1 gauge=6AWG insulation=105C length=200mm material=aluminium", "+", "at nb.1 washer=between\nat shunt.LOAD washer=under")},
	{rule: "dissimilar-metals", name: "tinned on lead", text: edited(lead, "wire j1", "wire j1 b1.+ b2.- gauge=4AWG material=tinned", "+", "at b1.+ material=lead")},
	{rule: "dissimilar-metals", name: "aluminium alone on aluminium", text: edited(lithium, "wire w5", "wire w5 shunt.BATT pack.NEG gauge=2AWG insulation=105C length=200mm material=aluminium", "+", "at pack.NEG washer=outside material=aluminium")},
	{rule: "worn-joint", name: "a chafed wire is no joint", text: edited(lithium, "wire w3", "wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm condition=chafed")},
	{rule: "torque-not-known", name: "as found", text: lithium},
	{rule: "torque-not-known", name: "recorded", text: edited(lithium, "+", "at pack.POS torque=9_N_m\nat pack.NEG torque=9_N_m\nsheet plan")},
	{rule: "torque-too-high", name: "what a maker asks", text: edited(lithium, "at pack.POS", "at pack.POS cover=fitted torque=9_N_m")},
	{rule: "torque-too-high", name: "no table holds the size", text: edited(lithium, "at pack.POS", "at pack.POS cover=fitted torque=80_N_m stud=M5")},
	{rule: "lug-hole", name: "M10 on M10", text: nearStud("M10", "M10")},
}
