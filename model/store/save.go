package store

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"slices"
)

// Options say what a person agreed to after a save was refused. The zero value agrees
// to nothing.
type Options struct {
	Overwrite bool // replace what another program wrote; it is kept as a previous version
	ReadOnly  bool // replace a read-only file
	Links     bool // leave the other names of the file with the old text
}

// Assurance is how sure it is that saved bytes outlive a power cut.
type Assurance int

// The degrees of assurance, best first.
const (
	Durable     Assurance = iota // flushed to the disk, with the file's name
	Unconfirmed                  // saved; this file system does not say whether it is flushed
	Doubtful                     // saved; flushing the folder failed, keep any journal
)

// String is the word for the status line.
func (a Assurance) String() string {
	return [...]string{"saved", "saved, not confirmed by the drive", "saved, not yet durable"}[a]
}

// Outcome is what a save that succeeded has to tell.
type Outcome struct {
	Assurance Assurance
	Warnings  []string // what could not be kept: owner, previous version
	Previous  string   // where the bytes before are kept; "" if they are not
}

func (o *Outcome) warn(what string, err error) {
	o.Warnings = append(o.Warnings, fmt.Sprintf("%s: %v", what, err))
}

// Save replaces the file's bytes. Without an error the file holds data. With an error
// it holds what it held before, unless the system reported a failure of something that
// it did. Fails with [ChangedError], [ReadOnlyError], [LinksError], [NotRegularError],
// [SizeError] or an error of the system, in a [LeftoverError] if a temporary file
// is left. After an error a caller still has data and may save elsewhere.
func (f *File) Save(data []byte, o Options) (Outcome, error) {
	if len(data) > MaxBytes {
		return Outcome{}, &SizeError{Path: f.Path(), Limit: MaxBytes}
	}
	dir, err := f.env.sys.OpenFolder(f.folder)
	if err != nil {
		return Outcome{}, err
	}
	defer dir.Close()
	before, err := f.inspect(dir, o)
	if err != nil {
		return Outcome{}, err
	}
	var out Outcome
	temp, err := writeTemp(dir, f.folder, f.base, data, private, before.info, &out)
	if err != nil {
		return Outcome{}, err
	}
	if before.info != nil {
		out.Previous = f.env.keep(f.Path(), before.data, &out)
	}
	if err := f.same(dir, before); err != nil {
		return Outcome{}, discard(dir, f.folder, temp, err)
	}
	f.attempt = HashOf(data)
	if err := dir.Rename(temp, f.base); err != nil {
		return Outcome{}, discard(dir, f.folder, temp, err)
	}
	f.known = f.attempt
	settle(dir, &out)
	return out, nil
}

// target is a file as it is before a save.
type target struct {
	info fs.FileInfo // nil if it does not exist
	data []byte
}

// inspect looks at the file before anything is written and asks where it must.
func (f *File) inspect(dir folder, o Options) (target, error) {
	info, err := f.lstat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist) && o.Overwrite:
		return target{}, nil
	case errors.Is(err, fs.ErrNotExist):
		return target{}, &ChangedError{Path: f.Path(), Missing: true}
	case err != nil:
		return target{}, err
	case info.Mode().Perm()&0o222 == 0 && !o.ReadOnly:
		return target{}, &ReadOnlyError{Path: f.Path()}
	case links(info) > 1 && !o.Links:
		return target{}, &LinksError{Path: f.Path(), Names: links(info)}
	}
	data, err := dir.Read(f.base, MaxBytes)
	var size *SizeError // it was not when it was read
	if !o.Overwrite && (errors.As(err, &size) || err == nil && !f.ours(HashOf(data))) {
		return target{}, &ChangedError{Path: f.Path()}
	}
	if err != nil {
		return target{}, err
	}
	return target{info: info, data: data}, nil
}

// same makes sure that the file is still as inspect found it. What another program
// does between this look and the rename is not noticed; nothing portable could.
func (f *File) same(dir folder, before target) error {
	data, err := dir.Read(f.base, MaxBytes)
	missing := errors.Is(err, fs.ErrNotExist)
	switch {
	case missing && before.info == nil:
		return nil
	case missing:
		return &ChangedError{Path: f.Path(), Missing: true}
	case err != nil:
		return err
	case before.info == nil || HashOf(data) != HashOf(before.data):
		return &ChangedError{Path: f.Path()}
	}
	return nil
}

// Permissions of new files, before the user's mask.
const (
	private fs.FileMode = 0o600 // until the file has its own, and for versions
	shared  fs.FileMode = 0o666 // a file that the user makes
)

// writeTemp writes, flushes and reads back a temporary file and gives its name. like is
// the file that it will replace, or nil.
func writeTemp(dir folder, path, base string, data []byte, mode fs.FileMode, like fs.FileInfo, out *Outcome) (string, error) {
	temp := tempName(base, rand.Text()[:tempRandom])
	f, err := dir.Create(temp, mode)
	if errors.Is(err, fs.ErrExist) {
		return "", err // the name is another's
	}
	if err != nil {
		return "", discard(dir, path, temp, err)
	}
	if err := fill(f, data, like, out); err != nil {
		return "", discard(dir, path, temp, err)
	}
	if like != nil {
		if uid, gid, ok := owner(like); ok {
			if err := dir.Chown(temp, uid, gid); err != nil {
				out.warn("the file now belongs to you: its owner could not be kept", err)
			}
		}
	}
	back, err := dir.Read(temp, MaxBytes)
	if err == nil && !slices.Equal(back, data) {
		err = errReadBack
	}
	if err != nil {
		return "", discard(dir, path, temp, err)
	}
	return temp, nil
}

// fill writes a new file, flushes it once and closes it.
func fill(f file, data []byte, like fs.FileInfo, out *Outcome) error {
	n, err := f.Write(data)
	if err == nil && n < len(data) {
		err = io.ErrShortWrite
	}
	if err == nil && like != nil {
		if failed := f.Chmod(like.Mode().Perm()); failed != nil {
			out.warn("only you may read the file now: its permissions could not be kept", failed)
		}
	}
	if err == nil {
		err = f.Sync()
		if err != nil && cannotSync(err) {
			out.Assurance, err = Unconfirmed, nil
		}
	}
	if closing := f.Close(); err == nil {
		err = closing
	}
	return err
}

// settle flushes the folder after a rename.
func settle(dir folder, out *Outcome) {
	err := dir.Sync()
	switch {
	case err == nil:
	case cannotSync(err):
		out.Assurance = max(out.Assurance, Unconfirmed)
	default:
		out.Assurance = Doubtful
		out.warn("the folder could not be flushed to the disk", err)
	}
}

// discard removes a temporary file after a failure and gives that failure.
func discard(dir folder, path, temp string, failure error) error {
	if err := dir.Remove(temp); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return &LeftoverError{Path: filepath.Join(path, temp), Err: failure}
	}
	return failure
}
