package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
	"example.com/lugbook/diagram/svg"
	"example.com/lugbook/diagram/text"
	_ "example.com/lugbook/model/fixedseed"
)

var update = flag.Bool("update", false, "write the golden files anew")

func render(t require.TestingT, p *scene.Page, o svg.Options) (string, svg.Result) {
	var out bytes.Buffer
	r, err := svg.Render(&out, p, o)
	require.NoError(t, err)
	return out.String(), r
}

func TestSamplePages(t *testing.T) {
	driving := scenetest.Cart().In(scenetest.CartState())
	for name, p := range map[string]*scene.Page{"cart.svg": scenetest.Cart(), "cart.state.svg": &driving, "glyphs.svg": scenetest.Glyphs()} {
		got, _ := render(t, p, svg.Options{})
		file := filepath.Join("testdata", name)
		if *update {
			require.NoError(t, os.MkdirAll("testdata", 0o755))
			require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, string(want), got, "run go test -update if the change is meant")
	}
}

// elements reads a file as XML and lists its elements in order.
func elements(t require.TestingT, file string) []xml.StartElement {
	d := xml.NewDecoder(strings.NewReader(file))
	var found []xml.StartElement
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return found
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			found = append(found, token.Copy())
		case xml.CharData, xml.EndElement:
		default:
			require.Fail(t, "neither element nor text", "%T", token)
		}
	}
}

func get(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

var (
	allowed  = []string{"svg", "title", "desc", "style", "g", "rect", "path", "circle", "text"}
	numeric  = []string{"x", "y", "width", "height", "cx", "cy", "r", "rx", "textLength"}
	integers = regexp.MustCompile(`^-?[0-9]+$`)
	pathData = regexp.MustCompile(`^[A-Za-z0-9 ,-]*$`)
)

// sound fails if a file has elements, attributes or ids that a drawing must not have.
func sound(t require.TestingT, file string) {
	all := elements(t, file)
	ids := map[string]bool{}
	for _, e := range all {
		require.Contains(t, allowed, e.Name.Local)
		for _, a := range e.Attr {
			name := a.Name.Local
			require.False(t, strings.HasPrefix(name, "on") || strings.Contains(name, "href") || name == "style", name)
			if slices.Contains(numeric, name) && e.Name.Local != "svg" {
				require.Regexp(t, integers, a.Value, "%s of %s", name, e.Name.Local)
			}
			if name == "d" || name == "transform" {
				require.NotContains(t, a.Value, ".")
			}
			if name == "d" {
				require.Regexp(t, pathData, a.Value)
			}
			if name == "id" {
				require.False(t, ids[a.Value], "second id %s", a.Value)
				ids[a.Value] = true
			}
		}
	}
	require.Equal(t, "img", get(all[0], "role"))
	for _, id := range strings.Fields(get(all[0], "aria-labelledby")) {
		require.True(t, ids[id])
	}
	require.Equal(t, "title", all[1].Name.Local)
	require.Equal(t, "desc", all[2].Name.Local)
}

func TestRandomPages(t *testing.T) {
	wires := 0
	rapid.Check(t, func(t *rapid.T) {
		p := scenetest.Random(func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") })
		wires += len(p.Wires)
		o := svg.Options{Paper: svg.Paper(rapid.IntRange(0, 1).Draw(t, "paper")), IDPrefix: "p3-"}
		file, _ := render(t, p, o)
		sound(t, file)
		again, _ := render(t, p, o)
		require.Equal(t, file, again)
		require.Equal(t, sceneTriples(p), svgTriples(t, file))
		require.Equal(t, sceneTriples(p), textTriples(p))
	})
	if testing.Short() {
		return // fewer pages are drawn
	}
	require.Greater(t, wires, 50, "the pages drawn at random have too few wires to test anything")
}

// TestStatesAreShownByMoreThanColour paints random states: each wire has the class of what
// it does, one head for each arrow, its figure as text, and each part its word.
func TestStatesAreShownByMoreThanColour(t *testing.T) {
	classes := map[scene.Energy]string{scene.Unjudged: " unjudged", scene.Dead: " dead", scene.Return: " return", scene.Live: " live"}
	rapid.Check(t, func(t *rapid.T) {
		pick := func(n int) int { return rapid.IntRange(0, n-1).Draw(t, "pick") }
		plain := scenetest.Random(pick)
		p := plain.In(scenetest.RandomState(plain, pick))
		file, _ := render(t, &p, svg.Options{})
		sound(t, file)
		require.Equal(t, sceneTriples(&p), svgTriples(t, file))
		require.Equal(t, sceneTriples(&p), textTriples(&p))
		wires, heads, glows := map[string]string{}, 0, 0
		for _, e := range elements(t, file) {
			switch class := get(e, "class"); {
			case get(e, "data-wire") != "":
				wires[get(e, "data-wire")] = class + " "
			case class == "a":
				heads++
			case class == "h":
				glows++
			}
		}
		if p.Use().Carries {
			heads-- // the sample in the legend
			glows--
		}
		for _, w := range p.Wires {
			require.Contains(t, wires[w.ID], classes[w.Flow.Energy]+" ")
			require.Equal(t, w.Flow.Carries(), strings.Contains(wires[w.ID], " carries "))
			if w.Flow.Carries() {
				heads -= len(w.Flow.Arrows)
			}
			if w.Flow.Energy == scene.Live {
				glows--
			}
			if w.Flow.Note.Text != "" {
				require.Contains(t, file, ">"+w.Flow.Note.Text+"</text>")
			}
		}
		require.Zero(t, heads)
		require.Contains(t, []int{0, 1}, glows, "one band for each live wire, and the legend's sample")
		for _, b := range p.Boxes {
			if !scene.Inside(b).Unsaid && b.Works.Word != "" {
				require.Contains(t, file, ">"+b.Works.Word+"</text>")
			}
		}
	})
}

// sceneTriples lists part, terminal and wire of every wire end on a part.
func sceneTriples(p *scene.Page) []string {
	found := []string{}
	for _, w := range p.Wires {
		for _, end := range []scene.Point{w.Path[0], w.Path[len(w.Path)-1]} {
			for _, b := range p.Boxes {
				for _, port := range b.Ports {
					if port.At == end {
						found = append(found, fmt.Sprint(b.ID, " ", port.Terminal(), " ", w.ID))
					}
				}
			}
		}
	}
	slices.Sort(found)
	return found
}

// textTriples reads the same off a page painted in text: from each terminal outwards,
// under wires that cross, to the first piece of line that points at the terminal.
func textTriples(p *scene.Page) []string {
	g := text.Render(p, text.Options{Bare: true})
	found := []string{}
	for _, b := range p.Boxes {
		for _, port := range b.Ports {
			dx, dy := port.Side.Step()
			mark, at := g.At(port.At.X, port.At.Y), port.At.Add(dx, dy)
			crossed := map[string]bool{}
			for dy == 0 && strings.ContainsRune("│┃║╎╏", g.At(at.X, at.Y).Rune) {
				crossed[g.At(at.X, at.Y).Owner.ID] = true
				at.X += dx
			}
			next := g.At(at.X, at.Y)
			line := next.Role == text.WireLine && meets(next.Rune, port.Side) || next.Role == text.FlowArrow
			// A label in its wire's own line may follow a crossing directly; one that names
			// the wire crossed stands beside that.
			if label := next.Role == text.WireLabel && dy == 0 && !crossed[next.Owner.ID]; mark.Role == text.PortJoin && (line || label) {
				found = append(found, fmt.Sprint(mark.Owner.ID, " ", mark.Owner.Port, " ", next.Owner.ID))
			}
		}
	}
	slices.Sort(found)
	return found
}

// meets reports whether a wire's glyph has an arm towards a port on the given side
// of a box.
func meets(glyph rune, side scene.Side) bool {
	return strings.ContainsRune(map[scene.Side]string{
		scene.North: "│┃║╎╏╭╮┏┓╔╗", scene.South: "│┃║╎╏╰╯┗┛╚╝", scene.East: "─━═╌╍╮╯┓┛╗╝", scene.West: "─━═╌╍╭╰┏┗╔╚",
	}[side], glyph)
}

var (
	pathStart = regexp.MustCompile(`^M(-?\d+ -?\d+)`)
	pathEnd   = regexp.MustCompile(`L(-?\d+ -?\d+)$`)
)

// svgTriples reads the same off an SVG file: a wire's path that starts or ends in the
// middle of a terminal's circle.
func svgTriples(t require.TestingT, file string) []string {
	found, wire, part := []string{}, "", ""
	terminals, ends := map[string]string{}, map[string]string{}
	for _, e := range elements(t, file) {
		switch {
		case get(e, "data-wire") != "":
			wire = get(e, "data-wire")
		case e.Name.Local == "path" && get(e, "class") == "k" && wire != "":
			d := get(e, "d")
			ends[pathStart.FindStringSubmatch(d)[1]] = wire
			ends[pathEnd.FindStringSubmatch(d)[1]] = wire
			wire = ""
		case get(e, "data-part") != "":
			part = get(e, "data-part")
		case get(e, "data-terminal") != "":
			terminals[get(e, "cx")+" "+get(e, "cy")] = part + " " + get(e, "data-terminal")
		}
	}
	for at, wire := range ends {
		if terminal, ok := terminals[at]; ok {
			found = append(found, terminal+" "+wire)
		}
	}
	slices.Sort(found)
	return found
}

func TestSamplePagesSayTheSameInTextAndSVG(t *testing.T) {
	for _, p := range []*scene.Page{scenetest.Cart(), scenetest.Glyphs()} {
		file, _ := render(t, p, svg.Options{})
		require.NotEmpty(t, sceneTriples(p))
		require.Equal(t, sceneTriples(p), svgTriples(t, file))
		require.Equal(t, sceneTriples(p), textTriples(p))
	}
}

func TestHostileTextAddsNoElement(t *testing.T) {
	count := func(s string) int {
		file, _ := render(t, scenetest.Spoiled(s), svg.Options{})
		sound(t, file)
		for _, r := range file {
			require.False(t, r < ' ' && r != '\n' || r >= 0x7F && r < 0xA0 || r == '\u202e' || r == '\u2066' || r == '\ufeff' || r == '\u2028', "%q in %q", r, s)
		}
		n := 0
		for _, e := range elements(t, file) {
			if e.Name.Local != "text" && e.Name.Local != "rect" && e.Name.Local != "path" {
				n++ // long texts fold into more lines, and crossings of plates do not matter
			}
		}
		return n
	}
	plain := count("plain")
	for _, s := range scenetest.Hostile {
		require.Equal(t, plain, count(s), "%q", s)
	}
}

func TestFitsItsPaper(t *testing.T) {
	wide, tall, small := &scene.Page{W: 160, H: 40}, &scene.Page{W: 60, H: 100}, &scene.Page{W: 40, H: 20}
	for _, c := range []struct {
		page      *scene.Page
		paper     svg.Paper
		size      string
		landscape bool
	}{
		{wide, svg.A4, `width="297mm" height="210mm"`, true},
		{wide, svg.Letter, `width="279.4mm" height="215.9mm"`, true},
		{tall, svg.A4, `width="210mm" height="297mm"`, false},
		{tall, svg.Letter, `width="215.9mm" height="279.4mm"`, false},
		{small, svg.A4, `width="297mm" height="210mm"`, true},
	} {
		file, r := render(t, c.page, svg.Options{Paper: c.paper})
		require.Contains(t, file, c.size)
		require.Equal(t, c.landscape, r.Landscape)
		require.LessOrEqual(t, r.Scale, 100)
	}
	_, r := render(t, small, svg.Options{})
	require.Equal(t, 100, r.Scale, "nothing is enlarged")
	require.InDelta(t, 2.95, r.TextHeight, 0.01)
	_, r = render(t, scenetest.Cart(), svg.Options{})
	require.Greater(t, r.TextHeight, 2.3)
	_, r = render(t, &scene.Page{W: 5000, H: 5000}, svg.Options{})
	require.Less(t, r.Scale, 3)
	require.NotPanics(t, func() { render(t, &scene.Page{}, svg.Options{}) })
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestRenderReportsAWriterThatFails(t *testing.T) {
	_, err := svg.Render(broken{}, scenetest.Cart(), svg.Options{})
	require.ErrorIs(t, err, io.ErrClosedPipe)
}
