package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/support"
	"example.com/lugbook/model/unit"
)

var coilMarginal = Rule{
	ID: "coil-marginal", Title: "A coil pulls in on a full pack, but not on a low one or when it is hot",
	Family: Chain, Severity: Fault,
	About: "Takes each coil that pulls in on the sheet and computes its voltage twice more: with every battery at its cutoff voltage, and with the coil hot, by the " +
		"share of the basis table above its cold resistance, which lifts the voltage at which it pulls in as much. Speaks if either is short. The two are not taken " +
		"together. A caution if a typical pull-in voltage decides.",
	Why: "A coil moves its armature with current, and copper that is hot lets less through: a coil that is 100 C warmer than on the bench has 40 % more " +
		"resistance. A coil of the next higher voltage class, or one behind a resistance, works in the morning on a full pack and chatters in the " +
		"afternoon; a contactor that chatters under load burns its contacts and welds.",
	Tell: "Take the leads off the coil, feed it from a bench supply, plus at coil+ because of a diode in it, and turn it up slowly until it clicks: " +
		"that is its pull-in voltage; record it with the coil's temperature. On the cart measure across the small studs at the moment of the " +
		"click, with the pack low.",
	Blind: "Only coils with a pull-in voltage are judged, and only batteries with a cutoff voltage are taken down. What a controller's driver does after the click, " +
		"holding at less, is not judged. Whether the cart is ever driven to its cutoff is not asked.",
	Bad:    "a coil that needs 44 V on a pack that goes down to 40 V",
	Good:   "a coil that needs 34 V on the same pack",
	Wrong:  Example{Of: relayOnPack, But: []string{"part r", "part r relay-48v pull-in-voltage=44V"}},
	Right:  Example{Of: relayOnPack},
	Basis:  Basis{"a coil pulls in by its current; copper gains 0.393 % of its resistance for each degree", "temperature coefficient of annealed copper: IEC 60028, from memory"},
	Remedy: "fit a coil of the right class, or take the resistance out of its feed",
	Run:    runCoilMarginal,
}

// relayOnPack is a relay that a switch pulls in.
const relayOnPack = `
part pack lithium-pack-16
part fu fuse-cartridge fuse-rating=5A
part sw switch
part r relay-48v pull-in-voltage=34V clamp-voltage=80V
wire k1 pack.POS fu.in gauge=16AWG insulation=105C length=100mm
wire k2 fu.out sw.IN gauge=16AWG insulation=105C length=1m
wire k3 sw.OUT r.86 gauge=16AWG insulation=105C length=1m
wire k4 r.85 pack.NEG gauge=16AWG insulation=105C length=1m
at pack.POS cover=fitted
`

func runCoilMarginal(p *Pass) {
	if p.unsound() || p.isShort() {
		return
	}
	still := p.standstill()
	low := append(slices.Clone(still), p.drained()...)
	for _, c := range p.support().Coils {
		coil := p.coilLink(c)
		if coil == nil || c.FedIn == "" || c.Short {
			continue
		}
		pull := p.Net.KnownFigure(coil.Part, coil.Element.PullIn)
		rest, ok := p.coilAt(c.Fed, coil, still)
		if !pull.OK || !ok || rest < pull.Value {
			continue
		}
		hot := pull.Value * (1 + p.limit(basis.CoilHot))
		if empty, ok := p.coilAt(c.Fed, coil, low); ok && empty < pull.Value {
			p.reportMarginal(marginal{c, pull, empty, pull.Value, fmt.Sprintf("with the pack at its cutoff the coil of %s gets %s and pulls in at %s",
				c.Part, volts(empty), volts(pull.Value)), "pull-in voltage"})
		} else if rest < hot {
			p.reportMarginal(marginal{c, pull, rest, hot, fmt.Sprintf("hot, with %s more resistance, the coil of %s pulls in at %s and gets %s",
				percent(p.limit(basis.CoilHot)), c.Part, volts(hot), volts(rest)), "pull-in voltage of the hot coil"})
		}
	}
}

// isShort reports whether the string gives less than the system should have, by a battery that is
// missing or the wrong way round: then that is the fault and not the coil.
func (p *Pass) isShort() bool {
	main, ok := p.mainString()
	volts := 0.0
	for _, cell := range main.Cells {
		nominal, _ := p.Net.Figure(cell.Link.Part, network.NominalRating)
		if cell.Reversed {
			return true
		}
		volts += nominal
	}
	return !ok || volts < p.Job.System.Volts()
}

// marginal is a coil that gets less than it may need.
type marginal struct {
	coil             support.Coil
	pull             network.Known
	gets, needs      float64
	message, decides string
}

func percent(share float64) string { return number(100*share) + " %" }

func (p *Pass) reportMarginal(m marginal) {
	f := Finding{
		State: m.coil.FedIn, Message: m.message, Subjects: []Subject{OfPart(m.coil.Part)},
		Figure: Figure{What: "coil voltage", Value: unit.V(m.gets).Any(), Limit: unit.V(m.needs).Any(), Least: true, Decides: m.decides},
	}
	if m.pull.IsTypical() || strings.Contains(m.pull.Source, "from memory") {
		f.Severity = Caution
		f.Message += unconfirmed
	}
	p.report(f)
}

// standstill takes what draws traction current away: a contactor pulls in before it flows.
func (p *Pass) standstill() []network.Change {
	var list []network.Change
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		switch {
		case l.Part == nil || l.Def.Family != model.Drive || !p.isTraction(l.A) || !p.isTraction(l.B):
		case l.Is(model.LoadElement):
			list = append(list, network.Change{Link: l, Dead: true})
		case l.Is(model.ResistanceElement):
			list = append(list, network.Change{Link: l, Open: true})
		}
	}
	return list
}

// coilLink is the link of a coil by its positive side.
func (p *Pass) coilLink(c support.Coil) *network.Link {
	for _, l := range p.Net.LinksAt(p.Net.Node(c.Plus)) {
		if l.Is(model.CoilElement) && l.Part.ID == c.Part {
			return l
		}
	}
	return nil
}

// drained takes every battery down to its cutoff voltage.
func (p *Pass) drained() []network.Change {
	var list []network.Change
	for i := range p.Net.Links() {
		l := &p.Net.Links()[i]
		if !l.Is(model.SourceElement) {
			continue
		}
		full, known := p.Net.Figure(l.Part, l.Element.Volts)
		if cutoff, ok := p.Net.Figure(l.Part, "cutoff-voltage"); ok && known && full > 0 {
			list = append(list, network.Change{Link: l, Scale: cutoff / full})
		}
	}
	return list
}

// coilAt is the voltage across a coil in a state with some changes; false if it cannot be
// told.
func (p *Pass) coilAt(s state.State, coil *network.Link, changes []network.Change) (float64, bool) {
	in, err := p.Net.SolveWith(s, network.Variation{Changes: changes})
	if err != nil {
		return 0, false
	}
	v, known := in.Voltage(coil.A, coil.B)
	return max(v, -v), known
}
