package rule

import (
	"fmt"
	"slices"
	"strings"

	"example.com/lugbook/model"
)

var dissimilarMetals = Rule{
	ID: "dissimilar-metals", Title: "Two metals that eat one another meet in a joint",
	Family: Studs, Severity: Caution,
	About: "Looks for a wire recorded as aluminium that shares a stud with copper, brass, lead or steel and has no plated washer recorded " +
		"between, and for a wire recorded as plain copper on a face recorded as lead. Where the washer of such a stud is not recorded, the " +
		"note says so.",
	Why: "Two metals and a film of water are a battery that is shorted through the joint: the less noble one dissolves. Aluminium against " +
		"copper loses, and the oxide that is left does not conduct; the joint warms, and the next winter it is open. On lead batteries the " +
		"film is acid: a plain copper lug on a lead post grows green crust within weeks, tinned copper takes years. Plating on a washer " +
		"between keeps the two apart.",
	Tell: "Pack off. Scratch the lug's edge: grey-white and light is aluminium, red is copper, grey and heavy over red is tinned copper. Green or white bloom at " +
		"a joint is the sign that it is at work. Take the stack apart and look at the faces: they must be bright, not dull grey.",
	Blind: "A wire counts as copper unless it is recorded otherwise, and what its lug is plated with is not recorded: plain copper is only taken " +
		"against lead where it was written down as copper. Copper-clad aluminium is copper on the outside and is not judged here. Stainless " +
		"and plated faces recorded as steel are only held against aluminium.",
	Bad:   "an aluminium cable lies on copper ones on iso.out, washers outside",
	Good:  "all cables there are copper",
	Wrong: Example{Of: studExample, But: []string{"wire k1", "wire k1 iso.out fu2.in gauge=14AWG insulation=105C length=100mm material=aluminium", "+", "at iso.out washer=outside"}},
	Right: Example{Of: studExample, But: []string{"wire k1", "wire k1 iso.out fu2.in gauge=14AWG insulation=105C length=100mm material=copper", "+", "at iso.out washer=outside"}},
	Basis: Basis{"copper on aluminium goes with a plated-brass washer, the aluminium lug, a plated-brass washer, the copper lug, then washer, lock washer and nut",
		"FAA powerplant handbook, connecting terminal lugs to terminal blocks"},
	Remedy: "make it of one metal; where aluminium must stay, put a plated-brass washer under it and one between it and the copper; on lead use tinned lugs",
	Run:    runDissimilarMetals,
}

func runDissimilarMetals(p *Pass) {
	var unknown []Subject
	var joints []metalJoint
	for _, s := range p.studs() {
		if p.mixesAluminium(s) {
			switch p.washerOn(s.at) {
			case "":
				unknown = append(unknown, OfTerminal(s.at))
			case model.WasherOutside:
				joints = append(joints, p.jointOf(s, isAluminium, "aluminium", "no plated washer lies between them"))
			}
		}
		if p.faceOf(s.at) == model.Lead {
			joints = append(joints, p.jointOf(s, func(w *model.Wire) bool { return w.Material == model.Copper }, "plain copper", "acid turns it green"))
		}
	}
	for len(joints) > 0 {
		same := func(j metalJoint) bool { return j.how == joints[0].how && slices.Equal(j.wires, joints[0].wires) }
		var alike, rest []metalJoint
		for _, j := range joints {
			if same(j) {
				alike = append(alike, j)
			} else {
				rest = append(rest, j)
			}
		}
		p.reportMetals(alike)
		joints = rest
	}
	if len(unknown) > 0 {
		p.missing(Gap{Datum: "the place of the washers", Field: "washer", Decides: "whether aluminium and copper touch", Worst: Caution, Subjects: unknown})
	}
}

// metalJoint is a stud on which wires of one metal meet another.
type metalJoint struct {
	at            Subject
	wires, others []Subject
	metal, how    string
	meets         string // the face or the wires that they meet, in words
}

// jointOf looks for wires of a metal among those of a stud.
func (p *Pass) jointOf(s stud, is func(*model.Wire) bool, metal, how string) metalJoint {
	j := metalJoint{at: OfTerminal(s.at), metal: metal, how: how}
	for _, w := range s.wires {
		if is(w) {
			j.wires = append(j.wires, OfWire(w.ID))
		} else {
			j.others = append(j.others, OfWire(w.ID))
		}
	}
	if face := p.faceOf(s.at); face != "" {
		j.meets = fmt.Sprintf(", a face of %s", face)
	} else if len(j.others) > 0 {
		j.meets = ", beside " + list(j.others)
	}
	return j
}

// reportMetals reports the studs on which the same wires meet another metal.
func (p *Pass) reportMetals(joints []metalJoint) {
	first := joints[0]
	if len(first.wires) == 0 {
		return
	}
	var places []string
	var studs, others []Subject
	for _, j := range joints {
		places = append(places, "on "+j.at.String()+j.meets)
		studs = append(studs, j.at)
		others = appendNew(others, j.others...)
	}
	p.report(Finding{
		Message:  fmt.Sprintf("%s, %s, %s: %s", list(first.wires), first.metal, strings.Join(places, ", and "), first.how),
		Subjects: slices.Concat(studs, first.wires, others),
	})
}
