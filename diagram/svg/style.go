package svg

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/lugbook/diagram/ink"
)

// codes are short names of tones in classes. Insulation goes by its own code.
var codes = map[ink.Tone]string{
	ink.Page: "p", ink.Ink: "i", ink.Soft: "s", ink.Casing: "k", ink.Unknown: "u", ink.Alarm: "a", ink.Glow: "g", ink.Metal: "m",
}

func code(t ink.Tone) string {
	if c := codes[t]; c != "" {
		return c
	}
	return string(t)
}

// class names a pen by what it is: the tone of its line with the width in tenths of a unit
// and the pattern, then the tone of its fill; for letters t, tone, face and size. Letters
// in ink that fill cells have none.
func class(p ink.Pen, letters bool) string {
	switch {
	case letters && p == (ink.Pen{Fill: ink.Ink}):
		return ""
	case letters:
		name := "t" + code(p.Fill) + [...]string{ink.Plain: "", ink.Bold: "b", ink.Italic: "i"}[p.Face]
		if p.Size > 0 {
			name += strconv.Itoa(p.Size)
		}
		return name
	case p.Line == "":
		return "f" + code(p.Fill)
	}
	name := code(p.Line) + strconv.Itoa(p.Width)
	switch {
	case p.Dash == ink.Striped:
		name += "s"
	case p.Dash.On > 0:
		name += fmt.Sprintf("d%d-%d", p.Dash.On, p.Dash.Off)
	}
	if p.Fill != "" {
		name += "-" + code(p.Fill)
	}
	return name
}

// rule is a pen with its class.
type rule struct {
	class   string
	pen     ink.Pen
	letters bool
	round   bool // dots are lines of no length with round ends
}

// shape is what is the same in light and dark.
func (r rule) shape() string {
	var out strings.Builder
	if r.pen.Line != "" {
		out.WriteString("stroke-width:" + tenths(r.pen.Width))
	}
	if r.pen.Dash.On > 0 {
		fmt.Fprintf(&out, ";stroke-dasharray:%d %d", r.pen.Dash.On, r.pen.Dash.Off)
	}
	if r.round {
		out.WriteString(";stroke-linecap:round")
	}
	if !r.letters {
		return out.String()
	}
	out.WriteString([...]string{ink.Plain: "", ink.Bold: "font-weight:700;", ink.Italic: "font-style:italic;"}[r.pen.Face])
	if r.pen.Size > 0 {
		fmt.Fprintf(&out, "font-size:%dpx", r.pen.Size)
	}
	return strings.TrimSuffix(out.String(), ";")
}

// paint is what differs in light and dark.
func (r rule) paint(shade func(ink.Tone) (ink.Shade, bool)) string {
	var out []string
	if c, ok := shade(r.pen.Line); ok {
		out = append(out, "stroke:"+hex(c))
	}
	if c, ok := shade(r.pen.Fill); ok {
		out = append(out, "fill:"+hex(c))
	}
	return strings.Join(out, ";")
}

func tenths(n int) string {
	return strings.TrimSuffix(fmt.Sprintf("%d.%d", n/10, n%10), ".0")
}

func hex(c ink.Shade) string { return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2]) }

// common are the rules that every drawing has. A wire's own path is the wide line that
// nobody sees until a pointer rests on it.
const common = `
.lb text{font-family:ui-monospace,"DejaVu Sans Mono","Liberation Mono",Menlo,Consolas,monospace;font-size:FONTpx;white-space:pre;stroke:none}
.lb path{stroke-linejoin:round}
.lb .mid{text-anchor:middle}
.lb .w{stroke:transparent;stroke-width:24}
`

// pointing are the rules that lift a thing out, and those of plain letters.
func pointing(shade func(ink.Tone) (ink.Shade, bool)) string {
	at, _ := shade(ink.Pointed)
	letters, _ := shade(ink.Ink)
	return strings.NewReplacer("POINTED", hex(at), "INK", hex(letters)).Replace(`.lb text{fill:INK}
.lb .w>g:hover,.lb .w>g:target{stroke:POINTED88}
.lb .w>g:hover [class^=k],.lb .w>g:target [class^=k],.lb .n>g:hover [class^=i32],.lb .n>g:target [class^=i32]{stroke:POINTED}
`)
}

// style is the style sheet for the pens in use. Paper is always light. Within a page of
// other things the rules hold for the drawing alone.
func style(rules []rule, within bool) string {
	var light, dark sheet
	for _, r := range rules {
		onPaper, onScreen := r.paint(ink.Tone.Light), r.paint(ink.Tone.Dark)
		selector := "." + r.class
		if r.letters || within {
			selector = ".lb " + selector // letters: to weigh more than the rules of plain ones
		}
		light.add(selector, r.shape())
		light.add(selector, onPaper)
		if onScreen != onPaper {
			dark.add(selector, onScreen)
		}
	}
	return strings.Replace(common, "FONT", tenths(ink.Em), 1) + light.String() + pointing(ink.Tone.Light) +
		"@media screen and (prefers-color-scheme:dark){\n" + dark.String() + pointing(ink.Tone.Dark) + "}\n"
}

// sheet collects rules, those that say the same as one.
type sheet struct {
	says      []string // in the order of first use
	selectors map[string][]string
}

func (s *sheet) add(selector, says string) {
	if says == "" {
		return
	}
	if s.selectors == nil {
		s.selectors = map[string][]string{}
	}
	if s.selectors[says] == nil {
		s.says = append(s.says, says)
	}
	s.selectors[says] = append(s.selectors[says], selector)
}

func (s *sheet) String() string {
	var out strings.Builder
	for _, says := range s.says {
		out.WriteString(strings.Join(s.selectors[says], ",") + "{" + says + "}\n")
	}
	return out.String()
}
