package rule_test

// conductorsBad and conductorsGood are what the rules of conductors are held to beyond their
// pages.
var conductorsBad = []example{
	{rule: "wire-too-thin", name: "cool enough but for the place", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m", "+", "job hottest=80C")},
	{rule: "wire-too-thin", name: "no size is thick enough", text: edited(pumped, "part pump", "part pump pump-motor current=600A", "part fu1", "part fu1 fuse-class-t fuse-rating=600A")},
	{rule: "drop-too-high", name: "a limit of the job", text: edited(pumped, "wire w4", "wire w4 pump.- pack.NEG gauge=10AWG insulation=105C length=20m", "+", "job basis=house-rule")},
	{rule: "drop-too-high", name: "no length is recorded", text: edited(pumped, "wire w4", "wire w4 pump.- pack.NEG gauge=16AWG insulation=200C", "wire w3",
		"wire w3 sw.OUT pump.+ gauge=10AWG insulation=105C length=21m")},
	{rule: "unequal-parallels", name: "of unequal length", text: edited(twins, "wire w5", "wire w5 pump.- pack.NEG gauge=10AWG insulation=105C length=3m")},
	{rule: "unequal-parallels", name: "one alone carries too much", text: edited(twins, "wire w4", "wire w4 pump.- pack.NEG gauge=12AWG insulation=105C length=200mm", "wire w5", "wire w5 pump.- pack.NEG gauge=8AWG insulation=60C length=1500mm",
		"part pump", "part pump pump-motor current=75A", "part fu1", "part fu1 fuse-class-t fuse-rating=80A")},
	{rule: "unequal-parallels", name: "one lug is corroded", text: edited(twins, "wire w5", "wire w5 pump.- pack.NEG gauge=10AWG insulation=105C length=1m condition=corroded")},
	{rule: "unequal-parallels", name: "between two posts of a bar", text: edited(twins, "part pump", "part pump pump-motor current=55A\npart nb bus-bar-4\nwire w6 nb.3 pack.NEG gauge=6AWG insulation=105C length=200mm",
		"wire w4", "wire w4 pump.- nb.1 gauge=10AWG insulation=105C length=1m", "wire w5", "wire w5 pump.- nb.2 gauge=14AWG insulation=105C length=1m")},
	{rule: "unequal-parallels", name: "by the house rule", text: edited(twins, "wire w5", "wire w5 pump.- pack.NEG gauge=10AWG insulation=105C length=1080mm", "+", "job basis=house-rule")},
	{rule: "unequal-parallels", name: "of unknown length", text: edited(twins, "wire w5", "wire w5 pump.- pack.NEG gauge=10AWG insulation=105C")},
	{rule: "wire-too-weak", name: "18 AWG by itself", text: edited(lamped, "wire w2", "wire w2 fu1.out lt1.+ gauge=18AWG insulation=105C length=2m", "wire w3", "wire w3 lt1.- b1.- gauge=18AWG insulation=105C length=2m")},
	{rule: "wire-too-weak", name: "20 AWG in a loom", text: edited(lamped, "wire w3", "wire w3 lt1.- b1.- gauge=20AWG insulation=105C length=2m bundle=loom")},
	{rule: "wire-too-weak", name: "in millimetres", text: edited(lamped, "wire w3", "wire w3 lt1.- b1.- gauge=1mm2 insulation=105C length=2m")},
	{rule: "place-too-hot", name: "the fuse is too large there", text: edited(pumped, "part fu1", "part fu1 fuse-class-t fuse-rating=80A", "part pump", "part pump pump-motor current=25A", "+", "job hottest=80C")},
	{rule: "place-too-hot", name: "the fuse's rating is the library's", text: edited(pumped, "part fu1", "part fu1 fuse-class-t", "part pump", "part pump pump-motor current=25A", "wire w3", "wire w3 sw.OUT pump.+ gauge=3/0AWG insulation=75C length=1m",
		"wire w2", "wire w2 fu1.out sw.IN gauge=3/0AWG insulation=75C length=1m", "wire w4", "wire w4 pump.- pack.NEG gauge=3/0AWG insulation=75C length=2m", "+", "job hottest=70C")},
	{rule: "place-too-hot", name: "nobody recorded the insulation", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG length=1m", "+", "job hottest=65C")},
	{rule: "place-too-hot", name: "no class has a third of its rise left", text: edited(pumped, "part pump", "part pump pump-motor current=2A", "+", "job hottest=150C")},
	{rule: "damaged-cable", name: "as found", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m condition=chafed", "wire w4", "wire w4 pump.- pack.NEG gauge=6AWG insulation=105C length=2m condition=heat-mark,corroded")},
	{rule: "terminal-class", name: "above 100 A", text: edited(pumped, "part pump", "part pump pump-motor current=130A", "part fu1", "part fu1 fuse-class-t fuse-rating=150A", "wire w2", "wire w2 fu1.out sw.IN gauge=4AWG insulation=105C length=1m",
		"wire w3", "wire w3 sw.OUT pump.+ gauge=4AWG insulation=105C length=1m", "wire w4", "wire w4 pump.- pack.NEG gauge=2AWG insulation=105C length=2m", "part sw", "part sw switch contact-resistance=1mohm")},
	{rule: "thin-motor-leads", text: edited(lithium, "+", "sheet plan\nwire w1 pack.POS fu1.in gauge=1/0AWG insulation=105C length=150mm\nwire w2 fu1.out sol.L1 gauge=1/0AWG insulation=105C length=600mm\n"+
		"wire w3 sol.L2 ctrl.B+ gauge=1/0AWG insulation=105C length=300mm\nwire w4 ctrl.B- shunt.LOAD gauge=1/0AWG insulation=105C length=700mm\nwire w5 shunt.BATT pack.NEG gauge=1/0AWG insulation=105C length=200mm")},
	{rule: "not-copper", name: "its fuse is too large", text: edited(pumped, "part pump", "part pump pump-motor current=20A", "part fu1", "part fu1 fuse-class-t fuse-rating=80A", "wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m material=aluminium")},
	{rule: "not-copper", name: "it carries what flows", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=4AWG insulation=105C length=1m material=aluminium")},
	{rule: "not-copper", name: "of unknown size", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ length=1m material=aluminium")},
}

var conductorsGood = []example{
	{rule: "wire-too-thin", name: "55 A over 8 AWG in 30 C", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=8AWG insulation=105C length=1m")},
	{rule: "drop-too-high", name: "10 % for a pump", text: edited(pumped, "wire w4", "wire w4 pump.- pack.NEG gauge=10AWG insulation=105C length=20m")},
	{rule: "unequal-parallels", name: "two alike", text: twins},
	{rule: "unequal-parallels", name: "two that carry nothing", text: edited(twins, "part pump", "part pump pump-motor current=100mA", "wire w5", "wire w5 pump.- pack.NEG gauge=14AWG insulation=105C length=1m")},
	{rule: "wire-too-weak", name: "18 AWG in a sheath", text: edited(lamped, "wire w3", "wire w3 lt1.- b1.- gauge=18AWG insulation=105C length=2m sheathed")},
	{rule: "wire-too-weak", name: "a pigtail", text: edited(lamped, "wire w3", "wire w3 lt1.- b1.- gauge=20AWG insulation=105C length=170mm")},
	{rule: "wire-too-weak", name: "less than 1 A", text: edited(lamped, "part lt1", "part lt1 lamp-12v current=900mA", "wire w3", "wire w3 lt1.- b1.- gauge=20AWG insulation=105C length=2m")},
	{rule: "wire-too-weak", name: "sense leads and the leads of resistor and diode", text: edited(lithium, "wire s1", "wire s1 shunt.sense+ meter.sense+ gauge=22AWG insulation=105C length=2m")},
	{rule: "place-too-hot", name: "105 C in 45 C with a small fuse", text: edited(pumped, "part fu1", "part fu1 fuse-class-t fuse-rating=60A", "+", "job hottest=45C")},
	{rule: "place-too-hot", name: "unknown insulation where any stands it", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG length=1m", "+", "job hottest=50C")},
	{rule: "thin-motor-leads", name: "nothing was renewed", text: lead},
	{rule: "damaged-cable", name: "loose, and a cut end", text: edited(pumped, "+", "wire x1 pump.+ cut gauge=12AWG condition=burnt", "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m condition=loose")},
	{rule: "wide-loop", name: "no zones", text: lithium},
	{rule: "terminal-class", name: "150 A over 2 AWG", text: lithium},
	{rule: "terminal-class", name: "too thin anyway", text: lead},
	{rule: "not-copper", name: "tinned copper", text: edited(pumped, "wire w3", "wire w3 sw.OUT pump.+ gauge=6AWG insulation=105C length=1m material=tinned")},
}

// twins is a pump with two wires side by side on its return.
var twins = edited(pumped, "part fu1", "part fu1 fuse-class-t fuse-rating=60A", "wire w4", "wire w4 pump.- pack.NEG gauge=10AWG insulation=105C length=1m", "+", "wire w5 pump.- pack.NEG gauge=10AWG insulation=105C length=1m")

// lamped is a lamp of 2 A on a battery of 12 V.
const lamped = `
job system=12V
part b1 lead-battery-12v
part fu1 fuse-inline fuse-rating=5A
part lt1 lamp-12v current=2A
wire w1 b1.+ fu1.in gauge=16AWG insulation=105C length=100mm
wire w2 fu1.out lt1.+ gauge=16AWG insulation=105C length=2m
wire w3 lt1.- b1.- gauge=16AWG insulation=105C length=2m
at b1.+ cover=fitted
`

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
