package network_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
)

func TestTheReturnSideIsExposedToWhatStandsBeforeIt(t *testing.T) {
	n := build(t, motor)
	p := n.Protect()
	for wire, amps := range map[model.WireID]float64{
		"w4":  200, // the main negative, behind the main fuse and the controller
		"w10": 10,  // the coil's return, behind the control fuse
	} {
		e := p.Exact(n.WireLink(wire))
		require.Equal(t, amps, e.Amps, wire)
		require.Len(t, e.Limits, 1)
	}
	require.Greater(t, p.Exact(n.WireLink("w1")).Amps, 1e9, "nothing stands before the main fuse")
}

func TestABrakingDriveIsASource(t *testing.T) {
	const sepex = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=200A
part sol contactor-48v
part ctrl controller-sepex regeneration-current=80A
wire w1 pack.POS fu1.in gauge=2AWG length=150mm
wire w2 fu1.out sol.L1 gauge=2AWG length=600mm
wire w3 sol.L2 ctrl.B+ gauge=2AWG length=300mm
wire w4 ctrl.B- pack.NEG gauge=2AWG length=700mm
`
	n := build(t, sepex)
	p := n.Protect()
	require.Len(t, p.Regenerators, 1)
	e := p.Exact(n.WireLink("w2"))
	require.Equal(t, 200.0, e.Amps, "a fault at its far end is fed through the fuse alone; one at the near end by the drive")
	var drive bool
	for _, l := range p.Exposure(n.WireLink("w2")).Limits {
		drive = drive || l.Part.ID == "ctrl"
	}
	require.True(t, drive, "both together reach the metal that it is part of")
	require.Equal(t, 280.0, p.Exposure(n.WireLink("w2")).Amps)
}
