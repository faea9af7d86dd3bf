package support

import (
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// Range is what flows through one pack from rest to the hardest use, against its limits.
type Range struct {
	Pack Pack      `json:"pack"`
	Rows []Current `json:"rows"`

	Judgements  []Judgement  `json:"judgements"`
	Assumptions []Assumption `json:"assumptions"`
}

// Current is one current of a pack against its limit.
type Current struct {
	What  string  `json:"what"`
	Amps  float64 `json:"amps"`          // out of the pack, or into it where Into says so
	Most  float64 `json:"most"`          // of a band; as Amps if it is none
	Into  bool    `json:"into"`          // charging or braking
	Limit float64 `json:"limit"`         // amperes; 0 if not recorded
	Of    string  `json:"of"`            // which limit it is
	Grade Grade   `json:"grade"`         // against the limit; beyond one that is from memory, or with a current from memory, a caution
	Vague bool    `json:"from_memory"`   // the current or the limit is the library's
	Why   string  `json:"why,omitempty"` // where the current comes from
}

// Cruising current of a stock cart on the flat at 48 V, amperes. Typical, from memory.
const (
	cruiseLeast = 50
	cruiseMost  = 90
	cruiseVolts = 48
)

func (d *desk) ranges() []Range {
	var list []Range
	for _, f := range d.whole() {
		list = append(list, d.rangeOf(f))
	}
	return list
}

func (d *desk) rangeOf(f network.Feed) Range {
	b := &basis{n: d.n}
	r := Range{Pack: d.pack(f, b)}
	for _, name := range []string{state.Parked, state.KeyOn} {
		if s := d.at(name); s != nil {
			r.add(Current{What: name, Amps: r.Pack.giving(s), Limit: r.Pack.Continuous, Of: "continuous"})
		}
	}
	for _, name := range []string{state.Parked, state.KeyOn, state.DriveForward, state.Charging} {
		if why := d.whyNot(name); why != "" {
			r.Judgements = append(r.Judgements, Judgement{Note, why})
		}
	}
	d.driving(&r, b)
	d.charged(&r, b)
	d.braking(&r, f, b)
	r.Assumptions = b.lines
	return r
}

// charged adds what chargers drive into the pack, if the current of each is recorded: one
// without a current is computed as if nothing limited it.
func (d *desk) charged(r *Range, b *basis) {
	s := d.at(state.Charging)
	if s == nil || -r.Pack.giving(s) <= least {
		return
	}
	links := d.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.ChargerElement) || math.Abs(s.Current(l)) <= least {
			continue
		}
		if lacks := b.lacks(l.Part, l.Element.Amps); lacks != "" {
			r.Judgements = append(r.Judgements, Judgement{Note, fmt.Sprintf("not known: what %s charges with, for its %s", l.Part.ID, lacks)})
			return
		}
	}
	r.add(Current{What: "charging", Amps: -r.Pack.giving(s), Into: true, Limit: r.Pack.Charge, Of: "charge"})
}

// add grades a current and appends it.
func (r *Range) add(c Current) {
	c.Most = max(c.Most, c.Amps)
	c.Vague = c.Vague || r.Pack.recalled[c.Of+"-current"]
	c.Grade = Good
	switch {
	case c.Limit == 0:
		c.Grade = Note
	case c.Most > c.Limit && c.Vague:
		c.Grade = Caution
	case c.Most > c.Limit:
		c.Grade = Fault
	}
	r.Rows = append(r.Rows, c)
}

// driving adds what flows in the drive: cruising as carts do, for long and for seconds as
// the controller is rated.
func (d *desk) driving(r *Range, b *basis) {
	s := d.at(state.DriveForward)
	if s == nil {
		return
	}
	base, spare := r.Pack.giving(s), d.spare(r.Pack, s, b)
	drive := d.drive(s)
	if drive == nil {
		if base > least {
			r.add(Current{What: "driving off", Amps: base, Limit: r.Pack.Peak, Of: "peak", Why: "as computed with the motor at rest: what it asks for in the first moment"})
		}
		return
	}
	known := !b.recalled(drive.Part, "continuous-current")
	r.cruise(base+spare, known, b)
	why := fmt.Sprintf("%s at its rating for long, all that is on in %s", drive.Part.ID, state.DriveForward)
	if spare > 0 {
		why += fmt.Sprintf(", %s more if the 12 V side takes all that it may", si(spare, "A"))
	}
	r.add(Current{What: "driving for long", Amps: base + spare, Limit: r.Pack.Continuous, Of: "continuous", Why: why, Vague: !known})
	rated, _ := b.figure(drive.Part, "continuous-current")
	if peak, ok := b.figure(drive.Part, "peak-current"); ok && peak > 0 {
		if peak < rated {
			r.Judgements = append(r.Judgements, Judgement{Caution, fmt.Sprintf("%s: its peak of %s contradicts its %s for long, which is more; the larger is taken: read its label again", drive.Part.ID, si(peak, "A"), si(rated, "A"))})
			peak = rated
		}
		r.add(Current{What: "driving for seconds", Amps: base + spare + max(0, peak-rated), Limit: r.Pack.Peak, Of: "peak", Why: fmt.Sprintf("%s at its peak of %s; the motor's current, which the battery's never exceeds", drive.Part.ID, si(peak, "A")), Vague: b.recalled(drive.Part, "peak-current")})
	}
}

// cruise adds what carts take on the flat: no more than this one takes for long, if that is
// known by the controller's own figure.
func (r *Range) cruise(long float64, known bool, b *basis) {
	if r.Pack.Nominal <= 0 {
		return
	}
	scale := cruiseVolts / r.Pack.Nominal
	from, to := cruiseLeast*scale, cruiseMost*scale
	if known {
		from, to = min(from, long), min(to, long)
	}
	b.assume("", "cruising takes 50 to 90 A at 48 V on the flat, the same power at other voltages (typical, from memory)")
	r.add(Current{What: "cruising", Amps: from, Most: to, Limit: r.Pack.Continuous, Of: "continuous", Vague: true})
}

// drive is the load of a controller that drives in a solved state; nil if the cart has no
// controller or it does not drive.
func (d *desk) drive(s *network.Solution) *network.Link {
	links := d.n.Links()
	for i := range links {
		l := &links[i]
		if l.Is(model.LoadElement) && l.Def.Family == model.Drive && l.Element.Amps == "continuous-current" && s.On(l) {
			return l
		}
	}
	return nil
}

// spare is the battery current in amperes that reducers could still take up to their full
// output.
func (d *desk) spare(p Pack, s *network.Solution, b *basis) float64 {
	sum := 0.0
	links := d.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.ConverterElement) || l.Def.Family != model.Supply || p.Nominal == 0 || !s.On(l) {
			continue
		}
		amps, _ := b.figure(l.Part, l.Element.Amps)
		out, _ := b.figure(l.Part, l.Element.OutVolts)
		efficiency := b.share(l.Part, "efficiency", 0.9, "its efficiency is taken for 90 % (from memory)")
		sum += max(0, out*amps/efficiency/p.Nominal-math.Abs(s.Current(l)))
	}
	return sum
}

// braking adds what controllers give back, and what a full pack makes of it.
func (d *desk) braking(r *Range, f network.Feed, b *basis) {
	links := d.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.CapacitorElement) {
			continue
		}
		amps, ok := b.figure(l.Part, "regeneration-current")
		if !ok {
			continue
		}
		limit, of := r.Pack.Regen, "regeneration"
		if limit == 0 {
			limit, of = r.Pack.Charge, "charge"
		}
		r.add(Current{What: "braking", Amps: amps, Into: true, Limit: limit, Of: of, Why: fmt.Sprintf("%s gives back at most", l.Part.ID), Vague: b.recalled(l.Part, "regeneration-current")})
		full := f.Full.Value
		if !f.Full.OK {
			continue
		}
		rise := full + amps*r.Pack.Ohms
		text := fmt.Sprintf("braking into a full pack: %s + %s x %s = %s at its studs; %s", si(full, "V"), si(amps, "A"), si(r.Pack.Ohms, "ohm"), si(rise, "V"), fullWords(r.Pack))
		grade := Caution
		if most, ok := b.figure(l.Part, l.Element.MaxVolts); ok {
			text += fmt.Sprintf("; %s stands %s", l.Part.ID, si(most, "V"))
			if rise > most {
				grade = Fault
			}
		}
		r.Judgements = append(r.Judgements, Judgement{grade, text})
	}
}

// fullWords says what a full battery makes of current that comes back.
func fullWords(p Pack) string {
	if p.IsLithium() {
		return "a full pack takes none, and if its BMS opens, braking ends and the controller's own voltage rises"
	}
	return "full batteries take little of it and gas"
}
