// Package export holds the output formats of drawings. A format is one file; adding
// one is that file and its line in [All].
package export

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
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

	// Paper tells that a page is a sheet of paper, on which no letter is too small to be
	// read. The pages of other formats are rows of characters.
	Paper bool
	// Single tells that a file holds one page alone, so that each page of a drawing is a
	// file of its own.
	Single bool
	// Write writes pages one after the other; the only page if the format is Single. Equal
	// pages give equal bytes.
	Write func(io.Writer, []scene.Page) error
}

// All lists the formats.
var All = []Format{Text, ASCII, SVG, PDF, PNG}

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

// File is a written drawing, or one page of it.
type File struct {
	Suffix string // before the ending of the file's name: -1, -2; empty for the only file
	Data   []byte
}

// Name is the path of the file for a drawing that is to be written to a path.
func (f File) Name(path string) string {
	ext := filepath.Ext(path)
	return strings.TrimSuffix(path, ext) + f.Suffix + ext
}

// Files writes pages as one file, or as one for each page where the format holds no more.
func (f Format) Files(pages []scene.Page) ([]File, error) {
	if !f.Single || len(pages) == 1 {
		var b bytes.Buffer
		if err := f.Write(&b, pages); err != nil {
			return nil, err
		}
		return []File{{Data: b.Bytes()}}, nil
	}
	files := make([]File, len(pages))
	for i := range pages {
		var b bytes.Buffer
		if err := f.Write(&b, pages[i:i+1]); err != nil {
			return nil, err
		}
		files[i] = File{Suffix: fmt.Sprintf("-%d", i+1), Data: b.Bytes()}
	}
	return files, nil
}

// Sheet draws a sheet of a job as the format lays it out by itself and writes it, in a
// state if one is to be shown.
func (f Format) Sheet(j *model.Job, sheet model.SheetName, lib *model.Catalogue, shown *scene.State) ([]File, error) {
	d, err := diagram.Draw(j, sheet, lib, f.Layout(Ask{State: shown != nil}))
	if err != nil {
		return nil, err
	}
	if shown != nil {
		d = d.In(*shown)
	}
	return f.Files(d.Pages)
}
