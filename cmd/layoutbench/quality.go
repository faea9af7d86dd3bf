package main

import (
	"math"
	"slices"
)

// measures are what drawings are compared by.
var measures = []struct {
	name string
	of   func(result) float64
}{
	{"crossings", func(r result) float64 { return float64(r.Crossings) }},
	{"bends", func(r result) float64 { return float64(r.Bends) }},
	{"length", func(r result) float64 { return r.Length }},
	{"area", func(r result) float64 { return r.Area }},
}

// quality sets our drawings of the port graphs beside those of the peers.
func (r *reporter) quality() error {
	if r.graphs == "" {
		r.printf("No port graphs: give -graphs DIR.\n")
		return nil
	}
	graphs, err := r.load(r.graphs)
	if err != nil {
		return err
	}
	r.printf("Terminals keep their sides and offsets; \"ours, free\" may choose them. Zones are frames only where it says " +
		"zones. Faults of ours: box hit, graze, foreign overlap, touch, tight run, missed terminal, oblique, box overlap, " +
		"unrouted, frame. `same` is the length on which wires of one net lie on each other.\n\n")
	detail := newDetail()
	ratios := make([]ratioTable, len(variants))
	for _, g := range graphs {
		others := r.ask(g, r.runs)
		for i, v := range variants {
			if v.most > 0 && len(g.Nodes) > v.most {
				continue
			}
			own := r.make(v, g)
			r.progress("%s, %s: %s", g.Name, v.name, own.brief())
			detail.result(g.Name, own)
			ratios[i].add(g.Name, own, r.best(g.Name, others))
		}
		for _, o := range others {
			detail.result(g.Name, o)
		}
	}
	r.text.WriteString(detail.String())
	r.printf("Ratios to the best peer per measure (of those whose drawing says what the graph says: no box hit, no foreign " +
		"overlap, no missed terminal, none oblique); a zero counts as a half.\n\n")
	for i, v := range variants {
		r.printf("%s:\n\n%s", v.name, &ratios[i])
	}
	return nil
}

// newDetail is a table of drawings with all their measures.
func newDetail() *table {
	return newTable("graph", "drawing", "ms", "cross", "points", "bends", "worst", "length", "same", "overlap", "tight",
		"w x h", "area", "faults")
}

// result adds the row of one drawing.
func (t *table) result(graph string, r result) {
	if r.failed != "" {
		t.row(graph, r.who, r.failed)
		return
	}
	t.row(graph, r.who, r.ms, r.Crossings, r.CrossPoints, r.Bends, r.MaxBends, r.Length, r.OverlapSame, r.Overlap, r.Tight,
		cellText(math.Round(r.Width))+" x "+cellText(math.Round(r.Height)), r.Area, r.faults)
}

// best gives the least of each measure over the sound drawings of peers and the reference; NaN if there is none.
func (r *reporter) best(graph string, others []result) []float64 {
	out := make([]float64, len(measures))
	for i, m := range measures {
		out[i] = math.NaN()
		for _, o := range others {
			if o.failed == "" && o.Sound() {
				out[i] = lesser(out[i], m.of(o))
			}
		}
		if v, ok := r.known[graph][m.name]; ok {
			out[i] = lesser(out[i], v)
		}
	}
	return out
}

// lesser is the lesser of two numbers of which the first may be none yet.
func lesser(a, b float64) float64 {
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}

// ratioTable holds ratios of one variant to the best peer and their geometric means.
type ratioTable struct {
	rows []string
	vals [][]float64
}

func (t *ratioTable) add(graph string, own result, best []float64) {
	row := make([]float64, len(measures))
	for i, m := range measures {
		row[i] = math.NaN()
		if own.failed == "" {
			row[i] = ratio(m.of(own), best[i])
		}
	}
	t.rows, t.vals = append(t.rows, graph), append(t.vals, row)
}

// ratio is a over b, a zero of either taken as a half.
func ratio(a, b float64) float64 { return max(a, 0.5) / max(b, 0.5) }

// String is the table; it ends with the geometric means over what there is.
func (t *ratioTable) String() string {
	head := []string{"graph"}
	for _, m := range measures {
		head = append(head, m.name)
	}
	out := newTable(head...)
	for i, name := range t.rows {
		out.row(append([]any{name}, ratioCells(t.vals[i])...)...)
	}
	means := make([]float64, len(measures))
	for k := range measures {
		var column []float64
		for _, v := range t.vals {
			if !math.IsNaN(v[k]) {
				column = append(column, v[k])
			}
		}
		means[k] = geometricMean(column)
	}
	out.row(append([]any{"**geometric mean**"}, ratioCells(means)...)...)
	return out.String()
}

func ratioCells(values []float64) []any {
	var out []any
	for _, v := range values {
		if math.IsNaN(v) {
			out = append(out, "-")
		} else {
			out = append(out, v)
		}
	}
	return out
}

// geometricMean is NaN for no values.
func geometricMean(values []float64) float64 {
	sum := 0.0
	for _, v := range slices.Sorted(slices.Values(values)) {
		sum += math.Log(v)
	}
	return math.Exp(sum / float64(len(values)))
}
