package lugline

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
)

// ends are the signs and words for a far end that is no stud. Nothing on the stud is
// the empty one.
var ends = map[string]model.Loose{
	"?": model.Untraced, "unk": model.Untraced,
	"#": model.Cut, "cut": model.Cut,
	"=": model.Capped, "cap": model.Capped,
	"%": "", "none": "",
}

// parser reads the tokens of one line in their order.
type parser struct {
	reading Reading
	studs   []stud
	slots   map[Class]int // item that fills the slot, counted from 1; inherited counts too
	tan     bool          // the colour was called tan
}

// inherited stands in a slot that a ditto filled.
const inherited = -1

// fill puts an item into the slot of its class and strikes what was there.
func (p *parser) fill(it Item) {
	if at := p.slots[it.Class]; at > 0 {
		p.reading.Items[at-1].Struck = true
	}
	p.reading.Items = append(p.reading.Items, it)
	p.slots[it.Class] = len(p.reading.Items)
}

func (p *parser) filled(c Class) bool { return p.slots[c] != 0 }

func (p *parser) unknown(t token) {
	p.reading.Items = append(p.reading.Items, Item{Class: UnknownItem, Start: t.start, End: t.end()})
}

// token reads one token.
func (p *parser) token(t token) {
	switch sign := t.text[0]; {
	case sign == ';':
		p.note(t)
	case sign == '\'' || sign == '"':
		p.ditto(t)
	case t.text == string(Seen) || t.text == string(NotHere):
		p.reading.Verdict = Verdict(t.text)
		p.fill(Item{Class: VerdictItem, Start: t.start, End: t.end()})
	case sign == '!':
		p.conditions(t)
	case sign == '@':
		p.text(t, MarkItem, &p.reading.Mark)
	case sign == '*':
		p.text(t, BundleItem, &p.reading.Bundle)
	case t.text == "??":
		p.noLook(t)
	default:
		p.lookOrFar(t)
	}
}

func (p *parser) note(t token) {
	p.reading.Note = clean(t.text[1:])
	p.fill(Item{Class: NoteItem, Start: t.start, End: t.end()})
}

// ditto fills free slots from the last entry.
func (p *parser) ditto(t token) {
	p.fill(Item{Class: DittoItem, Start: t.start, End: t.end()})
	last, e := p.reading.here.Last, &p.reading.Entry
	if last == nil {
		return
	}
	if !p.filled(ColourItem) && (last.NoLook || !last.Colour.IsZero()) {
		e.Colour, e.ColourJudged, p.slots[ColourItem] = last.Colour, last.ColourJudged, inherited
		p.tan = !last.Colour.IsZero() && calledTan(last.Note)
	}
	if !p.filled(GaugeItem) && (last.NoLook || !last.Gauge.IsZero()) {
		e.Gauge, e.GaugeJudged, p.slots[GaugeItem] = last.Gauge, last.GaugeJudged, inherited
	}
	e.NoLook = e.NoLook || last.NoLook
	if t.text == `"` && !p.filled(ConditionItem) {
		e.Condition = slices.Clone(last.Condition)
	}
}

// begun keeps a sign that says nothing without what is to follow.
func (p *parser) begun(t token, c Class) {
	p.reading.Items = append(p.reading.Items, Item{Class: c, Start: t.start, End: t.end()})
}

func (p *parser) conditions(t token) {
	if t.text == "!" {
		p.begun(t, ConditionItem)
		return
	}
	list, ok := parseConditions(t.text[1:])
	if !ok {
		p.unknown(t)
		return
	}
	p.reading.Condition = list
	p.fill(Item{Class: ConditionItem, Start: t.start, End: t.end()})
}

// text reads a mark or a bundle.
func (p *parser) text(t token, c Class, into *string) {
	text := unquote(t.text[1:])
	if text == "" {
		p.begun(t, c)
		return
	}
	*into = text
	p.fill(Item{Class: c, Start: t.start, End: t.end()})
}

// noLook says that what the line does not say of colour and gauge cannot be told: it
// fills the slots that are free.
func (p *parser) noLook(t token) {
	p.reading.NoLook = true
	whole := Item{Class: GaugeItem, Start: t.start, End: t.end()}
	hue, size := whole, whole
	hue.Class = ColourItem
	switch {
	case p.filled(ColourItem) && p.filled(GaugeItem):
		whole.Struck = true
		p.reading.Items = append(p.reading.Items, whole)
	case p.filled(ColourItem):
		p.fill(whole)
	case p.filled(GaugeItem):
		p.fill(hue)
	default:
		hue.End, size.Start = t.start+1, t.start+1
		p.fill(hue)
		p.fill(size)
	}
}

// lookOrFar decides between a look and a far end by the rules of the package.
func (p *parser) lookOrFar(t token) {
	word, judged := strings.CutSuffix(t.text, "?")
	if t.text == "?" {
		word, judged = t.text, false
	}
	if loose, isEnd := ends[strings.ToLower(word)]; isEnd && !(judged && loose == "") {
		p.loose(t, loose, judged)
		return
	}
	l, isLook := parseLook(t.text)
	if isLook {
		needsFilled := !l.colour.IsZero() && p.filled(ColourItem) || !l.gauge.IsZero() && p.filled(GaugeItem)
		if !needsFilled {
			p.look(t, l)
			if or := p.others(resolve(p.studs, word, true)); len(or) > 0 {
				p.reading.OrStud = or[0]
			}
			return
		}
	}
	if p.stud(t, word, judged) {
		return
	}
	if isLook {
		p.look(t, l)
		return
	}
	p.unknown(t)
}

func (p *parser) look(t token, l look) {
	e := &p.reading.Entry
	middle := t.start + l.sizeAt
	if !l.colour.IsZero() {
		e.Colour, e.ColourJudged, p.tan = l.colour, l.colourJudged, l.tan
		p.fill(Item{Class: ColourItem, Start: t.start, End: middle, Judged: l.colourJudged})
	}
	if !l.gauge.IsZero() {
		e.Gauge, e.GaugeJudged = l.gauge, l.gaugeJudged
		p.fill(Item{Class: GaugeItem, Start: middle, End: t.end(), Judged: l.gaugeJudged})
	}
}

// loose reads an end that is no stud; an empty loose end is nothing on the stud.
func (p *parser) loose(t token, l model.Loose, judged bool) {
	p.far(t, model.LooseEnd(l), judged)
	p.reading.None = l == ""
}

func (p *parser) far(t token, end model.End, judged bool) {
	p.reading.Far, p.reading.FarJudged, p.reading.None, p.reading.Among = end, judged, false, nil
	p.fill(Item{Class: FarItem, Start: t.start, End: t.end(), Judged: judged})
}

// stud reads a token as a stud; false if it fits none but the one that one stands at.
func (p *parser) stud(t token, word string, judged bool) bool {
	word = strings.TrimPrefix(word, ">")
	found := p.others(resolve(p.studs, word, false))
	if at, ok := fresh(p.reading.here, word); ok && !slices.Contains(found, at) {
		found = p.others([]model.TerminalRef{at})
	}
	switch len(found) {
	case 0:
		return false
	case 1:
		p.far(t, model.End{At: found[0]}, judged)
	default:
		p.far(t, model.End{}, judged)
		p.reading.Among = found
	}
	return true
}

// others leaves out the stud that one stands at: no wire ends where it starts.
func (p *parser) others(list []model.TerminalRef) []model.TerminalRef {
	return slices.DeleteFunc(slices.Clone(list), func(at model.TerminalRef) bool { return at == p.reading.At })
}

// finish settles what only the whole line can tell.
func (p *parser) finish() Reading {
	r := &p.reading
	if p.tan {
		r.Note = tanNote(r.Note)
	}
	r.NoLook = r.NoLook && (r.Colour.IsZero() || r.Gauge.IsZero())
	if at := p.slots[FarItem]; at > 0 && r.None && p.speaksOfWire() {
		r.None = false
		r.Items[at-1].Class = UnknownItem
	}
	if len(r.Among) > 0 {
		r.FarJudged = false
	}
	for i, it := range r.Items {
		if it.Class == UnknownItem || it.Class == FarItem && !it.Struck && len(r.Among) > 0 {
			r.Unknown = append(r.Unknown, r.Written[r.Items[i].Start:it.End])
		}
	}
	p.confirm()
	return *r
}

func tanNote(note string) string {
	if calledTan(note) {
		return note
	}
	return addNote(tanWord, note)
}

// calledTan reports whether a note says that brown was called tan.
func calledTan(note string) bool {
	return note == tanWord || strings.HasPrefix(note, tanWord+";")
}

// speaksOfWire reports whether the line says anything of a wire beside an empty stud.
func (p *parser) speaksOfWire() bool {
	unknown := slices.ContainsFunc(p.reading.Items, func(it Item) bool { return it.Class == UnknownItem })
	return unknown || p.reading.IsWire()
}

// confirm finds the expected wire that the entry is about: the one that a verdict speaks
// of, or the one that comes from the far end that the line names.
func (p *parser) confirm() {
	r := &p.reading
	if r.Verdict == "" && (r.Far.At.IsZero() || len(r.Unknown) > 0) {
		return
	}
	if w := r.here.expected(&r.Entry); w != nil {
		r.Confirms = w.ID
		r.adopt(w)
	}
}
