package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/export"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/store"
)

// demoCart is the worked cart that the demo shows.
const demoCart = "greenhouse-tug"

func (c *cli) demoCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "demo [DIR]",
		Short: "Run the main job on a worked cart",
		Long: "Run the main job on a worked cart: record as found, plan, check, draw.\n" +
			"In a terminal it opens a copy that can be edited and saved. Without one it prints the plan and its\n" +
			"findings and writes the drawings of both sheets. Without DIR the files go to a new temporary folder.",
		Example: "  lugbook demo\n  lugbook demo ~/tug | less",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, err := demoFolder(args)
			if err != nil {
				return err
			}
			path, err := demoCopy(dir)
			if err != nil {
				return err
			}
			if c.terminal() {
				return c.edit(path)
			}
			return c.demoWithoutTerminal(dir, path)
		},
	}
}

func demoFolder(args []string) (string, error) {
	if len(args) == 0 {
		return os.MkdirTemp("", "lugbook-demo-")
	}
	return args[0], os.MkdirAll(args[0], 0o755)
}

// demoCopy puts the demo's job file into a folder. A copy that is there already, perhaps
// edited, stays as it is.
func demoCopy(dir string) (string, error) {
	path := filepath.Join(dir, demoCart+".yaml")
	data, err := cart.Read(demoCart)
	if err != nil {
		return "", err
	}
	if _, _, err := store.SaveAs(path, data, false); err != nil && !errors.Is(err, fs.ErrExist) {
		return "", err
	}
	return path, nil
}

func (c *cli) demoWithoutTerminal(dir, path string) error {
	o, err := c.open(path)
	if err != nil {
		return err
	}
	drawn, err := demoDrawings(o)
	if err != nil {
		return err
	}
	var written []string
	for _, name := range sheetNames(o.job) {
		more, err := c.demoSheet(o, drawn, name, dir)
		if err != nil {
			return err
		}
		written = append(written, more...)
	}
	names := strings.Join(append([]string{filepath.Base(path)}, written...), "\n  ")
	_, err = fmt.Fprintf(c.out, "\nWritten to %s:\n  %s\n", clean.Line(dir), names)
	return err
}

// demoFormats are the formats that a sheet is written in: in characters, and the plan on
// paper too, as it goes into the customer's file.
func demoFormats(sheet model.SheetName) []export.Format {
	var out []export.Format
	for _, f := range export.All {
		if !f.Single && (!f.Paper || sheet == model.Plan) {
			out = append(out, f)
		}
	}
	return out
}

// demoDrawing is what a sheet was drawn for. Formats for paper share their pages, and so do
// the others.
type demoDrawing struct {
	sheet model.SheetName
	paper bool
}

// demoDrawings draws all that the demo writes, side by side.
func demoDrawings(o *opened) (map[demoDrawing]*diagram.Drawing, error) {
	layouts := map[demoDrawing]diagram.Options{}
	for _, sheet := range sheetNames(o.job) {
		for _, f := range demoFormats(sheet) {
			layouts[demoDrawing{sheet, f.Paper}] = f.Layout(export.Ask{})
		}
	}
	var (
		lock sync.Mutex
		wait sync.WaitGroup
		errs []error
	)
	out := map[demoDrawing]*diagram.Drawing{}
	for at, options := range layouts {
		wait.Go(func() {
			d, err := diagram.Draw(o.job, at.sheet, o.lib, options)
			lock.Lock()
			defer lock.Unlock()
			out[at], errs = d, append(errs, err)
		})
	}
	wait.Wait()
	return out, errors.Join(errs...)
}

// demoSheet writes a sheet's drawings and findings; those of the plan it prints too.
func (c *cli) demoSheet(o *opened, drawn map[demoDrawing]*diagram.Drawing, sheet model.SheetName, dir string) (written []string, err error) {
	write := func(name string, data []byte) error {
		written = append(written, name)
		return c.write(filepath.Join(dir, name), data)
	}
	for _, f := range demoFormats(sheet) {
		files, err := f.Files(drawn[demoDrawing{sheet, f.Paper}].Pages)
		if err != nil {
			return nil, err
		}
		for _, file := range files {
			if err := write(file.Name(string(sheet)+f.Ext), file.Data); err != nil {
				return nil, err
			}
		}
		if sheet == model.Plan && f.Name == export.Text.Name {
			if _, err := fmt.Fprintln(c.out, string(files[0].Data)); err != nil {
				return nil, err
			}
		}
	}
	report, err := rule.Judge(rule.All, o.job, sheet, o.lib)
	if err != nil {
		return nil, err
	}
	text := reportText(o.job, &report)
	if sheet == model.Plan {
		if _, err := fmt.Fprint(c.out, text); err != nil {
			return nil, err
		}
	}
	return written, write(string(sheet)+"-findings.txt", []byte(text))
}
