package lugline

import (
	"slices"

	"example.com/lugbook/model"
)

// Distances between parts: in cells of the drawing if a person placed both boxes,
// counting a row as two columns, else by zone.
const (
	elsewhere = 1 << 20 // another zone, or not known to be in the same one
	farAway   = 1 << 19 // beyond any distance in cells
)

// ranking holds what is the same for all studs that are ranked for one line.
type ranking struct {
	here     Context
	series   model.TerminalRef
	expected map[model.TerminalRef]bool
	lugs     map[model.TerminalRef]int
	usual    map[terminalKind]int
	parts    map[model.PartID]*model.Part
}

// terminalKind is a terminal of a kind of part.
type terminalKind struct{ kind, name string }

func newRanking(r Reading) *ranking {
	k := &ranking{here: r.here, expected: map[model.TerminalRef]bool{}, lugs: map[model.TerminalRef]int{}, parts: map[model.PartID]*model.Part{}}
	k.series, _ = r.here.nextInSeries()
	for _, id := range Expected(r.here.Sheet, r.At) {
		if w := r.here.Sheet.Wire(id); r.agrees(w, r.At) {
			k.expected[w.Far(r.At).At] = true
		}
	}
	for i := range r.here.Sheet.Wires {
		for _, e := range r.here.Sheet.Wires[i].Ends() {
			k.lugs[e.At]++
		}
	}
	for i := range r.here.Sheet.Parts {
		p := &r.here.Sheet.Parts[i]
		k.parts[p.ID] = p
	}
	k.usual = usualLugs(r.here, k.lugs)
	return k
}

// usualLugs is how many lugs a terminal of a kind of part carries most often on the
// sheet, among those that carry any; the smaller number if two are as often.
func usualLugs(c Context, lugs map[model.TerminalRef]int) map[terminalKind]int {
	counts := map[terminalKind][]int{}
	for _, s := range c.studs() {
		if n := lugs[s.at]; n > 0 {
			kind := terminalKind{s.of.Kind, s.at.Name}
			counts[kind] = append(counts[kind], n)
		}
	}
	usual := map[terminalKind]int{}
	for kind, list := range counts {
		slices.Sort(list)
		best := 0
		for i := range list {
			run := i
			for run < len(list) && list[run] == list[i] {
				run++
			}
			if run-i > best {
				best, usual[kind] = run-i, list[i]
			}
		}
	}
	return usual
}

// best ranks studs and keeps the likeliest, so many at most, likeliest first.
func (k *ranking) best(ats []model.TerminalRef, most int) []rank {
	var list []rank
	for _, at := range ats {
		next := k.of(at)
		if len(list) == most {
			if next.compare(list[most-1]) >= 0 {
				continue
			}
			list = list[:most-1]
		}
		i, _ := slices.BinarySearchFunc(list, next, rank.compare)
		list = slices.Insert(list, i, next)
	}
	return list
}

func (k *ranking) of(at model.TerminalRef) rank {
	p := k.parts[at.Part]
	last := k.here.Last
	return rank{
		at:       at,
		expected: k.expected[at],
		series:   k.series == at,
		room:     k.lugs[at] < max(1, k.usual[terminalKind{p.Kind, at.Name}]),
		same:     last != nil && last.Far.At.Part == at.Part,
		own:      at.Part == k.here.At.Part,
		away:     away(k.parts[k.here.At.Part], p),
	}
}

// away is how far two parts are from each other.
func away(a, b *model.Part) int {
	switch {
	case a == nil || b == nil:
		return elsewhere
	case a.Place != nil && b.Place != nil:
		return min(farAway-1, abs(a.Place.X-b.Place.X)+2*abs(a.Place.Y-b.Place.Y))
	case a.Zone != "" && a.Zone == b.Zone:
		return farAway - 1
	}
	return elsewhere
}

func abs(n int) int { return max(n, -n) }
