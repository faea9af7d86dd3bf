package store

import (
	"errors"
	"io/fs"
	"path/filepath"
)

// SaveAs writes data to a file of another name, with everything that [File.Save]
// promises, and gives that file for later saves. It fails with [ExistsError] if the name is
// taken, unless replace says to go on; what stood there is then kept as a
// previous version.
func SaveAs(path string, data []byte, replace bool) (*File, Outcome, error) {
	return standard().saveAs(path, data, replace)
}

func (e env) saveAs(path string, data []byte, replace bool) (*File, Outcome, error) {
	if len(data) > MaxBytes {
		return nil, Outcome{}, &SizeError{Path: path, Limit: MaxBytes}
	}
	f, _, err := e.open(path)
	switch {
	case err == nil && !replace:
		return nil, Outcome{}, &ExistsError{Path: path}
	case err == nil:
		out, err := f.Save(data, Options{Overwrite: true})
		if err != nil {
			return nil, Outcome{}, err
		}
		return f, out, nil
	case !errors.Is(err, fs.ErrNotExist):
		return nil, Outcome{}, err
	}
	return e.create(path, data)
}

// create writes a file that does not exist yet. Its folder must exist; a symbolic link
// that leads nowhere is in the way like any other file.
func (e env) create(path string, data []byte) (*File, Outcome, error) {
	full, err := filepath.Abs(path)
	parent := ""
	if err == nil {
		parent, err = resolve(filepath.Dir(full))
	}
	if err != nil {
		return nil, Outcome{}, err
	}
	f := &File{env: e, folder: parent, base: filepath.Base(full), known: HashOf(data)}
	dir, err := e.sys.OpenFolder(parent)
	if err != nil {
		return nil, Outcome{}, err
	}
	defer dir.Close()
	var out Outcome
	temp, err := writeTemp(dir, parent, f.base, data, shared, nil, &out)
	if err != nil {
		return nil, Outcome{}, err
	}
	renamed, err := place(dir, temp, f.base)
	if err != nil {
		if errors.Is(err, fs.ErrExist) {
			err = &ExistsError{Path: path}
		}
		return nil, Outcome{}, discard(dir, parent, temp, err)
	}
	if !renamed {
		if err := dir.Remove(temp); err != nil {
			out.warn("a temporary file is left at "+filepath.Join(parent, temp), err)
		}
	}
	settle(dir, &out)
	return f, out, nil
}

// place gives a temporary file its name without replacing another: as a second name, or
// by a rename where the file system has no hard links, which leaves a moment between the
// look and the rename.
func place(dir folder, temp, base string) (renamed bool, err error) {
	err = dir.Link(temp, base)
	if err == nil || !cannotLink(err) {
		return false, err
	}
	if _, err := dir.Lstat(base); err == nil {
		return false, fs.ErrExist
	} else if !errors.Is(err, fs.ErrNotExist) {
		return false, err
	}
	return true, dir.Rename(temp, base)
}
