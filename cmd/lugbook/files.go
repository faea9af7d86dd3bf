package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/store"
)

// stdio is the name that stands for standard input and output.
const stdio = "-"

// most is the size of the largest job file that is read from standard input.
const most = 2 << 20

// catalogue is the parts library with the shop's own parts above it.
func (c *cli) catalogue() (*model.Catalogue, error) {
	path := c.shop
	if path == "" {
		dir, err := os.UserConfigDir()
		if err != nil {
			return part.Library(), nil
		}
		path = filepath.Join(dir, "lugbook", "parts.yaml")
	}
	_, data, err := store.Open(path)
	if errors.Is(err, fs.ErrNotExist) && c.shop == "" {
		return part.Library(), nil
	}
	if err != nil {
		return nil, err
	}
	own, problems := part.ParseFile(path, data)
	if len(problems) > 0 {
		return nil, &jobfile.BadFileError{Problems: problems, Source: data}
	}
	return model.NewCatalogue(own, part.Definitions()), nil
}

// open reads a job file, or standard input for -.
func (c *cli) open(path string) (*opened, error) {
	lib, err := c.catalogue()
	if err != nil {
		return nil, err
	}
	if path != stdio {
		file, err := jobfile.Open(path, lib)
		if err != nil {
			return nil, err
		}
		return &opened{job: file.Job(), lib: lib, file: file}, nil
	}
	data, err := io.ReadAll(io.LimitReader(c.in, most+1))
	if err != nil {
		return nil, err
	}
	decoded, problems := jobfile.Decode("standard input", data, lib)
	if len(problems) > 0 {
		return nil, &jobfile.BadFileError{Problems: problems, Source: data}
	}
	return &opened{job: decoded.Job, lib: lib, decoded: decoded}, nil
}

// opened is a job that was read, and where from: a file, or standard input.
type opened struct {
	job     *model.Job
	lib     *model.Catalogue
	file    *jobfile.File
	decoded *jobfile.Decoded
}

// openSheet reads a job file and picks the sheet that a person asked for.
func (c *cli) openSheet(path, asked string) (*opened, model.SheetName, error) {
	o, err := c.open(path)
	if err != nil {
		return nil, "", err
	}
	name, err := o.sheet(asked)
	return o, name, err
}

// sheet is the sheet that a person asked for, or the latest that the job has.
func (o *opened) sheet(asked string) (model.SheetName, error) {
	if asked != "" {
		if o.job.Sheet(model.SheetName(asked)) == nil {
			return "", fmt.Errorf("the job has no sheet %q; it has %s", asked, listed(sheetNames(o.job)))
		}
		return model.SheetName(asked), nil
	}
	if len(o.job.Sheets) == 0 {
		return "", errors.New("the job has no sheets yet; add one under sheets, such as as-found: {}")
	}
	return o.job.Sheets[len(o.job.Sheets)-1].Name, nil
}

func sheetNames(j *model.Job) []model.SheetName {
	names := make([]model.SheetName, len(j.Sheets))
	for i := range j.Sheets {
		names[i] = j.Sheets[i].Name
	}
	return names
}

// listed is names as a sentence tells them.
func listed(names []model.SheetName) string {
	if len(names) == 0 {
		return "none"
	}
	words := make([]string, len(names))
	for i, n := range names {
		words[i] = string(n)
	}
	return strings.Join(words, ", ")
}

// apart makes sure that an output does not replace the job that it is made of.
func apart(out, job string) error {
	if out == stdio || job == stdio || !sameFile(out, job) {
		return nil
	}
	return fmt.Errorf("%s is the job file itself; name another file to write", out)
}

// sameFile reports whether two paths lead to one file that exists.
func sameFile(a, b string) bool {
	first, err := os.Stat(a)
	if err != nil {
		return false
	}
	second, err := os.Stat(b)
	return err == nil && os.SameFile(first, second)
}

// isStdout reports whether a path stands for standard output: -, nothing, and its name
// /dev/stdout, so that a file behind it is written on, not replaced.
func isStdout(path string) bool { return path == "" || path == stdio || path == "/dev/stdout" }

// write writes data to a file, or to standard output.
func (c *cli) write(path string, data []byte) error {
	if isStdout(path) {
		_, err := c.out.Write(data)
		return err
	}
	_, _, err := store.SaveAs(path, data, true)
	return err
}
