package svg

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
)

// titleBlock draws the title block and the legend along the foot of the sheet.
func (d *painter) titleBlock() {
	s := d.sheet
	d.open("g", attr{"class", "block"})
	d.empty("path", attr{"class", "rule"}, attr{"d", fmt.Sprintf("M%d %dh%d", s.frameX, s.blockY-inset/2, s.frameW)})
	x := s.frameX + inset
	for i, l := range s.block {
		middle := s.blockY + i*cellH + cellH/2
		class := ""
		if l.bold {
			class = "b"
		}
		if l.left != "" {
			d.line(x, middle, class, l.left)
		}
		if l.right != "" {
			d.line(x+(s.blockCol-scene.Width(l.right))*cellW, middle, class, l.right)
		}
		for _, piece := range l.samples {
			d.sample(piece, x+piece.col*cellW, middle)
		}
	}
	d.close("g")
}

func (d *painter) sample(s sample, x, middle int) {
	if s.isFlag {
		d.open("g", attr{"class", "flag"})
		d.mark(s.flag, scene.West, x+cellW/2, middle)
		d.close("g")
	} else {
		d.lineSample(s, x, middle)
	}
	d.line(x+s.cols()*cellW, middle, "", s.words)
}

// lineSample draws a piece of line, with what stands on it in a state.
func (d *painter) lineSample(s sample, x, middle int) {
	const length = (lineCols - 1) * cellW
	path := fmt.Sprintf("M%d %dh%d", x, middle, length)
	d.open("g", attr{"class", "wire " + weightClasses[s.weight] + energyClasses[s.energy]})
	d.glow(s.energy, path)
	d.strokes(s.weight, "ink", "", path)
	d.close("g")
	switch {
	case s.flows:
		d.arrow(x+length/2, middle, scene.East)
	case s.energy == scene.Unjudged:
		left := x + (length-cellW)/2
		d.empty("rect", attr{"class", "plate"}, attr{"x", left}, attr{"y", middle - cellH/2}, attr{"width", cellW}, attr{"height", cellH})
		d.line(left, middle, "m", "?")
	}
}
