package scene_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
)

func TestSamplePagesHaveNoFaults(t *testing.T) {
	require.Empty(t, scene.Check(scenetest.Cart()))
	require.Empty(t, scene.Check(scenetest.Glyphs()))
}

// small is a page of two parts, one wire between them and a flag, without faults.
func small() *scenetest.Sketch {
	s := &scenetest.Sketch{Page: scene.Page{W: 60, H: 20}}
	s.Zones = []scene.Zone{{ID: "z", Rect: scene.Rect{X: 0, Y: 0, W: 20, H: 20}}}
	s.Box("a", "", "", scene.Rect{X: 4, Y: 4, W: 10, H: 6}, "E2 p", "E4 q", "W2 r")
	s.Box("b", "", "", scene.Rect{X: 40, Y: 4, W: 10, H: 6}, "W2 p", "W4 q")
	s.Flag("f", scene.Cut, "cut", scene.Point{X: 28, Y: 12}, scene.West)
	s.Wire("w1", "a.p", "b.p", scene.Control, "RD", "w1 RD", 0)
	s.Wire("w2", "a.q", "f", scene.Power, "BK", "w2", 2, 22, 12)
	return s
}

func TestCheckNamesEachFault(t *testing.T) {
	require.Empty(t, scene.Check(&small().Page))
	for want, spoil := range map[string]func(s *scenetest.Sketch){
		"second part called a": func(s *scenetest.Sketch) { s.Boxes[1].ID, s.Wires = "a", nil },
		"part without an id":   func(s *scenetest.Sketch) { s.Boxes[1].ID = "" },
		"b lies on a":          func(s *scenetest.Sketch) { s.Boxes[1].Rect = s.Boxes[0].Rect },
		"a lies on z":          func(s *scenetest.Sketch) { s.Zones[0].Rect.W = 10 },
		"zones y and z share a frame cell": func(s *scenetest.Sketch) {
			s.Zones = append(s.Zones, scene.Zone{ID: "y", Rect: scene.Rect{X: 2, Y: 2, W: 30, H: 16}})
		},
		"part b leaves the page":                       func(s *scenetest.Sketch) { s.W = 45 },
		"part b is smaller than 3 by 3 cells":          func(s *scenetest.Sketch) { s.Boxes[1].Rect.H = 2 },
		`part designator has no room for "designator"`: func(s *scenetest.Sketch) { s.Boxes[0].ID = "designator" },
		`part a has no room for "overlong p"`:          func(s *scenetest.Sketch) { s.Boxes[0].Ports[0].Name = "overlong p" },
		"a.q is not on its side":                       func(s *scenetest.Sketch) { s.Boxes[0].Ports[1].At.Y = 9 },
		"terminals a.q and a.p share a cell":           func(s *scenetest.Sketch) { s.Boxes[0].Ports[1].At = s.Boxes[0].Ports[0].At },
		"flag f is not one row":                        func(s *scenetest.Sketch) { s.Flags[0].Text = "cut off" },
		"the wire of flag f does not meet":             func(s *scenetest.Sketch) { s.Flags[0].Port.At.X++ },
		"no wire ends on flag f":                       func(s *scenetest.Sketch) { s.Wires = s.Wires[:1] },
		"wire w1 has no path":                          func(s *scenetest.Sketch) { s.Wires[0].Path = s.Wires[0].Path[:1] },
		"wire w2 is not orthogonal":                    func(s *scenetest.Sketch) { s.Wires[1].Path[1].Y++ },
		"wire w1 ends on no terminal":                  func(s *scenetest.Sketch) { s.Wires[0].Path[1].X-- },
		"wire w1 says it ends on b.q":                  func(s *scenetest.Sketch) { s.Wires[0].To = "b.q" },
		"wire w1 does not leave a.p straight": func(s *scenetest.Sketch) {
			s.Wires[0].Path = []scene.Point{{X: 13, Y: 6}, {X: 13, Y: 2}, {X: 36, Y: 2}, {X: 36, Y: 6}, {X: 40, Y: 6}}
		},
		"wires w3 and w1 end in one cell":   func(s *scenetest.Sketch) { s.Wire("w3", "a.p", "b.q", scene.Control, "", "", -1, 30) },
		"wires w3 and w1 lie on each other": func(s *scenetest.Sketch) { s.Wire("w3", "b.q", "a.r", scene.Control, "", "", -1, 36, 6, 30, 2, 2) },
		"wire w3 runs through a":            func(s *scenetest.Sketch) { s.Wire("w3", "b.q", "a.r", scene.Control, "", "", -1, 36, 5, 2) },
		"wire w2 is too short to be seen": func(s *scenetest.Sketch) {
			s.Flags[0].Rect.X, s.Flags[0].Rect.Y, s.Flags[0].Port.At = 14, 8, scene.Point{X: 14, Y: 8}
			s.Wires[1].Path = []scene.Point{{X: 13, Y: 8}, {X: 14, Y: 8}}
		},
		"wire w3 leaves the page":              func(s *scenetest.Sketch) { s.Wire("w3", "b.q", "a.r", scene.Control, "", "", -1, 36, 22, 2) },
		"the label of wire w1 lies on a":       func(s *scenetest.Sketch) { s.Wires[0].Label.At.X = 12 },
		"the label of wire w1 lies on z":       func(s *scenetest.Sketch) { s.Wires[0].Label.At.X = 16 },
		"the label of wire w1 does not stand":  func(s *scenetest.Sketch) { s.Wires[0].Label.At.Y = 14 },
		"the label of wire w1 leaves the page": func(s *scenetest.Sketch) { s.Wires[0].Label.At.Y = -1 },
		"the label of wire w2 hides a bend":    func(s *scenetest.Sketch) { s.Wires[1].Label.At = scene.Point{X: 21, Y: 12} },
		"the label of wire w2 lies on wire w3": func(s *scenetest.Sketch) {
			s.Wires[1].Label.At.X = 24
			s.Wire("w3", "b.q", "a.r", scene.Control, "", "", -1, 25, 15, 2)
		},
		"the label of wire w1 lies on the label of w1": func(s *scenetest.Sketch) {
			s.Wires[0].Flow.Note = s.Wires[0].Label
		},
		"the label of wire w1 lies on wire w2": func(s *scenetest.Sketch) {
			s.Wires[0].Flow.Note = scene.Label{Text: "187 A", At: scene.Point{X: 22, Y: 10}, Vertical: true}
		},
		"the arrow of wire w1 does not stand on its line alone": func(s *scenetest.Sketch) {
			s.Wires[0].Flow.Arrows = []scene.Arrow{{At: s.Wires[0].Label.At, Way: scene.East}}
		},
		"the arrow of wire w2 does not stand on its line alone": func(s *scenetest.Sketch) {
			s.Wires[1].Flow.Arrows = []scene.Arrow{{At: scene.Point{X: 22, Y: 9}, Way: scene.East}}
		},
		"the label of wire w3 touches b.p": func(s *scenetest.Sketch) {
			s.Wires = s.Wires[1:]
			w := s.Wire("w3", "a.p", "a.r", scene.Control, "", "", -1, 36, 18, 2)
			w.Label = scene.Label{Text: "w3x", At: scene.Point{X: 37, Y: 6}, Vertical: true}
		},
		"the label of wire w2 lies on the label of w1": func(s *scenetest.Sketch) {
			s.Wires[1].Label = scene.Label{Text: "w2 looks", At: scene.Point{X: 21, Y: 6}, Vertical: true}
		},
	} {
		s := small()
		spoil(s)
		var texts []string
		for _, f := range scene.Check(&s.Page) {
			texts = append(texts, f.String())
		}
		require.Contains(t, strings.Join(texts, "\n"), want)
	}
}

func TestAtNamesWhatLiesInACell(t *testing.T) {
	p := scenetest.Cart()
	for _, c := range []struct {
		at   scene.Point
		want []scene.Ref
	}{
		{scene.Point{X: 57, Y: 16}, []scene.Ref{{Kind: scene.PortKind, ID: "sol", Port: "L2", Seat: 1}, {Kind: scene.BoxKind, ID: "sol"}, {Kind: scene.WireKind, ID: "w3"}, {Kind: scene.ZoneKind, ID: "rear"}}},
		{scene.Point{X: 62, Y: 16}, []scene.Ref{{Kind: scene.WireKind, ID: "w6"}, {Kind: scene.WireKind, ID: "w3"}, {Kind: scene.ZoneKind, ID: "rear"}}},
		{scene.Point{X: 46, Y: 4}, []scene.Ref{{Kind: scene.LabelKind, ID: "w6"}, {Kind: scene.WireKind, ID: "w6"}, {Kind: scene.ZoneKind, ID: "dash"}}},
		{scene.Point{X: 73, Y: 29}, []scene.Ref{{Kind: scene.FlagRef, ID: "w13x"}, {Kind: scene.WireKind, ID: "w13"}, {Kind: scene.ZoneKind, ID: "rear"}}},
		{scene.Point{X: 50, Y: 15}, []scene.Ref{{Kind: scene.BoxKind, ID: "sol"}, {Kind: scene.ZoneKind, ID: "rear"}}},
		{scene.Point{X: 98, Y: 2}, nil},
	} {
		require.Equal(t, c.want, p.At(c.at), "%v", c.at)
	}
}

func TestCrossings(t *testing.T) {
	found := scenetest.Cart().Crossings()
	require.Equal(t, []scene.Crossing{
		{At: scene.Point{X: 35, Y: 16}, Over: "w5", Under: "w2"},
		{At: scene.Point{X: 62, Y: 16}, Over: "w6", Under: "w3"},
		{At: scene.Point{X: 64, Y: 16}, Over: "w7", Under: "w3"},
		{At: scene.Point{X: 64, Y: 20}, Over: "w7", Under: "w6"},
	}, found)
}

// TestWritingNeverOverlaps: unless Inside says that something found no room, no cell
// of a box holds two letters, and all writing stays in the box.
func TestWritingNeverOverlaps(t *testing.T) {
	roomy := 0
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(3, 24).Draw(t, "w"), rapid.IntRange(3, 12).Draw(t, "h")
		s := &scenetest.Sketch{}
		var ports []string
		for i := range rapid.IntRange(0, 6).Draw(t, "ports") {
			side := rapid.SampledFrom([]string{"N", "E", "S", "W"}).Draw(t, "side")
			room := h
			if side == "N" || side == "S" {
				room = w
			}
			spec := side + string(rune('0'+min(9, rapid.IntRange(1, room-2).Draw(t, "offset")))) + " "
			spec += rapid.SampledFrom([]string{"+", "L1", "ksi", "St 1", "St 2", "X" + string(rune('a'+i)) + " 1"}).Draw(t, "name")
			ports = append(ports, spec)
		}
		name := rapid.StringMatching(`[a-z ]{0,20}`).Draw(t, "name")
		b := s.Box("bx", name, "fuse", scene.Rect{X: 5, Y: 7, W: w, H: h}, ports...)
		inside := scene.Inside(*b)
		if len(inside.Lost) > 0 {
			return
		}
		roomy++
		used := map[scene.Point]string{}
		for _, p := range b.Ports {
			used[p.At] = "port"
		}
		for _, writing := range inside.Writings {
			for i := range scene.Width(writing.Text) {
				cell := writing.At.Add(i, 0)
				require.True(t, b.Rect.Contains(cell), "%q leaves the box", writing.Text)
				require.Empty(t, used[cell], "%q", writing.Text)
				used[cell] = writing.Text
			}
		}
		for y := inside.Symbol.Y; y < inside.Symbol.Y+inside.Symbol.H; y++ {
			for x := inside.Symbol.X; x < inside.Symbol.X+inside.Symbol.W; x++ {
				cell := scene.Point{X: x, Y: y}
				require.Empty(t, used[cell])
				require.True(t, b.Rect.Contains(cell) && !b.Rect.OnFrame(cell))
			}
		}
	})
	if testing.Short() {
		return // fewer boxes are drawn
	}
	require.Greater(t, roomy, 10, "the boxes drawn at random are too small to test anything")
}

func TestZoneTitlesKeepOffWires(t *testing.T) {
	for _, p := range []*scene.Page{scenetest.Cart(), scenetest.Glyphs()} {
		titles := p.ZoneTitles()
		require.Len(t, titles, len(p.Zones))
		for _, title := range titles {
			for i := range scene.Width(title.Text) {
				for _, ref := range p.At(title.At.Add(i, 0)) {
					require.Equal(t, scene.ZoneKind, ref.Kind, "title of %s on %s", title.Zone, ref.ID)
				}
			}
		}
	}
}

func TestUse(t *testing.T) {
	u := scenetest.Cart().Use()
	require.Equal(t, []scene.Weight{scene.Control, scene.Power, scene.Traction, scene.Mains}, u.Weights)
	require.Equal(t, []string{"!"}, u.Marks)
	require.Contains(t, u.Colours, "GNYE")
	require.True(t, u.Striped && u.Seats && u.Crossings)
	require.Empty(t, u.Changes)
	require.Equal(t, scene.Usage{}, new(scene.Page).Use())
}
