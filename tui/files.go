package tui

import (
	"bytes"
	"path/filepath"
	"strings"

	"example.com/lugbook/diagram/export"
	"example.com/lugbook/model"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/store"
)

// ForFile is a session on a job file: it is saved there, drawings are written beside it,
// and what was not saved when the terminal is lost goes to a file beside it that ends in
// -rescued.yaml.
func ForFile(file *jobfile.File, lib *model.Catalogue) Session {
	s := Session{
		Job: file.Job(), Library: lib, Path: file.Path(), Mouse: true,
		Save: file.Save, SaveAs: file.SaveAs,
		Export: func(format string, job *model.Job, sheet model.SheetName) (string, error) {
			return exportBeside(file.Path(), format, job, sheet, lib)
		},
		Rescue: func(job *model.Job) {
			// There is no one left to tell of a failure.
			_, _ = file.SaveAs(beside(file.Path(), "-rescued.yaml"), job, true)
		},
	}
	for _, f := range export.All {
		s.Formats = append(s.Formats, Format{f.Name, f.About})
	}
	return s
}

// beside is a path in the folder of a job file that begins with its name.
func beside(path, end string) string {
	return strings.TrimSuffix(path, filepath.Ext(path)) + end
}

// exportBeside writes a drawing next to the job file and gives its path.
func exportBeside(path, format string, job *model.Job, sheet model.SheetName, lib *model.Catalogue) (string, error) {
	f, err := export.Find(format)
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	if err := f.Sheet(&b, job, sheet, lib, 0); err != nil {
		return "", err
	}
	to := beside(path, "-"+string(sheet)+f.Ext)
	_, _, err = store.SaveAs(to, b.Bytes(), true)
	return to, err
}
