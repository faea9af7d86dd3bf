package lugline

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

// Verdict is what a line says of an expected wire.
type Verdict string

// The verdicts. The zero value says nothing of an expected wire.
const (
	Seen    Verdict = "+" // it is here
	NotHere Verdict = "-" // it is not here
)

// Entry is what one line says of one lug. Two lines that say the same have equal entries.
type Entry struct {
	At           model.TerminalRef // the stud one stands at
	Verdict      Verdict
	Colour       model.Colour
	Gauge        unit.Gauge
	NoLook       bool      // ??: looked at, yet colour or gauge cannot be told
	Far          model.End // zero if the far end was not looked at
	None         bool      // nothing is on the stud
	ColourJudged bool
	GaugeJudged  bool
	FarJudged    bool
	Condition    []model.Condition
	Mark         string
	Bundle       string
	Note         string
	Unknown      []string // tokens that say nothing known, as written
}

// IsWire reports whether the entry speaks of a wire and not only of the stud.
func (e Entry) IsWire() bool {
	return e.Verdict != "" || !e.Colour.IsZero() || !e.Gauge.IsZero() || e.NoLook || !e.Far.IsZero() ||
		e.Mark != "" || e.Bundle != "" || len(e.Unknown) > 0
}

// IsBlank reports whether the entry says nothing at all.
func (e Entry) IsBlank() bool {
	return !e.IsWire() && !e.None && len(e.Condition) == 0 && e.Note == ""
}

// EntryOf is what a line can say of a wire that has an end on the terminal. Lengths,
// lugs, zones and photos have no place on a line.
func EntryOf(w *model.Wire, at model.TerminalRef) Entry {
	e := Entry{
		At: at, Colour: w.Colour, Gauge: w.Gauge, Far: w.Far(at),
		ColourJudged: w.IsJudged(model.JudgedColour), GaugeJudged: w.IsJudged(model.JudgedGauge),
		Condition: slices.Clone(w.Condition), Mark: w.Mark, Bundle: w.Bundle, Note: w.Note,
	}
	e.FarJudged = w.IsJudged(model.JudgedTo)
	if w.From.At != at {
		e.FarJudged = w.IsJudged(model.JudgedFrom)
	}
	e.Far.In = ""
	if e.Far.Loose == model.Untraced && w.Confidence == model.NotTraced {
		e.Far, e.FarJudged = model.End{}, false
	}
	return e
}

// wire is the new wire that the entry describes, from the stud to the far end.
func (e Entry) wire(id model.WireID) model.Wire {
	onWire, _ := split(e.Condition)
	w := model.Wire{
		ID: id, From: model.End{At: e.At}, To: e.Far, Colour: e.Colour, Gauge: e.Gauge,
		Judged: e.judged(model.JudgedTo), Condition: onWire,
		Mark: e.Mark, Bundle: e.Bundle, Note: e.fullNote(),
	}
	if e.Far.IsZero() {
		w.To, w.Confidence = model.LooseEnd(model.Untraced), model.NotTraced
	}
	return w
}

// judged lists what the entry says was judged; far is the name of the far end.
func (e Entry) judged(far model.Judgement) []model.Judgement {
	var list []model.Judgement
	for _, j := range []struct {
		is bool
		of model.Judgement
	}{{e.FarJudged, far}, {e.GaugeJudged, model.JudgedGauge}, {e.ColourJudged, model.JudgedColour}} {
		if j.is {
			list = append(list, j.of)
		}
	}
	return list
}

// fullNote is the note with the tokens that could not be read.
func (e Entry) fullNote() string {
	if len(e.Unknown) == 0 {
		return e.Note
	}
	return addNote(e.Note, "needs a look: "+clean(strings.Join(e.Unknown, " ")))
}

// addNote appends a remark to a note that does not make it yet.
func addNote(note, more string) string {
	switch {
	case note == "":
		return more
	case more == "" || slices.Contains(strings.Split(note, "; "), more):
		return note
	}
	return note + "; " + more
}

// agrees reports whether nothing that the entry says of a wire contradicts what is
// recorded of one that has an end on the terminal.
func (e Entry) agrees(w *model.Wire, at model.TerminalRef) bool {
	far := w.Far(at)
	far.In = ""
	return (e.Colour.IsZero() || w.Colour.IsZero() || e.Colour == w.Colour) &&
		(e.Gauge.IsZero() || w.Gauge.IsZero() || e.Gauge == w.Gauge) &&
		(e.Far.IsZero() || e.Far == far) &&
		(e.Mark == "" || w.Mark == "" || e.Mark == w.Mark) &&
		(e.Bundle == "" || w.Bundle == "" || e.Bundle == w.Bundle)
}

// adopt fills in what is recorded of a wire that the entry confirms.
func (e *Entry) adopt(w *model.Wire) {
	known := EntryOf(w, e.At)
	if e.Colour.IsZero() {
		e.Colour, e.ColourJudged = known.Colour, known.ColourJudged
	}
	if e.Gauge.IsZero() {
		e.Gauge, e.GaugeJudged = known.Gauge, known.GaugeJudged
	}
	if e.Far.IsZero() {
		e.Far, e.FarJudged = known.Far, known.FarJudged
	}
	if e.Mark == "" {
		e.Mark = known.Mark
	}
	if e.Bundle == "" {
		e.Bundle = known.Bundle
	}
	e.NoLook = e.NoLook && (e.Colour.IsZero() || e.Gauge.IsZero())
}
