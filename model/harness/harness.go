// Package harness tells how the wires of a sheet lie along the runs between the zones of
// the cart: which wires each run holds, where runs part, which wires hang on which part,
// and from what length each wire is cut.
//
// Nothing is guessed: a wire whose zones no recorded run joins, or whose zone is not
// known, is told as such.
package harness

import (
	"slices"

	"example.com/lugbook/model"
)

// Harness is a sheet along the runs of its job.
type Harness struct {
	Zones []Zone // those of the job that hold anything or that a wire passes, in its order
	Runs  []Run  // as the job records them; a second run between two zones is left out
	Wires []Wire // in the order of the sheet
}

// Zone is a place on the cart.
type Zone struct {
	ID    model.ZoneID // empty for what is in no recorded zone
	Parts []Hang
	Loose []model.WireID // with a loose end seen here
	Runs  []int          // runs with wires in them that meet here, by index
}

// IsBranch reports whether the harness parts in the zone: three runs or more meet.
func (z *Zone) IsBranch() bool { return len(z.Runs) > 2 }

// Hang is a part with its wires.
type Hang struct {
	Part *model.Part
	Away []model.WireID // wires that leave the zone, or whose way is not known
	Here []model.WireID // wires that stay in the zone
}

// Run is a recorded run with the wires in it.
type Run struct {
	model.Run
	Wires []model.WireID // in the order of the sheet
}

// Of lays the wires of a sheet along the runs of the job. Both are only read.
func Of(j *model.Job, s *model.Sheet) *Harness {
	m := newRoutes(j.Runs)
	h := &Harness{}
	for _, r := range m.runs {
		h.Runs = append(h.Runs, Run{Run: r})
	}
	for i := range s.Wires {
		w := m.wire(s, &s.Wires[i])
		h.Wires = append(h.Wires, w)
		for _, r := range w.runs {
			h.Runs[r].Wires = append(h.Runs[r].Wires, w.Wire.ID)
		}
	}
	h.zones(j, s)
	return h
}

// zones collects the places with what hangs there.
func (h *Harness) zones(j *model.Job, s *model.Sheet) {
	ids := make([]model.ZoneID, 0, len(j.Zones)+1)
	for i := range j.Zones {
		ids = append(ids, j.Zones[i].ID)
	}
	note := func(id model.ZoneID) {
		if id != "" && !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
	}
	for i := range s.Parts {
		note(s.Parts[i].Zone)
	}
	for i := range h.Wires {
		for _, id := range h.Wires[i].Along {
			note(id)
		}
	}
	for _, id := range append(ids, "") {
		if z := h.zone(id, s); len(z.Parts)+len(z.Loose)+len(z.Runs) > 0 {
			h.Zones = append(h.Zones, z)
		}
	}
}

func (h *Harness) zone(id model.ZoneID, s *model.Sheet) Zone {
	z := Zone{ID: id}
	for i := range s.Parts {
		if s.Parts[i].Zone == id {
			z.Parts = append(z.Parts, h.hang(&s.Parts[i]))
		}
	}
	for i := range h.Wires {
		w := h.Wires[i].Wire
		for _, e := range w.Ends() {
			if e.IsLoose() && e.In == id && id != "" && !slices.Contains(z.Loose, w.ID) {
				z.Loose = append(z.Loose, w.ID)
			}
		}
	}
	for i, r := range h.Runs {
		if len(r.Wires) > 0 && (r.From == id || r.To == id) {
			z.Runs = append(z.Runs, i)
		}
	}
	return z
}

func (h *Harness) hang(p *model.Part) Hang {
	out := Hang{Part: p}
	for i := range h.Wires {
		w := &h.Wires[i]
		if w.Wire.From.At.Part != p.ID && w.Wire.To.At.Part != p.ID {
			continue
		}
		if w.Basis != NoWay && w.Basis != NoZone && w.stays() {
			out.Here = append(out.Here, w.Wire.ID)
		} else {
			out.Away = append(out.Away, w.Wire.ID)
		}
	}
	return out
}
