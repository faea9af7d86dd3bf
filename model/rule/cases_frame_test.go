package rule_test

// frameBad and frameGood are what the rules of frame and return are held to beyond their pages.
var frameBad = []example{
	{rule: "pack-on-frame", name: "two batteries of a string touch it", text: edited(strung, "+", "part fr frame-point\nwire x1 b1.- fr.FRAME gauge=10AWG\npart lk frame-leak resistance=5ohm\nwire x2 lk.to b3.+ gauge=16AWG")},
	{rule: "pack-on-frame", name: "two acid tracks", text: edited(strung, "+", "part l1 frame-leak resistance=2kohm\nwire x1 l1.to b1.- gauge=16AWG\npart l2 frame-leak resistance=2kohm\nwire x2 l2.to b4.+ gauge=16AWG")},
	{rule: "pack-on-frame", name: "two dry tracks", text: edited(strung, "+", "part l1 frame-leak resistance=50kohm\nwire x1 l1.to b1.- gauge=16AWG\npart l2 frame-leak resistance=50kohm\nwire x2 l2.to b4.+ gauge=16AWG")},
	{rule: "pack-on-frame", name: "a bolted negative and a chafed lead behind the contactor", text: edited(strung, "+", "part fr frame-point\nwire x1 b1.- fr.FRAME gauge=10AWG\nwire x2 sol.L2 fr.FRAME gauge=4AWG")},
	{rule: "traction-through-frame", name: "the charge comes back through it", text: edited(direct, "part pack", "part pack lithium-pack-16\npart chg charger-onboard-48v\npart fr frame-point\npart fu2 fuse-cartridge fuse-rating=40A\n"+
		"wire c1 chg.DC+ fu2.in gauge=8AWG insulation=105C length=1m\nwire c2 fu2.out sol.L1 gauge=8AWG insulation=105C length=120mm\nwire c3 chg.DC- fr.FRAME gauge=8AWG insulation=105C length=200mm\nwire c4 fr.FRAME pack.NEG gauge=8AWG insulation=105C length=200mm")},
	{rule: "traction-through-frame", name: "between controller and motor", text: edited(direct, "+", "part motor motor-series\npart fr frame-point\nwire x1 motor.A1 fr.FRAME gauge=2AWG\nwire x2 fr.FRAME ctrl.M- gauge=2AWG")},
	{rule: "earth-missing", name: "the inlet is not bonded to the frame", text: edited(earthedCharger, "wire c4", "")},
	{rule: "earth-missing", name: "no frame on the sheet", text: edited(earthedCharger, "part fr", "", "wire c4", "")},
	{rule: "earth-missing", name: "no frame on the sheet, and the charger is left out", text: edited(earthedCharger, "part fr", "", "wire c4", "", "wire c3", "")},
}

var frameGood = []example{
	{rule: "pack-on-frame", name: "a bolt that nothing lands on", text: edited(strung, "+", "part fr frame-point")},
	{rule: "traction-through-frame", name: "a leak is no return", text: edited(direct, "+", "part lk frame-leak\nwire x1 lk.to ctrl.B- gauge=10AWG\npart fr frame-point\nwire x2 fr.FRAME pack.NEG gauge=10AWG")},
	{rule: "traction-through-frame", name: "a lamp's return is another matter", text: edited(strung, "+", "part lt lamp-work-48v\npart fr frame-point\nwire x1 lt.- fr.FRAME gauge=14AWG\nwire x2 fr.FRAME b1.- gauge=14AWG\nwire x3 lt.+ key.IGN gauge=14AWG")},
	{rule: "earth-missing", name: "nobody drew the AC side", text: lithium},
	{rule: "earth-missing", name: "bonded at the charger", text: edited(earthedCharger, "wire c4", "wire c4 chg.AC-PE fr.FRAME gauge=14AWG insulation=105C length=300mm")},
}

// earthedCharger is the AC side of a charger.
const earthedCharger = `
part inlet ac-inlet
part chg charger-onboard-48v
part fr frame-point
wire c1 inlet.L chg.AC-L gauge=14AWG insulation=105C length=400mm
wire c2 inlet.N chg.AC-N gauge=14AWG insulation=105C length=400mm
wire c3 inlet.PE chg.AC-PE gauge=14AWG insulation=105C length=400mm
wire c4 inlet.PE fr.FRAME gauge=14AWG insulation=105C length=300mm
`

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
