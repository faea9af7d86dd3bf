package svg

import "strings"

// insulation holds the colours of insulation by their IEC 60757 codes: the colour
// itself, true to life by eye.
var insulation = []struct{ code, paint string }{
	{"BK", "#1c1c1c"}, {"BN", "#8b4f24"}, {"RD", "#d6242a"}, {"OG", "#f28a1c"}, {"YE", "#f8d61f"},
	{"GN", "#25963f"}, {"BU", "#2462c4"}, {"VT", "#8d45ad"}, {"GY", "#8f9296"}, {"WH", "#ffffff"},
	{"PK", "#f3a0ba"}, {"GD", "#c8a22c"}, {"TQ", "#2fb8b4"}, {"SR", "#c6cbd0"},
}

// paints reads a wire's colour as the classes of its body and stripe. A code that
// is not in the table, or none, is drawn as unknown.
func paints(colour string) (body, stripe string) {
	body, stripe, _ = strings.Cut(colour, "/")
	if body == "GNYE" {
		body, stripe = "GN", "YE"
	}
	if !known(body) {
		body = "none"
	}
	if !known(stripe) {
		stripe = ""
	}
	return body, stripe
}

func known(code string) bool {
	for _, c := range insulation {
		if c.code == code {
			return true
		}
	}
	return false
}

// tones are the colours of everything but insulation. They are written out in the
// rules: viewers that know no custom properties must show the drawing too.
type tones struct{ page, ink, soft, casing, unknown, alarm, pointed, glow, metal string }

var (
	light = tones{page: "#fff", ink: "#1b1d20", soft: "#5c6269", casing: "#33383d", unknown: "#a9afb5", alarm: "#b3261e", pointed: "#0072b2", glow: "#ffd76a", metal: "#dfe3e6"}
	dark  = tones{page: "#15181b", ink: "#e8eaed", soft: "#a8afb6", casing: "#b9bfc5", unknown: "#6d747b", alarm: "#ff9c8f", pointed: "#56b4e9", glow: "#7a5a00", metal: "#4a5056"}
)

// shapes are the rules that hold in light and dark. Casing and core of a wire widen
// from control over power to traction; mains has a core that is split in two.
const shapes = `
.lb text{font-family:ui-monospace,"DejaVu Sans Mono","Liberation Mono",Menlo,Consolas,monospace;font-size:13px;white-space:pre}
.lb .sheet,.lb .rule,.lb .z,.lb .br,.lb .y,.lb .wire path,.lb .flag path{fill:none}
.lb .z{stroke-dasharray:3 4}
.lb .zone text{font-style:italic}
.lb .f{stroke-width:1.6}
.lb .added .f{stroke-width:3.2}
.lb .removed .f{stroke-dasharray:7 4}
.lb .b,.lb .m{font-weight:700}
.lb .seat{font-size:10px}
.lb .br,.lb .y{stroke-width:.8}
.lb .y .d{stroke-dasharray:2 2}
.lb .y text{font-size:7px;stroke:none;text-anchor:middle}
.lb .big{stroke-width:.7}
.lb .wire path{stroke-linejoin:round}
.lb .k{stroke-width:2.6}
.lb .c{stroke-width:1.3}
.lb .power .k{stroke-width:3.8}
.lb .power .c{stroke-width:2.5}
.lb .traction .k{stroke-width:6}
.lb .traction .c{stroke-width:4.7}
.lb .trunk .k{stroke-width:9}
.lb .trunk .c{stroke-width:7.4}
.lb .card,.lb .nut,.lb .plateside,.lb .bolt,.lb .seatface{stroke-width:.9}
.lb .card{fill:none}
.lb .mains .k{stroke-width:5.6}
.lb .mains .c{stroke-width:4.3}
.lb .mains .v{stroke-width:1.6}
.lb .t{stroke-dasharray:4 6}
.lb .removed .k,.lb .removed .c,.lb .removed .v{stroke-dasharray:10 6}
.lb .removed .t{stroke-dasharray:4 12}
.lb .h{fill:none;stroke-width:12}
.lb .dead .k,.lb .dead .c,.lb .dead .v{stroke-dasharray:2 5}
.lb .return .k,.lb .return .c,.lb .return .v{stroke-dasharray:14 4}
.lb .dead .t,.lb .return .t{stroke-dasharray:2 12}
.lb .a{stroke-width:1.4;stroke-linejoin:round}
.lb .i,.lb .o{font-weight:700}
.lb .p{stroke-width:1.2}
.lb .flag path{stroke-width:1.6}
`

// rules are the rules that colour the drawing.
func (t tones) rules() string {
	return strings.NewReplacer("PAGE", t.page, "INK", t.ink, "SOFT", t.soft, "CASING", t.casing,
		"UNKNOWN", t.unknown, "METAL", t.metal, "ALARM", t.alarm, "POINTED", t.pointed, "GLOW", t.glow).Replace(`.lb text{fill:INK}
.lb .page,.lb .plate,.lb .f,.lb .p{fill:PAGE}
.lb .sheet,.lb .rule,.lb .f,.lb .br,.lb .y,.lb .p,.lb .flag path,.lb .ink{stroke:INK}
.lb .on,.lb .y .s,.lb .flag .s{fill:INK}
.lb .y .s,.lb .flag .s{stroke:none}
.lb .card{stroke:SOFT}
.lb .bolt,.lb .nut,.lb .plateside{fill:METAL;stroke:INK}
.lb .seatface{fill:SOFT;stroke:INK}
.lb .z{stroke:SOFT}
.lb .zone text,.lb .n{fill:SOFT}
.lb .m{fill:ALARM}
.lb .h{stroke:GLOW}
.lb .a{fill:INK;stroke:PAGE}
.lb .badge{fill:INK}
.lb .o{fill:PAGE}
.lb .k{stroke:CASING}
.lb .v{stroke:PAGE}
.lb .none{stroke:UNKNOWN}
.lb .wire:hover .k,.lb .part:hover .f{stroke:POINTED}
`)
}

// style is the style sheet. Paper is always light.
func style() string {
	var out strings.Builder
	out.WriteString(shapes)
	for _, c := range insulation {
		out.WriteString(".lb ." + c.code + "{stroke:" + c.paint + "}")
	}
	out.WriteString("\n" + light.rules())
	out.WriteString("@media screen and (prefers-color-scheme:dark){\n" + dark.rules() + "}\n")
	return out.String()
}
