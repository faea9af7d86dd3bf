package unit

// The scales of the electrical quantities. Spellings are those of SI and what is
// commonly written on labels; the first unit of a scale is its SI unit. The ohm and
// micro signs exist twice each in Unicode: both are read, neither is printed.

type (
	volts    struct{}
	amperes  struct{}
	ohms     struct{}
	ampHours struct{}
	watts    struct{}
	farads   struct{}
)

func (volts) scale() *scale    { return &voltScale }
func (amperes) scale() *scale  { return &ampereScale }
func (ohms) scale() *scale     { return &ohmScale }
func (ampHours) scale() *scale { return &ampHourScale }
func (watts) scale() *scale    { return &wattScale }
func (farads) scale() *scale   { return &faradScale }

var voltScale = scale{
	of: Voltage, what: "a voltage", examples: "48 V, 51.2 V, 250 mV", example: "51.2 V", min: -limit,
	marks: []mark{
		{print: "V", also: []string{"v", "volt", "volts", "VDC", "Vdc", "V~DC"}, worth: 1},
		{print: "mV", also: []string{"mv"}, worth: 1e-3, auto: true},
		{print: "kV", also: []string{"kv", "KV"}, worth: 1e3},
	},
}

var ampereScale = scale{
	of: Current, what: "a current", examples: "250 A, 40 mA, 10 kA", example: "250 A", min: -limit,
	marks: []mark{
		{print: "A", also: []string{"a", "amp", "amps", "ampere", "amperes"}, worth: 1},
		{print: "mA", also: []string{"ma"}, worth: 1e-3, auto: true},
		{print: "uA", also: []string{"\u00b5A", "\u03bcA"}, worth: 1e-6, auto: true},
		{print: "kA", also: []string{"ka", "KA"}, worth: 1e3},
	},
}

var ohmScale = scale{
	of: Resistance, what: "a resistance", examples: "470 ohm, 10 mohm, 5 kohm", example: "470 ohm", max: 1e9, // insulation is read in megohms
	marks: []mark{
		{print: "ohm", also: []string{"ohms", "Ohm", "Ohms", "\u03a9", "\u2126"}, worth: 1},
		{print: "mohm", also: []string{"mohms", "mOhm", "mOhms", "m\u03a9", "m\u2126", "milliohm", "milliohms"}, worth: 1e-3, auto: true},
		{print: "uohm", also: []string{"uOhm", "\u00b5ohm", "\u03bcohm", "\u00b5\u03a9", "\u03bc\u03a9", "\u00b5\u2126", "\u03bc\u2126"}, worth: 1e-6, auto: true},
		{print: "kohm", also: []string{"kohms", "kOhm", "kOhms", "k\u03a9", "k\u2126", "k"}, worth: 1e3},
		{print: "Mohm", also: []string{"Mohms", "MOhm", "MOhms", "M\u03a9", "M\u2126", "megohm"}, worth: 1e6},
	},
}

var ampHourScale = scale{
	of: Charge, what: "a charge", examples: "105 Ah, 800 mAh", example: "105 Ah",
	marks: []mark{
		{print: "Ah", also: []string{"A~h", "AH", "ah", "amp~hours", "amp~hour"}, worth: 1},
		{print: "mAh", also: []string{"mA~h", "mAH", "mah"}, worth: 1e-3, auto: true},
	},
}

var wattScale = scale{
	of: Power, what: "a power", examples: "10 W, 1.2 kW, 3 hp", example: "10 W",
	marks: []mark{
		{print: "W", also: []string{"w", "watt", "watts"}, worth: 1},
		{print: "mW", also: []string{"mw"}, worth: 1e-3, auto: true},
		{print: "kW", also: []string{"kw", "KW"}, worth: 1e3},
		{print: "hp", also: []string{"HP"}, worth: wattsPerHorsepower},
	},
}

var faradScale = scale{
	of: Capacitance, what: "a capacitance", examples: "10 mF, 4700 uF", example: "10 mF",
	marks: []mark{
		{print: "F", worth: 1},
		{print: "mF", worth: 1e-3, auto: true},
		{print: "uF", also: []string{"\u00b5F", "\u03bcF", "uf"}, worth: 1e-6, auto: true},
		{print: "nF", worth: 1e-9, auto: true},
	},
}

// wattsPerHorsepower is one mechanical horsepower, 550 ft lbf/s by definition.
const wattsPerHorsepower = 745.699872
