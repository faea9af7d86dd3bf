package part

import (
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
)

// joined lists the pairs of terminals that the contacts of a kind join in a position
// of its control, coils not fed.
func joined(d *model.Definition, position string) string {
	var pairs []string
	for _, e := range d.Elements {
		if e.Is != model.ContactElement || len(e.Fed) > 0 {
			continue
		}
		if slices.Contains(e.ClosedIn, position) || e.Rest == model.RestClosed {
			pairs = append(pairs, strings.Join(e.Between, ":"))
		}
	}
	sort.Strings(pairs)
	return strings.Join(pairs, " ")
}

func TestSwitchesJoinWhatTheyShould(t *testing.T) {
	for _, c := range []struct{ kind, position, want string }{
		{"direction-rotary", "forward", "X1:S1 X2:S2 micro-com:micro-no"},
		{"direction-rotary", "neutral", ""},
		{"direction-rotary", "reverse", "X1:S2 X2:S1 micro-com:micro-no rev-com:rev-no"},
		{"direction-rocker", "forward", "COM:F"},
		{"direction-rocker", "neutral", ""},
		{"direction-rocker", "reverse", "COM:R"},
		{"key-switch-acc", "on", "BAT:ACC BAT:IGN"},
		{"key-switch", "off", ""},
		{"pedal-switch", "up", "COM:NC"},
		{"pedal-switch", "down", "COM:NO"},
		{"throttle-2wire", "up", "a:b"},
		{"throttle-2wire", "down", ""},
		{"throttle-3wire", "down", "wiper:high"},
		{"tow-run", "run", "1:2"},
		{"tow-run", "tow", ""},
		{"wiper-switch", "up", ""},
		{"wiper-switch", "step-2", "ARM:C2"},
		{"wiper-switch", "down", "ARM:C5"},
		{"pedal-switch-steps", "step-3", "COM:P1 COM:P2 COM:P3"},
		{"pedal-switch-steps", "down", "COM:P1 COM:P2 COM:P3 COM:P4 COM:P5"},
		{"isolator", "closed", "in:out"},
		{"charger-onboard-48v", "no", "interlock-a:interlock-b"},
		{"charger-onboard-48v", "yes", ""},
		{"receptacle-interlock", "no", "interlock-a:interlock-b"},
		{"receptacle-interlock", "yes", ""},
		{"charge-computer-return", "no", "lockout-a:lockout-b"},
		{"charge-computer-return", "yes", "supply:lamp"},
		{"charge-computer-feed", "yes", "supply:lamp"},
		{"charge-computer-signal", "no", ""},
		{"charge-computer-signal", "yes", "supply:lamp supply:lockout"},
		{"ac-relay", "yes", "COM:NO"},
		{"ac-relay", "no", "COM:NC"},
		{"brake-switch", "down", "IN:OUT"},
		{"light-switch", "off", ""},
		{"relay", "", "30:87a"},
		{"reverse-contactor", "", "COM:NC"},
		{"contactor-48v", "", ""},
	} {
		require.Equal(t, c.want, joined(Library().Definition(c.kind), c.position), "%s in %s", c.kind, c.position)
	}
}

// States set controls by these words, so every kind that follows a control knows them.
func TestKindsFollowControlsByTheSameWords(t *testing.T) {
	positions := map[model.Control][]string{
		model.Key: {"off", "on"}, model.TowRun: {"tow", "run"}, model.Direction: {"forward", "neutral", "reverse"},
		model.Pedal: {"up", "down"}, model.PluggedIn: {"no", "yes"}, model.PackOn: {"off", "on"},
		model.LightSwitch: {"off", "on"}, model.HornButton: {"off", "on"}, model.Isolator: {"open", "closed"},
		model.BrakeSwitch: {"up", "down"}, model.OtherSwitch: {"off", "on"},
	}
	rests := map[model.Control]string{}
	for _, d := range Definitions() {
		if d.Control == nil {
			continue
		}
		for _, p := range positions[d.Control.Sets] {
			require.Contains(t, d.Control.Positions, p, d.Kind)
		}
		if before, known := rests[d.Control.Sets]; known && d.Control.Sets != model.OtherSwitch {
			require.Equal(t, before, d.Control.Rest, "%s rests unlike its sisters", d.Kind)
		}
		rests[d.Control.Sets] = d.Control.Rest
		require.True(t, slices.ContainsFunc(d.Elements, func(e model.Element) bool { return len(e.ClosedIn) > 0 }),
			"%s has a control that moves nothing", d.Kind)
	}
	require.Len(t, rests, len(positions), "a control that no kind has")
}

// The contactor of a driven cart closes only if every condition holds; the lock-out
// holds it open.
func TestControllersHoldTheContactorOnlyAsTheyShould(t *testing.T) {
	for _, c := range []struct {
		kind, element string
		fed           []string
		blocked       string
	}{
		{"controller-sepex", "coil-forward", []string{"logic", "KSI", "foot", "fwd"}, "lockout"},
		{"controller-sepex", "coil-reverse", []string{"logic", "KSI", "foot", "rev"}, "lockout"},
		{"controller-ac", "coil-driver", []string{"KSI"}, "inhibit"},
		{"controller-ac-72v", "coil-driver", []string{"KSI"}, "inhibit"},
	} {
		d := Library().Definition(c.kind)
		i := slices.IndexFunc(d.Elements, func(e model.Element) bool { return e.ID == c.element })
		require.GreaterOrEqual(t, i, 0, c.kind)
		e := d.Elements[i]
		require.Equal(t, []string{"coil-driver", "B-"}, e.Between, c.kind)
		require.Equal(t, c.fed, e.Fed, c.kind)
		require.Equal(t, []string{c.blocked}, e.Blocked, c.kind)
	}
}
