package rule_test

// nearStud is a lug of one size on the stud of a bus post of another.
func nearStud(lug, size string) string {
	return edited(lithium, "+", "part post bus-post\nwire x1 fu1.out post.POST gauge=12AWG insulation=105C length=100mm to-lug="+lug+"\nat post.POST stud="+size,
		"stack fu1.out", "stack fu1.out w2 r1 x1 s3")
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
	{rule: "stud-cover", name: "behind the main fuse", text: edited(lithium, "+", "at sol.L1 cover=missing")},
}

var studsGood = []example{
	{rule: "stack-order", name: "a thin lug with more current lies on the seat", text: edited(thinCharge, "stack post.POST", "stack post.POST x1 c2 x2")},
	{rule: "stack-order", name: "the traction path is recorded only in part", text: edited(computer, "stack comp.NEG-CART", "stack comp.NEG-CART w4 c2")},
	{rule: "lug-hole", name: "M10 on M10", text: nearStud("M10", "M10")},
}
