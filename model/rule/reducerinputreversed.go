package rule

var reducerInputReversed = Rule{
	ID: "reducer-input-reversed", Title: "The input of a reducer is reversed",
	Family: Polarity, Severity: Danger,
	About: "Traces the input of each reducer to the poles of the pack through everything that can close.",
	Why: "A reducer has a capacitor and a switching transistor across its input. Turned round, the diode in that transistor conducts and takes " +
		"whatever the pack gives: with a fuse of the right size the fuse blows, without one the board chars. A reducer that shares its " +
		"negative between input and output is worse off: its 12 V negative now hangs on the pack's positive, and with it every shell, " +
		"bracket and shield on the 12 V side.",
	Tell: "Unplug the input and measure at the connector, black probe on the contact for the reducer's negative: positive and near the pack's " +
		"voltage is right. After the fact, with both leads off and the input at 0 V, ohms across the input: a shorted reducer shows next to " +
		"nothing both ways.",
	Blind: "It goes by the names on the leads. Reducers with three leads and no print must be looked up by their maker's sheet. If the pack " +
		"is reversed as a whole this is silent.",
	Bad:    "red.IN+ goes to the pack's negative, red.IN- to the reducer fuse",
	Good:   "red.IN+ goes to the reducer fuse, red.IN- to the pack's negative",
	Wrong:  Example{Of: packAndReducer, But: []string{"wire r2", "wire r2 fu4.out red.IN- gauge=12AWG insulation=105C length=800mm", "wire r3", "wire r3 red.IN+ pack.NEG gauge=12AWG insulation=105C length=800mm"}},
	Right:  Example{Of: packAndReducer},
	Basis:  Basis{"a reversed input puts the pack across the input diode and blows the fuse, or what is behind it", Physics},
	Remedy: "take the reducer's fuse out, then swap its two input leads",
	Run:    func(p *Pass) { p.reportReversed(reducerRole) },

	Upsets: []string{"backfeed", "starved", "meter-always-on", "stand-by-drain"},
}

// packAndReducer is an isolated reducer behind a fuse at the pack, with two devices on it, each
// behind its own fuse.
const packAndReducer = `
part pack lithium-pack-16
part fu4 fuse-cartridge fuse-rating=15A
part red reducer-isolated
part fb fuse-block-6-neg
part lt lamp-headlight
part usb usb-outlet
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.IN- pack.NEG gauge=12AWG insulation=105C length=800mm
wire a1 red.OUT+ fb.IN gauge=10AWG insulation=105C length=1m
wire a2 red.OUT- fb.NEG gauge=10AWG insulation=105C length=1m
wire a3 fb.1 lt.+ gauge=16AWG insulation=105C length=1m
wire a4 lt.- fb.NEG1 gauge=16AWG insulation=105C length=1m
wire a5 fb.2 usb.+ gauge=16AWG insulation=105C length=1m
wire a6 usb.- fb.NEG2 gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
at fu4.in cover=fitted
`
