package rule

var chargerReversed = Rule{
	ID: "charger-reversed", Title: "The charger is connected the wrong way round",
	Family: Polarity, Severity: Danger,
	About:  "Traces DC+ and DC- of each charger or charging receptacle to the poles of the pack through everything that can close.",
	Bad:    "chg.DC+ goes to the pack negative bus, chg.DC- to the charge fuse",
	Good:   "chg.DC+ goes to the charge fuse, chg.DC- to the pack negative bus",
	Basis:  Basis{"the pack and the charger drive current into each other through the output stage", Physics},
	Remedy: "do not plug it in; swap the two DC leads of the charger",
	Run:    func(p *Pass) { p.reportReversed(chargerRole) },
}
