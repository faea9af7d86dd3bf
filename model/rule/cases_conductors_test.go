package rule_test

// conductorsBad and conductorsGood are what the rules of conductors are held to beyond their
// pages.
var conductorsBad = []example{
	{rule: "wire-too-thin", name: "cool enough but for the place", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m", "+", "job hottest=80C")},
	{rule: "wire-too-thin", name: "no size is thick enough", text: edited(pumped, "part pump", "part pump pump-motor current=600A", "part fu1", "part fu1 fuse-class-t fuse-rating=600A")},
	{rule: "drop-too-high", name: "a limit of the job", text: edited(pumped, "wire w4", "wire w4 pump.- pack.NEG gauge=10AWG insulation=105C length=20m", "+", "job basis=house-rule")},
	{rule: "drop-too-high", name: "no length is recorded", text: edited(pumped, "wire w4", "wire w4 pump.- pack.NEG gauge=16AWG insulation=200C", "wire w3",
		"wire w3 sw.OUT pump.+ gauge=10AWG insulation=105C length=21m")},
}

var conductorsGood = []example{
	{rule: "wire-too-thin", name: "55 A over 8 AWG in 30 C", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m")},
	{rule: "drop-too-high", name: "10 % for a pump", text: edited(pumped, "wire w4", "wire w4 pump.- pack.NEG gauge=10AWG insulation=105C length=20m")},
}

// pumped is a pump of 55 A on a pack of its own, wired as it should be.
const pumped = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=70A
part sw switch
part pump pump-motor current=55A
wire w1 pack.POS fu1.in gauge=6AWG insulation=105C length=150mm
wire w2 fu1.out sw.IN gauge=6AWG insulation=105C length=1m
wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m
wire w4 pump.- pack.NEG gauge=6AWG insulation=105C length=2m
at pack.POS cover=fitted
at fu1.in cover=fitted
`
