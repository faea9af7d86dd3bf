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
	"strconv"
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
	for name, p := range map[string]*scene.Page{"cart.svg": scenetest.Cart(), "cart.state.svg": &driving, "glyphs.svg": scenetest.Glyphs(), "changes.svg": scenetest.Changes()} {
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
	allowed  = []string{"svg", "title", "desc", "style", "g", "rect", "path", "circle", "text", "use"}
	numeric  = []string{"x", "y", "width", "height", "cx", "cy", "r", "rx", "textLength"}
	integers = regexp.MustCompile(`^-?[0-9]+$`)
	ownPath  = regexp.MustCompile(`^#(p3-)?_[0-9]+$`)
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
			require.False(t, strings.HasPrefix(name, "on") || name == "style", name)
			if strings.Contains(name, "href") {
				require.Regexp(t, ownPath, a.Value, "a link to nothing but a path of the file")
				require.True(t, ids[a.Value[1:]], a.Value)
			}
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
		o := svg.Options{IDPrefix: "p3-"}
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

// group is a group of a file that stands for a thing: its id, its title and its elements.
type group struct {
	id, title string
	elements  []xml.StartElement
}

// groups lists the groups of a file that have an id.
func groups(t require.TestingT, file string) []group {
	var found []group
	d, depth, in, title := xml.NewDecoder(strings.NewReader(file)), 0, 0, false
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return found
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			depth++
			if token.Name.Local == "g" && get(token, "id") != "" {
				found, in = append(found, group{id: get(token, "id")}), depth
			} else if in > 0 {
				last := &found[len(found)-1]
				last.elements = append(last.elements, token.Copy())
			}
			title = in > 0 && token.Name.Local == "title"
		case xml.CharData:
			if title {
				found[len(found)-1].title += string(token)
			}
		case xml.EndElement:
			if depth == in {
				in = 0
			}
			depth, title = depth-1, false
		}
	}
}

var pathStep = regexp.MustCompile(`([a-zA-Z])([^a-zA-Z]*)`)

// pathMoves lists where a path of relative steps begins anew, and where it ends.
func pathMoves(t require.TestingT, d string) (begins [][2]int, end [2]int) {
	for _, step := range pathStep.FindAllStringSubmatch(d, -1) {
		var n []int
		for _, word := range regexp.MustCompile(`-?\d+`).FindAllString(step[2], -1) {
			v, err := strconv.Atoi(word)
			require.NoError(t, err)
			n = append(n, v)
		}
		switch step[1] {
		case "M":
			end = [2]int{n[0], n[1]}
		case "m", "l", "q":
			end = [2]int{end[0] + n[len(n)-2], end[1] + n[len(n)-1]}
		case "h":
			end[0] += n[0]
		case "v":
			end[1] += n[0]
		default:
			require.Fail(t, "unknown step", step[1])
		}
		if step[1] == "M" || step[1] == "m" {
			begins = append(begins, end)
		}
	}
	return begins, end
}

var ends = regexp.MustCompile(`[·:] (\S+) to ([^;,]+)`)

// svgTriples reads the same off an SVG file: a wire whose path begins or ends on a dot of
// a part, and whose title says at which terminal.
func svgTriples(t require.TestingT, file string) []string {
	parts := map[[2]int]string{}
	all := groups(t, file)
	for _, g := range all {
		for _, e := range g.elements {
			if strings.HasPrefix(get(e, "class"), "oi") {
				dots, _ := pathMoves(t, get(e, "d"))
				for _, at := range dots {
					parts[at] = g.id[strings.Index(g.id, "p-")+2:]
				}
			}
		}
	}
	found := []string{}
	for _, g := range all {
		_, wire, ok := strings.Cut(g.id, "w-")
		if !ok {
			continue
		}
		said := ends.FindStringSubmatch(g.title)
		require.Len(t, said, 3, g.title)
		begins, end := pathMoves(t, get(g.elements[1], "d"))
		for i, at := range [][2]int{begins[0], end} {
			if part, ok := parts[at]; ok {
				terminal, at := strings.CutPrefix(said[i+1], part+".")
				require.True(t, at, "%s: %s does not end at part %s", g.id, said[i+1], part)
				found = append(found, part+" "+terminal+" "+wire)
			}
		}
	}
	slices.Sort(found)
	return found
}

func TestSamplePagesSayTheSameInTextAndSVG(t *testing.T) {
	for _, p := range []*scene.Page{scenetest.Cart(), scenetest.Glyphs(), scenetest.Changes(), scenetest.Large()} {
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

// TestALargePageIsSmallInBytes holds the file of 40 parts and 120 wires to 60 KiB.
func TestALargePageIsSmallInBytes(t *testing.T) {
	p := scenetest.Large()
	require.Empty(t, scene.Check(p))
	require.Len(t, p.Boxes, 40)
	require.Len(t, p.Wires, 120)
	file, _ := render(t, p, svg.Options{})
	t.Logf("%d bytes, %d crossings", len(file), len(p.Crossings()))
	require.LessOrEqual(t, len(file), 60<<10)
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestRenderReportsAWriterThatFails(t *testing.T) {
	_, err := svg.Render(broken{}, scenetest.Cart(), svg.Options{})
	require.ErrorIs(t, err, io.ErrClosedPipe)
}

// TestPaperIsNamedForPrinting: a file by itself prints on one sheet of its own paper; a
// drawing within a page leaves the paper to that.
func TestPaperIsNamedForPrinting(t *testing.T) {
	p := scenetest.Cart()
	p.Paper = scene.Paper{Name: "Letter", WidthMM: 215.9, HeightMM: 279.4}
	file, r := render(t, p, svg.Options{})
	require.Contains(t, file, "@page{size:215.9mm 279.4mm;margin:0}")
	require.Contains(t, file, `width="215.9mm" height="279.4mm"`)
	require.False(t, r.Landscape)
	within, _ := render(t, p, svg.Options{IDPrefix: "d1-"})
	require.NotContains(t, within, "@page")
	_, rules, _ := strings.Cut(within, "<style>")
	rules, _, _ = strings.Cut(rules, "</style>")
	for selector := range strings.FieldsFuncSeq(regexp.MustCompile(`\{[^{}]*\}`).ReplaceAllString(rules, ","), func(r rune) bool { return strings.ContainsRune(",{}\n", r) }) {
		require.True(t, strings.HasPrefix(selector, ".lb ") || strings.HasPrefix(selector, "@media"), selector)
	}
}

// TestPointingLiftsAWireOut: the first path of a wire is wide and unseen until the group is
// pointed at, by style alone.
func TestPointingLiftsAWireOut(t *testing.T) {
	file, _ := render(t, scenetest.Cart(), svg.Options{})
	require.Contains(t, file, ".lb .w{stroke:transparent;stroke-width:24}")
	require.Regexp(t, `\.lb \.w>g:hover,\.lb \.w>g:target\{stroke:#[0-9a-f]{8}\}`, file)
	require.Contains(t, file, "@media screen and (prefers-color-scheme:dark)")
	wires := 0
	for _, g := range groups(t, file) {
		if strings.HasPrefix(g.id, "w-") {
			wires++
			require.Equal(t, "title", g.elements[0].Name.Local)
			require.Empty(t, get(g.elements[1], "class"), "the path takes its look from its group")
			require.Equal(t, "use", g.elements[2].Name.Local)
			require.Equal(t, "#"+get(g.elements[1], "id"), get(g.elements[2], "href"))
		}
	}
	require.Len(t, scenetest.Cart().Wires, wires)
}
