package rule

var chargerReversed = Rule{
	ID: "charger-reversed", Title: "The charger is connected the wrong way round",
	Family: Polarity, Severity: Danger,
	About: "Traces DC+ and DC- of each charger or charging receptacle to the poles of the pack through everything that can close.",
	Why: "A charger holds its output at a voltage of its own. Joined backwards, the pack and the charger stand in series: their voltages add " +
		"up, and nothing limits the current but the diodes of the charger's output stage, which short and burn. Some chargers look for the " +
		"pack's voltage before they switch on and refuse; their output capacitor still meets the pack the wrong way round at the moment " +
		"when the lead is put on.",
	Tell: "Unplug the charger's DC connector and measure the pack's side of it, red probe on the contact that mates with DC+: it must show the " +
		"pack's voltage with its sign positive. At a receptacle, compare with the mark moulded beside the contacts. Only then mate it.",
	Blind: "It goes by what the charger's leads are called, which is what the label says, not by their colour. A charger with an unmarked plug, or a " +
		"receptacle wired backwards on the charger's own cord, can only be measured. Behind a contact that no state closes it has no source to " +
		"compare with and says nothing.",
	Bad:    "chg.DC+ goes to the pack's negative, chg.DC- to the charge fuse",
	Good:   "chg.DC+ goes to the charge fuse, chg.DC- to the pack's negative",
	Wrong:  Example{Of: packAndCharger, But: []string{"wire c1", "wire c1 chg.DC- fu2.in gauge=10AWG insulation=105C length=900mm", "wire c3", "wire c3 chg.DC+ pack.NEG gauge=10AWG insulation=105C length=900mm"}},
	Right:  Example{Of: packAndCharger},
	Basis:  Basis{"the pack and the charger drive current into each other through the output stage", Physics},
	Remedy: "do not plug it in; take the charge fuse out, then swap the two DC leads of the charger",
	Run:    func(p *Pass) { p.reportReversed(chargerRole) },

	Upsets: []string{"source-exceeds-wire", "not-selective"},
}

// packAndCharger is a pack with a charger behind a fuse at the pack.
const packAndCharger = `
part pack lithium-pack-16
part fu2 fuse-cartridge fuse-rating=30A
part chg charger-onboard-48v
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out pack.POS gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=900mm
at pack.POS cover=fitted
at fu2.out cover=fitted
`
