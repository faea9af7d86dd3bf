package rule

var meterReversed = Rule{
	ID: "meter-reversed", Title: "A meter is reversed",
	Family: Polarity, Severity: Fault,
	About: "Traces the supply of each meter and voltmeter that has a polarity to the poles of its source.",
	Why: "A panel meter with electronics in it shows nothing when its supply is reversed, or dies of it. An old moving-needle meter hangs at its lower stop " +
		"and bends its needle. Either way the driver has no word of the pack until it is empty, which a lithium pack answers by switching itself off.",
	Tell: "Measure at the meter's own tabs with the key on, red probe on its plus: the reading must be positive.",
	Blind: "It goes by the marks on the meter. Whether a sense pair is reversed at the shunt is judged by another rule. A meter that is fed over the " +
		"communication cable has no supply to trace.",
	Bad:    "the - tab of the voltmeter is on the switched side of the key",
	Good:   "the + tab of the voltmeter is on the switched side of the key",
	Wrong:  Example{Of: keyAndMeter, But: []string{"wire v1", "wire v1 key.IGN vm.- gauge=16AWG insulation=105C length=300mm", "wire v2", "wire v2 vm.+ pack.NEG gauge=16AWG insulation=105C length=2m"}},
	Right:  Example{Of: keyAndMeter},
	Basis:  Basis{"a reversed meter shows nothing or is damaged", Physics},
	Remedy: "swap the two leads of the meter",
	Run:    func(p *Pass) { p.reportReversed(meterRole) },
}

// keyAndMeter is a voltmeter on the switched side of the key.
const keyAndMeter = `
part pack lithium-pack-16
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
part vm voltmeter
wire k1 pack.POS fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire v1 key.IGN vm.+ gauge=16AWG insulation=105C length=300mm
wire v2 vm.- pack.NEG gauge=16AWG insulation=105C length=2m
at pack.POS cover=fitted
`
