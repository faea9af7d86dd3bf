package lugline

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// Edit is the change that the line makes, as one step. A new wire gets the id and the
// next place in the stack of the stud; its place at the far end stays open until somebody
// stands there. An expected wire that is seen gets its place here; one that is not here
// keeps its far end and goes out of sight. Edit fails if the line says nothing, or speaks
// of an expected wire where none agrees.
func (r Reading) Edit(id model.WireID) (edit.Edit, error) {
	switch {
	case r.IsBlank():
		return nil, errors.New("nothing is entered; type what is on the stud, such as k6 b2+, or % for nothing")
	case r.None:
		return r.emptyStud()
	case !r.IsWire():
		return r.step("remark on "+Name(r.At), r.onStud(r.Condition, r.Note)), nil
	case r.inVain():
		return nil, fmt.Errorf("no such wire is expected at %s; type what is there", Name(r.At))
	case r.Confirms != "":
		return r.confirmed(r.here.Sheet.Wire(r.Confirms)), nil
	}
	_, joint := split(r.Condition)
	seat := edit.Seat(len(recorded(r.here.Sheet, r.At)) + 1)
	add := edit.AddWire{Sheet: r.here.Sheet.Name, Wire: r.wire(id), FromSeat: seat}
	return r.step(add.Name(), append([]edit.Edit{add}, r.onStud(joint, "")...)), nil
}

// step is one edit, or several as a group.
func (r Reading) step(title string, edits []edit.Edit) edit.Edit {
	if len(edits) == 1 {
		return edits[0]
	}
	return edit.Group{Title: title, Edits: edits}
}

// emptyStud records that the stud was looked at and carries nothing: wires expected here
// go out of sight.
func (r Reading) emptyStud() (edit.Edit, error) {
	sheet := r.here.Sheet
	if stack := recorded(sheet, r.At); len(stack) > 0 {
		return nil, fmt.Errorf("%s carries %s by this record; remove it there first", Name(r.At), stack[0])
	}
	edits := []edit.Edit{r.setStud("confidence", string(model.Traced))}
	for _, id := range Expected(sheet, r.At) {
		edits = append(edits, r.notHere(sheet.Wire(id)))
	}
	return edit.Group{Title: "nothing on " + Name(r.At), Edits: append(edits, r.onStud(r.Condition, r.Note)...)}, nil
}

// confirmed records what was seen of an expected wire.
func (r Reading) confirmed(w *model.Wire) edit.Edit {
	onWire, joint := split(r.Condition)
	title := fmt.Sprintf("%s seen at %s", w.ID, Name(r.At))
	var edits []edit.Edit
	if r.Verdict == NotHere {
		title = fmt.Sprintf("%s is not at %s", w.ID, Name(r.At))
		edits = append(edits, r.notHere(w))
	} else {
		order := append(slices.Clone(recorded(r.here.Sheet, r.At)), w.ID)
		edits = append(edits, edit.Restack{Sheet: r.here.Sheet.Name, At: r.At, Order: order})
	}
	edits = append(edits, r.fillIn(w, onWire)...)
	return edit.Group{Title: title, Edits: append(edits, r.onStud(joint, "")...)}
}

// notHere leaves the end that was believed here out of sight.
func (r Reading) notHere(w *model.Wire) edit.Edit {
	side := edit.From
	if w.To.At == r.At {
		side = edit.To
	}
	return edit.ReEnd{Sheet: r.here.Sheet.Name, ID: w.ID, Side: side, End: model.LooseEnd(model.Untraced)}
}

// fillIn adds to a wire what the line says beyond what is recorded.
func (r Reading) fillIn(w *model.Wire, conditions []model.Condition) []edit.Edit {
	var edits []edit.Edit
	set := func(field, was, is string) {
		if is != was {
			edits = append(edits, edit.SetWire{Sheet: r.here.Sheet.Name, ID: w.ID, Field: field, Text: is})
		}
	}
	judged := slices.Clone(w.Judged)
	if w.Colour.IsZero() && r.ColourJudged {
		judged = append(judged, model.JudgedColour)
	}
	if w.Gauge.IsZero() && r.GaugeJudged {
		judged = append(judged, model.JudgedGauge)
	}
	set("gauge", w.Gauge.String(), r.Gauge.String())
	set("colour", w.Colour.String(), r.Colour.String())
	set("judged", listed(w.Judged), listed(judged))
	set("condition", listed(w.Condition), listed(union(slices.Clone(w.Condition), conditions)))
	set("bundle", w.Bundle, r.Bundle)
	set("mark", w.Mark, r.Mark)
	set("note", w.Note, addNote(w.Note, r.fullNote()))
	return edits
}

// onStud adds conditions and a note to what is recorded of the stud.
func (r Reading) onStud(conditions []model.Condition, note string) []edit.Edit {
	var t model.Terminal
	if known := r.here.Sheet.Terminal(r.At); known != nil {
		t = *known
	}
	var edits []edit.Edit
	if all := union(slices.Clone(t.Condition), conditions); len(all) > len(t.Condition) {
		edits = append(edits, r.setStud("condition", listed(all)))
	}
	if note != "" {
		edits = append(edits, r.setStud("note", addNote(t.Note, note)))
	}
	return edits
}

func (r Reading) setStud(field, text string) edit.Edit {
	return edit.SetTerminal{Sheet: r.here.Sheet.Name, At: r.At, Field: field, Text: text}
}

// listed writes words as a job file's list.
func listed[T ~string](list []T) string {
	words := make([]string, len(list))
	for i, w := range list {
		words[i] = string(w)
	}
	return strings.Join(words, ", ")
}
