package rule_test

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/field"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/unit"
)

// change is a kind of line that changes the job: how many words it takes and what it makes of
// them.
type change struct {
	least, most int
	make        func(words []string) (func(spot) (edit.Edit, error), error)
}

// changes is the table of the lines that change the job.
var changes = map[string]change{
	"wire": {2, 12, setter(spot.setWire)},
	"part": {2, 12, setter(func(s spot, id, field, text string) edit.Edit {
		return edit.SetPart{Sheet: s.sheet.Name, ID: model.PartID(id), Field: field, Text: text}
	})},
	"job": {1, 12, func(words []string) (func(spot) (edit.Edit, error), error) {
		return fixed(edit.SetJob{Field: words[0], Text: strings.Join(words[1:], " ")})
	}},
	"fuse":    {3, 3, makeFuse},
	"copy":    {2, 2, makeCopy},
	"at":      {2, 12, makeAt},
	"rate":    {2, 4, makeRate},
	"end":     {3, 5, makeEnd},
	"swap":    {2, 2, makeSwap},
	"stack":   {1, 9, makeStack},
	"without": {1, 1, makeWithout},
	"bridge":  {1, 1, makeBridge},
	"bypass":  {1, 1, makeBypass},
	"opens":   {1, 99, makeOpens},
	"add":     {4, 40, makeAdd},
	"run":     {3, 4, makeRun},
	"zone":    {1, 3, makeZone},
}

// fixed is an edit that does not depend on the job.
func fixed(e edit.Edit) (func(spot) (edit.Edit, error), error) {
	return func(spot) (edit.Edit, error) { return e, nil }, nil
}

// setter makes the reader of a line that sets one property from text.
func setter(set func(s spot, id, field, text string) edit.Edit) func([]string) (func(spot) (edit.Edit, error), error) {
	return func(words []string) (func(spot) (edit.Edit, error), error) {
		return func(s spot) (edit.Edit, error) {
			return set(s, words[0], words[1], strings.Join(words[2:], " ")), nil
		}, nil
	}
}

// setWire sets a property of a wire. With another gauge it gets lugs that fit where it has any.
func (s spot) setWire(id, field, text string) edit.Edit {
	w := s.sheet.Wire(model.WireID(id))
	set := func(field string) edit.Edit {
		return edit.SetWire{Sheet: s.sheet.Name, ID: model.WireID(id), Field: field, Text: text}
	}
	edits := []edit.Edit{set(field)}
	if field == "gauge" && w != nil && !w.FromBarrel.IsZero() {
		edits = append(edits, set("from-barrel"))
	}
	if field == "gauge" && w != nil && !w.ToBarrel.IsZero() {
		edits = append(edits, set("to-barrel"))
	}
	return edit.Group{Edits: edits}
}

// makeFuse puts a fuse of another rating into the place of one, of the same make: at the same
// multiple of its rating it opens in the same time, and what is known reaches as far up as before.
func makeFuse(words []string) (func(spot) (edit.Edit, error), error) {
	var value unit.Any
	err := value.UnmarshalText([]byte(words[1] + " " + words[2]))
	id := model.PartID(words[0])
	return func(s spot) (edit.Edit, error) {
		p := s.sheet.Part(id)
		if p == nil {
			return nil, fmt.Errorf("no part %s", id)
		}
		was, ok := p.Rating("fuse-rating")
		if !ok {
			return nil, fmt.Errorf("%s has no fuse-rating of its own", id)
		}
		points := slices.Clone(p.Opens)
		for i := range points {
			at := points[i].At.Amperes() * value.SI() / was.Value.SI()
			if i == len(points)-1 {
				at = max(at, points[i].At.Amperes())
			}
			points[i].At = unit.A(at)
		}
		return edit.Group{Edits: []edit.Edit{
			edit.RatePart{Sheet: s.sheet.Name, ID: id, Rating: model.Rating{Name: "fuse-rating", Value: value, Source: "label"}},
			edit.SetOpens{Sheet: s.sheet.Name, ID: id, Points: points},
		}}, nil
	}, err
}

// makeCopy adds a part like another one, with a name of its own.
func makeCopy(words []string) (func(spot) (edit.Edit, error), error) {
	return func(s spot) (edit.Edit, error) {
		p := s.sheet.Part(model.PartID(words[0]))
		if p == nil {
			return nil, fmt.Errorf("no part %s", words[0])
		}
		like := p.Clone()
		like.ID, like.Place = model.PartID(words[1]), nil
		return edit.AddPart{Sheet: s.sheet.Name, Part: like}, nil
	}, nil
}

func terminal(text string) (at model.TerminalRef, err error) {
	err = at.UnmarshalText([]byte(text))
	return at, err
}

func makeAt(words []string) (func(spot) (edit.Edit, error), error) {
	at, err := terminal(words[0])
	return func(s spot) (edit.Edit, error) {
		return edit.SetTerminal{Sheet: s.sheet.Name, At: at, Field: words[1], Text: strings.Join(words[2:], " ")}, nil
	}, err
}

func makeRate(words []string) (func(spot) (edit.Edit, error), error) {
	var value unit.Any
	err := value.UnmarshalText([]byte(strings.Join(words[2:], " ")))
	return func(s spot) (edit.Edit, error) {
		return edit.RatePart{Sheet: s.sheet.Name, ID: model.PartID(words[0]), Rating: model.Rating{Name: words[1], Value: value, Source: "label"}}, nil
	}, err
}

func makeSwap(words []string) (func(spot) (edit.Edit, error), error) {
	a, err := terminal(words[0])
	if err != nil {
		return nil, err
	}
	b, err := terminal(words[1])
	return func(s spot) (edit.Edit, error) { return edit.SwapTerminals{Sheet: s.sheet.Name, A: a, B: b}, nil }, err
}

func makeStack(words []string) (func(spot) (edit.Edit, error), error) {
	at, err := terminal(words[0])
	var order []model.WireID
	for _, w := range words[1:] {
		order = append(order, model.WireID(w))
	}
	return func(s spot) (edit.Edit, error) { return edit.Restack{Sheet: s.sheet.Name, At: at, Order: order}, nil }, err
}

// makeWithout takes out the wire of that name, or the part with its wires.
func makeWithout(words []string) (func(spot) (edit.Edit, error), error) {
	return func(s spot) (edit.Edit, error) {
		if s.sheet.Wire(model.WireID(words[0])) != nil {
			return edit.RemoveWire{Sheet: s.sheet.Name, ID: model.WireID(words[0])}, nil
		}
		return edit.RemovePart{Sheet: s.sheet.Name, ID: model.PartID(words[0]), WithWires: true}, nil
	}, nil
}

func makeRun(words []string) (func(spot) (edit.Edit, error), error) {
	var length unit.Length
	if err := length.UnmarshalText([]byte(strings.Join(words[2:], " "))); err != nil {
		return nil, err
	}
	return fixed(edit.SetRun{From: model.ZoneID(words[0]), To: model.ZoneID(words[1]), Length: length})
}

func makeZone(words []string) (func(spot) (edit.Edit, error), error) {
	zone := model.Zone{ID: model.ZoneID(words[0])}
	if err := zone.Hottest.UnmarshalText([]byte(strings.Join(words[1:], " "))); len(words) > 1 && err != nil {
		return nil, err
	}
	return fixed(edit.AddZone{Zone: zone})
}

// makeOpens reads a curve: points of a current with its unit and one or two times with theirs.
func makeOpens(words []string) (func(spot) (edit.Edit, error), error) {
	var points []model.OpenPoint
	for rest := words[1:]; len(rest) > 0; rest = rest[2:] {
		if len(rest) < 2 {
			return nil, fmt.Errorf("%q has no unit", rest[0])
		}
		text := []byte(rest[0] + " " + rest[1])
		var at unit.Ampere
		var time unit.Second
		switch last := len(points) - 1; {
		case at.UnmarshalText(text) == nil:
			points = append(points, model.OpenPoint{At: at})
		case time.UnmarshalText(text) != nil || last < 0:
			return nil, fmt.Errorf("expected a current and one or two times, not %q", text)
		case points[last].Least.IsZero():
			points[last].Least = time
		default:
			points[last].Most = time
		}
	}
	return func(s spot) (edit.Edit, error) {
		return edit.SetOpens{Sheet: s.sheet.Name, ID: model.PartID(words[0]), Points: points}, nil
	}, nil
}

func makeEnd(words []string) (func(spot) (edit.Edit, error), error) {
	var end model.End
	err := end.UnmarshalText([]byte(strings.Join(words[2:], " ")))
	if words[1] != string(edit.From) && words[1] != string(edit.To) {
		return nil, fmt.Errorf("%q is no end of a wire", words[1])
	}
	return func(s spot) (edit.Edit, error) { return s.moveEnd(model.WireID(words[0]), edit.Side(words[1]), end) }, err
}

// moveEnd moves an end and puts a lug on it that fits.
func (s spot) moveEnd(id model.WireID, side edit.Side, end model.End) (edit.Edit, error) {
	w := s.sheet.Wire(id)
	if w == nil {
		return nil, fmt.Errorf("no wire %s", id)
	}
	edits := []edit.Edit{edit.ReEnd{Sheet: s.sheet.Name, ID: id, Side: side, End: end}}
	edits = append(edits, s.seated(id, w.Gauge, end.At)...)
	if stud := s.stud(end.At); !stud.IsZero() {
		edits = append(edits,
			edit.SetWire{Sheet: s.sheet.Name, ID: id, Field: string(side) + "-lug", Text: stud.String()},
			edit.SetWire{Sheet: s.sheet.Name, ID: id, Field: string(side) + "-barrel", Text: w.Gauge.String()})
	}
	return edit.Group{Edits: edits}, nil
}

// stud is the size of a terminal that is a stud.
func (s spot) stud(at model.TerminalRef) unit.Stud {
	if t := s.sheet.Terminal(at); t != nil && !t.Stud.IsZero() {
		return t.Stud
	}
	if def := part.Library().For(s.job).TerminalOf(s.sheet, at); def != nil {
		return def.Stud
	}
	return unit.Stud{}
}

// seated puts a wire among the lugs of a terminal where one of its gauge belongs, if their order
// is recorded.
func (s spot) seated(id model.WireID, gauge unit.Gauge, at model.TerminalRef) []edit.Edit {
	order, known := s.sheet.StackOf(at)
	order = slices.DeleteFunc(order, func(w model.WireID) bool { return w == id })
	if !known || len(order) == 0 {
		return nil
	}
	i := slices.IndexFunc(order, func(w model.WireID) bool { return s.sheet.Wire(w).Gauge.Compare(gauge) < 0 })
	if i < 0 {
		i = len(order)
	}
	return []edit.Edit{edit.Restack{Sheet: s.sheet.Name, At: at, Order: slices.Insert(order, i, id)}}
}

// poles are the two terminals of a part.
func (s spot) poles(id model.PartID) (a, b model.TerminalRef, err error) {
	p := s.sheet.Part(id)
	if p == nil {
		return a, b, fmt.Errorf("no part %s", id)
	}
	names := part.Library().For(s.job).TerminalsOf(s.sheet, p)
	if len(names) != 2 {
		return a, b, fmt.Errorf("%s has %d terminals, expected two", id, len(names))
	}
	return model.TerminalRef{Part: id, Name: names[0]}, model.TerminalRef{Part: id, Name: names[1]}, nil
}

// makeBridge takes a part out: what was behind it goes to where the one wire before it came
// from, and that wire goes too.
func makeBridge(words []string) (func(spot) (edit.Edit, error), error) {
	id := model.PartID(words[0])
	return func(s spot) (edit.Edit, error) {
		in, out, err := s.poles(id)
		if err != nil {
			return nil, err
		}
		before := s.sheet.Landed(in)
		if len(before) != 1 {
			return nil, fmt.Errorf("%d wires before %s, expected one", len(before), id)
		}
		origin := s.sheet.Wire(before[0]).Far(in)
		edits := []edit.Edit{edit.RemoveWire{Sheet: s.sheet.Name, ID: before[0]}}
		left := s.job.Clone()
		if err := edits[0].Apply(left); err != nil {
			return nil, err
		}
		for _, w := range s.sheet.Landed(out) {
			side := edit.From
			if s.sheet.Wire(w).To.At == out {
				side = edit.To
			}
			move, err := spot{left, left.Sheet(s.sheet.Name)}.moveEnd(w, side, origin)
			if err != nil {
				return nil, err
			}
			edits = append(edits, move)
		}
		return edit.Group{Edits: append(edits, edit.RemovePart{Sheet: s.sheet.Name, ID: id})}, nil
	}, nil
}

// makeBypass lays a wire over a part with two terminals.
func makeBypass(words []string) (func(spot) (edit.Edit, error), error) {
	return func(s spot) (edit.Edit, error) {
		in, out, err := s.poles(model.PartID(words[0]))
		if err != nil {
			return nil, err
		}
		w := model.Wire{ID: "over", From: model.End{At: in}, To: model.End{At: out}}
		for _, id := range s.sheet.Landed(in) {
			w.Gauge, w.Serves = s.sheet.Wire(id).Gauge, s.sheet.Wire(id).Serves
		}
		return s.addWire(w, "length 60 mm")
	}, nil
}

// makeAdd reads a new part or a new wire.
func makeAdd(words []string) (func(spot) (edit.Edit, error), error) {
	switch words[0] {
	case "part":
		if err := need(words, 4, 4); err != nil {
			return nil, err
		}
		return func(s spot) (edit.Edit, error) {
			p := model.Part{ID: model.PartID(words[1]), Kind: words[2], Zone: model.ZoneID(words[3]), Secured: model.Yes}
			return edit.AddPart{Sheet: s.sheet.Name, Part: p}, nil
		}, nil
	case "wire":
		w := model.Wire{ID: model.WireID(words[1])}
		if err := w.From.UnmarshalText([]byte(words[2])); err != nil {
			return nil, err
		}
		if err := w.To.UnmarshalText([]byte(words[3])); err != nil {
			return nil, err
		}
		return func(s spot) (edit.Edit, error) { return s.addWire(w, strings.Join(words[4:], " ")) }, nil
	}
	return nil, fmt.Errorf("unknown word %q after add", words[0])
}

// addWire adds a wire of which everything is as it should be and recorded, but for what the
// properties say.
func (s spot) addWire(w model.Wire, properties string) (edit.Edit, error) {
	w.Insulation, w.Length, w.Supported = unit.C(105), unit.LengthFromMetres(0.3), unit.LengthFromMetres(0.3)
	w.Relieved, w.Guarded, w.Mark = model.Yes, model.Yes, string(w.ID)
	for property := range strings.SplitSeq("colour VT, "+properties, ", ") {
		name, text, _ := strings.Cut(property, " ")
		if err := field.Set(&w, name, text); err != nil {
			return nil, err
		}
	}
	if stud := s.stud(w.From.At); !stud.IsZero() && w.FromLug.IsZero() {
		w.FromLug, w.FromBarrel = stud, w.Gauge
	}
	if stud := s.stud(w.To.At); !stud.IsZero() && w.ToLug.IsZero() {
		w.ToLug, w.ToBarrel = stud, w.Gauge
	}
	edits := []edit.Edit{edit.AddWire{Sheet: s.sheet.Name, Wire: w}}
	edits = append(edits, s.seated(w.ID, w.Gauge, w.From.At)...)
	return edit.Group{Edits: append(edits, s.seated(w.ID, w.Gauge, w.To.At)...)}, nil
}
