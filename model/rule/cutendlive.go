package rule

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

var cutEndLive = Rule{
	ID: "cut-end-live", Title: "A bare wire end is live",
	Family: Ends, Severity: Danger,
	About: "Looks at each end that is recorded as cut. It is a danger if the wire can be joined to the positive side of a source, in whatever " +
		"state, and a caution if it is joined to the negative side.",
	Why: "A cut end is a bare conductor that moves when the cart moves. If it is on the positive side, the first thing of the other side that " +
		"it touches closes a circuit: the frame on a cart with one fault already, a negative stud, a battery strap. Behind a fuse that is a " +
		"blown fuse by surprise; ahead of one the wire itself is the fuse and burns along its whole length, loom and all. It may have been " +
		"harmless for years because nothing was near it: a new pack, a new tray, a tie that broke change that in an afternoon.",
	Tell: "Pack off, fix the end by its jacket so that it touches nothing, and clip the red lead to it, the black one to the last negative stud, meter on DC " +
		"volts. Pack on: read it with the key off, with the key on, with the lights on, with the pedal down and the driven wheels off the ground. Anything " +
		"above a volt in any of them is live. Pack off again before a hand goes near it.",
	Blind: "Live means that contacts and fuses could join it to a source, each switch taken as closed: a wire behind two switches that are never " +
		"closed together counts as live. A wire whose other end is untraced is not known to be dead, and is not reported here. It doesn't know " +
		"whether the end is tucked away.",
	Bad:   "the old meter wire is on iso.out and ends bare",
	Good:  "the old meter wire is taken off",
	Wrong: Example{Of: studExample, But: []string{"+", "wire x1 iso.out cut gauge=16AWG insulation=105C", "stack iso.out", "stack iso.out w3 k1 x1"}},
	Right: Example{Of: studExample},
	Basis: Basis{"a bare live end finds the frame or another conductor sooner or later", Practice},
	Remedy: "pack off, take the wire off at its source; until then cap the end with a sleeve that shrinks and seals, tie it back and label it. The ready-made edits " +
		"record the one or the other",
	Explains: []string{"tap-unfused"},
	Run:      func(p *Pass) { p.reportLoose(model.Cut) },
}

// endFixes are what can be done about a live cut end: take the wire off, if its other end is
// known, or cap it.
func (p *Pass) endFixes(w *model.Wire, to bool) []edit.Edit {
	side, end, far := edit.From, w.From, w.To
	if to {
		side, end, far = edit.To, w.To, w.From
	}
	end.Loose = model.Capped
	capped := together("cap the end of "+string(w.ID), edit.ReEnd{Sheet: p.Sheet.Name, ID: w.ID, Side: side, End: end})
	if far.IsLoose() {
		return []edit.Edit{capped}
	}
	return []edit.Edit{edit.RemoveWire{Sheet: p.Sheet.Name, ID: w.ID}, capped}
}
