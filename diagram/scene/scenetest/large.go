package scenetest

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
)

// Measures of the large page: boxes in columns, between them a channel with room for
// labels and an upright track of its own for each wire.
const (
	largeCols, largeRows = 5, 8
	largeBoxW, largeBoxH = 20, 10
	largePitch           = 12 // rows from box to box
	largeLabel           = 14 // columns of a channel before the first track
	largeWires           = 30 // in a channel
	largeChannel         = largeLabel + 2*largeWires + 2
	largePorts           = 4 // on a side of a box
)

// Large is a page of 40 parts and 120 wires.
func Large() *scene.Page {
	s := &Sketch{scene.Page{W: largeCols*largeBoxW + (largeCols-1)*largeChannel, H: largeRows*largePitch + 1}}
	s.Title = scene.TitleBlock{Job: "Forty parts", Sheet: "plan", System: "48 V", Date: "2026-03-14", Page: 1, Pages: 1, Shown: "key off"}
	symbols := []string{"fuse", "solenoid", "motor-dc", "dc-dc", "lamp", "meter", "diode", "resistor", "switch", "battery"}
	for i := range largeCols * largeRows {
		col, row := i/largeRows, i%largeRows
		// Every other column lies one row lower, so that no two level runs share a row.
		r := at(col*(largeBoxW+largeChannel), row*largePitch+col%2, largeBoxW, largeBoxH)
		var ports []string
		for k := range largePorts {
			if col+1 < largeCols && row*largePorts+k < largeWires {
				ports = append(ports, fmt.Sprintf("E%d e%d", 2+2*k, k+1))
			}
			if col > 0 && row*largePorts+k < largeWires {
				ports = append(ports, fmt.Sprintf("W%d w%d", 2+2*k, k+1))
			}
		}
		s.Box(fmt.Sprintf("b%d", i+1), symbols[i%len(symbols)], symbols[i%len(symbols)], r, ports...)
	}
	for channel := range largeCols - 1 {
		for n := range largeWires {
			largeWire(s, channel, n)
		}
	}
	return &s.Page
}

// largeWire adds a wire between two columns of boxes.
func largeWire(s *Sketch, channel, n int) {
	to := n/6*6 + n*5%6 // every six are turned about: as many crossings as in a drawing that was laid out with care
	end := func(col, port int, side string) string {
		return fmt.Sprintf("b%d.%s%d", col*largeRows+port/largePorts+1, side, port%largePorts+1)
	}
	colours := []string{"RD", "BK", "YE", "RD/WH", "GNYE", "BU"}
	weights := []scene.Weight{scene.Control, scene.Control, scene.Power, scene.Traction, scene.Mains}
	id := fmt.Sprintf("c%d", channel*largeWires+n+1)
	colour := colours[n%len(colours)]
	left := largeBoxW + channel*(largeBoxW+largeChannel)
	from := end(channel, n, "e")
	w := s.Wire(id, from, end(channel+1, to, "w"), weights[n%len(weights)], colour, "", -1, left+largeLabel+2*n)
	w.Title = fmt.Sprintf("%s: %s to %s, 2.5 mm2, %s, control", id, from, end(channel+1, to, "w"), colour)
	w.Label = scene.Label{Text: id + " 2.5 " + colour, At: w.Path[0].Add(2, 0)}
}
