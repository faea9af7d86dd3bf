// Package export holds the output formats of drawings. A format is one file; adding
// one is that file and its line in [All].
package export

import (
	"fmt"
	"io"
	"strings"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// Format is a way to write a drawing.
type Format struct {
	Name  string // as commands name it
	Ext   string // of files, with the point
	About string // one line for help

	// Page is how the sheet is laid out for the format. columns is the width that a
	// person asked for; 0 for the format's own.
	Page func(columns int) diagram.Options
	// Write writes a drawing. Equal drawings give equal bytes.
	Write func(io.Writer, *diagram.Drawing) error
}

// All lists the formats.
var All = []Format{Text, ASCII, SVG}

// Names lists the names of all formats.
func Names() []string {
	names := make([]string, len(All))
	for i, f := range All {
		names[i] = f.Name
	}
	return names
}

// Find finds a format by name. The error lists the names that there are.
func Find(name string) (Format, error) {
	for _, f := range All {
		if f.Name == name {
			return f, nil
		}
	}
	return Format{}, fmt.Errorf("no format %q; there are %s", name, strings.Join(Names(), ", "))
}

// Sheet draws a sheet of a job and writes it, in a state if one is to be shown.
func (f Format) Sheet(w io.Writer, j *model.Job, sheet model.SheetName, lib *model.Catalogue, columns int, shown *scene.State) error {
	d, err := diagram.Draw(j, sheet, lib, f.Page(columns))
	if err != nil {
		return err
	}
	if shown != nil {
		d = d.In(*shown)
	}
	return f.Write(w, d)
}
