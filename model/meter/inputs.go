package meter

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

// input is one thing that the computation takes for granted. It is tried at another
// figure; a reading moves as far to either side as it moves then, unless there is a
// second figure for the other side.
type input struct {
	why    string // in words, for where it tells
	high   []network.Change
	low    []network.Change // nil: as far to the other side
	always bool             // named even where it makes up little of the width
	ranged bool             // a range that is not by chance: its ends add to all else in full
}

// changes are those of an input by number: the even ones are the high figures.
func (b *Bench) changes(i int) []network.Change {
	if i%2 == 0 {
		return b.inputs[i/2].high
	}
	return b.inputs[i/2].low
}

// listInputs lists the inputs that carry enough current to matter, the pack first.
func (b *Bench) listInputs(pack input) []input {
	var list []input
	if len(pack.high) > 0 {
		list = append(list, pack)
	}
	list = append(list, b.wires()...)
	contacts := input{why: "contact resistances are typical"}
	loads := input{}
	var named []string
	links := b.n.Links()
	for i := range links {
		l := &links[i]
		if l.Kind == network.WireLink || !b.matters(l) {
			continue
		}
		switch l.Element.Is {
		case model.ResistanceElement, model.CoilElement:
			list = append(list, input{why: b.figureWords(l, l.Element.Ohms), high: scaled(l, windingSpread)})
		case model.ContactElement, model.FuseElement:
			contacts.high = append(contacts.high, network.Change{Link: l, Scale: 1 + contactSpread.share})
		case model.LoadElement:
			loads.high = append(loads.high, network.Change{Link: l, Scale: 1 + loadSpread.share})
			named = append(named, string(l.Part.ID))
		case model.SourceElement:
			if ohms := b.n.SourceOhms(l); ohms.OK {
				list = append(list, input{why: fmt.Sprintf("internal resistance of %s", l.Part.ID),
					high: []network.Change{{Link: l, AddOhms: internalSpread.share * ohms.Value}}})
			}
		case model.ChargerElement:
			list = append(list, input{why: b.figureWords(l, l.Element.Volts), high: scaled(l, chargerSpread)})
		case model.ConverterElement:
			if l.Kind == network.OutputLink {
				list = append(list, input{why: b.figureWords(l, l.Element.OutVolts), high: []network.Change{{Link: &links[i-1], Scale: 1 + converterSpread.share}}})
			}
		}
	}
	loads.why = "currents of " + words(named) + " are from the label or typical"
	for _, in := range []input{contacts, loads} {
		if len(in.high) > 0 {
			list = append(list, in)
		}
	}
	return list
}

func scaled(l *network.Link, s spread) []network.Change {
	return []network.Change{{Link: l, Scale: 1 + s.share}}
}

// matters reports whether a link carries current; with the power off every link may, once
// the meter is on. The output of a converter sets a voltage whether it carries or not.
func (b *Bench) matters(l *network.Link) bool {
	if b.base.Dead {
		return l.Is(model.ResistanceElement) || l.Is(model.CoilElement) || l.Is(model.LoadElement) && !b.dead(l)
	}
	amps := math.Abs(b.solved.Current(l))
	if (l.Is(model.ResistanceElement) || l.Is(model.CoilElement)) && amps < sideAmps && b.firm.Same(l.A, l.B) {
		return false // it hangs beside the reading: what it takes drops nothing over less than an ohm
	}
	return amps > faintAmps || l.Kind == network.OutputLink && b.solved.On(l)
}

func (b *Bench) dead(l *network.Link) bool {
	return slices.ContainsFunc(b.base.Changes, func(c network.Change) bool { return c.Link == l && c.Dead })
}

// figureWords names a figure and says how sure it is.
func (b *Bench) figureWords(l *network.Link, rating string) string {
	k := b.n.KnownFigure(l.Part, rating)
	switch {
	case !k.OK:
		return fmt.Sprintf("%s of %s is not recorded: a usual one stands for it", plain(rating), l.Part.ID)
	case k.IsTypical():
		return fmt.Sprintf("%s of %s is typical, not confirmed", plain(rating), l.Part.ID)
	}
	return fmt.Sprintf("%s of %s", plain(rating), l.Part.ID)
}

func plain(rating string) string {
	if rating == "" {
		return "a figure"
	}
	return strings.ReplaceAll(rating, "-", " ")
}

// wires are three inputs: the copper of wires that are known, their joints, and the wires
// whose length or size is not recorded or whose joints are not sound.
func (b *Bench) wires() []input {
	copper := input{why: "copper by its gauge, length and temperature"}
	joints := input{why: "good lug joints have 0.05 to 0.2 mohm"}
	var unknown, poor input
	var unknownIDs, poorIDs []string
	links := b.n.Links()
	for i := range links {
		l := &links[i]
		if l.Kind != network.WireLink || b.base.Dead || math.Abs(b.solved.Current(l)) <= faintAmps {
			continue
		}
		copper.high = append(copper.high, network.Change{Link: l, Scale: 1 + copperSpread.share})
		joints.high = append(joints.high, network.Change{Link: l, AddOhms: 2 * jointSpread})
		if _, assumed := b.n.WireOhms(l); assumed {
			unknown.high = append(unknown.high, network.Change{Link: l, Scale: 1 + unknownSpread.share})
			unknownIDs = append(unknownIDs, string(l.Wire.ID))
		}
		if b.unsound(l) {
			poor.high = append(poor.high, network.Change{Link: l, Scale: 1 + unknownSpread.share})
			poorIDs = append(poorIDs, string(l.Wire.ID))
		}
	}
	unknown.why = "length or size of " + words(unknownIDs) + " is not recorded: usual ones stand for them"
	poor.why = "joints of " + words(poorIDs) + " are recorded in a condition whose resistance is a guess"
	return slices.DeleteFunc([]input{copper, joints, unknown, poor}, func(in input) bool { return len(in.high) == 0 })
}

// unsound reports whether a condition is recorded that tells on the joints of a wire.
func (b *Bench) unsound(l *network.Link) bool {
	found := slices.Clone(l.Wire.Condition)
	for _, end := range l.Wire.Ends() {
		if t := b.n.Sheet.Terminal(end.At); t != nil && !end.At.IsZero() {
			found = append(found, t.Condition...)
		}
	}
	return slices.ContainsFunc(found, func(c model.Condition) bool {
		return slices.Contains([]model.Condition{model.LooseFit, model.Burnt, model.Melted, model.Corroded, model.HeatMark, model.Dirty}, c)
	})
}

// mostNamed is how many things a list of words names.
const mostNamed = 4

func words(names []string) string {
	names = slices.Compact(slices.Clone(names))
	if len(names) > mostNamed {
		return strings.Join(names[:mostNamed], ", ") + fmt.Sprintf(" and %d more", len(names)-mostNamed)
	}
	return strings.Join(names, ", ")
}

// ohmWords is a resistance as people write it.
func ohmWords(ohms float64) string {
	switch {
	case ohms >= 1e6:
		return fmt.Sprintf("%.3g Mohm", ohms/1e6)
	case ohms >= 1e3:
		return fmt.Sprintf("%.3g kohm", ohms/1e3)
	}
	return unit.Ohms(ohms).String()
}
