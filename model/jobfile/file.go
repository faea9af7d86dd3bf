package jobfile

import (
	"example.com/lugbook/model"
	"example.com/lugbook/model/store"
	"example.com/lugbook/model/strictyaml"
)

// BadFileError is a file that is not a job file as it should be, with its text for
// excerpts.
type BadFileError struct {
	Problems strictyaml.Problems
	Source   []byte
}

// Error lists the problems, one a line.
func (e *BadFileError) Error() string { return e.Problems.Error() }

// File is a job file on disk, opened to be saved again, or one that is still to be made.
type File struct {
	on      *store.File // nil until the first save of a new file
	decoded *Decoded
	path    string
}

// New is a file that the first save makes. It then refuses to write over one that came
// to be there meanwhile.
func New(path string, job *model.Job) *File {
	return &File{decoded: &Decoded{Job: job}, path: path}
}

// Open reads a job file. It fails with a [*BadFileError] if the file is not in order,
// or with an error of package store if it cannot be read.
func Open(path string, lib *model.Catalogue) (*File, error) {
	on, data, err := store.Open(path)
	if err != nil {
		return nil, err
	}
	decoded, problems := Decode(path, data, lib)
	if len(problems) > 0 {
		return nil, &BadFileError{problems, data}
	}
	return &File{on: on, decoded: decoded, path: on.Path()}, nil
}

// Job is the job as it was read. Treat it as read-only.
func (f *File) Job() *model.Job { return f.decoded.Job }

// Path is where the file is, with links followed, or where it shall be.
func (f *File) Path() string { return f.path }

// Save writes the job in canonical form, with the comments of the file. It refuses, with a
// typed error of package store, to write over what another program wrote since; the
// options go on on purpose.
func (f *File) Save(job *model.Job, o store.Options) (store.Outcome, error) {
	if f.on == nil {
		return f.SaveAs(f.path, job, o.Overwrite)
	}
	data, err := f.decoded.Encode(job)
	if err != nil {
		return store.Outcome{}, err
	}
	return f.on.Save(data, o)
}

// SaveAs writes the job to another path, which the file then is. It refuses to replace
// a file that is there unless told to.
func (f *File) SaveAs(path string, job *model.Job, replace bool) (store.Outcome, error) {
	data, err := f.decoded.Encode(job)
	if err != nil {
		return store.Outcome{}, err
	}
	on, outcome, err := store.SaveAs(path, data, replace)
	if err == nil {
		f.on, f.path = on, on.Path()
	}
	return outcome, err
}
