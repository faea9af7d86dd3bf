package theme

import "math"

// index is a colour of the 256-colour set, or plain for the terminal's own foreground.
type index int16

const plain index = -1

// rgb is a colour in sRGB, each part from 0 to 1.
type rgb [3]float64

// hex is the colour 0xRRGGBB.
func hex(v uint32) rgb {
	return rgb{float64(v>>16&0xff) / 255, float64(v>>8&0xff) / 255, float64(v&0xff) / 255}
}

// rgb is the colour that terminals show for an index from 16 up: a cube of six steps and a ramp of greys, as xterm
// defines them. The sixteen below belong to the user.
func (i index) rgb() rgb {
	if i >= 232 {
		grey := float64(8+10*(i-232)) / 255
		return rgb{grey, grey, grey}
	}
	steps := [...]float64{0, 95, 135, 175, 215, 255}
	cube := i - 16
	return rgb{steps[cube/36] / 255, steps[cube/6%6] / 255, steps[cube%6] / 255}
}

// linear takes the gamma off a part of an sRGB colour (IEC 61966-2-1).
func linear(part float64) float64 {
	if part <= 0.04045 {
		return part / 12.92
	}
	return math.Pow((part+0.055)/1.055, 2.4)
}

// luminance is the relative luminance, from 0 to 1 (WCAG 2.2, definitions).
func (c rgb) luminance() float64 {
	return 0.2126*linear(c[0]) + 0.7152*linear(c[1]) + 0.0722*linear(c[2])
}

// contrast is the contrast ratio of two colours, from 1 to 21 (WCAG 2.2, definitions).
func contrast(a, b rgb) float64 {
	la, lb := a.luminance(), b.luminance()
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// worst is the least contrast of a colour with several grounds.
func worst(c rgb, grounds []rgb) float64 {
	least := math.Inf(1)
	for _, ground := range grounds {
		least = min(least, contrast(c, ground))
	}
	return least
}
