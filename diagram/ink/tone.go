package ink

import (
	"math"
	"strings"
)

// Tone names a colour of the drawing: that of an insulation by its IEC 60757 code, or
// one of the tones below. Each has a shade for paper and one for dark screens.
type Tone string

// The tones of everything but insulation.
const (
	Page    Tone = "page"    // the paper
	Ink     Tone = "ink"     // lines and letters
	Soft    Tone = "soft"    // what may step back: zones, names
	Casing  Tone = "casing"  // the edge of a wire
	Unknown Tone = "unknown" // a wire whose insulation is not recorded
	Alarm   Tone = "alarm"   // marks behind designators
	Pointed Tone = "pointed" // what the pointer rests on
	Glow    Tone = "glow"    // the band under a live wire
	Metal   Tone = "metal"   // studs, nuts and lugs
	Hit     Tone = "hit"     // never seen: where a pointer still finds a thin line
)

// Shade is a colour in red, green and blue.
type Shade [3]uint8

// shades lists the tones in light and dark, the ground first. Insulation is true to life
// by eye. Where a lighter shade of it still goes by the same name it is lighter on dark
// ground; else the casing around it makes it stand out.
var shades = []struct {
	tone        Tone
	light, dark Shade
}{
	{Page, Shade{0xff, 0xff, 0xff}, Shade{0x15, 0x18, 0x1b}},
	{Ink, Shade{0x1b, 0x1d, 0x20}, Shade{0xe8, 0xea, 0xed}},
	{Soft, Shade{0x5c, 0x62, 0x69}, Shade{0xa8, 0xaf, 0xb6}},
	{Casing, Shade{0x33, 0x38, 0x3d}, Shade{0xb9, 0xbf, 0xc5}},
	{Unknown, Shade{0xa9, 0xaf, 0xb5}, Shade{0x6d, 0x74, 0x7b}},
	{Alarm, Shade{0xb3, 0x26, 0x1e}, Shade{0xff, 0x9c, 0x8f}},
	{Pointed, Shade{0x00, 0x72, 0xb2}, Shade{0x56, 0xb4, 0xe9}},
	{Glow, Shade{0xff, 0xd7, 0x6a}, Shade{0x7a, 0x5a, 0x00}},
	{Metal, Shade{0xdf, 0xe3, 0xe6}, Shade{0x4a, 0x50, 0x56}},
	{"BK", Shade{0x1c, 0x1c, 0x1c}, Shade{0x1c, 0x1c, 0x1c}},
	{"BN", Shade{0x8b, 0x4f, 0x24}, Shade{0xa9, 0x65, 0x34}},
	{"RD", Shade{0xd6, 0x24, 0x2a}, Shade{0xe2, 0x3b, 0x3b}},
	{"OG", Shade{0xf2, 0x8a, 0x1c}, Shade{0xf2, 0x8a, 0x1c}},
	{"YE", Shade{0xf8, 0xd6, 0x1f}, Shade{0xf8, 0xd6, 0x1f}},
	{"GN", Shade{0x25, 0x96, 0x3f}, Shade{0x2f, 0xa6, 0x4b}},
	{"BU", Shade{0x24, 0x62, 0xc4}, Shade{0x3f, 0x7f, 0xe0}},
	{"VT", Shade{0x8d, 0x45, 0xad}, Shade{0xa8, 0x62, 0xc8}},
	{"GY", Shade{0x8f, 0x92, 0x96}, Shade{0x8f, 0x92, 0x96}},
	{"WH", Shade{0xff, 0xff, 0xff}, Shade{0xff, 0xff, 0xff}},
	{"PK", Shade{0xf3, 0xa0, 0xba}, Shade{0xf3, 0xa0, 0xba}},
	{"GD", Shade{0xc8, 0xa2, 0x2c}, Shade{0xc8, 0xa2, 0x2c}},
	{"TQ", Shade{0x2f, 0xb8, 0xb4}, Shade{0x2f, 0xb8, 0xb4}},
	{"SR", Shade{0xc6, 0xcb, 0xd0}, Shade{0xc6, 0xcb, 0xd0}},
}

// Light is the shade of a tone on paper; false if nothing is to be seen.
func (t Tone) Light() (Shade, bool) {
	for _, s := range shades {
		if s.tone == t {
			return s.light, true
		}
	}
	return Shade{}, false
}

// Dark is the shade of a tone on a dark screen; false if nothing is to be seen.
func (t Tone) Dark() (Shade, bool) {
	for _, s := range shades {
		if s.tone == t {
			return s.dark, true
		}
	}
	return Shade{}, false
}

// Insulation reads a wire's colour as the tones of its body and its stripe, of which
// the latter may be empty. A body that is not in the table, or none, is Unknown.
func Insulation(colour string) (body, stripe Tone) {
	b, s, _ := strings.Cut(colour, "/")
	if b == "GNYE" {
		b, s = "GN", "YE"
	}
	body, stripe = Tone(b), Tone(s)
	if !body.insulation() {
		body = Unknown
	}
	if !stripe.insulation() {
		stripe = ""
	}
	return body, stripe
}

// LeastContrast is what WCAG 2.1, success criterion 1.4.11, asks of lines against what
// is beside them.
const LeastContrast = 3

// standsOut reports whether a line of the tone needs no casing, on paper and on a dark
// screen.
func (t Tone) standsOut() bool {
	for _, s := range shades {
		if s.tone == t {
			return Contrast(s.light, shades[0].light) >= LeastContrast && Contrast(s.dark, shades[0].dark) >= LeastContrast
		}
	}
	return false
}

// insulation reports whether a tone is the colour of an insulation.
func (t Tone) insulation() bool {
	_, ok := t.Light()
	return ok && strings.ToUpper(string(t)) == string(t)
}

// Contrast is the ratio of the luminances of two shades, from 1 to 21, as WCAG 2.1
// defines it for success criteria 1.4.3 (letters, at least 4.5) and 1.4.11 (lines, at
// least 3).
func Contrast(a, b Shade) float64 {
	la, lb := a.luminance(), b.luminance()
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// luminance is the relative luminance that WCAG 2.1 defines for sRGB.
func (s Shade) luminance() float64 {
	var linear [3]float64
	for i, v := range s {
		c := float64(v) / 255
		if c <= 0.04045 {
			linear[i] = c / 12.92
		} else {
			linear[i] = math.Pow((c+0.055)/1.055, 2.4)
		}
	}
	return 0.2126*linear[0] + 0.7152*linear[1] + 0.0722*linear[2]
}
