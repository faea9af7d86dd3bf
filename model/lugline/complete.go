package lugline

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/lugbook/model"
)

// Reason says why a candidate is offered.
type Reason string

// The reasons, strongest first.
const (
	WireExpected Reason = "a wire from there is expected here"
	NextInSeries Reason = "next in the series"
	HasRoom      Reason = "carries fewer lugs than its like"
	SamePart     Reason = "same part as before"
	NearBy       Reason = "near"
	FitsToo      Reason = "fits"
)

// Candidate is one way to go on with the line.
type Candidate struct {
	At   model.TerminalRef // the stud that it names
	Text string            // what is put in
	Line string            // the line when it is taken
	Why  Reason
}

// mostCandidates is how many candidates are offered; more cannot be told apart at a glance.
const mostCandidates = 8

// Complete lists ways to go on with the line, likeliest first: on an empty line whole
// wires that are expected here or next in a series; later the far end. It never offers a
// condition.
func (r Reading) Complete() []Candidate { return r.ways(mostCandidates) }

// Likeliest is the first of the ways to go on with the line; false if there is none. It
// takes less time than all of them.
func (r Reading) Likeliest() (Candidate, bool) {
	ways := r.ways(1)
	if len(ways) == 0 {
		return Candidate{}, false
	}
	return ways[0], true
}

// ways lists the likeliest ways to go on with the line, so many at most.
func (r Reading) ways(most int) []Candidate {
	line := r.Written
	if strings.TrimSpace(line) == "" {
		lines := r.wholeLines()
		return lines[:min(len(lines), most)]
	}
	last := r.Items[len(r.Items)-1]
	switch {
	case last.Class == NoteItem || r.None || open(line[last.Start:last.End]):
		return nil
	case len(r.Among) > 0 && last.Class == FarItem:
		return r.candidates(r.Among, line[:last.Start], most)
	case len(r.Among) > 0 || !r.Far.IsZero() || last.Class == UnknownItem:
		return nil
	}
	if end, _ := utf8.DecodeLastRuneInString(line); !unicode.IsSpace(end) {
		line += " "
	}
	var all []model.TerminalRef
	for _, s := range r.here.studs() {
		if s.at != r.At {
			all = append(all, s.at)
		}
	}
	return r.candidates(all, line, most)
}

// wholeLines are the lines that an empty one can become.
func (r Reading) wholeLines() []Candidate {
	var list []Candidate
	add := func(e Entry, why Reason) {
		e.At = r.At
		line := e.Line(r.here)
		list = append(list, Candidate{At: e.Far.At, Text: line, Line: line, Why: why})
	}
	for _, id := range Expected(r.here.Sheet, r.At) {
		w := EntryOf(r.here.Sheet.Wire(id), r.At)
		add(Entry{Colour: w.Colour, Gauge: w.Gauge, ColourJudged: w.ColourJudged, GaugeJudged: w.GaugeJudged, Far: w.Far, FarJudged: w.FarJudged}, WireExpected)
	}
	if next, ok := r.here.nextInSeries(); ok {
		last := r.here.Last
		add(Entry{Colour: last.Colour, Gauge: last.Gauge, ColourJudged: last.ColourJudged, GaugeJudged: last.GaugeJudged, Far: model.End{At: next}}, NextInSeries)
	}
	return list
}

// candidates ranks studs as the far end of the line and writes the first of them.
func (r Reading) candidates(ats []model.TerminalRef, before string, most int) []Candidate {
	list := r.here.studs()
	var out []Candidate
	for _, k := range newRanking(r).best(ats, most) {
		text := short(list, k.at)
		out = append(out, Candidate{At: k.at, Text: text, Line: before + text, Why: k.why()})
	}
	return out
}

// nextInSeries is the far end that carries on the step of the last entry: after b1- to
// b2+, at b2- it is b3+.
func (c Context) nextInSeries() (model.TerminalRef, bool) {
	if c.Last == nil || c.Last.Far.At.IsZero() {
		return model.TerminalRef{}, false
	}
	near, far := c.Last.At, c.Last.Far.At
	if next, ok := c.step(near, far); ok {
		return next, true
	}
	return c.step(far, near)
}

// step finds the partner of the context's stud if it lies to it as two others lie to
// each other.
func (c Context) step(from, to model.TerminalRef) (model.TerminalRef, bool) {
	here, n, ok1 := numbered(c.At.Part)
	fromStem, m, ok2 := numbered(from.Part)
	stem, k, ok3 := numbered(to.Part)
	if !ok1 || !ok2 || !ok3 || here != fromStem || from.Name != c.At.Name || n == m {
		return model.TerminalRef{}, false
	}
	next := model.TerminalRef{Part: model.PartID(stem + strconv.Itoa(k+n-m)), Name: to.Name}
	exists := slices.ContainsFunc(c.studs(), func(s stud) bool { return s.at == next })
	return next, exists && next != c.At
}

// numbered parts a designator into its stem and number.
func numbered(id model.PartID) (stem string, n int, ok bool) {
	stem = strings.TrimRight(string(id), "0123456789")
	n, err := strconv.Atoi(string(id)[len(stem):])
	return stem, n, err == nil
}

// rank is what speaks for one stud, strongest first.
type rank struct {
	at                                model.TerminalRef
	expected, series, room, same, own bool
	away                              int
}

func (k rank) why() Reason {
	switch {
	case k.expected:
		return WireExpected
	case k.series:
		return NextInSeries
	case k.room:
		return HasRoom
	case k.same:
		return SamePart
	case k.away < farAway:
		return NearBy
	}
	return FitsToo
}

// compare sorts by the reasons, then by name with numbers by value. Studs of the part
// that one stands at come last: a wire seldom ends where it starts.
func (k rank) compare(o rank) int {
	return cmp.Or(
		truth(o.expected)-truth(k.expected),
		truth(o.series)-truth(k.series),
		truth(k.own)-truth(o.own),
		truth(o.room)-truth(k.room),
		truth(o.same)-truth(k.same),
		k.away-o.away,
		compareNames(k.at.String(), o.at.String()),
	)
}

func truth(b bool) int {
	if b {
		return 1
	}
	return 0
}

// compareNames sorts b2 before b10: a number by its value, all else letter by letter, case
// folded.
func compareNames(a, b string) int {
	a, b = strings.ToLower(a), strings.ToLower(b)
	for a != "" && b != "" {
		x, y := number(a), number(b)
		if x == 0 || y == 0 {
			x, y = 1, 1
		}
		if c := cmp.Or(x-y, strings.Compare(a[:x], b[:y])); c != 0 {
			return c
		}
		a, b = a[x:], b[y:]
	}
	return len(a) - len(b)
}

// number is the length of the number that a text begins with; 0 if there is none.
func number(s string) int { return len(s) - len(strings.TrimLeft(s, "0123456789")) }
