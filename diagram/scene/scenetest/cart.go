package scenetest

import "example.com/lugbook/diagram/scene"

func at(x, y, w, h int) scene.Rect { return scene.Rect{X: x, Y: y, W: w, H: h} }

// Cart is a page as a technician would get it: the traction path, the control
// circuit, the charger and the ends of wires that go on elsewhere, on 100 columns.
func Cart() *scene.Page {
	s := &Sketch{scene.Page{W: 100, H: 39}}
	s.Title = scene.TitleBlock{
		Job: "Four-seater, north barn", Sheet: "plan", System: "48 V", Date: "2026-03-14", Revision: "B", Page: 1, Pages: 2,
		Shown: "key OFF, pedal up, pack disconnected",
		Notes: []string{"The loom to the dash is tied to the left rail; lift the seat frame to reach it."},
	}
	s.Legend = []string{"Marks: ! corroded."}
	s.Zones = []scene.Zone{
		{ID: "bay", Name: "battery bay", Rect: at(0, 10, 34, 29)},
		{ID: "rear", Name: "rear", Rect: at(36, 10, 64, 29)},
		{ID: "dash", Name: "dash", Rect: at(17, 0, 70, 9)},
	}
	cartParts(s)
	cartFlags(s)
	cartWires(s)
	return &s.Page
}

func cartParts(s *Sketch) {
	s.Box("pack", "lithium pack", "battery", at(3, 13, 14, 10), "E3 + 1", "E7 - 1", "E8 - 2")
	s.Box("fu1", "250 A", "fuse", at(21, 14, 10, 5), "W2 1", "E2 2")
	s.Box("fu2", "5 A", "fuse", at(21, 21, 10, 3), "W1 1", "E1 2")
	s.Box("sol", "main contactor", "solenoid", at(40, 13, 18, 9), "W3 L1 1", "W4 L1 2", "E3 L2 1", "S5 s+", "S14 s-")
	s.Box("ctrl", "controller", "", at(66, 13, 15, 15),
		"W3 B+", "W7 ksi", "W9 ped", "W11 mc", "W13 B-", "E3 M-", "E5 F1", "E7 F2", "S7 aux").Marks = []string{"!"}
	s.Box("mtr", "motor", "motor-dc", at(66, 31, 15, 7), "E1 F2", "E3 F1", "E5 A2", "W3 A1")
	s.Box("chg", "charger", "charger", at(43, 30, 16, 6), "W1 L", "W3 N", "E2 +")
	s.Box("key", "", "key-switch", at(20, 2, 16, 5), "S4 1", "E2 2")
	s.Box("ped", "pedal box", "potentiometer", at(66, 2, 18, 5), "S4 wip", "E2 sw")
}

func cartFlags(s *Sketch) {
	s.Flag("w9x", scene.OffPage, "w9 dash p2", scene.Point{X: 45, Y: 25}, scene.North)
	s.Flag("w10x", scene.OffPage, "w10 rear p2", scene.Point{X: 21, Y: 31}, scene.West)
	s.Flag("w13x", scene.Cut, "cut", scene.Point{X: 73, Y: 29}, scene.North)
	s.Flag("w14x", scene.Untraced, "untraced", scene.Point{X: 89, Y: 4}, scene.West)
	s.Flag("inl", scene.OffPage, "w16 p2", scene.Point{X: 4, Y: 33}, scene.East)
	s.Flag("inn", scene.Capped, "spare", scene.Point{X: 4, Y: 35}, scene.East)
}

func cartWires(s *Sketch) {
	s.Wire("w1", "pack.+/1", "fu1.1", scene.Traction, "RD", "", -1)
	s.Wire("w2", "fu1.2", "sol.L1/1", scene.Traction, "RD", "", -1)
	s.Wire("w3", "sol.L2/1", "ctrl.B+", scene.Traction, "OG", "", -1)
	s.Wire("w4", "pack.-/1", "ctrl.B-", scene.Traction, "BK", "w4 2/0 BK", 2, 19, 26)
	s.Wire("w5", "fu2.2", "key.1", scene.Control, "RD/WH", "w5 16 RD/WH", -1, 35, 9)
	s.Wire("w6", "key.2", "ctrl.ksi", scene.Control, "YE", "w6 16 YE", 0, 62)
	s.Wire("w7", "ped.wip", "ctrl.ped", scene.Control, "WH", "", -1, 9, 64)
	s.Wire("w8", "ctrl.mc", "sol.s-", scene.Control, "GN/BK", "w8 18", 0, 54)
	s.Wire("w9", "sol.s+", "w9x", scene.Control, "VT", "w9 18 VT", 0)
	s.Wire("w10", "pack.-/2", "w10x", scene.Power, "BK", "", -1, 18)
	s.Wire("w11", "sol.L1/2", "fu2.1", scene.Control, "RD", "w11 16", 2, 38, 24, 20)
	s.Wire("w17", "ctrl.M-", "mtr.A2", scene.Traction, "BN", "w17 4 BN", -1, 95)
	s.Wire("w18", "ctrl.F1", "mtr.F1", scene.Power, "BU", "w18", 1, 90)
	s.Wire("w19", "ctrl.F2", "mtr.F2", scene.Power, "GY", "w19", 1, 85)
	s.Wire("w13", "ctrl.aux", "w13x", scene.Control, "PK", "", -1)
	s.Wire("w16", "chg.L", "inl", scene.Mains, "BN", "w16 3G1.5 BN", 2, 39, 33)
	s.Wire("w15", "chg.N", "inn", scene.Mains, "BU", "w15 BU", 2, 41, 35)
	s.Wire("w14", "ped.sw", "w14x", scene.Control, "GNYE", "", -1)
	s.Wire("w12", "chg.+", "mtr.A1", scene.Power, "WH/RD", "", -1, 62)
}
