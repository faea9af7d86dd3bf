package protect

import (
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Device is a fuse or breaker against what it may have to open.
type Device struct {
	Link         *network.Link
	Rated        network.Known // A
	Interrupting network.Known // A that it clears
	Volts        network.Known // V of direct current that it opens
	Full         network.Known // V of the highest source that reaches it, at full charge
	By           *network.Feed // that source; nil if none reaches it
	Fault        Fault         // the greatest bolted fault at it
	Amps         float64       // prospective through it: as if it were plain metal (IEC 60269-1)
	Curve        opening.Curve // when it opens

	through float64 // A in the greatest bolted fault right behind it, with its own resistance
}

// Breaks compares the greatest fault current with the interrupting rating.
func (d *Device) Breaks() opening.Answer { return atMost(d.Amps, !d.Fault.IsNone(), d.Interrupting) }

// Insulates compares the highest voltage with the voltage rating.
func (d *Device) Insulates() opening.Answer { return atMost(d.Full.Value, d.Full.OK, d.Volts) }

func atMost(value float64, known bool, limit network.Known) opening.Answer {
	switch {
	case !known || !limit.OK:
		return opening.NotKnown
	case value <= limit.Value:
		return opening.Yes
	}
	return opening.No
}

// interruptingRating is the figure that the library gives the breaking capacity of a device.
const interruptingRating = "interrupting-rating"

func (s *Survey) device(l *network.Link) *Device {
	d := &Device{
		Link: l, Rated: s.net.KnownFigure(l.Part, l.Element.Amps),
		Interrupting: s.net.KnownFigure(l.Part, interruptingRating), Volts: s.net.KnownFigure(l.Part, l.Element.MaxVolts),
	}
	d.Curve = s.Curve(l)
	if d.By = s.Highest(l); d.By != nil {
		d.Full = d.By.Full
	}
	strongest := s.strongest(l)
	if strongest == nil {
		return d
	}
	for _, at := range []network.Node{l.A, l.B} {
		f := s.worst(at, strongest.Return, greatest, coldCelsius)
		if s.returns[at] {
			f = s.worst(strongest.At, at, greatest, coldCelsius)
		}
		d.through = max(d.through, f.Through(l))
		if amps := f.Amps - f.Through(l); amps > d.Amps {
			d.Fault, d.Amps = f, amps
		}
	}
	return d
}

// Highest is the source of the highest voltage at full charge that reaches a device in some
// state; nil if none does.
func (s *Survey) Highest(l *network.Link) *network.Feed {
	var best *network.Feed
	for i := range s.feeds {
		f := &s.feeds[i]
		if (best == nil || f.Full.Value > best.Full.Value) && (s.reaches(f, l.A) || s.reaches(f, l.B)) {
			best = f
		}
	}
	return best
}

// Curve is when a device opens, as far as it is known.
func (s *Survey) Curve(l *network.Link) opening.Curve {
	c, done := s.curves[l]
	if !done {
		c = CurveOf(s.net, l)
		s.curves[l] = c
	}
	return c
}

// CurveOf is when a device opens: by its maker's points, else by the gates that the part or
// its kind is made to. Points that contradict each other, and gates of an unknown name,
// count as none; the Note of the curve then says what to correct.
func CurveOf(n *network.Network, l *network.Link) opening.Curve {
	name := l.Part.Opening
	if name == "" {
		name = l.Def.Opening
	}
	rated, _ := n.Figure(l.Part, l.Element.Amps)
	c, err := opening.Device(name, rated, l.Part.Opens)
	if err != nil {
		return opening.Curve{Rated: rated, Note: err.Error()}
	}
	return c
}

// isDevice reports whether a link opens by itself on too much current.
func isDevice(l *network.Link) bool { return l.Is(model.FuseElement) }

// DeviceName names a device: the part, with the way if it has several fuses.
func DeviceName(l *network.Link) string {
	fuses := 0
	for i := range l.Def.Elements {
		if l.Def.Elements[i].Is == model.FuseElement {
			fuses++
		}
	}
	if fuses < 2 {
		return string(l.Part.ID)
	}
	return string(l.Part.ID) + " way " + strings.TrimPrefix(l.Element.Between[1], "out")
}
