package rule

var controllerReversed = Rule{
	ID: "controller-reversed", Title: "The controller is fed the wrong way round",
	Family: Polarity, Severity: Danger,
	About: "Traces B+ and B- of each controller, and its key input, to the poles of the pack through everything that can close, the contactor included.",
	Why: "Between B+ and B- a controller has a bank of electrolytic capacitors and a row of transistors with a diode in each. Turned round, the " +
		"diodes are a dead short and the capacitors burst. The pre-charge resistor limits what happens at first, so that nothing is seen until " +
		"the contactor closes; then the fault current of the pack goes through the power stage, and the main fuse blows after the controller " +
		"is lost.",
	Tell: "Follow both thick cables by hand with the main fuse link out: B+ comes from the contactor, B- from the pack's negative or the shunt. Then " +
		"put the link in with the key off and the contactor open, and measure volts DC, black probe on B-, red on B+: through the pre-charge " +
		"resistor it must climb slowly to a positive reading. About a volt with a minus sign says that it is reversed: take the link out again. No " +
		"ohms here: the resistor feeds the controller past the open contactor.",
	Blind: "It goes by the marks on the studs. A controller whose marks were painted over, or a kind that the library does not know, must be looked up. " +
		"If the pack itself is reversed this is silent, for then every device is.",
	Bad:   "the cable from the contactor lands on ctrl.B- and the pack's negative on ctrl.B+",
	Good:  "the cable from the contactor lands on ctrl.B+ and the pack's negative on ctrl.B-",
	Wrong: Example{Of: packAndController, But: []string{"wire w3", "wire w3 sol.L2 ctrl.B- gauge=2AWG insulation=105C length=300mm", "wire w4", "wire w4 ctrl.B+ pack.NEG gauge=2AWG insulation=105C length=700mm"}},
	Right: Example{Of: packAndController},
	Basis: Basis{"reversed, the capacitor bank and the body diodes of the power stage short the pack as soon as the contactor closes", Physics},

	Remedy: "do not close the contactor; take the main fuse link out, see less than 5 V from B+ to B-, then swap the cables on them",
	Upsets: []string{"does-not-drive", "return-overload", "fuse-opens", "fuse-too-small", "fuse-too-large", "fuse-too-far", "feeds-add-up", "source-exceeds-wire", "contact-overload",
		"wire-too-thin", "drop-too-high", "pack-current", "pre-charge", "starved", "backfeed", "meter-always-on", "stand-by-drain"},
	Run: func(p *Pass) { p.reportReversed(controllerRole) },
}

// packAndController is the main loop of a cart: pack, fuse, contactor, controller.
const packAndController = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part pre precharge-resistor
part ctrl controller-series
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
stack sol.L1 w2 p1
stack sol.L2 w3 p2
at pack.POS cover=fitted
at fu1.in cover=fitted
`
