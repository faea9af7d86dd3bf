package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/support"
)

var controlBypassed = Rule{
	ID: "control-bypassed", Title: "A switch or an interlock has lost its say",
	Family: Chain, Severity: Fault,
	About: "Looks at the contacts of every part with a control, and at those that a coil closes, and speaks if wire or fuses join both ends of one, if two contacts of a " +
		"part are joined so that one of them is always closed, if the part was recorded as bypassed, or if the cart drives and no " +
		"contact of its key, tow switch or charge interlock is wired at both ends. Names the control that loses its say. A bypassed key " +
		"or accessory switch is a caution; what keeps a cart from moving is a fault.",
	Why: "Somebody in a hurry puts a wire across a switch that failed and the cart runs again. From then on the key turns and does nothing, or the plug no longer " +
		"keeps the cart from driving off with its cord, and the next person trusts a switch that is only there to be looked at.",
	Tell: "Take pack negative off and see 0 V across the two terminals of the switch. Then measure ohms across them while you work it: open must " +
		"read open. Zero in both positions: follow what sits on both tabs, look for a wire from one to the other, for two leads on one tab, for a " +
		"plug with a loop in it.",
	Blind: "It sees only wires that are recorded. A contact that sticks is found with the meter, not here. Whether the cart drives without the control's leave is said by " +
		"drives-unasked. A switch that is wired on both sides and yet decides nothing is not found here.",
	Bad:   "a wire joins the two terminals of the key",
	Good:  "the key alone joins them",
	Wrong: Example{Of: lampOnKey, But: []string{"+", "wire x1 key.BAT key.IGN gauge=16AWG insulation=105C length=50mm"}},
	Right: Example{Of: lampOnKey},
	Basis: Basis{"a control decides only about what passes its contact and nothing else", Physics},
	Remedy: "take the bridge off and put the switch right; if it is to stay, say so on the part and give the cart another " +
		"control for it",
	Run:      runControlBypassed,
	Explains: []string{"drives-unasked", "key-input-live", "contactor-closes-early", "no-tow-switch", "coil-always-fed"},
}

// lampOnKey is a lamp behind a key.
const lampOnKey = `
job system=12V
part b1 lead-battery-12v
part fu fuse-inline fuse-rating=5A interrupting-rating=5000A
part key key-switch
part lt lamp-12v
wire a b1.+ fu.in gauge=16AWG insulation=105C length=100mm
wire b fu.out key.BAT gauge=16AWG insulation=105C length=1m
wire c key.IGN lt.+ gauge=16AWG insulation=105C length=1m
wire d lt.- b1.- gauge=16AWG insulation=105C length=1m
at b1.+ cover=fitted
`

func runControlBypassed(p *Pass) {
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		d := p.Net.Cat.Definition(part.Kind)
		if d == nil || isPotentiometer(d) {
			continue
		}
		if d.Control == nil {
			p.reportBridgedCoil(part)
			continue
		}
		contacts := p.switchLinks(part)
		f := Finding{Severity: p.losing(d.Control.Sets), Subjects: []Subject{OfPart(part.ID)}}
		loses := "the " + sayWord(d.Control.Sets) + " has no say"
		across := p.acrossContact(contacts)
		switch {
		case across != nil:
			way := p.wayAcross(across)
			f.Message = fmt.Sprintf("%s and %s are joined by %s: %s there", p.at(across.A), p.at(across.B), wayWords(way), loses)
			f.Subjects = append(f.Subjects, waySubjects(way)...)
			f.Fixes = p.bridgeOff(way)
		case p.alwaysClosed(d, contacts) != nil:
			l := p.alwaysClosed(d, contacts)
			f.Message = fmt.Sprintf("%s lets current pass from %s in every position: %s", part.ID, p.at(l.A), loses)
		case slices.Contains(part.Condition, model.Bypassed):
			f.Message = fmt.Sprintf("%s was found bypassed: %s; the bridge itself is not on the sheet", part.ID, loses)
		case p.isIdle(d, contacts):
			f.Message = fmt.Sprintf("no contact of %s is wired at both ends and the cart drives: %s", part.ID, loses)
		default:
			continue
		}
		p.report(f)
	}
}

// reportBridgedCoil speaks of a contact that a coil closes and that metal bridges: what it switches
// is always on.
func (p *Pass) reportBridgedCoil(part *model.Part) {
	var contacts []*network.Link
	for i := range p.Net.Links() {
		if l := &p.Net.Links()[i]; l.Is(model.ContactElement) && l.Part.ID == part.ID && l.Element.Coil != "" && l.Element.Rest != model.RestClosed {
			contacts = append(contacts, l)
		}
	}
	across := p.acrossContact(contacts)
	if across == nil || p.isBridgedDrive(part.ID) {
		return
	}
	way := p.wayAcross(across)
	p.report(Finding{
		Message:  fmt.Sprintf("%s and %s are joined by %s: the coil of %s has no say there", p.at(across.A), p.at(across.B), wayWords(way), part.ID),
		Subjects: append([]Subject{OfPart(part.ID)}, waySubjects(way)...),
		Fixes:    p.bridgeOff(way),
	})
}

// isBridgedDrive reports whether the bridge over a contactor keeps a controller live, which
// pre-charge tells.
func (p *Pass) isBridgedDrive(contactor model.PartID) bool {
	return slices.ContainsFunc(p.support().PreCharge, func(c support.PreCharge) bool { return c.Bridged && c.Line.Part == contactor })
}

// losing is how grave it is that a control has no say: a fault for what keeps the cart from
// moving when it must not.
func (p *Pass) losing(c model.Control) Severity {
	switch c {
	case model.TowRun, model.Direction, model.Pedal, model.PluggedIn:
		return Fault
	}
	return Caution
}

// sayWord is a control as the one who has a say: the key, the pedal, the charge interlock.
func sayWord(c model.Control) string {
	switch c {
	case model.PluggedIn:
		return "charge interlock"
	case model.TowRun:
		return "tow switch"
	case model.Direction:
		return "direction switch"
	case model.OtherSwitch:
		return "switch"
	}
	return controlWord(c)
}

// acrossContact is the first of some contacts whose ends metal and fuses join beside it; nil if
// there is none.
func (p *Pass) acrossContact(contacts []*network.Link) *network.Link {
	metal := p.plain()
	for _, l := range contacts {
		if l.A != l.B && metal.Same(l.A, l.B) && p.isUsedBeside(l) {
			return l
		}
	}
	return nil
}

// isUsedBeside reports whether more than the bridge over a contact lands on both its ends: a spare
// contact decides nothing.
func (p *Pass) isUsedBeside(contact *network.Link) bool {
	way := p.wayAcross(contact)
	used := func(at network.Node) bool {
		return slices.ContainsFunc(p.Net.LinksAt(at), func(l *network.Link) bool { return l.Kind == network.WireLink && !slices.Contains(way, l) })
	}
	return len(way) > 1 || used(contact.A) && used(contact.B)
}

// plain groups what metal and fuses join.
func (p *Pass) plain() *network.Groups {
	if p.shared.plain == nil {
		p.shared.plain = p.Net.Joined(isPlain)
	}
	return p.shared.plain
}

// isPlain reports whether a link is metal or a fuse.
func isPlain(l *network.Link) bool { return l.IsMetal() || l.Is(model.FuseElement) }

func (p *Pass) wayAcross(contact *network.Link) []*network.Link {
	return p.Net.Walk([]network.Node{contact.A}, func(l *network.Link, _ network.Node) bool { return isPlain(l) }).Path(contact.B)
}

// bridgeOff takes a bridge of one wire off.
func (p *Pass) bridgeOff(way []*network.Link) []edit.Edit {
	if len(way) != 1 || way[0].Kind != network.WireLink {
		return nil
	}
	return []edit.Edit{edit.RemoveWire{Sheet: p.Sheet.Name, ID: way[0].Wire.ID}}
}

// alwaysClosed is the first of some contacts that others of the part take the place of in
// every position in which it is open, because metal joins their ends; nil if there is none.
func (p *Pass) alwaysClosed(d *model.Definition, contacts []*network.Link) *network.Link {
	metal := p.metal()
	for _, l := range contacts {
		closed := slices.Clone(l.Element.ClosedIn)
		for _, other := range contacts {
			if metal.Same(l.A, other.A) && metal.Same(l.B, other.B) || metal.Same(l.A, other.B) && metal.Same(l.B, other.A) {
				closed = append(closed, other.Element.ClosedIn...)
			}
		}
		open := slices.ContainsFunc(d.Control.Positions, func(position string) bool { return !slices.Contains(closed, position) })
		if !open && len(closed) > len(l.Element.ClosedIn) && p.wired(l.A) && p.wired(l.B) {
			return l
		}
	}
	return nil
}

// isIdle reports whether no contact of a key, a tow switch or a charge interlock is wired at
// both ends on a cart that drives as it should. Ends that go out of sight may lead there.
func (p *Pass) isIdle(d *model.Definition, contacts []*network.Link) bool {
	if len(contacts) == 0 || !slices.Contains([]model.Control{model.Key, model.TowRun}, d.Control.Sets) || p.hasUntraced() || !p.drivesAsked() {
		return false
	}
	return !slices.ContainsFunc(contacts, func(l *network.Link) bool { return p.wired(l.A) && p.wired(l.B) })
}

// hasUntraced reports whether a wire of the sheet goes out of sight.
func (p *Pass) hasUntraced() bool {
	return slices.ContainsFunc(p.Sheet.Wires, func(w model.Wire) bool {
		return w.From.Loose == model.Untraced || w.To.Loose == model.Untraced
	})
}

// drivesAsked reports whether the cart drives in a setting in which it must.
func (p *Pass) drivesAsked() bool {
	return slices.ContainsFunc(p.trials(), func(t trial) bool { return t.motion.Must == meter.Drive && t.motion.Drives })
}
