package diagram_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

// onPaper is what a sheet of paper holds, both ways.
func onPaper(s paper.Size) []diagram.Shape {
	var shapes []diagram.Shape
	for _, lies := range []scene.Paper{s.Landscape(), s.Portrait()} {
		columns, rows := paper.Cells(lies)
		shapes = append(shapes, diagram.Shape{Columns: columns, Rows: rows, Paper: lies})
	}
	return shapes
}

// TestNoWireIsLostBetweenPages draws random sheets on small pages.
func TestNoWireIsLostBetweenPages(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	n := 60
	if testing.Short() {
		n = 6
	}
	shapes := [][]diagram.Shape{
		{{Columns: 110, Rows: 40}}, {{Columns: 150, Rows: 25}, {Columns: 100, Rows: 60}}, onPaper(paper.A4)[1:], {{Columns: 100}},
	}
	const lanes = 4
	for lane := range lanes {
		t.Run(fmt.Sprint(lane), func(t *testing.T) {
			t.Parallel()
			for seed := lane; seed < n; seed += lanes {
				j := randomJob(uint64(seed))
				d, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{Quick: true, Shapes: shapes[lane]})
				require.NoError(t, err, "seed %d", seed)
				pagesAgree(t, j, &j.Sheets[0], d)
			}
		})
	}
}

// TestWorkedCartsGoOnPaper puts every sheet of every worked cart on pages of A4 and finds
// each wire with its marks, and all letters of full size but where one part fills more than a page.
func TestWorkedCartsGoOnPaper(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	names := cart.Names()
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for i := range d.Job.Sheets {
			s := &d.Job.Sheets[i]
			t.Run(name+" "+string(s.Name), func(t *testing.T) {
				t.Parallel()
				drawing, err := diagram.Draw(d.Job, s.Name, part.Library(), diagram.Options{Quick: true, Shapes: onPaper(paper.A4)})
				require.NoError(t, err)
				require.Greater(t, len(drawing.Pages), 1)
				require.LessOrEqual(t, len(drawing.Pages), len(s.Parts)/3)
				pagesAgree(t, d.Job, s, drawing)
				for i := range drawing.Pages {
					p := &drawing.Pages[i]
					require.Equal(t, drawing.Pages[0].Paper, p.Paper)
					columns, rows := paper.Cells(p.Paper)
					require.LessOrEqual(t, p.W, columns)
					if len(p.Boxes) > 1 {
						require.Less(t, p.H, rows)
					}
				}
			})
		}
	}
}

// pagesAgree checks that every part of a sheet is on one page; that a wire within a page is
// drawn once, without a mark; and that one between two pages is drawn on both, each time with a
// mark that names the wire, the far terminal, its zone and its page.
func pagesAgree(t *testing.T, j *model.Job, s *model.Sheet, d *diagram.Drawing) {
	t.Helper()
	page := map[model.PartID]int{}
	drawn := map[string][]int{}
	marks := map[string]string{}
	for i := range d.Pages {
		p := &d.Pages[i]
		require.Empty(t, scene.Check(p), "page %d\n%s", i+1, text.Render(p, text.Options{}))
		require.Equal(t, []int{i + 1, len(d.Pages)}, []int{p.Title.Page, p.Title.Pages})
		for _, b := range p.Boxes {
			require.Zero(t, page[model.PartID(b.ID)], "%s is drawn twice", b.ID)
			page[model.PartID(b.ID)] = i + 1
		}
		for _, w := range p.Wires {
			drawn[w.ID] = append(drawn[w.ID], i+1)
			require.GreaterOrEqual(t, len(w.Path), 2, w.ID)
			if w.Label.Text == "" || !strings.Contains(w.Label.Text, " ") {
				require.True(t, listed(p, w.ID), "%s is not named in full", w.ID)
			}
		}
		for _, f := range p.Flags {
			require.Equal(t, scene.Width(f.Text)+1, f.Rect.W, "the mark of %s stands off its text", f.ID)
			if f.Kind == scene.OffPage {
				marks[fmt.Sprint(f.ID, "@", i+1)] = f.Text
			}
		}
	}
	require.Len(t, page, len(s.Parts))
	expected := 0
	for i := range s.Wires {
		w := &s.Wires[i]
		from, to := page[w.From.At.Part], page[w.To.At.Part]
		if from == 0 || to == 0 || from == to {
			require.Len(t, drawn[string(w.ID)], 1, w.ID)
			continue
		}
		expected += 2
		require.ElementsMatch(t, []int{from, to}, drawn[string(w.ID)], w.ID)
		require.Equal(t, mark(j, s, w, w.To.At, to), marks[fmt.Sprint(w.ID, " to@", from)], "shape %v", d.Pages[0].Paper)
		require.Equal(t, mark(j, s, w, w.From.At, from), marks[fmt.Sprint(w.ID, " from@", to)])
	}
	require.Len(t, marks, expected)
}

// mark is what a mark must say, but for the end of a long name.
func mark(j *model.Job, s *model.Sheet, w *model.Wire, far model.TerminalRef, page int) string {
	zone := string(s.Part(far.Part).Zone)
	if z := j.Zone(model.ZoneID(zone)); z != nil && z.Name != "" {
		zone = z.Name
	}
	if zone != "" {
		zone = scene.Shorten(zone, 8) + " "
	}
	return fmt.Sprintf("%s to %s, %spage %s", w.ID, far, zone, strconv.Itoa(page))
}

func listed(p *scene.Page, wire string) bool {
	for _, row := range p.Table.Rows {
		if row[0] == wire {
			return true
		}
	}
	return false
}

func TestOnePageHoldsAllInTheProportionsOfThePaper(t *testing.T) {
	if testing.Short() {
		t.Skip("draws much at full effort")
	}
	data, err := cart.Read("quarry-inspection")
	require.NoError(t, err)
	job, problems := jobfile.Decode("quarry-inspection", data, part.Library())
	require.Empty(t, problems)
	d, err := diagram.Draw(job.Job, model.Plan, part.Library(), diagram.Options{Quick: true, Whole: true, Shapes: onPaper(paper.Letter)})
	require.NoError(t, err)
	require.Len(t, d.Pages, 1)
	p := &d.Pages[0]
	require.Equal(t, "Letter", p.Paper.Name)
	require.Len(t, p.Boxes, len(job.Job.Sheet(model.Plan).Parts))
	columns, rows := paper.Cells(p.Paper)
	wide, high := float64(p.W)/float64(columns), float64(p.H)/float64(rows)
	require.InDelta(t, 1, wide/high, 0.5, "%d x %d cells on %v", p.W, p.H, p.Paper)

	d, err = diagram.Draw(job.Job, model.Plan, part.Library(), diagram.Options{Quick: true, Whole: true, Shapes: []diagram.Shape{{Columns: 110}}})
	require.NoError(t, err)
	require.Len(t, d.Pages, 1)
	require.LessOrEqual(t, d.Pages[0].W, 110)
}

func TestAPartWiderThanAPageIsRefusedInCharactersAndShrunkOnPaper(t *testing.T) {
	j := placed()
	j.Sheets[0].Parts[0].ID = model.PartID(strings.Repeat("b", 130))
	_, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{Quick: true, Shapes: []diagram.Shape{{Columns: 100, Rows: 60}}})
	require.ErrorContains(t, err, "more columns: widen the page")
	d, err := diagram.Draw(j, model.AsFound, part.Library(), diagram.Options{Quick: true, Shapes: onPaper(paper.A4)})
	require.NoError(t, err)
	require.Greater(t, d.Pages[0].W, 130)
	require.Equal(t, "A4", d.Pages[0].Paper.Name)
}
