package scene_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
)

func TestAStateMovesNothingAndSparesThePage(t *testing.T) {
	plain, before := scenetest.Cart(), scenetest.Cart()
	p := plain.In(scenetest.CartState())
	require.Equal(t, before, plain, "the page that it is painted on stays as it is")
	require.Empty(t, scene.Check(&p))
	require.Equal(t, "drive-forward", p.State)
	require.Equal(t, []string{"Shown: state drive-forward: key on, forward, pedal down.", plain.Title.Notes[0]}, p.Title.Remarks())
	for i, w := range p.Wires {
		require.Equal(t, plain.Wires[i].Path, w.Path)
		require.Equal(t, plain.Wires[i].Label, w.Label)
		require.Contains(t, w.Title, plain.Wires[i].Title+"; drive-forward: "+w.Flow.Energy.String())
	}
	for i, b := range p.Boxes {
		require.Equal(t, plain.Boxes[i].Rect, b.Rect)
		require.Equal(t, plain.Boxes[i].Ports, b.Ports)
	}
}

// Everything that a state says of a wire is in the drawing, or else in the legend.
func TestWhatHasNoRoomIsInTheLegend(t *testing.T) {
	p := scenetest.Cart().In(scenetest.CartState())
	legend := strings.Join(p.Legend, " ")
	for _, w := range p.Wires {
		if w.Flow.Carries() && w.Flow.Note.Text == "" {
			require.Contains(t, legend, w.ID+" "+w.Flow.Figure)
		}
		if w.Flow.Energy == scene.Unjudged && len(w.Flow.Arrows) == 0 {
			require.Contains(t, legend, w.ID+" not judged")
		}
	}
	require.Contains(t, legend, "w1 187 A to fu1.1", "between two boxes that stand close")
	require.Contains(t, legend, "w13 dead", "too short for its pattern")
	require.NotContains(t, legend, "w4 ")

	s := small()
	s.Boxes[0].ID = "abcdefgh"
	s.Wires[0].From, s.Wires[1].From = "abcdefgh.p", "abcdefgh.q"
	tight := s.In(scene.State{Name: "x", Parts: map[string]scene.Working{"abcdefgh": {Word: "NEUTRAL-PEDAL-DOWN", Active: true}}})
	require.Empty(t, scene.Check(&tight))
	require.Contains(t, strings.Join(tight.Legend, " "), "abcdefgh NEUTRAL-PEDAL-DOWN")
}

func TestTheWordOfAPartStandsInItsFrame(t *testing.T) {
	s := small()
	p := s.In(scene.State{Name: "x", Parts: map[string]scene.Working{"a": {Word: "open"}}})
	inside := scene.Inside(p.Boxes[0])
	i := slices.IndexFunc(inside.Writings, func(w scene.Writing) bool { return w.Role == scene.WorkWord })
	require.GreaterOrEqual(t, i, 0)
	require.Equal(t, " open ", inside.Writings[i].Text)
	require.Equal(t, p.Boxes[0].Rect.Bottom(), inside.Writings[i].At.Y)
	require.False(t, inside.Unsaid)
}

// An arrow goes along the path for a current that does, and against it for one that does not.
func TestArrowsGoTheWayOfTheCurrent(t *testing.T) {
	for _, amps := range []float64{5, -5} {
		s := small()
		p := s.In(scene.State{Name: "x", Wires: map[string]scene.Flow{"w1": {Energy: scene.Live, Amps: amps, Figure: "5 A"}}})
		require.Equal(t, "5 A", p.Wires[0].Flow.Note.Text)
		require.NotEmpty(t, p.Wires[0].Flow.Arrows)
		want := scene.East
		if amps < 0 {
			want = scene.West
		}
		for _, a := range p.Wires[0].Flow.Arrows {
			require.Equal(t, want, a.Way)
		}
	}
}
