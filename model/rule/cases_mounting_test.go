package rule_test

// mountingBad and mountingGood are what the rules of mounting are held to beyond their pages.
var mountingBad = []example{
	{rule: "not-secured", name: "pack and charger", text: edited(onCart, "part pack", "part pack lithium-pack-16 secured=no", "part chg", "part chg charger-onboard-48v secured=no")},
	{rule: "unsupported", name: "between 18 and 24 in", text: edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=20in")},
	{rule: "unsupported", name: "more than 24 in", text: edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm supported=25in")},
	{rule: "unsupported", name: "on a battery terminal", text: edited(onCart, "wire c3", "wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=1m supported=37in")},
	{rule: "tight-bend", text: edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm bend=20mm")},
	{rule: "no-strain-relief", text: edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm strain-relief=no")},
	{rule: "unguarded-edge", text: edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm guarded=no", "wire c3", "wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm guarded=no")},
}

var mountingGood = []example{
	{rule: "not-secured", name: "nobody looked", text: onCart},
	{rule: "unsupported", name: "36 in on a battery terminal", text: edited(onCart, "wire c3", "wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=1m supported=36in")},
	{rule: "unsupported", name: "nobody measured", text: onCart},
	{rule: "tight-bend", name: "wider than ten times the copper", text: edited(onCart, "wire c1", "wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm bend=26mm")},
	{rule: "no-strain-relief", name: "nobody looked", text: onCart},
	{rule: "unguarded-edge", name: "nobody looked", text: onCart},
}

// onCart is a pack and its charger of which nothing is recorded but the wiring.
const onCart = `
part pack lithium-pack-16
part chg charger-onboard-48v
part fu2 fuse-cartridge fuse-rating=30A
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out pack.POS gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
at pack.POS cover=fitted
at fu2.out cover=fitted
`
