package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var frameReturn = Rule{
	ID: "frame-return", Title: "A device returns through the frame",
	Family: Supply, Severity: Caution,
	About: "Looks at each load, coil and reducer for a terminal that hangs on the frame and reaches its source no other way. Tells as well if the frame is " +
		"joined to a reducer that shares its negative with the pack: then the frame is pack negative. What drives is not looked at.",
	Why: "Car parts with one lead return through the body, and so somebody bolts a horn or a lamp to the frame of the cart and joins the frame to a negative. From then on " +
		"every bolt, hinge and tow bar carries current: joints rust and lamps flicker, and a bare positive anywhere finds its way home through the nearest piece of steel. If " +
		"the negative is the pack's, one chafed traction cable is a dead short through the frame, where on a cart that floats it does nothing yet.",
	Tell: "Count the leads: a lamp with one wire returns through its bracket. With the device on, meter on DC volts, measure from its metal body to the negative " +
		"bus: some tenths of a volt are its return current on its way through the frame. Or, with the power off, take the joint to the frame off: what stays " +
		"dark when the power is on again returned through it.",
	Blind: "It sees only a frame that is on the sheet as a frame point. A device with a return wire and a grounded body besides counts as wired, though part of its current goes " +
		"through the frame. The AC earth of inlet and charger belongs on the frame and is no return.",
	Bad:  "the lamp's negative is bolted to the frame, and the frame is joined to the reducer's OUT-",
	Good: "the lamp's negative goes to the reducer's OUT- by a wire",
	Wrong: Example{Of: lampOnReducer, But: []string{"wire a2", "wire a2 lt.- fr.FRAME gauge=16AWG insulation=105C length=200mm",
		"+", "part fr frame-point\nwire a3 fr.FRAME red.OUT- gauge=16AWG insulation=105C length=200mm"}},
	Right:    Example{Of: lampOnReducer},
	Basis:    Basis{"a cart is wired with two conductors: the frame is no conductor, and a pack that floats stands a first fault to it", Practice},
	Remedy:   "give the device a return wire of its own to the negative that its supply comes from, and take the joint to the frame off",
	Explains: []string{"pack-on-frame"},
	Run:      runFrameReturn,
}

func runFrameReturn(p *Pass) {
	devices := p.throughFrame()
	if len(devices) == 0 {
		return
	}
	f := Finding{Subjects: devices, Message: list(devices) + " return through the frame"}
	if len(devices) == 1 {
		f.Message = list(devices) + " returns through the frame"
	}
	home, way := p.homeOfFrame()
	f.Subjects = append(f.Subjects, wiresOf(way)...)
	switch {
	case home == nil:
		f.Message += ", and nothing on the sheet joins the frame to a source"
	case home.String != nil:
		f.Message += fmt.Sprintf(": it is joined to %s, which is the pack's own negative", p.at(home.Return))
	case sharesNegative(home.Link):
		f.Message += fmt.Sprintf(": %s shares its negative with the pack, so the frame is pack negative as well", home.Link.Part.ID)
	default:
		f.Message += fmt.Sprintf(" to %s", p.at(home.Return))
	}
	p.report(f)
}

// throughFrame lists the parts with a terminal that comes to its source over the frame alone.
func (p *Pass) throughFrame() []Subject {
	frame := p.Net.Frame()
	if frame == network.None {
		return nil
	}
	over := p.Net.Walk([]network.Node{frame}, func(l *network.Link, _ network.Node) bool { return leads(l) })
	var parts []Subject
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !takesPower(l) {
			continue
		}
		for _, at := range []network.Node{l.A, l.B} {
			if over.Has(at) && !p.comesHome(at, frame) {
				parts = appendNew(parts, OfPart(l.Part.ID))
			}
		}
	}
	return parts
}

// comesHome reports whether a terminal reaches a terminal of a source without the frame.
func (p *Pass) comesHome(at, frame network.Node) bool {
	reach := p.Net.Walk([]network.Node{at}, func(l *network.Link, from network.Node) bool { return leads(l) && l.Other(from) != frame })
	return slices.ContainsFunc(p.sides(), func(fs feedSides) bool { return reach.Has(fs.feed.At) || reach.Has(fs.feed.Return) })
}

// homeOfFrame is the nearest source whose negative the frame is joined to, with the way there;
// a reducer goes before the pack. It is nil if there is none.
func (p *Pass) homeOfFrame() (home *network.Feed, way []*network.Link) {
	reach := p.Net.Walk([]network.Node{p.Net.Frame()}, func(l *network.Link, _ network.Node) bool { return l.Firm() })
	for i := range p.sides() {
		f := &p.sides()[i].feed
		if !reach.Has(f.Return) || f.Link.Is(model.ChargerElement) {
			continue
		}
		if path := reach.Path(f.Return); home == nil || len(path) < len(way) {
			home, way = f, path
		}
	}
	return home, way
}

// sharesNegative reports whether the output of a reducer has its negative in common with its
// input.
func sharesNegative(out *network.Link) bool {
	return out.Kind == network.OutputLink && slices.Contains(out.Element.Between, out.Element.Out[1])
}

// lampOnReducer is a lamp on an isolated reducer.
const lampOnReducer = `
part pack lithium-pack-16
part fu4 fuse-cartridge fuse-rating=15A
part red reducer-isolated
part lt lamp-headlight
wire r1 pack.POS fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.IN- pack.NEG gauge=12AWG insulation=105C length=800mm
wire a1 red.OUT+ lt.+ gauge=16AWG insulation=105C length=1m
wire a2 lt.- red.OUT- gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
at fu4.in cover=fitted
`
