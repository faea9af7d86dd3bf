package view_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/export"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/svg"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/diagram/view"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(got), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, string(want), got, "run go test -update if the change is meant")
}

func open(t *testing.T, name string) *model.Job {
	t.Helper()
	data, err := cart.Read(name)
	require.NoError(t, err)
	d, problems := jobfile.Decode(name, data, part.Library())
	require.Empty(t, problems)
	return d.Job
}

// onPaper is a size of paper, either way that it can lie.
func onPaper(size paper.Size) []diagram.Shape {
	var shapes []diagram.Shape
	for _, lies := range []scene.Paper{size.Landscape(), size.Portrait()} {
		columns, rows := paper.Cells(lies)
		shapes = append(shapes, diagram.Shape{Columns: columns, Rows: rows, Paper: lies})
	}
	return shapes
}

// sound requires that pages have no fault, are numbered, and keep to the shape as far as
// one thing on them is not larger than it.
func sound(t require.TestingT, pages []scene.Page, what string) {
	require.NotEmpty(t, pages, what)
	for i := range pages {
		p := &pages[i]
		require.Empty(t, scene.Check(p), "%s page %d", what, i+1)
		require.Equal(t, i+1, p.Title.Page, what)
		require.Equal(t, len(pages), p.Title.Pages, what)
	}
}

// painted is all pages as text, ASCII and SVG in one.
func painted(t require.TestingT, pages []scene.Page) string {
	var b bytes.Buffer
	for i := range pages {
		b.WriteString(text.Render(&pages[i], text.Options{}).String())
		ascii := text.Render(&pages[i], text.Options{ASCII: true}).String()
		require.Empty(t, strings.Trim(ascii, asciiLetters), "printable ASCII alone")
		b.WriteString(ascii)
		_, err := svg.Render(&b, &pages[i], svg.Options{})
		require.NoError(t, err)
	}
	return b.String()
}

var asciiLetters = func() string {
	letters := []byte{'\n'}
	for c := byte(' '); c <= '~'; c++ {
		letters = append(letters, c)
	}
	return string(letters)
}()

// TestOwnViewsOfCarts draws the views that lay themselves out of every sheet of every cart
// on pages of every shape.
func TestOwnViewsOfCarts(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	shapes := map[string][]diagram.Shape{
		"any": nil, "120 columns": {{Columns: 120, Rows: 150}}, "80 columns": {{Columns: 80}}, "narrow": {{Columns: 60, Rows: 30}},
		"A4": onPaper(paper.A4), "Letter": onPaper(paper.Letter),
	}
	for _, name := range cart.Names() {
		j := open(t, name)
		for _, v := range []view.View{view.OneLine, view.Studs} {
			for _, sheet := range j.Sheets {
				for shape, of := range shapes {
					what := strings.Join([]string{name, v.Name, string(sheet.Name), shape}, " ")
					for _, whole := range []bool{false, true}[:1+len(of)/2] {
						d, err := v.Draw(j, sheet.Name, part.Library(), diagram.Options{Shapes: of, Whole: whole})
						require.NoError(t, err, what)
						sound(t, d.Pages, what)
						if whole {
							require.Len(t, d.Pages, 1, what)
							continue
						}
						for _, p := range d.Pages {
							if of != nil {
								k := slices.IndexFunc(of, func(s diagram.Shape) bool { return s.Paper == p.Paper })
								require.GreaterOrEqual(t, k, 0, what)
								require.LessOrEqual(t, p.W, of[k].Columns, what)
							}
						}
					}
				}
			}
		}
	}
}

// TestLaidOutViewsOfCarts draws the views that the layout engine places: a harness, and a
// plan against what was found.
func TestLaidOutViewsOfCarts(t *testing.T) {
	names := cart.Names()
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			j := open(t, name)
			for _, v := range []view.View{view.Harness, view.Compare} {
				d, err := v.Draw(j, model.Plan, part.Library(), diagram.Options{Quick: true})
				require.NoError(t, err)
				sound(t, d.Pages, name+" "+v.Name)
			}
			if testing.Short() {
				return
			}
			d, err := view.Harness.Draw(j, model.AsFound, part.Library(), diagram.Options{Quick: true, Shapes: onPaper(paper.A4)})
			require.NoError(t, err)
			sound(t, d.Pages, name+" harness as found")
		})
	}
}

// TestEqualJobsGiveEqualBytes draws each view twice.
func TestEqualJobsGiveEqualBytes(t *testing.T) {
	for _, v := range own {
		t.Run(v.Name, func(t *testing.T) {
			t.Parallel()
			var first string
			for range 2 {
				d, err := v.Draw(open(t, "quarry-inspection"), model.Plan, part.Library(), diagram.Options{Quick: true})
				require.NoError(t, err)
				got := painted(t, d.Pages)
				if first != "" {
					require.Equal(t, first, got)
				}
				first = got
			}
		})
	}
}

// TestEveryPainterPaintsEveryView on paper, or in characters. A comparison has no marks
// that these and the wiring view do not have.
func TestEveryPainterPaintsEveryView(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	j := open(t, "quarry-inspection")
	for _, v := range []view.View{view.OneLine, view.Harness, view.Studs} {
		for _, f := range export.All {
			o := f.Layout(export.Ask{})
			o.Quick = true
			d, err := v.Draw(j, model.Plan, part.Library(), o)
			require.NoError(t, err)
			sound(t, d.Pages, v.Name+" "+f.Name)
			files, err := f.Files(d.Pages[:1])
			require.NoError(t, err)
			require.NotEmpty(t, files[0].Data)
		}
	}
}

// TestGoldenViews keeps the views that lay themselves out, of one cart.
func TestGoldenViews(t *testing.T) {
	j := open(t, "greenhouse-tug")
	for _, v := range []view.View{view.OneLine, view.Studs} {
		d, err := v.Draw(j, model.Plan, part.Library(), diagram.Options{Shapes: []diagram.Shape{{Columns: 120, Rows: 80}}})
		require.NoError(t, err)
		for _, o := range []struct {
			name    string
			options text.Options
		}{{v.Name + ".txt", text.Options{}}, {v.Name + ".ascii.txt", text.Options{ASCII: true}}} {
			var b strings.Builder
			for i := range d.Pages {
				b.WriteString(text.Render(&d.Pages[i], o.options).String() + "\n")
			}
			golden(t, o.name, b.String())
		}
	}
}

func TestComparisonsNameTheirSheets(t *testing.T) {
	j := open(t, "quarry-inspection")
	o := diagram.Options{Quick: true}
	_, err := view.Compare.Draw(j, model.AsFound, part.Library(), o)
	require.EqualError(t, err, "the job has no sheet before the as-found sheet: name the one to compare with")
	o.Against = model.AsBuilt
	_, err = view.Compare.Draw(j, model.Plan, part.Library(), o)
	require.EqualError(t, err, "the job has no as-built sheet")
	o.Against = model.Plan
	_, err = view.Compare.Draw(j, model.Plan, part.Library(), o)
	require.EqualError(t, err, "the plan sheet cannot be compared with itself: name another one")
}

func TestViewsOfASheetThatIsNot(t *testing.T) {
	for _, v := range view.All {
		_, err := v.Draw(&model.Job{Title: "empty"}, model.Plan, part.Library(), diagram.Options{})
		require.EqualError(t, err, "the job has no plan sheet", v.Name)
	}
}
