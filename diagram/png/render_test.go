package png_test

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	stdpng "image/png"
	"io"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram/ink"
	"example.com/lugbook/diagram/png"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/scene/scenetest"
)

func render(t *testing.T, p *scene.Page, dpi int) (file []byte, picture image.Image) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, png.Render(&out, p, png.Options{DPI: dpi}))
	picture, err := stdpng.Decode(bytes.NewReader(out.Bytes()))
	require.NoError(t, err)
	return out.Bytes(), picture
}

func TestThePictureHasTheSizeOfItsPaper(t *testing.T) {
	letter := scene.Page{W: 10, H: 5, Paper: scene.Paper{Name: "Letter", WidthMM: 279.4, HeightMM: 215.9}}
	for _, c := range []struct {
		page          scene.Page
		dpi           int
		width, height int
	}{
		{letter, 100, 1100, 850},
		{letter, 0, 2200, 1700},
		{scene.Page{W: 10, H: 5}, 100, 1169, 826},
	} {
		file, picture := render(t, &c.page, c.dpi)
		require.Equal(t, image.Pt(c.width, c.height), picture.Bounds().Size())
		at := bytes.Index(file, []byte("pHYs"))
		require.Equal(t, 8+25+4, at, "the size on paper is told right after the header")
		if c.dpi == 0 {
			c.dpi = png.DefaultDPI
		}
		require.InDelta(t, float64(c.dpi)/0.0254, float64(binary.BigEndian.Uint32(file[at+4:])), 1, "pixels per metre")
	}
}

// TestWiresShowTheirInsulation looks at the middle of a straight piece of every unbroken
// wire: it has the colour of the stroke that was laid last.
func TestWiresShowTheirInsulation(t *testing.T) {
	const dpi = 300 // so that the core of the thinnest is wider than a pixel
	p := scenetest.Cart()
	_, picture := render(t, p, dpi)
	s := ink.Set(p)
	seen := map[ink.Tone]bool{}
	for _, g := range s.Groups {
		if g.Kind != ink.WireGroup {
			continue
		}
		top, striped := ink.Pen{}, false
		for _, m := range g.Marks {
			if m.Shape == ink.Line && m.Pen.Line != ink.Hit {
				top, striped = m.Pen, striped || m.Pen.Dash.On > 0
			}
		}
		middle, ok := straightMiddle(g.Marks[0].Path)
		if !ok || striped {
			continue
		}
		shade, _ := top.Line.Light()
		pixel := func(v int) int { return v * s.Unit / 1000 * dpi / 25400 }
		got := color.RGBAModel.Convert(picture.At(pixel(middle.X), pixel(middle.Y)))
		require.Equal(t, color.RGBA{shade[0], shade[1], shade[2], 255}, got, "wire %s", g.ID)
		seen[top.Line] = true
	}
	require.Greater(t, len(seen), 5, "too few colours to test anything")
}

// straightMiddle is the middle of the longest straight piece of a path.
func straightMiddle(path []ink.Step) (ink.Point, bool) {
	var at, best ink.Point
	longest := 0
	for _, s := range path {
		if d := max(s.To.X-at.X, at.X-s.To.X, s.To.Y-at.Y, at.Y-s.To.Y); s.Op == ink.Draw && d > longest {
			longest, best = d, ink.Point{X: (s.To.X + at.X) / 2, Y: (s.To.Y + at.Y) / 2}
		}
		at = s.To
	}
	return best, longest > ink.CellW
}

// TestTextsAreSeen looks for dark pixels within each letter's row of cells.
func TestTextsAreSeen(t *testing.T) {
	const dpi = 150
	p := scenetest.Cart()
	_, picture := render(t, p, dpi)
	s := ink.Set(p)
	texts := 0
	for _, g := range s.Groups {
		for _, m := range g.Marks {
			if m.Shape != ink.Letters || m.Cells == 0 {
				continue
			}
			texts++
			pixel := func(v int) int { return v * s.Unit / 1000 * dpi / 25400 }
			area := image.Rect(pixel(m.At.X), pixel(m.At.Y-ink.CellH/2), pixel(m.At.X+m.Cells*ink.CellW), pixel(m.At.Y+ink.CellH/2))
			darkest := uint32(0xffff)
			for y := area.Min.Y; y < area.Max.Y; y++ {
				for x := area.Min.X; x < area.Max.X; x++ {
					r, _, _, _ := picture.At(x, y).RGBA()
					darkest = min(darkest, r)
				}
			}
			require.Less(t, darkest, uint32(0xc000), "%q", m.Text)
		}
	}
	require.Greater(t, texts, 50)
}

func TestEqualPagesGiveEqualBytes(t *testing.T) {
	p := scenetest.Cart().In(scenetest.CartState())
	first, _ := render(t, &p, 100)
	again, _ := render(t, &p, 100)
	require.True(t, bytes.Equal(first, again))
}

func TestAnyPageIsPainted(t *testing.T) {
	for _, s := range scenetest.Hostile {
		render(t, scenetest.Spoiled(s), png.LeastDPI)
	}
	for seed := range uint64(5) {
		render(t, scenetest.Random(rand.New(rand.NewPCG(seed, 2)).IntN), png.LeastDPI)
	}
	outside := scenetest.Cart()
	outside.Boxes[0].Rect = scene.Rect{X: -50, Y: -9, W: 3, H: 2}
	outside.Wires[0].Path = append(outside.Wires[0].Path, scene.Point{X: -3, Y: 999})
	render(t, outside, png.LeastDPI)
	render(t, &scene.Page{}, png.LeastDPI)
}

func TestResolutionsOutOfRangeAreRefused(t *testing.T) {
	for _, dpi := range []int{-1, png.LeastDPI - 1, png.MostDPI + 1} {
		require.ErrorContains(t, png.Render(io.Discard, scenetest.Cart(), png.Options{DPI: dpi}), "expected 50 to 600")
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestRenderReportsAWriterThatFails(t *testing.T) {
	require.ErrorIs(t, png.Render(broken{}, scenetest.Cart(), png.Options{DPI: 50}), io.ErrClosedPipe)
}
