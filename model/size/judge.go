package size

import (
	"fmt"
	"math"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/unit"
)

// judge is one size before a requirement.
type judge struct {
	r        Requirement
	fuse     Fuse
	gauge    unit.Gauge
	cable    heat.Cable // where it lies, in its bundle
	unlisted error      // why there is no cable
}

// judge holds one size against every demand of a requirement and its fuse. Verdicts come
// in the order of Demands; what was not asked for has none.
func (r Requirement) judge(gauge unit.Gauge, fuse Fuse) Candidate {
	j := judge{r: r, fuse: fuse, gauge: gauge}
	j.cable, j.unlisted = heat.Of(gauge, r.Insulation, r.Ambient)
	if j.unlisted == nil {
		j.cable = j.cable.Bundled(r.bundling())
	}
	c := Candidate{Gauge: gauge, Amperes: j.cable.Rated}
	for _, v := range []Verdict{j.ampacity(), j.shortTime(), j.drop(), j.fusing(), j.shortCircuit(), j.strength(), j.lug()} {
		if v.Demand != "" {
			c.Verdicts = append(c.Verdicts, v)
		}
	}
	return c
}

// verdict is met or failed with its figures.
func verdict(d Demand, met bool, format string, args ...any) Verdict {
	v := Verdict{Demand: d, Status: Failed, Text: fmt.Sprintf(format, args...)}
	if met {
		v.Status = Met
	}
	return v
}

// ampacity: 33 CFR 183.425 table 5 with its notes.
func (j judge) ampacity() Verdict {
	switch {
	case j.r.Continuous == 0 && len(j.r.Duty) > 0:
		return Verdict{}
	case j.unlisted != nil:
		return verdict(Ampacity, false, "%s", j.unlisted)
	}
	return verdict(Ampacity, j.cable.Rated >= j.r.Continuous, "carries %s of %s at %s C in %s C%s",
		amps(j.cable.Rated), amps(j.r.Continuous), figure(j.cable.Limit), figure(j.cable.Ambient), j.bundled())
}

// bundled tells what the bundle takes: below 50 V the regulation takes nothing, though the
// conductors of a full bundle warm each other whatever the voltage.
func (j judge) bundled() string {
	if share := j.r.bundling(); share < 1 {
		return fmt.Sprintf(", %d in the bundle leave %s", j.r.Bundle, percent(share))
	}
	if share, ok := conductor.LoomFactor(j.r.Bundle, 1); ok && share < 1 {
		return fmt.Sprintf("; a bundle takes nothing below %d V by 33 CFR 183.425, MIL-W-5088L leaves %s of %d fully loaded",
			conductor.HighCircuit, percent(share), j.r.Bundle)
	}
	return ""
}

// shortTime: the duty, repeated for ever, against the insulation.
func (j judge) shortTime() Verdict {
	if len(j.r.Duty) == 0 {
		return Verdict{}
	}
	if j.unlisted != nil {
		return verdict(ShortTime, false, "%s", j.unlisted)
	}
	v, err := j.cable.Judge(j.r.Duty)
	if err != nil {
		return verdict(ShortTime, false, "%s", err)
	}
	return verdict(ShortTime, v.Fits, "%s: warms to %s C of %s C", rounded(j.r.Duty), figure(v.Peak), figure(j.cable.Limit))
}

// Brief is up to how long in seconds a current is brief: its drop may then be Dip times
// what lasting currents may drop. FAA AC 43.13-1B table 11-6 allows twice the drop for
// intermittent work; two minutes at most are from memory.
const (
	Brief = 120
	Dip   = 2
)

// drop: along the loop, with the conductor as warm as the load makes it, but no warmer
// than its insulation may be. The stage of the duty counts that comes nearest to its limit.
func (j judge) drop() Verdict {
	if j.r.Drop == 0 {
		return Verdict{}
	}
	if j.r.Loop == 0 {
		return Verdict{Demand: Drop, Status: NotJudged, Text: "the length is not known"}
	}
	celsius := j.warmth()
	perMetre, _ := conductor.OhmsPerMetre(j.gauge, celsius)
	allowed := j.r.Drop * j.r.Volts * j.r.share()
	current, limit := j.r.Continuous, allowed
	for _, s := range j.r.Duty {
		may := allowed
		if s.Seconds <= Brief {
			may *= Dip
		}
		if s.Amps/may > current/limit {
			current, limit = s.Amps, may
		}
	}
	volts := current * j.r.Loop * perMetre
	v := verdict(Drop, volts <= limit, "%s V (%s) of %s V at %s over %s m at %s C",
		figure(volts), percent(volts/j.r.Volts), figure(limit), amps(current), figure(j.r.Loop), figure(celsius))
	if share := j.r.share(); share < 1 {
		v.Text += fmt.Sprintf(", the share of %s m in the %s m of the whole circuit", figure(j.r.Loop), figure(j.r.Circuit))
	}
	if v.Status == Failed {
		v.Text += fmt.Sprintf("; it takes %s mm2", figure(conductor.AreaForDrop(current, j.r.Loop, limit, celsius)))
	}
	return v
}

// warmth is the temperature in C that the conductor has in service, at most the limit of
// its insulation: beyond that it is judged as too thin elsewhere.
func (j judge) warmth() float64 {
	if j.unlisted != nil {
		return j.r.Insulation
	}
	celsius := j.cable.Limit
	if t, _, ok := j.cable.Working(j.r.lasting()); ok {
		celsius = t
	}
	if v, err := j.cable.Judge(j.r.Duty); err == nil {
		celsius = max(celsius, v.Peak)
	}
	return min(celsius, j.cable.Limit)
}

// fusing: 33 CFR 183.455(c), by what the conductor carries where it lies.
func (j judge) fusing() Verdict {
	if j.r.Unfused {
		return Verdict{}
	}
	if j.unlisted != nil {
		return verdict(Fusing, false, "%s", j.unlisted)
	}
	rule := conductor.RatingRuleFor(j.r.Volts)
	most := rule.Greatest(j.cable.Rated)
	if j.fuse.Rating.Amperes == 0 {
		return verdict(Fusing, false, "no standard %s carries %s; up to %s is allowed", j.fuse.kind(), amps(j.fuse.Least), amps(most))
	}
	text := fmt.Sprintf("fuse of %s, up to %s allowed (%s)", amps(j.fuse.Rating.Amperes), amps(most), rule.Basis)
	if printed := j.printed(rule); printed != most {
		text += fmt.Sprintf("; %s by the table as printed", amps(printed))
	}
	return verdict(Fusing, j.fuse.Rating.Amperes <= most, "%s", text)
}

// printed is the greatest fuse by the ampacity as the table has it, without ambient and
// bundle.
func (j judge) printed(rule conductor.RatingRule) float64 {
	allowed, _ := conductor.Ampacity(j.gauge, j.r.Insulation, conductor.TableAmbient)
	return rule.Greatest(allowed.Amperes)
}

// shortCircuit: the time that the fuse takes against what the conductor stands, from the
// current that it stands for conductor.LongestAdiabatic up; below that it is a matter of
// ampacity and rating. Bounds from memory decide nothing.
func (j judge) shortCircuit() Verdict {
	switch {
	case j.fuse.Rating.Amperes == 0:
		return Verdict{}
	case j.fuse.Title == "":
		return Verdict{Demand: ShortCircuit, Status: NotJudged, Text: "the family of the fuse is not stated"}
	}
	limit := conductor.FaultLimit(j.r.Insulation)
	k := conductor.WithstandConstant(j.r.Insulation, limit)
	stands := k * j.gauge.AreaMM2()
	from := stands / math.Sqrt(conductor.LongestAdiabatic)
	upTo := j.r.Fault
	if upTo == 0 {
		upTo = longestFault * j.fuse.Rating.Amperes
	}
	if upTo <= from {
		return verdict(ShortCircuit, true, "stands the largest fault, %s, for over %d s", amps(upTo), conductor.LongestAdiabatic)
	}
	at, _, _ := j.fuse.Curve.Worst(from, upTo)
	v := opening.Protects(j.fuse.Curve, at, conductor.Withstand(j.gauge.AreaMM2(), k, at))
	if v.Recalled {
		return Verdict{Demand: ShortCircuit, Status: NotJudged, Text: v.Why}
	}
	return verdict(ShortCircuit, v.Answer == opening.Yes, "at %s %s", amps(at), v.Why)
}

// strength: 33 CFR 183.425, the thinnest that may be laid.
func (j judge) strength() Verdict {
	least := conductor.LeastGauge(j.r.Sheathed)
	where := "by itself"
	if j.r.Sheathed {
		where = "in a sheath"
	}
	return verdict(Strength, j.gauge.Compare(least) >= 0, "%s is the thinnest that may lie %s", least, where)
}

// lug: a lug with a hole for each stud must be made.
func (j judge) lug() Verdict {
	if len(j.r.Studs) == 0 {
		return Verdict{}
	}
	for _, stud := range j.r.Studs {
		if !conductor.LugMade(j.gauge, stud) {
			return verdict(Lug, false, "lugs for %s are hardly made for %s studs (from memory)", j.gauge, stud)
		}
	}
	return verdict(Lug, true, "lugs are made for its studs (from memory)")
}
