package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"syscall"
)

// ChangedError says that the file is not what was last read or saved here: another
// program wrote, replaced or removed it. Nothing was written. [Options] may go on.
type ChangedError struct {
	Path    string
	Missing bool // the file is gone
}

// Error is the message for a person.
func (e *ChangedError) Error() string {
	if e.Missing {
		return e.Path + " was removed by another program since it was read; save it again on purpose or under another name"
	}
	return e.Path + " was changed by another program since it was read; compare, save under another name or overwrite on purpose"
}

// ReadOnlyError says that the file is marked read-only. A rename would replace it all the
// same, so the person is asked first. Nothing was written. [Options] may go on.
type ReadOnlyError struct{ Path string }

// Error is the message for a person.
func (e *ReadOnlyError) Error() string {
	return e.Path + " is read-only; save under another name or replace it on purpose"
}

// LinksError says that the file has other names, which would keep the old text.
// Nothing was written. [Options] may go on.
type LinksError struct {
	Path  string
	Names int // how many names the file has, this one among them
}

// Error is the message for a person.
func (e *LinksError) Error() string {
	return fmt.Sprintf("%s has %d names (hard links) and the others would keep the old text; save under another name or replace this one on purpose", e.Path, e.Names)
}

// NotRegularError says that a path leads to something that is no plain file, such as a
// folder, a pipe or a device.
type NotRegularError struct {
	Path string
	Mode fs.FileMode
}

// Error is the message for a person.
func (e *NotRegularError) Error() string {
	if e.Mode.IsDir() {
		return e.Path + " is a folder; name a file in it"
	}
	return e.Path + " is not a plain file; name one"
}

// SizeError says that a file or text is larger than this package handles.
type SizeError struct {
	Path  string
	Limit int64 // bytes
}

// Error is the message for a person.
func (e *SizeError) Error() string {
	return fmt.Sprintf("%s is larger than %d bytes; make it smaller", e.Path, e.Limit)
}

// ExistsError says that [SaveAs] would replace a file and was not told to.
type ExistsError struct{ Path string }

// Error is the message for a person.
func (e *ExistsError) Error() string {
	return e.Path + " exists already; name another file or replace it on purpose"
}

// Is makes the error known as [fs.ErrExist].
func (e *ExistsError) Is(target error) bool { return target == fs.ErrExist }

// LeftoverError is a failure after which a temporary file could not be removed.
type LeftoverError struct {
	Path string // of the temporary file
	Err  error  // the failure
}

// Error is the message for a person.
func (e *LeftoverError) Error() string {
	return fmt.Sprintf("%v; a temporary file is left at %s", e.Err, e.Path)
}

// Unwrap is the failure itself.
func (e *LeftoverError) Unwrap() error { return e.Err }

// errReadBack is a disk that returns other bytes than were written.
var errReadBack = errors.New("the disk does not give back what was written; try another disk")

// IsMachine reports whether the machine failed (disk full, no permission, a broken
// disk), as against input that a person can put right: a wrong path, a file that is
// too large, changed, read-only or in the way.
func IsMachine(err error) bool {
	var (
		changed *ChangedError
		locked  *ReadOnlyError
		links   *LinksError
		kind    *NotRegularError
		size    *SizeError
		number  syscall.Errno // what the system answers has one
	)
	switch {
	case errors.As(err, &changed), errors.As(err, &locked), errors.As(err, &links), errors.As(err, &kind), errors.As(err, &size):
		return false
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrExist), badPath(err):
		return false
	}
	return errors.As(err, &number) || errors.Is(err, errReadBack) || errors.Is(err, io.ErrShortWrite)
}

func isAny(err error, list ...syscall.Errno) bool {
	for _, e := range list {
		if errors.Is(err, e) {
			return true
		}
	}
	return false
}
