package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/diagram/export"
	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/view"
	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/store"
)

// The narrowest and the widest page that a drawing may be asked for, in columns.
const (
	leastColumns = 40
	mostColumns  = 1000
)

// drawing is what a person asks of a drawing.
type drawing struct {
	sheet, state    string
	as, view, paper string
	against         string
	out             string
	columns, page   int
	onePage, keep   bool
	format          export.Format
	looks           view.View
	ask             export.Ask
}

func (c *cli) drawCommand() *cobra.Command {
	var d drawing
	cmd := &cobra.Command{
		Use:   "draw FILE",
		Short: "Draw a sheet as text or on paper",
		Long: "Draw a sheet. Without --sheet the latest sheet is drawn. With --state it shows which wires are dead, on the minus\n" +
			"side or live in that state, what they carry and which way, and which contacts are closed.\n\n" +
			"Letters on paper are 2.5 mm high, the figures at a stud 1.9 mm. What does not fit one page goes on several, and\n" +
			"marks at the ends of wires name the page where they go on; one part that no page holds, and a one-line diagram,\n" +
			"are made smaller instead. Several pages of a format that holds one page in a file are written to NAME-1,\n" +
			"NAME-2 and so on.\n\n" +
			"With --keep the job file remembers where everything stands: the next drawing of the kind begins from it, and what\n" +
			"did not change stays on its page and in its place.\n\n" + formatsHelp() + viewsHelp(),
		Example: "  lugbook draw tug.yaml\n  lugbook draw --sheet as-found --as pdf -o tug.pdf tug.yaml\n" +
			"  lugbook draw --as svg --paper letter --one-page -o tug.svg tug.yaml\n" +
			"  lugbook draw --view compare --against as-found --as pdf -o changes.pdf tug.yaml\n" +
			"  lugbook draw --state drive-forward --page 2 tug.yaml\n  lugbook draw --as ascii --width 100 - < tug.yaml",
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := d.settle(cmd.Flags().Changed); err != nil {
				return err
			}
			if d.keep && args[0] == stdio {
				return errors.New("--keep writes to the job file: name one instead of -")
			}
			return c.draw(&d, args[0], cmd.ErrOrStderr())
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&d.sheet, "sheet", "", "sheet to draw: as-found, plan or as-built")
	flags.StringVar(&d.state, "state", "", "state to show, such as drive-forward; none if not said")
	flags.StringVar(&d.as, "as", export.Text.Name, "format: "+strings.Join(export.Names(), ", "))
	flags.StringVar(&d.view, "view", view.Wiring.Name, "what to show: "+strings.Join(view.Names(), ", "))
	flags.StringVar(&d.against, "against", "", "sheet that --view compare takes for the earlier one; the one before if not said")
	flags.StringVar(&d.paper, "paper", paper.Names()[0], "size of paper: "+strings.Join(paper.Names(), ", "))
	flags.BoolVar(&d.onePage, "one-page", false, "the whole sheet on one page, however small on paper or wide as text")
	flags.BoolVar(&d.keep, "keep", false, "keep in FILE how it is drawn, so that the next drawing of the kind begins from it")
	flags.IntVar(&d.page, "page", 0, "the only page to write; all if not said")
	flags.IntVar(&d.columns, "width", 0, "columns of a page of text; as the format has them if not said")
	flags.StringVarP(&d.out, "out", "o", stdio, "file to write, - for standard output")
	return cmd
}

// settle finds what the words of a command line stand for, and refuses those that do
// not go together. given tells which flags were.
func (d *drawing) settle(given func(string) bool) (err error) {
	if d.format, err = export.Find(d.as); err != nil {
		return err
	}
	if d.looks, err = view.Find(d.view); err != nil {
		return err
	}
	if d.ask.Paper, err = paper.Find(d.paper); err != nil {
		return err
	}
	switch {
	case given("width") && d.format.Paper:
		return fmt.Errorf("--width is for text; a page of %s is as wide as its paper: choose it with --paper, or --one-page for all on one", d.as)
	case given("width") && (d.columns < leastColumns || d.columns > mostColumns):
		return fmt.Errorf("--width %d: expected %d to %d columns", d.columns, leastColumns, mostColumns)
	case given("paper") && !d.format.Paper:
		return fmt.Errorf("--paper is for drawings on paper; a page of %s is as wide as --width says", d.as)
	case given("against") && d.view != view.Compare.Name:
		return fmt.Errorf("--against is for --view %s alone", view.Compare.Name)
	case given("page") && d.page < 1:
		return fmt.Errorf("--page %d: pages are counted from 1", d.page)
	case d.keep && d.view != view.Wiring.Name:
		return fmt.Errorf("--keep is for --view %s alone", view.Wiring.Name)
	case given("page") && d.onePage:
		return fmt.Errorf("--page %d and --one-page: give one of them", d.page)
	}
	d.ask.Columns, d.ask.OnePage, d.ask.State = d.columns, d.onePage, d.state != ""
	return nil
}

// draw draws a sheet of a job file and writes it.
func (c *cli) draw(d *drawing, path string, warnings io.Writer) error {
	if err := apart(d.out, path); err != nil {
		return err
	}
	o, name, err := c.openSheet(path, d.sheet)
	if err != nil {
		return err
	}
	shown, err := o.stateShown(name, d.state)
	if err != nil {
		return err
	}
	layout := d.format.Layout(d.ask)
	layout.Against = model.SheetName(d.against)
	drawn, err := d.looks.Draw(o.job, name, o.lib, layout)
	if err != nil {
		return err
	}
	if shown != nil {
		drawn = drawn.In(*shown)
	}
	pages, err := d.picked(drawn.Pages)
	if err != nil {
		return err
	}
	if err := c.writePages(d, pages, path); err != nil || !d.keep {
		return err
	}
	drawn.KeepIn(o.job.Sheet(name), layout.KeptFor())
	outcome, err := o.file.Save(o.job, store.Options{})
	if err != nil {
		return err
	}
	warn(warnings, outcome)
	return nil
}

// picked are the pages that a person asked for.
func (d *drawing) picked(pages []scene.Page) ([]scene.Page, error) {
	switch {
	case d.page == 0:
		return pages, nil
	case d.page > len(pages) && len(pages) == 1:
		return nil, fmt.Errorf("--page %d: the drawing has one page", d.page)
	case d.page > len(pages):
		return nil, fmt.Errorf("--page %d: the drawing has pages 1 to %d", d.page, len(pages))
	}
	return pages[d.page-1 : d.page], nil
}

// writePages writes pages to a file, or to one for each page.
func (c *cli) writePages(d *drawing, pages []scene.Page, job string) error {
	if d.format.Single && len(pages) > 1 && isStdout(d.out) {
		return fmt.Errorf("the drawing has %d pages, and a file of %s holds one: name the files with -o NAME%s, choose a page with --page, or --one-page for all on one",
			len(pages), d.as, d.format.Ext)
	}
	files, err := d.format.Files(pages)
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := apart(f.Name(d.out), job); err != nil {
			return err
		}
	}
	for _, f := range files {
		if err := c.write(f.Name(d.out), f.Data); err != nil {
			return err
		}
	}
	return nil
}

// stateShown solves the state that a person asked for; nil if none was.
func (o *opened) stateShown(sheet model.SheetName, asked string) (*scene.State, error) {
	if asked == "" {
		return nil, nil
	}
	n := network.Build(o.job, o.job.Sheet(sheet), o.lib)
	list := n.States()
	s, ok := state.Find(list, asked)
	if !ok {
		names := make([]string, len(list))
		for i := range list {
			names[i] = list[i].Name
		}
		return nil, fmt.Errorf("no state %q; the %s sheet has %s", asked, sheet, strings.Join(names, ", "))
	}
	solved, err := n.Solve(s)
	if err != nil {
		return nil, fmt.Errorf("%w; without --state the sheet is drawn at rest", err)
	}
	shown := live.Of(n, solved)
	return &shown, nil
}

func formatsHelp() string {
	var b strings.Builder
	b.WriteString("Formats (--as):\n")
	for _, f := range export.All {
		fmt.Fprintf(&b, "  %-10s %s\n", f.Name, f.About)
	}
	return b.String()
}

func viewsHelp() string {
	var b strings.Builder
	b.WriteString("Views (--view):\n")
	for _, v := range view.All {
		fmt.Fprintf(&b, "  %-10s %s\n", v.Name, v.About)
	}
	return strings.TrimRight(b.String(), "\n")
}
