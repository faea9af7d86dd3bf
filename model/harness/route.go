package harness

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// routes is the graph of zones and runs.
type routes struct {
	runs []model.Run
	at   map[model.ZoneID][]int // runs that touch a zone, by index
}

func newRoutes(runs []model.Run) *routes {
	m := &routes{at: map[model.ZoneID][]int{}}
	for _, r := range runs {
		if _, twice := m.between(r.From, r.To); twice || r.From == r.To {
			continue
		}
		n := len(m.runs)
		m.runs = append(m.runs, r)
		m.at[r.From] = append(m.at[r.From], n)
		m.at[r.To] = append(m.at[r.To], n)
	}
	return m
}

// between finds the run of two neighbouring zones.
func (m *routes) between(a, b model.ZoneID) (int, bool) {
	for _, r := range m.at[a] {
		if m.other(r, a) == b {
			return r, true
		}
	}
	return 0, false
}

func (m *routes) other(run int, zone model.ZoneID) model.ZoneID {
	if m.runs[run].From == zone {
		return m.runs[run].To
	}
	return m.runs[run].From
}

// reached is the best way found to a zone.
type reached struct {
	zone   model.ZoneID
	metres float64
	legs   int
	by     int // the run it was reached by; -1 at the start
	done   bool
}

// shorter prefers fewer metres, to a tenth of a millimetre, then fewer runs.
func (r *reached) shorter(o *reached) bool {
	if math.Abs(r.metres-o.metres) > 1e-4 {
		return r.metres < o.metres
	}
	return r.legs < o.legs
}

// shortest is the shortest way along the runs from one zone to another, by Dijkstra's
// method ("A note on two problems in connexion with graphs", 1959); of ways of one length
// that of fewest runs, then the one recorded first. It lists the zones, both ends
// included; nil if no way is recorded.
func (m *routes) shortest(from, to model.ZoneID) []model.ZoneID {
	best := []*reached{{zone: from, by: -1}}
	find := func(zone model.ZoneID) *reached {
		i := slices.IndexFunc(best, func(r *reached) bool { return r.zone == zone })
		if i < 0 {
			return nil
		}
		return best[i]
	}
	for {
		var now *reached
		for _, r := range best {
			if !r.done && (now == nil || r.shorter(now)) {
				now = r
			}
		}
		if now == nil {
			return nil
		}
		if now.zone == to {
			break
		}
		now.done = true
		for _, run := range m.at[now.zone] {
			next := &reached{zone: m.other(run, now.zone), metres: now.metres + m.runs[run].Length.Metres(), legs: now.legs + 1, by: run}
			if old := find(next.zone); old == nil {
				best = append(best, next)
			} else if !old.done && next.shorter(old) {
				*old = *next
			}
		}
	}
	along := []model.ZoneID{to}
	for r := find(to); r.by >= 0; r = find(along[len(along)-1]) {
		along = append(along, m.other(r.by, r.zone))
	}
	slices.Reverse(along)
	return along
}
