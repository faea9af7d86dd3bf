package rule

import (
	"fmt"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

var earthMissing = Rule{
	ID: "earth-missing", Title: "The protective earth does not reach the charger and the frame",
	Family: Frame, Severity: Danger,
	About: "Follows the protective earth by metal: the inlet's, that of each charger whose AC side is wired, and the frame must be one. Where the frame is not on the sheet its bond is asked for, " +
		"and so is the AC side of a charger that nobody drew.",
	Why: "Inside a charger the mains and the metal of the cart are a few millimetres apart. When the insulation between them fails, the earth wire carries the fault back to the house, and its breaker opens " +
		"at once. Without it the whole cart stands at mains voltage, on rubber tyres, and waits for somebody who stands on wet ground and touches it.",
	Tell: "Unplug the cord from the wall. Meter on ohms, measure from the earth pin of the plug to the charger's case, and to bare metal of the frame, moving the " +
		"cord: well below 1 ohm in both, and steady. The bond to the frame is a bolt with bright metal under it and not a screw in paint.",
	Blind: "The cord and the outlet in the wall are not on the sheet: that their earth is good is taken for granted. A charger of double insulation without an earth terminal needs none: use a kind of part without it. The size of the " +
		"earth wire is not judged. The AC side is a matter for licensed people and the local code.",
	Bad: "the charger's earth wire is left off", Good: "inlet, charger and frame are joined",
	Wrong: Example{Of: acSide, But: []string{"wire c3", ""}},
	Right: Example{Of: acSide},
	Basis: Basis{"exposed metal that may become live is joined to the equipment grounding conductor, by a path that is permanent and of low impedance", "NEC 250.114 and 250.4(A)(5), from memory"},
	Remedy: "leave the cord unplugged until it is done: join the inlet's earth to the charger and to a bright bolt of the frame, in green or green-yellow wire of " +
		"the size of the line conductor at least",
	Run: runEarthMissing,
}

// acSide is the AC side of a charger on the cart.
const acSide = `
part inlet ac-inlet
part chg charger-onboard-48v
part fr frame-point
wire c1 inlet.L chg.AC-L colour=BK gauge=14AWG insulation=105C length=400mm
wire c2 inlet.N chg.AC-N colour=WH gauge=14AWG insulation=105C length=400mm
wire c3 inlet.PE chg.AC-PE colour=GN gauge=14AWG insulation=105C length=400mm
wire c4 inlet.PE fr.FRAME colour=GN gauge=14AWG insulation=105C length=300mm`

// earthWords is what the library calls a protective earth.
const earthWords = "protective earth"

// earthed is a part with a terminal for the protective earth.
type earthed struct {
	part  *model.Part
	at    network.Node
	inlet bool
	drawn bool // a wire lands on its AC side
}

func runEarthMissing(p *Pass) {
	parts := p.earthedParts()
	var undrawn []Subject
	judged := slices.DeleteFunc(slices.Clone(parts), func(e earthed) bool {
		if !e.drawn {
			undrawn = append(undrawn, OfPart(e.part.ID))
		}
		return !e.drawn
	})
	if len(undrawn) > 0 {
		p.missing(Gap{Datum: "the AC side", Decides: "whether the protective earth reaches the charger and the frame", Worst: Danger, Quiet: true, Subjects: undrawn})
	}
	if len(judged) == 0 {
		return
	}
	frame := p.Net.Frame()
	if frame == network.None && len(judged) == len(p.fastened(judged, judged[0].at)) {
		p.missing(Gap{Datum: "the bond of the protective earth to the frame", Decides: "whether the frame can stand at mains voltage", Worst: Danger, Subjects: subjectsOf(judged[:1])})
		return
	}
	p.judgeEarth(judged, frame)
}

// judgeEarth reports the parts whose earth is not one with the frame, or with the inlet's where
// the frame is not on the sheet.
func (p *Pass) judgeEarth(judged []earthed, frame network.Node) {
	home, name := frame, "the frame"
	if frame == network.None {
		home, name = judged[0].at, p.at(judged[0].at)
	}
	joined := p.fastened(judged, home)
	var off []earthed
	for _, e := range judged {
		if !slices.Contains(joined, e) {
			off = append(off, e)
		}
	}
	if len(off) == 0 {
		return
	}
	subjects := subjectsOf(off)
	p.report(Finding{
		Subjects: subjects,
		Message:  fmt.Sprintf("no metal joins the protective earth of %s to %s: a fault to the case leaves it at mains voltage", list(subjects), name),
	})
}

// fastened lists the parts whose earth is one metal with a node.
func (p *Pass) fastened(parts []earthed, to network.Node) []earthed {
	metal := p.metal()
	return slices.DeleteFunc(slices.Clone(parts), func(e earthed) bool { return !metal.Same(e.at, to) })
}

func subjectsOf(list []earthed) []Subject {
	var subjects []Subject
	for _, e := range list {
		subjects = append(subjects, OfPart(e.part.ID))
	}
	return subjects
}

// earthedParts lists the parts with a terminal for the protective earth, inlets first.
func (p *Pass) earthedParts() []earthed {
	var list []earthed
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		def := p.Net.Cat.Definition(part.Kind)
		if def == nil {
			continue
		}
		e := earthed{part: part, at: network.None, inlet: len(def.Elements) == 0}
		for _, t := range def.Terminals {
			if t.Serves != model.Mains || t.Metal != "" {
				continue
			}
			at := p.Net.Node(model.TerminalRef{Part: part.ID, Name: t.Name})
			e.drawn = e.drawn || p.wired(at)
			if t.Means == earthWords {
				e.at = at
			}
		}
		if e.at != network.None {
			list = append(list, e)
		}
	}
	slices.SortStableFunc(list, func(a, b earthed) int {
		switch {
		case a.inlet == b.inlet:
			return 0
		case a.inlet:
			return -1
		}
		return 1
	})
	return list
}
