// Package jobfile reads and writes job files: one strict, versioned YAML file per
// cart. Reading is strict first in form, then in meaning; every problem is reported
// at once with file, line and column. Writing gives one canonical form.
package jobfile

import (
	"bytes"
	"errors"
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/strictyaml"
)

// Decoded is a job with the text that it was read from, so that its comments survive
// when it is written again.
type Decoded struct {
	Job *model.Job
	doc *strictyaml.Document
}

// Decode reads a job file. The name stands for the file in problems; lib is the parts
// library that the job's kinds and terminals are looked up in. All problems are
// reported; if there are any, there is no job.
func Decode(name string, data []byte, lib *model.Catalogue) (*Decoded, strictyaml.Problems) {
	job := &model.Job{}
	doc, problems := strictyaml.Decode(name, data, job, strictyaml.Limits{})
	more, hidden := meaning(job, doc, problems, lib)
	problems = append(problems, more...)
	if len(problems) > 0 {
		problems.Sort()
		if hidden > 0 {
			last := problems[len(problems)-1]
			last.Text, last.Expected, last.Nearest = "", "", ""
			last.Message = fmt.Sprintf("up to %d more problems that are not listed", hidden)
			problems = append(problems, last)
		}
		return nil, problems
	}
	return &Decoded{Job: job, doc: doc}, nil
}

// meaning is what is wrong with the job besides its form. Of what could not be read
// nothing more is said: not on a line that has a problem, nor of values that are missing.
// hidden is how many faults were not looked at after [mostProblems].
func meaning(job *model.Job, doc *strictyaml.Document, form strictyaml.Problems, lib *model.Catalogue) (more strictyaml.Problems, hidden int) {
	told := map[int]bool{}
	for _, p := range form {
		told[p.Line] = true
	}
	faults := job.Check(lib)
	for i, f := range faults {
		if len(more) == mostProblems {
			return more, len(faults) - i
		}
		p := doc.Problem(f.Path, f.Text, f.Message, f.Expected, f.Known)
		if !told[p.Line] && (len(form) == 0 || f.Text != "" && f.Text != "0") {
			more = append(more, p)
		}
	}
	return more, 0
}

// mostProblems is how many mistakes in meaning are listed.
const mostProblems = 200

// Encode writes a job in canonical form. The comments of the file that d was read
// from stay at what they stand at; d may be nil. What is written is read back before it
// is handed out: it fails if that is not the same job.
func (d *Decoded) Encode(job *model.Job) ([]byte, error) {
	var doc *strictyaml.Document
	if d != nil {
		doc = d.doc
	}
	data, err := strictyaml.Encode(job, doc)
	if err != nil {
		return nil, err
	}
	return data, readBack(data, job)
}

// readBack makes sure that the text of a job reads as that job.
func readBack(data []byte, job *model.Job) error {
	var again model.Job
	if _, problems := strictyaml.Decode("the job as written", data, &again, strictyaml.Limits{}); len(problems) > 0 {
		return problems
	}
	want, err := strictyaml.Encode(job, nil)
	if err != nil {
		return err
	}
	have, err := strictyaml.Encode(&again, nil)
	if err != nil {
		return err
	}
	if !bytes.Equal(have, want) {
		return errors.New("the job as written does not read as the same job; it was not saved")
	}
	return nil
}

// Schema is the JSON Schema of job files, for editors that complete and check them.
func Schema() ([]byte, error) {
	return strictyaml.Schema(model.Job{}, "lugbook job file")
}
