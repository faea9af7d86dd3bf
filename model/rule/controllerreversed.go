package rule

var controllerReversed = Rule{
	ID: "controller-reversed", Title: "The controller is fed the wrong way round",
	Family: Polarity, Severity: Danger,
	About:  "Traces B+ and B- of each controller, and its key input, to the poles of the pack through everything that can close, the contactor included.",
	Bad:    "the cable from the contactor lands on ctrl.B- and the pack negative on ctrl.B+",
	Good:   "the cable from the contactor lands on ctrl.B+ and the pack negative on ctrl.B-",
	Basis:  Basis{"reversed, the capacitor bank and the body diodes of the power stage short the pack as soon as the contactor closes", Physics},
	Remedy: "do not close the contactor; swap the cables on B+ and B-",
	Run:    func(p *Pass) { p.reportReversed(controllerRole) },
}
