package support

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// StandBy is what a sheet draws at rest, by part.
type StandBy struct {
	State   string       `json:"state"`
	Volts   float64      `json:"volts"`   // of all batteries in a row
	Amps    float64      `json:"amps"`    // that they give: watts over volts
	Watts   float64      `json:"watts"`   // that they give at their terminals
	Draws   []Draw       `json:"draws"`   // by part, the largest first
	First   model.PartID `json:"first"`   // battery or pack that is empty first
	Drain   float64      `json:"drain"`   // amperes out of that one
	Hours   float64      `json:"hours"`   // ampere-hours of it that may be used; 0 if not known
	Days    float64      `json:"days"`    // from full until those are gone; 0 if nothing draws or it is not known
	KeyLeft float64      `json:"key_on"`  // days with the key left on; 0 as above
	Lasting bool         `json:"lasting"` // nothing draws anything to speak of

	Judgements  []Judgement  `json:"judgements"`
	Assumptions []Assumption `json:"assumptions"`
}

// Draw is what one part takes at rest.
type Draw struct {
	Part  model.PartID `json:"part"`
	Watts float64      `json:"watts"`
	Amps  float64      `json:"amps"`        // its share of the battery's current: watts over the volts of the whole
	IsOn  bool         `json:"taken_as_on"` // a lamp, outlet or the like that may have a switch of its own
}

// Days is how long an amount of charge lasts at a steady current, in days.
func Days(ampHours, amps float64) float64 { return ampHours / amps / 24 }

// least is the current below which nothing draws: a microampere.
const least = 1e-6

// leastDraw is the current in amperes from which a part is listed: what it takes below is lost
// in any meter.
const leastDraw = 10e-6

func (d *desk) standBy() *StandBy {
	s := d.at(state.Parked)
	if s == nil || len(d.whole()) == 0 {
		return nil
	}
	b := &basis{n: d.n}
	r := &StandBy{State: state.Parked}
	for _, f := range d.whole() {
		r.Volts = max(r.Volts, volts(s, f.At, f.Return))
	}
	r.Draws = d.draws(s, r.Volts)
	if r.Watts = d.given(s); r.Volts > leftVolts {
		r.Amps = r.Watts / r.Volts
	}
	first, days := d.emptiedFirst(s, b)
	if first != nil {
		r.First, r.Drain, r.Hours, r.Days = first.Part.ID, gives(s, first), d.usable(first.Part, b), days
	}
	r.Lasting = r.Amps < least && first == nil
	if on := d.at(state.KeyOn); on != nil {
		_, r.KeyLeft = d.emptiedFirst(on, b)
	}
	r.judge()
	r.Assumptions = b.lines
	return r
}

// given is the power in watts that all batteries and packs together give at their terminals,
// what they pass between each other taken off.
func (d *desk) given(s *network.Solution) float64 {
	watts := 0.0
	links := d.n.Links()
	for i := range links {
		if links[i].Is(model.SourceElement) {
			watts -= s.Power(&links[i])
		}
	}
	return max(0, watts)
}

// draws lists what each part takes. What a source loses inside itself is left out; what it
// takes for its own electronics is not.
func (d *desk) draws(s *network.Solution, volts float64) []Draw {
	watts := map[model.PartID]float64{}
	links := d.n.Links()
	for i := range links {
		if l := &links[i]; l.Part != nil && !l.Is(model.SourceElement) && !l.Is(model.ChargerElement) {
			watts[l.Part.ID] += s.Power(l)
		}
	}
	var list []Draw
	for i := range d.n.Sheet.Parts {
		id := d.n.Sheet.Parts[i].ID
		if w := watts[id]; volts > 0 && w/volts > leastDraw {
			def := d.n.Cat.Definition(d.n.Sheet.Parts[i].Kind)
			own := def != nil && (def.Family == model.Loads || def.Family == model.Supply && !converts(def))
			list = append(list, Draw{Part: id, Watts: w, Amps: w / volts, IsOn: own})
		}
	}
	slices.SortStableFunc(list, func(a, b Draw) int { return cmp.Compare(b.Watts, a.Watts) })
	return list
}

// converts reports whether a kind is a reducer.
func converts(d *model.Definition) bool {
	return slices.ContainsFunc(d.Elements, func(e model.Element) bool { return e.Is == model.ConverterElement })
}

// emptiedFirst is the source that gives the most for what it holds, with the days until
// that is gone; nil if none gives anything or no capacity is known.
func (d *desk) emptiedFirst(s *network.Solution, b *basis) (first *network.Link, days float64) {
	days = math.Inf(1)
	links := d.n.Links()
	for i := range links {
		l := &links[i]
		if !l.Is(model.SourceElement) || gives(s, l) < least {
			continue
		}
		hours := d.usable(l.Part, b)
		if lasts := Days(hours, gives(s, l)); hours > 0 && lasts < days-1e-9 {
			first, days = l, lasts
		}
	}
	if first == nil {
		return nil, 0
	}
	return first, days
}

// usable is the charge in ampere-hours that may be taken out of a source; 0 if not known.
func (d *desk) usable(p *model.Part, b *basis) float64 {
	hours, _ := b.figure(p, "capacity")
	return hours * b.share(p, "usable-share", 0.8, "four fifths of its capacity are taken for usable (from memory)")
}

func (r *StandBy) judge() {
	say := func(grade Grade, format string, args ...any) {
		r.Judgements = append(r.Judgements, Judgement{grade, fmt.Sprintf(format, args...)})
	}
	switch {
	case r.Lasting:
		say(Good, "nothing draws from the batteries")
		return
	case r.Hours == 0:
		say(Note, "no capacity is recorded: the days cannot be told")
	case r.Days < fewDays:
		say(Fault, "%s is down to what should stay in it after %s at rest", r.First, inDays(r.Days))
	case r.Days < seasonDays:
		say(Caution, "%s is down to what should stay in it after %s at rest: charge it, or switch it off, when it is laid up", r.First, inDays(r.Days))
	default:
		say(Good, "it lasts %s days at rest", plain(r.Days))
	}
	var on []string
	for _, draw := range r.Draws {
		if draw.IsOn {
			on = append(on, string(draw.Part))
		}
	}
	if len(on) > 0 {
		say(Note, "taken as switched on, with all that can be plugged in: %s", strings.Join(on, ", "))
	}
	if len(r.Draws) > 0 {
		if top := r.Draws[0]; top.Watts > r.Watts/2 {
			say(Note, "%s draws %s of it", top.Part, percent(top.Watts/r.Watts))
		}
	}
}
