package network

import (
	"math"
	"slices"

	"example.com/lugbook/model"
)

// Feed is a place from which current can enter the wiring: the positive terminal of a
// string, of a battery inside it, of a charger or of a converter's output.
type Feed struct {
	At     Node
	Return Node    // where its current comes back to
	Link   *Link   // the source, charger or output
	String *String // set for batteries and packs
	Whole  bool    // the feed is the high end of its string
	Limit  float64 // most amperes it can give for long; infinite if nothing limits it
	Limits []*Link // what sets the limit: fuses in the string or at its low end, the charger, the converter

	Nominal, Full Known // volts between At and Return: nominal, and at full charge
}

// Known is a figure that may be missing.
type Known struct {
	Value  float64
	OK     bool
	Source string // where the figure comes from
}

// IsTypical reports whether the figure is a library figure that nobody confirmed.
func (k Known) IsTypical() bool { return k.Source == model.Typical }

func (n *Network) findFeeds() []Feed {
	var list []Feed
	strings := n.Strings()
	for i := range strings {
		list = append(list, n.stringFeeds(&strings[i])...)
	}
	for i := range n.links {
		l := &n.links[i]
		if l.Is(model.ChargerElement) || l.Kind == OutputLink && l.Def.Family != model.Drive {
			list = append(list, n.limitedFeed(l))
		}
	}
	return list
}

// regenerationRating is the figure of what a drive gives back while it brakes.
const regenerationRating = "regeneration-current"

// Regenerators lists the drives that feed their supply terminals while they brake, in the
// order of the sheet.
func (n *Network) Regenerators() []Feed {
	var list []Feed
	for i := range n.links {
		l := &n.links[i]
		if !l.Is(model.CapacitorElement) || l.Def.Family != model.Drive {
			continue
		}
		if amps, ok := n.Figure(l.Part, regenerationRating); ok && amps > 0 {
			list = append(list, Feed{At: l.A, Return: l.B, Link: l, Limit: amps, Limits: []*Link{l}})
		}
	}
	return list
}

// stringFeeds gives the whole string first, then the batteries inside it from the
// low end up.
func (n *Network) stringFeeds(s *String) []Feed {
	limits := s.Devices
	if low := n.lowDevices(s.Low); len(low) > 0 && len(limits) == 0 {
		limits = low
	}
	nominal, full := Known{OK: true}, Known{OK: true}
	var list []Feed
	for i, cell := range s.Cells {
		nominal = nominal.plus(n.KnownFigure(cell.Link.Part, NominalRating), cell.Reversed)
		full = full.plus(n.KnownFigure(cell.Link.Part, cell.Link.Element.MaxVolts), cell.Reversed)
		f := Feed{At: cell.After, Return: s.Low, Link: cell.Link, String: s, Whole: i == len(s.Cells)-1,
			Limit: n.capacity(limits), Limits: limits, Nominal: nominal, Full: full}
		list = append(list, f)
	}
	last := len(list) - 1
	return append([]Feed{list[last]}, list[:last]...)
}

func (k Known) plus(o Known, reversed bool) Known {
	if reversed {
		o.Value = -o.Value
	}
	sum := Known{Value: k.Value + o.Value, OK: k.OK && o.OK, Source: k.Source}
	if o.IsTypical() || sum.Source == "" {
		sum.Source = o.Source
	}
	return sum
}

// limitedFeed is a source that limits its own current.
func (n *Network) limitedFeed(l *Link) Feed {
	f := Feed{At: l.A, Return: l.B, Link: l, Limit: math.Inf(1), Limits: []*Link{l}}
	if amps, ok := n.Figure(l.Part, l.Element.Amps); ok {
		f.Limit = amps
	}
	name := l.Element.Volts
	if l.Kind == OutputLink {
		name = l.Element.OutVolts
	}
	f.Full = n.KnownFigure(l.Part, name)
	f.Nominal = f.Full
	if nominal := n.KnownFigure(l.Part, NominalRating); nominal.OK && l.Kind != OutputLink {
		f.Nominal = nominal
	}
	return f
}

// capacity is the sum of the ratings of devices side by side: infinite if there is
// none, or if a rating is not known.
func (n *Network) capacity(devices []*Link) float64 {
	if len(devices) == 0 {
		return math.Inf(1)
	}
	sum := 0.0
	for _, d := range devices {
		sum += n.deviceAmps(d)
	}
	return sum
}

// lowDevices lists the fuses at the low end of a string if everything that leaves it
// passes one of them; none otherwise.
func (n *Network) lowDevices(low Node) []*Link {
	lead := n.LeadIn(low, nil)
	if len(lead.Open) > 0 {
		return nil
	}
	var devices []*Link
	for _, m := range lead.Devices {
		devices = append(devices, m.Device)
	}
	return devices
}

func (n *Network) findReturns() []bool {
	firm := n.known.firm
	var lows, highs []int
	for _, f := range n.Feeds() {
		highs = append(highs, firm.Of(f.At))
		if f.String != nil || f.Link.Kind == OutputLink {
			lows = append(lows, firm.Of(f.Return))
		}
	}
	marks := make([]bool, n.Size())
	for _, group := range lows {
		if slices.Contains(highs, group) {
			continue
		}
		for _, at := range firm.Members(group) {
			marks[at] = true
		}
	}
	return marks
}
