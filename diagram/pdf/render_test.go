package pdf_test

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/pdf"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
)

func render(t require.TestingT, pages ...scene.Page) []byte {
	var out bytes.Buffer
	require.NoError(t, pdf.Render(&out, pages))
	return out.Bytes()
}

// object is a numbered object of a file: its dictionary, and its stream if it has one,
// inflated.
type object struct{ dict, stream string }

var (
	objectStart = regexp.MustCompile(`(?m)^(\d+) 0 obj$`)
	mediaBox    = regexp.MustCompile(`/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]`)
	contents    = regexp.MustCompile(`/Contents (\d+) 0 R`)
	shown       = regexp.MustCompile(`(?s)\(((?:[^()\\]|\\.)*)\) Tj`)
)

// objects reads the objects of a file by the table at its end.
func objects(t require.TestingT, file []byte) map[int]object {
	_, tail, ok := bytes.Cut(file, []byte("startxref\n"))
	require.True(t, ok)
	table, err := strconv.Atoi(strings.Fields(string(tail))[0])
	require.NoError(t, err)
	lines := strings.Split(string(file[table:]), "\n")
	require.Equal(t, "xref", lines[0])
	n, err := strconv.Atoi(strings.Fields(lines[1])[1])
	require.NoError(t, err)
	found := map[int]object{}
	for i := 1; i < n; i++ {
		at, err := strconv.Atoi(strings.TrimLeft(strings.Fields(lines[2+i])[0], "0"))
		require.NoError(t, err)
		start := objectStart.FindSubmatchIndex(file[at:])
		require.NotNil(t, start, "object %d", i)
		require.Zero(t, start[0], "object %d is where the table says", i)
		require.Equal(t, strconv.Itoa(i), string(file[at:][start[2]:start[3]]))
		body, _, _ := bytes.Cut(file[at+start[1]:], []byte("\nendobj"))
		dict, stream, has := bytes.Cut(body, []byte("stream\n"))
		o := object{dict: string(dict)}
		if has {
			o.stream = inflated(t, o.dict, bytes.TrimSuffix(stream, []byte("\nendstream")))
		}
		found[i] = o
	}
	return found
}

func inflated(t require.TestingT, dict string, stream []byte) string {
	if !strings.Contains(dict, "/FlateDecode") {
		return string(stream)
	}
	r, err := zlib.NewReader(bytes.NewReader(stream))
	require.NoError(t, err)
	plain, err := io.ReadAll(r)
	require.NoError(t, err)
	return string(plain)
}

// page is a page of a file: its size in points, what it draws and the texts on it.
type page struct {
	width, height, drawing string
	texts                  []string
}

func read(t require.TestingT, file []byte) []page {
	all := objects(t, file)
	var pages []page
	for i := 1; i <= len(all); i++ {
		o := all[i]
		if !strings.Contains(o.dict, "/Type /Page\n") {
			continue
		}
		p := page{}
		if box := mediaBox.FindStringSubmatch(o.dict); box != nil {
			p.width, p.height = box[1], box[2]
		} else {
			box := mediaBox.FindStringSubmatch(all[1].dict)
			require.NotNil(t, box)
			p.width, p.height = box[1], box[2]
		}
		n, err := strconv.Atoi(contents.FindStringSubmatch(o.dict)[1])
		require.NoError(t, err)
		p.drawing = all[n].stream
		for _, text := range shown.FindAllStringSubmatch(p.drawing, -1) {
			p.texts = append(p.texts, utf16Text(text[1]))
		}
		pages = append(pages, p)
	}
	return pages
}

// utf16Text reads the letters of a string, two bytes each.
func utf16Text(s string) string {
	s = strings.NewReplacer(`\\`, `\`, `\(`, `(`, `\)`, `)`, `\r`, "\r").Replace(s)
	var units []uint16
	for i := 0; i+1 < len(s); i += 2 {
		units = append(units, uint16(s[i])<<8|uint16(s[i+1]))
	}
	return string(utf16.Decode(units))
}

func TestPagesHaveTheirPaperAndTheirText(t *testing.T) {
	driving := scenetest.Cart().In(scenetest.CartState())
	driving.Paper = scene.Paper{Name: "Letter", WidthMM: 279.4, HeightMM: 215.9}
	upright := *scenetest.Changes()
	upright.Paper = scene.Paper{Name: "A4", WidthMM: 210, HeightMM: 297}
	pages := read(t, render(t, driving, upright, *scenetest.Large()))
	require.Len(t, pages, 3)
	for i, size := range [][2]string{{"792.00", "612.00"}, {"595.28", "841.89"}, {"841.89", "595.28"}} {
		require.Equal(t, size, [2]string{pages[i].width, pages[i].height}, "page %d", i+1)
	}
	for _, word := range []string{"main contactor", "w4 2/0 BK", "187 A", "CLOSED", "L1", "M", "rear"} {
		require.Contains(t, pages[0].texts, word)
	}
	require.Contains(t, pages[1].texts, "x a1")
	for i := range 120 {
		require.True(t, slices.ContainsFunc(pages[2].texts, func(s string) bool { return strings.HasPrefix(s, fmt.Sprintf("c%d 2.5 ", i+1)) }))
	}
}

var lineStep = regexp.MustCompile(`(?m)^([0-9.]+) ([0-9.]+) ([ml])$`)

// TestTheLinesOfWiresEndWhereTheSceneSays reads every line of a page that fits its paper in
// full size. Wherever the page lies on the paper, the ends of its wires are as far apart as
// cells of 2.1 x 4.2 mm say.
func TestTheLinesOfWiresEndWhereTheSceneSays(t *testing.T) {
	const pointsPerMM = 72 / 25.4
	p := *scenetest.Changes()
	p.Table = scene.Table{} // so that it fits
	p.Paper = scene.Paper{Name: "A4", WidthMM: 297, HeightMM: 210}
	type place struct{ x, y int } // hundredths of a point
	hundredths := func(s string) int {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return int(math.Round(v * 100))
	}
	at := map[place]bool{}
	var first []place
	for _, m := range lineStep.FindAllStringSubmatch(read(t, render(t, p))[0].drawing, -1) {
		here := place{hundredths(m[1]), hundredths(m[2])}
		for dx := -1; dx <= 1; dx++ { // rounded to hundredths
			for dy := -1; dy <= 1; dy++ {
				at[place{here.x + dx, here.y + dy}] = true
			}
		}
		first = append(first, here)
	}
	origin := p.Wires[0].Path[0]
	fits := func(o place) bool {
		for _, w := range p.Wires {
			for _, c := range []scene.Point{w.Path[0], w.Path[len(w.Path)-1]} {
				x := float64(o.x) + float64(c.X-origin.X)*210*pointsPerMM
				y := float64(o.y) - float64(c.Y-origin.Y)*420*pointsPerMM
				if !at[place{int(math.Round(x)), int(math.Round(y))}] {
					return false
				}
			}
		}
		return true
	}
	require.True(t, slices.ContainsFunc(first, fits))
}

func TestEqualPagesGiveEqualBytes(t *testing.T) {
	pages := []scene.Page{*scenetest.Cart(), *scenetest.Glyphs(), *scenetest.Changes()}
	file := render(t, pages...)
	require.Equal(t, file, render(t, pages...))
	sum := sha256.Sum256(file)
	if os.Getenv("PDF_SUM_ONLY") != "" {
		fmt.Printf("sum %s\n", hex.EncodeToString(sum[:]))
		return
	}
	again := exec.Command(os.Args[0], "-test.run", "^TestEqualPagesGiveEqualBytes$")
	again.Env = append(os.Environ(), "PDF_SUM_ONLY=1")
	out, err := again.Output()
	require.NoError(t, err)
	require.Contains(t, string(out), "sum "+hex.EncodeToString(sum[:]), "another process writes the same bytes")
}

func TestTheFileTellsWhatItIsAndNotWhenItWasMade(t *testing.T) {
	file := string(render(t, *scenetest.Cart()))
	require.Contains(t, file, "/CreationDate (D:20260314000000)")
	require.NotContains(t, file, "/FileName")
	undated := *scenetest.Changes()
	require.Contains(t, string(render(t, undated)), "/CreationDate (D:20000101000000)")
	for _, word := range []string{"/Title", "/Subject", "/Keywords"} {
		require.Contains(t, file, word)
	}
}

// TestHostileTextAddsNothing paints texts that try to break out of theirs: each file still
// has the same objects, and no more than those of a plain one.
func TestHostileTextAddsNothing(t *testing.T) {
	shape := func(s string) []string {
		all := objects(t, render(t, *scenetest.Spoiled(s)))
		var kinds []string
		for i := 1; i <= len(all); i++ {
			for _, word := range []string{"/JavaScript", "/OpenAction", "/URI", "/Annots", "/Launch"} {
				require.NotContains(t, all[i].dict, word, "%q", s)
			}
			kind, _, _ := strings.Cut(strings.TrimSpace(all[i].dict), "\n")
			kinds = append(kinds, regexp.MustCompile(`\d+|\([^)]*\)`).ReplaceAllString(kind, ""))
		}
		return kinds
	}
	plain := shape("plain")
	for _, s := range scenetest.Hostile {
		for _, kind := range shape(s) {
			require.Contains(t, plain, kind, "%q", s)
		}
		require.LessOrEqual(t, len(shape(s)), len(plain), "%q", s)
	}
}

func TestRandomPages(t *testing.T) {
	for seed := range uint64(6) {
		pick := rand.New(rand.NewPCG(seed, 1)).IntN
		plain := scenetest.Random(pick)
		p := plain.In(scenetest.RandomState(plain, pick))
		pages := read(t, render(t, p, *plain))
		require.Len(t, pages, 2)
		for _, w := range p.Wires {
			if w.Label.Text != "" {
				require.Contains(t, pages[1].texts, w.Label.Text)
			}
			if w.Flow.Note.Text != "" {
				require.Contains(t, pages[0].texts, w.Flow.Note.Text)
			}
		}
		for _, b := range p.Boxes {
			require.True(t, slices.ContainsFunc(pages[1].texts, func(s string) bool { return strings.HasSuffix(s, b.ID) }), b.ID)
		}
	}
}

// TestFlagsLeadToThePageWhereTheirWireGoesOn joins two pages by a wire.
func TestFlagsLeadToThePageWhereTheirWireGoesOn(t *testing.T) {
	one, two := *scenetest.Cart(), *scenetest.Cart()
	for i := range two.Wires {
		if two.Wires[i].ID != "w9" {
			two.Wires[i].ID += "b"
		}
	}
	leads := regexp.MustCompile(`/Dest \[(\d+) 0 R`)
	var found []string
	all := objects(t, render(t, one, two))
	for i := 1; i <= len(all); i++ {
		for _, to := range leads.FindAllStringSubmatch(all[i].dict, -1) {
			n, err := strconv.Atoi(to[1])
			require.NoError(t, err)
			require.Contains(t, all[n].dict, "/Type /Page\n")
			if strings.Contains(all[i].dict, "/Type /Page\n") {
				require.NotEqual(t, i, n, "no flag leads to its own page")
				found = append(found, fmt.Sprint(i, " to ", n))
			}
		}
	}
	require.Len(t, found, 2, "that wire's flag on either page")
	require.NotEqual(t, found[0], found[1])
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestRenderReportsAWriterThatFails(t *testing.T) {
	err := pdf.Render(broken{}, []scene.Page{*scenetest.Cart()})
	require.True(t, errors.Is(err, io.ErrClosedPipe) || err != nil && strings.Contains(err.Error(), io.ErrClosedPipe.Error()), "%v", err)
}
