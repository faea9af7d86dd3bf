package scenetest

import (
	"strconv"

	"example.com/lugbook/diagram/scene"
)

// Glyphs is a page with every kind of glyph: wires of each weight that leave each
// side of a box by two bends, each weight crossing each, studs on each side, flags of
// each kind, and zones whose frames are crowded.
func Glyphs() *scene.Page {
	s := &Sketch{scene.Page{W: 106, H: 54}}
	s.Title = scene.TitleBlock{Job: "Glyphs", Page: 1}
	for row, change := range []scene.Change{scene.NoChange, scene.Added, scene.Removed} {
		for col, weight := range []scene.Weight{scene.Control, scene.Traction, scene.Mains} {
			fourSides(s, col*24, row*12, change, weight)
		}
	}
	crossings(s, 74, 0)
	studs(s, 78, 15)
	crowdedZones(s, 0, 38)
	tightTitles(s, 50, 40)
	return &s.Page
}

// fourSides draws a box with a wire on each side, each wire with two bends.
func fourSides(s *Sketch, x, y int, change scene.Change, weight scene.Weight) {
	name := "b" + strconv.Itoa(len(s.Boxes)+1)
	s.Box(name, "", "", at(x+7, y+3, 11, 5), "N7 n", "E2 e", "S4 s", "W2 w").Change = change
	s.Flag(name+"n", scene.Cut, "cut", scene.Point{X: x + 12, Y: y}, scene.South)
	s.Flag(name+"e", scene.OffPage, "on", scene.Point{X: x + 20, Y: y + 6}, scene.West)
	s.Flag(name+"s", scene.Untraced, "far", scene.Point{X: x + 13, Y: y + 11}, scene.North)
	s.Flag(name+"w", scene.Capped, "c", scene.Point{X: x, Y: y + 4}, scene.East)
	for i, end := range []struct {
		side  string
		turns []int
	}{{"n", []int{y + 1, x + 12}}, {"e", []int{x + 19, y + 6}}, {"s", []int{y + 9, x + 13}}, {"w", []int{x + 4, y + 4}}} {
		s.Wire(name+"w"+strconv.Itoa(i), name+"."+end.side, name+end.side, weight, "", "", -1, end.turns...).Change = change
	}
}

var crossingWeights = []scene.Weight{scene.Control, scene.Traction, scene.Mains}

// crossings draws three level wires under three upright ones.
func crossings(s *Sketch, x, y int) {
	for i, weight := range crossingWeights {
		n := strconv.Itoa(i)
		column := scene.Point{X: x + 8 + 7*i, Y: y}
		s.Flag("t"+n, scene.OffPage, "t"+n, column, scene.South)
		s.Flag("u"+n, scene.OffPage, "u"+n, column.Add(0, 12), scene.North)
		s.Flag("l"+n, scene.OffPage, "l"+n, scene.Point{X: x, Y: y + 2 + 3*i}, scene.East)
		s.Flag("r"+n, scene.OffPage, "r"+n, scene.Point{X: x + 27, Y: y + 2 + 3*i}, scene.West)
		s.Wire("v"+n, "t"+n, "u"+n, weight, "RD/BK", "v"+n, 0)
		s.Wire("h"+n, "l"+n, "r"+n, weight, "WH", "", -1)
	}
}

// studs draws a box with studs of several positions on every side.
func studs(s *Sketch, x, y int) {
	box := s.Box("x", "studs", "", at(x, y, 26, 21),
		"N3 A 1", "N5 A 2", "N7 A 3", "N13 wide 1", "N20 wide 2",
		"E4 B 1", "E5 B 2", "E6 B 3", "E8 C 1", "E10 C 2", "E12 D 1", "E13 D 2", "E15 lone 1", "E16 any 0", "E17 any 0",
		"W4 F 1", "W6 F 2", "W8 F 3", "W10 G 3", "W11 G 2", "W12 G 1",
		"S4 H 2", "S7 H 1", "S13 J 1", "S15 J 2", "S17 J 3", "S20 K 1", "S23 tab")
	box.Marks = []string{"!", "?"}
}

// crowdedZones draws zones whose titles have to make way for wires.
func crowdedZones(s *Sketch, x, y int) {
	s.Zones = append(s.Zones,
		scene.Zone{ID: "left", Name: "left rail", Rect: at(x, y+2, 22, 12)},
		scene.Zone{ID: "right", Name: "under the seat, right", Rect: at(x+24, y+2, 20, 12)},
		scene.Zone{ID: "in", Rect: at(x+2, y+4, 18, 8)})
	s.Box("z1", "", "", at(x+5, y+6, 12, 4), "N2 a", "N8 b", "E2 c")
	s.Box("z2", "", "", at(x+28, y+6, 12, 4), "W2 c", "S3 d")
	s.Flag("za", scene.OffPage, "za", scene.Point{X: x + 7, Y: y}, scene.South)
	s.Flag("zb", scene.OffPage, "zb", scene.Point{X: x + 13, Y: y}, scene.South)
	s.Flag("zd", scene.OffPage, "zd", scene.Point{X: x + 31, Y: y + 15}, scene.North)
	s.Wire("z3", "z1.a", "za", scene.Control, "BU", "", -1)
	s.Wire("z4", "z1.b", "zb", scene.Power, "GNYE", "", -1)
	s.Wire("z5", "z1.c", "z2.c", scene.Traction, "BK", "", -1)
	s.Wire("z6", "z2.d", "zd", scene.Control, "no such", "z6", 0)
}

// tightTitles draws boxes too small for their names, and what becomes of a part.
func tightTitles(s *Sketch, x, y int) {
	s.Box("t1", "long name in rows", "", at(x, y, 11, 6), "E4 p")
	s.Box("t2", "5 A", "fuse", at(x+13, y, 9, 3), "W1 1", "E1 2")
	s.Box("t3", "incompressible", "", at(x+24, y, 12, 3), "W1 in", "E1 out")
	s.Box("t4", "", "lamp", at(x, y+8, 11, 5), "N2 x", "N4 y", "N6 z").Change = scene.Changed
	s.Box("t5", "meter", "voltmeter", at(x+13, y+5, 18, 7), "W3 +", "E3 -").Change = scene.Moved
	s.Box("t6", "kept", "", at(x+33, y+5, 14, 5)).Change = scene.Kept
}
