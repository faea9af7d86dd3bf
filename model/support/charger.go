package support

import (
	"cmp"
	"fmt"
	"math"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// Charging is a charger, or a receptacle with its charger plugged in, against what it charges.
type Charging struct {
	Charger model.PartID `json:"charger"`
	End     float64      `json:"end"`   // volts that it goes up to
	Amps    float64      `json:"amps"`  // that it gives at most
	Cells   int          `json:"cells"` // that it is made for; 0 if not recorded
	Packs   []Pack       `json:"packs"` // that it charges

	Drop float64 `json:"drop"` // volts lost between charger and battery at that current
	Ohms float64 `json:"ohms"` // of the way there and back

	AC     *ACSide `json:"ac,omitempty"` // nil if its AC current cannot be told
	ACAmps float64 `json:"ac_amps"`      // that it draws
	Branch Branch  `json:"branch"`
	Fits   float64 `json:"fits"` // charging amperes that the branch circuit allows

	Constant float64 `json:"constant"` // hours at full current from empty
	Full     Hours   `json:"full"`     // hours from empty to full
	Usual    Hours   `json:"usual"`    // hours to put back the usable part

	Judgements  []Judgement  `json:"judgements"`
	Assumptions []Assumption `json:"assumptions"`

	noVolts, noAmps, noAC string // why its charging voltage, its current and its AC current are not known
}

func (d *desk) charging(branch float64) []Charging {
	s := d.at(state.Charging)
	if s == nil {
		return nil
	}
	var list []Charging
	links := d.n.Links()
	for i := range links {
		if l := &links[i]; l.Is(model.ChargerElement) {
			list = append(list, d.charger(l, s, branch))
		}
	}
	return list
}

func (d *desk) charger(l *network.Link, s *network.Solution, branch float64) Charging {
	b := &basis{n: d.n}
	c := Charging{Charger: l.Part.ID, Branch: Branch{Amps: branch}}
	if c.noVolts = b.lacks(l.Part, l.Element.Volts); c.noVolts == "" {
		c.End, _ = b.figure(l.Part, l.Element.Volts)
	}
	if c.noAmps = b.lacks(l.Part, l.Element.Amps); c.noAmps == "" {
		c.Amps, _ = b.figure(l.Part, l.Element.Amps)
	}
	cells, _ := b.figure(l.Part, "cells")
	c.Cells = int(cells)
	for _, f := range d.whole() {
		p := d.pack(f, b)
		if p.giving(s) > -least {
			continue
		}
		c.Packs = append(c.Packs, p)
		if now := math.Abs(s.Current(l)); now > 0 {
			c.Ohms = max(0, (volts(s, l.A, l.B)-volts(s, f.At, f.Return))/now)
			c.Drop = c.Ohms * c.Amps
		}
	}
	d.acSide(&c, l.Part, b)
	c.time()
	c.judge()
	c.Assumptions = b.lines
	return c
}

// acSide computes what the charger draws from its AC circuit at its full output.
func (d *desk) acSide(c *Charging, p *model.Part, b *basis) {
	if _, recorded := d.n.Figure(p, "ac-voltage"); !recorded {
		return
	}
	c.noAC = cmp.Or(b.lacks(p, "ac-voltage"), c.noVolts, c.noAmps)
	for _, share := range []string{"efficiency", "power-factor"} {
		if _, recorded := d.n.Figure(p, share); recorded && c.noAC == "" {
			c.noAC = b.lacks(p, share)
		}
	}
	if c.noAC != "" {
		return
	}
	volts, _ := b.figure(p, "ac-voltage")
	c.Branch.Volts = volts
	if c.Branch.Amps == 0 {
		c.Branch.Amps, c.Branch.Assumed = usualBranch, true
		b.assume(string(p.ID), fmt.Sprintf("plugged into a %d A circuit; --branch says which it is", usualBranch))
	}
	c.AC = &ACSide{Volts: volts}
	c.AC.Efficiency = b.orElse(p, "efficiency", 0.9, "its efficiency is taken for 90 % (from memory)")
	c.AC.PowerFactor = b.orElse(p, "power-factor", 0.98, "its power factor is taken for 98 % (from memory)")
	c.ACAmps = c.AC.Draws(c.End, c.Amps)
	if label, own := p.Rating("ac-current"); own {
		c.ACAmps = max(c.ACAmps, label.Value.SI())
	}
	c.Fits = c.AC.Gives(c.Branch.Allows()) / c.End
}

func (c *Charging) time() {
	if c.Amps == 0 || len(c.Packs) == 0 {
		return
	}
	hours, usable, share := 0.0, 0.0, lithiumShare
	for _, p := range c.Packs {
		hours, usable = hours+p.AmpHours, usable+p.Usable
		if !p.IsLithium() {
			share = leadShare
		}
	}
	if hours == 0 {
		return
	}
	c.Constant = ConstantHours(hours, c.Amps, share)
	c.Full = WithTail(c.Constant)
	c.Usual = WithTail(ConstantHours(usable, c.Amps, share))
}

func (c *Charging) judge() {
	say := func(grade Grade, format string, args ...any) {
		c.Judgements = append(c.Judgements, Judgement{grade, fmt.Sprintf(format, args...)})
	}
	if len(c.Packs) == 0 {
		say(Note, "nothing is charged by it while it is plugged in")
	}
	for _, p := range c.Packs {
		c.judgePack(p, say)
	}
	switch {
	case c.noAC != "":
		say(Note, "not known: its AC current, for %s", c.noAC)
	case c.AC == nil:
		say(Note, "nothing is recorded of its AC side: its current there cannot be told")
	default:
		c.judgeBranch(say)
	}
}

// leadEnd is the end voltage of a cell in volts that parts lead, about 2.5 V at most, from
// lithium iron phosphate, 3.65 V; from memory.
const leadEnd = 3.0

// chemistry says of lead where a charger's end voltage is that of lead cells.
func (c *Charging) chemistry() string {
	if c.End > 0 && c.End/float64(c.Cells) < leadEnd {
		return " of lead"
	}
	return ""
}

func (c *Charging) judgePack(p Pack, say func(Grade, string, ...any)) {
	if c.Cells > 0 && p.Cells > 0 && c.Cells != p.Cells {
		say(Danger, "made for %d cells%s, %s has %d", c.Cells, c.chemistry(), p.Name, p.Cells)
	}
	if c.noVolts != "" {
		say(Note, "not known: whether its end voltage suits %s, for %s", p.Name, c.noVolts)
	} else if p.End > 0 {
		switch over := c.End / p.End; {
		case over > endHigh:
			say(Danger, "goes up to %s, %s takes %s at most (%s a cell against %s)", si(c.End, "V"), p.Name, si(p.End, "V"), plain(c.End/float64(max(1, p.Cells))), plain(p.End/float64(max(1, p.Cells))))
		case over < endLow:
			say(Caution, "goes up to %s, %s is full at %s: it is never full", si(c.End, "V"), p.Name, si(p.End, "V"))
		default:
			say(Good, "end voltage %s, %s is full at %s", si(c.End, "V"), p.Name, si(p.End, "V"))
		}
	}
	share := c.Amps / float64(len(c.Packs))
	switch {
	case c.noAmps != "":
		say(Note, "not known: whether it gives more than %s takes, for %s", p.Name, c.noAmps)
	case p.Charge == 0:
		say(Note, "the largest charging current of %s is not recorded", p.Name)
	case share > p.Charge:
		say(Fault, "gives %s, %s takes %s at most", si(share, "A"), p.Name, si(p.Charge, "A"))
	default:
		say(Good, "gives %s, %s takes up to %s", si(share, "A"), p.Name, si(p.Charge, "A"))
	}
	if p.MustBeWarm {
		say(Note, "%s must not be charged below %s C; whether its BMS sees to that is the maker's word to get", p.Name, plain(p.Warm))
	}
	for _, id := range p.Reversed {
		say(Danger, "%s is the wrong way round in the string: charging drives it on into reversal", id)
	}
}

func (c *Charging) judgeBranch(say func(Grade, string, ...any)) {
	circuit := fmt.Sprintf("a %s %s circuit", si(c.Branch.Amps, "A"), si(c.Branch.Volts, "V"))
	if allows := c.Branch.Allows(); c.ACAmps > allows {
		say(Fault, "draws %s AC at full output; on %s at most %s (%s): a charger of up to %s fits", si(c.ACAmps, "A"), circuit, si(allows, "A"), branchSource, si(c.Fits, "A"))
	} else {
		say(Good, "draws %s AC at full output; on %s up to %s (%s)", si(c.ACAmps, "A"), circuit, si(allows, "A"), branchSource)
	}
	if small := (Branch{Amps: smallReceptacle}).Allows(); c.Branch.MayBeSmall() && c.ACAmps > small {
		say(Caution, "%s may have receptacles of %d A, and those allow %s: it needs one of %s (%s)", circuit, smallReceptacle, si(small, "A"), si(c.Branch.Amps, "A"), receptacleSource)
	}
}
