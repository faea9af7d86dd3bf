package model

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"
)

// fill gives every exported field of a value something to share: two elements in each
// slice, a thing behind each pointer.
func fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				fill(v.Field(i))
			}
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 4))
		for i := range v.Len() {
			fill(v.Index(i))
		}
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem())
	case reflect.String:
		v.SetString("x")
	}
}

// shared lists the paths at which two values use the same memory.
func shared(path string, a, b reflect.Value) []string {
	var list []string
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			list = append(list, shared(path+"."+a.Type().Field(i).Name, a.Field(i), b.Field(i))...)
		}
	case reflect.Slice:
		if a.Len() > 0 && a.Pointer() == b.Pointer() {
			return []string{path}
		}
		for i := range a.Len() {
			list = append(list, shared(fmt.Sprintf("%s[%d]", path, i), a.Index(i), b.Index(i))...)
		}
	case reflect.Pointer:
		if !a.IsNil() && a.Pointer() == b.Pointer() {
			return []string{path}
		}
		if !a.IsNil() {
			return shared(path, a.Elem(), b.Elem())
		}
	}
	return list
}

func TestACloneSharesNothing(t *testing.T) {
	var j Job
	fill(reflect.ValueOf(&j).Elem())
	require.Equal(t, []string{"job"}, shared("job", reflect.ValueOf(&j), reflect.ValueOf(&j)), "the test sees sharing")
	shallow := j
	require.Contains(t, shared("job", reflect.ValueOf(j), reflect.ValueOf(shallow)), "job.Sheets")
	c := j.Clone()
	require.Equal(t, &j, c)
	require.Empty(t, shared("job", reflect.ValueOf(&j), reflect.ValueOf(c)))
	s := j.Sheets[0].CloneAs(Plan)
	require.Equal(t, Plan, s.Name)
	require.Empty(t, shared("sheet", reflect.ValueOf(j.Sheets[0]), reflect.ValueOf(s)))
	require.Equal(t, &Job{}, (&Job{}).Clone(), "nothing stays nothing")
}

func TestStackOf(t *testing.T) {
	at := TerminalRef{"b1", "+"}
	wire := func(id string) Wire { return Wire{ID: WireID(id), From: End{At: at}, To: LooseEnd(Cut)} }
	for _, c := range []struct {
		name   string
		landed []string
		stack  []WireID
		want   []WireID
		known  bool
	}{
		{"nothing", nil, nil, nil, true},
		{"one needs no record", []string{"w1"}, nil, []WireID{"w1"}, true},
		{"two without a record", []string{"w1", "w2"}, nil, []WireID{"w1", "w2"}, false},
		{"two recorded", []string{"w1", "w2"}, []WireID{"w2", "w1"}, []WireID{"w2", "w1"}, true},
		{"recorded first", []string{"w1", "w2", "w3"}, []WireID{"w3"}, []WireID{"w3", "w1", "w2"}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := Sheet{Terminals: []Terminal{{At: at, Stack: c.stack}}}
			for _, id := range c.landed {
				s.Wires = append(s.Wires, wire(id))
			}
			s.Wires = append(s.Wires, Wire{ID: "other", From: On("b1", "-"), To: LooseEnd(Cut)})
			order, known := s.StackOf(at)
			require.Equal(t, c.want, order)
			require.Equal(t, c.known, known)
		})
	}
}

func TestWireEnds(t *testing.T) {
	j := sampleJob(t)
	s := j.Sheet(AsFound)
	w := s.Wire("w1")
	b1, b2 := TerminalRef{"b1", "-"}, TerminalRef{"b2", "+"}
	require.Equal(t, w.To, w.Far(b1))
	require.Equal(t, w.From, w.Far(b2))
	require.Equal(t, [2]End{w.From, w.To}, w.Ends())
	require.True(t, w.LandsOn(b2))
	require.False(t, s.Wire("w3").LandsOn(TerminalRef{}), "a loose end is on no terminal")
	require.NoError(t, w.FromLug.UnmarshalText([]byte("M8")))
	require.NoError(t, w.ToLug.UnmarshalText([]byte("M10")))
	require.Equal(t, []string{"M8", "M10"}, []string{w.LugAt(b1).String(), w.LugAt(b2).String()})
	require.True(t, s.Wire("w2").IsJudged(JudgedTo))
	require.False(t, s.Wire("w2").IsJudged(JudgedFrom))
	require.Equal(t, []WireID{"w2", "w4"}, s.Landed(TerminalRef{"b1", "+"}))
}

func TestFindingByName(t *testing.T) {
	j := sampleJob(t)
	s := j.Sheet(AsFound)
	require.Same(t, &j.Sheets[0], s)
	require.Same(t, &s.Parts[2], s.Part("sol"))
	require.Same(t, &s.Wires[1], s.Wire("w2"))
	require.Same(t, &s.Terminals[0], s.Terminal(TerminalRef{"b1", "+"}))
	require.Same(t, &j.Zones[1], j.Zone("dash"))
	require.Nil(t, j.Sheet(Plan))
	require.Nil(t, s.Part("SOL"))
	require.Nil(t, s.Wire("w9"))
	require.Nil(t, s.Terminal(TerminalRef{"b1", "-"}))
	require.Nil(t, j.Zone("attic"))
	require.NoError(t, j.Runs[0].Length.UnmarshalText([]byte("0.8 m")))
	for _, ends := range [][2]ZoneID{{"tray", "dash"}, {"dash", "tray"}} {
		length, ok := j.RunLength(ends[0], ends[1])
		require.True(t, ok)
		require.Equal(t, "0.8 m", length.String())
	}
	_, ok := j.RunLength("tray", "tray")
	require.False(t, ok)
}

func TestABlankTerminalRecordsNothing(t *testing.T) {
	blank := Terminal{At: TerminalRef{"b1", "+"}}
	require.True(t, blank.IsBlank())
	typ := reflect.TypeFor[Terminal]()
	for i := 1; i < typ.NumField(); i++ {
		v := reflect.New(typ).Elem()
		f := v.Field(i)
		switch typ.Field(i).Name {
		case "Stud":
			require.NoError(t, v.Addr().Interface().(*Terminal).Stud.UnmarshalText([]byte("M8")))
		case "Torque":
			require.NoError(t, v.Addr().Interface().(*Terminal).Torque.UnmarshalText([]byte("9 N m")))
		default:
			fill(f)
		}
		require.False(t, v.Addr().Interface().(*Terminal).IsBlank(), typ.Field(i).Name)
	}
}

func TestTheMoreParticularDefinitionStandsAbove(t *testing.T) {
	lib := NewCatalogue([]Definition{{Kind: "a", Title: "shop's a"}}, []Definition{{Kind: "a", Title: "library's a"}, {Kind: "b", Title: "library's b"}})
	require.Equal(t, "shop's a", lib.Definition("a").Title)
	require.Equal(t, []string{"a", "b"}, lib.Kinds())
	require.Nil(t, lib.Definition("c"))
	require.Same(t, lib, lib.For(&Job{}))
	own := lib.For(&Job{Definitions: []Definition{{Kind: "b", Title: "job's b"}, {Kind: "c", Title: "job's c"}}})
	require.Equal(t, "job's b", own.Definition("b").Title)
	require.Equal(t, "shop's a", own.Definition("a").Title)
	require.Equal(t, []string{"b", "c", "a"}, own.Kinds())
	require.Equal(t, "library's b", lib.Definition("b").Title, "the library itself is unchanged")
}

func TestFiguresAndTerminalsOfAPart(t *testing.T) {
	lib, j := sampleLibrary(t), sampleJob(t)
	s := j.Sheet(AsFound)
	r, ok := lib.RatingOf(s.Part("b1"), "voltage")
	require.True(t, ok)
	require.Equal(t, "8.2 V", r.Value.String(), "the part's own figure")
	r, _ = lib.RatingOf(s.Part("b2"), "voltage")
	require.Equal(t, "8 V", r.Value.String(), "the definition's")
	for _, id := range []PartID{"sol", "x1"} {
		_, ok = lib.RatingOf(s.Part(id), "voltage")
		require.False(t, ok)
	}
	require.Equal(t, Positive, lib.TerminalOf(s, TerminalRef{"b1", "+"}).Pole)
	for _, at := range []TerminalRef{{"b1", "L1"}, {"b9", "+"}, {"x1", "7"}} {
		require.Nil(t, lib.TerminalOf(s, at))
	}
	require.Equal(t, []string{"+", "-"}, lib.TerminalsOf(s, s.Part("b1")))
	s.Wires = append(s.Wires, Wire{ID: "w9", From: On("x1", "8"), To: On("x1", "7")})
	require.Equal(t, []string{"7", "8"}, lib.TerminalsOf(s, s.Part("x1")), "those that wires name")
}
