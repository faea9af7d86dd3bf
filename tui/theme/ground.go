package theme

import (
	"strconv"
	"strings"
)

// Ground is the kind of background the terminal has.
type Ground uint8

// The grounds. Neutral is the one nobody knows anything of: only colours that can be read on black and on white.
const (
	Neutral Ground = iota
	Dark
	Light
)

// grounds are backgrounds in common use, on which each palette has to keep its contrast.
var grounds = [...][]rgb{
	Dark:    {hex(0x000000), hex(0x1e1e1e), hex(0x282c34)},
	Light:   {hex(0xffffff), hex(0xfafafa), hex(0xf4eee0)},
	Neutral: {hex(0x000000), hex(0xffffff)},
}

// GroundOf finds the ground from the terminal's answer to a question for its background ("rgb:1e1e/1e1e/1e1e"), or
// else from the value of COLORFGBG ("15;0"), or else it is Neutral. Both may be empty.
func GroundOf(answer, colorFGBG string) Ground {
	if c, ok := parseAnswer(answer); ok {
		if contrast(c, hex(0xffffff)) >= contrast(c, hex(0x000000)) {
			return Dark
		}
		return Light
	}
	fields := strings.Split(colorFGBG, ";")
	if len(fields) < 2 {
		return Neutral
	}
	// The sixteen colours in their usual order: 7 and the bright ones from 9 up are light, 8 is dark grey.
	switch number, err := strconv.Atoi(fields[len(fields)-1]); {
	case err != nil || number < 0 || number > 15:
		return Neutral
	case number == 7 || number > 8:
		return Light
	}
	return Dark
}

// parseAnswer reads a colour as X11 writes it: "rgb:" or "rgba:" and parts of one to four hexadecimal digits.
func parseAnswer(answer string) (rgb, bool) {
	kind, text, _ := strings.Cut(answer, ":")
	parts := strings.Split(text, "/")
	if kind != "rgb" && kind != "rgba" || len(parts) < 3 {
		return rgb{}, false
	}
	var c rgb
	for i := range c {
		v, err := strconv.ParseUint(parts[i], 16, 16)
		if err != nil || len(parts[i]) > 4 {
			return rgb{}, false
		}
		c[i] = float64(v) / float64(uint(1)<<(4*len(parts[i]))-1)
	}
	return c, true
}
