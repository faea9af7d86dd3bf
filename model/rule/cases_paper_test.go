package rule_test

// planned is a lithium cart as found, and what is done to it on the plan.
func planned(lines string) string { return lithium + "\nsheet plan\n" + lines }

var paperBad = []example{
	{rule: "wire-to-make", text: planned("wire x1 key.IGN buz.+ gauge=16AWG\nwire x2 key.IGN buz.+ colour=RD insulation=105C length=1m")},
	{rule: "wire-to-make", name: "another size", text: planned("wire w3 sol.L2 ctrl.B+ gauge=1AWG insulation=105C length=300mm")},
	{rule: "wire-to-make", name: "another end", text: planned("wire b2 buz.- nb.4 gauge=16AWG insulation=105C length=1m\nstack nb.3 s5")},
	{rule: "stud-not-photographed", text: planned("wire x1 fu1.out fu6.in gauge=16AWG insulation=105C length=100mm colour=RD\nstack fu1.out w2 r1 s3 x1")},
	{rule: "stud-not-photographed", name: "another order", text: planned("stack nb.2 k8 r3")},
	{rule: "stud-not-photographed", name: "one of two goes", text: planned("no p2")},
	{rule: "rating-not-read", text: edited(lithium, "part fu2", "part fu2 fuse-cartridge", "+", "sheet plan")},
	{rule: "wire-not-marked", text: edited(lithium, "+", "sheet as-built")},
	{rule: "rests-on-assumption", text: planned("wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m confidence=assumed\nwire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm judged=gauge")},
	{rule: "rests-on-assumption", name: "a fuse", text: planned("part fu3 fuse-inline-80v fuse-rating=10A confidence=assumed")},
	{rule: "hidden-characters", name: "the order of letters is turned", text: edited(lithium, "part key", "part key key-switch name=key\u202e_52A")},
	{rule: "hidden-characters", name: "of no width", text: edited(lithium, "wire k2", "wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m mark=k\u200b2", "at pack.POS", "at pack.POS cover=fitted note=tor\u2060que")},
	{rule: "hidden-characters", name: "a letter of another script", text: edited(lithium, "part key", "part key key-switch name=\u043aey")},
	{rule: "hidden-characters", name: "ids that look alike", text: edited(lithium, "+", "part fuI fuse-inline-80v fuse-rating=3A\nwire x1 fuI.in untraced gauge=16AWG\nwire xl fuI.out untraced gauge=16AWG")},
}

var paperGood = []example{
	{rule: "wire-to-make", name: "all there", text: planned("wire x1 key.IGN buz.+ gauge=16AWG colour=OG insulation=105C length=1m")},
	{rule: "wire-to-make", name: "as found nothing is made", text: lithium},
	{rule: "wire-to-make", name: "turned end for end", text: planned("wire k2 key.BAT fu3.out gauge=16AWG insulation=105C")},
	{rule: "stud-not-photographed", name: "the photo is there", text: edited(lithium, "+", "at fu1.out photos=fuse.jpg") + "\nsheet plan\n" +
		"wire x1 fu1.out fu6.in gauge=16AWG insulation=105C length=100mm colour=RD\nstack fu1.out w2 r1 s3 x1"},
	{rule: "stud-not-photographed", name: "of the whole part", text: edited(lithium, "part nb", "part nb bus-bar-4 photos=bar.jpg") + "\nsheet plan\nstack nb.2 k8 r3"},
	{rule: "stud-not-photographed", name: "it stays together", text: planned("")},
	{rule: "stud-not-photographed", name: "it was a single lug", text: planned("wire x1 pack.POS fu6.in gauge=16AWG insulation=105C length=100mm colour=RD\nstack pack.POS w1 x1")},
	{rule: "rating-not-read", name: "as found it is a question", text: edited(lithium, "part fu2", "part fu2 fuse-cartridge")},
	{rule: "rating-not-read", name: "all read", text: planned("")},
	{rule: "wire-not-marked", name: "on a plan", text: planned("")},
	{rule: "rests-on-assumption", name: "as found", text: edited(lithium, "wire k2", "wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m confidence=assumed")},
	{rule: "rests-on-assumption", name: "on the negative side", text: planned("wire b2 buz.- nb.3 gauge=16AWG insulation=105C length=1m confidence=assumed")},
	{rule: "hidden-characters", name: "umlauts, signs and units", text: edited(lithium, "part key", "part key key-switch name=Schl\u00fcssel_10_k\u03a9_5_\u00b5F_\u0394T note=\u043a\u043b\u044e\u0447")},
}
