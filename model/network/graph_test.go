package network_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

func TestStringsCountUpFromTheLowEnd(t *testing.T) {
	n := build(t, four6)
	list := n.Strings()
	require.Len(t, list, 1)
	s := list[0]
	require.Equal(t, node(t, n, "b1.-"), s.Low)
	require.Equal(t, node(t, n, "b4.+"), s.High)
	require.InDelta(t, 4*6.32, s.Volts, 1e-9, "rest voltage of the library")
	for i, want := range []model.PartID{"b1", "b2", "b3", "b4"} {
		require.Equal(t, want, s.Cells[i].Link.Part.ID)
		require.False(t, s.Cells[i].Reversed)
	}
	low, high, ok := n.Poles()
	require.True(t, ok)
	require.Equal(t, []network.Node{s.Low, s.High}, []network.Node{low, high})
}

func TestStringsMarkAReversedBatteryWhereverItStands(t *testing.T) {
	for _, tt := range []struct{ name, wires, reversed string }{
		{"inside", "wire j1 b1.+ b2.+\nwire j2 b2.- b3.-\nwire j3 b3.+ b4.-", "b2"},
		{"at the high end", "wire j1 b1.+ b2.-\nwire j2 b2.+ b3.-\nwire j3 b3.+ b4.+", "b4"},
		{"at the low end", "wire j1 b1.- b2.-\nwire j2 b2.+ b3.-\nwire j3 b3.+ b4.-", "b1"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			n := build(t, "part b1 lead-battery-6v\npart b2 lead-battery-6v\npart b3 lead-battery-6v\npart b4 lead-battery-6v\n"+tt.wires)
			s := n.Strings()
			require.Len(t, s, 1)
			require.InDelta(t, 2*6.32, s[0].Volts, 1e-9)
			for _, c := range s[0].Cells {
				require.Equal(t, string(c.Link.Part.ID) == tt.reversed, c.Reversed, "%s", c.Link.Part.ID)
			}
		})
	}
}

func TestParallelPacksAreTwoStrings(t *testing.T) {
	n := build(t, `
		part p1 lithium-pack-16
		part p2 lithium-pack-16
		part f1 fuse-class-t
		wire a p1.POS f1.in
		wire b f1.out p2.POS
		wire c p1.NEG p2.NEG`)
	list := n.Strings()
	require.Len(t, list, 2)
	for _, s := range list {
		require.Len(t, s.Cells, 1)
		require.False(t, s.Cells[0].Reversed)
		require.InDelta(t, 53.3, s.Volts, 1e-9)
	}
}

func TestTwoStringsOfFourInParallel(t *testing.T) {
	n := build(t, `
		part a1 lead-battery-12v
		part a2 lead-battery-12v
		part b1 lead-battery-12v
		part b2 lead-battery-12v
		wire j1 a1.+ a2.-
		wire j2 b1.+ b2.-
		wire p a2.+ b2.+
		wire n a1.- b1.-`)
	list := n.Strings()
	require.Len(t, list, 2)
	for _, s := range list {
		require.Len(t, s.Cells, 2)
		require.False(t, s.Cells[0].Reversed || s.Cells[1].Reversed)
	}
}

func TestReversedBatteryInOneOfTwoParallelStrings(t *testing.T) {
	n := build(t, `
		part a1 lead-battery-12v
		part a2 lead-battery-12v
		part a3 lead-battery-12v
		part b1 lead-battery-12v
		part b2 lead-battery-12v
		part b3 lead-battery-12v
		part buz buzzer
		wire j1 a1.+ a2.-
		wire j2 a2.+ a3.-
		wire j3 b1.+ b2.+
		wire j4 b2.- b3.-
		wire p a3.+ b3.+
		wire n a1.- b1.-
		wire x a3.+ buz.+
		wire y b1.- buz.-`)
	var reversed []model.PartID
	list := n.Strings()
	require.Len(t, list, 2)
	for _, s := range list {
		require.Len(t, s.Cells, 3)
		for _, c := range s.Cells {
			if c.Reversed {
				reversed = append(reversed, c.Link.Part.ID)
			}
		}
	}
	require.Equal(t, []model.PartID{"b2"}, reversed)
}

func TestShortedBatteryIsFound(t *testing.T) {
	n := build(t, "part b1 lead-battery-6v\npart sp splice\nwire a b1.+ sp.J\nwire b sp.J b1.-")
	require.Len(t, n.Shorted(), 1)
	require.Empty(t, n.Strings())
}

func TestSidesFollowEverythingThatCanClose(t *testing.T) {
	n := build(t, plan)
	low, high, _ := n.Poles()
	sides := n.SidesOf(high, low)
	for at, want := range map[string]network.Side{
		"pack.POS": network.Plus, "fu1.in": network.Plus, "sol.L1": network.Plus, "sol.L2": network.Plus, "ctrl.B+": network.Plus,
		"key.IGN": network.Plus, "pedal.NO": network.Plus, "sol.coil+": network.Plus, "ctrl.KSI": network.Plus,
		"sol.coil-": network.Minus, "ctrl.B-": network.Minus, "pack.NEG": network.Minus,
		"ctrl.M-": network.Neither, "ctrl.2": network.Neither, "pack.wake": network.Neither,
	} {
		require.Equal(t, want, sides.Of(node(t, n, at)), at)
	}
	require.Equal(t, network.Plus, sides.Across(node(t, n, "ctrl.B+"), node(t, n, "ctrl.B-")))
	require.Equal(t, network.Minus, sides.Across(node(t, n, "dio.anode"), node(t, n, "dio.cathode")))
}

func TestLeadInStopsAtTheMainFuse(t *testing.T) {
	n := build(t, plan)
	p := n.Protect()
	require.True(t, p.Feeds[0].Whole)
	lead := p.Entries()[0].Lead
	require.Empty(t, lead.Open)
	require.Equal(t, []*network.Link{n.WireLink("w1")}, lead.Leading)
	require.Len(t, lead.Devices, 1)
	require.Equal(t, model.PartID("fu1"), lead.Devices[0].Device.Part.ID)
	require.Equal(t, []*network.Link{n.WireLink("w1")}, lead.Devices[0].Path)
	require.InDelta(t, 0.15, lead.Reach.Metres(lead.Devices[0].At), 1e-9)
}

func TestLeadInNamesWhatIsNotBehindADevice(t *testing.T) {
	n := build(t, plan+"part vm voltmeter\nwire x1 pack.POS vm.+\nwire x2 vm.- pack.NEG\n")
	lead := n.Protect().Entries()[0].Lead
	require.Len(t, lead.Open, 1)
	require.Equal(t, model.WireID("x1"), lead.Open[0].Wire.ID)
}

func TestExposureIsTheRatingOfWhatOpensFirst(t *testing.T) {
	n := build(t, plan)
	p := n.Protect()
	for wire, want := range map[model.WireID]float64{
		"w1": math.Inf(1), "w2": 200, "w3": 200, "w5": 200, "w6": 10, "w9": 10, "w4": 0, "w10": 0,
	} {
		require.Equal(t, want, p.Exposure(n.WireLink(wire)).Amps, "%s", wire)
	}
	require.Equal(t, model.PartID("fu3"), p.Exposure(n.WireLink("w7")).Limits[0].Part.ID)
}

func TestParallelFeedsAddAndSeriesDevicesTakeTheLeast(t *testing.T) {
	n := build(t, `
		part pack lithium-pack-16
		part f1 fuse-class-t fuse-rating=40A
		part f2 fuse-class-t fuse-rating=30A
		part f3 fuse-class-t fuse-rating=50A
		part bus bus-bar-4
		part load pump-motor
		wire a pack.POS f1.in
		wire b pack.POS f2.in
		wire c f1.out bus.1
		wire d f2.out bus.2
		wire e bus.3 f3.in
		wire f f3.out load.+
		wire g load.- pack.NEG`)
	p := n.Protect()
	require.Equal(t, 70.0, p.Exposure(n.WireLink("e")).Amps)
	require.Equal(t, 50.0, p.Exposure(n.WireLink("f")).Amps)
	require.Equal(t, 70.0, p.Exposure(n.WireLink("c")).Amps, "an upper bound for the metal it is part of")
	require.Equal(t, 40.0, p.Exact(n.WireLink("c")).Amps, "a fault at one end is fed through the other")
	require.Len(t, p.Exposure(n.WireLink("e")).Limits, 2)
}

func TestEntriesKnowFromWhichSideTheyAreFed(t *testing.T) {
	n := build(t, plan+`
		part chg charger-onboard-48v charge-current=18A
		part fu2 fuse-cartridge fuse-rating=40A
		wire c1 chg.DC+ fu2.in
		wire c2 fu2.out sol.L1
		wire c3 chg.DC- pack.NEG`)
	type entry struct {
		at   string
		amps float64
	}
	var got []entry
	for _, e := range n.Protect().Entries() {
		got = append(got, entry{n.Point(e.At).String(), e.Amps})
	}
	require.Equal(t, []entry{
		{"pack.POS", math.Inf(1)}, {"chg.DC+", 18},
		{"fu1.out", 200}, {"fu1.in", 18}, {"fu3.out", 10}, {"fu2.out", 18}, {"fu2.in", 40},
	}, got)
	for _, e := range n.Protect().Entries() {
		if n.Point(e.At).String() == "fu1.out" {
			require.Contains(t, e.Lead.Leading, n.WireLink("w5"), "leads to the control fuse alone")
			require.Contains(t, e.Lead.Leading, n.WireLink("c2"), "leads to the charge fuse alone")
			require.Contains(t, e.Lead.Open, n.WireLink("w3"))
		}
	}
}

func TestChargerLimitsItself(t *testing.T) {
	n := build(t, plan+`
		part chg charger-onboard-48v charge-current=18A
		part fu2 fuse-cartridge fuse-rating=40A
		wire c1 chg.DC+ fu2.in
		wire c2 fu2.out sol.L1
		wire c3 chg.DC- pack.NEG`)
	e := n.Protect().Exact(n.WireLink("c1"))
	require.Equal(t, 40.0, e.Amps, "40 A from the pack or 18 A from the charger, for a fault at the far end")
	require.Equal(t, 58.0, n.Protect().Exposure(n.WireLink("c1")).Amps)
}

func TestFuseAtTheLowEndLimitsTheString(t *testing.T) {
	n := build(t, `
		part pack lithium-pack-16
		part f1 fuse-class-t fuse-rating=150A
		part load pump-motor
		wire a pack.POS load.+
		wire b pack.NEG f1.in
		wire c f1.out load.-`)
	e := n.Protect().Exposure(n.WireLink("a"))
	require.Equal(t, 150.0, e.Amps)
	require.Equal(t, model.PartID("f1"), e.Limits[0].Part.ID)
}

func TestLengthIsMeasuredElseByTheRuns(t *testing.T) {
	n := build(t, `
		run tray bay 0.8m
		run bay dash 1.4m
		part fu1 fuse-class-t zone=tray
		part key key-switch zone=bay
		wire a fu1.in key.BAT via=tray,bay,dash
		wire b fu1.in key.BAT length=200mm via=tray,bay
		wire c fu1.out key.IGN
		wire d fu1.out untraced`)
	for wire, want := range map[model.WireID]float64{"a": 2.2, "b": 0.2, "c": 0.8} {
		m, ok := n.Length(n.WireLink(wire).Wire)
		require.True(t, ok)
		require.InDelta(t, want, m, 1e-9)
	}
	_, ok := n.Length(n.WireLink("d").Wire)
	require.False(t, ok)
}

func TestLooseEndsAreNodesOfTheirOwn(t *testing.T) {
	n := build(t, "part b1 lead-battery-6v\nwire a b1.+ cut\nwire b b1.- capped")
	l := n.WireLink("a")
	require.Equal(t, "the cut end of a", n.Point(l.B).String())
	require.Equal(t, "b1.+", n.Point(l.A).String())
}

func TestLeadInGoesThroughAMotorWithoutController(t *testing.T) {
	n := build(t, `
		part b1 lead-battery-12v
		part sol contactor-36v
		part dir direction-rotary
		part motor motor-series
		wire w1 b1.+ sol.L1
		wire w2 sol.L2 motor.A1
		wire w3 motor.A2 dir.X1
		wire w4 dir.S1 motor.S1
		wire w5 dir.S2 motor.S2
		wire w6 dir.X2 b1.-
		wire w7 sol.L2 untraced`)
	var open []model.WireID
	for _, l := range n.Protect().Entries()[0].Lead.Open {
		open = append(open, l.Wire.ID)
	}
	require.ElementsMatch(t, []model.WireID{"w1", "w2", "w3", "w4", "w5"}, open, "both ways round the field, no return, no loose end")
}

func TestLeadInTellsARingFromALeadToADevice(t *testing.T) {
	n := build(t, `
		part pack lithium-pack-16
		part bus bus-bar-4
		part ring bus-post
		part fu fuse-class-t
		part vm voltmeter
		wire w1 pack.POS bus.1
		wire w2 bus.2 ring.POST
		wire w3 bus.3 ring.POST
		wire w4 ring.POST vm.+
		wire w5 bus.4 fu.in
		wire w6 vm.- pack.NEG`)
	lead := n.Protect().Entries()[0].Lead
	ids := func(links []*network.Link) (list []model.WireID) {
		for _, l := range links {
			list = append(list, l.Wire.ID)
		}
		return list
	}
	require.ElementsMatch(t, []model.WireID{"w1", "w2", "w3", "w4"}, ids(lead.Open))
	require.Equal(t, []model.WireID{"w5"}, ids(lead.Leading))
}
