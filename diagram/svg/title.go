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
	} else {
		d.open("g", attr{"class", "wire " + weightClasses[s.weight]})
		d.strokes(s.weight, "ink", "", fmt.Sprintf("M%d %dh%d", x, middle, (lineCols-1)*cellW))
	}
	d.close("g")
	d.line(x+s.cols()*cellW, middle, "", s.words)
}
