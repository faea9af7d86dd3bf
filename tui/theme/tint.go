package theme

// minTint is the contrast a wire's hue needs to be shown (WCAG 2.2, success criterion 1.4.11).
const minTint = 3

// tint is the hue of an insulation colour: several shades, truest first, since the true one may be too faint.
type tint struct {
	code   string // IEC 60757
	shades []index
}

// tints holds the codes of IEC 60757 in the order of its table. The shades are chosen by eye; a shade has to be what
// a person would call by that name, so there is no light black and no dark yellow.
var tints = []tint{
	{"BK", []index{16}},
	{"BN", []index{130, 131}},
	{"RD", []index{196}},
	{"OG", []index{208, 166}},
	{"YE", []index{226}},
	{"GN", []index{34, 28, 29}},
	{"BU", []index{33}},
	{"VT", []index{129, 135}},
	{"GY", []index{244}},
	{"WH", []index{231}},
	{"PK", []index{212, 168}},
	{"GD", []index{178}},
	{"TQ", []index{44, 30}},
	{"SR", []index{250}},
	{"GNYE", []index{34, 28, 29}},
}

// hue is the truest shade that can be told from the ground, or plain.
func (t tint) hue(ground Ground) index {
	for _, shade := range t.shades {
		if worst(shade.rgb(), grounds[ground]) >= minTint {
			return shade
		}
	}
	return plain
}
