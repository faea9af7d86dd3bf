package size_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/state"
)

// drive is a small cart: 150 A of continuous and 400 A of peak current by the library's
// figures for its controller.
const drive = `
part pack lithium-pack-16
part fu1 fuse-class-t fuse-rating=300A
part sol contactor-48v
part ctrl controller-ac continuous-current=150A peak-current=350A
part fu3 fuse-inline-80v fuse-rating=10A
part key key-switch
part dir direction-rocker
part pedal pedal-switch
part motor motor-ac
wire w1 pack.POS fu1.in gauge=2AWG insulation=105C length=0.2m
wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C length=0.6m
wire w3 sol.L2 ctrl.B+ gauge=2AWG insulation=105C length=0.3m
wire w4 ctrl.B- pack.NEG gauge=35mm2 insulation=105C length=0.9m
wire w5 sol.L1 fu3.in gauge=16AWG insulation=105C length=0.1m
wire w6 fu3.out key.BAT gauge=16AWG insulation=105C
wire w7 key.IGN pedal.COM gauge=16AWG length=1m
wire w8 pedal.NO ctrl.foot gauge=18AWG length=1m
wire w9 key.IGN ctrl.KSI gauge=18AWG length=1m bundle=loom
wire w10 key.IGN dir.COM gauge=18AWG length=1m bundle=loom
wire w11 dir.F ctrl.fwd gauge=18AWG length=1m bundle=loom
wire w12 ctrl.coil-supply sol.coil+ gauge=18AWG length=1m bundle=loom
wire w13 ctrl.coil-driver sol.coil- gauge=18AWG length=1m bundle=loom
wire u ctrl.U motor.U gauge=2AWG insulation=105C length=0.5m
wire v ctrl.V motor.V insulation=105C length=0.5m
`

func surveyed(t *testing.T, text string) (*size.Survey, *model.Sheet) {
	t.Helper()
	job, err := mini.Job(text)
	require.NoError(t, err)
	require.Empty(t, job.Check(part.Library()))
	return size.Of(network.Build(job, &job.Sheets[0], part.Library())), &job.Sheets[0]
}

func wire(t *testing.T, s *model.Sheet, id model.WireID) *model.Wire {
	t.Helper()
	w := s.Wire(id)
	require.NotNil(t, w, id)
	return w
}

func TestTractionWireIsJudgedByItsDuty(t *testing.T) {
	s, sheet := surveyed(t, drive)
	require.Empty(t, s.Skipped())
	row := s.Row(wire(t, sheet, "w3"), size.Options{})
	require.False(t, row.Idle)
	require.InDelta(t, 150, row.Load.Amps, 0.01)
	require.Equal(t, "drive-forward", row.Load.State)
	require.Len(t, row.Load.Duty, 2)
	require.InDelta(t, 350, row.Load.Duty[0].Amps, 0.5, "the solved peak")
	require.InDelta(t, size.UsualPeakSeconds, row.Load.Duty[0].Seconds, 0)
	r := row.Choice.Required
	require.InDelta(t, 51.2, r.Volts, 1e-9)
	require.InDelta(t, 2.0, r.Loop, 1e-9, "w1 to w4 carry it one after the other but for the key's share")
	require.Equal(t, "ul-248-15-t", r.Opening.Name)
	require.Equal(t, []string{"ctrl peaks for 30 s", "ambient of 30 C", "a drop of 3 % at most"}, r.Assumed)
	require.InDelta(t, 400, row.Behind, 1e-9, "300 A of the fuse and 100 A that the drive gives back")
	// By hand: 150 A of 180 A warm 3 AWG to 82 C, and 30 s of 350 A with a time constant of
	// some four minutes by 28 C more: past 105 C. It carries the 150 A for ever.
	require.Equal(t, "2 AWG", row.Choice.Gauge.String())
	require.Equal(t, []size.Demand{size.ShortTime}, row.Choice.Decided)
	require.True(t, row.Present.Satisfies())
}

func TestMetricWireGetsAMetricAnswer(t *testing.T) {
	s, sheet := surveyed(t, drive)
	row := s.Row(wire(t, sheet, "w4"), size.Options{})
	require.Equal(t, size.Metric, row.Choice.Series)
	require.Equal(t, "35 mm2", row.Choice.Gauge.String())
	require.Equal(t, size.American, s.Row(wire(t, sheet, "w4"), size.Options{Series: size.American}).Choice.Series)
}

// The drive's own rating stands for what a computation with direct current does not tell.
func TestMotorPhaseGoesByTheDrivesRating(t *testing.T) {
	s, sheet := surveyed(t, drive)
	row := s.Row(wire(t, sheet, "u"), size.Options{})
	require.True(t, row.Load.Phase)
	require.InDelta(t, 400*150.0/350, row.Load.Amps, 1e-9, "phase current of the library, continuous share of the ratings")
	require.InDelta(t, 400, row.Load.Duty[0].Amps, 1e-9)
	require.Zero(t, row.Choice.Fuse.Rating.Amperes)
	_, asked := row.Present.Verdict(size.Fusing)
	require.False(t, asked)
	require.Zero(t, s.Row(wire(t, sheet, "v"), size.Options{}).Present.Gauge, "its gauge is not recorded")
}

func TestWhatIsNotRecordedIsAssumedAndSaid(t *testing.T) {
	s, sheet := surveyed(t, drive)
	row := s.Row(wire(t, sheet, "w6"), size.Options{})
	require.Contains(t, row.Choice.Required.Assumed, "1 of 8 lengths of 1 m")
	require.Contains(t, s.Row(wire(t, sheet, "w9"), size.Options{}).Choice.Required.Assumed, "insulation of 105 C")
	require.True(t, s.Row(wire(t, sheet, "w11"), size.Options{}).Idle, "an input takes next to nothing")
	coil := s.Row(wire(t, sheet, "w12"), size.Options{})
	require.Equal(t, 5, coil.Choice.Required.Bundle)
	require.Equal(t, "18 AWG", coil.Choice.Gauge.String(), "a loom counts as a sheath")
}

// A diode the wrong way round shorts the supply of its coil once the pump switch is on:
// the current of a short circuit is nothing to size wires for.
func TestAShortIsNoLoad(t *testing.T) {
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		decoded, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for i := range decoded.Job.Sheets {
			sheet := &decoded.Job.Sheets[i]
			s := size.Of(network.Build(decoded.Job, sheet, part.Library()))
			if name == "greenhouse-tug" && sheet.Name == model.AsFound {
				require.Contains(t, s.Skipped()[0], "key-on, all on: dio2 carries 144 A, a short circuit and no load")
				require.Less(t, s.Row(wire(t, sheet, "k1"), size.Options{}).Load.Amps, 1.0)
			} else {
				require.Empty(t, s.Skipped(), name)
			}
			for _, row := range s.Rows(size.Options{}) {
				require.False(t, math.IsNaN(row.Load.Amps))
				require.Empty(t, row.Missing)
				if !row.Idle {
					require.True(t, !row.Choice.Gauge.IsZero() || row.Choice.Why != "", "%s %s", name, row.Wire.ID)
				}
			}
		}
	}
}

// Eight 6 V jumpers of a string belong to its 48 V circuit, not to the 6 V below them.
func TestJumperBelongsToItsString(t *testing.T) {
	s, sheet := surveyed(t, `
part b1 lead-battery-6v
part b2 lead-battery-6v
part fu fuse-class-t fuse-rating=100A
part key switch
part lt lamp-12v
wire j b1.+ b2.- gauge=6AWG insulation=105C length=0.3m
wire p b2.+ fu.in gauge=14AWG insulation=105C length=0.5m
wire q fu.out key.IN gauge=14AWG insulation=105C length=0.5m
wire r key.OUT lt.+ gauge=14AWG insulation=105C length=1m
wire n lt.- b1.- gauge=14AWG insulation=105C length=1.5m
job system=12V
`)
	row := s.Row(wire(t, sheet, "j"), size.Options{})
	require.InDelta(t, 12, row.Choice.Required.Volts, 1e-9)
	require.InDelta(t, 3.8, row.Choice.Required.Loop, 1e-9, "all five, round")
	require.Equal(t, "parked, all on", row.Load.State, "its switch is one that no state depends on")
}

// Kirchhoff: what the pieces lose and what is left at the load are what the source gives.
// By hand: 2.000 A through 14 AWG of 8.44 mohm per metre (1.02 x 8.285 at 20 C, ASTM B258 and
// IEC 60028), 1 m out with a corroded joint of 10 mohm and 1.5 m back, good joints 0.1 mohm.
func TestDropPieceByPiece(t *testing.T) {
	job, err := mini.Job(`
part b1 lead-battery-12v
part key switch
part lt lamp-12v current=2A
wire q b1.+ key.IN gauge=14AWG insulation=105C length=0.5m
wire r key.OUT lt.+ gauge=14AWG insulation=105C length=1m
wire n lt.- b1.- gauge=14AWG insulation=105C length=1.5m
at lt.+ condition=corroded
job system=12V
`)
	require.NoError(t, err)
	s := size.Of(network.Build(job, &job.Sheets[0], part.Library()))
	drops := s.Drops()
	require.Len(t, drops, 1)
	d := drops[0]
	require.Equal(t, model.PartID("lt"), d.Part)
	volts := map[string]float64{}
	sum := 0.0
	for _, p := range d.Pieces {
		volts[p.What] = p.Volts
		sum += p.Volts
		require.Equal(t, p.What == "the copper of n" || p.What == "the joint of n on lt.-" || p.What == "the joint of n on b1.-", p.Return)
		require.InDelta(t, p.Volts*d.Amps, p.Watts(), 1e-9)
	}
	require.InDelta(t, sum, d.Lost, 1e-12)
	require.InDelta(t, d.Lost/12, d.Share, 1e-12)
	require.InDelta(t, d.Amps*8.45e-3*1.5, volts["the copper of n"], d.Amps*0.02e-3)
	require.InDelta(t, d.Amps*10e-3, volts["the joint of r on lt.+"], 1e-9)
	require.InDelta(t, d.Amps*0.1e-3, volts["the joint of n on b1.-"], 1e-9)
	require.Contains(t, volts, "the contact of key")
	n := network.Build(job, &job.Sheets[0], part.Library())
	solved, err := n.Solve(stateNamed(t, n, d.State))
	require.NoError(t, err)
	battery, _ := solved.Between(model.TerminalRef{Part: "b1", Name: "+"}, model.TerminalRef{Part: "b1", Name: "-"})
	require.InDelta(t, battery, d.Volts+d.Lost, 1e-9)
}

// stateNamed is the state of that name, with everything on if it says so.
func stateNamed(t *testing.T, n *network.Network, name string) state.State {
	t.Helper()
	plain, _ := strings.CutSuffix(name, ", all on")
	at, ok := state.Find(n.States(), plain)
	require.True(t, ok, name)
	return at.With(model.OtherSwitch, "on")
}

// On every cart the pieces, the inner drop of the sources and the load balance: no load
// has more than its source, and none loses less than nothing.
func TestDropsOfTheCarts(t *testing.T) {
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		decoded, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for i := range decoded.Job.Sheets {
			drops := size.Of(network.Build(decoded.Job, &decoded.Job.Sheets[i], part.Library())).Drops()
			require.NotEmpty(t, drops)
			for _, d := range drops {
				require.Positive(t, d.Lost)
				for k, p := range d.Pieces {
					require.GreaterOrEqual(t, p.Volts, -1e-9, p.What)
					if k > 0 {
						require.LessOrEqual(t, p.Volts, d.Pieces[k-1].Volts)
					}
				}
			}
		}
	}
}
