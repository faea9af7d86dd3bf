package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/model"
	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/unit"
)

// halfKnown draws a job of random parts and wires of which anything may be missing.
func halfKnown(t *rapid.T) *model.Job {
	kinds := append(part.Library().Kinds(), model.UnknownKind)
	j := &model.Job{Version: model.FileVersion, Title: "random", Sheets: []model.Sheet{{Name: model.AsFound}}}
	if rapid.Bool().Draw(t, "system known") {
		j.System = unit.V(rapid.SampledFrom([]float64{12, 36, 48, 72}).Draw(t, "system"))
	}
	s := &j.Sheets[0]
	// Sources come often, or little would be live.
	for i := range rapid.IntRange(1, 14).Draw(t, "parts") {
		kind := rapid.SampledFrom(kinds).Draw(t, "kind")
		if rapid.IntRange(0, 3).Draw(t, "source") == 0 {
			kind = rapid.SampledFrom([]string{"lithium-pack-16", "lead-battery-6v", "fuse-inline", "contactor-48v"}).Draw(t, "often")
		}
		p := model.Part{ID: model.PartID(fmt.Sprintf("p%d", i)), Kind: kind}
		if d := part.Library().Definition(kind); d != nil && rapid.Bool().Draw(t, "label read") {
			p.Ratings = oddRatings(t, d)
		}
		s.Parts = append(s.Parts, p)
	}
	for i := range rapid.IntRange(0, 30).Draw(t, "wires") {
		s.Wires = append(s.Wires, halfKnownWire(t, s, i))
	}
	for _, w := range s.Wires {
		if at := w.From.At; !at.IsZero() && rapid.Bool().Draw(t, "stack known") && s.Terminal(at) == nil {
			s.Terminals = append(s.Terminals, model.Terminal{At: at, Stack: s.Landed(at)})
		}
	}
	return j
}

// oddRatings draws figures that a person might have mistyped.
func oddRatings(t *rapid.T, d *model.Definition) []model.Rating {
	var list []model.Rating
	for _, r := range d.Ratings {
		size := rapid.SampledFrom([]float64{0, 1e-6, 3, 40, 90000}).Draw(t, "size")
		value := map[unit.Dimension]unit.Any{
			unit.Voltage: unit.V(size).Any(), unit.Current: unit.A(size).Any(), unit.Resistance: unit.Ohms(size).Any(),
		}[r.Value.Dimension()]
		if !value.IsZero() && rapid.Bool().Draw(t, "odd") {
			list = append(list, model.Rating{Name: r.Name, Value: value, Source: "label"})
		}
	}
	return list
}

func halfKnownWire(t *rapid.T, s *model.Sheet, i int) model.Wire {
	w := model.Wire{ID: model.WireID(fmt.Sprintf("w%d", i)), From: halfKnownEnd(t, s), To: halfKnownEnd(t, s)}
	if !w.From.At.IsZero() && w.From.At == w.To.At {
		w.To = model.LooseEnd(model.Cut)
	}
	if rapid.Bool().Draw(t, "gauge known") {
		w.Gauge = rapid.SampledFrom([]unit.Gauge{unit.AWG(22), unit.AWG(16), unit.AWG(6), unit.MM2(35), unit.MM2(500)}).Draw(t, "gauge")
	}
	if rapid.Bool().Draw(t, "class known") {
		w.Insulation = unit.C(rapid.SampledFrom([]float64{40, 60, 105}).Draw(t, "class"))
	}
	if rapid.Bool().Draw(t, "length known") {
		w.Length = unit.LengthFromMetres(rapid.SampledFrom([]float64{0.1, 0.5, 3}).Draw(t, "length"))
	}
	w.Sheathed = rapid.Bool().Draw(t, "sheathed")
	return w
}

func halfKnownEnd(t *rapid.T, s *model.Sheet) model.End {
	p := rapid.SampledFrom(s.Parts).Draw(t, "part")
	d := part.Library().Definition(p.Kind)
	if rapid.IntRange(0, 5).Draw(t, "loose") == 0 {
		return model.LooseEnd(rapid.SampledFrom([]model.Loose{model.Cut, model.Capped, model.Untraced}).Draw(t, "how"))
	}
	if d == nil {
		return model.On(p.ID, rapid.SampledFrom([]string{"x", "y"}).Draw(t, "terminal"))
	}
	return model.On(p.ID, rapid.SampledFrom(d.Terminals).Draw(t, "terminal").Name)
}

func TestRulesNeverPanicAndAlwaysAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := halfKnown(t)
		if faults := j.Check(part.Library()); len(faults) > 0 {
			t.Fatalf("the generator made an inconsistent job: %v", faults)
		}
		first, err := rule.Check(j, model.AsFound, part.Library())
		require.NoError(t, err)
		again, err := rule.Check(j.Clone(), model.AsFound, part.Library())
		require.NoError(t, err)
		require.Equal(t, first, again)
		for _, f := range first {
			require.NotEmpty(t, f.Message)
			require.NotEmpty(t, f.Subjects, f.Message)
			require.Contains(t, rule.Severities(), f.Severity)
		}
	})
}

// TestSolvingNeverPanics also holds the sum of the powers against zero: what the sources
// give is what the rest takes.
func TestSolvingNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := halfKnown(t)
		n := network.Build(j, &j.Sheets[0], part.Library())
		for _, s := range n.States() {
			solution, err := n.Solve(s)
			if err != nil {
				continue
			}
			sum, largest := 0.0, 0.0
			for i := range n.Links() {
				p := solution.Power(&n.Links()[i])
				sum += p
				largest = max(largest, p, -p)
			}
			require.InDelta(t, 0, sum, 1e-6*max(1, largest), s.Name)
		}
	})
}
