package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

var keyInputLive = Rule{
	ID: "key-input-live", Title: "A controller's key input is live with the key off",
	Family: Chain, Severity: Fault,
	About: "Computes the parked cart and the cart with the key off and all else as for driving forward, and speaks if the key input of a " +
		"controller stands at half of the pack's voltage or more in one of them. Where the cart even drives with the key off, drives-unasked tells it.",
	Why: "The key input wakes the controller and tells it that somebody with a key sits on the cart. Wired to the hot side the controller never sleeps: it " +
		"draws its logic current for months, holds its memory of faults, and the only thing between pedal and motion is the contactor.",
	Tell: "Key off, black lead on pack negative, red on the key input (pin KSI or pin 1): 0 V is right. Pack voltage there: follow that lead back to the terminal that it " +
		"shares with the feed of the key.",
	Blind: "It knows key inputs by what the library says of the terminal. It does not judge separate logic supplies, which are live in run by design. A key input " +
		"that is fed late, behind the pedal, is right on series controllers and is not spoken of.",
	Bad:    "the key input shares the hot terminal of the key",
	Good:   "the key input hangs behind key and pedal switch",
	Wrong:  Example{Of: seriesChain, But: []string{"wire k5", "wire k5 key.BAT ctrl.KSI gauge=16AWG insulation=105C length=1.5m"}},
	Right:  Example{Of: seriesChain},
	Basis:  Basis{"the key input of a controller is fed from the switched side of the key", Practice},
	Remedy: "move the lead to the switched side of the key",
	Run:    runKeyInputLive,

	Explains: []string{"drives-unasked"},
}

func runKeyInputLive(p *Pass) {
	if p.unsound() {
		return
	}
	for _, name := range []string{state.Parked, state.DriveForward} {
		if name != state.Parked && p.drivesKeyOff() {
			return
		}
		in := p.solveWith(name, state.Setting{Control: model.Key, Position: "off"})
		if in == nil {
			continue
		}
		levels := p.levels(in)
		found := false
		for _, at := range p.driveTerminals(keyInput) {
			if node := p.Net.Node(at); p.wired(node) && levels.isFed(node) && p.plainly(in, node) {
				found = true
				p.reportKeyInput(levels, at, name)
			}
		}
		if found {
			return
		}
	}
}

func (p *Pass) reportKeyInput(v levels, at model.TerminalRef, name string) {
	f := Finding{
		Message:  fmt.Sprintf("%s has %s with the key off", at, volts(v.at(p.Net.Node(at)))),
		Subjects: append([]Subject{OfTerminal(at)}, p.controlsOf(model.Key)...),
		Fixes:    p.behindKey(at),
	}
	if name != state.Parked {
		f.Message += " as soon as a direction is chosen and the pedal is down"
		f.State = "key off, direction forward and pedal down"
	} else {
		f.State = state.Parked
	}
	p.report(f)
}

// drivesKeyOff reports whether the cart asks for current with the key off: then drives-unasked
// tells it all.
func (p *Pass) drivesKeyOff() bool {
	return slices.ContainsFunc(p.trials(), func(t trial) bool {
		at, _ := t.state.Position(model.Key)
		return at == "off" && t.motion.Asks
	})
}

// driveTerminals lists the terminals of drives whose meaning begins with some words.
func (p *Pass) driveTerminals(means string) []model.TerminalRef {
	var list []model.TerminalRef
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		d := p.Net.Cat.Definition(part.Kind)
		if d == nil || d.Family != model.Drive {
			continue
		}
		for _, t := range d.Terminals {
			if strings.HasPrefix(t.Means, means) {
				list = append(list, model.TerminalRef{Part: part.ID, Name: t.Name})
			}
		}
	}
	return list
}

// behindKey moves the one wire of a terminal from the hot terminal of a key to the switched
// one beside it, if it is that simple.
func (p *Pass) behindKey(at model.TerminalRef) []edit.Edit {
	var only *network.Link
	for _, l := range p.Net.LinksAt(p.Net.Node(at)) {
		if l.Kind == network.WireLink {
			if only != nil {
				return nil
			}
			only = l
		}
	}
	if only == nil {
		return nil
	}
	far := only.Other(p.Net.Node(at))
	for _, l := range p.Net.LinksAt(far) {
		if l.Is(model.ContactElement) && l.Def.Control != nil && l.Def.Control.Sets == model.Key && l.A == far && p.wired(l.B) {
			end := model.End{At: p.Net.Point(l.B).At}
			return []edit.Edit{edit.ReEnd{Sheet: p.Sheet.Name, ID: only.Wire.ID, Side: sideOf(only.Wire, p.Net.Point(far).At), End: end}}
		}
	}
	return nil
}
