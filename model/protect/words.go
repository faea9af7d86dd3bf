package protect

import (
	"fmt"
	"math"
	"strings"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/opening"
)

// Line is one statement about a conductor or device, with how it came out.
type Line struct {
	Answer   opening.Answer
	Text     string
	Recalled bool // figures from memory decided it
}

// Lines says in words what protects a conductor, against what, and what is missing.
func (c *Conductor) Lines() []Line {
	if c.Exposure.Amps == 0 && c.Greatest[0].IsNone() && c.Greatest[1].IsNone() {
		return []Line{{Answer: opening.Yes, Text: "nothing feeds it in any state"}}
	}
	lines := []Line{{Answer: c.Protected(), Text: c.exposureWords() + c.capacityWords()}}
	if c.Left != "" {
		lines = append(lines, Line{Answer: opening.Yes, Text: c.Left})
	}
	if c.Unmeasured != "" {
		lines = append(lines, Line{Answer: opening.NotKnown, Text: c.Unmeasured})
	}
	for _, l := range c.Leads {
		if c.Left == "" && c.Unmeasured == "" {
			lines = append(lines, l.line(c))
		}
	}
	if words := c.faultWords(); words != "" {
		lines = append(lines, Line{Answer: opening.Yes, Text: words})
	}
	for _, o := range c.Openings {
		lines = append(lines, Line{o.Answer, DeviceName(o.Device) + " against the heat of a fault: " + o.Why, o.Band.Recalled})
	}
	for _, m := range c.Missing {
		lines = append(lines, Line{Answer: opening.NotKnown, Text: "not recorded: " + m})
	}
	return lines
}

func (c *Conductor) exposureWords() string {
	switch {
	case c.Exposure.Amps == 0:
		return "nothing reaches it that lasts"
	case math.IsInf(c.Exposure.Amps, 1):
		words := "nothing limits what can flow in it"
		if d := c.Wire.Wire.Gauge.DiameterMM(); d > 0 {
			words += fmt.Sprintf(", and bare in open air it melts from %s on", amps(conductor.MeltingAmps(d)))
		}
		return words
	case c.Exposure.IsUnrated():
		return "limited by " + names(c.Exposure.Limits) + ", whose rating is not recorded"
	}
	return fmt.Sprintf("%s can flow for ever, limited by %s", amps(c.Exposure.Amps), names(c.Exposure.Limits))
}

func (c *Conductor) capacityWords() string {
	k := c.Capacity
	if k.Missing != "" {
		return "; what it carries is not known"
	}
	words := fmt.Sprintf("; it carries %s at %.0f C insulation in %.0f C", amps(k.Amps), k.Class, k.Ambient)
	if k.Bundled > 2 {
		words += fmt.Sprintf(", one of %d in a bundle", k.Bundled)
	}
	return words + fmt.Sprintf(", and may stand behind %s", amps(k.Most))
}

func (l Lead) line(c *Conductor) Line {
	from := names(l.Entry.Limits)
	if f := l.From(); f != nil {
		from = string(f.Link.Part.ID)
	}
	if l.limitsItself(c) {
		return Line{Answer: opening.Yes, Text: fmt.Sprintf("%s feeds it and gives %s at most", from, amps(l.Entry.Amps))}
	}
	where := fmt.Sprintf("no device between it and %s, which feeds it", from)
	if len(l.Unknown) == 0 {
		where += fmt.Sprintf(", over %.2f m", l.Metres)
	}
	if l.Device != nil {
		where = fmt.Sprintf("%s stands %.2f m along the conductors from where %s feeds it", DeviceName(l.Device), l.Metres, from)
	}
	if len(l.Unknown) > 0 && l.Device != nil {
		where += ", wires of unknown length not counted"
	}
	if l.Device != nil {
		where += fmt.Sprintf("; %s is the most (%s)", l.Allowed.Within, l.Allowed.Basis)
	}
	switch {
	case l.Within() && len(l.Unknown) > 0, !l.Within() && c.Capacity.Missing != "" && !math.IsInf(l.Entry.Amps, 1):
		return Line{Answer: opening.NotKnown, Text: where}
	case l.Within():
		return Line{Answer: opening.Yes, Text: where + "; a fault before that is left to its shortness"}
	}
	return Line{Answer: opening.No, Text: where}
}

func (c *Conductor) faultWords() string {
	var words []string
	ends := []struct {
		name string
		at   network.Node
	}{{"from", c.Wire.A}, {"to", c.Wire.B}}
	for i, f := range c.Greatest {
		if !f.IsNone() {
			words = append(words, fmt.Sprintf("%s at its %s end (%s)", amps(f.Amps), ends[i].name, f.State))
		}
	}
	if len(words) == 0 {
		return ""
	}
	text := "a bolted fault drives up to " + strings.Join(words, ", ")
	if !c.Least.IsNone() {
		text += fmt.Sprintf("; at least %s through it by the way back", amps(c.Least.Through(c.Wire)))
	}
	return text
}

// Lines says in words what a device is up against.
func (d *Device) Lines() []Line {
	var lines []Line
	switch {
	case d.Curve.Title != "":
		lines = append(lines, Line{Answer: opening.Yes, Text: "opens as " + d.Curve.Title})
	case d.Curve.Note == "":
		lines = append(lines, Line{Answer: opening.NotKnown, Text: "when it opens is not recorded"})
	}
	if d.Curve.Note != "" {
		lines = append(lines, Line{Answer: opening.NotKnown, Text: d.Curve.Note})
	}
	switch {
	case d.Fault.IsNone():
		lines = append(lines, Line{Answer: opening.NotKnown, Text: "no fault behind it in any state"})
	case !d.Interrupting.OK:
		lines = append(lines, Line{Answer: opening.NotKnown, Text: fmt.Sprintf("a bolted fault right behind it drives %s; its interrupting rating is not recorded", amps(d.Amps))})
	default:
		lines = append(lines, Line{Answer: d.Breaks(), Text: fmt.Sprintf("a bolted fault right behind it drives %s (%s); it breaks %s", amps(d.Amps), d.Fault.State, amps(d.Interrupting.Value))})
	}
	switch {
	case !d.Full.OK:
		lines = append(lines, Line{Answer: opening.NotKnown, Text: "the highest voltage that reaches it is not known"})
	case !d.Volts.OK:
		lines = append(lines, Line{Answer: opening.NotKnown, Text: fmt.Sprintf("it sees up to %.1f V; its voltage rating is not recorded", d.Full.Value)})
	default:
		lines = append(lines, Line{Answer: d.Insulates(), Text: fmt.Sprintf("it sees up to %.1f V and is made for %.0f V", d.Full.Value, d.Volts.Value)})
	}
	return lines
}

// Line says in words whether the nearer of two devices opens first.
func (p *Pair) Line() Line {
	return Line{p.Verdict.Answer, fmt.Sprintf("%s before %s, faults up to %s: %s", DeviceName(p.Down), DeviceName(p.Up), amps(p.Amps), p.Verdict.Why), p.Verdict.Recalled}
}

// names lists what limits a current.
func names(limits []*network.Link) string {
	words := make([]string, len(limits))
	for i, l := range limits {
		words[i] = DeviceName(l)
	}
	return strings.Join(words, " and ")
}

// amps is a current in words: three figures are enough for a person.
func amps(a float64) string {
	switch {
	case math.IsInf(a, 1):
		return "any current"
	case a >= 10_000:
		return fmt.Sprintf("%.1f kA", a/1000)
	case a >= 10:
		return fmt.Sprintf("%.0f A", a)
	case a >= 1:
		return fmt.Sprintf("%.1f A", a)
	}
	return fmt.Sprintf("%.0f mA", a*1000)
}
