package rule_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

func job(t testing.TB, text string) *model.Job {
	t.Helper()
	j, err := mini.Job(text)
	require.NoError(t, err)
	require.Empty(t, j.Check(part.Library()))
	return j
}

func check(t testing.TB, text string, also ...func(*model.Sheet)) []rule.Finding {
	t.Helper()
	j := job(t, text)
	for _, change := range also {
		if change != nil {
			change(&j.Sheets[0])
		}
	}
	findings, err := rule.Check(j, j.Sheets[len(j.Sheets)-1].Name, part.Library())
	require.NoError(t, err)
	return findings
}

// lines writes findings as severity rule: message.
func lines(findings []rule.Finding) []string {
	out := []string{}
	for _, f := range findings {
		out = append(out, fmt.Sprintf("%s %s: %s", f.Severity, f.Rule, f.Message))
	}
	return out
}

// edited changes a text line by line, as the examples of rules do.
func edited(text string, changes ...string) string {
	text, err := rule.Example{Of: text, But: changes}.Text()
	if err != nil {
		panic(err)
	}
	return text
}

// lithium is a small lithium cart as planned: everything fused, stacked and covered.
const lithium = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part pre precharge-resistor
part dio diode
part ctrl controller-series
part motor motor-series
part dir direction-rotary
part shunt shunt
part nb bus-bar-4
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
part pedal pedal-switch
part chg charger-onboard-48v
part fu2 fuse-cartridge fuse-rating=40A
part red reducer-common-negative
part fu4 fuse-cartridge fuse-rating=15A
part fu5 fuse-inline-80v fuse-rating=3A
part fb fuse-block-6-neg
part lt1 lamp-headlight
part usb usb-outlet
part meter soc-meter
part fu6 fuse-inline-80v fuse-rating=1A
part buz buzzer
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm from-lug=M8 to-lug=M8
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w4 ctrl.B- shunt.LOAD gauge=2AWG insulation=105C length=700mm
wire w5 shunt.BATT pack.NEG gauge=2AWG insulation=105C length=200mm
wire m1 ctrl.B+ motor.A1 gauge=2AWG insulation=105C length=600mm
wire m2 motor.A2 dir.X1 gauge=2AWG insulation=105C length=600mm
wire m3 dir.S1 motor.S1 gauge=2AWG insulation=105C length=600mm
wire m4 dir.S2 motor.S2 gauge=2AWG insulation=105C length=600mm
wire m5 dir.X2 ctrl.M- gauge=2AWG insulation=105C length=600mm
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=900mm
wire c2 fu2.out sol.L1 gauge=10AWG insulation=105C length=120mm
wire n1 shunt.LOAD nb.1 gauge=6AWG insulation=105C length=200mm
wire c3 chg.DC- nb.1 gauge=10AWG insulation=105C length=900mm
wire k1 sol.L1 fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C length=2m
wire k3 key.IGN dir.micro-com gauge=16AWG insulation=105C length=1m
wire k4 dir.micro-no pedal.COM gauge=16AWG insulation=105C length=1m
wire k5 pedal.NO chg.interlock-a gauge=16AWG insulation=105C length=2m
wire k6 chg.interlock-b sol.coil+ gauge=16AWG insulation=105C length=2m
wire k7 chg.interlock-b ctrl.KSI gauge=16AWG insulation=105C length=2m
wire k8 sol.coil- nb.2 gauge=16AWG insulation=105C length=1m
wire k9 key.IGN dir.rev-com gauge=16AWG insulation=105C length=1m
wire b1 dir.rev-no buz.+ gauge=16AWG insulation=105C length=1m
wire b2 buz.- nb.3 gauge=16AWG insulation=105C length=1m
wire p1 sol.L1 pre.a gauge=18AWG insulation=105C length=80mm
wire p2 sol.L2 pre.b gauge=18AWG insulation=105C length=80mm
wire d1 dio.cathode sol.coil+ gauge=18AWG insulation=105C length=60mm
wire d2 dio.anode sol.coil- gauge=18AWG insulation=105C length=60mm
wire r1 fu1.out fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=800mm
wire r3 red.NEG nb.2 gauge=12AWG insulation=105C length=800mm
wire r4 key.IGN fu5.in gauge=16AWG insulation=105C length=100mm
wire r5 fu5.out red.WAKE gauge=18AWG insulation=105C length=2m
wire a1 red.OUT+ fb.IN gauge=10AWG insulation=105C length=2m
wire a2 red.NEG fb.NEG gauge=10AWG insulation=105C length=2m
wire a3 fb.1 lt1.+ gauge=16AWG insulation=105C length=1m
wire a4 lt1.- fb.NEG1 gauge=16AWG insulation=105C length=1m
wire a5 fb.2 usb.+ gauge=16AWG insulation=105C length=1m
wire a6 usb.- fb.NEG2 gauge=16AWG insulation=105C length=1m
wire s1 shunt.sense+ meter.sense+ gauge=18AWG insulation=105C length=2m
wire s2 shunt.sense- meter.sense- gauge=18AWG insulation=105C length=2m
wire s3 fu1.out fu6.in gauge=16AWG insulation=105C length=100mm
wire s4 fu6.out meter.supply+ gauge=18AWG insulation=105C length=2m
wire s5 meter.supply- nb.3 gauge=18AWG insulation=105C length=2m
stack fu1.out w2 r1 s3
stack sol.L1 w2 c2 k1 p1
stack sol.L2 w3 p2
stack ctrl.B+ w3 m1
stack shunt.LOAD w4 n1
stack nb.1 n1 c3
stack nb.2 r3 k8
stack nb.3 b2 s5
stack sol.coil+ k6 d1
stack sol.coil- k8 d2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

// lead is a cart as found: eight 6 V batteries, no main fuse, a fuse in the key feed.
const lead = `
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
part b5 lead-battery-6v
part b6 lead-battery-6v
part b7 lead-battery-6v
part b8 lead-battery-6v
part sol contactor-48v
part ctrl controller-series
part motor motor-series
part dir direction-rotary
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
part pedal pedal-switch
part rec receptacle
part buz buzzer
wire j1 b1.+ b2.- gauge=4AWG
wire j2 b2.+ b3.- gauge=4AWG
wire j3 b3.+ b4.- gauge=4AWG
wire j4 b4.+ b5.- gauge=4AWG
wire j5 b5.+ b6.- gauge=4AWG
wire j6 b6.+ b7.- gauge=4AWG
wire j7 b7.+ b8.- gauge=4AWG
wire w1 b8.+ sol.L1 gauge=4AWG insulation=105C
wire w2 sol.L2 ctrl.B+ gauge=4AWG insulation=105C
wire w3 ctrl.B- b1.- gauge=4AWG insulation=105C
wire m1 ctrl.B+ motor.A1 gauge=4AWG
wire m2 motor.A2 dir.X1 gauge=4AWG
wire m3 dir.S1 motor.S1 gauge=4AWG
wire m4 dir.S2 motor.S2 gauge=4AWG
wire m5 dir.X2 ctrl.M- gauge=4AWG
wire k1 sol.L1 fu3.in gauge=16AWG length=100mm
wire k2 fu3.out key.BAT gauge=16AWG
wire k3 key.IGN dir.micro-com gauge=16AWG
wire k4 dir.micro-no pedal.COM gauge=16AWG
wire k5 pedal.NO sol.coil+ gauge=16AWG
wire k6 pedal.NO ctrl.KSI gauge=16AWG
wire k7 sol.coil- b1.- gauge=16AWG
wire k8 key.IGN dir.rev-com gauge=16AWG
wire k9 dir.rev-no buz.+ gauge=16AWG
wire k10 buz.- b1.- gauge=16AWG
wire c1 rec.+ b8.+ gauge=10AWG
wire c2 rec.- b1.- gauge=10AWG
stack b8.+ w1 c1
stack b1.- w3 c2 k7 k10
stack sol.L1 w1 k1
at b8.+ cover=fitted
at sol.L1 cover=fitted
`
