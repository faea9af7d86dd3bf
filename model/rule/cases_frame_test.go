package rule_test

// frameBad and frameGood are what the rules of frame and return are held to beyond their pages.
var frameBad = []example{
	{rule: "pack-on-frame", name: "two batteries of a string touch it", text: edited(strung, "+", "part fr frame-point\nwire x1 b1.- fr.FRAME gauge=10AWG\npart lk frame-leak resistance=5ohm\nwire x2 lk.to b3.+ gauge=16AWG")},
	{rule: "pack-on-frame", name: "two acid tracks", text: edited(strung, "+", "part l1 frame-leak resistance=2kohm\nwire x1 l1.to b1.- gauge=16AWG\npart l2 frame-leak resistance=2kohm\nwire x2 l2.to b4.+ gauge=16AWG")},
	{rule: "pack-on-frame", name: "two dry tracks", text: edited(strung, "+", "part l1 frame-leak resistance=50kohm\nwire x1 l1.to b1.- gauge=16AWG\npart l2 frame-leak resistance=50kohm\nwire x2 l2.to b4.+ gauge=16AWG")},
	{rule: "pack-on-frame", name: "a bolted negative and a chafed lead behind the contactor", text: edited(strung, "+", "part fr frame-point\nwire x1 b1.- fr.FRAME gauge=10AWG\nwire x2 sol.L2 fr.FRAME gauge=4AWG")},
}

var frameGood = []example{
	{rule: "pack-on-frame", name: "a bolt that nothing lands on", text: edited(strung, "+", "part fr frame-point")},
}

// strung is a string of four batteries with its fuse and contactor.
const strung = `
part b1 lead-battery-12v
part b2 lead-battery-12v
part b3 lead-battery-12v
part b4 lead-battery-12v
part fm fuse-class-t fuse-rating=100A
part sol contactor-48v
part key key-switch
part dio diode
part fu3 fuse-cartridge fuse-rating=5A
wire j1 b1.+ b2.- gauge=4AWG insulation=105C length=300mm
wire j2 b2.+ b3.- gauge=4AWG insulation=105C length=300mm
wire j3 b3.+ b4.- gauge=4AWG insulation=105C length=300mm
wire w1 b4.+ fm.in gauge=4AWG insulation=105C length=150mm
wire w2 fm.out sol.L1 gauge=4AWG insulation=105C length=600mm
wire k1 fm.out fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m
wire k4 sol.coil- b1.- gauge=16AWG insulation=105C length=1m
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm
stack fm.out w2 k1
`
