package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// sepex is a lithium cart with a separately excited motor as planned: rocker, tow
// switch, coil pulled low by the controller, charger interlock in the logic feed.
const sepex = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=225A
part iso isolator
part sol contactor-48v
part pre precharge-resistor
part dio diode
part ctrl controller-sepex
part motor motor-sepex
part fu3 fuse-inline-80v fuse-rating=10A
part tow tow-run
part key key-switch
part pedal pedal-switch
part dir direction-rocker
part thr throttle-3wire
part buz buzzer
part chg charger-onboard-48v
part fu2 fuse-cartridge fuse-rating=30A
part vm voltmeter
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=150mm
wire w2 fu1.out iso.in gauge=2AWG insulation=105C length=300mm
wire w3 iso.out sol.L1 gauge=2AWG insulation=105C length=300mm
wire w4 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=300mm
wire w5 ctrl.B- pack.NEG gauge=2AWG insulation=105C length=700mm
wire m1 ctrl.B+ motor.A1 gauge=2AWG insulation=105C
wire m2 motor.A2 ctrl.M- gauge=2AWG insulation=105C
wire m3 ctrl.F1 motor.F1 gauge=10AWG insulation=105C
wire m4 ctrl.F2 motor.F2 gauge=10AWG insulation=105C
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=1m
wire c2 fu2.out iso.in gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=1m
wire k1 sol.L1 fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out chg.interlock-a gauge=16AWG insulation=105C length=2m
wire k3 chg.interlock-b tow.1 gauge=16AWG insulation=105C length=2m
wire k4 tow.2 ctrl.logic gauge=16AWG insulation=105C length=2m
wire k5 tow.2 key.BAT gauge=16AWG insulation=105C length=2m
wire k6 key.IGN ctrl.KSI gauge=16AWG insulation=105C length=2m
wire k7 key.IGN pedal.COM gauge=16AWG insulation=105C length=2m
wire k8 pedal.NO ctrl.foot gauge=16AWG insulation=105C length=2m
wire k9 key.IGN dir.COM gauge=16AWG insulation=105C length=2m
wire k10 dir.F ctrl.fwd gauge=16AWG insulation=105C length=2m
wire k11 dir.R ctrl.rev gauge=16AWG insulation=105C length=2m
wire k12 key.IGN sol.coil+ gauge=16AWG insulation=105C length=2m
wire k13 sol.coil- ctrl.coil-driver gauge=16AWG insulation=105C length=2m
wire k14 thr.high ctrl.throttle-high gauge=18AWG
wire k15 thr.wiper ctrl.throttle-wiper gauge=18AWG
wire k16 thr.low ctrl.throttle-low gauge=18AWG
wire k17 key.IGN buz.+ gauge=16AWG insulation=105C length=2m
wire k18 buz.- ctrl.buzzer gauge=16AWG insulation=105C length=2m
wire k19 key.IGN vm.+ gauge=16AWG insulation=105C length=2m
wire k20 vm.- pack.NEG gauge=16AWG insulation=105C length=2m
wire p1 sol.L1 pre.a gauge=18AWG
wire p2 sol.L2 pre.b gauge=18AWG
wire d1 dio.cathode sol.coil+ gauge=18AWG
wire d2 dio.anode sol.coil- gauge=18AWG
stack pack.NEG w5 c3 k20
stack iso.in w2 c2
stack sol.L1 w3 k1 p1
stack sol.L2 w4 p2
stack ctrl.B+ w4 m1
stack sol.coil+ k12 d1
stack sol.coil- k13 d2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

// ac72 is a 72 V AC cart as planned: coil fed and pulled low by the controller, brake, encoder,
// pack display, isolated reducer.
const ac72 = `
job system=72V
part pack lithium-pack-24
part fu1 fuse-class-t fuse-rating=250A
part sol contactor-72v
part pre precharge-resistor-72v
part ctrl controller-ac-72v clamp-voltage=110V
part motor motor-ac
part enc encoder
part brk em-brake voltage=72V max-input-voltage=95V
part fu3 fuse-cartridge fuse-rating=10A
part key key-switch
part pedal pedal-switch
part dir direction-rocker
part chg charger-onboard-72v
part fu2 fuse-cartridge fuse-rating=30A
part red reducer-isolated-72v
part fu4 fuse-cartridge fuse-rating=15A
part fb fuse-block-6-neg
part lt lamp-headlight
part sw light-switch
part disp can-display
part t1 can-terminator
part t2 can-terminator
wire w1 pack.POS fu1.in gauge=1/0AWG insulation=105C length=150mm
wire w2 fu1.out sol.L1 gauge=1/0AWG insulation=105C length=600mm
wire w3 sol.L2 ctrl.B+ gauge=1/0AWG insulation=105C length=600mm
wire w4 ctrl.B- pack.NEG gauge=1/0AWG insulation=105C length=700mm
wire m1 ctrl.U motor.U gauge=2/0AWG insulation=105C
wire m2 ctrl.V motor.V gauge=2/0AWG insulation=105C
wire m3 ctrl.W motor.W gauge=2/0AWG insulation=105C
wire e1 ctrl.encoder+ enc.supply+ gauge=20AWG
wire e2 ctrl.encoder- enc.supply- gauge=20AWG
wire e3 ctrl.encoder-A enc.A gauge=20AWG
wire e4 ctrl.encoder-B enc.B gauge=20AWG
wire c1 chg.DC+ fu2.in gauge=10AWG insulation=105C length=1m
wire c2 fu2.out sol.L1 gauge=10AWG insulation=105C length=120mm
wire c3 chg.DC- pack.NEG gauge=10AWG insulation=105C length=1m
wire k1 sol.L1 fu3.in gauge=16AWG insulation=105C length=100mm
wire k2 fu3.out key.BAT gauge=16AWG insulation=105C
wire k3 key.IGN chg.interlock-a gauge=16AWG insulation=105C
wire k4 chg.interlock-b ctrl.KSI gauge=16AWG insulation=105C
wire k5 chg.interlock-b pedal.COM gauge=16AWG insulation=105C
wire k6 pedal.NO ctrl.foot gauge=16AWG insulation=105C
wire k7 chg.interlock-b dir.COM gauge=16AWG insulation=105C
wire k8 dir.F ctrl.fwd gauge=16AWG insulation=105C
wire k9 dir.R ctrl.rev gauge=16AWG insulation=105C
wire k10 ctrl.coil-supply sol.coil+ gauge=16AWG insulation=105C
wire k11 ctrl.coil-driver sol.coil- gauge=16AWG insulation=105C
wire k12 ctrl.coil-supply brk.+ gauge=16AWG insulation=105C
wire k13 ctrl.brake-driver brk.- gauge=16AWG insulation=105C
wire k14 key.IGN disp.supply+ gauge=18AWG insulation=105C
wire k15 disp.supply- pack.NEG gauge=18AWG insulation=105C
wire k16 disp.CAN-H pack.CAN-H gauge=20AWG
wire k17 disp.CAN-L pack.CAN-L gauge=20AWG
wire k18 t1.CAN-H pack.CAN-H gauge=20AWG
wire k19 t1.CAN-L pack.CAN-L gauge=20AWG
wire k20 t2.CAN-H disp.CAN-H gauge=20AWG
wire k21 t2.CAN-L disp.CAN-L gauge=20AWG
wire p1 sol.L1 pre.a gauge=18AWG
wire p2 sol.L2 pre.b gauge=18AWG
wire r1 fu1.out fu4.in gauge=12AWG insulation=105C length=100mm
wire r2 fu4.out red.IN+ gauge=12AWG insulation=105C length=1m
wire r3 red.IN- pack.NEG gauge=12AWG insulation=105C length=1m
wire r4 key.IGN red.WAKE gauge=16AWG insulation=105C
wire a1 red.OUT+ fb.IN gauge=10AWG insulation=105C
wire a2 red.OUT- fb.NEG gauge=10AWG insulation=105C
wire a3 fb.1 sw.IN gauge=16AWG insulation=105C
wire a4 sw.OUT lt.+ gauge=16AWG insulation=105C
wire a5 lt.- fb.NEG1 gauge=16AWG insulation=105C
stack pack.NEG w4 c3 r3 k15
stack fu1.out w2 r1
stack sol.L1 w2 c2 k1 p1
stack sol.L2 w3 p2
at pack.POS cover=fitted
at fu1.in cover=fitted
`

// resistor is the oldest kind as found: 36 V, speed coils, no electronics, nothing fused,
// hardly anything recorded.
const resistor = `
job system=36V
part b1 lead-battery-6v
part b2 lead-battery-6v
part b3 lead-battery-6v
part b4 lead-battery-6v
part b5 lead-battery-6v
part b6 lead-battery-6v
part sol contactor-36v
part wiper wiper-switch
part res resistor-bank
part motor motor-series
part dir direction-rotary
part key key-switch
part pedal pedal-switch
part rec receptacle charge-voltage=44V voltage=36V
part buz buzzer voltage=36V
wire j1 b1.+ b2.-
wire j2 b2.+ b3.-
wire j3 b3.+ b4.-
wire j4 b4.+ b5.-
wire j5 b5.+ b6.-
wire a1 b6.+ sol.L1 gauge=6AWG
wire a2 sol.L2 wiper.ARM gauge=6AWG
wire a3 wiper.C1 res.T1 gauge=6AWG
wire a4 wiper.C2 res.T2 gauge=6AWG
wire a5 wiper.C3 res.T3 gauge=6AWG
wire a6 wiper.C4 res.T4 gauge=6AWG
wire a7 wiper.C5 res.OUT gauge=6AWG
wire a8 res.OUT motor.A1 gauge=6AWG
wire a9 motor.A2 dir.X1 gauge=6AWG
wire a10 dir.S1 motor.S1 gauge=6AWG
wire a11 dir.S2 motor.S2 gauge=6AWG
wire a12 dir.X2 b1.- gauge=6AWG
wire k1 b6.+ key.BAT
wire k2 key.IGN dir.micro-com
wire k3 dir.micro-no pedal.COM
wire k4 pedal.NO sol.coil+
wire k5 sol.coil- b1.-
wire k6 key.IGN dir.rev-com
wire k7 dir.rev-no buz.+
wire k8 buz.- b1.-
wire c1 rec.+ b6.+
wire c2 rec.- b1.-
wire x1 b6.+ untraced
`

// computer is a lead cart with an on-board charge computer as found, fused by a
// technician before us.
const computer = `
part b1 lead-battery-12v
part b2 lead-battery-12v
part b3 lead-battery-12v
part b4 lead-battery-12v
part fm fuse-class-t fuse-rating=225A
part comp charge-computer-return
part sol contactor-48v
part ctrl controller-series
part fu3 fuse-cartridge fuse-rating=10A
part fus fuse-cartridge fuse-rating=3A
part key key-switch
part rec receptacle
wire j1 b1.+ b2.- gauge=4AWG
wire j2 b2.+ b3.- gauge=4AWG
wire j3 b3.+ b4.- gauge=4AWG
wire w1 b4.+ fm.in gauge=4AWG insulation=105C length=6in
wire w2 fm.out sol.L1 gauge=4AWG insulation=105C
wire w3 sol.L2 ctrl.B+ gauge=4AWG insulation=105C
wire w4 ctrl.B- comp.NEG-CART gauge=4AWG insulation=105C
wire w5 comp.NEG-PACK b1.- gauge=4AWG insulation=105C
wire c1 rec.+ sol.L1 gauge=10AWG insulation=105C
wire c2 rec.- comp.NEG-CART gauge=10AWG insulation=105C
wire c3 rec.sense fus.in gauge=16AWG
wire c4 fus.out comp.sense gauge=16AWG
wire k1 sol.L1 fu3.in gauge=16AWG length=100mm
wire k2 fu3.out key.BAT gauge=16AWG
wire k3 key.IGN sol.coil+ gauge=16AWG
wire k4 sol.coil- comp.lockout-a gauge=16AWG
wire k5 comp.lockout-b b1.- gauge=16AWG
wire k6 key.IGN ctrl.KSI gauge=16AWG
wire k7 fu3.out comp.supply gauge=16AWG
stack sol.L1 w2 c1 k1
stack comp.NEG-CART w4 c2
stack b1.- w5 k5
at b1.+ cover=fitted
at b2.- cover=fitted
at b2.+ cover=fitted
at b3.- cover=fitted
at b3.+ cover=fitted
at b4.- cover=fitted
at b4.+ cover=fitted
at fm.in cover=fitted
`

// unproven is the note on fuses whose maker's curve is not recorded.
func unproven(fuses string) string {
	return "note device-too-slow: the maker's time-current curve of " + fuses + " is not recorded; it decides whether a short is off before the wires behind are too hot"
}

// TestPlannedCartsOfEveryDrive: what is said of carts as they should be is true of each.
func TestPlannedCartsOfEveryDrive(t *testing.T) {
	for _, cart := range []struct {
		name, text string
		want       []string
	}{
		{"series", lithium, []string{unproven("fu1, fu3, fu2, fu4, fu5 and fu6")}},
		{"ac72", ac72, []string{unproven("fu1, fu3, fu2 and fu4"), "note reverse-warning: nothing on the sheet sounds or lights in reverse"}},
		{"sepex", sepex, []string{ // its logic is fed with the key off
			"caution stand-by-drain: at rest pack gives 100 mA and its usable 80 Ah are gone after 33.3 days, ctrl 80 mA, pack 15 mA",
			unproven("fu1, fu3 and fu2"),
		}},
		{"isolated", isolated, []string{ // the reducer is always awake
			"caution branch-unfused: usb and out share red without a fuse of their own: what shorts in one of them takes all down",
			"caution stand-by-drain: at rest pack gives 2.02 A and its usable 80 Ah are gone after 1.65 days, out 1.1 A, usb 663 mA, red 228 mA; what may have a switch of its own is taken as on",
			unproven("fu1"),
		}},
		{"least", direct, []string{
			"caution pre-charge: before ctrl: no pre-charge: sol closes on an empty capacitor with 3096 A, for about 86.1 us; the contact pits and may weld; the library's typical figure decides: read the label",
			"caution coil-suppression: nothing takes the kick of the coil of sol",
			unproven("fu1 and fu3"),
		}},
	} {
		t.Run(cart.name, func(t *testing.T) {
			require.Equal(t, cart.want, lines(check(t, cart.text)))
		})
	}
}

func TestCartsAsFoundGetWhatTheyDeserve(t *testing.T) {
	for _, cart := range []struct {
		name, text string
		want       []string
	}{
		{"series", lead, []string{
			"danger no-main-fuse: nothing protects w1 and w2: no fuse or breaker between b8.+ and ctrl.B+; a short there draws about 2500 A at full charge",
			"caution fuse-interrupting: 10 A fuse fu3 breaks 1000 A; a short right behind it drives about 2300 A at full charge (charging); the library's typical figure decides: read the label",
			"danger tap-unfused: c1, 10 AWG, takes b8.+ to rec.+ with no fuse or breaker from b8.+ on",
			"danger drives-unasked: it drives with the charger plugged in (key on, direction forward and pedal down): no contact on the sheet follows the charge plug",
			"caution wire-too-thin: j1, 4 AWG, warms to 225 C with 400 A for 30 s and then 150 A for an hour (drive-reverse); the best insulation stands 200 C; too hot as well: j2, j3, j4, j5, j6, j7 and 5 more; taken: ctrl peaks for 30 s, ctrl continuous current of 150 A, ctrl peak current of 400 A; the library's typical figure decides: read the label",
			"caution wire-too-thin: w1, 4 AWG, warms to 154 C with 400 A for 30 s and then 150 A for an hour (drive-reverse); its insulation stands 105 C; too hot as well: w2 and w3; taken: ctrl peaks for 30 s, ctrl continuous current of 150 A, ctrl peak current of 400 A; the library's typical figure decides: read the label",
			"caution pre-charge: before ctrl: no pre-charge: sol closes on an empty capacitor with 1465 A, for about 173 us; the contact pits and may weld; the library's typical figure decides: read the label",
			"caution coil-suppression: nothing takes the kick of the coil of sol",
			unproven("fu3"),
			"note drop-too-high: the length of w1, j7, j4, j1, j6, j5 and 9 more is not recorded; it decides whether too much voltage is lost on the way to a load",
			"note stud-cover: the cover of b1.+, b2.+, b2.-, b3.+, b3.-, b4.+ and 9 more is not recorded; it decides whether a dropped tool can short the pack ahead of its fuse",
		}},
		{"resistor", resistor, []string{
			"danger no-main-fuse: nothing protects a1, a2, a3, a4, a5, a6 and 5 more: no fuse or breaker between b6.+ and motor.S2; a short there draws about 2500 A at full charge",
			"danger tap-unfused: c1 takes b6.+ to rec.+ with no fuse or breaker from b6.+ on",
			"danger tap-unfused: k1 takes b6.+ to key.BAT with no fuse or breaker from b6.+ on; nor have k2, k6, k3, k7 and k4 behind it",
			"danger drives-unasked: it drives with the charger plugged in (key on, direction forward and pedal down): no contact on the sheet follows the charge plug",
			"caution coil-suppression: nothing takes the kick of the coil of sol",
			"caution untraced-end-live: the untraced end of x1 can be joined to b6.+: it is live",
			"note drop-too-high: the gauge of j5, j2, j4, j3, j1, k1 and 4 more is not recorded; it decides whether too much voltage is lost on the way to a load",
			"note drop-too-high: the length of j5, j2, j4, j3, j1, k1 and 4 more is not recorded; it decides whether too much voltage is lost on the way to a load",
			"note stack-order: the order of the lugs of b1.- is not recorded; it decides whether the largest touches the terminal",
			"note stack-order: the order of the lugs of b6.+ is not recorded; it decides whether the largest touches the terminal",
			"note stud-cover: the cover of b1.+, b2.+, b2.-, b3.+, b3.-, b4.+ and 7 more is not recorded; it decides whether a dropped tool can short the pack ahead of its fuse",
		}},
		{"computer", computer, []string{
			"danger fuse-too-large: c1, 10 AWG, goes on from w2, 4 AWG, at sol.L1 without a smaller fuse: 225 A fuse fm protects it, and it carries 60 A at 105 C insulation",
			"caution pre-charge: before ctrl: no pre-charge: sol closes on an empty capacitor with 1579 A, for about 160 us; the contact pits and may weld; the library's typical figure decides: read the label",
			"caution coil-suppression: nothing takes the kick of the coil of sol",
			unproven("fm and fu3"),
		}},
	} {
		t.Run(cart.name, func(t *testing.T) {
			require.Equal(t, cart.want, lines(check(t, cart.text)))
		})
	}
}
