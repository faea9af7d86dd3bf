package tui

import (
	"os"
	"path/filepath"
	"strings"
	"sync"

	"example.com/lugbook/diagram/export"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/store"
)

// ForFile is a session on a job file: it is saved there, drawings are written beside it,
// and what was not saved when the terminal is lost goes to a file beside it that ends in
// -rescued.yaml.
func ForFile(file *jobfile.File, lib *model.Catalogue) Session {
	f := &shared{file: file, lib: lib}
	s := Session{
		Job: file.Job(), Library: lib, Path: file.Path(), Mouse: true,
		Save: f.save, SaveAs: f.saveAs, Export: f.export, Rescue: f.rescue,
	}
	if _, err := os.Lstat(rescued(file.Path())); err == nil {
		s.Notice = clean.Line(filepath.Base(rescued(file.Path())) + " holds unsaved work of a lost terminal")
	}
	for _, format := range export.All {
		s.Formats = append(s.Formats, Format{format.Name, format.About})
	}
	return s
}

// shared is a job file that is used by one at a time.
type shared struct {
	mu   sync.Mutex
	file *jobfile.File
	lib  *model.Catalogue
}

func (f *shared) save(job *model.Job, o store.Options) (store.Outcome, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.file.Save(job, o)
}

func (f *shared) saveAs(path string, job *model.Job, replace bool) (store.Outcome, error) {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.file.SaveAs(path, job, replace)
}

func (f *shared) path() string {
	f.mu.Lock()
	defer f.mu.Unlock()
	return f.file.Path()
}

// rescue writes a job beside its file. There is no one left to tell of a failure.
func (f *shared) rescue(job *model.Job) {
	_, _ = f.saveAs(rescued(f.path()), job, true)
}

// rescued is the path of the file that keeps what was not saved.
func rescued(path string) string { return beside(path, "-rescued.yaml") }

// export writes a drawing beside the job file and gives its path, which names the state
// that it shows.
func (f *shared) export(format string, job *model.Job, sheet model.SheetName, shown *scene.State) (string, error) {
	as, err := export.Find(format)
	if err != nil {
		return "", err
	}
	files, err := as.Sheet(job, sheet, f.lib, shown)
	if err != nil {
		return "", err
	}
	end := "-" + string(sheet)
	if shown != nil {
		end += "-" + shown.Name
	}
	to := beside(f.path(), end+as.Ext)
	for _, file := range files {
		if _, _, err := store.SaveAs(file.Name(to), file.Data, true); err != nil {
			return "", err
		}
	}
	return written(files, to), nil
}

// written names the files of a drawing: the only one, or the first and the last.
func written(files []export.File, to string) string {
	last := files[len(files)-1]
	if len(files) == 1 {
		return last.Name(to)
	}
	return files[0].Name(to) + " to " + filepath.Base(last.Name(to))
}

// beside is a path in the folder of a job file that begins with its name.
func beside(path, end string) string {
	return strings.TrimSuffix(path, filepath.Ext(path)) + end
}
