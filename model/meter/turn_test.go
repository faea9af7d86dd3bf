package meter_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/state"
)

// planned is the plan of a worked cart with some changes.
func planned(t *testing.T, name string, changes ...func(*model.Sheet)) *network.Network {
	t.Helper()
	data, err := cart.Read(name)
	require.NoError(t, err)
	d, problems := jobfile.Decode(name, data, part.Library())
	require.Empty(t, problems)
	s := d.Job.Sheet(model.Plan)
	for _, change := range changes {
		change(s)
	}
	return network.Build(d.Job, s, part.Library())
}

// gone takes away the wires between two terminals.
func gone(a, b string) func(*model.Sheet) {
	return func(s *model.Sheet) {
		before := len(s.Wires)
		s.Wires = slices.DeleteFunc(s.Wires, func(w model.Wire) bool {
			from, to := w.From.String(), w.To.String()
			return from == a && to == b || from == b && to == a
		})
		if len(s.Wires) == before {
			panic("no wire between " + a + " and " + b)
		}
	}
}

// hidden lets the wire between two terminals go out of sight.
func hidden(a, b string) func(*model.Sheet) {
	return func(s *model.Sheet) {
		for i := range s.Wires {
			w := &s.Wires[i]
			if from, to := w.From.String(), w.To.String(); from == a && to == b || from == b && to == a {
				w.To = model.LooseEnd(model.Untraced)
				return
			}
		}
		panic("no wire between " + a + " and " + b)
	}
}

// without takes away a part with its wires.
func without(id model.PartID) func(*model.Sheet) {
	return func(s *model.Sheet) {
		s.Parts = slices.DeleteFunc(s.Parts, func(p model.Part) bool { return p.ID == id })
		s.Wires = slices.DeleteFunc(s.Wires, func(w model.Wire) bool { return w.From.At.Part == id || w.To.At.Part == id })
	}
}

// joined adds a cable between two terminals.
func joined(fromPart model.PartID, from string, toPart model.PartID, to string) func(*model.Sheet) {
	return func(s *model.Sheet) {
		s.Wires = append(s.Wires, model.Wire{ID: "bridge", From: model.On(fromPart, from), To: model.On(toPart, to)})
	}
}

// TestWhatKeepsAMotorFromTurning breaks the drive of the worked carts where the current
// that the controller asks for goes on.
func TestWhatKeepsAMotorFromTurning(t *testing.T) {
	for _, c := range []struct {
		name, cart string
		changes    []func(*model.Sheet)
		but        []string
	}{
		{"sepex, whole", "marina-shuttle", nil, nil},
		{"sepex, field lead off", "marina-shuttle", changes(gone("ctrl.F1", "motor.F1")), []string{"the field of motor carries none"}},
		{"sepex, field shorted", "marina-shuttle", changes(joined("motor", "F1", "motor", "F2")), []string{"the field of motor is shorted"}},
		{"sepex, armature shorted", "marina-shuttle", changes(joined("motor", "A1", "motor", "A2")), []string{"the armature of motor is shorted"}},
		{"sepex, motor not on the sheet", "marina-shuttle", changes(without("motor"), joined("ctrl", "B+", "ctrl", "M-")), nil},
		{"sepex, motor bypassed", "marina-shuttle", changes(gone("motor.A2", "ctrl.M-"), joined("ctrl", "B+", "ctrl", "M-")), []string{"the armature of motor carries none"}},
		{"series, whole", "greenhouse-tug", nil, nil},
		{"series, armature shorted", "greenhouse-tug", changes(joined("motor", "A1", "motor", "A2")), []string{"the armature of motor is shorted"}},
		{"phases, whole", "festival-bowser", nil, nil},
		{"phases, none", "festival-bowser", changes(gone("ctrl.U", "motor.U"), gone("ctrl.V", "motor.V"), gone("ctrl.W", "motor.W")),
			[]string{"no controller that takes it feeds the phases of motor"}},
		{"phases, one off", "festival-bowser", changes(gone("ctrl.W", "motor.W")), []string{"no output of ctrl reaches W of motor"}},
		{"phases, two joined", "festival-bowser", changes(joined("motor", "U", "motor", "V")), []string{"phases between ctrl and motor are joined to each other"}},
		{"phases, one out of sight", "festival-bowser", changes(hidden("ctrl.W", "motor.W")), nil},
		{"phases, motor not on the sheet", "festival-bowser", changes(without("motor")), nil},
		{"brake, feed off", "festival-bowser", changes(gone("ctrl.coil-supply", "brk.+")), []string{"brake brk is not released: its coil is not fed"}},
		{"brake, return off", "festival-bowser", changes(gone("ctrl.brake-driver", "brk.-")), []string{"brake brk is not released: its coil is not fed"}},
		{"brake, return out of sight", "festival-bowser", changes(hidden("ctrl.brake-driver", "brk.-")), nil},
		{"brake not on the sheet", "festival-bowser", changes(without("brk")), nil},
		{"no encoder", "festival-bowser", changes(without("enc"), without("temp")), nil},
		{"throttle, wiper off", "festival-bowser", changes(gone("thr.wiper", "ctrl.throttle-wiper")), []string{"the leads of the throttle at ctrl are open or joined to each other"}},
		{"throttle, high end off", "festival-bowser", changes(gone("thr.high", "ctrl.throttle-high")), []string{"the leads of the throttle at ctrl are open or joined to each other"}},
		{"throttle, wiper out of sight", "festival-bowser", changes(hidden("thr.wiper", "ctrl.throttle-wiper")), nil},
		{"throttle not on the sheet", "festival-bowser", changes(without("thr")), nil},
		{"two faults", "festival-bowser", changes(gone("ctrl.W", "motor.W"), gone("ctrl.brake-driver", "brk.-")),
			[]string{"no output of ctrl reaches W of motor", "brake brk is not released: its coil is not fed"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			n := planned(t, c.cart, c.changes...)
			for _, name := range []string{state.DriveForward, state.DriveReverse} {
				s, err := n.Solve(stateOf(t, n, name))
				require.NoError(t, err)
				m := meter.Moves(n, s)
				require.True(t, m.Asks, name)
				require.Equal(t, c.but, m.But, name)
				require.Equal(t, len(c.but) == 0, m.Drives, name)
				require.Equal(t, m.Drives, m.Satisfied, name)
			}
			parked, err := n.Solve(stateOf(t, n, state.Parked))
			require.NoError(t, err)
			require.Equal(t, meter.Motion{Must: meter.Stay, Satisfied: true}, meter.Moves(n, parked))
		})
	}
}

func changes(list ...func(*model.Sheet)) []func(*model.Sheet) { return list }

// TestATwoWireThrottle: the pins of a series controller need a lead each; where something
// else than a potentiometer is wired, nothing is said.
func TestATwoWireThrottle(t *testing.T) {
	throttle := "part thr throttle-2wire\n"
	first, second := "wire t1 thr.a ctrl.2 gauge=20AWG length=1m\n", "wire t2 thr.b ctrl.3 gauge=20AWG length=1m\n"
	for name, c := range map[string]struct {
		more   string
		drives bool
	}{
		"both leads":               {throttle + first + second, true},
		"one lead":                 {throttle + first, false},
		"the other":                {throttle + second, false},
		"no lead":                  {throttle, false},
		"no throttle":              {"", true},
		"leads joined":             {throttle + first + second + "wire t3 thr.a thr.b gauge=20AWG length=1m\n", false},
		"through a connector":      {throttle + "part con connector-2\nwire t1 thr.a con.1a gauge=20AWG\n" + "wire t3 con.1b ctrl.2 gauge=20AWG\n" + second, true},
		"one lead out of sight":    {throttle + first + "wire t2 ctrl.3 untraced gauge=20AWG\n", true},
		"a track of three leads":   {"part thr throttle-3wire\nwire t1 thr.wiper ctrl.2 gauge=20AWG\nwire t2 thr.low ctrl.3 gauge=20AWG\n", true},
		"a sensor of some voltage": {throttle + "part spd speed-sensor\nwire t1 spd.supply+ ctrl.2 gauge=20AWG\n", true},
	} {
		t.Run(name, func(t *testing.T) {
			n := build(t, variant("V1")+"\n"+c.more)
			s, err := n.Solve(stateOf(t, n, state.DriveForward))
			require.NoError(t, err)
			m := meter.Moves(n, s)
			require.True(t, m.Asks)
			require.Equal(t, c.drives, m.Drives, "%q", m.But)
		})
	}
}

// TestAskingIsABreachThoughTheMotorCannotTurn: the charger's interlock is bridged, and the
// field is cut. Mending the field would set the cart free.
func TestAskingIsABreachThoughTheMotorCannotTurn(t *testing.T) {
	n := planned(t, "marina-shuttle", gone("ctrl.F1", "motor.F1"), joined("key", "IGN", "ctrl", "KSI"))
	table, err := meter.Tabulate(n, n.States())
	require.NoError(t, err)
	require.Contains(t, table.Breaches(),
		"charging-key-on-pedal-down: it asks for current and must not (charger plugged in, key on, forward, pedal down), but the field of motor carries none")
	require.Contains(t, table.Breaches(),
		"drive-forward: it must drive and does not (key on, forward, pedal down): it asks for current, but the field of motor carries none")
}

func TestWhatItIsJudgedBy(t *testing.T) {
	for name, want := range map[string]string{
		"marina-shuttle":  "Whether it moves is judged by armature and field current and throttle leads only, not by sensors.",
		"festival-bowser": "Whether it moves is judged by phase leads, throttle leads and brake feed only, not by sensors.",
	} {
		require.Equal(t, want, meter.JudgedBy(planned(t, name)), name)
	}
	require.Empty(t, meter.JudgedBy(build(t, divider)))
	require.Contains(t, meter.JudgedBy(planned(t, "festival-bowser", without("motor"))), "the controller's current alone, without a motor")
}
